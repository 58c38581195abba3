"""Sentences on lift-off: true to their numbers, plain, and the same in every case."""

from dataclasses import replace
from itertools import pairwise

import pytest

from model.describe.scenario_io import starting_drives
from model.kernel.timeline import timeline
from model.lift_off.advice import Supposed, WhatIf, advise, case_of
from model.lift_off.curves import as_set, curve_table, curves_of
from model.lift_off.hills import slowing_on_hills
from model.sampling.drives import drive
from model.words.lift_off import rules, supposed
from model.words.quantities import Display
from pages.parts import lift_off_hill_words as hill_words
from pages.parts import lift_off_words as words
from pages.parts.description import leg_words
from tests.pages.in_app import plain

METRIC, US = Display(), Display(us=True)
TOWN = starting_drives()["town"][2]
CURVES = curves_of(TOWN)
TABLE, CASE, ADVICE = curve_table(CURVES), case_of(CURVES), advise(CURVES)


@pytest.mark.parametrize(
    ("strength", "expected"),
    [
        (0.0, "Air and tyres alone slow the car. Under UN R13-H the stop lamps must not light."),
        (0.7, "That is 2.5 km/h less each second. Under UN R13-H the stop lamps must not light."),
        (1.0, "That is 3.6 km/h less each second. Under UN R13-H the stop lamps may light."),
        (1.5, "That is 5.4 km/h less each second. Under UN R13-H the stop lamps must light."),
    ],
)
def test_a_strength_in_other_numbers(strength, expected):
    assert plain(words.meaning(strength, METRIC)) == expected


def test_us_units_reach_the_sentences():
    assert "2.2 mph less each second" in plain(words.meaning(1.0, US))
    hill = WhatIf(Supposed.HILL, 0.9, "firm", speed_kmh=50.0, grade_pct=6.0)
    assert supposed(hill, US) == "to keep 31 mph on a 6 % downhill without the brake pedal"


def test_the_heading_has_word_and_number():
    gentle, rolling = ((0.6, "gentle"), (0.0, "rolling on"))
    for (strength, word), heading in ((gentle, "Gentle, about 0.6 m/s²"), (rolling, "Rolling on, 0 m/s²")):
        advice = replace(ADVICE.overall, lift_off_mps2=strength, word=word)
        assert plain(words.heading(advice, METRIC)) == heading


def test_the_axis_is_told_by_its_numbers():
    title, alt = words.axis_words(TABLE, 1.3, 2.5, METRIC)
    rows = TABLE.set_index("lift_off_mps2")
    first, last = rows.loc[0.0], rows.loc[1.3]
    assert f"from {first['as_driven_presses']:.0f} to {last['as_driven_presses']:.0f}" in plain(title)
    saved = 1 - last["as_driven_net_kwh"] / first["as_driven_net_kwh"]
    assert last["as_driven_net_kwh"] <= 1.01 * TABLE["as_driven_net_kwh"].min()
    assert plain(title).endswith(f"energy falls by {100 * saved:.1f} %, near the best")
    assert "best" not in words.axis_words(TABLE, 0.4, 2.5, METRIC)[0]
    assert "Advised: 1.3" in alt and "same speeds" in alt
    # rolling on: as far as grip allows
    assert plain(words.axis_words(TABLE, 0.0, 0.2, METRIC)[0]).startswith("From 0 to 0.2 m/s²")
    assert "no more than rolling on" in words.axis_words(TABLE, 0.0, 0.0, METRIC)[0]


def test_same_speeds_hardly_move_with_a_blended_pedal_and_do_with_friction_only():
    blended = words.kinds_text(TABLE, "blended", METRIC)
    discs_alone = curve_table(curves_of(TOWN.with_setting("brake_pedal", "friction")))
    friction = words.kinds_text(discs_alone, "friction", METRIC)
    assert "energy hardly moves with it, because a blended" in blended
    assert "energy hardly moves" not in friction and "works the discs alone" in friction
    for text in (blended, friction):
        assert "other markets differ" in text


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [(2.0, 1.9, " and energy falls by 5.0 %"), (2.0, 2.2, " and energy rises by 10 %"),
     (2.0, 2.001, " and energy hardly changes"), (-2.0, -2.2, " and energy falls by 10 %"),
     (0.0, 1.0, "; the change in energy cannot be given as a share")],
)  # fmt: skip
def test_changes_of_energy(before, after, expected):
    presses, energy = words.moved_presses(3.2, 2.9), words.moved_energy(before, after)
    told = METRIC.say("lift-off-with-advised", grip=False, **presses, **energy)
    assert told == f"With the advised strength in place of yours presses stay at 3{expected}"


