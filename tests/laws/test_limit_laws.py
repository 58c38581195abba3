"""What holds whenever regeneration meets a limit: charge, acceptance, grip, heat."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.describe.parameters import car_from, class_labels
from model.describe.scenario import SURFACES, Conditions, Driver
from model.kernel.savings import evaluate
from model.limits.descent import hill
from model.limits.emergency_stop import emergency_stop
from model.limits.friction_brakes import disc_temperature_c
from model.limits.grip_margin import demand_friction, grip_asked, largest_lift_off_mps2
from model.physics.battery import acceptance_w

CAR_CLASSES = st.sampled_from(list(class_labels()))
LEVELS = st.floats(-1, 1)
DRIVER = Driver()


@st.composite
def descents(draw):
    """A long or a short way down, at any charge and cold, in any car."""
    trace = hill(-draw(st.floats(20, 600)), draw(st.floats(4, 14)), draw(st.floats(30, 100)))
    conditions = Conditions(
        ambient_c=draw(st.floats(-25, 40)), cabin=draw(st.booleans()), soc_start=draw(st.floats(0.3, 1)),
        trailer_kg=draw(st.sampled_from([0.0, 1500.0])), surface=draw(st.sampled_from(SURFACES)),
        parked_c=draw(st.none() | st.floats(-10, 20)),
    )  # fmt: skip
    car = car_from(
        draw(CAR_CLASSES), {"acceptance_level": draw(LEVELS), "pack_heater_kw": draw(st.sampled_from([0.0, 4.0]))}
    )
    return evaluate(trace, car, conditions, DRIVER)


@given(descents())
def test_charge_stays_within_the_battery_and_nothing_goes_in_that_it_does_not_take(result):
    for run in (result.run, result.friction_only):
        assert run.soc.min() >= 0 and run.soc.max() <= 1 + 1e-12
    run = result.run
    accepted = acceptance_w(result.car, np.clip(run.soc[:, :-1], 0, 1), run.pack_c[:, :-1])[0]
    assert np.all(-run.terminal_w[0] <= np.maximum(accepted, 0) * (1 + 1e-4) + 1)
    assert result.ledger.error_share < 1e-9


@given(CAR_CLASSES, LEVELS, st.floats(-20, 35))
def test_a_full_battery_at_the_top_recovers_nothing_until_there_is_room(car_class, level, ambient_c):
    """Part-charged and warm, the same way down gives something back."""
    car = car_from(car_class, {"acceptance_level": level})
    full = Conditions(ambient_c=ambient_c, cabin=False, soc_start=1.0)
    down = hill(-60, 8, 60)
    assert evaluate(down, car, full, DRIVER).battery_in_kwh < 1e-12
    roomy = replace(full, soc_start=0.8, battery_temp_c=25.0)
    assert evaluate(down, car, roomy, DRIVER).battery_in_kwh > 1e-3


@given(
    st.sampled_from(["front", "rear", "all"]), st.floats(0.4, 0.65), st.floats(0.03, 0.9), st.floats(0, 25),
    st.floats(30, 500), st.floats(-0.12, 0.12),
)  # fmt: skip
def test_the_largest_lift_off_is_the_last_that_grip_allows(axle, front_share, friction, speed, radius, grade):
    car, plain = car_from("family-hatch", {"driven_axle": axle, "front_load_share": front_share}), Conditions()
    most = float(largest_lift_off_mps2(car, plain, friction, speed, radius, grade))

    def asked(strength):
        return float(demand_friction(grip_asked(car, plain, strength, speed, radius, grade), axle))

    if most > 0:
        assert asked(most) == pytest.approx(friction, rel=1e-6)
        assert asked(most + 0.01) > friction
        assert float(largest_lift_off_mps2(car, plain, friction * 1.1, speed, radius, grade)) > most
    else:
        assert asked(1e-9) >= friction * (1 - 1e-6)


@given(st.floats(10, 150), LEVELS, st.sampled_from(SURFACES), st.sampled_from(["any", "summer", "winter"]))
def test_stops_are_longer_from_faster(from_kmh, level, surface, tyres):
    """With the square of speed on brakes that act at once; while they build up the car covers road with its speed."""
    road = Conditions(surface=surface, tyres=tyres)
    at_once, as_built = car_from("family-hatch", {"brake_build_up_s": 0.0}), car_from("family-hatch")
    for car, longer in ((at_once, 1.44), (as_built, 1.2)):
        stop, faster = (emergency_stop(car, road, kmh, level=level) for kmh in (from_kmh, from_kmh * 1.2))
        assert faster.braking_m >= longer * stop.braking_m * (1 - 1e-9)
    assert 0 <= stop.motor_j <= stop.braked_j * (1 + 1e-12)


@given(st.lists(st.floats(0, 200e3), min_size=1, max_size=30), st.floats(0, 40), st.floats(-20, 40))
def test_discs_are_never_cooler_than_the_air_nor_hotter_than_their_heat(powers, speed, ambient_c):
    car = car_from("family-hatch")
    steps, each = np.array(powers), np.ones(len(powers))
    discs = disc_temperature_c(car, steps, 10 * each, speed * each, ambient_c * each, ambient_c)
    capacity = car.disc_heat_capacity_kj_per_k_t * car.mass_kg
    assert np.all(discs >= ambient_c - 1e-9)
    assert np.all(discs[1:] <= ambient_c + np.cumsum(0.7 * steps * 10) / capacity + 1e-6)
