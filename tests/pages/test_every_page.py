"""Every page with the drives that are hardest on it: none breaks, and where there is no answer each says why."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from model.describe.scenario import MAX_LEGS, Leg
from model.describe.scenario_io import starting_drives, to_link
from model.limits.limit_settings import LIMIT_PARTS
from pages.parts.folding import fold_key
from tests.pages.in_app import CLAIM_PARTS, html_of, opened_at, ran

TOWN = starting_drives()["town"][2]
PAGES = sorted({path.name for path in (Path(__file__).parents[2] / "pages").glob("[a-z]*.py")} - {"entrypoint.py"})
ALSO = {
    "how_it_works.py": ("panel", ("flow", "quadrants", "who", "motor", "discs")),
    "winter_and_limits.py": ("part", LIMIT_PARTS[1:]),
    "show.py": ("card", ("2", "3", "4", "5", "6")),
}
"""What a page shows one at a time, by its own parameter in the address."""
NO_DRIVE_NEEDED = {"own_road.py", "sources.py"}
DOWN = Leg(distance_km=8, speed_kmh=50, stops=1, slow_downs=5, slow_to_kmh=25, descent_m=480, grade_pct=6)
HARD = {
    "hopeless": TOWN.with_leg(0, "stops", 400),
    "too-weak": TOWN.with_setting("motor_peak_kw", 10.0).with_setting("mass_kg", 3900.0),
    "empty-on-the-way": replace(TOWN, legs=(replace(TOWN.legs[1], distance_km=500.0, stops=3),)),
    "full-battery": starting_drives()["mountain-valley"][2].with_setting("soc_start", 1.0),
    "hybrid": replace(TOWN, car_class="full-hybrid"),
    "plug-in-hybrid": replace(starting_drives()["suburb-hill"][2], car_class="plug-in-hybrid"),
    "all-downhill": replace(TOWN, legs=(DOWN,), return_trip=False),
    "nothing-in-the-way": replace(TOWN, legs=(Leg(distance_km=20, speed_kmh=90, stops=0, slow_downs=0),)),
    "eight-legs": replace(TOWN, legs=tuple(Leg(distance_km=1 + place, stops=2) for place in range(MAX_LEGS))),
    "bitter-cold-ice": TOWN.with_setting("ambient_c", -30.0).with_setting("surface", "glazed-ice"),
    "rolling-on": TOWN.with_setting("lift_off_mps2", 0.0).with_setting("brake_pedal", "friction"),
}
IN_US = ("hopeless", "hybrid", "all-downhill", "eight-legs")
REFUSED = {
    "hopeless": "do not fit",
    "too-weak": "cannot get under way",
}
"""Words of the sentence that says why there is no answer."""


NEVER_SAID = re.compile(r"\b(nan|inf|None)\b|Traceback|[{}]|\$ID|\d%")


def opened(app, key) -> str:
    """What a page that shows one thing at a time says that it shows."""
    if key == "card":
        return str(app.session_state["card_drawn"][0])
    return app.session_state[f"choose-{key}"]


def turned_to(app, page) -> None:
    """Have the app show another page, when it is run next, with all that folds there on every screen."""
    app.switch_page(page)
    if page == "check_a_claim.py":
        for anchor in CLAIM_PARTS:
            app.session_state[fold_key(anchor)] = True


def shown(app) -> str:
    """All words of a page that a refusal may stand in; an equation is none."""
    words = " ".join([one.value for one in (*app.error, *app.markdown, *app.header)] + html_of(app))
    return re.sub(r"\$\$\n.*?\n\$\$", "", words)


def headings(app) -> list[str]:
    """What a page is headed by, at every level."""
    return [one.value for one in (*app.title, *app.header, *app.subheader)]


@pytest.mark.parametrize(("name", "units"), [*((name, "") for name in HARD), *((name, "us") for name in IN_US)])
def test_no_page_breaks(name, units):
    app = opened_at(PAGES[0], to_link(HARD[name]) | ({"units": units} if units else {}))
    for page in PAGES:
        turned_to(app, page)
        key, values = ALSO.get(page, ("", ()))
        for value in (None, *values):
            if value:
                app.query_params[key] = value
            ran(app.run())
            assert len(app.title) == 1, (page, value)
            if value and name not in REFUSED:
                assert opened(app, key) == value, page
            told = shown(app)
            assert not NEVER_SAID.search(told), (page, value, NEVER_SAID.search(told))
            if name in REFUSED and page not in NO_DRIVE_NEEDED and value is None and page != "show.py":
                assert REFUSED[name] in told, (page, value)
        if key:
            app.query_params.pop(key)


def test_an_answer_stays_in_grey_and_named_where_the_drive_then_cannot_be_driven():
    app = opened_at("your_drive.py", {})
    for load_kg, page in enumerate((page for page in PAGES if page not in NO_DRIVE_NEEDED), 100):
        # the first card of Show has no answer
        own = {"card": "2"} if page == "show.py" else {}
        # another load each, since an address that was just left is taken for one on its way
        drives = (one.with_setting("payload_kg", float(load_kg)) for one in (TOWN, HARD["hopeless"]))
        hopeful, hopeless = map(to_link, drives)
        turned_to(app, page)
        app.query_params = hopeful | own
        answered = headings(ran(app.run().run()))
        assert answered and "In grey" not in shown(app)
        app.query_params = hopeless | own
        assert headings(ran(app.run())) == answered, page
        told = shown(app)
        assert "In grey, the last answer:** flat town commute" in told and REFUSED["hopeless"] in told, page
        assert len(app.error) == 1
