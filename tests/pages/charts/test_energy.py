"""Pictures of energy: they add up, start at zero, and hold for hills, idle motors and empty books."""

import itertools
import re

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.describe.scenario import Conditions
from model.kernel.timeline import books, timeline
from model.physics.slowing_limits import LIMITS
from model.words.quantities import MINUS, Display
from pages.parts.charts.energy import (
    DOWNHILL,
    GROUPS,
    MEANING,
    USES,
    before_after,
    braking_rows,
    grouped,
    kwh_figure,
    ledger,
    ledger_rows,
    over_time,
    places_for,
    rounded_to_add_up,
    slowed_by,
    stacked,
)
from pages.parts.charts.limits import LIMITS as TOLD
from pages.parts.charts.limits import limit_text
from tests.made_traces import ride, steady
from tests.pages.charts.specs import assert_valid, driven, tables, texts

METRIC = Display()
UDDS = driven()
WINTER = driven(conditions=Conditions(ambient_c=-10))
DOWN = driven(steady(60, 600, slope=-0.06))
UP = driven(steady(60, 600, slope=0.04))
CUT_OFF = driven(ride(np.linspace(90, 20, 60)), conditions=Conditions(cabin=False))
ALL = {"udds": UDDS, "winter": WINTER, "down": DOWN, "up": UP, "cut off": CUT_OFF}


def number_in(text):
    """The kWh of a label; nothing where it is too small to print."""
    if "under " in text:
        return 0.0
    return float(text.rsplit(" kWh", 1)[0].split()[-1].replace(MINUS, "-").replace(",", ""))


# words and groups cover everything there is


def test_every_limit_has_words():
    assert set(TOLD) == set(LIMITS)


def test_every_entry_of_the_books_has_its_place():
    behind_the_terminals = {"cells_given", "cells_taken", "cells"}
    entries = set(books(UDDS).index) - behind_the_terminals
    assert set(USES) == entries - {"battery_out", "battery_in", "engine_given"}
    assert entries <= set(MEANING)
    grouped_entries = [entry for entries in GROUPS.values() for entry in entries]
    assert sorted(grouped_entries) == sorted(USES)


# numbers that add up as printed


@given(st.lists(st.floats(0, 50), min_size=1, max_size=12), st.integers(1, 3))
def test_rounded_values_add_up_and_lie_within_one_step(values, places):
    rounded = rounded_to_add_up(values, places)
    assert sum(rounded) == pytest.approx(round(sum(values), places), abs=10**-places * 1e-6 + 1e-9)
    assert np.all(np.abs(np.array(rounded) - values) <= 10**-places + 1e-9)


def test_what_is_too_small_to_print_is_not_printed_as_nothing():
    assert kwh_figure(0.0, 2, METRIC) == "under 0.01 kWh" and kwh_figure(1.5, 2, METRIC) == "1.50 kWh"
    assert "under 0.01 kWh, 0.2 %" in texts(slowed_by(braking_rows(1.0, {"grip": 0.002}), METRIC))


@pytest.mark.parametrize(("total", "places"), [(0.0004, 5), (0.35, 3), (3.1, 2), (31, 2), (310, 2)])
def test_totals_get_three_digits(total, places):
    assert places_for(total) == places


# before and after


@pytest.mark.parametrize("name", ALL)
def test_both_bars_are_the_net_energy_of_the_answer(name):
    result = ALL[name]
    net = grouped(books(result)).sum()
    assert net["friction_only"] == pytest.approx(result.friction_only_net_kwh)
    assert net["regenerated"] == pytest.approx(result.net_kwh)


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("dark", [False, True])
def test_before_and_after_is_drawn_to_one_scale(name, dark):
    book = books(ALL[name])
    spec = before_after(book, METRIC, dark)
    assert_valid(spec)
    boxes = tables(spec)["boxes"]
    bars = boxes[boxes["meaning"].isin(GROUPS) & ~boxes["hollow"]]
    heights = (bars["y1"] - bars["y0"] + 1).to_numpy()
    energies = np.abs([*grouped(book)["friction_only"], *grouped(book)["regenerated"]])
    px_per_kwh = heights.max() / energies.max()
    # a hairline parts neighbours; what would be thinner than it vanishes
    assert heights == pytest.approx(np.maximum(energies * px_per_kwh, 1), abs=1.01)
    assert boxes["y0"].min() >= 0 and boxes["y1"].max() <= spec["height"]


