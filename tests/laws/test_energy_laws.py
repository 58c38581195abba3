"""What holds for every car, road, weather and driver: energy is neither made nor lost, and shares stay shares."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from model.describe.fields import InputError
from model.describe.parameters import car_from, class_labels, open_figures
from model.describe.scenario import SURFACES, Conditions, Driver
from model.describe.trace import Trace
from model.kernel.run import ledger_of
from model.kernel.savings import evaluate
from model.sampling.uncertainty import triangular

UNIT = st.floats(0, 1)


@st.composite
def cars(draw, **stated):
    """A car of any class, each assumed figure anywhere within its band."""
    car_class = draw(st.sampled_from(list(class_labels())))
    pedal = {"brake_pedal": draw(st.sampled_from(["blended", "friction"]))}
    figures = open_figures(car_class, {})
    share = np.array(draw(st.lists(UNIT, min_size=6, max_size=6)))
    drawn = {
        # six draws shared out over the figures keep the search small
        key: float(triangular(share[index % 6], item.low, item.mid, item.high))
        for index, (key, item) in enumerate(figures.items())
        if key != "grip_level"
    }
    return car_from(car_class, drawn | pedal | stated)


@st.composite
def traces(draw, flat=False, rest_to_rest=False):
    """Speeds between targets, reached at no more than 3 m/s², on slopes of up to 10 %."""
    targets = draw(st.lists(st.one_of(st.just(0.0), st.floats(3, 38)), min_size=2, max_size=6))
    pace = draw(st.floats(0.4, 3.0))
    if rest_to_rest:
        targets = [0.0, *targets, 0.0]
    speed = [np.array(targets[:1])]
    for before, after in pairwise(targets):
        steps = max(3, int(abs(after - before) / pace) + 1)
        speed += [np.linspace(before, after, steps + 1)[1:], np.full(draw(st.integers(0, 25)), after)]
    speed_mps = np.concatenate(speed)
    slope = 0.0 if flat else np.interp(
        np.linspace(0, 1, len(speed_mps) - 1),
        np.linspace(0, 1, 4),
        np.array(draw(st.lists(st.floats(-0.1, 0.1), min_size=4, max_size=4))),
    )  # fmt: skip
    rise = (speed_mps[:-1] + speed_mps[1:]) / 2 * slope
    assume(speed_mps.max() > 0)
    return Trace(
        time_s=np.arange(float(len(speed_mps))),
        speed_mps=speed_mps,
        elevation_m=np.concatenate([[0.0], np.cumsum(rise)]),
    )


CONDITIONS = st.builds(
    Conditions,
    ambient_c=st.floats(-25, 40),
    cabin=st.booleans(),
    surface=st.sampled_from(SURFACES),
    grip_level=st.floats(-1, 1),
    wind_kmh=st.floats(-60, 60),
    altitude_m=st.floats(0, 3000),
    soc_start=st.floats(0.3, 1),
    payload_kg=st.floats(0, 400),
    preconditioned=st.booleans(),
    plugged_in=st.booleans(),
)
DRIVERS = st.builds(Driver, lift_off_mps2=st.floats(0, 3), comes_to_rest=st.booleans())


def driven(trace, car, conditions, driver):
    """The result; drives that this car cannot do are no example."""
    try:
        return evaluate(trace, car, conditions, driver)
    except InputError:
        assume(False)


def energy_is_neither_made_nor_lost(result):
    assert result.ledger.error_share < 1e-9
    assert ledger_of(result.friction_only, result.trace).error_share < 1e-9


def shares_stay_shares_and_every_braked_joule_is_accounted_for(result):
    tiny = 1e-12
    assert np.all(result.run.motor_n >= 0) and np.all(result.run.friction_n >= -1e-9)
    assert 0 <= result.battery_in_kwh <= result.wheel_regen_kwh + tiny
    assert result.wheel_regen_kwh <= result.wheel_braking_kwh + tiny
    assert result.captured_share is None or 0 <= result.captured_share <= 1 + 1e-12
    assert sum(result.limits_kwh.values()) == pytest.approx(result.wheel_friction_kwh, rel=1e-9, abs=tiny)
    engine_drag_kwh = result.ledger.engine_drag / 3.6e6
    slowed = result.wheel_regen_kwh + result.wheel_friction_kwh + engine_drag_kwh
    assert slowed == pytest.approx(result.wheel_braking_kwh, abs=tiny)


def charge_stays_between_empty_and_full(result, car, conditions):
    assert result.soc.min() >= 0 and result.soc.max() <= 1 + 1e-6
    cells_kwh = (result.ledger.cells_given - result.ledger.cells_taken) / 3.6e6
    assert conditions.soc_start - result.soc[-1] == pytest.approx(cells_kwh / car.usable_kwh, abs=3e-6)


def friction_brakes_only_never_use_less(result):
    assert result.saved_kwh >= -1e-9
    assert result.wheel_friction_kwh <= result.friction_only_wheel_friction_kwh + 1e-12


def the_shares_are_one_another_in_other_words(result):
    if result.recovered_share is not None:
        assert result.recovered_share * result.battery_out_kwh == pytest.approx(result.battery_in_kwh)
    if result.saved_share is not None:
        assert (1 - result.saved_share) * result.friction_only_net_kwh == pytest.approx(result.net_kwh, abs=1e-12)
    if result.range_gain is not None:
        assert (1 + result.range_gain) * result.net_kwh == pytest.approx(result.friction_only_net_kwh)
        assert result.range_gain == pytest.approx(result.saved_share / (1 - result.saved_share))


@given(traces(), cars(), CONDITIONS, DRIVERS)
def test_every_drive_keeps_the_laws(trace, car, conditions, driver):
    """One drive for all: to make and to drive it costs far more than to look at it."""
    result = driven(trace, car, conditions, driver)
    energy_is_neither_made_nor_lost(result)
    shares_stay_shares_and_every_braked_joule_is_accounted_for(result)
    charge_stays_between_empty_and_full(result, car, conditions)
    friction_brakes_only_never_use_less(result)
    the_shares_are_one_another_in_other_words(result)


@given(traces(), cars(pack_heater_kw=0.0), CONDITIONS, DRIVERS)
def test_a_drive_books_what_friction_brakes_only_would_have_taken(trace, car, conditions, driver):
    result = driven(trace, car, conditions, driver)
    assert result.run.friction_only_net_j == pytest.approx(result.friction_only.net_j, rel=1e-12, abs=1e-6)


def test_friction_brakes_only_never_use_less_where_the_motor_would_work_for_next_to_nothing():
    speed = np.minimum(np.concatenate([np.zeros(4), np.arange(12) * 23 / 12, np.full(40, 23.0)]), 23.0)
    metres = np.cumsum(np.concatenate([[0.0], (speed[1:] + speed[:-1]) / 2]))
    height = -0.027 * np.maximum(metres - metres[16], 0.0)
    trace = Trace(time_s=np.arange(len(speed), dtype=float), speed_mps=speed, elevation_m=height)
    figures = {"rolling_coefficient": 0.0042, "drag_area_m2": 0.8, "motor_loss_working": 0.004}
    car = car_from("compact-crossover", figures)
    result = evaluate(trace, car, Conditions(ambient_c=0.0, cabin=False), Driver())
    assert result.saved_kwh >= -1e-9
    assert set(result.limits_kwh) == {"nothing_to_gain"}


@given(traces(flat=True, rest_to_rest=True), cars(), CONDITIONS, DRIVERS)
def test_on_the_flat_less_comes_back_than_went_out(trace, car, conditions, driver):
    still = replace(conditions, wind_kmh=0.0)
    result = driven(trace, car, still, driver)
    assert result.net_kwh > 0
    assert 0 <= result.recovered_share < 1 and result.saved_share < 1


@given(traces(flat=True, rest_to_rest=True), cars(), st.floats(1.02, 1.5))
def test_more_mass_never_uses_less(trace, car, heavier):
    """From rest to rest on the flat, where what is put into motion is never all got back."""
    warm = Conditions(ambient_c=20.0, cabin=False)
    results = [driven(trace, each, warm, Driver()) for each in (car, replace(car, mass_kg=car.mass_kg * heavier))]
    assume(all(result.followed for result in results))
    light, heavy = results
    assert heavy.friction_only_net_kwh >= light.friction_only_net_kwh
    assert heavy.net_kwh >= light.net_kwh


@given(traces(), cars(brake_pedal="friction"), CONDITIONS, st.floats(0, 2), st.floats(0, 1))
def test_a_stronger_lift_off_leaves_no_more_to_friction(trace, car, conditions, strength, more):
    weak, strong = (driven(trace, car, conditions, Driver(lift_off_mps2=each)) for each in (strength, strength + more))
    assert strong.wheel_regen_kwh >= weak.wheel_regen_kwh - 1e-7 * weak.wheel_braking_kwh


@given(traces(), cars(), CONDITIONS, DRIVERS)
def test_a_slower_car_drives_the_same_road(trace, car, conditions, driver):
    result = driven(trace, replace(car, motor_peak_kw=car.motor_peak_kw / 3), conditions, driver)
    assert result.distance_km * 1000 == pytest.approx(trace.distance_m, rel=1e-6)
    assert np.all(result.trace.speed_mps <= trace.speed_mps + 1e-9)
    assert result.trace.duration_s >= trace.duration_s - 1e-6
    assert result.followed == np.array_equal(result.trace.speed_mps, trace.speed_mps)
