"""One slow-down at equal distance, holding a hill, and coasting before a slope ends.

The tables were computed by hand for the reference car with constant forces in steps of speed. Am. J. Phys. 89, 1018
(2021): the best coasting before the end of a typical slope saves only a few watt-hours.
"""

import numpy as np
import pytest

from model.describe.scenario import Driver
from model.lift_off.slowing import equilibrium_grade, holding, rolling
from model.one_stop.slow_down import change, compare, drive_way, keep

TOTAL_SLOWING = 1.3


@pytest.mark.parametrize(
    "start, end, coast_s, regen_wh, hold_s, friction_wh",
    [(120, 80, 48.9, 91, 41.5, 209), (80, 50, 57.3, 42, 47.0, 104), (50, 0, 144.9, 27, 73.4, 68)],
)
def test_three_ways_at_equal_distance(
    reference_car, reference_conditions, start, end, coast_s, regen_wh, hold_s, friction_wh
):
    ways = compare(start / 3.6, end / 3.6, reference_car, reference_conditions, Driver(), slowing_mps2=TOTAL_SLOWING)
    print(
        f"{start} to {end} km/h: coasting {ways.coast.time_s:.1f} s; hold then motor {ways.regen.battery_wh:.1f} Wh in "
        f"{ways.regen.time_s:.1f} s; hold then friction {ways.friction.battery_wh:.1f} Wh; "
        f"break-even {ways.break_even_kmh:.0f} km/h"
    )
    assert ways.coast.battery_wh == pytest.approx(0, abs=1e-6)
    assert ways.coast.time_s == pytest.approx(coast_s, rel=0.02)
    assert ways.regen.battery_wh == pytest.approx(regen_wh, rel=0.02)
    assert ways.friction.battery_wh == pytest.approx(friction_wh, rel=0.02)
    for way in (ways.regen, ways.friction):
        assert way.time_s == pytest.approx(hold_s, rel=0.02)
        assert way.distance_m == pytest.approx(ways.coast.distance_m, rel=1e-6)


def test_lift_off_that_holds_a_grade(reference_car, reference_conditions):
    grades, published = np.array([0.04, 0.06, 0.08, 0.10, 0.14]), [0.38, 0.57, 0.75, 0.94, 1.31]
    for speed_kmh in (50, 80):
        found = holding(speed_kmh / 3.6, grades, reference_car, reference_conditions, Driver())
        print(f"at {speed_kmh} km/h: {found.strength_mps2.round(3)} m/s², {found.asked_kw.round(1)} kW")
        assert found.strength_mps2 == pytest.approx(published, rel=0.02)


def test_equilibrium_grades_and_road_load(reference_car, reference_conditions):
    speed = np.array([50, 80, 120]) / 3.6
    found = equilibrium_grade(speed, reference_car, reference_conditions)
    print(f"a rolling car keeps 50, 80 and 120 km/h on {(100 * found).round(2)} %")
    assert 100 * found == pytest.approx([1.3, 1.9, 3.1], abs=0.1)
    assert rolling(speed, reference_car, reference_conditions).slowing_mps2 == pytest.approx(
        [0.12, 0.18, 0.29], abs=0.005
    )


def best_before_slope_ends(speed, grade, car, conditions):
    """The most that rolling saves before a downhill ends on the flat [Wh], from how far before [m], up to which speed.

    The car rolls, gains speed to the slope's end and loses it on the flat; against keeping its speed, on the motor
    downhill and under power on the flat.
    """
    best = (0.0, 0.0, speed)
    for top in np.linspace(1.0, 2.0, 81)[1:] * speed:
        if rolling(np.array([speed, top]), car, conditions, -grade).slowing_mps2.max() >= 0:
            break
        down = change(speed, top, 0.0, car, conditions, -grade, steps=100)
        out = change(top, speed, 0.0, car, conditions, steps=100)
        rolled = drive_way([down, out], car, conditions, Driver())
        kept = [keep(speed, down.distance_m, -grade), keep(speed, out.distance_m)]
        held = drive_way(kept, car, conditions, Driver(lift_off_mps2=8.0))
        best = max(best, (held.battery_wh - rolled.battery_wh, down.distance_m, top))
    return best


@pytest.mark.parametrize("speed_kmh", [50, 80])
@pytest.mark.parametrize("grade", [0.03, 0.04, 0.06])
def test_the_best_coasting_before_a_slope_ends_saves_a_few_watt_hours(
    reference_car, reference_conditions, speed_kmh, grade
):
    saved_wh, before_m, top = best_before_slope_ends(speed_kmh / 3.6, grade, reference_car, reference_conditions)
    print(
        f"{speed_kmh} km/h, {grade:.0%}: {saved_wh:.1f} Wh saved by coasting from {before_m:.0f} m before the end, up "
        f"to {3.6 * top:.0f} km/h"
    )
    assert 0 < saved_wh < 10 and top > speed_kmh / 3.6
