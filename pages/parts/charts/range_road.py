"""How far a battery reaches, as a road: what it would be on friction brakes only, and what slowing down adds."""

from __future__ import annotations

from model.sampling.drives import Bands, YearOfDrives
from model.sampling.uncertainty import Band
from model.words.quantities import Display, span_of
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.description import degrees
from pages.parts.theme import Spec

TOP_PX, ROAD_PX, NARROW_PX, FOOT_PX = 28, 52, 34, 36
SEASONS_SHOWN = ("summer", "winter")
DASHES, DASH_PX = 24, 3
"""Of the line in the middle of the road."""


def range_road(answer: Bands, display: Display, dark: bool = False, large: bool = False) -> Spec:
    """The road that a full battery reaches, the last part of it by regeneration.

    Its end is open, and a line below says from where to where it may lie. The answer must have a range.
    """
    reached, gain = answer.range_km, answer.range_gain_km
    assert reached is not None and gain is not None
    boxes = road(reached, TOP_PX, "back", foot=TOP_PX + ROAD_PX, own_km=max(reached.mid - gain.mid, 0.0))
    gained, y = display.say("road-gained", gain=span_of(gain, "km")), TOP_PX + ROAD_PX + FOOT_PX / 2 + 4
    words = [
        Words(gained, reached.high, TOP_PX / 2 - 2, "right", meaning="back"),
        Words(display.say("road-own"), 0, y, "start"),
        Words(display.say("road-whole", range=span_of(reached, "km")), reached.high, y, "right", bold=True),
    ]
    return drawn(boxes, words, TOP_PX + ROAD_PX + FOOT_PX, reached.high, dark, large=large)


def season_roads(
    year: YearOfDrives | None, display: Display, dark: bool = False, large: bool = False
) -> Spec | None:
    """Summer's road above winter's, on one scale; None without a year, or where a battery's range says nothing."""
    if year is None:
        return None
    rows = {row.season: row for row in year.rows if row.season in SEASONS_SHOWN}
    boxes, words, furthest = [], [], 0.0
    for place, season in enumerate(SEASONS_SHOWN):
        row, top = rows[season], place * (TOP_PX + NARROW_PX + 10) + TOP_PX
        if row.range_km is None:
            return None
        boxes += road(row.range_km, top, "ink" if season == "winter" else "road", foot=top + NARROW_PX)
        air = degrees(row.ambient_c)
        text = display.say("road-of-season", season=season, air=air, range=span_of(row.range_km, "km"))
        words.append(Words(text, 0, top - TOP_PX / 2 - 2, "start", bold=season == "winter"))
        furthest = max(furthest, row.range_km.high)
    return drawn(boxes, words, len(SEASONS_SHOWN) * (TOP_PX + NARROW_PX + 10), furthest, dark, large=large)


def road(reached: Band, top: float, meaning: str, *, foot: float, own_km: float = 0.0) -> list[Box]:
    """A road up to the middle of a band, its end open up to the highest, with its first `own_km` in grey."""
    boxes = [
        Box(0, own_km, top, foot, "road"),
        Box(own_km, reached.mid, top, foot, meaning),
        Box(reached.mid, reached.high, top + 1, foot - 1, meaning, hollow=True),
        Box(reached.low, reached.high, foot + 4, foot + 7, "ink"),
    ]
    middle, step = (top + foot) / 2, reached.mid / DASHES
    for dash in range(DASHES):
        start = dash * step
        ends = start + 0.25 * step, start + 0.75 * step
        boxes.append(Box(*ends, middle - DASH_PX / 2, middle + DASH_PX / 2, "ground"))
    return boxes


def range_road_words(answer: Bands, display: Display) -> str:
    """What the road shows."""
    assert answer.range_km is not None and answer.range_gain_km is not None
    whole, gain = span_of(answer.range_km, "km"), span_of(answer.range_gain_km, "km")
    return display.say("card-number-range", range=whole, gain=gain)
