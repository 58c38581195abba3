"""The cards to show, without a browser."""

import math
import re
from dataclasses import replace

import pytest

from model.describe.scenario import with_prices_of
from model.describe.scenario_io import starting_drives, to_link
from model.words.quantities import Display
from pages.parts import state
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import change, html_of, opened_at, ran, scenario_of

TOWN = starting_drives()["town"][2]
LAST = 6
HOPELESS = TOWN.with_leg(0, "stops", 400)
REFUSED = "This drive cannot be driven as described"


def shown(link: dict[str, str] | None = None, card: int | str = 1):
    """Show as somebody sees it who follows a link."""
    return opened_at("show.py", (link or {}) | {"card": str(card)})


def turned(app, way: str):
    """The card after or before, by somebody who has looked at this one for a while."""
    app.session_state["card_drawn"] = (app.session_state["card_drawn"][0], -math.inf)
    return ran(app.button(key=f"show-{way}").click().run())


def said(app) -> str:
    """What stands on a card below its title."""
    return " ".join(html_of(app))


def test_the_cards_turn_and_end_at_the_take_away():
    app = shown(to_link(TOWN))
    titles = [app.title[0].value]
    assert app.button(key="show-back").disabled
    for _ in range(LAST - 1):
        turned(app, "next")
        titles.append(app.title[0].value)
        assert any(one.value == Display().say("caution") for one in app.markdown)
    assert titles[0] == Display().say("card-tell")
    assert titles[1].endswith(" %] less battery energy")
    assert len(set(titles)) == LAST
    assert not [one for one in app.button if one.key == "show-next"]
    assert [one.proto.label for one in app.get("page_link")] == ["Close"]
    assert app.button(key="show-take").label == "Take away" and app.button(key="show-take").proto.type == "primary"
    while not app.button(key="show-back").disabled:
        turned(app, "back")
        titles.append(app.title[0].value)
    assert titles[LAST - 1 :] == titles[LAST - 1 :: -1]


@pytest.mark.parametrize(("card", "drawn"), [(2, 1), (3, 2), (4, 1), (5, 1), (6, 1)])
def test_every_picture_of_a_card_is_a_file_too(card, drawn):
    app = shown(to_link(TOWN), card)
    assert len(app.get("vega_lite_chart")) == drawn
    switches = [one for one in app.toggle if "for-print" in one.key]
    assert len(switches) == (drawn > 0) and not app.get("download_button")
    for switch in switches:
        ran(switch.set_value(True).run())
        kinds = [one.proto.label for one in app.get("download_button")]
        assert kinds == ["SVG", "PNG"] * drawn


def test_the_first_card_draws_the_drive_while_it_is_told():
    app = shown(to_link(TOWN))
    assert "16.4 km" in alt_of(app) and not app.number_input
    change(app, "set-quick-distance_km", 24)
    assert "48.0 km" in alt_of(app)


def alt_of(app) -> str:
    """What the only picture of a card is, in words."""
    (picture,) = app.get("vega_lite_chart")
    return picture.proto.alt


def test_the_second_of_two_quick_taps_does_not_jump_over_a_card():
    app = shown(to_link(TOWN))
    turned(app, "next")
    for way in ("next", "back"):
        ran(app.button(key=f"show-{way}").click().run())
        assert f"2 of {LAST}" in [one.value for one in app.markdown]
    turned(app, "next")
    assert f"3 of {LAST}" in [one.value for one in app.markdown]


def test_every_card_has_one_title_a_caution_and_a_why():
    for card in range(1, LAST + 1):
        app = shown(to_link(TOWN), card)
        assert len(app.title) == 1
        assert f"{card} of {LAST}" in [one.value for one in app.markdown]
        (why,) = [one for one in app.get("popover") if one.proto.popover.label == "Why?"]
        assert len(why.markdown[0].value) > 50


