"""Scenarios to and from files and links. One key a field, the same everywhere."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import asdict, fields, replace
from functools import cache
from pathlib import Path
from typing import Any

from model.describe.car import CAR_FIELDS
from model.describe.fields import Entry, Field, FieldError, InputError, filled, find
from model.describe.figures import Several
from model.describe.parameters import DEFAULT_CLASS, ROAD_LOAD_KEYS, car_of, class_labels
from model.describe.scenario import (
    CONDITION_FIELDS,
    DRIVER_FIELDS,
    LEG_FIELDS,
    MAX_LEGS,
    SETTINGS,
    YEAR_FIELDS,
    Leg,
    Scenario,
    check_legs,
)
from model.describe.tables import ASSETS

SCHEMA = 1
RETURN_TRIP = Field("return_trip", "yes_no", "", "drive-return_trip")
SECTIONS = {"conditions": CONDITION_FIELDS, "driver": DRIVER_FIELDS, "year": YEAR_FIELDS}


def with_settings(
    scenario: Scenario, settings: Mapping[str, object], known: Mapping[str, Field] = SETTINGS
) -> Scenario:
    """A scenario with settings put in, each checked against its field.

    Raises
    ------
    InputError
        Where a key is unknown (the nearest is suggested) or a value is not allowed.
    """
    for key, given in settings.items():
        scenario = scenario.with_setting(key, find(known, key).parse(given))
    return scenario


def with_car(scenario: Scenario, car: object) -> Scenario:
    """A scenario in the car of a class id, or of a car file's object (which may also hold driver and conditions)."""
    if isinstance(car, str):
        return _of_class(scenario, car, "car")
    if not isinstance(car, Mapping):
        raise InputError("car-no-object", given=str(car))
    figures = dict(car)
    scenario = _of_class(scenario, str(figures.pop("like", DEFAULT_CLASS)), "like")
    road_load = figures.pop("road_load", {})
    if not isinstance(road_load, Mapping):
        raise InputError("road-load-no-object", given=str(road_load), known=Several(tuple(ROAD_LOAD_KEYS)))
    scenario = with_settings(scenario, road_load, {key: CAR_FIELDS[key] for key in ROAD_LOAD_KEYS})
    return with_settings(scenario, figures)


def _of_class(scenario: Scenario, car_class: str, what: str) -> Scenario:
    if car_class not in class_labels():
        raise InputError("not-one-of", what=what, given=car_class, known=Several(tuple(class_labels())))
    return replace(scenario, car_class=car_class, stated=())


def leg_from(data: object, place: int) -> Leg:
    """One leg of a scenario file."""
    if not isinstance(data, Mapping):
        raise InputError("leg-no-object", leg=place, given=str(data), known=Several(tuple(LEG_FIELDS)))
    try:
        return filled(Leg, {key: find(LEG_FIELDS, key).parse(given) for key, given in data.items()})
    except FieldError as refused:
        raise refused.of_leg(place) from None
    except InputError as refused:
        raise InputError("leg-refused", leg=place, refused=refused) from None


def scenario_from_json(data: object) -> Scenario:
    """The scenario of a file's object; raises `InputError` with one sentence where something is not allowed."""
    if not isinstance(data, Mapping):
        raise InputError("scenario-no-object")
    known = {"schema": None, "name": None, "about": None, "car": None, "legs": None, "return_trip": None, **SECTIONS}
    for key in data:
        find(known, key)
    if data.get("schema", SCHEMA) != SCHEMA:
        raise InputError("schema-unknown", given=str(data["schema"]), known=str(SCHEMA))
    scenario = with_car(Scenario(), data.get("car", DEFAULT_CLASS))
    for part, table in SECTIONS.items():
        settings = data.get(part, {})
        if not isinstance(settings, Mapping):
            raise InputError("part-no-object", part=part, given=str(settings), such_as=next(iter(table)))
        scenario = with_settings(scenario, settings, table)
    legs = data.get("legs", [])
    if not isinstance(legs, list):
        raise InputError("legs-no-list", given=str(legs))
    scenario = replace(
        scenario,
        legs=tuple(leg_from(leg, place) for place, leg in enumerate(legs, 1)),
        return_trip=bool(RETURN_TRIP.parse(data.get("return_trip", False))),
    )
    check_legs(scenario.legs)
    car_of(scenario)
    return scenario


def scenario_to_json(scenario: Scenario) -> dict[str, object]:
    """The object that `scenario_from_json` reads back to the same scenario; only what differs from the defaults."""
    car: object = scenario.car_class
    if scenario.stated:
        car = {"like": scenario.car_class} | dict(scenario.stated)
    data: dict[str, object] = {"schema": SCHEMA, "car": car}
    for part, table in SECTIONS.items():
        held = getattr(scenario, part)
        changed = {key: getattr(held, key) for key, field in table.items() if getattr(held, key) != field.default}
        if changed:
            data[part] = changed
    return data | {"legs": [asdict(leg) for leg in scenario.legs], "return_trip": scenario.return_trip}


JSON_BYTES = 4_000_000
"""The most that is read of a JSON file [bytes]: some thousand times the largest that the app writes."""


