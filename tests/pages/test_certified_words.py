"""What is said of the certified cars: counts as in the table, every kind missed named, the misses first."""

import csv
import re
from collections import Counter

import numpy as np
import pytest

from model.checks.certified import KNOWN, certified_found, versions_apart
from model.words.quantities import Display
from pages.parts import certified_words as words
from tests.published.certified_cars import FOUND

METRIC = Display()
CITY, HIGHWAY = certified_found("road load", "udds"), certified_found("road load", "hwfet")


def outside(found):
    """Kinds of the cars that the table has above and below their band."""
    above, below = Counter(), Counter()
    with FOUND.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if (row["cycle"], row["known"]) == (found.cycle, found.known):
                measured = float(row["measured_wh_per_km"])
                above[row["kind"]] += measured > float(row["q95"])
                below[row["kind"]] += measured < float(row["q05"])
    return +above, +below


@pytest.mark.parametrize("found", [CITY, HIGHWAY], ids=["city", "highway"])
def test_every_kind_outside_the_band_is_named_with_its_count(found):
    said, of = words.misses_words(found, display=METRIC), Counter(found.kinds)
    above, below = outside(found)
    more, less = said.split(" Less: ")
    for part, kinds in ((more, above), (less, below)):
        assert len(re.findall(r"\(\d+ of \d+\)", part)) == len(kinds)
        for kind, count in kinds.items():
            assert f"{kind} ({count} of {of[kind]})" in part
    assert f"; {above.total()} took more, {below.total()} less" in words.cars_alt(found, METRIC)
    assert f"{len(found.ids) - above.total() - below.total()} of {len(found.ids)}" in words.cars_title(found, METRIC)


@pytest.mark.parametrize("us", [False, True])
def test_the_table_has_every_car_the_misses_first(us):
    display = Display(us=us)
    table = words.cars_table(CITY, display)
    above, below = outside(CITY)
    missed = above.total() + below.total()
    assert len(table) == len(CITY.ids) and set(table["Car"]) == set(CITY.ids)
    assert "in the band" not in set(table["Where"][:missed]) and set(table["Where"][missed:]) == {"in the band"}
    measured = f"Measured, {'Wh/mi' if us else 'Wh/km'}"
    short = words.short_table(table, display)
    np.testing.assert_allclose(short[measured], table[measured], atol=0.51)
    low, high = (float(end) for end in short["Band"].iloc[0].split(" to "))
    assert not low <= short[measured].iloc[0] <= high


@pytest.mark.parametrize("known", KNOWN)
def test_the_reliability_pictures_words_say_every_share(known):
    both = [certified_found(known, cycle) for cycle in ("udds", "hwfet")]
    alt = words.held_alt(both, METRIC)
    told = re.findall(r"said (\d+) %, held (\d+) % in the city, (\d+) % on the highway", alt)
    # whole percent in words, tenths in the table
    np.testing.assert_allclose(np.array(told, dtype=float), words.held_table(both, METRIC), atol=0.55)
    assert alt.startswith(words.held_title(both, METRIC).split(":")[0])


def test_where_it_falls_short_is_said_with_the_tables_figures():
    sheet = [certified_found("data sheet", cycle) for cycle in ("udds", "hwfet")]
    said = words.short_words((CITY, HIGHWAY), sheet, METRIC)
    for found in (CITY, HIGHWAY):
        assert f"{np.quantile(abs(found.errors_pct), 0.9):.0f} %" in said
    for found in (CITY, HIGHWAY, *sheet):
        assert f"{found.half_width_pct(('given_low', 'given_high')):.0f} %" in said
    for line in said.splitlines():
        for kind, name in (("Performance saloon", "performance-saloon"), ("Family hatch", "family-hatch")):
            if line.startswith(f"- {kind}"):
                of_class = np.array(sheet[0].classes) == name
                error = np.median(sheet[0].of(of_class).errors_pct)
                assert f"{abs(error):.0f} % too {'high' if error > 0 else 'low'} from its data sheet" in line
    assert said.count("\n- ") == 5


def test_versions_of_one_car_are_told_apart_with_the_medians_of_the_pairs():
    city, highway = versions_apart("udds"), versions_apart("hwfet")
    said = words.versions_words(city, highway, METRIC)
    assert f"{len(city.measured_pct)} pairs" in said
    order = [np.median(abs(of(apart))) for of in (lambda one: one.measured_pct, lambda one: one.missed_pct,
                                                  lambda one: one.tests_pct) for apart in (city, highway)]  # fmt: skip
    assert re.findall(r"(\d+\.\d) %", said) == [f"{value:.1f}" for value in order]


def test_it_says_what_was_not_measured_and_that_the_cars_were_in_view():
    unknown = METRIC.say("certified-unknown")
    assert "saving itself was measured on none" in unknown and "in view" in unknown
