"""Pictures as SVG: the words and colours of the page, nothing of the pointer's, small."""

import re
import xml.etree.ElementTree as ElementTree

from model.kernel.timeline import books, slow_downs, timeline
from model.words.quantities import Display
from pages.parts.charts import export
from pages.parts.charts.drive_strip import drive_strip
from pages.parts.charts.energy import before_after
from pages.parts.charts.export import PAPER, PRINT_PX, for_print, svg, warm_up
from pages.parts.keeping import Reply
from pages.parts.theme import LIGHT
from tests.pages.charts.specs import driven, tables

UDDS = driven()
STRIP = drive_strip(timeline(UDDS), slow_downs(UDDS), Display())


def test_a_picture_is_svg_of_the_width_asked_for_with_its_words_and_colours():
    drawn = svg(STRIP, 700)
    root = ElementTree.fromstring(drawn)
    assert root.tag.endswith("svg") and root.get("width") == "700" and root.get("viewBox").startswith("0 0 700 ")
    words = {text.text for text in root.iter("{http://www.w3.org/2000/svg}text")}
    assert {Display().say("strip-motor"), Display().say("strip-friction")} <= words
    assert LIGHT.back in drawn and LIGHT.friction in drawn


def test_what_only_a_pointer_finds_is_left_out():
    without = STRIP | {"layer": [layer for layer in STRIP["layer"] if layer["data"]["name"] != "slow_downs"]}
    assert svg(STRIP, 700) == svg(without, 700)


def test_numbers_have_two_decimals():
    assert not re.search(r"\d\.\d{3}", svg(STRIP, 700))


def test_the_specification_is_left_as_it_was():
    before = {name: table.copy() for name, table in tables(STRIP).items()}
    layers = len(STRIP["layer"])
    svg(STRIP, 700)
    assert len(STRIP["layer"]) == layers and STRIP["width"] == "container"
    assert all(table.equals(before[name]) for name, table in tables(STRIP).items())


def test_the_same_picture_gives_the_same_text(monkeypatch):
    picture = before_after(books(UDDS), Display())
    monkeypatch.setattr(export, "ask", lambda draw, spec: Reply(draw(spec)))
    assert svg(picture, 700) == svg(picture, 700)


def test_a_picture_is_drawn_again_only_where_something_in_it_moved(monkeypatch):
    drawn = []
    monkeypatch.setattr(export.vl_convert, "vegalite_to_svg", lambda spec: drawn.append(spec) or f"{len(drawn)}")
    events = slow_downs(UDDS)
    moved = drive_strip(timeline(UDDS), events.assign(motor_wh=events["motor_wh"] + 1), Display())
    assert svg(STRIP, 701) == svg(moved, 701) and len(drawn) == 1
    faster = timeline(UDDS).assign(speed_kmh=timeline(UDDS)["speed_kmh"] + 1)
    assert svg(drive_strip(faster, events, Display()), 701) != svg(STRIP, 701) and len(drawn) == 2


def test_it_asks_nothing_of_anybody():
    for picture in (STRIP, before_after(books(UDDS), Display())):
        assert re.findall(r'(?:href|src)="[^"]*"|url\([^)]*\)|<script|<image', svg(picture, 400)) == []


def test_a_picture_for_print_is_the_same_from_a_dark_ground_as_from_a_light_one():
    light, dark = (drive_strip(timeline(UDDS), slow_downs(UDDS), Display(), ground) for ground in (False, True))
    made = [svg(for_print(one, "A finding", ["About it."]), PRINT_PX) for one in (light, dark)]
    assert made[0] == made[1] and PAPER in made[0] and LIGHT.ground not in made[0]
    words = {text.text for text in ElementTree.fromstring(made[0]).iter("{http://www.w3.org/2000/svg}text")}
    assert {"A finding", "About it."} <= words
    clear = svg(for_print(dark, "A finding", ["About it."], transparent=True), PRINT_PX)
    assert f'fill="{PAPER}"/><g' in made[0] and f'fill="{PAPER}"/><g' not in clear


def test_warming_up_needs_no_picture():
    warm_up()


def test_a_line_of_a_title_parts_no_range_and_no_unit():
    for letters in range(60, 80):
        lines = for_print(STRIP, f"{'a' * letters} 17 to 84 % and 3 kWh", [])["title"]["text"]
        assert any("17 to 84 %" in line.replace("\N{NO-BREAK SPACE}", " ") for line in lines)
        assert not any(line.startswith("kWh") for line in lines)
