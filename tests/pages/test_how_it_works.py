"""How it works: what each panel says is what the model says, for three cars, and can be read by anybody."""

import json
import re
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pytest
from streamlit.testing.v1 import AppTest

from model.describe.parameters import car_from
from model.describe.scenario_io import starting_drives
from model.kernel.savings import evaluate
from model.one_stop.bigger_motor import by_power
from model.one_stop.machine_map import cloud_of, use_of
from model.one_stop.panels import PanelSettings
from model.one_stop.repeated_stops import repeated_stops
from model.one_stop.slow_down import change, drive_way
from model.one_stop.stop_energy import energy_of, stop, way_out
from model.one_stop.who_slows import grip_by_speed, hardest_of, late_motor, split_of
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts import theme
from pages.parts.charts import panels, panels_machine
from pages.parts.panel_words import letters_and_source
from tests.pages.charts.specs import assert_valid
from tests.pages.in_app import address, plain

PAGE = Path(theme.__file__).parents[1] / "how_it_works.py"
PANELS = ("speed", "flow", "quadrants", "who", "motor", "discs")
CARS = {name: starting_drives()[name][2] for name in ("town", "motorway", "mountain-valley")}
USUAL = PanelSettings()


def opened(panel="speed", scenario=None, display=None, **link):
    """One panel as somebody sees it who follows a link."""
    app = AppTest.from_file(PAGE, default_timeout=30)
    app.session_state["scenario"] = scenario or CARS["town"]
    app.session_state["display"] = display or Display()
    for key, value in {"panel": panel, **link}.items():
        app.query_params[key] = value
    app.run()
    assert not app.exception, [one.value for one in app.exception]
    return app


def sentence(app):
    return plain(app.header[0].value)


def paragraphs(app):
    """What stands on the panel as running text, a paragraph each."""
    return [paragraph for item in app.markdown for paragraph in item.value.split("\n\n")]


def words(app):
    """All that stands on the panel in words."""
    return plain("\n".join(item.value for kind in (app.title, app.header, app.markdown, app.caption) for item in kind))


def assert_prints(text, *expected):
    """The numbers printed in a text are the expected ones, each as exact as it is printed."""
    printed = re.findall(r"−?\d[\d,]*(?:\.\d+)?", text)
    assert len(printed) == len(expected), text
    for number, value in zip(printed, expected, strict=True):
        places = len(number.partition(".")[2])
        shown = float(number.replace(",", "").replace("−", "-"))
        # two significant digits are the fewest in which a figure is printed
        coarse = 10 ** -places if abs(shown) < 100 or places else 1
        assert abs(shown - value) <= 0.5001 * coarse, (number, value, text)


@dataclass
class Stop:
    """A stop driven another way than the page drives it."""

    motion: float
    recovered: float
    friction: float
    stored: float
    braked: float


def driven(scenario, speed):
    car, quiet = car_from(scenario.car_class, dict(scenario.stated)), scenario.with_setting("cabin", False).conditions
    way = drive_way([change(speed / 3.6, 0.0, USUAL.slowing_mps2, car, quiet)], car, quiet, scenario.driver)
    result = evaluate(way.trace, car, quiet, scenario.driver)
    mass = car.mass_kg * (1 + car.rotating_mass_share) + quiet.payload_kg
    charging = result.run.terminal_w[0] < 0
    warmed = (result.run.cell_loss_w[0] * result.run.step_s[0] * charging).sum() / 3600
    motion = mass * (speed / 3.6) ** 2 / 2 / 3600
    braked = result.wheel_braking_kwh * 1000
    return Stop(motion, way.recovered_wh, way.friction_wh, way.recovered_wh - warmed, braked)


# what it says is what the model says


@pytest.mark.parametrize("name", CARS)
def test_speed_squared_says_what_the_model_says(name):
    app, slow, fast = opened(scenario=CARS[name]), driven(CARS[name], 50), driven(CARS[name], 100)
    assert_prints(sentence(app), 100, fast.motion, 4.0, slow.motion, 50)
    back = next(paragraph for paragraph in paragraphs(app) if paragraph.startswith("Stopped evenly"))
    ratio = fast.recovered / slow.recovered
    assert_prints(back, 1.5, 1.5 * 3.6, fast.recovered, 100, slow.recovered, 50, ratio)


