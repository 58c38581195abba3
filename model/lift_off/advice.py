"""Which lift-off strength suits a drive, by a few ordered rules that are printed beside the answer."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model.describe.car import Car
from model.describe.scenario import SURFACES, Conditions, Driver
from model.describe.trace import Array
from model.describe.units import KMH_PER_MPS
from model.lift_off.curves import PEDALS, STRENGTHS_MPS2, Curves
from model.lift_off.slowing import holding, lamp_zone_of, word_of
from model.physics.records import car_record
from model.physics.tyre_grip import driven_axle_load_n, road_friction, strongest_within

Flags = NDArray[np.bool_]

GRIP_FOR_LIFT_OFF = 0.5
"""Share of the driven wheels' grip that lifting off may ask for [1]; the rest is for bends, brakes and surprises.
Common practice, no source."""
ENERGY_TIE = 0.01
"""Energies that differ by less than this share count as equal [1]."""
PRESS_TIE = 0.05
"""Presses that differ by less than this share of the most count as equal [1]."""


class Reason(StrEnum):
    """The fact that decided for a strength."""

    GRIP = "grip"
    GRIP_AND_NO_MORE_GAINED = "grip-and-no-more-gained"
    LESS_TAKES_ENERGY = "less-takes-energy"
    MORE_TAKES_ENERGY = "more-takes-energy"
    GENTLEST_RIDE = "gentlest-ride"
    NOTHING_IS_SPARED = "nothing-is-spared"
    FEWEST_PRESSES = "fewest-presses"


class Against(StrEnum):
    """What speaks against a strength."""

    GRIP = "grip"
    ENERGY = "energy"
    PRESSES = "presses"
    STRENGTH = "strength"


class Supposed(StrEnum):
    """What may change the advice."""

    ROAD = "road"
    GENTLEST_RIDE = "gentlest-ride"
    FEWEST_PRESSES = "fewest-presses"
    PEDAL = "pedal"
    HILL = "hill"


@dataclass(frozen=True)
class Because:
    """The deciding fact with its figures.

    `most_mps2` is the strength [m/s²] above which the rule of grip or of energy is broken, `more_share` what less
    strength takes more [1], `presses` and `rolling_presses` those with the strength advised and where the car rolls on.
    """

    reason: Reason
    road: str
    driven_axle: str
    brake_pedal: str
    strength_mps2: float
    most_mps2: float = 0.0
    more_share: float = 0.0
    presses: int = 0
    rolling_presses: int = 0


@dataclass(frozen=True)
class Alternative:
    """The nearest strength under another word: what it would change, and what speaks against it.

    `energy_change_share` is net energy as you would drive it against the advised strength [1].
    """

    lift_off_mps2: float
    word: str
    lamp_zone: str
    energy_change_share: float | None
    presses: int
    friction_kwh: float
    against: Against


@dataclass(frozen=True)
class Advice:
    """The strength advised for a leg (its place, from 0) or for the whole drive (None), and why.

    `rule` decided: "grip", "energy" or "preference"; `road` is the slipperiest surface there. Presses of the brake
    pedal and work of the friction brakes [kWh] are as you would drive it. `slippery` says what the same rules advise on
    snow and on ice: it goes with the advice wherever that is told.
    """

    leg: int | None
    lift_off_mps2: float
    word: str
    lamp_zone: str
    rule: str
    road: str
    because: Because
    presses: int
    friction_kwh: float
    alternatives: tuple[Alternative, ...]
    slippery: tuple[OnRoad, ...]


@dataclass(frozen=True)
class OnRoad:
    """The strength advised on another road, one of the surfaces, by the same rules.

    `holds_mps2` is the strongest lift-off [m/s²] that its least grip holds, straight on and flat, as fast as is driven.
    """

    road: str
    lift_off_mps2: float
    word: str
    holds_mps2: float


@dataclass(frozen=True)
class WhatIf:
    """Something that would change the advice for the whole drive, and to what.

    `kind` is the road's surface or the kind of pedal; a hill has the speed kept [km/h] and its slope [%].
    """

    what: Supposed
    lift_off_mps2: float
    word: str
    kind: str = ""
    speed_kmh: float = 0.0
    grade_pct: float = 0.0


@dataclass(frozen=True)
class DriveAdvice:
    """The advice for a drive, for each of its legs, and what would change it."""

    overall: Advice
    legs: tuple[Advice, ...]
    what_if: tuple[WhatIf, ...]


@dataclass(frozen=True, eq=False)
class Case:
    """What the rules look at, for a leg or the whole drive; arrays over the axis of strengths.

    `grip_allows` is where the first rule is kept, on `road`, the slipperiest there is.
    """

    road: str
    grip_allows: Flags
    net_kwh: Array
    friction_kwh: Array
    presses: Array
    brake_pedal: str
    prefers: str

    @property
    def grip_limit_mps2(self) -> float:
        """The greatest strength on the axis that the first rule leaves [m/s²]."""
        return float(STRENGTHS_MPS2[self.grip_allows].max())

    @property
    def energy_tie_kwh(self) -> tuple[float, float]:
        """The best energy that grip leaves, and the most that counts as equal to it [kWh]."""
        best = float(self.net_kwh[self.grip_allows].min())
        # one percent of a leg that its descent pays for would tell nothing apart
        return best, best + ENERGY_TIE * max(abs(best), float(np.ptp(self.net_kwh)))

    @property
    def energy_allows(self) -> Flags:
        """Where energy is within the tie of the best that grip leaves."""
        allows: Flags = self.net_kwh <= self.energy_tie_kwh[1]
        return allows

    def preferred(self, among: Flags) -> int:
        """Place of the preferred strength among some."""
        places = np.flatnonzero(among)
        if self.prefers == "gentlest_ride":
            return int(places[0])
        presses = self.presses[places]
        return int(places[presses <= presses.min() + PRESS_TIE * self.presses.max()][0])

    def best(self) -> tuple[int, str]:
        """Place of the advised strength, and the rule that decided: the one that forbids the next gentler strength."""
        anywhere = replace(self, grip_allows=np.ones_like(self.grip_allows))
        picked = self.preferred(self.grip_allows & self.energy_allows)
        if picked < self.preferred(anywhere.energy_allows):
            return picked, "grip"
        if picked < self.preferred(self.grip_allows) or (picked and not self.energy_allows[picked - 1]):
            return picked, "energy"
        return picked, "preference"

    def because(self, picked: int, rule: str, driven_axle: str) -> Because:
        """The deciding fact."""
        strength = float(STRENGTHS_MPS2[picked])

        def fact(reason: Reason, **figures: Any) -> Because:
            return Because(reason, self.road, driven_axle, self.brake_pedal, strength, **figures)

        if rule == "grip":
            most = self.grip_limit_mps2
            return fact(Reason.GRIP if most == strength else Reason.GRIP_AND_NO_MORE_GAINED, most_mps2=most)
        if rule == "energy" and picked and not self.energy_allows[picked - 1]:
            best = self.net_kwh[self.grip_allows].min()
            more = (self.net_kwh[:picked].max() - best) / max(abs(best), 1e-9)
            return fact(Reason.LESS_TAKES_ENERGY, more_share=float(more))
        if rule == "energy":
            return fact(Reason.MORE_TAKES_ENERGY, most_mps2=float(STRENGTHS_MPS2[self.energy_allows].max()))
        if self.prefers == "gentlest_ride":
            return fact(Reason.GENTLEST_RIDE)
        if picked == 0:
            return fact(Reason.NOTHING_IS_SPARED)
        presses, rolling = (round(float(self.presses[place])) for place in (picked, 0))
        return fact(Reason.FEWEST_PRESSES, presses=presses, rolling_presses=rolling)

    def against(self, place: int, picked: int) -> Against:
        """What speaks against another strength."""
        if not self.grip_allows[place]:
            return Against.GRIP
        if not self.energy_allows[place]:
            return Against.ENERGY
        if self.prefers == "fewest_presses" and self.presses[place] > self.presses[picked]:
            return Against.PRESSES
        return Against.STRENGTH

    def advice(self, leg: int | None, driven_axle: str, slippery: tuple[OnRoad, ...]) -> Advice:
        """The advised strength and the nearest one under every other word; `slippery` as in `Advice`."""
        picked, rule = self.best()
        words = [word_of(float(strength)) for strength in STRENGTHS_MPS2]
        others = []
        for word in dict.fromkeys(words):
            places = np.array([place for place, its in enumerate(words) if its == word])
            place = int(places[np.argmin(np.abs(places - picked))])
            if place == picked:
                continue
            more = (self.net_kwh[place] - self.net_kwh[picked]) / abs(self.net_kwh[picked] or np.nan)
            others.append(
                Alternative(
                    lift_off_mps2=float(STRENGTHS_MPS2[place]),
                    word=word,
                    lamp_zone=lamp_zone_of(float(STRENGTHS_MPS2[place])),
                    energy_change_share=float(more) if np.isfinite(more) else None,
                    presses=int(self.presses[place]),
                    friction_kwh=float(self.friction_kwh[place]),
                    against=self.against(place, picked),
                )
            )
        return Advice(
            leg=leg,
            lift_off_mps2=float(STRENGTHS_MPS2[picked]),
            word=words[picked],
            lamp_zone=lamp_zone_of(float(STRENGTHS_MPS2[picked])),
            rule=rule,
            road=self.road,
            because=self.because(picked, rule, driven_axle),
            presses=int(self.presses[picked]),
            friction_kwh=float(self.friction_kwh[picked]),
            alternatives=tuple(others),
            slippery=slippery,
        )


@lru_cache(maxsize=200)
def grip_allows(car: Car, around: Conditions, speed_kmh: float) -> Flags:
    """Where on the axis lifting off asks for no more of the driven wheels' grip than the first rule leaves it.

    An advice asks the same of a few roads and speeds a hundred times.
    """
    friction = road_friction(around, speed_kmh / KMH_PER_MPS)
    mass = car.mass_kg + around.payload_kg
    asked = (mass + around.trailer_kg) * STRENGTHS_MPS2
    allows: Flags = asked <= GRIP_FOR_LIFT_OFF * friction * driven_axle_load_n(car, mass, STRENGTHS_MPS2)
    allows.flags.writeable = False
    return allows


def case_of(curves: Curves, leg: int | None = None, *, season: str | None = None, pedal: str | None = None) -> Case:
    """What the rules look at; another season's surface or another kind of brake pedal may be supposed."""
    scenario = curves.scenario
    legs = scenario.legs if leg is None else scenario.legs[leg : leg + 1]
    season, pedal = season or scenario.conditions.surface, pedal or curves.car.brake_pedal
    surfaces = [max(season, part.surface, key=SURFACES.index) for part in legs]
    curve, rows = curves.as_driven[pedal], slice(None) if leg is None else slice(leg, leg + 1)
    return Case(
        road=max(surfaces, key=SURFACES.index),
        grip_allows=np.logical_and.reduce(
            [
                grip_allows(curves.car, replace(scenario.conditions, surface=surface), part.speed_kmh)
                for surface, part in zip(surfaces, legs, strict=True)
            ]
        ),
        net_kwh=curve.net_kwh[rows].sum(axis=0),
        friction_kwh=curve.friction_kwh[rows].sum(axis=0),
        presses=curve.presses[rows].sum(axis=0),
        brake_pedal=pedal,
        prefers=scenario.driver.prefers,
    )