def read_json(path: Path) -> object:
    """The object in a JSON file, or `InputError` with one sentence."""
    try:
        with path.open("rb") as file:
            # a device may never end
            text = file.read(JSON_BYTES + 1)
    except OSError as error:
        raise InputError("file-unreadable", name=path.name, why=str(error.strerror)) from None
    if len(text) > JSON_BYTES:
        raise InputError("json-too-large", name=path.name, most_mb=JSON_BYTES // 1_000_000)
    return parse_json(text, path.name)


def parse_json(text: str | bytes, name: str) -> object:
    """The object in JSON text, or `InputError` with one sentence that begins with `name`."""
    try:
        data = json.loads(text, parse_constant=_no_constant, parse_float=_finite)
        # half a character can be escaped in JSON, but neither be shown nor be written
        json.dumps(data, ensure_ascii=False).encode()
        return data
    except (ValueError, RecursionError) as error:
        raise InputError("json-invalid", name=name, why=str(error)) from None


def _no_constant(name: str) -> object:
    raise ValueError(f"{name} is not a number")


def _finite(text: str) -> float:
    number = float(text)
    if not math.isfinite(number):
        raise ValueError(f"{text[:20]} is too large a number")
    return number


@cache
def starting_drives() -> dict[str, tuple[str, str, Scenario]]:
    """The invented starting drives: id to name, one sentence about it, and the scenario."""
    drives = {}
    for name in ("town", "suburb-hill", "motorway", "mountain-valley"):
        data: Any = read_json(ASSETS / "starting_drives" / f"{name}.json")
        drives[name] = (data["name"], data["about"], scenario_from_json(data))
    return drives


# Links: every setting under its own key, legs as one value

LEG_SEPARATOR, FIGURE_SEPARATOR = "~", "_"
FEWEST_FIGURES = 9
"""What a leg of a link holds at least: the figures that legs had when links were first made."""


def to_link(scenario: Scenario) -> dict[str, str]:
    """The parameters of a link: the class, the legs, and every setting that differs from its default."""
    link = {"car": scenario.car_class}
    link |= {key: CAR_FIELDS[key].text(value) for key, value in scenario.stated}
    for part, table in SECTIONS.items():
        held = getattr(scenario, part)
        for key, field in table.items():
            if getattr(held, key) != field.default:
                link[key] = field.text(getattr(held, key))
    link["legs"] = LEG_SEPARATOR.join(
        FIGURE_SEPARATOR.join(field.text(getattr(leg, key)) for key, field in LEG_FIELDS.items())
        for leg in scenario.legs
    )
    if scenario.return_trip:
        link["return_trip"] = "yes"
    return link


def from_link(link: Mapping[str, str], base: Scenario) -> tuple[Scenario, list[InputError]]:
    """The scenario of a link's parameters, and what was refused of it: changed or left out.

    Settings that the link does not carry are at their defaults; its legs are those of `base` when it carries none.
    Parameters that are no setting (a page's own) are passed over.
    """
    notices: list[InputError] = []
    scenario = replace(Scenario(), legs=base.legs)
    if "car" in link:
        if link["car"] in class_labels():
            scenario = replace(scenario, car_class=link["car"])
        else:
            notices.append(
                InputError("car-class-left", given=link["car"], left=class_labels()[scenario.car_class].lower())
            )
    for key, field in SETTINGS.items():
        if key in link:
            value, notice = field.clamp(link[key])
            if notice is not None:
                notices.append(notice)
            if value is not None:
                scenario = scenario.with_setting(key, value)
    if "legs" in link:
        legs, more = _legs_from(link["legs"])
        notices += more
        if legs:
            scenario = replace(scenario, legs=legs)
    back, notice = RETURN_TRIP.clamp(link.get("return_trip", "no"))
    notices += [notice] if notice else []
    scenario = replace(scenario, return_trip=bool(back))
    try:
        car_of(scenario)
    except InputError as refused:
        notices.append(InputError(refused.reason, then="car-left", **refused.parts))
        scenario = replace(scenario, stated=())
    return scenario, notices


def _legs_from(text: str) -> tuple[tuple[Leg, ...], list[InputError]]:
    legs: list[Leg] = []
    notices: list[InputError] = []
    rows = text.split(LEG_SEPARATOR)
    if len(rows) > MAX_LEGS:
        notices.append(InputError("legs-of-link-too-many", given=len(rows), taken=MAX_LEGS))
    for place, row in enumerate(rows[:MAX_LEGS], 1):
        figures = row.split(FIGURE_SEPARATOR)
        # new figures are added at the end, so a link from before them still holds
        if not FEWEST_FIGURES <= len(figures) <= len(LEG_FIELDS):
            needed = dict(least=FEWEST_FIGURES, most=len(LEG_FIELDS))
            notices.append(InputError("leg-of-link-left-out", then="", leg=place, given=len(figures), **needed))
            continue
        values: dict[str, Entry] = {}
        for (key, field), given in zip(LEG_FIELDS.items(), figures, strict=False):
            value, notice = field.clamp(given)
            if notice is not None:
                notices.append(notice.of_leg(place))
            if value is not None:
                values[key] = value
        legs.append(filled(Leg, values))
    return tuple(legs), notices


def unusual(scenario: Scenario) -> list[tuple[int | None, Field, float]]:
    """Each input outside its ordinary range, to be named beside the headline: the leg's number, field and value."""
    found: list[tuple[int | None, Field, float]] = []
    for key, field in SETTINGS.items():
        if key in CAR_FIELDS:
            value: Any = dict(scenario.stated).get(key)
        else:
            value = next(getattr(getattr(scenario, part), key) for part, table in SECTIONS.items() if key in table)
        if not field.is_usual(value):
            found.append((None, field, value))
    for place, leg in enumerate(scenario.legs, 1):
        for item in fields(leg):
            field, value = LEG_FIELDS[item.name], getattr(leg, item.name)
            if not field.is_usual(value):
                found.append((place, field, value))
    return found