@pytest.mark.parametrize("name", CARS)
def test_the_flow_says_what_the_model_says(name):
    scenario = CARS[name]
    one = driven(scenario, 100)
    result = drive(scenario)
    wheels = way_out(one.stored, 100.0, result.car, result.conditions, result.driver).wheels
    told = sentence(opened("flow", scenario))
    assert_prints(told, one.motion, 100, one.recovered, one.stored, wheels, 100 * wheels / one.motion)


@pytest.mark.parametrize("name", CARS)
def test_the_names_of_the_darkest_shades_lie_within_the_map(name):
    """By the picture's edge the border of slowing ran through its name."""
    result = drive(CARS[name])
    spec = panels_machine.four_quadrants(result.car, cloud_of(result), "slowing_forwards", Display())
    names, borders = spec["datasets"]["levels"], spec["datasets"]["borders"]
    half_px, half_line = 30, 0.6 * theme.LABEL_PX
    kmh_per_px = (borders["speed"].max() - borders["speed"].min()) / 480
    kn_per_px = 2 * panels_machine.HEADROOM * borders["y"].max() / panels_machine.HEIGHT_PX
    for part, row in zip(("False 1", "True 1"), names.itertuples(), strict=True):
        border = borders[borders["part"] == part]
        end = np.interp(row.speed + half_px * kmh_per_px, border["speed"], border["y"].abs())
        assert abs(row.y) + half_line * kn_per_px < end or not row.text


@pytest.mark.parametrize("name", CARS)
def test_the_quadrants_say_what_the_model_says(name):
    uses = use_of(drive(CARS[name]))
    slowing, pulling = uses["slowing_forwards"], uses["pulling_forwards"]
    app = opened("quadrants", CARS[name])
    assert_prints(
        sentence(app), slowing.time_s / 60, slowing.electric_kwh, slowing.shaft_kwh,
        100 * slowing.electric_kwh / slowing.shaft_kwh,
    )  # fmt: skip
    assert "at its shaft" in sentence(app) and "wheels" not in sentence(app)
    app.button_group(key="set-quadrant").set_value("pulling_forwards").run()
    assert_prints(
        sentence(app), pulling.time_s / 60, pulling.shaft_kwh, pulling.electric_kwh,
        100 * pulling.shaft_kwh / pulling.electric_kwh,
    )  # fmt: skip


@pytest.mark.parametrize("name", CARS)
def test_who_slows_says_what_the_model_says(name):
    one = driven(CARS[name], 100)
    motor, friction = one.braked - one.friction, one.friction
    shares = (100 * part / one.motion for part in (motor, friction, one.motion - one.braked))
    app = opened("who", CARS[name])
    assert_prints(sentence(app), 100, *shares)
    result = drive(CARS[name])
    stopped = stop(100.0, 1.5, result.car, result.conditions, result.driver)
    late = next(paragraph for paragraph in paragraphs(app) if paragraph.startswith("Motors turn"))
    assert_prints(late, 0.3, *(100 * share for share in late_motor(stopped, 1.5)))


@pytest.mark.parametrize("name", CARS)
def test_a_bigger_motor_says_what_the_model_says(name):
    result = drive(CARS[name])
    twice = by_power(result).set_index("power_times").loc[2.0]
    assert_prints(
        sentence(opened("motor", CARS[name])), result.car.motor_peak_kw, 100 * result.captured_share,
        result.battery_in_kwh, 2 * result.car.motor_peak_kw, twice["recovered_kwh"],
    )  # fmt: skip
    other = sentence(opened("motor", CARS[name], power_times="2", change="twice_the_battery"))
    assert_prints(
        other, 2 * result.car.motor_peak_kw, 100 * twice["motor_kwh"] / result.wheel_braking_kwh,
        by_power(result, "twice_the_battery").set_index("power_times").loc[2.0, "recovered_kwh"],
        result.car.motor_peak_kw, result.battery_in_kwh,
    )  # fmt: skip