def what_if(curves: Curves) -> tuple[WhatIf, ...]:
    """What would change the advice for the whole drive: season, passengers, kind of pedal, hills."""
    whole = case_of(curves)
    picked, _ = whole.best()
    other = {"fewest_presses": "gentlest_ride", "gentlest_ride": "fewest_presses"}[whole.prefers]
    pedal = next(kind for kind in PEDALS if kind != whole.brake_pedal)
    supposed = [
        ((Supposed.ROAD, surface), case_of(curves, season=surface))
        for surface in ("dry", "wet", "snow", "ice")
        if surface != curves.scenario.conditions.surface
    ]
    wish = Supposed.GENTLEST_RIDE if other == "gentlest_ride" else Supposed.FEWEST_PRESSES
    supposed += [((wish, ""), replace(whole, prefers=other)), ((Supposed.PEDAL, pedal), case_of(curves, pedal=pedal))]
    found = [_what_if(what, float(STRENGTHS_MPS2[case.best()[0]]), kind=kind) for (what, kind), case in supposed]
    hilly = [leg for leg in curves.scenario.legs if leg.descent_m or (leg.climb_m and curves.scenario.return_trip)]
    if hilly:
        steep = max(hilly, key=lambda leg: leg.grade_pct)
        kept = holding(
            steep.speed_kmh / KMH_PER_MPS, steep.grade_pct / 100, curves.car, curves.scenario.conditions,
            curves.scenario.driver,
        ).strength_mps2[0]  # fmt: skip
        if STRENGTHS_MPS2[picked] < kept <= whole.grip_limit_mps2:
            hill = {"speed_kmh": steep.speed_kmh, "grade_pct": steep.grade_pct}
            found.append(_what_if(Supposed.HILL, round(float(kept), 2), **hill))
    return tuple(change for change in found if change.lift_off_mps2 != STRENGTHS_MPS2[picked])


