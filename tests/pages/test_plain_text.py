"""What a link brings is shown as plain text of bounded length, and breaks no page."""

import json

import pytest

from pages.parts.plain_text import JOINER, MOST, inert
from tests.pages.in_app import opened_at, ran, scenario_of
from tests.pages.test_every_page import PAGES

LIVE = (
    "[x](https://stranger.net) ![y](http://stranger.net/p.png) **b** `c` $d$ :red[e] <b>f</b> www.stranger.net "
    "g@h.net ~~i~~"
)
LONG = "9" * 5000
DRIVE, CLAIM = "your_drive.py", "check_a_claim.py"
LINKS = (
    (DRIVE, {"car": LIVE}), (DRIVE, {"car": "city-car", "v": LIVE}), (DRIVE, {"car": "city-car", "currency": LIVE}),
    (DRIVE, {"car": "city-car", "ambient_c": LIVE}), (DRIVE, {"car": "city-car", "ambient_c": "1e999"}),
    (DRIVE, {"car": "city-car", "legs": LIVE}), ("show.py", {"card": LONG}), (CLAIM, {"claim": LIVE}),
    (CLAIM, {"claim": LONG}), (CLAIM, {"said_name": LIVE}), (CLAIM, {"said_number": "-1e308..1e308"}),
    (CLAIM, {"said_number": LONG}), ("compare.py", {"differs": "car", "b": LIVE, "c": LONG}),
    ("winter_and_limits.py", {"part": LIVE}), ("how_it_works.py", {"panel": LIVE, "from_kmh": LONG}),
)  # fmt: skip


def shown(app) -> list[str]:
    """Everything on a page in which Markdown is looked for."""
    kinds = (app.markdown, app.caption, app.info, app.warning, app.error, app.success, app.title, app.header)
    labelled = (app.button, app.number_input, app.text_input, app.selectbox, app.toggle)
    texts = [one.value for kind in kinds for one in kind]
    return texts + [one.label for kind in labelled for one in kind]


@pytest.mark.parametrize(("page", "link"), LINKS, ids=[f"{page} {[*link][-1]}" for page, link in LINKS])
def test_what_a_link_brings_is_text_and_no_page_breaks(page, link):
    app = ran(opened_at(page, link))
    texts = shown(app)
    for live in ("[x](", "**b**", "`c`", "$d$", ":red[", "<b>", "https://stranger", "www.stranger", "g@h", "~~i"):
        assert not [text for text in texts if live in text]
    assert max(map(len, texts)) < 2 * MOST + len("Some of the link could not be used.") + 1000


def test_nothing_is_lost_but_what_is_too_long():
    assert inert("Outside temperature: “−5 °C”, so.") == "Outside temperature: “−5 °C”, so."
    bare = inert(LIVE).replace("\\", "").replace(JOINER, "")
    assert bare == LIVE
    assert len(inert("x" * 10_000)) == MOST + 1
    assert inert("a\n\n# b") == "a \\# b"


def test_what_is_typed_for_a_claim_is_said_again_as_text():
    app = opened_at(CLAIM, {})
    ran(app.text_input(key="set-number").set_value(LIVE).run())
    ran(app.button(key="row-said-ambient_c").click().run())
    ran(app.text_input(key="set-said-ambient_c").set_value(f"{LIVE} 3..2").run())
    assert len(app.error) == 2
    for one in app.error:
        assert "[x](" not in one.value and "**b**" not in one.value and ":red[" not in one.value


def drawn(node):
    """Everything on a page in which Markdown is looked for, whatever kind it is of."""
    kind = getattr(node, "type", "")
    if kind not in ("text_input", "arrow_vega_lite_chart", "code") and (proto := getattr(node, "proto", None)):
        yield kind, str(proto)
    for child in getattr(node, "children", {}).values():
        yield from drawn(child)


def test_a_short_text_that_is_taken_over_is_text_on_every_page():
    live = "[x](//s.net)<b>b</b>$d$ **f**"
    prices = {"currency": live, "price_per_kwh": 0.4}
    house = {"line": live, "cars": [{"as": live, "like": "city-car"}], "prices": prices}
    link = {"car": "van", "name": live, "currency": live, "now_l_per_100km": "6", "showroom": json.dumps(house)}
    app = opened_at(PAGES[0], link)
    for page in PAGES:
        app.switch_page(page)
        for kind, text in drawn(ran(app.run())._tree):
            assert "<b>b" not in text, (page, kind)
            # in HTML nobody looks for Markdown
            assert kind == "html" or not [mark for mark in ("[x](", "$d$", "**f") if mark in text], (page, kind)
    assert scenario_of(app).year.currency == live
