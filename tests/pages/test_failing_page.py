"""A page that fails: one sentence in its place, the other pages go on, and what was entered is still there."""

from functools import partialmethod

import pytest
from streamlit.navigation.page import StreamlitPage
from streamlit.runtime.scriptrunner.script_runner import ScriptRunner

from app import ERROR_SENTENCE, NOT_TAKEN_SENTENCE
from app import app as served
from model.describe.scenario_io import starting_drives
from pages.parts import report, state
from tests.pages.in_app import address, change, opened_at, ran, scenario_of
from tests.pages.test_every_page import PAGES

SECRET = "a failure made on purpose"
LINK = {"car": "city-car", "payload_kg": "321", "return_trip": "yes"}
TYPED = {
    "check_a_claim.py": ("set-number", "41"), "lift_off.py": ("set-trailer_kg", "512"),
    "show.py": ("set-quick-stops", "13"), "winter_and_limits.py": ("set-soc_start-part", "91"),
    "your_drive.py": ("set-stands_h", "7"),
}  # fmt: skip
"""What is typed on a page itself; elsewhere the temperature in the answer line is."""
PICKED = {
    "compare.py": ("selectbox", "compare-subject", "trailer_kg"),
    "how_it_works.py": ("slider", "set-slowing_mps2", 1.5),
}
"""What is chosen there."""


@pytest.fixture
def failing(monkeypatch):
    """The files of the pages that fail from now on, as the app's own server would show it."""
    files: set[str] = set()
    run = StreamlitPage.run

    def run_or_fail(page):
        if page._page.name in files:
            raise RuntimeError(SECRET)
        run(page)

    monkeypatch.setattr(StreamlitPage, "run", run_or_fail)
    monkeypatch.setattr(
        ScriptRunner, "__init__", partialmethod(ScriptRunner.__init__, on_script_error=served._on_script_error)
    )
    return files


def told(app):
    """What a visitor reads as an error; the failure itself must stand nowhere."""
    ran(app)
    kinds = (app.title, app.header, app.markdown, app.caption, app.info, app.warning, app.error)
    assert not [one.value for kind in kinds for one in kind if SECRET in one.value or "Error" in one.value]
    return [one.value for one in app.error]


def entries(app):
    """The values of all that can be typed, chosen or slid, by the keys of their widgets.

    A blank at a key's end makes it another widget of the same field; see `state.key_of`.
    """
    kinds = (app.text_input, app.selectbox, app.slider, app.toggle, app.radio, app.get("button_group"))
    return {one.key and one.key.rstrip(): one.value for kind in kinds for one in kind}


@pytest.mark.parametrize("page", PAGES)
def test_a_page_that_fails_says_so_in_a_sentence_and_takes_nothing_with_it(page, failing):
    app = opened_at(page, LINK)
    if page == "own_road.py":
        app = ran(app.button(key="recording-sample").click().run())
        driven = app.header[0].value
    elif page in PICKED:
        kind, key, value = PICKED[page]
        app = ran(getattr(app, kind)(key=key).set_value(value).run())
    else:
        key, value = TYPED.get(page, ("set-ambient_c", "-7"))
        app = ran(app.text_input(key=key).set_value(value).run())
    entered, before = entries(app), address(app)
    scenario = scenario_of(app)
    assert scenario != starting_drives()["town"][2]

    failing.add(page)
    assert told(app.run()) == [ERROR_SENTENCE]
    assert address(app) == before
    assert ERROR_SENTENCE.count(".") == 1 and "kept" in ERROR_SENTENCE

    other = PAGES[PAGES.index(page) - 1]
    app.switch_page(other)
    assert told(app.run()) == [] and len(app.title) == 1
    assert scenario_of(app) == scenario
    app.switch_page(page)
    assert told(app.run()) == [ERROR_SENTENCE]

    failing.clear()
    app.query_params = before
    assert told(app.run()) == []
    assert entries(app) == entered
    if page == "own_road.py":
        assert app.header[0].value == driven


def test_a_part_that_fails_leaves_the_rest_of_its_page(failing, monkeypatch):
    def fail(_taken):
        raise RuntimeError(SECRET)

    monkeypatch.setattr(report, "sheets_html", fail)
    app = opened_at("take_away.py", LINK)
    assert told(app) == [ERROR_SENTENCE]
    assert [one.key for one in app.button].count("print") == 1, "the foot"
    assert [one.value for one in app.header][-1].startswith("Open")


def cannot(*_changed):
    raise RuntimeError(SECRET)


def test_a_number_that_cannot_be_taken_over_stays_as_it_was_typed(failing, monkeypatch):
    app = opened_at("your_drive.py", LINK)
    before = address(app)
    with monkeypatch.context() as patch:
        patch.setattr(state, "put", cannot)
        app.text_input(key="set-ambient_c").set_value("−7").run()
        assert len(told(app)) == 1 and "could not be taken over" in told(app)[0]
        assert app.text_input(key="set-ambient_c").value == "−7" and address(app) == before
        assert len(app.title) == 1, "the page is drawn all the same"
    change(app, "set-ambient_c", "−8")
    assert told(app) == [] and address(app)["ambient_c"] == "-8"


def test_a_choice_that_cannot_be_taken_over_stays_as_it_was_made(failing, monkeypatch):
    app = opened_at("your_drive.py", LINK)
    before = address(app)
    with monkeypatch.context() as patch:
        patch.setattr(state, "put", cannot)
        app.button_group(key="set-brake_pedal").set_value("friction").run()
        assert len(app.title) == 1
    assert app.button_group(key="set-brake_pedal").value == "friction"
    assert address(app) == before


def test_what_cannot_be_done_leaves_all_that_was_entered_before(failing, monkeypatch):
    app = opened_at("your_drive.py", LINK)
    before = address(app)
    with monkeypatch.context() as patch:
        patch.setattr(state, "put", cannot)
        app.toggle(key="there-and-back").set_value(False).run()
    assert told(app) == [NOT_TAKEN_SENTENCE] and address(app) == before
    assert NOT_TAKEN_SENTENCE.count(".") == 1 and "kept" in NOT_TAKEN_SENTENCE
    assert told(app.run()) == [] and len(app.title) == 1
    assert address(app) == before
