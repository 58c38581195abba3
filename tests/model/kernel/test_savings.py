"""Shares and their denominators."""

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.traces.cycles import cycle_trace
from tests.made_traces import ride, steady, stop_and_go
from tests.refused import refuses

WARM = Conditions(ambient_c=20.0, cabin=False)
CAR = car_from("family-hatch")
FRICTION_PEDAL = car_from("family-hatch", {"brake_pedal": "friction"})
UDDS = evaluate(cycle_trace("udds"), CAR, WARM, Driver())


def test_the_three_shares_stand_on_their_own_denominators():
    assert UDDS.recovered_share == pytest.approx(UDDS.battery_in_kwh / UDDS.battery_out_kwh)
    assert UDDS.saved_share == pytest.approx(1 - UDDS.net_kwh / UDDS.friction_only_net_kwh)
    assert UDDS.range_gain == pytest.approx(UDDS.friction_only_net_kwh / UDDS.net_kwh - 1)
    assert UDDS.saved_kwh == pytest.approx(UDDS.friction_only_net_kwh - UDDS.net_kwh)
    assert UDDS.net_kwh == pytest.approx(UDDS.battery_out_kwh - UDDS.battery_in_kwh)


def test_recovered_and_saved_differ_by_what_flows_past_the_battery():
    """While slowing, accessories are fed directly: saved is more than recovered, by a few points."""
    assert 0 < UDDS.saved_share - UDDS.recovered_share < 0.04
    hungry = evaluate(cycle_trace("udds"), car_from("family-hatch", {"accessory_w": 1500.0}), WARM, Driver())
    assert hungry.saved_share - hungry.recovered_share > UDDS.saved_share - UDDS.recovered_share


def test_the_comparison_is_the_same_trace_on_friction_brakes():
    assert np.array_equal(UDDS.friction_only.braking_n, UDDS.run.braking_n)
    assert UDDS.friction_only.in_j == 0
    assert UDDS.friction_only_wheel_friction_kwh > 0.9 * UDDS.wheel_braking_kwh


def test_the_drag_of_the_idle_motor_is_fed_by_the_wheels():
    """Without regeneration the battery feeds only what does not turn: electronics and accessories."""
    slowing = UDDS.friction_only.braking_n > 3 * 100
    drawn = UDDS.friction_only.terminal_w[slowing]
    assert drawn == pytest.approx(CAR.accessory_w + CAR.motor_peak_kw * 1000 * CAR.motor_loss_fixed)


def test_a_lift_off_strength_of_nothing_saves_nothing_with_a_friction_only_pedal():
    for cycle in ("udds", "hwfet"):
        result = evaluate(cycle_trace(cycle), FRICTION_PEDAL, WARM, Driver(lift_off_mps2=0.0))
        assert result.saved_kwh == pytest.approx(0, abs=1e-12) and result.battery_in_kwh == 0


def test_lift_off_strength_changes_nothing_in_a_blended_car_and_much_with_a_friction_only_pedal():
    def saved(car, strength):
        return evaluate(cycle_trace("udds"), car, WARM, Driver(lift_off_mps2=strength)).saved_share

    assert saved(CAR, 0.3) == saved(CAR, 1.5)
    assert saved(FRICTION_PEDAL, 1.5) > saved(FRICTION_PEDAL, 0.3) + 0.1
    assert saved(CAR, 1.0) >= saved(FRICTION_PEDAL, 3.5)


def test_a_heavy_car_recovers_a_larger_share_and_still_uses_more():
    light, heavy = (
        evaluate(cycle_trace("wltc3b"), car_from("family-hatch", {"mass_kg": mass}), WARM, Driver())
        for mass in (1200.0, 2400.0)
    )
    assert heavy.recovered_share > light.recovered_share
    assert heavy.net_kwh > light.net_kwh


def test_wheel_energies_add_up():
    assert UDDS.wheel_regen_kwh + UDDS.wheel_friction_kwh == pytest.approx(UDDS.wheel_braking_kwh)
    assert UDDS.captured_share == pytest.approx(UDDS.wheel_regen_kwh / UDDS.wheel_braking_kwh)
    assert sum(UDDS.limits_kwh.values()) == pytest.approx(UDDS.wheel_friction_kwh)


