"""Sentences about a tested claim, held against its numbers: none may say what the numbers do not."""

import re
from dataclasses import replace

import numpy as np
import pytest

from model.claims.collection import claims
from model.claims.evidence import measurements
from model.claims.inputs import INPUTS, Open
from model.claims.questions import question, sayable
from model.claims.verdicts import BEYOND, CLOSE, CONDITIONS, FALSE, HOLDS, UNJUDGED
from model.describe.fields import InputError
from model.describe.figures import Share
from model.describe.scenario_io import starting_drives
from model.kernel.books import books_of
from model.kernel.phrases import PHRASES
from model.sampling.drives import drive
from model.sampling.range_figure import range_on_road
from model.words.claim_inputs import noun
from model.words.claim_numbers import number_words, shown
from model.words.claims import sentence, share_of_design
from model.words.evidence import by_model, number
from model.words.quantities import Display
from pages.parts import claim_files as files
from pages.parts import claim_inputs as inputs
from pages.parts import claim_words as words
from pages.parts import phrase_words
from pages.parts.claim_files import method_note
from pages.parts.typography import NO_BREAK, together
from tests.answered import answered
from tests.refused import told

METRIC, US = Display(), Display(us=True)
QUICK = "two-megawatts"
PLAIN = str.maketrans({NO_BREAK: " "})


def plain(text):
    return text.translate(PLAIN)


# the verdict


@pytest.mark.parametrize("claim_id", claims())
@pytest.mark.parametrize("wanted", [0.0, 0.03, 0.06, 0.4, 0.76, 0.97, 1.0])
def test_no_sentence_contradicts_the_share_of_the_range(claim_id, wanted):
    """The claim's own runs, with a number put in that makes it true in about so much of them."""
    usual = answered(claim_id)
    spread = np.ptp(usual.values) + 1.0
    number = float(np.quantile(usual.values, 1 - wanted)) + spread * ((wanted == 0) - (wanted == 1))
    answer = answered(claim_id, number=repr(float(number)), relation="at_least")
    heading, reason = by_model(answer, METRIC), plain(words.reason(answer, METRIC))
    broadly = answer.question.claim.broadly
    assert (answer.verdict == CLOSE) == bool(answer.close_by)
    if answer.share < 0.05 and not answer.close_by:
        assert heading == METRIC.say("claim-heading", verdict=FALSE)
    if heading == METRIC.say("claim-heading", verdict=HOLDS):
        assert answer.share >= broadly and answer.whole_share >= broadly
    if answer.share >= broadly and answer.whole_share >= broadly and not answer.close_by:
        assert heading == METRIC.say("claim-heading", verdict=HOLDS)
    said = {0.0: "in no run", 1.0: "in every run"}.get(answer.share, "")
    assert said in reason and ("in every run" in reason) <= (answer.share == 1)
    assert ("in no run" in reason) == (answer.share == 0)
    assert ("only at the edge" in reason) == (0 < answer.share < 0.05)
    # a share of what was varied reads as odds, and stands in the method alone
    printed = " ".join((reason, sentence(answer), *words.keys(answer, METRIC), words.finding(answer)))
    assert "% of the runs" not in printed and "% of those" not in printed
    assert plain(share_of_design(answer, METRIC)) in plain(method_note(answer))
    if answer.verdict == CONDITIONS and answer.share < broadly:
        assert answer.region_share >= broadly and words.conditions(answer, METRIC)


def test_what_was_said_is_named_where_the_verdict_rests_on_it():
    reason = plain(words.reason(answered("range-gain-on-dynamometer"), METRIC))
    for part in ("With a city car", "a friction-only pedal", "20 °C outside", "no heating or cooling"):
        assert part in reason
    assert "68 °F outside" in plain(words.reason(answered("range-gain-on-dynamometer"), US))


def test_a_claim_that_is_true_nowhere_says_what_came_nearest():
    most = f"the highest gives {shown(answered(QUICK).values.max())} MW"
    nowhere = plain(words.reason(answered("weight-costs-nothing"), METRIC))
    assert nowhere.startswith("It is true in no run: the lowest gives ")
    assert plain(words.reason(answered(QUICK), METRIC)) == f"It is true only at the edge of what was varied: {most}."
    low = answered(QUICK, number="0.1", relation="at_most")
    assert f"the lowest gives {shown(low.values.min())} MW" in plain(words.reason(low, METRIC))
    assert "the runs give 0.3 to 2.1" in plain(words.reason(answered(QUICK, number="5..6"), METRIC))
    assert "the runs give 4.0" in plain(words.reason(answered("four-times-the-energy", number="3"), METRIC))