def test_whether_a_bigger_motor_brings_more_is_answered_first():
    result = drive(CARS["mountain-valley"])
    for times in (0.25, 1.0, 2.0):
        powers = by_power(result).set_index("power_times")["recovered_kwh"]
        small, big = powers.loc[min(times, 1.0)], powers.loc[2.0 if times >= 1 else 1.0]
        told = sentence(opened("motor", CARS["mountain-valley"], power_times=f"{times:g}"))
        gain = big / small - 1
        assert told.split(".")[0] == ("Hardly" if abs(gain) < 0.05 else "Yes" if gain > 0 else "No, less")


def test_what_reaches_the_battery_is_lost_or_left_to_friction_is_all_of_the_braking():
    powers = by_power(drive(CARS["mountain-valley"]))
    piles = panels_machine.bigger_motor(powers, 1.0, Display())["datasets"]["piles"]
    heights = (piles["y"] - piles["y2"]).groupby(piles["part"], sort=False).sum()
    assert heights["back"] == pytest.approx(powers["recovered_kwh"].sum())
    assert heights["back"] + heights["losses"] == pytest.approx(powers["motor_kwh"].sum())
    assert set(piles["meaning"]) == {"back", "losses", "friction"}


def test_a_gentle_stop_fills_its_picture_and_grip_far_off_is_told():
    result = drive(CARS["mountain-valley"])
    for slowing, most, told in ((1.5, 2.5, "off the picture"), (9.0, 10.0, "all that")):
        stopped = stop(100.0, slowing, result.car, result.conditions, result.driver)
        spec = panels.who_slows(split_of(stopped), hardest_of(stopped, 100.0), grip_by_speed(130.0, result.conditions),
                                dict.fromkeys(panels.SHARES, 0.3), Display())  # fmt: skip
        assert spec["layer"][0]["encoding"]["y"]["scale"]["domain"] == [0, most]
        assert told in spec["datasets"]["heads"]["text"].iloc[0]


@pytest.mark.parametrize("name", CARS)
def test_no_dot_of_the_drive_lies_under_a_shades_name(name):
    result = drive(CARS[name])
    spec = panels_machine.four_quadrants(result.car, cloud_of(result), "slowing_forwards", Display())
    dots, top = spec["datasets"]["dots"], spec["datasets"]["borders"]["speed"].max()
    line_kn = theme.LINE_PX * 2 * panels_machine.HEADROOM * spec["datasets"]["borders"]["y"].max() / panels.HEIGHT_PX
    for row in spec["datasets"]["levels"].itertuples():
        near = (dots["speed"] - row.speed).abs() < panels_machine.NAME_SHARE * top
        assert not row.text or not (near & ((dots["y"] - row.y).abs() < line_kn / 2)).any()


@pytest.mark.parametrize("name", CARS)
@pytest.mark.parametrize("stops", [1, 10])
def test_hot_discs_say_what_the_model_says(name, stops):
    result = drive(CARS[name])
    heat = repeated_stops(stops, 100.0, 1.5, result.car, result.conditions, result.driver)
    hottest = heat.temperature[["friction_only_c", "regenerated_c"]].max()
    assert_prints(
        sentence(opened("discs", CARS[name], stops=str(stops))), 100, hottest["friction_only_c"],
        heat.friction_only_heat_kwh, hottest["regenerated_c"], heat.back_kwh,
    )  # fmt: skip


# a reader who knows nothing


