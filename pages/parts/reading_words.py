"""How a sentence was read, in words: what was found and assumed, what was left aside, and what it does not say."""

from __future__ import annotations

from collections.abc import Mapping

from model.claims.specification import AGAINST, FLAT, PLACES, counted
from model.describe.figures import Several
from model.words.quantities import Display, inside
from model.words.reading import Aside, Found, Reading
from pages.parts import claim_inputs as inputs
from pages.parts.typography import together

UNITS = {"%": "percent", "km": "km", "kWh/100 km": "energy", "m/s²": "slowing"}
"""Units as messages choose by them."""


def reading_texts(reading: Reading, given: Mapping[str, str], display: Display) -> list[str]:
    """What was found in a sentence, what was left aside, and what it does not say, though it may be put in since."""
    cases = {found.value.partition("=")[0] for found in reading.found if found.part == "case"}
    # what two cases differ in is told once, with both
    unit = reading.given.get("unit", "")
    count = counted().get(reading.given.get("quantity", ""))
    if count and count.beyond:
        claimed = dict.fromkeys(piece.words for piece in reading.found if piece.part == "number")
        conditions = (piece for piece in reading.found if piece.part not in ("number", "unit", "relation"))
        texts = [found_text(piece, display) for piece in conditions]
        texts += [together(display.say("reading-not-judged", words=words)) for words in claimed]
    else:
        decided = (piece for piece in reading.found if piece.part not in cases and decides(piece, unit, display))
        texts = [found_text(piece, display, unit) for piece in decided]
    if reading.unread:
        quoted = tuple(display.say("reading-quoted", words=words) for words in reading.unread)
        texts.append(together(display.say("reading-unread", words=Several(quoted))))
    texts += [aside_text(aside, reading.given, display) for aside in reading.aside]
    texts += [missing_text(part, reading.given, display, filled=part in given) for part in reading.missing]
    if reading.open:
        parts = tuple(display.say("reading-open-part", part=part) for part in reading.open)
        texts.append(display.say("reading-open", parts=Several(parts, "or")))
    return texts


def decides(found: Found, unit: str, display: Display) -> bool:
    """Whether something was decided or assumed; not where the words say it just so."""
    words = found.words.replace(",", "").replace("–", " to ").casefold()
    if found.part == "number":
        return _number(found, unit, display).replace(",", "").casefold() not in words
    if found.part in PLACES:
        return found.words.casefold() not in display.say("claim-place", place=found.value).casefold()
    if found.part == "relation" and not found.assumed:
        return found.value == "up_to" or display.say("own-relation", relation=found.value) != words
    return found.part != "unit"


def _number(found: Found, unit: str, display: Display) -> str:
    number = inputs.span_text(found.value, unit, display)
    return display.say("with-unit", number=number, unit=display.unit(unit)) if unit else number


def found_text(found: Found, display: Display, unit: str = "") -> str:
    """One thing that was found, with the words that it rests on; a number is in the unit that was read."""
    part = found.part if found.part in (*FLAT, *PLACES, "case") else "condition"
    value = found.value
    if part == "relation" and value == "up_to" and not found.assumed:
        return display.say("reading-ceiling")
    if part == "quantity":
        value = inside(display.say("own-counted-name", quantity=value))
    elif part == "relation":
        value = display.say("own-relation", relation=value)
    elif part == "number":
        value = _number(found, unit, display)
    elif part in PLACES:
        value = display.say("claim-place", place=value)
    elif part == "case":
        value = _case(value, display)
    elif part == "condition":
        value = inputs.said_text(found.part, value, display)
    return together(
        display.say("reading-found", part=part, value=value, words=found.words, assumed=found.assumed)
    )


def _case(value: str, display: Display) -> str:
    key, _, cases = value.partition("=")
    here, _, other = cases.partition(":")
    here = inputs.said_text(key, here, display)
    if other == "none":
        return display.say("reading-two", here=here, other=display.say("claim-battery-car"))
    if (key, other) == ("trailer_kg", "0"):
        return display.say("reading-two", here=here, other=display.say("claim-no-trailer"))
    return display.say("reading-two", here=here, other=inputs.said_text(key, other, display))


def aside_text(aside: Aside, given: Mapping[str, str], display: Display) -> str:
    """A number that was not taken, and why."""
    count = counted().get(given.get("quantity", ""))
    unit = count.unit if count else ""
    return together(display.say("reading-aside", why=aside.why, words=aside.words, unit=display.unit(unit)))


def missing_text(part: str, given: Mapping[str, str], display: Display, filled: bool = False) -> str:
    """Something that has to be said before anything can be tested."""
    count = counted().get(given.get("quantity", ""))
    unit = UNITS.get(count.unit, "other") if count else "other"
    return display.say("reading-missing", part=part, unit=unit, filled=filled)


def first_missing(given: Mapping[str, str]) -> str:
    """What is to be said first before a claim can be tested; empty where nothing is missing."""
    count = counted().get(given.get("quantity", ""))
    if count is None:
        return "quantity"
    if count.beyond:
        return ""
    differs = any(key.startswith(AGAINST) for key in given)
    parts = [part for part in ("number", "relation", "unit") if part not in given]
    return "case" if parts == ["unit"] and not differs else next(iter(parts), "")


def not_yet(given: Mapping[str, str], reading: Reading | None, why: str, display: Display) -> str:
    """Why a claim is not tested yet: what is missing and what could not be read, or why it was refused."""
    if part := first_missing(given):
        asides = [aside for aside in reading.aside if aside.why != "second"] if reading else []
        sentences = [missing_text(part, given, display), *(aside_text(aside, given, display) for aside in asides)]
        why = " ".join(sentences)
    return display.say("own-not-yet", why=why)