def test_what_cannot_be_judged_names_what_it_turns_on():
    answer = answered("range-gain-in-town", relation="at_least")
    answer = replace(answer, values=np.random.RandomState(1).permutation(answer.values))
    assert answer.verdict == UNJUDGED
    assert answer.bins == []
    none = "In town, whether it is true depends on no one thing that stands out of chance, and no short list of"
    assert none in plain(words.reason(answer, METRIC))
    answer = answered("heat-pump-gives-back-a-third")
    assert answer.verdict == UNJUDGED
    first, second = (noun(bins.key, METRIC) for bins in answer.bins[:2])
    most = f"whether it is true depends most on {first} and on {second}, and no short list of conditions"
    assert most in plain(words.reason(answer, METRIC))


def test_only_what_stands_out_of_chance_is_named():
    """Of numbers shuffled over the runs nothing tells, whatever the runs; of the claim's own what moves it does."""
    usual = answered("range-gain-in-town")
    named = [replace(usual, values=np.random.RandomState(seed).permutation(usual.values)).bins for seed in range(12)]
    assert sum(map(bool, named)) <= 1
    town = answered("range-lost-without")
    assert [bins.key for bins in town.bins] == ["cycle"]
    assert "stands out of chance" in words.no_grid(town, METRIC) and "the drive" in words.no_grid(town, METRIC)


@pytest.mark.parametrize("key", INPUTS)
def test_every_input_is_named_within_a_sentence_by_a_noun(key):
    told = METRIC.say("claim-grid-title", down=noun(key, METRIC), across=noun(key, METRIC))
    starts = ("the ", "how ", "whether ", "which ", "what ", "losses ")
    assert noun(key, METRIC).startswith(starts) and told.count(noun(key, METRIC)) == 2
    # an axis and its unit do not part where a line ends
    title = words.axis_title(key, METRIC)
    assert title[0].isupper() and not re.search(r", \S+$", title)


def test_a_claim_below_what_is_so_is_called_too_low():
    town = answered("range-gain-in-town")
    assert plain(by_model(town, METRIC)) == "By the model this is too low: it reaches 85 %."
    ratio = answered("recovered-is-range")
    assert together(by_model(ratio, METRIC)) == f"By the model this is too low: it gives {words.band_text(ratio)}."
    mean = answered("recovered-on-test-cycle", number="12")
    assert by_model(mean, METRIC).startswith("By the model this is too low: on average it gives 22")
    # what is claimed as a least is not too low, and what lies below is not either
    least = answered("weight-costs-nothing", relation="at_least", number="50")
    assert by_model(least, METRIC) == METRIC.say("claim-heading", verdict=FALSE)


def test_an_up_to_says_its_two_ends_once():
    both_ends = METRIC.say("claim-reads-up-to", within=Share(0.1, places=0))
    assert "above or below the number, so it may fail though most runs stay below" in plain(both_ends)
    answer = answered("range-gain-in-town")
    assert plain(both_ends) in plain(words.reading(answer.question, METRIC))
    assert "two ends" not in words.reason(answer, METRIC)


@pytest.mark.parametrize("claim_id", ["brakes-last-longer", "pads-last-150000-km", "unstable-on-snow"])
def test_what_cannot_be_judged_has_no_claimed_number_in_picture_or_quote(claim_id):
    answer = answered(claim_id)
    assert answer.verdict == BEYOND and by_model(answer, METRIC) == "An energy model cannot judge this claim."
    assert words.bounds_of(answer) == (-np.inf, np.inf) and words.keys(answer, METRIC) == ()
    drawn = [files.chart_text(answer), files.tornado_svg(answer), files.article_html(answer)]
    threshold = {"unstable-on-snow": "100 %"}.get(claim_id, "50 %")
    said = [words.quotable(answer), words.quotable_short(answer), words.reason(answer, METRIC),
            words.read_as(answer.question, METRIC), files.method_note(answer)]  # fmt: skip
    assert not any("claimed" in plain(text) or "at least" in text for text in drawn)
    assert not any(f"at least {threshold}" in plain(text) or "are true" in text for text in said)
    assert "needs" not in files.files_of(answer) and "claim_true" not in files.runs_table(answer)


# numbers in words


