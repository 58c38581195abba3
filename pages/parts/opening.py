"""Opening a drive again: from a pasted text or link, or from a file that was taken away."""

from __future__ import annotations

import base64
import binascii
import re
from dataclasses import dataclass
from typing import Any
from urllib.parse import parse_qsl, urlsplit

from model import MODEL_VERSION
from model.describe.fields import InputError
from model.describe.figures import Share
from model.describe.scenario import Scenario
from model.describe.scenario_io import parse_json
from model.out.answers import asked_by
from model.words.quantities import Display
from model.words.refusals import refusal_words
from pages.parts.link import VERSION, parsed
from pages.parts.wording import other_version

METRIC = Display()
INSIDE_THE_PAGE = re.compile(rb'href="data:application/json;base64,([A-Za-z0-9+/=]+)"')
"""Where a take-away page keeps its drive."""


@dataclass(frozen=True)
class Opened:
    """A drive that was opened, and a sentence for each change or for what an older model had said about it."""

    scenario: Scenario
    notices: tuple[str, ...] = ()
    said_share: float | None = None


def from_text(text: str, base: Scenario, display: Display = METRIC) -> Opened:
    """The drive of a whole link, of the parameters of one, or of a scenario as JSON; told in the display's units.

    Raises
    ------
    InputError
        Where the text holds no drive.
    """
    text = text.strip()
    if text.startswith("{"):
        return _from_json(parse_json(text, display.say("opened-text")), display)
    try:
        parameters = dict(parse_qsl(urlsplit(text).query or text.lstrip("?")))
    except ValueError:
        parameters = {}
    scenario, _, refused = parsed(parameters, base)
    if scenario is None:
        raise InputError("text-without-drive")
    version = parameters.get(VERSION, MODEL_VERSION)[:20]
    notices = (refusal_words(refusal, display) for refusal in refused)
    return Opened(scenario, (*notices, *([other_version(version, display)] if version != MODEL_VERSION else [])))


def from_file(data: bytes, name: str, display: Display = METRIC) -> Opened:
    """The drive of a scenario or answer file (JSON), or of a take-away page (HTML).

    Raises
    ------
    InputError
        Where the file holds no drive.
    """
    if found := INSIDE_THE_PAGE.search(data):
        try:
            data = base64.b64decode(found[1], validate=True)
        except binascii.Error:
            raise InputError("page-damaged", name=name) from None
    elif data.lstrip()[:1] == b"<":
        raise InputError("page-not-ours", name=name)
    return _from_json(parse_json(data, name), display)


def _from_json(data: Any, display: Display) -> Opened:
    scenario = asked_by(data).scenario
    version = data.get("model_version", MODEL_VERSION)
    if version == MODEL_VERSION:
        return Opened(scenario)
    share = data.get("energy_saved_share")
    return Opened(
        scenario,
        (display.say("file-of-other-version", file=str(version)[:20], here=MODEL_VERSION),),
        share if isinstance(share, float) else None,
    )


def moved_words(said_share: float | None, share: float | None, display: Display) -> str:
    """What an older version had said of the energy saved, beside what is said now; empty where either said nothing."""
    if said_share is None or share is None:
        return ""
    then, now = Share(said_share), Share(share)
    if display.figure(then) == display.figure(now):
        return display.say("saved-as-then", share=now)
    return display.say("saved-then-and-now", earlier=then, now=now)
