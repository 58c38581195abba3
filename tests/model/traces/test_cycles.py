"""Standard cycles against the totals published with them."""

import numpy as np
import pytest

from model.traces.cycles import CYCLES, cycle_trace
from tests.refused import refuses

MILE_M = 1609.344


@pytest.mark.parametrize(
    "name, duration_s, distance_m, within_m, top_kmh",
    [
        # 40 CFR Part 86 App. I and Part 600 App. I: distance in miles to two places
        ("udds", 1369, 7.45 * MILE_M, 0.005 * MILE_M, 56.7 * 1.609344),
        ("hwfet", 765, 10.26 * MILE_M, 0.005 * MILE_M, 59.9 * 1.609344),
        ("us06", 600, 8.01 * MILE_M, 0.005 * MILE_M, 80.3 * 1.609344),
        ("nycc", 598, 1.18 * MILE_M, 0.005 * MILE_M, 27.7 * 1.609344),
        # UN GTR No. 15, Annex 1: metres
        ("wltc3b", 1800, 23266, 1, 131.3),
        ("wltc3b-low", 589, 3095, 1, 56.5),
        ("wltc3b-medium", 433, 4756, 1, 76.6),
        ("wltc3b-high", 455, 7162, 1, 97.4),
        ("wltc3b-extra-high", 323, 8254, 1, 131.3),
        # UN R83, Annex 4a: 4 x 1.013 km and 6.955 km; the table's ramps add a few metres, its last second is left out
        ("nedc", 1179, 11007, 10, 120),
        ("nedc-urban", 780, 4 * 1013, 10, 50),
        ("nedc-extra-urban", 399, 6955, 1, 120),
    ],
)
def test_totals(name, duration_s, distance_m, within_m, top_kmh):
    trace = cycle_trace(name)
    assert trace.duration_s == duration_s and np.all(trace.step_s == 1)
    assert trace.distance_m == pytest.approx(distance_m, abs=within_m)
    assert trace.speed_mps.max() * 3.6 == pytest.approx(top_kmh, abs=1e-9)
    assert trace.climb_m == trace.descent_m == 0


def test_sum_of_speeds_of_the_world_cycle():
    """UN GTR No. 15 prints the sum of its speeds as a checksum: 83758.6 km/h."""
    assert cycle_trace("wltc3b").speed_mps.sum() * 3.6 == pytest.approx(83758.6, abs=0.05)


def test_phases_make_up_the_whole():
    phases = [name for name in CYCLES if name.startswith("wltc3b-")]
    assert sum(cycle_trace(name).distance_m for name in phases) == pytest.approx(cycle_trace("wltc3b").distance_m)
    parts = cycle_trace("nedc-urban").distance_m + cycle_trace("nedc-extra-urban").distance_m
    assert parts == pytest.approx(cycle_trace("nedc").distance_m)


def test_arrivals_at_rest():
    assert cycle_trace("udds").stops == 17 and cycle_trace("hwfet").stops == 1


def test_mean_speeds():
    udds, hwfet = cycle_trace("udds"), cycle_trace("hwfet")
    assert udds.distance_m / udds.duration_s * 3.6 / 1.609344 == pytest.approx(19.59, abs=0.01)
    assert hwfet.distance_m / hwfet.duration_s * 3.6 / 1.609344 == pytest.approx(48.3, abs=0.05)


def test_every_cycle_names_its_regulation_and_starts_at_rest():
    for name, cycle in CYCLES.items():
        assert cycle.regulation
        assert cycle_trace(name).time_s[0] == 0 and cycle_trace(name).speed_mps[0] == 0


def test_an_unknown_cycle_is_refused():
    with refuses("“wltp” is not one of udds, hwfet, "):
        cycle_trace("wltp")
