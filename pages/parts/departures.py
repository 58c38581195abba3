"""What departs from the ordinary, told wherever the answer is: in its line, on cards and on paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from model.describe.scenario import CONDITION_FIELDS, FROZEN, LEG_FIELDS, SETTINGS, Driver, Leg, Scenario
from model.describe.scenario_io import starting_drives, unusual
from model.words.entries import choice_word, shown_unit, shown_value, tidy
from model.words.quantities import Display, entry_text
from pages.parts.wording import HABIT_NUMBERS, counted, drive_id, temperature_text

LEG = "leg_"
FROST_C = 5.0
"""Above it snow and ice do not stay for long [°C]: assumed."""


def by_key(scenario: Scenario, display: Display) -> dict[str, str]:
    """What departs from the ordinary beside season, car and pedal, in a few words each, by its key.

    A starting drive's own load, height and habits are ordinary on that drive. `LEG` begins the key of what some legs
    have of their own.
    """
    usual = usual_of(scenario)
    now, then = scenario.conditions, usual.conditions
    drag, usual_drag = now.trailer_drag_area_m2, then.trailer_drag_area_m2
    box = "" if drag == usual_drag else f" with {entry_text(tidy(drag, 3))} m² of drag area"
    wind = "headwind" if now.wind_kmh > 0 else "tailwind"
    words = {
        "trailer_kg": f"towing {display.text(now.trailer_kg, 'kg')}{box}",
        "payload_kg": f"{display.text(now.payload_kg, 'kg')} load",
        "wind_kmh": f"{display.text(abs(now.wind_kmh), 'km/h')} {wind}",
        "altitude_m": f"{display.text(now.altitude_m, 'm')} above sea level",
        "tyres": "tyres of either kind" if now.tyres == "any" else f"{now.tyres} tyres",
        "tyres_warm": {"yes": "tyres warm at the start", "no": "tyres cold at the start"}.get(now.tyres_warm, ""),
        "cabin_set_c": f"cabin at {temperature_text(now.cabin_set_c, display)}",
        "soc_start": f"charged to {100 * now.soc_start:.0f} %",
        "parked_c": "" if now.parked_c is None else f"parked at {temperature_text(now.parked_c, display)}",
        "battery_temp_c": "" if now.battery_temp_c is None else
        f"battery at {temperature_text(now.battery_temp_c, display)}",
        "charging_stops": f"{counted(now.charging_stops, 'charging stop')} up to {100 * now.charge_stop_to:.0f} %",
        "grip_level": f"grip at {entry_text(now.grip_level)} of its band",
    }  # fmt: skip
    found = {key: text for key, text in words.items() if text and getattr(now, key) != getattr(then, key)}
    return found | _driver(scenario.driver, usual.driver, display) | _legs(scenario.legs, display)


def usual_of(scenario: Scenario) -> Scenario:
    """What is ordinary on a scenario's drive: what its starting drive brings, else what every drive begins with."""
    start = drive_id(scenario)
    return Scenario() if start is None else starting_drives()[start][2]


def as_usual(scenario: Scenario, key: str) -> Scenario:
    """The scenario with one of its departures made ordinary again, by its key."""
    if key.startswith(LEG):
        own = key.removeprefix(LEG)
        legs = tuple(replace(leg, **{own: LEG_FIELDS[own].default}) for leg in scenario.legs)
        return replace(scenario, legs=legs)
    usual = usual_of(scenario)
    return scenario.with_setting(key, getattr(usual.conditions if key in CONDITION_FIELDS else usual.driver, key))


def _driver(now: Driver, usual: Driver, display: Display) -> dict[str, str]:
    habits = {key: choice_word(key, getattr(now, key), display) for key in HABIT_NUMBERS}
    words = {key: f"{HABIT_NUMBERS[key][0]} {habit}" for key, habit in habits.items()}
    words |= {
        "lift_off_mps2": f"lift-off {strength(now.lift_off_mps2)}",
        "comes_to_rest": "comes to rest without the brake pedal" if now.comes_to_rest else "rolls on near walking pace",
        "slowing_on_request": "slows only on request" if now.slowing_on_request else "slows as the foot comes up",
    }
    return {key: text for key, text in words.items() if getattr(now, key) != getattr(usual, key)}


def _legs(legs: Sequence[Leg], display: Display) -> dict[str, str]:
    surfaces = _where([choice_word("surface", leg.surface, display) if leg.surface != "dry" else "" for leg in legs])
    strengths = _where(["" if leg.lift_off_mps2 is None else strength(leg.lift_off_mps2) for leg in legs])
    found = {f"{LEG}surface": surfaces, f"{LEG}lift_off_mps2": strengths and f"lift-off {strengths}"}
    return {key: text for key, text in found.items() if text}


def _where(words: Sequence[str]) -> str:
    """What some legs have, such as “snow on legs 1 and 3, ice on leg 2”; an empty word for a leg that has nothing."""
    told = []
    for word in filter(None, dict.fromkeys(words)):
        *most, last = (str(place) for place, one in enumerate(words, 1) if one == word)
        told.append(f"{word} on legs {', '.join(most)} and {last}" if most else f"{word} on leg {last}")
    return ", ".join(told)


def strength(mps2: float) -> str:
    """A lift-off strength as it was set."""
    return f"{entry_text(tidy(mps2, 3))} m/s²"


def text(scenario: Scenario, display: Display) -> str:
    """The same in one phrase; empty where nothing departs from the ordinary."""
    return ", ".join(by_key(scenario, display).values())


def kept_text(scenario: Scenario, display: Display) -> str:
    """Figures that were stated for another car and hold for this one too."""
    told = []
    for key, value in scenario.stated:
        field = SETTINGS[key]
        if key in ("brake_pedal", "name"):
            continue
        is_word = field.kind in ("choice", "text")
        shown = choice_word(key, value, display) if is_word else entry_text(shown_value(field, value, display))
        told.append(f"{field.label.lower()} {shown} {shown_unit(field, display)}".rstrip())
    return f"Kept as you stated: {', '.join(told)}." if told else ""


def unusual_text(scenario: Scenario, display: Display) -> str:
    """Inputs outside what is ordinary, to stand beside the headline; empty where all are ordinary."""
    phrases = []
    for leg, field, value in unusual(scenario):
        given, low, high = (entry_text(tidy(shown_value(field, one, display), 3)) for one in (value, *field.usual))
        unit = f" {shown_unit(field, display)}".rstrip()
        where = f"leg {leg}: " if leg else ""
        phrases.append(f"{where}{field.label.lower()} {given}{unit} (usual {low} to {high}{unit})")
    return f"Unusual inputs: {'; '.join(phrases)}." if phrases else ""


def frost_text(scenario: Scenario, display: Display) -> str:
    """A question where there is snow or ice on a warm day; empty elsewhere."""
    conditions = scenario.conditions
    frozen = [one for one in (conditions.surface, *(leg.surface for leg in scenario.legs)) if one in FROZEN]
    if not frozen or conditions.ambient_c <= FROST_C:
        return ""
    road = choice_word("surface", frozen[0], display).capitalize()
    warmth = temperature_text(conditions.ambient_c, display)
    return f"{road} at {warmth}? Set the temperature of that day: battery, tyres and cabin depend on it."