def test_before_and_after_names_every_part_and_the_saving():
    words = texts(before_after(books(UDDS), METRIC))
    for group in GROUPS:
        assert METRIC.say("energy-group", group=group) in words
    assert f"{UDDS.saved_kwh:.2f} kWh" in words and "saved" in words
    assert f"{UDDS.friction_only_net_kwh:.2f} kWh" in words and f"{UDDS.net_kwh:.2f} kWh" in words


def test_nothing_saved_is_not_framed():
    spec = before_after(books(UP), METRIC)
    assert UP.saved_kwh == pytest.approx(0, abs=1e-9)
    assert tables(spec)["boxes"]["hollow"].sum() == 0 and "saved" not in texts(spec)


def test_a_hill_that_gives_hangs_below_zero():
    book = books(DOWN)
    ends = stacked(grouped(book)["regenerated"])
    assert ends[0][0] < 0 == ends[0][1]
    assert METRIC.say("energy-group", group=DOWNHILL) in texts(before_after(book, METRIC))


@given(st.lists(st.floats(-5, 5), min_size=1, max_size=6))
def test_stacks_join_and_end_at_their_sums(values):
    ends = stacked(values)
    assert max(0, *(high for _, high in ends)) == pytest.approx(sum(v for v in values if v > 0))
    assert min(0, *(low for low, _ in ends)) == pytest.approx(sum(v for v in values if v < 0))
    assert [high - low for low, high in ends] == pytest.approx(np.abs(values))


# the books as a picture


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("run", ["regenerated", "friction_only"])
def test_the_bars_join_end_to_end_and_end_where_they_began(name, run):
    book = books(ALL[name])[run]
    rows = ledger_rows(book)
    for _, side in rows.groupby("comes_in"):
        assert side["start"].iloc[0] == 0
        joints = list(itertools.pairwise(side[["start", "end"]].itertuples(index=False)))
        assert all(abs(after.start - before.end) < 2e-3 * rows["end"].max() for before, after in joints)
        assert side["end"].iloc[-1] == pytest.approx(rows["end"].max(), rel=1e-9)
        assert (side["end"] >= side["start"]).all()
    assert rows["entry"].iloc[0] == "battery_out" and rows["entry"].iloc[-1] == "battery_in"
    assert rows.loc[~rows["comes_in"], "share"].sum() == pytest.approx(1, abs=2e-3)


@pytest.mark.parametrize("name", ALL)
def test_the_printed_parts_add_up_to_what_came_in(name):
    spec = ledger(books(ALL[name])["regenerated"], METRIC)
    assert_valid(spec)
    lines = tables(spec)["words"]["text"]
    comes_in = lines.str.startswith(("Out of", "Given by"))
    given, went = (sum(map(number_in, lines[side])) for side in (comes_in, ~comes_in))
    assert given == pytest.approx(went, abs=1e-9)


def test_the_ledgers_last_bar_is_the_recovered_share():
    rows = ledger_rows(books(UDDS)["regenerated"])
    assert rows["share"].iloc[-1] == pytest.approx(UDDS.recovered_share)
    assert rows["kwh"].iloc[-1] == pytest.approx(UDDS.battery_in_kwh)


def test_a_drive_that_ends_lower_is_given_energy_by_the_hill():
    down, up = (ledger_rows(books(result)["regenerated"]).set_index("entry") for result in (DOWN, UP))
    assert down.loc["from_hill", "comes_in"] and "climb" not in down.index
    assert not up.loc["climb", "comes_in"] and "from_hill" not in up.index
    assert down["share"].max() <= 1


def test_a_recording_that_starts_at_speed_is_given_energy_by_it():
    rows = ledger_rows(books(CUT_OFF)["regenerated"]).set_index("entry")
    assert rows.loc["from_motion", "kwh"] == pytest.approx(-books(CUT_OFF)["regenerated"]["kinetic"])


