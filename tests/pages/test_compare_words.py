"""Sentences on comparisons: the verdict never contradicts the numbers."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.describe.scenario_io import starting_drives
from model.out.comparison import SUBJECTS, Difference, difference, others, side_of, told_apart
from model.sampling.uncertainty import Band
from model.words.quantities import Display
from pages.parts import compare_words as words
from pages.parts.charts.compare import difference_of

TOWN = starting_drives()["town"][2]
METRIC = Display()


def found(low, high, share=(0.0, 0.0), seconds=0.0):
    band = Band(low, (low + high) / 2, high)
    return Difference(band, band, Band(share[0], sum(share) / 2, share[1]), band, seconds)


@pytest.mark.parametrize(
    ("low", "high", "taken", "verdict"),
    [
        (0.8, 1.4, "takes 0.8 to 1.4 kWh more than a city car", "exceeds the uncertainty"),
        (-1.4, -0.8, "takes 0.8 to 1.4 kWh less than a city car", "exceeds the uncertainty"),
        (-0.52, 0.02, "takes 0.52 kWh less to 0.02 kWh more than a city car", "does not exceed the uncertainty"),
        (-0.001, 0.004, "takes as much as a city car", "no difference to speak of"),
    ],
)
def test_what_is_taken_and_whether_it_exceeds_the_uncertainty(low, high, taken, verdict):
    assert words.taken_words(found(low, high), "a van", "a city car", METRIC) == f"a van {taken}"
    assert verdict in words.verdict(found(low, high), METRIC)


@given(st.floats(-5, 5), st.floats(0, 5))
def test_the_verdict_follows_the_band(low, width):
    one = found(low, low + width)
    sentence = words.verdict(one, METRIC)
    if words.negligible(one.net_kwh, words.NEGLIGIBLE_KWH):
        assert "no difference" in sentence
    else:
        assert ("**exceeds" in sentence) == told_apart(one.net_kwh)
        assert ("does not exceed" in sentence) == (not told_apart(one.net_kwh))


def test_a_larger_share_and_still_more_taken_is_said():
    heavy = found(0.8, 1.4, share=(0.06, 0.11))
    assert words.saved_words(heavy, "city car", METRIC).endswith(
        "6 to 11 points higher: a larger share saved, and still more taken."
    )
    lighter = found(-1.4, -0.8, share=(0.06, 0.11))
    assert words.saved_words(lighter, "city car", METRIC).endswith("6 to 11 points higher.")
    least = words.saved_words(found(0.8, 1.4, share=(0.0003, 0.052)), "a city car", METRIC)
    assert "is up to 5.2 points higher" in least
    assert "lower" in words.saved_words(found(0.8, 1.4, share=(-0.11, -0.06)), "city car", METRIC)
    assert "too little to tell" in words.saved_words(found(0.8, 1.4, share=(-0.01, 0.06)), "city car", METRIC)
    assert "the same share" in words.saved_words(found(0.8, 1.4), "city car", METRIC)


def test_time_is_told_from_a_second_on():
    assert words.time_words(found(0, 0, seconds=0.4), METRIC) == ""
    assert words.time_words(found(0, 0, seconds=45), METRIC) == "It takes 45 s longer."
    assert words.time_words(found(0, 0, seconds=-150), METRIC) == "It takes 2.5 min less."


@pytest.mark.parametrize("subject", SUBJECTS)
@pytest.mark.parametrize("us", [False, True])
def test_drives_have_names_that_tell_them_apart(subject, us):
    drives = [TOWN, *others(TOWN, subject).values()]
    names = [words.name_of(subject, drive, Display(us)) for drive in drives]
    assert all(names) and len(set(names)) == len(names)


def test_the_table_holds_every_band_and_the_file_its_numbers():
    drives = [TOWN, others(TOWN, "brake_pedal")["friction"]]
    sides = [side_of(drive, TOWN.car_class, runs=20) for drive in drives]
    names = [words.name_of("brake_pedal", drive, METRIC) for drive in drives]
    differences = [difference(sides[1], sides[0])]
    table = words.table(sides, differences, names, METRIC)
    assert list(table.columns) == ["Figure", "Blended brake pedal", "Friction-only brake pedal"]
    # as long in both, so that the time says nothing
    assert len(table) == len(words.FIGURES) - 1
    later = [replace(differences[0], duration_s=90.0)]
    assert "1.5" in words.table(sides, later, names, METRIC).iloc[-1, 2]
    assert table.iloc[0, 1] == METRIC.range_text(sides[0].answer.net_kwh, "")
    other, more = sides[1].answer.net_kwh, METRIC.figure(difference_of(differences[0].net_kwh, ""))
    assert table.iloc[0, 2] == f"{METRIC.range_text(other, '')} ({more})" and more.startswith("+")
    numbers = words.figures(sides, differences, names, METRIC).set_index(["drive", "figure"])
    taken = words.figure_name(words.FIGURES[0], METRIC)
    row = numbers.loc[("friction-only brake pedal less blended brake pedal", taken)]
    assert row["low_5pct"] == differences[0].net_kwh.low and row["high_95pct"] == differences[0].net_kwh.high