QUESTIONS = {
    "How much more energy of motion has my car at 100 than at 50 km/h?": (
        "speed", lambda s: f"{driven(s, 100).motion / driven(s, 50).motion:.1f} times the"),
    "How much of it is back at the wheels after a stop and pulling away again?": (
        "flow", lambda s: f"{100 * _back_at_wheels(s) / driven(s, 100).motion:.0f} %"),
    "What does most of the work in an ordinary stop?": (
        "who", lambda s: f"the motor does {100 * _by_motor(driven(s, 100)):.0f} % of the work"),
    "How much would a motor of twice the power bring back on my drive?": (
        "motor", lambda s: "{:.0f} kW would put {:.2f}".format(
            2 * _car(s)[0].motor_peak_kw, by_power(drive(s)).set_index("power_times").loc[2.0, "recovered_kwh"])),
    "How hot do the brake discs get in ten stops without the motor?": (
        "discs", lambda s: "{:.0f} °C, and".format(
            repeated_stops(10, 100.0, 1.5, *_car(s)).temperature["friction_only_c"].max())),
}  # fmt: skip


def _car(scenario):
    result = drive(scenario)
    return result.car, result.conditions, result.driver


def _back_at_wheels(scenario):
    return way_out(driven(scenario, 100).stored, 100.0, *_car(scenario)).wheels


def _by_motor(one):
    return (one.braked - one.friction) / one.motion


@pytest.mark.parametrize("question", QUESTIONS)
@pytest.mark.parametrize("name", ["motorway", "mountain-valley"])
def test_the_page_answers(question, name):
    panel, answer = QUESTIONS[question]
    assert answer(CARS[name]) in words(opened(panel, CARS[name]))


EXPLAINED = {
    "Wh": "watt-hour",
    "kWh": "ilowatt-hour",
    "kW": "ilowatt",
    "m/s²": "metres per second, each second",
    "kN": "kilonewtons",
    "inverter": "its power electronics",
    "alternating current": "changes direction",
    "torque": "turned round an axle",
    "Efficiency": "what comes out over what goes in",
}


@pytest.mark.parametrize("panel", PANELS)
def test_terms_are_explained_on_the_panel_that_uses_them(panel):
    app = opened(panel)
    read = "\n".join([app.title[0].value, sentence(app), *(item.value for item in app.markdown)])
    for term, explanation in EXPLAINED.items():
        if re.search(rf"(?<![\w/]){re.escape(term)}(?![\w/])", read):
            assert explanation in read, term


@pytest.mark.parametrize("panel", PANELS)
def test_it_reads_like_a_newspaper(panel):
    app = opened(panel)
    # the drawer with the equation may be drier
    told = [one for one in paragraphs(app) if one != letters_and_source(panel, Display())[0] and "$$" not in one]
    text = " ".join([sentence(app), *told])
    assert "!" not in text and " safe" not in text.lower()
    lengths = [len(one.split()) for one in re.split(r"(?<=[.:;])\s", text)]
    assert sum(lengths) / len(lengths) < 20
    assert max(lengths) <= 45


# controls, links and pictures


@pytest.mark.parametrize("panel", PANELS)
@pytest.mark.parametrize("dark", [False, True])
def test_every_picture_is_valid_has_alt_text_and_a_table(panel, dark, monkeypatch):
    specs = {}
    for module in (panels, panels_machine):
        monkeypatch.setattr(module, "dressed", lambda *given: specs.setdefault(panel, theme.dressed(*given)))
    monkeypatch.setattr("pages.parts.state.dark", lambda: dark)
    app = opened(panel, CARS["mountain-valley"])
    assert_valid(specs[panel])
    chart = app.get("vega_lite_chart")[0].proto
    assert json.loads(chart.spec)
    assert sentence(app) in chart.alt and app.title[0].value in chart.alt
    app.toggle(key=f"panel-{panel}-as-table").set_value(True).run()
    assert len(app.table[0].value) >= 2 and app.table[0].value.notna().all(axis=None)


def test_next_and_back_turn_through_all_panels():
    app, seen = opened(), []
    for _ in PANELS:
        seen.append(app.title[0].value)
        if app.button(key="panel-next").disabled:
            break
        app.button(key="panel-next").click().run()
    assert len(set(seen)) == len(PANELS)
    assert address(app)["panel"] == PANELS[-1]
    app.button(key="panel-back").click().run()
    assert address(app)["panel"] == PANELS[-2]
    app.button_group(key="choose-panel").set_value("flow").run()
    assert app.title[0].value == seen[1]


