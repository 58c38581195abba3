"""What a showroom sets for itself: a name line, its cars, its prices. Kept apart from what a customer enters.

It lives in a cookie of the browser and in a link to keep; the server forgets it with the session. The browser takes it
from the address into the cookie and off the address again (assets/own.js), so that no customer's link carries it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any
from urllib.parse import quote, unquote

import streamlit as st

from model.describe.brought import one_line
from model.describe.fields import Entry, InputError
from model.describe.parameters import car_of, class_labels
from model.describe.scenario import YEAR_FIELDS, Scenario
from model.describe.scenario_io import parse_json, with_car, with_settings
from pages.parts import state

SHOWROOM = "showroom"
"""The parameter of the address, and the cookie."""
PRICES = {
    key: YEAR_FIELDS[key]
    for key in ("currency", "price_per_kwh", "co2_g_per_kwh", "petrol_price_per_l", "diesel_price_per_l")
}
MOST_LETTERS, MOST_CARS, MOST_BYTES = 60, 8, 3500
"""Of the name line and a car's name, how many cars, and how much a cookie holds as it is written."""


@dataclass(frozen=True)
class HouseCar:
    """A car of the showroom: its name, its class, and the figures stated of it."""

    name: str
    car_class: str
    stated: tuple[tuple[str, Entry], ...]


@dataclass(frozen=True)
class Showroom:
    """What is set; `prices` are fields of the year, none where they are as usual."""

    line: str = ""
    cars: tuple[HouseCar, ...] = ()
    prices: tuple[tuple[str, Entry], ...] = ()

    def text(self) -> str:
        """As it stands in the cookie and in the link; nothing where nothing is set."""
        cars = [{"as": car.name, "like": car.car_class, **dict(car.stated)} for car in self.cars]
        held = {"line": self.line, "cars": cars, "prices": dict(self.prices)}
        kept = {key: value for key, value in held.items() if value}
        return json.dumps(kept, ensure_ascii=False, separators=(",", ":")) if kept else ""

    def fits(self) -> bool:
        """Whether a browser keeps so much."""
        return len(self.cars) <= MOST_CARS and len(quote(self.text())) <= MOST_BYTES


def parsed(text: str) -> Showroom:
    """What a text sets; raises `InputError` where it cannot be used."""
    if not text:
        return Showroom()
    data = parse_json(text, SHOWROOM)
    if not isinstance(data, Mapping) or not isinstance(data.get("cars", []), list):
        raise InputError("scenario-no-object")
    prices = data.get("prices", {})
    with_settings(Scenario(), prices, PRICES)
    year = tuple((key, PRICES[key].parse(value)) for key, value in prices.items())
    line, cars = one_line(str(data.get("line", "")))[:MOST_LETTERS], tuple(map(_car, data.get("cars", [])))[:MOST_CARS]
    return Showroom(line, cars, year)


def _car(data: Any) -> HouseCar:
    if not isinstance(data, Mapping):
        raise InputError("car-no-object", given=str(data))
    figures = dict(data)
    name = one_line(str(figures.pop("as", "")))[:MOST_LETTERS]
    scenario = with_car(Scenario(), figures)
    car_of(scenario)
    return HouseCar(name or class_labels()[scenario.car_class], scenario.car_class, scenario.stated)


def current() -> Showroom:
    """What is set in this session: from its cookie at first, or from a link where no script of ours took it along."""
    if SHOWROOM not in st.session_state:
        text = st.query_params.get(SHOWROOM) or unquote(dict(st.context.cookies).get(SHOWROOM, ""))
        try:
            _set(parsed(text))
        except InputError:
            _set(Showroom())
    return st.session_state[SHOWROOM]


def _set(now: Showroom) -> None:
    st.session_state.update({SHOWROOM: now, "own_prices": dict(now.prices)})


def keep(changed: Showroom) -> None:
    """Set it, here and in the browser; what is too much for a browser to keep is left as it was, and said."""
    st.session_state["showroom-too-much"] = not changed.fits()
    if changed.fits():
        _set(changed)
        st.query_params[SHOWROOM] = changed.text()


def add_car(name: str) -> None:
    """Take the car as it is described now among the showroom's."""
    now, here = state.scenario(), current()
    car = HouseCar(one_line(name)[:MOST_LETTERS] or class_labels()[now.car_class], now.car_class, now.stated)
    keep(replace(here, cars=(*(other for other in here.cars if other.name != car.name), car)))


def take_prices() -> None:
    """Take the prices as they are set now."""
    year = state.scenario().year
    keep(replace(current(), prices=tuple((key, getattr(year, key)) for key in PRICES)))
