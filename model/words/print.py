"""What stands on everything that is taken away: whose it is, which version, under which licence, and where it is."""

from __future__ import annotations

from model import MODEL_DATE, MODEL_VERSION
from model.words.quantities import Display


def source_line(display: Display, address: str = "") -> str:
    """Name, version, licence and, where there is one that others can open, the address."""
    said = {"version": MODEL_VERSION, "date": MODEL_DATE, "address": address}
    return display.say("print-source", addressed=bool(address), **said)
