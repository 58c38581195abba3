"""US EPA, Data on Cars used for Testing Fuel Economy, model years 2019 to 2025: 216 battery cars of 7 makers' groups.

See ``assets/published/README.md``. Constants of the model are the same for all cars and come from physics and from
what drive units lose elsewhere; a group's bands come from the other groups alone. The bounds were set before looking.
What is marked as not held misses its bound today; why stands beside it.

But the loss constants, and the form of the draws (which shares are left open, and how they are spread), were chosen
while looking at this file. So were two steps of a class's spread: it is wider the fewer groups a kind has, then air and
rolling are drawn together; what the city's narrowed bands hold rose from 82.9 to 84.3 and to 85.2 %. Leaving a group
out takes it from the bands' width, not from those choices, so errors and coverage on this file are optimistic: what
counts is how the model does on cars kept apart.
"""

import csv

import numpy as np
import pytest

from model.checks.certified import GIVEN, SAID, certified_found
from model.describe.tables import rows
from model.physics.motor_and_gear import STATED_AT_KMH
from model.sampling.own_part import OWN_SHARE
from tests.published import certified_cars, class_road_loads
from tests.published.certified_cars import COLUMNS, FOUND, KNOWN, LEAST, OPEN_KEYS, certified_rows, found

CYCLES = ("udds", "hwfet")
ONE_FAMILY = (
    "48 large cars of one family of makers take 15 to 40 % more in the city, and 8 to 25 % on the highway, than others "
    "of the same weight, road load and power. Neither what they drag on the rollers nor their axles, year or quality "
    "of test sets them apart from its other cars, and losses chosen anew within their bands from the other groups "
    "leave the 90th percentile at 20 to 22 % in the city. Each group known by its own level would leave 16.7 and "
    "11.3 %, and no plain regression on the list reaches the bound (`test_what_the_list_leaves_open`)"
)
NO_DRAW = (
    ". A draw aboard that grows with weight, 300 W a tonne about 300 W at 2 t, makes it 4.3, but no source gives one "
    "and it takes the root mean square error, groups counted alike, from 10.8 to 12.5 % in the city"
)


def signed(all_):
    return abs(np.median(all_.errors_pct))


def size(all_):
    return np.median(abs(all_.errors_pct))


def size_90(all_):
    return np.quantile(abs(all_.errors_pct), 0.9)


def held(band):
    return lambda all_: all_.held_pct(band)


def half(band):
    return lambda all_: all_.half_width_pct(band)


def trend(values):
    """The largest median of a quartile of the cars once their group's own level is removed."""

    def found_trend(all_):
        groups, errors = np.array(all_.groups), all_.errors_pct.copy()
        for group in set(all_.groups):
            errors[groups == group] -= np.median(errors[groups == group])
        of = np.array([float(values[name]) for name in all_.ids])
        quartile = np.searchsorted(np.quantile(of, [0.25, 0.5, 0.75]), of)
        medians = [float(np.median(errors[quartile == place])) for place in range(4) if (quartile == place).any()]
        print(f"    quartiles {np.round(medians, 1)}")
        return max(map(abs, medians))

    return found_trend