def test_an_entry_of_nothing_is_left_out():
    entries = set(ledger_rows(books(driven(conditions=Conditions(cabin=False)))["regenerated"])["entry"])
    assert not entries & {"cabin", "climb", "kinetic", "engine_drag", "pack_heater"}


# what slowed the car


def rows_of(result):
    return braking_rows(result.wheel_regen_kwh, result.limits_kwh)


def test_what_slowed_the_car_adds_up_to_the_braking():
    rows = rows_of(WINTER)
    assert rows["kwh"].sum() == pytest.approx(WINTER.wheel_braking_kwh, rel=2e-3)
    assert rows["share"].sum() == pytest.approx(1, abs=2e-3)
    assert rows["share"].iloc[0] == pytest.approx(WINTER.captured_share)
    assert rows["kwh"].iloc[1:].is_monotonic_decreasing


def test_every_reason_is_told():
    rows = rows_of(WINTER)
    assert rows["meaning"].tolist() == ["back"] + ["friction"] * (len(rows) - 1)
    left = {limit: kwh for limit, kwh in WINTER.limits_kwh.items() if kwh > 1e-3 * WINTER.wheel_braking_kwh}
    assert set(rows["limit"][1:]) == set(left)
    spec = slowed_by(rows, METRIC)
    told = re.sub(r"[\n| ]+", " ", texts(spec))
    assert all(f"Friction, because {limit_text(limit, METRIC)}" in told for limit in left)
    assert_valid(spec)
    figures = [number_in(text) for text in tables(spec)["words"]["text"] if " kWh" in text]
    assert figures == pytest.approx(rows["kwh"].tolist(), abs=1e-3)


def test_its_bars_start_at_zero_and_are_as_long_as_their_energy():
    rows = rows_of(WINTER)
    boxes = tables(slowed_by(rows, METRIC, dark=True))["boxes"]
    assert (boxes["x0"] == 0).all()
    assert boxes["x1"].tolist() == rows["kwh"].tolist()


def test_its_words_fit_a_telephone():
    rows = braking_rows(1.0, dict.fromkeys(LIMITS, 0.5))
    assert tables(slowed_by(rows, METRIC))["words"]["text"].str.len().max() <= 46


def test_a_motor_that_does_nothing_is_left_out():
    assert braking_rows(0.0, {"lift_off_only": 0.4})["meaning"].tolist() == ["friction"]


def test_nothing_braked_gives_no_rows():
    assert rows_of(driven(steady(60, 100))).empty


# the drive over time


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("display", [Display(), Display(us=True)])
def test_the_drive_over_time_is_a_valid_chart(name, display):
    assert_valid(over_time(timeline(ALL[name]), display, dark=True))


def test_power_keeps_its_peaks_and_its_signs():
    steps = timeline(driven(ride(np.abs(np.sin(np.arange(7200) / 20)) * 80)))
    drive = tables(over_time(steps, Display()))["drive"]
    assert len(drive) < len(steps) / 3
    assert drive["out"].max() == pytest.approx(steps["battery_kw"].max(), abs=0.01)
    assert drive["back"].min() == pytest.approx(steps["battery_kw"].min(), abs=0.01)
    assert (drive["out"] >= 0).all() and (drive["back"] <= 0).all()


def test_axes_stand_still_while_a_little_changes():
    one, other = (over_time(timeline(driven(mass_kg=mass)), Display()) for mass in (1800.0, 1810.0))

    def scales(spec):
        return [layer["encoding"]["y"].get("scale") for layer in spec["layer"]]

    assert scales(one) == scales(other)


def test_a_full_battery_stays_inside_its_axis():
    steps = timeline(driven(conditions=Conditions(soc_start=1.0)))
    charge = over_time(steps, Display())["layer"][3]["encoding"]["y"]["scale"]["domain"]
    assert charge[0] < 100 * steps["soc"].min() and charge[1] == 100


def test_tables_are_data_frames_with_named_columns():
    spec = over_time(timeline(UDDS), Display())
    assert all(isinstance(table, pd.DataFrame) for table in tables(spec).values())
