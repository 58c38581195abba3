"""What takes regeneration away, in short; and the words that its four parts share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import pandas as pd

from model.kernel.timeline import braked_kwh
from model.limits.all_limits import AtAGlance
from model.limits.descent import Normal
from model.limits.limit_settings import LimitSettings
from model.sampling.hybrid import has_engine
from model.words.quantities import Display, number_text, percent_text
from pages.parts.charts.drive_strip import Note

NAMES = {"cold": "Cold battery", "grip": "Slippery road", "hills": "Full battery, hills", "stop": "Emergency stop"}
ON = {
    "dry": "on a dry road",
    "wet": "on a wet road",
    "standing-water": "on standing water",
    "snow": "on packed snow",
    "ice": "on ice",
    "glazed-ice": "on glazed ice",
}
LEAST_KWH = 0.005
"""Less than this is told as next to nothing."""


@dataclass(frozen=True)
class Said:
    """One part in words: its heading, the number, more on it, what it comes to, what to do, and what to mind.

    `facts` are what, how much, and beside what it stands.
    """

    heading: str
    sentence: str
    more: str
    facts: tuple[tuple[str, str, str], ...]
    do: tuple[str, ...]
    mind: tuple[str, ...]


def listed(words: Sequence[str]) -> str:
    """Words in a row: “a, b and c”."""
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def ends(figures: Iterable[float]) -> tuple[float, float]:
    """The least and the most of some figures."""
    found = list(figures)
    return min(found), max(found)


def band_text(figures: Iterable[float], unit: str) -> str:
    """The span of figures with their unit, such as “2.6 to 26 kW”."""
    low, high = map(number_text, ends(figures))
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def kwh(energy: float) -> str:
    """An energy; what is too small to print is said to be next to nothing."""
    return f"{number_text(energy)} kWh" if abs(energy) >= LEAST_KWH else "next to nothing"


def whole(value: float, unit: str, display: Display) -> str:
    """A figure in whole units, such as “50 km/h”."""
    return f"{display.value(value, unit):,.0f} {display.unit(unit)}"


def distance_text(metres: Iterable[float], display: Display) -> str:
    """A span of distances in whole metres or feet; short ones with a decimal."""
    shown = [float(display.value(end, "m")) for end in ends(metres)]
    low, high = (f"{end:,.{int(shown[1] < 9.95)}f}" for end in shown)
    unit = display.unit("m")
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def minutes_text(minutes: float) -> str:
    """Minutes in whole ones, never 0."""
    rounded = max(round(minutes), 1)
    return "1 minute" if rounded == 1 else f"{rounded} minutes"


def normal_text(normal: Normal | None, display: Display) -> str:
    """When motor slowing is as usual, to read on after “motor slowing”."""
    if normal is None:
        return "stays weaker on this drive"
    if normal.minutes == 0:
        return "is as usual from the start"
    return f"is as usual after {minutes_text(normal.minutes)}, {display.text(normal.km, 'km')}"


def share_text(share: float) -> str:
    """A share; what is too small to print is said to be small."""
    return percent_text(share) if share >= 0.0005 else "less than 0.1 %"


def free_text(share: float) -> str:
    """How much of a battery is to be left free."""
    return f"leave {percent_text(share)} free" if share >= 0.0005 else "nothing to leave free"


def glance(found: AtAGlance, settings: LimitSettings, display: Display) -> dict[str, str]:
    """Each part in a few words."""
    hybrid = has_engine(found.costs.season.car)
    distances = [stop.distance_m for stop in found.stops.values()]
    return {
        "cold": slowing_in_short(found.normal),
        "grip": f"margin {found.grip['margin']} {ON[found.grip['surface']].replace('packed ', '')}",
        "hills": "a small battery fills soon" if hybrid else free_text(found.room.gained_share),
        "stop": f"{distance_text(distances, display)} from {whole(settings.stop_kmh, 'km/h', display)}",
    }


def slowing_in_short(normal: Mapping[str, Normal | None]) -> str:
    """When motor slowing is as usual, by battery, in a few words: the middle, and what is worse, which goes with it."""
    middle, little = (_weaker_text(normal[battery]) for battery in ("mid", "low"))
    return middle if little == middle else f"{middle}; {little} if the battery takes little"


def _weaker_text(normal: Normal | None) -> str:
    if normal is None:
        return "weaker all the way"
    return "as usual from the start" if normal.minutes == 0 else f"weaker for {minutes_text(normal.minutes)}"


def slowing_expected(normal: Mapping[str, Normal | None]) -> str:
    """What to expect of motor slowing on a cold day, by battery, as a sentence."""

    def how_long(one: Normal | None) -> str:
        if one is None:
            return "all the way"
        return f"for the first {minutes_text(one.minutes).removeprefix('1 ')}"

    if not normal:
        return "This drive cannot be driven in winter as it is described."
    middle, little = normal["mid"], normal["low"]
    if middle is None or middle.minutes > 0:
        sentence = f"Expect less slowing {how_long(middle)}"
        if little != middle and how_long(little) != how_long(middle):
            sentence += f", {how_long(little)} if the battery takes little in the cold"
        return f"{sentence}."
    if little is None or little.minutes > 0:
        return (
            "With most batteries the motor slows the car as usual; with one that takes little in the cold, expect less "
            f"slowing {how_long(little)}."
        )
    return "The battery takes what slow-downs give, and the motor slows the car as usual."


def strip_notes(steps: pd.DataFrame, normal: Normal | None) -> list[Note]:
    """The stretch of the drive on which motor slowing is weaker than usual; none where it is as usual or not asked."""
    if sum(braked_kwh(steps)) <= 0 or (normal is not None and normal.km <= 0):
        return []
    end = float(steps["distance_km"].iloc[-1]) if normal is None else normal.km
    return [(0.0, end, "the battery holds motor slowing back", "weaker")]
