"""The advice on lift-off in words: for pages, for paper, and in an answer."""

from __future__ import annotations

import math
from dataclasses import asdict, replace

from model.describe.figures import Quantity, Share
from model.lift_off.advice import Advice, Against, Alternative, Because, DriveAdvice, OnRoad, Reason, Supposed, WhatIf
from model.words.quantities import Display

RULES = ("rule-grip", "rule-energy", "rule-preference", "rule-gentler")
"""The rules in their order."""


def strength(mps2: float) -> Quantity:
    """A lift-off strength [m/s²], to be told as it is set."""
    return Quantity(mps2, "m/s²", 3, trimmed=True)


def bare_strength(mps2: float) -> Quantity:
    """The same where an axis or a heading has the unit."""
    return Quantity(mps2, "m/s²", 3, trimmed=True, bare=True)


def word_id(word: str) -> str:
    """A word for a strength as messages choose by it."""
    return {"rolling on": "rolling-on"}.get(word, word)


def because(fact: Because, display: Display, *, of: str = "drive") -> str:
    """The fact that decided, `of` the whole drive or of a leg alone."""
    on = {"road": fact.road, "axle": fact.driven_axle}
    most, advised = strength(fact.most_mps2), strength(fact.strength_mps2)
    match fact.reason:
        case Reason.GRIP:
            return display.say("because-grip", most=most, **on)
        case Reason.GRIP_AND_NO_MORE_GAINED:
            return display.say("because-grip-and-no-more-gained", most=most, strength=advised, **on)
        case Reason.LESS_TAKES_ENERGY:
            more = Share(fact.more_share, places=0)
            pedal = fact.brake_pedal
            return display.say("because-less-takes-energy", pedal=pedal, of=of, strength=advised, more=more)
        case Reason.MORE_TAKES_ENERGY:
            return display.say("because-more-takes-energy", most=most)
        case Reason.GENTLEST_RIDE:
            return display.say("because-gentlest-ride")
        case Reason.NOTHING_IS_SPARED:
            return display.say("because-nothing-is-spared")
        case Reason.FEWEST_PRESSES:
            return display.say("because-fewest-presses", presses=fact.presses, rolling=fact.rolling_presses)


def against(other: Alternative, advice: Advice, display: Display) -> str:
    """What speaks against another strength than the advised."""
    match other.against:
        case Against.GRIP:
            return display.say("against-grip", road=advice.road)
        case Against.ENERGY:
            return display.say("against-energy")
        case Against.PRESSES:
            return display.say("against-presses", presses=other.presses, instead=advice.presses)
        case Against.STRENGTH:
            return display.say("against-strength")


def supposed(change: WhatIf, display: Display) -> str:
    """What would change the advice."""
    match change.what:
        case Supposed.ROAD:
            return display.say("would-change-on-road", road=change.kind)
        case Supposed.GENTLEST_RIDE:
            return display.say("would-change-for-gentlest-ride")
        case Supposed.FEWEST_PRESSES:
            return display.say("would-change-for-fewest-presses")
        case Supposed.PEDAL:
            return display.say("would-change-with-pedal", pedal=change.kind)
        case Supposed.HILL:
            speed, slope = ((change.speed_kmh, "km/h"), (change.grade_pct, "%"))
            figures = {"speed": Quantity(*speed, 3, trimmed=True), "slope": Quantity(*slope, 3, trimmed=True)}
            return display.say("would-change-on-hill", **figures)


def no_more_than(mps2: float, display: Display) -> float:
    """The largest strength [m/s²] as it is told: rounded down, since a little more would be too much."""
    steps = 100 if display.us else 10
    return float(display.held(math.floor(steps * display.value(mps2, "m/s²") + 1e-9) / steps, "m/s²"))


def at_most(mps2: float, display: Display) -> Quantity:
    """A strength [m/s²] of which no more is to be told than there is."""
    return Quantity(no_more_than(mps2, display), "m/s²", 6, trimmed=True)


def on_slippery_roads(roads: tuple[OnRoad, ...], display: Display) -> str:
    """What is advised in its place on snow and ice, beside what such a road holds."""
    advised = [display.say("advised-strength", word=word_id(road.word), strength=strength(road.lift_off_mps2))
               for road in roads]  # fmt: skip
    held = [at_most(road.holds_mps2, display) for road in roads]
    if len(roads) == 1:
        return display.say("advice-on-one-road", road=roads[0].road, advised=advised[0], held=held[0])
    on_snow, on_ice = replace(held[0], bare=True), held[1]
    if advised[0] == advised[1]:
        return display.say("advice-on-snow-or-ice", advised=advised[0], on_snow=on_snow, on_ice=on_ice)
    snow, ice = advised
    return display.say("advice-on-snow-and-on-ice", snow=snow, ice=ice, on_snow=on_snow, on_ice=on_ice)


def in_words(advice: Advice, display: Display) -> str:
    """The strength advised, and in its place on snow and ice, without a figure."""
    word, there = word_id(advice.word), [word_id(advised.word) for advised in advice.slippery]
    if set(there) == {word}:
        return display.say("advice-in-words-alike", word=word)
    if len(set(there)) == 1:
        road = advice.slippery[0].road if len(there) == 1 else "snow-or-ice"
        return display.say("advice-in-words", word=word, there=there[0], road=road)
    snow, ice = (display.say("lift-off-word-there", there=name) for name in there)
    return display.say("advice-in-words-apart", word=word, snow=snow, ice=ice)


def rules(display: Display) -> list[str]:
    """The rules in their order."""
    return [display.say(rule) for rule in RULES]


def advice_answers(found: DriveAdvice, display: Display) -> dict[str, object]:
    """The advice as an answer has it, its reasons in words."""

    def answers(advice: Advice, of: str = "drive") -> dict[str, object]:
        data = asdict(advice)
        del data["road"]
        data["because"] = because(advice.because, display, of=of)
        for row, other in zip(data["alternatives"], advice.alternatives, strict=True):
            row["against"] = against(other, advice, display)
        for row, road in zip(data["slippery"], advice.slippery, strict=True):
            row["road"] = display.say("road-in-an-answer", road=road.road)
        return data

    return {
        "overall": answers(found.overall),
        "legs": [answers(leg, "leg") | {"leg": place} for place, leg in enumerate(found.legs, 1)],
        "what_if": [
            {"what": supposed(change, display), "lift_off_mps2": change.lift_off_mps2, "word": change.word}
            for change in found.what_if
        ],
        "rules": rules(display),
    }
