"""Winter and limits, without a browser: what each part says is what the model says, and what is set stays."""

import json
import re
from dataclasses import replace

import pytest

from model.describe.scenario_io import from_link, starting_drives, to_link
from model.limits.all_limits import season_costs_of
from model.limits.full_battery import hills
from model.limits.hard_stop import hard_stop
from model.limits.limit_settings import LIMIT_PARTS, LimitSettings
from model.limits.slippery_road import slippery_road
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts.grip_words import advice
from pages.parts.typography import NO_BREAK
from pages.parts.winter_words import part_name
from tests.pages.in_app import address, opened_at, ran

STARTS = {name: scenario for name, (_, _, scenario) in starting_drives().items()}
FROSTY = STARTS["motorway"].with_setting("ambient_c", -7.0)
VALLEY = STARTS["mountain-valley"]
METRIC = Display()
USUAL = LimitSettings()
SNOWY = VALLEY.with_setting("ambient_c", -3.0).with_setting("surface", "snow")


def opened(part="cold", scenario=FROSTY, **link):
    """One part as somebody sees it who follows a link."""
    return opened_at("winter_and_limits.py", to_link(scenario) | {"part": part} | link)


def sentence(app):
    return app.header[0].value.replace(NO_BREAK, " ")


def words(app):
    """All that stands on the page in words."""
    kinds = (app.title, app.header, app.markdown, app.caption, app.info)
    html = [re.sub("<[^>]*>", " ", one.proto.body) for one in app.get("html")]
    return "\n".join([*(item.value for kind in kinds for item in kind), *html]).replace(NO_BREAK, " ")


@pytest.mark.parametrize("part", LIMIT_PARTS)
@pytest.mark.parametrize("name", ["town", "mountain-valley"])
def test_every_part_has_number_picture_advice_and_caution(part, name):
    app = opened(part, STARTS[name].with_setting("ambient_c", -5.0))
    assert len(app.title) == 1
    assert re.search(r"\d", sentence(app))
    assert [one.value for one in app.header if one.value in ("What to do", "Mind")] == ["What to do", "Mind"]
    alts = [one.proto.alt for one in app.get("vega_lite_chart")]
    assert len(alts) >= 3
    # the numbers of the drive and of the leading picture are told to who only hears them
    assert all(alts) and all(re.search(r"\d", alt) for alt in alts[:2])
    assert all(text in words(app) for text in ("manual", *(part_name(one, METRIC) for one in LIMIT_PARTS)))


@pytest.mark.parametrize("part", LIMIT_PARTS)
def test_no_part_promises_safety(part):
    for scenario in (SNOWY, replace(SNOWY, car_class="full-hybrid").with_setting("trailer_kg", 900.0)):
        assert not re.search(r"\bsafe", words(opened(part, scenario, bend="tight bend")), re.IGNORECASE)


@pytest.mark.parametrize("part", LIMIT_PARTS)
def test_the_link_leads_to_its_part_and_a_tap_to_another(part):
    app = opened(part)
    assert app.button_group(key="choose-part").value == part
    other = LIMIT_PARTS[LIMIT_PARTS.index(part) - 1]
    ran(app.button_group(key="choose-part").set_value(other).run())
    assert address(app).get("part", "cold") == other
    assert from_link(address(app), FROSTY)[0] == FROSTY


def test_what_a_link_asks_beyond_its_bounds_is_said():
    app = opened("hills", hill_m="99999")
    assert "Hill goes down" in app.info[0].value or "hill" in app.info[0].value.lower()
    assert "3,000 m" in sentence(app)


# cold battery


def test_the_minutes_are_the_models():
    app, normal = opened("cold"), season_costs_of(FROSTY).normal
    assert f"first {round(normal.minutes)} minutes, {normal.km:.0f} km" in sentence(app)
    assert "−7 °C and 60 % charge" in sentence(app)
    assert "No published map" in words(app)
    assert f"weaker for {round(normal.minutes)} minutes" in words(app)


def test_a_warm_day_takes_nothing_away():
    app = opened("cold", STARTS["motorway"].with_setting("ambient_c", 25.0))
    assert "as usual from the start" in sentence(app)
    assert "nothing to gain" in words(app)


