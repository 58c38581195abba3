"""Charge that a hill gives the reference car: energy of height less road load, times 0.85; mechanics.

1900 kg, rolling coefficient 0.009, drag area 0.62 m², 60 kWh, 6 %, 50 km/h, no accessories.
"""

import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.limits.descent import descent_to_fill_m, headroom, hill

REFERENCE = {
    "mass_kg": 1900.0, "rotating_mass_share": 0.04, "rolling_coefficient": 0.009, "drag_area_m2": 0.62,
    "gear_efficiency": 0.85, "motor_loss_fixed": 0.0, "motor_loss_speed": 0.0, "motor_loss_speed2": 0.0,
    "motor_loss_torque2": 0.0, "motor_loss_working": 0.0, "open_slowing_share": 0.0, "cell_resistance_share": 0.0,
    "accessory_w": 0.0, "usable_kwh": 60.0,
    "regen_cap_mps2": 8.0, "fade_start_kmh": 0.0, "fade_end_kmh": 0.0,
}  # fmt: skip
FILLED_PCT = {100: 0.58, 200: 1.15, 300: 1.73, 500: 2.88, 1000: 5.76}
WARM = Conditions(ambient_c=20.0, cabin=False)


@pytest.mark.parametrize("descent_m", FILLED_PCT)
def test_charge_filled_by_a_descent(descent_m):
    car = car_from("family-hatch", REFERENCE)
    way_down = hill(-descent_m, 6.0, 50.0)
    result = evaluate(way_down, car, WARM, Driver())
    filled = 100 * (result.soc[-1] - result.soc[0])
    to_leave_free = 100 * headroom(way_down, car, WARM, Driver()).gained_share
    print(f"{descent_m} m: {filled:.2f} % filled, {to_leave_free:.2f} % to leave free")
    assert filled == pytest.approx(FILLED_PCT[descent_m], abs=0.1)
    assert to_leave_free == pytest.approx(FILLED_PCT[descent_m], abs=0.1)


def test_a_hybrids_window_fills_on_about_170_metres():
    """0.6 kWh usable, if all is taken; the same car, 6 %."""
    car = car_from("family-hatch", REFERENCE | {"usable_kwh": 0.6})
    empty = Conditions(ambient_c=20.0, cabin=False, soc_start=0.0)
    found = descent_to_fill_m(car, empty, Driver(), 6.0, 50.0)
    print(f"window of 0.6 kWh full after {found:.0f} m of descent")
    assert found == pytest.approx(170, abs=5)
