"""A source in words: its name, when it was published, how and when it was read, and where it is."""

from __future__ import annotations

from model.describe.sources import Source
from model.words.quantities import Display


def published_on(source: Source, display: Display) -> str:
    """When it was published, or that it has no date."""
    return source.published or display.say("source-undated")


def how_read(source: Source) -> str:
    """How it was read, as messages choose by it."""
    return source.how.replace(" ", "-")


def cited(source: Source, display: Display, name: str = "") -> str:
    """The source with its dates; under another name than its own where one is handed in, such as a link."""
    said = {"published": published_on(source, display), "read": source.read, "how": how_read(source)}
    return display.say("source-cited", name=name or source.name, **said)