def test_the_season_on_the_answer_line_redraws_the_strip():
    cold, warm = (
        json.loads(opened("cold", scenario).get("vega_lite_chart")[0].proto.spec)
        for scenario in (FROSTY, STARTS["motorway"].with_setting("ambient_c", 20.0))
    )
    assert cold["height"] > warm["height"], "the stretch on which the battery holds back is bracketed"


def test_published_figures_stand_beside_this_drives_own():
    """On a mild day too they stand beside the model's figure for the cold in which they were measured."""
    lost = season_costs_of(FROSTY.with_setting("ambient_c", -20 / 3)).range_lost_share
    text = words(opened("cold", FROSTY.with_setting("ambient_c", 12.0)))
    assert "AAA, February 2019" in text and "Steinstraeter" in text
    assert f"{100 * lost:.0f} % less range" in text and "at −6.7 °C, heating as you set it" in text


def test_winter_days_are_one_tap_each_at_the_top_of_the_cold_part():
    app = opened("cold", STARTS["motorway"])
    labels = [one.content for one in app.button_group(key="cold-day").proto.options]
    assert labels == ["Winter day, 1 °C", "−7 °C", "−15 °C"]
    ran(app.button_group(key="cold-day").set_value(-7.0).run())
    assert from_link(address(app), FROSTY)[0].conditions.ambient_c == -7.0 and "battery at −7 °C" in sentence(app)


def test_a_dry_road_is_not_headed_slippery():
    headings = [opened("grip", scenario).title[0].value for scenario in (VALLEY, SNOWY)]
    assert headings == ["Grip, on your road as it is: dry", "When the road is slippery"]


# slippery road


@pytest.mark.parametrize(("bend", "speed"), [("straight on", 50.0), ("gentle bend", 60.0), ("tight bend", 40.0)])
def test_grip_asked_and_there_is_are_the_models(bend, speed):
    settings = LimitSettings(bend=bend, grip_kmh=speed)
    app, check = opened("grip", SNOWY, bend=bend, grip_kmh=f"{speed:g}"), slippery_road(SNOWY, settings).check
    asked = max(check["demand_by_axle"][axle]["in_all"] for axle in ("front", "rear"))
    there_is = check["available_friction"]
    told = words(app)
    assert f"The rear wheels are asked for a grip of {asked:.2f} of the weight they carry" in told
    margin = {"none": "there is no margin", "small": "the margin is small"}[check["margin"]]
    assert f"the road gives {there_is['low']:.2f} to {there_is['high']:.2f}" in told and margin in sentence(app)
    assert METRIC.say("grip-failure", wheels=check["failing_axle"]) in words(app)
    assert ("In a bend the axle" in words(app)) == (bend != "straight on")


def test_the_margin_on_every_road_is_the_first_picture_of_a_slippery_road():
    app = opened("grip", STARTS["town"])
    first, second = (chart.proto.alt for chart in app.get("vega_lite_chart")[1:3])
    assert "too much for" in first.split(".")[0] and "no margin" in first and "The car from above" in second


def test_what_is_set_on_the_part_stands_in_the_address():
    app = opened("grip", SNOWY)
    ran(app.slider(key="set-grip_kmh").set_value(30.0).run())
    ran(app.button_group(key="set-bend").set_value("bend").run())
    ran(app.slider(key="set-slope_pct").set_value(-6.0).run())
    assert {key: address(app)[key] for key in ("grip_kmh", "bend", "slope_pct")} == {
        "grip_kmh": "30", "bend": "bend", "slope_pct": "-6",
    }  # fmt: skip
    assert "in a bend at 30 km/h" in sentence(app) and "On this slope" in words(app)
    ran(app.slider(key="set-grip_kmh").set_value(50.0).run())
    assert "grip_kmh" not in address(app)


def test_tyres_and_trailer_are_the_scenarios():
    app = opened("grip", SNOWY)
    assert "Trailer" not in words(app)
    ran(app.selectbox(key="set-tyres-part").set_value("winter").run())
    ran(app.text_input(key="set-trailer_kg").set_value("900").run())
    there_is = slippery_road(SNOWY.with_setting("tyres", "winter"), USUAL).check["available_friction"]
    assert f"the road gives {there_is['low']:.2f} to {there_is['high']:.2f}" in words(app)
    assert "stable is not modelled" in words(app) and "With a trailer" in words(app)
    assert from_link(address(app), VALLEY)[0].conditions.tyres == "winter"


