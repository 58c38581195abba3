"""The checks beside published figures in words: what is compared, what is published, how it was done."""

from __future__ import annotations

from model.checks.check import Check, Outcome
from model.words.quantities import Display


def title(check: Check, display: Display) -> str:
    """What is compared."""
    return _part(check, "", display)


def about(check: Check, cited: str, display: Display) -> str:
    """The sources, as they are cited, what they publish, how it was compared, and why that may be no evidence."""
    published, note = _part(check, ".published", display), _part(check, ".note", display)
    said = display.say("check-about", source=cited, published=published, note=note)
    return said if check.is_evidence else f"{said} {_part(check, '.no-evidence', display)}"


def what(found: Outcome, display: Display) -> str:
    """What a number is that was found."""
    return display.say(found.what, **dict(found.given))


def _part(check: Check, attribute: str, display: Display) -> str:
    message = f"check-{check.id}{attribute}"
    return display.say(message, **dict(check.given))
