"""How far the battery goes, and the charging stops on the way: what has to be said beside an answer."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.describe.figures import Part, Quantity, Several, Share
from model.describe.scenario import Scenario
from model.kernel.follow import LATE_SHARE
from model.kernel.savings import Result
from model.out.comparison import Side
from model.sampling.drives import Bands, YearOfDrives
from model.words.quantities import Display

WHOLE_SHARE = 0.999
"""A day that gets this far of the drive [1] gets there."""


def reach_text(result: Result, display: Display) -> str:
    """Up to where the answer is, where the battery does not last; empty where it does."""
    trace = result.trace
    if not trace.ends:
        return ""
    reached = Part(result.distance_km, result.described_km, "km")
    if trace.ends == "weak":
        return display.say("reach-too-weak", reached=reached)
    if not len(trace.charging):
        return display.say("reach-empty", reached=reached)
    return display.say("reach-empty-after-charging", reached=reached, stops=len(trace.charging))


def stops_text(result: Result, display: Display) -> str:
    """Where the car charges on the way, how long, and how much; empty where it does not."""
    trace = result.trace
    places_km = np.cumsum(trace.step_m)[trace.charging] / 1000
    if not len(places_km):
        return ""
    return display.say(
        "charging-stops",
        places=Several(tuple(Quantity(float(place), "km", places=0) for place in places_km)),
        stops=len(places_km),
        minutes=Quantity(result.charging_s / 60, "minutes", places=0),
        charged=Quantity(result.charged_kwh, "kWh"),
    )


def compared_text(sides: Sequence[Side], until_km: float, display: Display) -> str:
    """How much of the drive is compared, where not every battery lasts as far."""
    return display.say("reach-compared", until=Part(until_km, max(side.described_km for side in sides), "km"))


def band_text(result: Result, answer: Bands, display: Display) -> str:
    """How many of the band's cars would be empty sooner than the one shown, clearly slower, or not get through."""
    if not answer.late:
        return ""
    cars = {"unable": answer.late, "cars": answer.runs}
    if result.trace.ends:
        return display.say("band-empty-sooner", **cars)
    if len(result.trace.charging):
        return display.say("band-charges-sooner", **cars)
    if np.isfinite(answer.slowest_share):
        longer, slowest = Share(LATE_SHARE, places=0), Share(answer.slowest_share)
        return display.say("band-slower", longer=longer, slowest=slowest, **cars)
    return display.say("band-unable", **cars)


def year_text(year: YearOfDrives | None, scenario: Scenario, result: Result, display: Display) -> str:
    """Days of the year that do not get there, or have other charging stops than the day shown; empty without any."""
    if year is None:
        return ""
    whole = result.described_km
    short = [row for row in year.rows if row.distance_km < WHOLE_SHARE * whole]
    if short:
        reached = [(row.season, Part(row.distance_km, whole, "km")) for row in short]
        seasons = [display.say("year-season-reach", season=season, reached=part) for season, part in reached]
        return display.say("year-reach", seasons=Several(tuple(seasons)))
    if scenario.conditions.charging_stops and {row.charging_stops for row in year.rows} != {len(result.trace.charging)}:
        seasons = [display.say("year-season-stops", season=row.season, stops=row.charging_stops) for row in year.rows]
        return display.say("year-stops", seasons=Several(tuple(seasons)))
    return ""
