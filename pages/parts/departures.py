"""What departs from the ordinary, told wherever the answer is: in its line, on cards and on paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace
from typing import cast

from model.describe.figures import Quantity, Several, Share, Span
from model.describe.scenario import CONDITION_FIELDS, FROZEN, LEG_FIELDS, SETTINGS, Conditions, Driver, Leg, Scenario
from model.describe.scenario_io import starting_drives, unusual
from model.words.entries import HABITS, choice_word, entered, habit_text, name_of
from model.words.quantities import Display
from pages.parts.description import degrees, drive_id

LEG = "leg_"
FROST_C = 5.0
"""Above it snow and ice do not stay for long [°C]: assumed."""


def by_key(scenario: Scenario, display: Display) -> dict[str, str]:
    """What departs from the ordinary beside season, car and pedal, in a few words each, by its key.

    A starting drive's own load, height and habits are ordinary on that drive. `LEG` begins the key of what some legs
    have of their own.
    """
    usual = usual_of(scenario)
    changed = [
        key
        for now, then in ((scenario.conditions, usual.conditions), (scenario.driver, usual.driver))
        for key in (field.name for field in fields(now))
        if getattr(now, key) != getattr(then, key)
    ]
    words = _conditions(scenario.conditions, usual.conditions, display) | _driver(scenario.driver, display)
    return {key: words[key] for key in words if key in changed} | _legs(scenario.legs, display)


def usual_of(scenario: Scenario) -> Scenario:
    """What is ordinary on a scenario's drive: what its starting drive brings, else what every drive begins with."""
    start = drive_id(scenario)
    return Scenario() if start is None else starting_drives()[start][2]


def as_usual(scenario: Scenario, key: str) -> Scenario:
    """The scenario with one of its departures made ordinary again, by its key."""
    if key.startswith(LEG):
        own = key.removeprefix(LEG)
        for place in range(len(scenario.legs)):
            scenario = scenario.with_leg(place, own, LEG_FIELDS[own].default)
        return scenario
    usual = usual_of(scenario)
    return scenario.with_setting(key, getattr(usual.conditions if key in CONDITION_FIELDS else usual.driver, key))


def _conditions(now: Conditions, usual: Conditions, display: Display) -> dict[str, str]:
    say = display.say
    words = {
        "trailer_kg": say(
            "apart-trailer",
            mass=Quantity(now.trailer_kg, "kg"),
            drag=Quantity(now.trailer_drag_area_m2, "m²", 3, trimmed=True),
            own_drag=now.trailer_drag_area_m2 != usual.trailer_drag_area_m2,
        ),
        "payload_kg": say("apart-load", mass=Quantity(now.payload_kg, "kg")),
        "wind_kmh": say("apart-wind", wind=Quantity(abs(now.wind_kmh), "km/h"), ahead=now.wind_kmh > 0),
        "altitude_m": say("apart-altitude", height=Quantity(now.altitude_m, "m")),
        "tyres": say("apart-tyres", tyres=now.tyres),
        "tyres_warm": say("apart-tyres-warm", tyres=now.tyres_warm),
        "cabin_set_c": say("apart-cabin", cabin=degrees(now.cabin_set_c)),
        "soc_start": say("apart-charge", charge=Share(now.soc_start, 0)),
    }
    if now.parked_c is not None:
        words["parked_c"] = say("apart-parked", air=degrees(now.parked_c))
    if now.battery_temp_c is not None:
        words["battery_temp_c"] = say("apart-battery", battery=degrees(now.battery_temp_c))
    charged = Share(now.charge_stop_to, 0)
    return words | {
        "charging_stops": say("apart-charging-stops", stops=now.charging_stops, charge=charged),
        "grip_level": say("apart-grip", grip=Quantity(now.grip_level, "", 6, trimmed=True)),
    }


def _driver(now: Driver, display: Display) -> dict[str, str]:
    return {key: habit_text(key, getattr(now, key), display) for key in HABITS} | {
        "lift_off_mps2": display.say("apart-lift-off", strength=strength(now.lift_off_mps2)),
        "comes_to_rest": display.say("apart-to-rest", to_rest=now.comes_to_rest),
        "slowing_on_request": display.say("apart-slowing", on_request=now.slowing_on_request),
    }


def _legs(legs: Sequence[Leg], display: Display) -> dict[str, str]:
    surfaces = ["" if leg.surface == "dry" else choice_word("surface", leg.surface, display) for leg in legs]
    strengths = ["" if leg.lift_off_mps2 is None else display.figure(strength(leg.lift_off_mps2)) for leg in legs]
    found = {}
    if any(surfaces):
        found[f"{LEG}surface"] = display.figure(_where(surfaces, display))
    if any(strengths):
        found[f"{LEG}lift_off_mps2"] = display.say("apart-lift-off-of-legs", strengths=_where(strengths, display))
    return found


def _where(words: Sequence[str], display: Display) -> Several:
    """What some legs have, such as “snow on legs 1 and 3, ice on leg 2”; an empty word for a leg that has nothing."""
    strengths = []
    for word in filter(None, dict.fromkeys(words)):
        places = [str(place) for place, of_leg in enumerate(words, 1) if of_leg == word]
        strengths.append(display.say("apart-on-legs", what=word, legs=Several(tuple(places)), count=len(places)))
    return Several(tuple(strengths), "")


def strength(mps2: float) -> Quantity:
    """A lift-off strength as it was set."""
    return Quantity(mps2, "m/s²", 3, trimmed=True)


def text(scenario: Scenario, display: Display) -> str:
    """The same in one phrase; empty where nothing departs from the ordinary."""
    return display.figure(Several(tuple(by_key(scenario, display).values()), ""))


def stated_figures(scenario: Scenario, display: Display) -> Several:
    """Figures that were stated of the scenario's car, and what its display showed; the pedal is told elsewhere."""
    figures, shown = [], scenario.conditions.shown_wh_per_km
    for key, value in (*scenario.stated, *(() if shown is None else (("shown_wh_per_km", shown),))):
        field = SETTINGS[key]
        if key in ("brake_pedal", "name"):
            continue
        is_word = field.kind in ("choice", "text")
        figure = choice_word(key, str(value), display) if is_word else entered(field, cast(float, value), display)
        text_of = figure if isinstance(figure, str) else display.figure(figure)
        figures.append(display.say("left-out-figure", field=name_of(field, display), value=text_of))
    return Several(tuple(figures), "")


def unusual_text(scenario: Scenario, display: Display) -> str:
    """Inputs outside what is ordinary, to stand beside the headline; empty where all are ordinary."""
    entries = []
    for leg, field, value in unusual(scenario):
        given, low, high = (replace(entered(field, end, display), digits=3) for end in (value, *field.usual))
        usual = Span(low.value, high.value, low.unit, 3, trimmed=True)
        entries.append(
            display.say(
                "unusual-input",
                leg=leg or 0,
                field=name_of(field, display),
                given=display.figure(given),
                usual=display.figure(usual),
            )
        )
    return display.say("unusual-inputs", inputs=Several(tuple(entries), ";")) if entries else ""


def frost_text(scenario: Scenario, display: Display) -> str:
    """A question where there is snow or ice on a warm day; empty elsewhere."""
    conditions = scenario.conditions
    surfaces = (conditions.surface, *(leg.surface for leg in scenario.legs))
    frozen = [surface for surface in surfaces if surface in FROZEN]
    if not frozen or conditions.ambient_c <= FROST_C:
        return ""
    return display.say("frost-question", surface=frozen[0], warmth=degrees(conditions.ambient_c))
