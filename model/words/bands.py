"""What a band promises, and on what that was checked."""

from __future__ import annotations

from model.checks.certified import SAID, certified_found
from model.describe.figures import Share
from model.words.quantities import Display


def band_promise(display: Display) -> str:
    """The one meaning of every band."""
    city, highway = (certified_found("road load", cycle) for cycle in ("udds", "hwfet"))
    held = {name: Share(found.held_pct(SAID[90]) / 100, 0) for name, found in (("city", city), ("highway", highway))}
    return display.say("band-promise", cars=len(city.ids), **held)
