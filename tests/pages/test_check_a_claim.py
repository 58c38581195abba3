"""The page of claims, without a browser: choosing, saying, answering, and what can be taken away."""

from urllib.parse import parse_qsl, urlsplit

import pytest
from streamlit.testing.v1 import AppTest

from model import MODEL_VERSION
from model.claims.collection import claims
from model.claims.evidence import evidence
from model.claims.specification import phrased
from model.describe.scenario_io import starting_drives, to_link
from model.sampling.uncertainty import RUNS
from model.words.claims import verdict_words, words_of
from model.words.quantities import Display
from pages.parts import claim_files, claim_words, phrase_words, state
from tests.answered import answered
from tests.pages.in_app import CLAIM_PARTS, address, in_picture, opened_at, ran

METRIC = Display()
FIRST = "range-gain-in-town"
QUICK = "two-megawatts"
"""A claim that is tested in a few hundredths of a second."""
HILL = starting_drives()["suburb-hill"][2]


def opened(**link: str) -> AppTest:
    """The page as somebody sees it who follows a link and unfolds it."""
    return opened_at("check_a_claim.py", link, CLAIM_PARTS)


def said(app: AppTest) -> dict[str, str]:
    """What the address says was said."""
    return {key[5:]: value for key, value in address(app).items() if key.startswith("said_")}


def shows(app: AppTest, claim_id: str, **settings: str) -> bool:
    """Whether the page states the verdict and the reason that belong to this question."""
    answer = answered(claim_id, settings)
    assert claim_words.claim_text(answer.question) == app.title[0].value
    return claim_words.heading(answer) in [one.value for one in app.header] and claim_words.reason(
        answer, METRIC
    ) in [one.value for one in app.markdown]


def row(app: AppTest, key: str) -> str:
    return app.button(key=f"row-said-{key}").label


def typed(app: AppTest, key: str, text: str) -> AppTest:
    return ran(app.text_input(key=key).set_value(text).run())


# choosing


def test_a_first_visit_sees_the_first_claim_answered():
    assert shows(opened(), FIRST)


def test_every_claim_stands_in_one_group_of_the_list():
    grouped = [claim_id for ids in claim_words.GROUPS.values() for claim_id in ids]
    assert sorted(grouped) == sorted(claims())


def test_a_claim_is_chosen_from_the_list_which_then_closes():
    app = opened()
    # the way to a claim of one's own stands beside the list before it is opened
    assert app.button(key="row-own")
    ran(app.button(key="row-claims").click().run())
    listed = [claim_id for claim_id in (*claims(), *phrased()) if app.button(key=f"row-{claim_id}")]
    assert app.button(key="row-claims").label.startswith(f"{len(listed)} claims")
    ran(app.button(key=f"row-{QUICK}").click().run())
    assert address(app)["claim"] == QUICK
    assert shows(app, QUICK)
    assert not any(one.key == f"row-{FIRST}" for one in app.button)


@pytest.mark.parametrize("claim_id", claims())
def test_every_claim_has_its_page(claim_id):
    app = opened(claim=claim_id)
    assert shows(app, claim_id)
    charts = app.get("vega_lite_chart")
    assert charts and all(chart.proto.alt for chart in charts)


def test_a_link_to_no_claim_says_so_and_shows_the_first():
    app = opened(claim="perpetual-motion")
    assert "perpetual-motion" in app.info[0].value
    assert shows(app, FIRST)


def test_what_a_link_says_and_cannot_be_used_is_said_and_the_rest_is_kept():
    app = opened(claim=QUICK, said_slowing_mps2="many", said_payload_kg="0", said_number="1")
    assert "Slowing: “many” cannot be used" in app.info[0].value
    assert shows(app, QUICK, payload_kg="0", number="1")


# saying


def test_a_number_is_typed_and_changes_the_verdict():
    app = opened(claim=QUICK)
    typed(app, "set-number", "0.5")
    assert said(app) == {"number": "0.5"}
    assert shows(app, QUICK, number="0.5")
    assert "is at least 0.5\N{NO-BREAK SPACE}MW" in app.title[0].value
    assert Display().say("claim-changed") in [one.value for one in app.caption]
    typed(app, "set-number", "2")
    assert said(app) == {}