POWER = {row["id"]: row["rated_hp"] for row in certified_rows()}
WEIGHT = {row["id"]: row["etw_lb"] for row in certified_rows()}
AXLE = {row["id"]: ("front", "rear", "all").index(row["drive"]) for row in certified_rows()}
BOUNDS = [
    ("road load", "median error", signed, (0, 2), (0, 2)),
    ("road load", "median size", size, (0, 7.5), (0, 4.2)),
    ("road load", "90th percentile", size_90, (0, 16), (0, 9.5)),
    ("road load", "trend with power", trend(POWER), (0, 6), (0, 6)),
    ("road load", "trend with weight", trend(WEIGHT), (0, 6), (0, 6)),
    ("road load", "trend with driven axles", trend(AXLE), (0, 6), (0, 6)),
    ("road load", "5 to 95 % holds", held(SAID[90]), (85, 97), (85, 97)),
    ("road load", "half width", half(SAID[90]), (0, 18), (0, 11)),
    ("road load", "25 to 75 % holds", held(SAID[50]), (40, 60), (40, 60)),
    ("road load", "holds, other cycle given", held(GIVEN), (85, 100), (85, 100)),
    ("road load", "half width, other cycle given", half(GIVEN), (0, 10), (0, 7)),
    ("data sheet", "median error", signed, (0, 3), (0, 3)),
    ("data sheet", "median size", size, (0, 9), (0, 7.5)),
    ("data sheet", "90th percentile", size_90, (0, 24), (0, 21)),
    ("data sheet", "5 to 95 % holds", held(SAID[90]), (85, 97), (85, 97)),
    ("data sheet", "half width", half(SAID[90]), (0, 25), (0, 22)),
    ("data sheet", "holds, other cycle given", held(GIVEN), (85, 100), (85, 100)),
    ("data sheet", "half width, other cycle given", half(GIVEN), (0, 11), (0, 9)),
]
BOTH_CYCLES = "where the drawn cars are narrower, their bands hold less than 85 %; coverage was kept, not width"
NOT_HELD = {
    ("road load", "90th percentile", "udds"): "20.0 in place of 16: " + ONE_FAMILY,
    ("road load", "90th percentile", "hwfet"): "11.6 in place of 9.5: " + ONE_FAMILY,
    ("road load", "trend with weight", "udds"):
        "6.3 in place of 6, all of it in the heaviest quarter: " + ONE_FAMILY + NO_DRAW,
    ("road load", "half width", "hwfet"): "11.3 in place of 11: " + ONE_FAMILY,
    ("road load", "25 to 75 % holds", "hwfet"):
        "60.2 in place of 60, one car of 216: most cars lie near the middle and one family far from it, which the form "
        "of the draws does not follow",
    ("road load", "half width, other cycle given", "udds"): "12.8 in place of 10: " + BOTH_CYCLES,
    ("road load", "half width, other cycle given", "hwfet"): "7.2 in place of 7: " + BOTH_CYCLES,
    ("data sheet", "half width, other cycle given", "udds"): "14.2 in place of 11: " + BOTH_CYCLES,
    ("data sheet", "half width, other cycle given", "hwfet"): "10.9 in place of 9: " + BOTH_CYCLES,
}  # fmt: skip
"""Bounds that are missed today, and why."""


def cases():
    for known, what, figure, *allowed in BOUNDS:
        for cycle, bounds in zip(CYCLES, allowed, strict=True):
            reason = NOT_HELD.get((known, what, cycle))
            marks = [] if reason is None else [pytest.mark.xfail(strict=True, reason=reason)]
            yield pytest.param(known, cycle, figure, bounds, marks=marks, id=f"{known}, {what}, {cycle}")


@pytest.mark.parametrize("known, cycle, figure, bounds", list(cases()))
def test_a_bound_set_beforehand(known, cycle, figure, bounds):
    value = figure(certified_found(known, cycle))
    print(f"{value:.1f} (allowed {bounds[0]:g} to {bounds[1]:g})")
    assert bounds[0] <= value <= bounds[1]


CLASS_NOT_HELD = {
    ("family-hatch", "udds"):
        "6.2 in place of 6, and 5.2 with their road load known: it is not the class. 12 of the 15 are of one group, "
        "whose hatches take less in the city than its crossovers of the same weight, road load and power",
    ("performance-saloon", "udds"):
        "-10.3 in place of -6, and -9.4 with their road load known: it is not the class. 34 of the 54 are of one "
        "group. Nor is it tyres for speed: within a kind and group rolling grows by 6 % where power for the weight "
        "doubles, one point of the ten. " + ONE_FAMILY,
}  # fmt: skip
"""Classes whose middle is missed today, and why."""


def classes():
    for name in ("family-hatch", "compact-crossover", "large-suv", "performance-saloon"):
        for cycle in CYCLES:
            reason = CLASS_NOT_HELD.get((name, cycle))
            marks = [] if reason is None else [pytest.mark.xfail(strict=True, reason=reason)]
            yield pytest.param(name, cycle, marks=marks, id=f"{name}, {cycle}")