def _what_if(what: Supposed, strength: float, **about: Any) -> WhatIf:
    return WhatIf(what, strength, word_of(strength), **about)


def on_slippery_roads(curves: Curves, leg: int | None) -> tuple[OnRoad, ...]:
    """What is advised on snow and on ice, for a leg or the whole drive; on what is slipperier, if it is there."""
    scenario = curves.scenario
    season = scenario.conditions.surface
    cases = (case_of(curves, leg, season=max(road, season, key=SURFACES.index)) for road in ("snow", "ice"))
    found = {case.road: float(STRENGTHS_MPS2[case.best()[0]]) for case in cases}
    speed = max(part.speed_kmh for part in (scenario.legs if leg is None else scenario.legs[leg : leg + 1]))
    held = {road: holds_mps2(curves.car, replace(scenario.conditions, surface=road), speed) for road in found}
    return tuple(OnRoad(road, strength, word_of(strength), held[road]) for road, strength in found.items())


def holds_mps2(car: Car, around: Conditions, speed_kmh: float) -> float:
    """The strongest lift-off [m/s²] that the least grip of the road holds, straight on and flat."""
    speed = speed_kmh / KMH_PER_MPS
    least = road_friction(around, speed, around.grip_level or -1.0)
    return float(strongest_within(car_record(car, around, Driver()), least, speed, np.inf, 1.0))


def advise(curves: Curves) -> DriveAdvice:
    """The advice for a drive over the axis, for each of its legs, and what would change it."""
    axle = curves.car.driven_axle

    def advised(leg: int | None) -> Advice:
        return case_of(curves, leg).advice(leg, axle, on_slippery_roads(curves, leg))

    return DriveAdvice(
        overall=advised(None),
        legs=tuple(advised(leg) for leg in range(len(curves.scenario.legs))),
        what_if=what_if(curves),
    )
