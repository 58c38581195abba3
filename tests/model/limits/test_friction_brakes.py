"""Front discs' heat on descents and in repeated stops, and how little the friction brakes are used."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.limits.friction_brakes import (
    FADE_BAND_C,
    FRONT_SHARE,
    brake_use,
    disc_temperature_c,
    disc_temperature_of,
    fade_caution,
)
from tests.made_traces import ride, steady, stop_and_go

CAR = car_from("family-hatch")
WARM = Conditions(ambient_c=20.0, cabin=False)
CAPACITY_J_PER_K = CAR.disc_heat_capacity_kj_per_k_t * 1000 * CAR.mass_kg / 1000


def heated(power_w, seconds, speed=0.0, start_c=20.0, steps=100):
    lengths = np.full(steps, seconds / steps)
    each = np.full(steps, 1.0)
    return disc_temperature_c(CAR, power_w * each, lengths, speed * each, 20.0 * each, start_c)


def test_a_short_stop_heats_by_its_energy_over_the_heat_capacity():
    reached = heated(100e3, 2.0)[-1] - 20
    assert reached == pytest.approx(FRONT_SHARE * 200e3 / CAPACITY_J_PER_K, rel=0.01)


def test_nothing_braked_cools_to_the_air_and_never_below():
    cooling = heated(0.0, 7200.0, speed=15.0, start_c=400.0)
    assert np.all(np.diff(cooling) <= 0) and 20 <= cooling[-1] < 21
    assert heated(0.0, 3600.0) == pytest.approx(20)


def test_steady_heat_settles_where_cooling_takes_as_much_and_moving_air_helps():
    still, moving = (heated(5000.0, 20000.0, speed)[-1] for speed in (0.0, 25.0))
    assert still > moving > 20
    kelvin, around = moving + 273.15, 293.15
    tonnes = CAR.mass_kg / 1000
    convection = CAR.disc_cooling_w_per_k_t * tonnes * (1 + 25 / 21.5) * (kelvin - around)
    radiation = 0.55 * 5.67e-8 * 0.4 * tonnes * (kelvin**4 - around**4)
    assert convection + radiation == pytest.approx(FRONT_SHARE * 5000, rel=1e-3)


def test_steps_of_any_length_give_the_same():
    assert heated(20e3, 600.0, 14.0, steps=30)[-1] == pytest.approx(heated(20e3, 600.0, 14.0, steps=600)[-1], rel=0.01)


def test_hundred_to_rest_fifteen_times_over():
    """FMVSS 135, S7.13: 15 snubs from 120 to 60 km/h at 3 m/s², every 45 s."""

    def snubs(mass_kg):
        # 120 to 60 km/h at 3 m/s² takes 5.6 s; then 39.4 s at speed
        braking_s, mean = 60 / 3.6 / 3.0, 90 / 3.6
        power = np.tile([mass_kg * 3.0 * mean, 0.0], 15)
        lengths, speeds = np.tile([braking_s, 45 - braking_s], 15), np.tile([mean, 120 / 3.6], 15)
        return disc_temperature_c(CAR, power, lengths, speeds, np.full(30, 20.0), 20.0)[1::2]

    discs = snubs(CAR.mass_kg)
    print("discs after each heating snub:", np.round(discs))
    assert len(discs) == 15 and np.all(np.diff(discs) > 0)
    assert np.all(np.diff(discs, n=2) < 0)
    assert 200 < discs[-1] < 500
    assert snubs(CAR.mass_kg + 400.0)[-1] > discs[-1]


def test_the_caution_names_where_the_hottest_moment_lies():
    low, high = FADE_BAND_C
    assert [fade_caution(each) for each in (low - 1, low, high, high + 1)] == ["below", "within", "within", "above"]


def test_a_run_heats_the_discs_with_what_friction_took():
    result = evaluate(steady(60, 600, slope=-0.08), CAR, replace(WARM, soc_start=1.0), Driver())
    with_regen, without = (disc_temperature_of(run, CAR) for run in (result.run, result.friction_only))
    assert len(without) == len(result.trace.time_s) and without[0] == 20
    assert without.max() > with_regen.max() > 100
    part = evaluate(steady(60, 600, slope=-0.08), CAR, WARM, Driver())
    assert disc_temperature_of(part.run, CAR).max() < 25


def test_use_of_the_brakes_for_a_hundred_kilometres():
    result = evaluate(stop_and_go(6), CAR, WARM, Driver())
    use = brake_use(result)
    assert use.kwh_per_100km * result.distance_km / 100 == pytest.approx(result.wheel_friction_kwh)
    assert use.friction_only_kwh_per_100km > 3 * use.kwh_per_100km > 0
    assert use.firm_uses == 0 and use.days_between_firm_uses(2.0) is None


def test_a_hard_stop_is_a_firm_use():
    hard = ride(np.concatenate([np.linspace(0, 90, 60), np.linspace(90, 0, 6), [0, 0]]))
    use = brake_use(evaluate(hard, CAR, WARM, Driver()))
    assert use.firm_uses == 1
    assert use.days_between_firm_uses(0.5) == 2
