"""Rows under fine lines: what a figure is, how much it is, and beside what it stands."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.sampling.drives import Bands
from model.sampling.hybrid import fuel_saved, has_engine
from model.sampling.uncertainty import Band
from model.words.quantities import Display
from pages.parts import wording
from pages.parts.typography import together


def fact_rows(facts: Iterable[tuple[str, str, str]]) -> str:
    """Facts as HTML: what, how much, and beside what; to be drawn in a container known as `facts`."""
    rows = "".join(
        f"<dt>{escape(what)}</dt><dd><b>{escape(together(value))}</b> "
        f"<span>{escape(together(beside))}</span></dd>"
        for what, value, beside in facts
    )
    return f"<dl>{rows}</dl>"


def drive_facts(scenario: Scenario, result: Result, answer: Bands, display: Display) -> list[tuple[str, str, str]]:
    """How far a battery reaches and what the drive takes, each with what of it is regeneration's.

    Where a hybrid's engine runs, what the drive takes and what fuel is spared.
    """
    if fuel := fuel_fact(scenario, result, display):
        taken = wording.taken_text(result.net_kwh, display)
        return [(display.say("on-this-drive"), display.range_text(answer.saved_kwh, "kWh"), taken), fuel]
    reached = wording.range_fact(answer, scenario.year.daily_charge_limit, display)
    return [reached, wording.drive_fact(result, answer, display)]


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