def test_the_wall_gives_more_than_the_battery():
    """What the cells lose on the way has to be filled up again too."""
    per_km = (UDDS.net_kwh + UDDS.ledger.cell / 3.6e6) * 1000 / UDDS.distance_km
    assert UDDS.wall_wh_per_km == pytest.approx(per_km / CAR.charging_efficiency)


def test_nothing_saved_where_nothing_is_braked():
    result = evaluate(steady(90, 120), CAR, WARM, Driver())
    assert result.saved_share == 0 and result.recovered_share == 0 and result.captured_share is None


def test_all_downhill_the_car_ends_fuller():
    result = evaluate(steady(50, 600, slope=-0.06), CAR, WARM, Driver())
    assert result.net_kwh < 0 and result.soc[-1] > result.soc[0]
    assert result.saved_share > 1 and result.range_gain is None


def test_nothing_drawn_gives_no_share():
    """Downhill with no accessories and an ideal motor: the battery is only filled."""
    losses = dict.fromkeys(("motor_loss_fixed", "motor_loss_speed", "motor_loss_speed2", "motor_loss_working",
                            "motor_loss_torque2", "open_slowing_share"), 0.0)
    car = car_from("family-hatch", {"accessory_w": 0.0} | losses)
    result = evaluate(steady(50, 60, slope=-0.06), car, WARM, Driver())
    assert result.battery_out_kwh == 0
    assert result.recovered_share is None and result.saved_share is None and result.range_gain is None


def test_a_drive_to_nowhere_is_refused():
    with refuses("distance: the drive has no length"):
        evaluate(ride([0, 0, 0]), CAR, WARM, Driver())


def test_a_battery_that_does_not_last_is_said():
    with refuses(r"soc_start .* 2 % is not enough; the battery would be empty after about \d+ km of"
    ):
        evaluate(cycle_trace("wltc3b"), CAR, Conditions(cabin=False, soc_start=0.02), Driver())


def test_a_battery_too_weak_near_empty_is_said():
    """Voltage falls and resistance rises towards empty: what it gave at the start it cannot give at the end."""
    car = car_from(
        "city-car", {"usable_kwh": 2.0, "cell_resistance_share": 0.055, "resistance_activation_j_per_mol": 0.0}
    )
    flat_out = ride(np.concatenate([np.linspace(0, 100, 30), np.full(470, 100.0)]))
    with refuses("is too little; the battery could not give the power that is asked"):
        evaluate(flat_out, car, Conditions(ambient_c=20.0, cabin=False, soc_start=0.9), Driver())


def test_the_answers_hold_every_promised_key():
    answers = UDDS.answers()
    promised = """distance_km duration_s mean_speed_kmh stops battery_out_kwh battery_in_kwh battery_net_kwh
        battery_net_wh_per_km wall_wh_per_km friction_only_net_kwh recovered_share_of_output energy_saved_share
        range_gain_share wheel_braking_kwh wheel_regen_kwh wheel_friction_kwh captured_share_of_braking ledger_kwh
        ledger_error_share limits_kwh soc_start soc_end pack_temperature_c_end followed_trace"""
    assert set(promised.split()) <= set(answers)
    assert answers["stops"] == 17 and answers["mean_speed_kmh"] == pytest.approx(19.59 * 1.609344, abs=0.02)
    books = answers["ledger_kwh"]
    uses = sum(energy for name, energy in books.items() if not name.startswith("cells_"))
    assert books["cells_given"] - books["cells_taken"] == pytest.approx(uses)


def test_charge_at_the_end_is_what_the_cells_gave():
    out = (UDDS.ledger.cells_given - UDDS.ledger.cells_taken) / 3.6e6
    assert UDDS.soc[0] - UDDS.soc[-1] == pytest.approx(out / CAR.usable_kwh, rel=1e-5)


def test_standing_at_the_start_with_the_car_rolling_counts_its_motion():
    """A drive that begins at speed and ends at rest gives its motion back."""
    result = evaluate(ride(np.linspace(100, 0, 60)), CAR, WARM, Driver())
    assert result.ledger.kinetic == pytest.approx(-CAR.mass_kg * 1.04 * (100 / 3.6) ** 2 / 2)
    assert result.net_kwh < 0 and result.ledger.error_share < 1e-9


def test_more_stops_save_more():
    few, many = (evaluate(stop_and_go(4, top), CAR, WARM, Driver()) for top in (30.0, 60.0))
    assert many.saved_kwh > few.saved_kwh > 0