def test_a_range_of_numbers_takes_the_place_of_at_least_and_at_most():
    app = opened(claim=QUICK)
    typed(app, "set-number", "0.5 to 1")
    assert shows(app, QUICK, number="0.5..1")
    assert app.selectbox(key="set-relation").disabled


def test_a_number_can_be_claimed_as_a_most():
    app = opened(claim=QUICK)
    ran(app.selectbox(key="set-relation").set_value("at_most").run())
    assert shows(app, QUICK, relation="at_most")


@pytest.mark.parametrize("text", ["two", "3 to 2", "", "1 to 2 to 3", "nan"])
def test_a_number_that_is_none_is_refused_and_kept_as_typed(text):
    app = opened(claim=QUICK)
    typed(app, "set-number", text)
    assert [one.value.split(":")[0] for one in app.error] == ["Number"]
    assert app.text_input(key="set-number").value == text
    assert shows(app, QUICK)
    typed(app, "set-number", "1")
    assert not app.error


def test_what_was_not_said_is_asked_for_with_what_it_runs_over():
    app = opened(claim=QUICK)
    assert row(app, "slowing_mps2") == "Slowing: :gray[not said (5.9 to 12 m/s²)]"
    assert row(app, "car") == "Car class: :gray[not said (any of 8)]"


def test_a_condition_is_said_as_a_number_or_a_range_and_taken_back():
    app = opened(claim=QUICK)
    ran(app.button(key="row-said-slowing_mps2").click().run())
    typed(app, "set-said-slowing_mps2", "9")
    assert said(app) == {"slowing_mps2": "9"}
    assert shows(app, QUICK, slowing_mps2="9")
    typed(app, "set-said-slowing_mps2", "8 to 9.5")
    assert shows(app, QUICK, slowing_mps2="8..9.5")
    assert row(app, "slowing_mps2") == "Slowing: **8 to 9.5 m/s²**"
    typed(app, "set-said-slowing_mps2", "")
    assert said(app) == {} and shows(app, QUICK)


def test_a_condition_is_said_as_one_choice_or_more():
    app = opened(claim=QUICK)
    ran(app.button(key="row-said-car").click().run())
    ran(app.button_group(key="set-said-car").set_value(["van", "pickup"]).run())
    assert said(app) == {"car": "van,pickup"}
    assert shows(app, QUICK, car="van,pickup")
    ran(app.button_group(key="set-said-car").set_value([]).run())
    assert said(app) == {}


def test_what_came_with_the_publication_can_be_left_open():
    app = opened(claim="range-gain-on-dynamometer")
    ran(app.button(key="row-said-lift_off_mps2").click().run())
    assert app.text_input(key="set-said-lift_off_mps2").value == "0.5 to 1"
    typed(app, "set-said-lift_off_mps2", "")
    assert said(app) == {"lift_off_mps2": "open"}
    assert "not said" in row(app, "lift_off_mps2")
    typed(app, "set-said-lift_off_mps2", "0.5 to 1")
    assert said(app) == {}


def test_an_entry_out_of_bounds_is_refused_in_the_visitors_units():
    app = opened(claim=QUICK, units="us")
    ran(app.button(key="row-said-payload_kg").click().run())
    typed(app, "set-said-payload_kg", "9000")
    assert [one.value for one in app.error] == [
        "Load: 9000 lb cannot be used, 0 to 3307 lb can. The answer keeps the last entry."
    ]
    typed(app, "set-said-payload_kg", "10 down to 2")
    assert "neither a number nor a range" in app.error[0].value


def test_miles_and_kilometres_give_the_same_question():
    app = opened(claim="coasting-always-wins", units="us")
    ran(app.button(key="row-said-speed_kmh").click().run())
    typed(app, "set-said-speed_kmh", "62.137")
    assert float(said(app)["speed_kmh"]) == pytest.approx(100, abs=0.001)
    assert row(app, "speed_kmh") == "Speed: **62 mph**"