@pytest.mark.parametrize("late_s, car", [(1e9, "compact-crossover"), (0.0, "city-car")])
def test_a_tap_before_the_last_one_was_drawn_does_not_undo_it(monkeypatch, late_s, car):
    """The browser sends the car along as it was; somebody who picks that car a while later means it."""
    monkeypatch.setattr(state, "LATE_S", late_s)
    app = shown()
    ran(app.button_group(key="choose-drive-show").set_value("mountain-valley").run())
    app.button_group(key="choose-car").set_value("city-car")
    ran(app.button_group(key="choose-season").set_value("winter").run())
    assert scenario_of(app).car_class == car
    assert scenario_of(app).conditions.ambient_c == TOWN.year.winter_c
    assert len(scenario_of(app).legs) == len(starting_drives()["mountain-valley"][2].legs)


def test_three_taps_from_a_fresh_start_to_the_number():
    app = shown()
    ran(app.button_group(key="choose-drive-show").set_value("motorway").run())
    ran(app.button_group(key="choose-season").set_value("winter").run())
    turned(app, "next")
    expected = starting_drives()["motorway"][2].with_setting("ambient_c", TOWN.year.winter_c)
    assert scenario_of(app) == expected
    assert "for a large SUV on the motorway run." in said(app)
    assert "A day in winter, 1 °C" in [one.value for one in app.markdown]


def test_the_car_is_one_tap():
    app = shown()
    ran(app.button_group(key="choose-car").set_value("van").run())
    assert scenario_of(app).car_class == "van"


def test_another_car_on_the_first_card_leaves_the_former_sheet_out_and_says_so():
    app = shown({"usable_kwh": "77"} | to_link(TOWN))
    ran(app.button_group(key="choose-car").set_value("van").run())
    assert scenario_of(app).stated == () and app.button(key="put-in").label == "Use them for this van"
    assert any(one.value.startswith("Left out, as entered before: usable") for one in app.markdown)


@pytest.mark.parametrize("card", range(1, LAST + 1))
def test_a_drive_that_cannot_be_driven_says_so_on_every_card(card):
    app = shown(to_link(HOPELESS), card)
    if card == 1:
        assert app.title[0].value == Display().say("card-tell")
        assert len(app.error) == 1
        ran(app.button_group(key="choose-drive-show").set_value("town").run())
        assert not app.error
    else:
        assert app.title[0].value == REFUSED
        assert "stop" in said(app)


def test_what_is_out_of_the_ordinary_stands_with_the_number():
    weak = TOWN.with_setting("motor_peak_kw", 15.0)
    text = said(shown(to_link(weak), 2))
    assert "Unusual inputs" in text
    assert "cannot keep up" in text


@pytest.mark.parametrize("card", ["0", "99", "-3", "two", ""])
def test_a_card_that_does_not_exist_is_none_that_breaks(card):
    app = shown(to_link(TOWN), card)
    assert app.title[0].value


def test_the_next_customer_starts_from_nothing():
    own = TOWN.with_setting("mass_kg", 1500.0).with_leg(0, "distance_km", 3.0)
    app = shown(to_link(own) | {"units": "us"}, 5)
    assert "mass_kg" in app.query_params
    ran(app.button(key="start-over").click().run())
    assert app.title[0].value == Display().say("card-tell")
    assert scenario_of(app) == replace(TOWN, year=with_prices_of(TOWN.year, us=True))
    assert "card" not in app.query_params
    assert app.query_params["units"] == "us"


def test_what_was_cleared_does_not_come_back_by_its_address():
    own = to_link(TOWN.with_setting("mass_kg", 1500.0))
    app = shown(own, 2)
    ran(app.button(key="start-over").click().run())
    # a step back in the browser's history
    app.query_params.clear()
    for key, value in own.items():
        app.query_params[key] = value
    ran(app.run())
    assert scenario_of(app) == TOWN


