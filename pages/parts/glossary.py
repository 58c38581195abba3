"""The terms that the pages use, in plain words."""

from __future__ import annotations

from model.describe.figures import Quantity
from model.words.quantities import Display

TERMS = {
    "term-regenerative-braking": "meaning-regenerative-braking",
    "term-friction-brakes": "meaning-friction-brakes",
    "term-blended": "meaning-blended",
    "term-friction-only": "meaning-friction-only",
    "term-lift-off": "meaning-lift-off",
    "term-road-load": "meaning-road-load",
    "term-counterfactual": "meaning-counterfactual",
    "term-recovered-share": "meaning-recovered-share",
    "term-energy-saved": "meaning-energy-saved",
    "term-range-gain": "meaning-range-gain",
    "term-state-of-charge": "meaning-state-of-charge",
    "term-charge-acceptance": "meaning-charge-acceptance",
    "term-ledger": "meaning-ledger",
    "term-terminals": "meaning-terminals",
    "term-band": "meaning-band",
    "term-net-energy": "meaning-net-energy",
    "term-kwh": "meaning-kwh",
    "term-kw": "meaning-kw",
    "term-standard-cycle": "meaning-standard-cycle",
}
"""The message of each term, and of what it means."""
KWH_KM = Quantity(6, "km", places=0)
"""How far a kilowatt-hour takes an ordinary electric car."""


def meaning(term: str, display: Display) -> str:
    """What a term means."""
    return display.say(TERMS[term], reach=KWH_KM) if term == "term-kwh" else display.say(TERMS[term])


def entries(display: Display) -> list[str]:
    """Every term with what it means, as Markdown."""
    return [display.say("glossary-entry", term=display.say(term), meaning=meaning(term, display)) for term in TERMS]
