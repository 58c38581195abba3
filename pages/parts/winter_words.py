"""What takes regeneration away, in short; and the words that its four parts share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

import pandas as pd

from model.describe.figures import Quantity, Share, Span
from model.describe.scenario import Scenario
from model.kernel.timeline import braked_kwh
from model.limits.all_limits import AtAGlance
from model.limits.descent import Headroom
from model.limits.full_start import Normal
from model.limits.limit_settings import LimitSettings
from model.sampling.hybrid import has_engine
from model.words.quantities import Display
from pages.parts.charts.drive_strip import Note
from pages.parts.description import degrees, length_of

LEAST_KWH = 0.005
"""Less than this is told as next to nothing."""
LEAST_SHARE = 0.0005
"""A share [1] smaller than this is too small to print."""
LEAST_CHARGE = 0.05
"""Nobody starts with less than this [1]."""
BATTERIES = {"low": "battery-takes-little", "mid": "battery-in-the-middle", "high": "battery-takes-much"}
"""The messages for batteries of each level."""


@dataclass(frozen=True)
class LimitWords:
    """One part in words: its heading, the number, more on it, what it comes to, what to do, and what to mind.

    `facts` are what, how much, and beside what it stands; `caution` is what the number never stands without.
    """

    heading: str
    sentence: str
    more: str
    facts: tuple[tuple[str, str, str], ...]
    do: tuple[str, ...]
    mind: tuple[str, ...]
    caution: str = ""


class Lasts(StrEnum):
    """How long motor slowing is weaker than on a mild day."""

    NEVER = "never"
    FIRST = "first"
    ALWAYS = "always"


def lasts(normal: Normal | None) -> Lasts:
    """How long motor slowing is weaker."""
    if normal is None:
        return Lasts.ALWAYS
    return Lasts.NEVER if normal.minutes == 0 else Lasts.FIRST


def minutes(normal: Normal | None) -> int:
    """The first minutes in which it is weaker, in whole ones, at least one."""
    return 0 if normal is None else max(round(normal.minutes), 1)


def normal_km(normal: Normal | None, scenario: Scenario, display: Display) -> str:
    """How far the car has come by then; on the way back both ways count, which is said."""
    km = Quantity(0.0 if normal is None else normal.km, "km")
    if scenario.return_trip and km.value > length_of(scenario).value / 2:
        return display.say("come-on-way-back", km=km)
    return display.figure(km)


def ends(figures: Iterable[float]) -> tuple[float, float]:
    """The least and the most of some figures."""
    found = list(figures)
    return min(found), max(found)


def energy(kwh: float, display: Display) -> Quantity | str:
    """An energy; what is too small to print is said to be next to nothing."""
    return Quantity(kwh, "kWh") if abs(kwh) >= LEAST_KWH else display.say("next-to-nothing")


def energy_text(kwh: float, display: Display) -> str:
    """An energy that stands alone."""
    amount = energy(kwh, display)
    return amount if isinstance(amount, str) else display.figure(amount)


def energy_more(kwh: float, display: Display) -> str:
    """So much more, or less."""
    amount = energy(abs(kwh), display)
    return display.say("energy-more", energy=amount) if kwh > 0 else display.say("energy-less", energy=amount)


def distances(metres: Iterable[float], display: Display) -> Span:
    """A span of distances in whole metres or feet; short ones with a decimal."""
    low, high = ends(metres)
    return Span(low, high, "m", places=int(display.value(high, "m") < 9.95))


def share_or_trifle(share: float, display: Display) -> Share | str:
    """A share; what is too small to print is said to be small."""
    return Share(share) if share >= LEAST_SHARE else display.say("hardly-any-share")


def free_text(share: float, display: Display) -> str:
    """How much of a battery is to be left free."""
    if share < LEAST_SHARE:
        return display.say("nothing-to-leave-free")
    return display.say("leave-free", share=Share(share))


def full_feel_from(room: Headroom) -> Share | None:
    """The charge from which the motor slows in full all the way down; None where it needs no room, or from none."""
    feel = room.start_for_full_feel
    return None if feel is None or feel < LEAST_CHARGE or room.gained_share < LEAST_SHARE else Share(feel, places=0)


def part_name(part: str, display: Display) -> str:
    """What a part is called."""
    return display.say("limit-name", part=part)


def day_name(ambient_c: float, scenario: Scenario, display: Display) -> str:
    """A cold day that is offered, by its temperature [°C]; the year's winter day is named."""
    return display.say("cold-day", air=degrees(ambient_c), winter=ambient_c == scenario.year.winter_c)