@pytest.mark.parametrize("name, cycle", list(classes()))
def test_a_class_of_ten_cars_or_more_is_met_in_the_middle(name, cycle):
    """From the data sheet, the class known from the other groups alone."""
    found_in = certified_found("data sheet", cycle)
    some = found_in.of(np.array(found_in.classes) == name)
    assert len(some.ids) >= 10 and abs(np.median(some.errors_pct)) <= 6


@pytest.mark.parametrize("name", ["performance-saloon", "family-hatch"])
def test_a_class_that_is_missed_is_missed_with_its_road_load_known_as_well(name):
    """So the reason is not that their class is known from few groups."""
    signs = []
    for known in KNOWN:
        of_class = np.array(certified_found("data sheet", "udds").classes) == name
        signs.append(np.median(certified_found(known, "udds").of(of_class).errors_pct))
    print(f"{name}: {signs[0]:+.1f} % with their road load known, {signs[1]:+.1f} % from the data sheet")
    assert min(signs) > 0.8 * max(signs, key=abs) if signs[0] > 0 else max(signs) < 0.8 * min(signs)


def test_a_kind_of_few_groups_is_known_less_well():
    """Over its middle, a kind of 2 groups reaches further than one of 6, by the roots of 1 + 1/n."""
    all_groups = certified_cars.groups()
    reach = {}
    for kind, count in (("pickup", 2), ("compact-crossover", 6)):
        assert len(class_road_loads.of_kind(kind, all_groups)) == count
        low, mid, _ = class_road_loads.figures(kind, all_groups)["drag_area_m2"]
        reach[count] = (mid - low) / mid
    assert reach[2] / reach[6] == pytest.approx(np.sqrt((1 + 1 / 2) / (1 + 1 / 6)))


def test_air_and_rolling_are_drawn_apart_since_all_groups_together_say_so():
    """Single groups left out say otherwise, and their bands have it."""
    without = [class_road_loads.correlation(certified_cars.others_of(group)) for group in certified_cars.groups()]
    print(f"one group left out {min(without):+.2f} to {max(without):+.2f}")
    assert abs(class_road_loads.correlation(certified_cars.groups())) < 0.05 < max(np.abs(without))


def test_figures_that_go_together_are_drawn_as_far_along():
    air, rolling = (certified_cars.places(key, 400) for key in class_road_loads.KEYS)
    for correlation in (-0.4, 0.0, 0.7):
        found_place = class_road_loads.beside(rolling, air, correlation)
        assert min(found_place) > 0 and max(found_place) < 1
        assert np.corrcoef(air, found_place)[0, 1] == pytest.approx(correlation, abs=0.08)
    assert class_road_loads.beside(rolling, air, 0.0) == pytest.approx(rolling)


def test_classes_are_the_middle_and_the_spread_of_the_certified_cars():
    """Air and rolling in ``car_classes.csv`` are those of all groups."""
    kinds = {kind for kind, _ in class_road_loads.cells()}
    for row in rows("car_classes.csv"):
        if row["class"] in kinds and row["key"] in class_road_loads.KEYS:
            span = class_road_loads.figures(row["class"], certified_cars.groups())[row["key"]]
            digits = 0.006 if row["key"] == "drag_area_m2" else 6e-5
            assert [float(row[end]) for end in ("low", "mid", "high")] == pytest.approx(span, abs=digits), row["class"]


