"""Rows under fine lines: what a figure is, how much it is, and beside what it stands."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.sampling.hybrid import fuel_saved, has_engine
from model.sampling.uncertainty import Band
from model.words.quantities import Display
from pages.parts import wording


def fact_rows(facts: Iterable[tuple[str, str, str]]) -> str:
    """Facts as HTML: what, how much, and beside what; to be drawn in a container known as `facts`."""
    rows = "".join(
        f"<dt>{escape(what)}</dt><dd><b>{escape(wording.together(value))}</b> "
        f"<span>{escape(wording.together(beside))}</span></dd>"
        for what, value, beside in facts
    )
    return f"<dl>{rows}</dl>"


def fuel_fact(scenario: Scenario, result: Result, display: Display) -> tuple[str, str, str] | None:
    """What a hybrid saves, where its engine runs: an engine reaches as far as its tank, and is not charged."""
    litres = fuel_spared(scenario, result)
    if litres is None:
        return None
    return display.say("in-fuel"), display.range_text(litres, "l/100 km"), display.say("fuel-beside")


def fuel_spared(scenario: Scenario, result: Result) -> Band | None:
    """What a hybrid saves [l/100 km], where its engine runs."""
    fuel = fuel_saved(scenario, result) if has_engine(result.car) else None
    if fuel is None or fuel.friction_only_engine_kwh <= wording.NEGLIGIBLE_KWH:
        return None
    return fuel.litres_per_100km