def test_another_condition_can_be_named_and_taken_back():
    app = opened(claim=QUICK)
    picker = app.selectbox(key="say-another")
    assert "name" not in picker.options
    ran(picker.set_value("mass_kg").run())
    assert "mass_kg" in said(app)
    typed(app, "set-said-mass_kg", "2700")
    assert shows(app, QUICK, mass_kg="2700")
    typed(app, "set-said-mass_kg", "")
    assert said(app) == {}
    assert not any(one.key == "row-said-mass_kg" for one in app.button)


# a share of what


def test_the_number_as_each_share_is_tested_when_it_is_asked_for():
    app = opened(claim="range-lost-without")
    assert not any("another share" in chart.proto.alt for chart in app.get("vega_lite_chart"))
    app.session_state["phrases-drawer"] = True
    ran(app.run())
    alt = next(chart.proto.alt for chart in app.get("vega_lite_chart") if "another share" in chart.proto.alt)
    for name in claims()["range-lost-without"].denominators:
        answer = answered("range-lost-without", {"denominator": name})
        assert f"{claim_words.band_text(answer)}: {verdict_words(answer)}" in alt
    assert any(table.value.columns[0] == "Phrase" and len(table.value) == 7 for table in app.table)


# taking away


def test_the_link_to_keep_brings_the_page_back():
    app = opened(claim=QUICK, said_number="0.7", said_car="van", **to_link(HILL))
    link = dict(parse_qsl(urlsplit(app.code[2].value).query))
    assert link["v"] == MODEL_VERSION
    again = opened(**link)
    assert shows(again, QUICK, number="0.7", car="van")
    assert [one.value for one in again.code] == [one.value for one in app.code]
    assert not again.info


def test_a_link_of_another_version_says_so_and_what_moved_until_something_changes():
    link = {"claim": QUICK, "gave": "0.3_0.5_0.9", "v": "0.0.1"} | to_link(HILL)
    app = opened(**link)
    notices = [one.value for one in app.info]
    assert any("version 0.0.1" in one and "change log" in one for one in notices)
    band = claim_words.band_text(answered(QUICK))
    assert any("then" not in one and f"now it gives {band}" in one for one in notices if "gave" in one)
    typed(app, "set-number", "1")
    assert not any("gave" in one.value for one in app.info)


def test_a_quotable_sentence_names_claim_verdict_band_and_hedge():
    app = opened(claim=QUICK)
    app.session_state["quote-drawer"] = True
    app.run()
    short, long, command, _ = (code.value for code in app.code)
    answer = answered(QUICK)
    band = claim_words.band_text(answer).replace("\N{NO-BREAK SPACE}", " ")
    for part in (words_of(claims()[QUICK]).rstrip("."), verdict_words(answer), band, "An estimate"):
        assert part in short and part in long
    assert short.count("\n") == 1 and "asks for no measurement" in short and "not a measurement" in long
    assert command == f"python -m model claim {QUICK}"


def test_every_file_is_offered():
    app = opened(claim=QUICK)
    before = len(app.get("download_button"))
    app.session_state["files-drawer"] = True
    app.run()
    offered = {one.proto.label for one in app.get("download_button")}
    files = claim_files.files_of(answered(QUICK))
    assert len(app.get("download_button")) == before + len(files)
    assert offered >= {METRIC.say("print-file", file=what) for what in files}


def test_what_was_measured_stands_beside_what_the_model_says():
    app = opened(claim="cold-halves-range")
    told = "\n".join(one.value for one in app.markdown)
    answer = answered("cold-halves-range")
    assert METRIC.say("claim-evidence-heading") in told and METRIC.say("claim-quote-heading") in told
    (same,) = [one.value for one in app.table if METRIC.say("column-measured-by") in one.value]
    assert len(same) == len(evidence(answer.question).same) and "](https://" in " ".join(same.iloc[:, 1])
    app.session_state["near-drawer"] = True
    app.run()
    assert len([one for one in app.table if METRIC.say("column-measured-by") in one.value]) == 2


# on one's own road


def test_a_printed_range_becomes_one_on_the_visitors_drive():
    app = opened(claim=QUICK, test_range_km="500", test="nedc", **to_link(HILL))
    assert app.text_input(key="set-test-range").value == "500"
    assert any(one.value.startswith("### 500\N{NO-BREAK SPACE}km on the test, ") for one in app.markdown)
    ran(app.text_input(key="set-test-range").set_value("300").run())
    assert address(app)["test_range_km"] == "300"
    assert any(one.value.startswith("### 300\N{NO-BREAK SPACE}km on the test, ") for one in app.markdown)