def test_a_band_keeps_both_ends_apart_from_nothing():
    assert plain(words.band_text(answered("bigger-motor-recovers-more"))).startswith("−")
    for claim_id in claims():
        answer = answered(claim_id)
        band = words.band_of(answer)
        low, _, high = plain(words.band_text(answer)).removesuffix(f" {answer.question.claim.unit}").partition(" to ")
        shown = [float(end.replace("−", "-").replace(",", "")) for end in (low, high or low)]
        large = max(abs(band.low), abs(band.high)) > 10
        assert shown == pytest.approx([band.low, band.high], rel=0.06, abs=0.5 if large else 0.06)
        assert all((end == 0) == (abs(value) < 0.05) for end, value in zip(shown, (band.low, band.high), strict=True))


def test_a_published_number_stands_as_its_source_gives_it():
    named = {measurement.id: measurement for measurement in measurements()}
    assert number(named["anl-cold-city"], METRIC) == "nearly halved"
    assert number(named["heating-lost"], METRIC) == "up to 31.9 %"
    assert number(named["longest-stop"], METRIC).startswith("at most")
    # what a market analyst said in an interview is no regulation
    assert named["euro-7-share"].kind == "quoted second-hand"


def test_numbers_have_a_true_minus_where_they_are_made():
    assert inputs.value_text("ambient_c", -7.0, METRIC) == "−7 °C"
    assert inputs.open_text("grade_pct", Open((-8.0, 0.0, 8.0), band=True), METRIC) == "−8 to 8 %"
    assert inputs.entry_text("ambient_c", "-7..-2", METRIC) == inputs.span_text("-7..-2", "°C", METRIC) == "−7 to −2"
    assert (number_words(-7.0, "%"), shown(-7.0)) == ("−7.0 %", "−7")


def test_somebodys_words_are_quoted_as_they_were_written():
    assert words.quoted("At -7 °C half") == f"“At -7{NO_BREAK}°C half”"


def test_measurements_stand_in_the_picture_only_where_they_measure_the_same():
    rows = words.rows_of(answered("range-gain-in-town", {"denominator": "recovered"}), METRIC)
    assert len(rows) == 2 and plain(rows[1].text).startswith("ADAC, 2024: up to 40 %")
    assert (rows[1].low, rows[1].high) == (40, 40)
    for claim_id in ("electric-share-of-braking", "one-pedal-saves", "hybrid-against-battery-car"):
        assert len(words.rows_of(answered(claim_id), METRIC)) == 1


@pytest.mark.parametrize("claim_id", ["motorway-range", "cold-halves-range", "coasting-always-wins"])
def test_the_picture_of_two_inputs_is_that_of_the_model(claim_id):
    answer = answered(claim_id)
    grid = words.grid_of(answer, METRIC)
    shares = np.array(answer.by_two.shares, dtype=float)
    found = np.array(grid.shares, dtype=float)
    assert np.array_equal(found, shares) or np.array_equal(found, shares.T)
    assert found.shape == (len(grid.rows), len(grid.columns))
    middles = np.array(answer.by_two.medians, dtype=float)
    row, column = np.unravel_index(np.nanargmax(shares), shares.shape)
    alt = plain(words.grid_alt(grid, METRIC))
    middle = number_words(middles[row, column], answer.question.claim.unit, METRIC)
    assert plain(middle) in alt or (shares == shares.max()).sum() > 1
    assert len(words.grid_table(grid)) == len(grid.rows)


def test_no_picture_is_drawn_where_it_would_be_of_one_colour():
    assert words.grid_of(answered("weight-costs-nothing"), METRIC) is None
    assert "no run" in words.no_grid(answered("weight-costs-nothing"), METRIC)
    assert words.grid_of(answered("heavier-recovers-more", car="van,pickup"), METRIC) is None
    assert "in nearly every run" in words.no_grid(answered("heavier-recovers-more", car="van,pickup"), METRIC)
    assert words.grid_of(answered("four-times-the-energy"), METRIC) is None


@pytest.mark.parametrize("claim_id", claims())
@pytest.mark.parametrize("display", [METRIC, US])
def test_every_end_of_a_swing_has_its_words(claim_id, display):
    answer = answered(claim_id)
    table = words.tornado_table(answer, display)
    assert len(table) == len(answer.tornado)
    ends = " ".join([*table["Lowest is"], *table["Highest is"]])
    if display.us:
        assert "°C" not in ends and "km/h" not in ends
    if answer.tornado:
        assert words.tornado_title(answer, display).endswith(f": {noun(answer.tornado[0].key, display)}")


