"""How far the battery goes, and the charging stops on the way: what has to be said beside an answer."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.out.comparison import Side
from model.sampling.drives import Answer, YearOfDrives
from pages.parts.display import Display, number_text, tidy
from pages.parts.wording import counted, unable_text

WHOLE_SHARE = 0.999
"""A day that gets this far of the drive [1] gets there."""


def reach_text(result: Result, display: Display) -> str:
    """Up to where the answer is, where the battery does not last; empty where it does."""
    trace = result.trace
    if not trace.ends:
        return ""
    reached, described = distances(result.distance_km, result.described_km, display)
    unit = display.unit("km")
    stops = len(trace.charging)
    if trace.ends == "weak":
        start = f"After {reached} of {described} {unit} the battery cannot give the power that is asked"
    elif stops:
        start = f"With {counted(stops, 'charging stop')} the battery is empty after {reached} of {described} {unit}"
    else:
        start = f"The battery is empty after {reached} of {described} {unit}"
    return f"{start}; this answer is for those {reached} {unit}."


def distances(reached_km: float, described_km: float, display: Display) -> tuple[str, str]:
    """Two distances in the unit shown, the first never told as the whole of the second."""
    digits = 0 if described_km >= 20 else 1
    low, high = (display.value(km, "km") for km in (reached_km, described_km))
    scale = 10**digits
    return f"{np.floor(low * scale) / scale:.{digits}f}", f"{tidy(high, 3 if high < 1000 else 4):g}"


def stops_text(result: Result, display: Display) -> str:
    """Where the car charges on the way, how long, and how much; empty where it does not."""
    trace = result.trace
    places = np.cumsum(trace.step_m)[trace.charging] / 1000
    if not len(places):
        return ""
    *most, last = (f"{display.value(place, 'km'):.0f}" for place in places)
    where = f"{', '.join(most)} and {last}" if most else last
    minutes = f"{result.charging_s / 60:.0f} minutes"
    return (
        f"{counted(len(places), 'charging stop')}, after {where} {display.unit('km')}: {minutes} in all, which are in "
        f"the drive’s time, and {number_text(result.charged_kwh)} kWh into the battery, counted apart from what "
        "slowing down gives back."
    )


def compared_text(sides: Sequence[Side], until_km: float, display: Display) -> str:
    """How much of the drive is compared, where not every battery lasts as far."""
    until, whole = distances(until_km, max(side.described_km for side in sides), display)
    unit = display.unit("km")
    return (
        f"Not every battery lasts as far: all are compared over the first {until} of {whole} {unit}, where the first "
        "of them is empty."
    )


def band_text(result: Result, answer: Answer) -> str:
    """How many of the band's cars would be empty sooner than the one shown, or could not drive this at all."""
    if not answer.unable or not (result.trace.ends or len(result.trace.charging)):
        return unable_text(answer)
    they = "it is counted as if it" if answer.unable == 1 else "they are counted as if they"
    many = f"In the band, {answer.unable} of {answer.runs} drawn cars"
    if result.trace.ends:
        return f"{many} do not get even that far; {they} did."
    return f"{many} would have to charge sooner, or could not do this drive; {they} could."


def year_text(year: YearOfDrives | None, scenario: Scenario, result: Result, display: Display) -> str:
    """Days of the year that do not get there, or have other charging stops than the day shown; empty without any."""
    if year is None:
        return ""
    whole = result.described_km
    short = [row for row in year.rows if row.distance_km < WHOLE_SHARE * whole]
    if short:
        told = [f"in {row.season} {distances(row.distance_km, whole, display)[0]}" for row in short]
        of_all = f"of {distances(whole, whole, display)[1]} {display.unit('km')}"
        return f"Over the year each day counts as far as its battery goes: {', '.join(told)} {of_all}."
    if scenario.conditions.charging_stops and {row.charging_stops for row in year.rows} != {len(result.trace.charging)}:
        told = [f"{row.charging_stops} in {row.season}" for row in year.rows]
        return f"Over the year each day has the charging stops that it needs: {', '.join(told)}."
    return ""
