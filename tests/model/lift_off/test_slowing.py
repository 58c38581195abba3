"""What the car does when the foot comes up."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.units import GRAVITY_MPS2
from model.lift_off.slowing import equilibrium_grade, foot_up_mps2, holding, lamp_zone_of, rolling, word_of

HATCH = car_from("family-hatch")
WARM = Conditions(ambient_c=20.0, cabin=False)
SPEED = np.array([30.0, 50.0, 80.0, 120.0]) / 3.6


@pytest.mark.parametrize(
    "strength, word, lamps",
    [
        (0.0, "rolling on", "not lit"),
        (0.1, "gentle", "not lit"),
        (0.7, "gentle", "not lit"),
        (0.8, "firm", "may be lit"),
        (1.3, "firm", "may be lit"),
        (1.4, "strong", "lit"),
    ],
)
def test_words_change_where_the_stop_lamps_do(strength, word, lamps):
    assert (word_of(strength), lamp_zone_of(strength)) == (word, lamps)


@pytest.mark.parametrize("strength", [0.7, 1.0, 1.3])
def test_strength_is_the_total_slowing_on_a_flat_road(strength):
    assert foot_up_mps2(SPEED, HATCH, WARM, Driver(lift_off_mps2=strength)) == pytest.approx(strength)


def test_a_car_never_slows_less_than_it_rolls():
    rolled = rolling(SPEED, HATCH, WARM).slowing_mps2
    assert foot_up_mps2(SPEED, HATCH, WARM, Driver(lift_off_mps2=0.0)) == pytest.approx(rolled)
    free = replace(HATCH, zero_torque_drag_share=0.0)
    assert (rolling(SPEED, free, WARM).slowing_mps2 < rolled).all()


def test_a_weak_motor_fades_at_speed():
    weak = replace(HATCH, regen_peak_kw=30.0)
    slowing = foot_up_mps2(SPEED, weak, WARM, Driver(lift_off_mps2=2.0))
    assert slowing[0] == pytest.approx(2.0)
    assert slowing[-1] < 1.0
    # force times speed is the motor's power, gear loss paid by the wheels
    road = rolling(SPEED, weak, WARM)
    motor_w = (slowing[-1] * road.effective_kg - road.flat_n[-1]) * SPEED[-1]
    assert motor_w * weak.gear_efficiency == pytest.approx(30_000)


def test_followers_see_less_slowing_downhill_and_more_uphill():
    """The motor's force stays that of a flat road, so the hill's pull comes on top."""
    flat, down, up = foot_up_mps2(np.full(3, 50 / 3.6), HATCH, WARM, Driver(lift_off_mps2=1.3), [0.0, -0.06, 0.06])
    pull = GRAVITY_MPS2 * 0.06 / np.sqrt(1 + 0.06**2) / (1 + HATCH.rotating_mass_share)
    assert flat - down == pytest.approx(pull, rel=0.01)
    assert up - flat == pytest.approx(pull, rel=0.01)
    assert lamp_zone_of(down) == "may be lit" and lamp_zone_of(up) == "lit"


def test_the_strength_that_holds_a_grade_holds_it():
    found = holding(50 / 3.6, [0.005, 0.06, 0.10], HATCH, WARM, Driver())
    assert np.isnan(found.strength_mps2[0]) and found.held[0]
    for grade, strength in zip(found.grade[1:], found.strength_mps2[1:], strict=True):
        slowing = foot_up_mps2(50 / 3.6, HATCH, WARM, Driver(lift_off_mps2=float(strength)), -grade)
        assert slowing == pytest.approx(0, abs=1e-9)


def test_a_full_or_cold_battery_cannot_hold_a_steep_hill():
    grades = [0.08, 0.16]
    ready = holding(80 / 3.6, grades, HATCH, WARM, Driver())
    full = holding(80 / 3.6, grades, HATCH, replace(WARM, soc_start=1.0), Driver())
    assert ready.held[0] and not full.held.any()
    assert full.can_kw[0] < ready.can_kw[0]
    np.testing.assert_allclose(full.strength_mps2, ready.strength_mps2)


def test_near_standstill_a_fading_motor_holds_no_hill():
    for speed_kmh, held in ((3, False), (8, False), (20, True)):
        assert holding(speed_kmh / 3.6, 0.06, HATCH, WARM, Driver()).held[0] == held


def test_a_rolling_car_keeps_its_speed_on_the_equilibrium_grade():
    grade = equilibrium_grade(SPEED, HATCH, WARM)
    assert rolling(SPEED, HATCH, WARM, -grade).slowing_mps2 == pytest.approx(0, abs=1e-6)
    assert (np.diff(grade) > 0).all()


def test_a_trailer_weighs_on_the_slowing_but_not_on_the_motor():
    towing = replace(WARM, trailer_kg=1000.0)
    alone, with_trailer = (foot_up_mps2(SPEED, HATCH, on, Driver(lift_off_mps2=1.3)) for on in (WARM, towing))
    assert (with_trailer < alone).all()
