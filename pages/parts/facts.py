"""Rows under fine lines: what a figure is, how much it is, and beside what it stands."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.sampling.hybrid import fuel_saved, has_engine
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
    fuel = fuel_saved(scenario, result) if has_engine(result.car) else None
    if fuel is None or fuel.friction_only_engine_kwh <= wording.NEGLIGIBLE_KWH:
        return None
    litres = display.range_text(fuel.litres_per_100km, "l/100 km")
    return "In fuel", litres, "less, by how well the engine works in traffic"