def test_what_it_changes_holds_both_sides():
    title, table = words.changes(as_set(TOWN), TABLE, replace(ADVICE.overall, lift_off_mps2=1.5), "1 m/s²", METRIC)
    assert list(table.columns[1:]) == ["Yours, 1 m/s²", f"Advised, {words.strength_text(1.5, METRIC)}"]
    assert len(table) == len(words.CHANGES)
    row = TABLE.set_index("lift_off_mps2").loc[1.5]
    assert table.iloc[1, 2] == f"{row['as_driven_presses']:.0f}"
    assert "presses fall from" in title
    same = replace(ADVICE.overall, lift_off_mps2=1.0)
    set_so = words.strength_text(1.0, METRIC)
    assert words.changes(as_set(TOWN), TABLE, same, set_so, METRIC)[0] == "Yours is what is advised"
    gripped = replace(ADVICE.overall, lift_off_mps2=0.2, rule="grip")
    assert words.changes(as_set(TOWN), TABLE, gripped, "1 m/s²", METRIC)[0].endswith("the price of grip in reserve")


def test_all_rules_are_printed_in_order_and_the_deciding_one_stands_out():
    for rule, place in words.DECIDED_BY.items():
        lines = words.rules_text(replace(ADVICE.overall, rule=rule), METRIC).splitlines()
        assert len(lines) == len(rules(METRIC))
        assert all(text in plain(line) for line, text in zip(lines, rules(METRIC), strict=True))
        assert [line.endswith("This one decided here.") for line in lines].index(True) == place


def test_what_would_change_it_names_each_other_strength():
    text = words.what_if_text(ADVICE, METRIC)
    assert text.count("\n- ") + 1 == len(ADVICE.what_if)
    assert "packed snow" in text
    assert "would" in words.what_if_text(replace(ADVICE, what_if=()), METRIC)
    assert words.others_text(ADVICE.overall, METRIC).count("Against it") == len(ADVICE.overall.alternatives)


def test_too_much_for_the_grip_is_said_and_nothing_else():
    assert words.too_much(CASE.grip_limit_mps2, CASE, METRIC) == ""
    icy = case_of(curves_of(TOWN.with_setting("surface", "ice")))
    assert "over half of the grip of the driven wheels on ice" in words.too_much(1.0, icy, METRIC)


@pytest.mark.parametrize("name", starting_drives())
def test_notes_cover_the_drive_once(name):
    scenario = starting_drives()[name][2]
    advice = advise(curves_of(scenario))
    steps = timeline(drive(scenario))
    notes = words.leg_notes(steps, advice, METRIC)
    assert notes[0][0] == 0 and notes[-1][1] == pytest.approx(steps["distance_km"].iloc[-1])
    assert all(before[1] == after[0] for before, after in pairwise(notes))
    assert {float(note[3]) for note in notes} == {leg.lift_off_mps2 for leg in advice.legs}
    assert all(note[2].startswith("for this part: ") for note in notes)
    # neighbours with the same advice share a bracket
    assert all(before[2] != after[2] for before, after in pairwise(notes))


def test_a_leg_of_its_own_strength_says_so():
    leg = replace(TOWN.legs[0], lift_off_mps2=0.4)
    line = plain(words.leg_lines([leg], ADVICE.legs[:1], METRIC)[0])
    assert line.startswith("**1. ") and line.endswith("You set 0.4 m/s² here.")
    assert "You set" not in words.leg_lines(TOWN.legs[:1], ADVICE.legs[:1], METRIC)[0]


def test_legs_with_the_same_advice_and_reason_are_told_once():
    first, middle, last = TOWN.legs[0], replace(TOWN.legs[0], lift_off_mps2=0.4), replace(TOWN.legs[0], stops=9)
    lines = words.leg_lines([first, middle, last], [ADVICE.legs[0]] * 3, METRIC)
    assert len(lines) == 2 and lines[0].startswith("**1 and 3. ") and lines[1].startswith("**2. ")
    assert all(leg_words(leg, METRIC) in lines[0] for leg in (first, last))
    assert lines[0].count(words.because(ADVICE.legs[0], METRIC)) == 1


def test_comfort_is_told_as_convention_with_its_sources():
    text = plain(words.comfort_text(2.4, METRIC))
    assert "3 m/s²" in text and "ITE" in text and "3.4 m/s²" in text and "AASHTO" in text
    assert "not limits of what passengers bear" in text


def test_no_sentence_promises_that_nothing_can_happen():
    everything = " ".join(
        (*words.cautions(METRIC), words.kinds_text(TABLE, "blended", METRIC), words.comfort_text(2.0, METRIC),
         words.rules_text(ADVICE.overall, METRIC),
         words.others_text(ADVICE.overall, METRIC), words.what_if_text(ADVICE, METRIC))
    ).lower()  # fmt: skip
    assert "safe" not in everything and "!" not in everything
    for topic in ("behind", "passengers", "cruise control", "slippery road", "parked"):
        assert topic in everything


def test_tables_have_readable_columns_and_the_same_numbers():
    table = words.axis_table(TABLE, METRIC)
    assert len(table) == len(TABLE) and not any("_" in column for column in table.columns)
    assert table["Presses as driven"].tolist() == TABLE["as_driven_presses"].tolist()
    slowing = slowing_on_hills(TOWN, 50.0, (1.3, 0.0))
    wide = hill_words.hill_table(slowing, {1.3: "advised 1.3", 0.0: "rolling on"}, METRIC)
    assert list(wide.columns) == ["Grade, %", "Advised 1.3, m/s²", "Rolling on, m/s²"]
    assert wide.set_index("Grade, %").loc[0.0, "Advised 1.3, m/s²"] == 1.3