@pytest.mark.parametrize("known", KNOWN)
@pytest.mark.parametrize("cycle", CYCLES)
def test_coverage_width_and_score_of_each_group_are_printed(known, cycle):
    all_ = certified_found(known, cycle)
    for group in [*sorted(set(all_.groups)), None]:
        some = all_ if group is None else all_.of(np.array(all_.groups) == group)
        said = ", ".join(
            f"{share} %: {some.held_pct(band):.0f} % held, ±{some.half_width_pct(band):.1f} %, "
            f"score {some.score(band, share):.0f}" for share, band in SAID.items()
        )  # fmt: skip
        print(f"{known}, {cycle}, {group or 'all'} ({len(some.ids)}): {np.median(some.errors_pct):+.1f} %; {said}; "
              f"given the other cycle {some.held_pct(GIVEN):.0f} %, ±{some.half_width_pct(GIVEN):.1f} %, "
              f"score {some.score(GIVEN, 90):.0f}")  # fmt: skip
        assert len(some.ids) >= 5
    for name in sorted(set(all_.classes)):
        some = all_.of(np.array(all_.classes) == name)
        print(f"    {name} ({len(some.ids)}): {np.median(some.errors_pct):+.1f} %")


def test_the_table_is_what_the_model_finds():
    """Some of the cars anew, their bands from the other groups; the rest is written with them."""
    with FOUND.open(encoding="utf-8", newline="") as file:
        written = {(row["id"], row["cycle"], row["known"]): row for row in csv.DictReader(file)}
    assert len(written) == 4 * len(certified_rows()) == 864
    for row in found(range(0, len(certified_rows()), 27)):
        before = written[row["id"], row["cycle"], row["known"]]
        for name in COLUMNS[6:]:
            assert float(before[name]) == pytest.approx(row[name], rel=2e-4), f"{row['id']} {name}"


def test_the_open_shares_are_what_the_cars_leave_open():
    """Bands in ``parameters.csv`` are those of all groups, at two digits."""
    reaches = certified_cars.reaches(certified_cars.groups())
    for key, least, most in zip(OPEN_KEYS, LEAST, reaches, strict=True):
        row = next(row for row in rows("parameters.csv") if row["key"] == key)
        low, mid, high = (float(row[end]) for end in ("low", "mid", "high"))
        print(f"{key}: {low:g} to {high:g}; found {mid - least:.3f} to {mid + most:.3f}")
        assert low == pytest.approx(mid - least) and high - mid == pytest.approx(most, abs=0.006)


def test_what_is_one_drives_own_is_what_the_two_cycles_do_not_share():
    """`OWN_SHARE` is that of all groups, at one digit."""
    found_share = certified_cars.own_share(certified_cars.groups())
    without = [certified_cars.own_share(certified_cars.others_of(group)) for group in certified_cars.groups()]
    print(f"{found_share:.4f}; one group left out {min(without):.4f} to {max(without):.4f}")
    assert pytest.approx(found_share, abs=0.005) == OWN_SHARE


def test_drag_on_the_rollers_grows_with_power_as_the_idle_motor_does():
    """Target less set coefficients: what a car drags on the rollers itself, turning tyres and driveline."""
    known = [row for row in certified_rows() if row["rated_hp_suspect"] != "yes" and row["set_a"] != row["a_lbf"]]
    weight = np.array([float(row["etw_lb"]) * 0.4536 * 9.81 * (1 if row["drive"] == "all" else 0.5) for row in known])
    power_kw = np.array([float(row["rated_hp"]) * 0.7457 for row in known])
    for speed in (10.0, 15.0, 20.0, 25.0):
        mph = speed / 0.44704
        drag = np.array([
            4.448 * sum((float(row[key]) - float(row[f"set_{key[0]}"])) * mph**power
                        for power, key in enumerate(("a_lbf", "b_lbf_per_mph", "c_lbf_per_mph2")))
            for row in known
        ])  # fmt: skip
        columns, trust = np.column_stack([weight, power_kw]), (abs(drag) < 600).astype(float)
        for _ in range(60):
            # least absolute errors, by least squares weighted anew
            root = np.sqrt(trust)
            slope = np.linalg.lstsq(columns * root[:, None], drag * root, rcond=None)[0]
            trust = (abs(drag) < 600) / np.maximum(abs(drag - columns @ slope), 3)
        at = STATED_AT_KMH / 3.6
        idle = 1000 / 0.96 * (0.003 / at + 0.018 * speed / at**2)
        print(f"{speed:g} m/s: {slope[1]:.2f} N/kW on the rollers, {idle:.2f} N/kW of the idle motor")
        assert 0.5 < idle / slope[1] < 2