def glance(found: AtAGlance, settings: LimitSettings, display: Display) -> dict[str, str]:
    """Each part in a few words."""
    hybrid = has_engine(found.costs.season.car)
    stops = distances((stop.distance_m for stop in found.stops.values()), display)
    return {
        "cold": slowing_in_short(found.normal, display),
        "grip": display.say("glance-grip", margin=found.grip["margin"], surface=found.grip["surface"]),
        "hills": display.say("glance-small-battery") if hybrid else _before_the_hill(found, settings, display),
        "stop": display.say("glance-stop", distances=stops, speed=Quantity(settings.stop_kmh, "km/h", places=0)),
    }


def _before_the_hill(found: AtAGlance, settings: LimitSettings, display: Display) -> str:
    """At which charge to start, or what to leave free, and for which hill."""
    drop = Quantity(settings.hill_m, "m", places=0)
    if start := full_feel_from(found.room):
        return display.say("glance-hill-start", charge=start, drop=drop)
    return display.say("glance-hill", free=free_text(found.room.gained_share, display), drop=drop)


def slowing_in_short(normal: Mapping[str, Normal | None], display: Display) -> str:
    """When motor slowing is as usual, by battery, in a few words: the middle, and what is worse, which goes with it."""
    middle, little = normal["mid"], normal["low"]
    if told_alike(middle, little):
        return display.say("glance-cold", lasts=lasts(middle), minutes=minutes(middle))
    return display.say(
        "glance-cold-differs", lasts=lasts(middle), minutes=minutes(middle), little=lasts(little),
        little_minutes=minutes(little),
    )  # fmt: skip


def told_alike(normal: Normal | None, other: Normal | None) -> bool:
    """Whether two batteries are told in the same words."""
    return (lasts(normal), minutes(normal)) == (lasts(other), minutes(other))


def slowing_expected(normal: Mapping[str, Normal | None], display: Display) -> str:
    """What to expect of motor slowing on a cold day, by battery, as a sentence; none for a drive that cannot be."""
    if not normal:
        return display.say("expect-no-winter-drive")
    middle, little = normal["mid"], normal["low"]
    if lasts(middle) != Lasts.NEVER:
        if told_alike(middle, little) or lasts(little) == Lasts.NEVER:
            return display.say("expect-less", lasts=lasts(middle), minutes=minutes(middle))
        return display.say(
            "expect-less-differs", lasts=lasts(middle), minutes=minutes(middle), little=lasts(little),
            little_minutes=minutes(little),
        )  # fmt: skip
    if lasts(little) != Lasts.NEVER:
        return display.say("expect-less-with-little", little=lasts(little), little_minutes=minutes(little))
    return display.say("expect-usual")


def strip_notes(steps: pd.DataFrame, normal: Normal | None, display: Display) -> list[Note]:
    """The stretch of the drive on which motor slowing is weaker than usual; none where it is as usual or not asked."""
    if sum(braked_kwh(steps)) <= 0 or (normal is not None and normal.km <= 0):
        return []
    end = float(steps["distance_km"].iloc[-1]) if normal is None else normal.km
    return [(0.0, end, display.say("strip-held-back"), display.say("strip-weaker"))]