def test_a_link_that_kept_nothing_readable_says_nothing_of_what_moved():
    answer = answered(QUICK)
    assert [words.moved(kept, answer, METRIC) for kept in ("", "1_2", "a_b_c")] == ["", "", ""]
    assert "gave 0.30 to 0.90 MW, with a median of 0.50 MW" in plain(words.moved("0.3_0.5_0.9", answer, METRIC))


# what can be said


@pytest.mark.parametrize("claim_id", claims())
@pytest.mark.parametrize("display", [METRIC, US])
def test_every_input_has_a_line(claim_id, display):
    asked = question(claim_id)
    for key in asked.declared:
        line = inputs.row_text(key, asked, display)
        assert line.startswith(inputs.label(key, display))
        assert ("not said" in line) == (key in asked.not_said and key not in asked.said)


@pytest.mark.parametrize("claim_id", claims())
def test_whatever_can_be_named_further_has_a_first_value_that_can_be_used(claim_id):
    asked = question(claim_id)
    fields = sayable(asked.claim)
    keys = inputs.listed_keys(asked, fields, METRIC)
    assert keys and set(keys).isdisjoint(asked.declared)
    for key in keys:
        assert key in question(claim_id, {key: inputs.usual_of(fields[key])}).said


@pytest.mark.parametrize(
    "text, setting",
    [("20", "20"), ("-5", "-5"), ("−5 to 10", "-5..10"), ("0..10", "0..10"), ("2,5", "2.5"), (" 3 – 4 ", "3..4")],
)
def test_numbers_are_read_as_people_type_them(text, setting):
    assert inputs.setting_of("ambient_c", text, METRIC) == setting


def test_what_was_typed_comes_back_as_it_was():
    for text in ("0", "10", "-40 to 100"):
        setting = inputs.setting_of("ambient_c", text, US)
        assert inputs.entry_text("ambient_c", setting, US) == text.replace("-", "−")
    assert inputs.entry_text("soc_start", inputs.setting_of("soc_start", "80 to 95", METRIC), METRIC) == "80 to 95"


@pytest.mark.parametrize("text", ["warm", "1 to 2 to 3", "20 to 10", "nan", "500"])
def test_what_is_no_number_is_refused(text):
    with pytest.raises(InputError) as refused:
        inputs.setting_of("ambient_c", text, METRIC)
    assert told(refused.value).startswith("Outside temperature: ")


# phrases and the road


HILL = starting_drives()["suburb-hill"][2]
BOOKS = books_of(drive(HILL))


@pytest.mark.parametrize("name", PHRASES)
def test_the_drives_own_number_said_in_any_phrase_gives_all_seven_back(name):
    own = phrase_words.own_number(BOOKS, name)
    table = phrase_words.converted_table(BOOKS, name, own, METRIC)
    assert table["Number"].tolist() == [
        phrase_words.phrase_value(other, phrase_words.own_number(BOOKS, other), METRIC) for other in PHRASES
    ]


def test_a_number_is_held_as_it_was_entered():
    for name in PHRASES:
        for display in (METRIC, US):
            shown = phrase_words.shown_number(name, 0.123, display)
            held = phrase_words.held_number(name, shown, display)
            assert held == pytest.approx(0.123, abs=0.09 if PHRASES[name].unit == "km" else 1e-12)


def test_the_hill_loops_headline_and_its_energies_do_not_agree():
    text = phrase_words.hill_example(METRIC)
    assert "7.1 / 26.4 = 27 %" in text and "headline of 35 %" in text


def test_the_way_to_the_road_says_what_is_left_and_what_costs_most():
    found = range_on_road(HILL, 400.0, runs=40)
    step = max(found.steps, key=lambda step: step.middle_cost_km)
    assert METRIC.say("road-step", step=step.id) in phrase_words.road_words(found, METRIC)
    easy = replace(found, test_range_km=found.middle_range_km / 1.1)
    assert "110 % of it is reached, which is no less than on the test" in phrase_words.road_words(easy, METRIC)
    assert "mi on your drive" in phrase_words.road_title(found, US)
    assert len(phrase_words.road_table(found, METRIC)) == len(found.steps)


def test_all_seven_phrases_are_listed_and_those_that_fit_are_marked():
    for claim in claims().values():
        table = phrase_words.phrases_table(claim, METRIC)
        assert (table["Can be meant"] == "yes").sum() == len(claim.denominators)
        assert len(table) == 7
