"""A drive in five answers, and the legs that they make: distance, what is town, country road and motorway, hill, stops.

Town comes first and last, as where one lives and where one works; what lies between is country road, then motorway.
The five answers can be read back from any legs (`quick_of`), so nothing is held beside the legs.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from model.describe import fields
from model.describe.fields import Entry, InputError, choice, count, fields_of, number
from model.describe.figures import Quantity, Share
from model.describe.scenario import LEG_FIELDS, Leg


@dataclass(frozen=True, kw_only=True)
class QuickDrive:
    """One way of the drive; what is neither town nor motorway is country road."""

    distance_km: float = number("km", 0.2, 1000, (0.5, 300), default=20.0)
    town_share: float = number("1", 0, 1, (0, 1), default=0.4)
    motorway_share: float = number("1", 0, 1, (0, 1), default=0.2)
    way: str = choice(("flat", "up", "down"), default="flat")
    height_m: float = number("m", 0, 4000, (0, 1500), default=0.0)
    stops: int = count(1, 500, (1, 60), default=8)

    @property
    def country_share(self) -> float:
        """What is left for country roads [1]."""
        return max(1 - self.town_share - self.motorway_share, 0.0)


QUICK_FIELDS = fields_of(QuickDrive, "quick")


@dataclass(frozen=True)
class Road:
    """A kind of road as it is usually driven: speed [km/h], slow-downs a kilometre, and how far down they go [km/h]."""

    speed_kmh: float
    slow_downs_per_km: float
    slow_to_kmh: float


ROADS = {"town": Road(48.0, 1.4, 25.0), "country": Road(80.0, 0.5, 50.0), "motorway": Road(120.0, 0.17, 85.0)}
"""As in the starting drives: assumed."""
TOWN_BELOW_KMH, COUNTRY_BELOW_KMH = 60.0, 100.0
"""By its speed a leg that was described otherwise counts as town, country road or motorway [km/h]: assumed."""
USUAL_GRADE_PCT, FIRST_HEIGHT_M = 5.0, 50.0
"""How steep a hill is taken to be where it fits, and how high the first that is asked for: assumed."""
LEAST_KM = LEG_FIELDS["distance_km"].minimum
"""A part shorter than this is left to the longest one [km]."""


def legs_of(quick: QuickDrive) -> tuple[Leg, ...]:
    """The legs of a drive in five answers.

    Distances add up to the whole, each kind of road has its share; all stops are in town, half of them in either part,
    or where there is no town at the end of the drive. The hill is on the longest leg.

    Raises
    ------
    InputError
        Where the shares are more than the whole, or the hill would be steeper than is allowed.
    """
    if quick.town_share + quick.motorway_share > 1 + 1e-9:
        raise InputError("quick-more-than-whole", town=Share(quick.town_share), motorway=Share(quick.motorway_share))
    parts = _parts(quick)
    longest = max(range(len(parts)), key=lambda place: parts[place][1])
    towns = [place for place, (road, _) in enumerate(parts) if road == "town"] or [len(parts) - 1]
    legs = []
    for place, (name, km) in enumerate(parts):
        road = ROADS[name]
        legs.append(
            Leg(
                distance_km=km,
                speed_kmh=road.speed_kmh,
                # the later part has one more of an odd number: the drive ends there
                stops=(quick.stops + towns.index(place)) // len(towns) if place in towns else 0,
                slow_downs=round(road.slow_downs_per_km * km),
                slow_to_kmh=road.slow_to_kmh,
            )
        )
    if quick.way != "flat" and quick.height_m:
        legs[longest] = _on_hill(legs[longest], quick)
    return tuple(legs)


def _parts(quick: QuickDrive) -> list[tuple[str, float]]:
    """Kinds of road with their lengths [km] in driving order; the longest takes what rounding leaves."""
    shares = {"town": quick.town_share, "country": quick.country_share, "motorway": quick.motorway_share}
    km = {road: round(share * quick.distance_km, 3) for road, share in shares.items()}
    found = [(road, length) for road, length in km.items() if length >= LEAST_KM]
    if len(found) > 1 and found[0][0] == "town" and found[0][1] >= 2 * LEAST_KM:
        half = round(found[0][1] / 2, 3)
        found = [("town", half), *found[1:], ("town", round(found[0][1] - half, 3))]
    longest = max(range(len(found)), key=lambda place: found[place][1])
    others = sum(length for place, (_, length) in enumerate(found) if place != longest)
    found[longest] = found[longest][0], round(quick.distance_km - others, 6)
    return found


def _on_hill(leg: Leg, quick: QuickDrive) -> Leg:
    # rounded up, so that the hill never comes out longer than its leg
    needed = math.ceil(quick.height_m / (10 * leg.distance_km) * 1e4) / 1e4
    most = LEG_FIELDS["grade_pct"].maximum
    if needed > most:
        raise InputError(
            "hill-too-steep", height=Quantity(quick.height_m, "m", 3, trimmed=True),
            length=Quantity(leg.distance_km, "km", 3, trimmed=True), steep=Share(needed / 100, places=0),
            most=Share(most / 100, places=0),
            there=Quantity(math.floor(10 * most * leg.distance_km), "m", 3, trimmed=True),
        )  # fmt: skip
    up, down = (quick.height_m, 0.0) if quick.way == "up" else (0.0, quick.height_m)
    return replace(leg, grade_pct=max(USUAL_GRADE_PCT, needed), climb_m=up, descent_m=down)


def quick_of(legs: tuple[Leg, ...]) -> QuickDrive:
    """The five answers that legs come to: of their hills what is left between start and end, at least one stop."""
    whole = sum(leg.distance_km for leg in legs)
    town = sum(leg.distance_km for leg in legs if leg.speed_kmh < TOWN_BELOW_KMH)
    motorway = sum(leg.distance_km for leg in legs if leg.speed_kmh >= COUNTRY_BELOW_KMH)
    height = sum(leg.climb_m - leg.descent_m for leg in legs)
    return QuickDrive(
        distance_km=round(whole, 6),
        town_share=round(town / whole, 4),
        motorway_share=round(motorway / whole, 4),
        way="up" if height > 0 else "down" if height < 0 else "flat",
        height_m=abs(height),
        stops=min(max(sum(leg.stops for leg in legs), 1), int(QUICK_FIELDS["stops"].maximum)),
    )


def with_answer(legs: tuple[Leg, ...], key: str, value: Entry) -> tuple[Leg, ...]:
    """The legs that five answers make with one of them changed; raises `InputError` as `legs_of` does."""
    changed = fields.changed(quick_of(legs), {key: value})
    if key == "way" and not changed.height_m:
        changed = replace(changed, height_m=min(FIRST_HEIGHT_M, math.floor(50 * changed.distance_km)))
    if key == "height_m" and changed.way == "flat":
        changed = replace(changed, way="up")
    # what was entered last is kept: country road gives way to it, then the other one
    if key == "town_share":
        changed = replace(changed, motorway_share=min(changed.motorway_share, round(1 - changed.town_share, 6)))
    if key == "motorway_share":
        changed = replace(changed, town_share=min(changed.town_share, round(1 - changed.motorway_share, 6)))
    return legs_of(changed)