def test_a_printed_range_stated_of_the_car_is_the_one_on_the_road(monkeypatch):
    """What the car's data sheet says on the first page is what is asked here, until another is entered."""
    # of few cars hardly any fits what is printed
    monkeypatch.setattr(state, "BAND_RUNS", RUNS)
    app = opened(claim=QUICK, **to_link(HILL) | {"printed_range_km": "330", "printed_test": "us-label"})
    assert app.text_input(key="set-test-range").value == "330" and app.selectbox(key="set-test").value == "us-label"
    assert not any("Nothing has been entered yet" in one.value for one in app.caption)


def test_a_printed_range_that_nobody_entered_is_not_told_as_the_visitors():
    app = opened(claim=QUICK, **to_link(HILL))
    assert app.text_input(key="set-test-range").value == ""
    assert any("Nothing has been entered yet" in one.value for one in app.caption)
    specs = [in_picture(one) for one in app.get("vega_lite_chart")]
    assert any("By the model" in spec for spec in specs)
    assert not any("Printed, WLTC" in spec for spec in specs)
    ran(app.text_input(key="set-test-range").set_value("300").run())
    assert any("Printed, WLTC" in in_picture(one) for one in app.get("vega_lite_chart"))
    ran(app.text_input(key="set-test-range").set_value("").run())
    assert "test_range_km" not in address(app) and app.text_input(key="set-test-range").value == ""


def test_the_converter_starts_with_the_drives_own_number_and_turns_any_other():
    app = opened(claim=QUICK, **to_link(HILL))
    books = state.books_of(state.drive(HILL))
    table = app.table[-1].value
    own = [phrase_words.phrase_value(name, phrase_words.own_number(books, name), METRIC) for name in
           phrase_words.PHRASES]  # fmt: skip
    assert list(table["Number"]) == own
    ran(app.text_input(key="set-phrase-number").set_value("22").run())
    assert app.table[-1].value["Number"][0] == "22 %"
    assert address(app)["number"] == "0.22"
    ran(app.selectbox(key="set-phrase").set_value("range_gain").run())
    assert "number" not in address(app)


def test_a_converted_number_stays_the_same_in_miles():
    link = {"claim": QUICK, "phrase": "display_km", "number": "5"} | to_link(HILL)
    assert opened(**link).text_input(key="set-phrase-number").value == "5"
    miles = opened(**link | {"units": "us"})
    assert miles.text_input(key="set-phrase-number").value == "3.1"
    ran(miles.text_input(key="set-phrase-number").set_value("4").run())
    assert float(address(miles)["number"]) == pytest.approx(4 * 1.609344, rel=1e-4)


def test_a_number_that_means_less_than_nothing_back_is_refused():
    app = opened(claim=QUICK, phrase="range_lost", number="-0.4", **to_link(HILL))
    assert "less than nothing" in app.error[0].value


def test_a_drive_that_cannot_be_is_refused_below_and_leaves_the_claim():
    app = opened(claim=QUICK, **to_link(HILL.with_leg(0, "stops", 400)))
    assert shows(app, QUICK)
    assert any("Stops" in one.value for one in app.error)


def test_the_answer_line_stands_with_the_drive_it_belongs_to():
    app = opened(claim=QUICK, **to_link(HILL))
    assert any(one.value == Display().say("caution") for one in app.markdown)


@pytest.mark.parametrize(
    "link",
    [
        {"number": "nan"},
        {"number": "1e400"},
        {"number": "-1e30", "phrase": "display_km", "units": "us"},
        {"phrase": "nonsense"},
        {"phrase": "of_climb", "number": "0.27"},
        {"test_range_km": "nan", "test": "moon"},
        {"test_range_km": "1e9"},
        {"said_number": ""},
        {"said_number": "1e400"},
        {"said_car": ""},
        {"said_": "5"},
        {"said_relation": "between"},
        {"gave": "x", "v": "<b>9</b>" * 20},
    ],
)
def test_no_link_ends_in_a_traceback(link):
    assert opened(**{"claim": QUICK} | to_link(HILL) | link).title
