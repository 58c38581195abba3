"""The reference car of the coasting comparisons: every loss replaced by 0.85 each way, in air of 1.2 kg/m³."""

import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions
from model.physics.air_and_tyres import air_density

REFERENCE_CAR = {
    "mass_kg": 1900.0,
    "rotating_mass_share": 0.04,
    "rolling_coefficient": 0.009,
    "drag_area_m2": 0.62,
    "gear_efficiency": 0.85,
    "motor_loss_fixed": 0.0,
    "motor_loss_speed": 0.0,
    "motor_loss_speed2": 0.0,
    "motor_loss_working": 0.0,
    "motor_loss_torque2": 0.0,
    "open_slowing_share": 0.0,
    "zero_torque_drag_share": 0.0,
    "cell_resistance_share": 0.0,
    "accessory_w": 0.0,
    "fade_start_kmh": 0.0,
    "fade_end_kmh": 0.0,
    "regen_cap_mps2": 8.0,
}
AIR_KG_M3 = 1.2


@pytest.fixture(scope="session")
def reference_car():
    return car_from("family-hatch", REFERENCE_CAR)


@pytest.fixture(scope="session")
def reference_conditions():
    """20 °C, where tyres roll as stated, at the height where air has that density: pressure goes with its 5.25588th."""
    altitude_m = (1 - (AIR_KG_M3 / air_density(20.0, 0.0)) ** (1 / 5.25588)) / 2.25577e-5
    assert air_density(20.0, altitude_m) == pytest.approx(AIR_KG_M3, rel=1e-9)
    return Conditions(ambient_c=20.0, cabin=False, altitude_m=altitude_m)