def test_a_panel_nobody_knows_leads_to_the_first():
    assert opened("no-such").title[0].value == opened().title[0].value


def test_what_is_set_stands_in_the_address_and_goes_back_to_nothing():
    app = opened("who")
    app.slider(key="set-from_kmh").set_value(60.0).run()
    assert address(app) == {"panel": "who", "from_kmh": "60"}
    assert " 60 km/h" in sentence(app)
    app.button(key="panel-back").click().run()
    app.button(key="panel-back").click().run()
    assert " 60 km/h" in sentence(app), "the same stop is followed through the panels"
    app.slider(key="set-from_kmh").set_value(100.0).run()
    assert "from_kmh" not in address(app)


def test_two_speeds_stand_on_one_slider():
    app = opened(slower_kmh="30", faster_kmh="90")
    assert app.slider(key="set-two-speeds").value == (30.0, 90.0)
    assert "9.0 times" in sentence(app)
    app.slider(key="set-two-speeds").set_value((40.0, 80.0)).run()
    assert (address(app)["slower_kmh"], address(app)["faster_kmh"]) == ("40", "80")
    assert "4.0 times" in sentence(app)


def test_a_motors_power_between_two_steps_of_its_slider_is_the_nearer_one():
    """The slider and the line in the picture stood at 0.3, the words told 0.25."""
    between, there = (opened("motor", power_times=times) for times in ("0.3", "0.25"))
    assert between.slider(key="set-power_times").value == there.slider(key="set-power_times").value == 0.25
    assert words(between) == words(there)


def test_an_emergency_stop_is_one_tap_and_as_hard_as_the_road_allows():
    app = opened("who")
    app.button[[one.label for one in app.button].index("Emergency stop")].click().run()
    assert address(app)["slowing_mps2"] == "10"
    result = drive(CARS["town"])
    split = split_of(stop(100.0, 10.0, result.car, result.conditions, result.driver))
    slowing = split[["road_mps2", "motor_mps2", "friction_mps2"]].sum(axis=1).mean()
    assert f"The car slows at {slowing:.1f} m/s²" in words(app)
    assert "all that this road has grip for" in words(app)


def test_a_link_out_of_bounds_is_held_and_said():
    app = opened("flow", from_kmh="400", slowing_mps2="fast")
    assert app.slider(key="set-from_kmh").value == 130.0
    assert len(app.info) == 2
    assert " 130 km/h" in sentence(app)


def test_us_units_are_shown_and_links_stay_as_they_are():
    app = opened("flow", display=Display(us=True), from_kmh="80")
    assert app.slider(key="set-from_kmh").value == 50.0
    assert " 50 mph" in sentence(app)
    app.slider(key="set-from_kmh").set_value(60.0).run()
    assert float(address(app)["from_kmh"]) == pytest.approx(60 * 1.609344, abs=0.01)
    assert "°F" in sentence(opened("discs", display=Display(us=True)))


def test_a_drive_that_cannot_be_driven_gets_its_sentence():
    app = opened("motor", CARS["town"].with_setting("soc_start", 0.01))
    assert len(app.error) == 1 and app.error[0].value.endswith(".")
    assert app.title[0].value


@pytest.mark.parametrize("panel", PANELS)
def test_panels_hold_where_nothing_comes_back(panel):
    nothing = CARS["town"].with_setting("brake_pedal", "friction").with_setting("lift_off_mps2", 0.0)
    app = opened(panel, nothing)
    assert "nan" not in words(app) and "inf" not in words(app)


@pytest.mark.parametrize("panel", PANELS)
@pytest.mark.parametrize(
    ("key", "value"), [("surface", "ice"), ("soc_start", 1.0), ("wind_kmh", -100.0), ("ambient_c", -25.0)]
)
def test_panels_hold_on_odd_days(panel, key, value):
    scenario = CARS["mountain-valley"].with_setting(key, value)
    app = opened(panel, scenario)
    assert sentence(app) and not app.error
    result = drive(scenario)
    assert energy_of(stop(100.0, 1.5, result.car, result.conditions, result.driver)).motion > 0