def test_after_clearing_steps_back_work_again():
    app = shown(to_link(TOWN.with_setting("mass_kg", 1500.0)))
    ran(app.button(key="start-over").click().run())
    ran(app.button_group(key="choose-drive-show").set_value("motorway").run())
    before = dict(app.query_params)
    ran(app.button_group(key="choose-car").set_value("van").run())
    app.session_state["replaced_links"] = []
    app.query_params.clear()
    for key, value in before.items():
        app.query_params[key] = value
    ran(app.run())
    assert scenario_of(app) == starting_drives()["motorway"][2]


def test_range_stands_with_the_number_and_as_a_road_for_winter():
    number, winter = shown(to_link(TOWN), 2), shown(to_link(TOWN), 5)
    assert "A full battery" not in said(number) and "Charged to 80" in said(number).replace(NO_BREAK, " ")
    assert "A full battery reaches" in picture(number).alt and "of it from regeneration" in picture(number).alt
    assert "on a winter day, at 1 °C" in picture(winter).alt and "A full battery" not in said(winter)


def test_the_number_has_what_a_year_costs_beside_the_car_driven_now():
    card = said(shown(to_link(TOWN) | {"now_l_per_100km": "6.5"}, 2)).replace(NO_BREAK, " ")
    year = r"A year of 220 days costs € \d+ to \d+ for electricity; without regeneration .* € \d+ to \d+ more\."
    assert re.search(year + r" Your petrol car now: € \d+ for petrol\.", card)


def test_the_last_card_says_of_this_car_when_regeneration_is_not_there():
    alt = picture(shown(to_link(TOWN), 6)).alt
    assert alt.startswith("Lift-off may fade: press the pedal. ")
    for part in ("Cold battery, −10 °C: ", "Full battery: ", "Slippery road, ice: set none beforehand; pedal weaker"):
        assert part in alt.replace(NO_BREAK, " ")
    # a foot that asks nothing of the motor has nothing that fades
    rolls = shown(to_link(TOWN.with_setting("lift_off_mps2", 0.0)), 6)
    assert not rolls.get("vega_lite_chart")
    for part in ("Cold battery", "Slippery road", "Full battery, hills", "Emergency stop"):
        assert part in said(rolls)


def test_a_hybrid_has_neither_road():
    hybrid = to_link(replace(TOWN, car_class="full-hybrid"))
    for card in (2, 5):
        app = shown(hybrid, card)
        assert not app.get("vega_lite_chart") and "A full battery" not in said(app)


def picture(app):
    """The one picture of a card."""
    (drawn,) = app.get("vega_lite_chart")
    return drawn.proto


def test_what_would_be_heat_stands_over_the_squares():
    app = shown(to_link(TOWN), 3)
    text = said(app)
    without, still = (float(re.search(rf"([0-9.]+).kWh {words}", text)[1]) for words in ("end as heat", "still do"))
    assert 0 < still < without
    before, after = (one.proto.alt for one in app.get("vega_lite_chart"))
    assert "38 friction heat" in before and "29 saved" in after and "saved" not in before


def test_who_is_guided_meets_no_showroom_and_no_next_customer():
    alone, standing = shown({"guide": "yes"} | to_link(TOWN)), shown(to_link(TOWN))
    for app, there in ((alone, False), (standing, True)):
        words = [one.proto.popover.label for one in app.get("popover")]
        assert (Display().say("showroom") in words) == (Display().say("show-next-customer") in words) == there


def test_a_share_that_gives_way_to_another_is_told():
    app = shown(to_link(TOWN))
    ran(app.text_input(key="set-quick-motorway_share").set_value("80").run())
    assert "So 20 % is left for town." in [one.value.replace(NO_BREAK, " ") for one in app.caption]
    ran(app.text_input(key="set-quick-town_share").set_value("10").run())
    captions = [one.value.replace(NO_BREAK, " ") for one in app.caption]
    assert "The rest, 10 %, is country road." in captions and not any("is left for" in text for text in captions)