def test_experts_stand_side_by_side_with_their_publishers():
    text = words(opened("grip", SNOWY))
    assert all(who in text and ground in text for who, _, ground in advice(METRIC))


# full battery and hills


def test_the_room_for_the_hill_is_the_models():
    settings = LimitSettings(hill_m=900.0, hill_pct=9.0)
    app, found = opened("hills", VALLEY, hill_m="900", hill_pct="9"), hills(VALLEY, settings, drive(VALLEY))
    room, starts = found.room["mid"], [found.room[name].start_for_full_feel for name in ("low", "high")]
    start = f"{100 * room.start_for_full_feel:.0f} %"
    assert sentence(app).startswith(f"For a hill of 900 m down, start at {start} or less: ")
    assert f"the charge to start at lies from {100 * starts[0]:.0f} to {100 * starts[1]:.0f} %." in words(app)
    assert f"charge to {start} at most" in words(app) and f"start at {start} or less before a descent" in words(app)
    picture = next(chart for chart in app.get("vega_lite_chart") if "Started higher" in chart.proto.alt)
    above = re.search(r"above (\d+ %); started above (\d+ %)", picture.proto.alt.replace(NO_BREAK, " "))
    assert list(above.groups()) == [f"{100 * held:.0f} %" for held in (room.full_power_below, room.start_at_most)]


def test_a_hill_is_entered_and_what_cannot_be_used_is_refused():
    app = opened("hills", VALLEY)
    ran(app.text_input(key="set-hill_m").set_value("500").run())
    assert "500 m down" in sentence(app) and address(app)["hill_m"] == "500"
    ran(app.text_input(key="set-hill_m").set_value("5").run())
    assert "5 m cannot be used, 10 to 3000 m can" in app.error[0].value
    assert "500 m down" in sentence(app) and address(app)["hill_m"] == "500"
    ran(app.text_input(key="set-hill_m").set_value("300").run())
    assert not app.error and "hill_m" not in address(app)


def test_a_hybrids_window_is_told_in_metres():
    hybrid = replace(VALLEY, car_class="full-hybrid")
    app, found = opened("hills", hybrid), hills(hybrid, LimitSettings(), drive(hybrid))
    assert f"full after {found.to_fill_m:.0f} m" in sentence(app)
    assert "engine is dragged along" in words(app) and "l/100 km" in words(app)


# emergency stop


def test_distances_are_the_models_and_brakes_rest():
    settings = LimitSettings(stop_kmh=80.0, reaction_s=1.5)
    app, found = opened("stop", VALLEY, stop_kmh="80", reaction_s="1.5"), hard_stop(VALLEY, settings, drive(VALLEY))
    least, most = (found.stops[level].distance_m for level in ("high", "low"))
    thinking = found.stops["mid"].thinking_m
    span = f"{least:.0f} to {most:.0f} m to rest, {thinking:.0f} m of them before the brakes act."
    assert sentence(app) == f"From 80 km/h on a dry road: {span}"
    assert "how long they last cannot be told" in words(app)
    assert "A motor does not hold a parked car" in words(app)


def test_us_units_on_every_part():
    for part, unit in (("cold", "°F"), ("grip", "mph"), ("hills", " ft"), ("stop", " ft")):
        app = opened(part, FROSTY, units="us")
        assert unit in sentence(app) and not re.search(r"\d (km|m|km/h|°C)\b(?!/s²)", sentence(app))
    assert "From 60 mph" in sentence(app), "a slider stands for what it shows"


def test_a_drive_that_cannot_be_driven_is_refused_in_one_sentence():
    app = opened("hills", VALLEY.with_setting("usable_kwh", 0.5))
    assert len(app.error) == 1 and "is not enough" in app.error[0].value
    assert [one.value for one in app.header] == []


def test_a_temperature_is_said_as_it_was_entered():
    app = opened("cold", STARTS["town"])
    ran(app.text_input(key="set-ambient_c-part").set_value("−7,5").run())
    assert "−7.5 °C" in sentence(app) and "−8 °C" not in words(app)
