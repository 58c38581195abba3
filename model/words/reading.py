"""A sentence read by plain rules: which number it claims of what, where and when; what was not found is said.

The rules are patterns of a language's words, in ``assets/words/<language>/claim_reading.csv``. They offer a reading to
be corrected. What no pattern finds is left to whoever asks; what is assumed beyond the words is marked as that.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache, partial
from itertools import count

from model.claims.inputs import INPUTS, Open, narrowed
from model.claims.questions import Question
from model.claims.specification import (
    AGAINST,
    COMPARED_AS,
    FLAT,
    PLACES,
    Counted,
    counted,
    numbers_of,
    places,
    plain_words,
    sayable_places,
)
from model.describe.fields import InputError
from model.words.amounts import ANY_UNIT, NOT_READ, Amount, amounts, of_kind, rules
from model.words.phrased_conditions import conditions_in
from model.words.quantities import Display

CONDITIONS = {"°C": "ambient_c", "km/h": "speed_kmh", "kg": "trailer_kg", "m": "height_m"}
"""Units in which conditions are given rather than what is claimed, and the condition."""
NAMED = ("season", "road", "surface", "cabin", "soc_start")
"""Conditions of which the first pattern that is found decides."""
WITHIN = re.compile(r" \([^()]*\d[^()]*\)")
"""Between which numbers “about” one lies, as our own sentences say behind it."""


@dataclass(frozen=True)
class Found:
    """One thing that was found: a part of the claim, what it was taken for, and the words that it rests on.

    `assumed` where the words do not say as much.
    """

    part: str
    value: str
    words: str
    assumed: bool = False


@dataclass(frozen=True)
class Aside:
    """A number that was found and not taken, and why.

    `why` is “second” of a further number, “money” and “time” of what no claim counts, “bare” without a unit, “down” of
    a number that falls to another, “unit” in another unit than the quantity's, “condition” of what the quantity does
    not turn on.
    """

    why: str
    words: str


NOT_COUNTED = "none"
"""The value of a rule by which a sentence counts nothing that can be chosen for it."""


@dataclass(frozen=True)
class Reading:
    """A sentence as it can be read: the claim in its flat form, what it rests on, what was left aside and not found.

    `missing` are parts without which nothing can be tested; `open` are those over all of which it is tested; `unread`
    are words that nothing of the reading rests on, and that say something.
    """

    given: dict[str, str]
    found: tuple[Found, ...]
    aside: tuple[Aside, ...]
    missing: tuple[str, ...]
    open: tuple[str, ...]
    unread: tuple[str, ...] = ()


def _first(finds: str, sentence: str, language: str) -> Found | None:
    for rule in rules(language):
        if rule.finds == finds and (met := rule.pattern.search(sentence)):
            return Found(finds, rule.value, met[0].strip())
    return None


@lru_cache(maxsize=256)
def read(sentence: str, language: str = "en") -> Reading:
    """Read a sentence by the rules of its language.

    Raises
    ------
    InputError
        Where it is too long to be a claim.
    """
    words = plain_words(sentence)
    text = WITHIN.sub("", words)
    phrased_by_us = _first("own", text, language)
    case = None if phrased_by_us else _first("case", text, language)
    quantity = phrased_by_us or _quantity(text, case, language)
    count = counted()[quantity.value] if quantity else None
    found = [Found("quantity", quantity.value, quantity.words)] if quantity else []
    conditions, text = _conditions(text, count, language)
    cases, text = _cases(text, count, case, bool(phrased_by_us), conditions, language)
    relation = _first("relation", text, language)
    kept, untold = _told(count, conditions + [piece for piece in cases if not piece.part.startswith(AGAINST)])
    against = {piece.part: piece.value for piece in cases if piece.part.startswith(AGAINST)}
    given = {"words": words} | {piece.part: piece.value for piece in (*found, *kept)} | against
    number, rest = _number(text, count, bool(against), language)
    found += [relation] if relation and not (number and number[0].value.find("..") > 0) else []
    found += number
    if number and not any(piece.part == "relation" for piece in found):
        spanned = ".." in number[0].value
        found.append(Found("relation", "between" if spanned else "about", number[0].words, assumed=not spanned))
    found += kept
    for piece in cases:
        if piece.part.startswith(AGAINST):
            key = piece.part.removeprefix(AGAINST)
            found.append(Found("case", f"{key}={given[key]}:{piece.value}", piece.words, piece.assumed))
    given |= {piece.part: piece.value for piece in found if piece.part in FLAT}
    aside = [Aside("condition", piece.words) for piece in untold] + rest
    missing, still_open = _missing(given, count, text, language)
    rested_on = [*(piece.words for piece in found), *(piece.words for piece in aside)]
    unread = () if phrased_by_us else _unread(WITHIN.sub("", words), quantity, rested_on, bool(cases), language)
    return Reading(given, tuple(found), tuple(aside), missing, still_open, unread)


def _named(places: Iterator[int], _gap: re.Match[str]) -> str:
    return f"(?P<between{next(places)}>.*)"


WORD = re.compile(r"[^\s,;:.!?()“”\"]+(?:[.,]\d+)*")
HEARD = ("relation", "number", "change", "difference")
"""Kinds of rules whose words say how something else is meant."""


def _unread(text: str, quantity: Found | None, rested_on: list[str], compared: bool, language: str) -> tuple[str, ...]:
    """Words on which nothing rests, as they stand together; without those that say nothing by themselves."""
    heard = [False] * len(text)

    def hear(start: int, end: int, so: bool = True) -> None:
        heard[start:end] = [so] * (end - start)

    for rule in of_kind("quantity", language) if quantity else ():
        # what stands between the words that were looked for was not read
        apart = re.sub(r"\.\*", partial(_named, count()), rule.pattern.pattern)
        if (met := re.search(apart, text, re.IGNORECASE)) and met[0].strip() == (quantity.words if quantity else ""):
            hear(*met.span())
            for name in met.groupdict():
                hear(*met.span(name), so=False)
            break
    for words in rested_on:
        at = text.find(words)
        if at >= 0 and (quantity is None or words != quantity.words):
            hear(at, at + len(words))
    for rule in rules(language):
        if rule.finds in HEARD or (rule.finds == "case" and compared):
            for met in rule.pattern.finditer(text):
                hear(*met.span())

    def idle(word: re.Match[str], *kinds: str) -> bool:
        return any(rule.pattern.fullmatch(word[0]) for rule in of_kind("idle", language) if rule.value in kinds)

    rows: list[list[re.Match[str]]] = [[]]
    before = 0
    for word in WORD.finditer(text):
        unheard = not any(heard[word.start() : word.end()])
        if rows[-1] and (text[before : word.start()].strip() or not unheard):
            rows.append([])
        if unheard:
            rows[-1].append(word)
        before = word.end()
    found = []
    for row in rows:
        while row and idle(row[0], "words", "subject"):
            row = row[1:]
        while row and idle(row[-1], "words", "links"):
            row = row[:-1]
        if not all(idle(word, "words", "subject", "links") for word in row):
            found.append(text[row[0].start() : row[-1].end()])
    return tuple(found)


def _quantity(text: str, case: Found | None, language: str) -> Found | None:
    """What is counted; a rule with a unit counts where that unit stands and no two cases are compared."""
    units = {unit for amount in amounts(text, language) for unit in (amount.unit, *(unit for _, unit in amount.spoken))}
    for rule in of_kind("quantity", language):
        name, _, unit = rule.value.partition(" ")
        if (not unit or (case is None and units & {unit, ANY_UNIT})) and (met := rule.pattern.search(text)):
            # what is spent for nothing is the rest of what comes back: to be chosen, not guessed
            return Found("quantity", name, met[0].strip()) if name != NOT_COUNTED else None
    return None


def _conditions(text: str, count: Counted | None, language: str) -> tuple[list[Found], str]:
    """Conditions by name, and by numbers in units that only conditions have; and the text without those numbers."""
    found = []
    if count:
        other = _first("other_case", text, language)
        end = text.rindex(other.words) if other else len(text)
        said, head = conditions_in(text[:end], count.sayable, language)
        found += [Found(piece.key, piece.setting, piece.words) for piece in said]
        text = head + text[end:]
    keys = {piece.part for piece in found}
    named = [piece for part in NAMED if part not in keys and (piece := _first(part, text, language))]
    charge = " ".join(piece.words for piece in named if piece.part == "soc_start")
    for amount in amounts(text, language):
        key = CONDITIONS.get(amount.unit)
        if amount.words in charge or (key and key not in keys):
            if key:
                named.append(Found(key, amount.number, amount.words))
                keys.add(key)
            end = amount.place + len(amount.words)
            text = text[: amount.place] + " " * len(amount.words) + text[end:]
    return found + named, text


def _cases(
    text: str, count: Counted | None, case: Found | None, phrased_by_us: bool, conditions: list[Found], language: str
) -> tuple[list[Found], str]:
    """Two cases that are compared: what sets the other apart, what this one has, and the text without the other."""
    if count is None or count.beyond:
        return [], text
    if phrased_by_us:
        other = _first("other_case", text, language)
        if not other:
            return [], text
        said, _ = conditions_in(other.words, count.sayable, language)
        apart = [Found(f"{AGAINST}{piece.key}", piece.setting, piece.words) for piece in said]
        display = Display(language=language)
        no_trailer, battery_car = display.say("claim-no-trailer"), display.say("claim-battery-car")
        if no_trailer in other.words:
            apart.append(Found(f"{AGAINST}trailer_kg", "0", no_trailer))
        if battery_car in other.words:
            apart.append(Found(f"{AGAINST}hybrid", "none", battery_car))
        return apart, text.replace(other.words, " " * len(other.words))
    if case is None:
        return [], text
    found: list[Found] = []
    keys = {piece.part for piece in conditions}
    for pair in case.value.split(" "):
        key, _, values = pair.partition("=")
        here, differs, other_case = values.partition(":")
        if key not in count.sayable:
            continue
        assumed = INPUTS[key].kind == "number" or not differs
        if key not in keys:
            found.append(Found(key, here, case.words, assumed))
        if differs:
            found.append(Found(f"{AGAINST}{key}", other_case, case.words, assumed and key not in keys))
    return found if any(piece.part.startswith(AGAINST) for piece in found) else [], text


def _told(count: Counted | None, conditions: list[Found]) -> tuple[list[Found], list[Found]]:
    """The conditions that the quantity knows and takes, and the others.

    A temperature or a cycle that was said counts before a name.
    """
    keys = {piece.part for piece in conditions}
    kept: list[Found] = []
    untold: list[Found] = []
    for piece in conditions:
        if piece.part in PLACES:
            if PLACES[piece.part] in keys:
                continue
            takes = count is None or piece.part in sayable_places(count)
        else:
            takes = count is not None and piece.part in count.sayable and _takes(piece.part, piece.value)
        (kept if takes else untold).append(piece)
    return kept, untold


def _takes(key: str, text: str) -> bool:
    try:
        narrowed(INPUTS[key], Open(()), text)
    except InputError:
        return False
    return True


def _number(text: str, count: Counted | None, differs: bool, language: str) -> tuple[list[Found], list[Aside]]:
    """The first number that can be the claim's, with its unit where that is one of the quantity's; and the others."""
    how = _first("difference", text, language) if differs else None
    changes = not differs and _first("change", text, language) is not None

    def fits(unit: str) -> bool:
        if count is None or count.beyond:
            return unit not in CONDITIONS and unit not in NOT_READ
        if differs:
            ratio = how is not None and how.value in COMPARED_AS
            return unit in ("times", ANY_UNIT) or (unit == "%" and ratio) or unit in count.units(differs)
        # a drop of 40 km or by 2 kWh is one case less another
        return unit in (count.unit, ANY_UNIT) and not (changes and count.id in ("range", "energy"))

    numbers = amounts(text, language)
    fitting = [as_one for amount in numbers if (as_one := amount.in_unit(fits))]
    # that there is nothing is the number where no other is given
    taken: Amount | None = next((amount for amount in fitting if amount.unit != ANY_UNIT), next(iter(fitting), None))
    aside = []
    for amount in numbers:
        if taken and amount.place == taken.place:
            continue
        if amount.unit in NOT_READ:
            aside.append(Aside(amount.unit, amount.words))
        elif amount.unit != ANY_UNIT:
            aside.append(Aside("second" if count is None else "unit", amount.words))
    if taken is None and changes and count and not count.beyond:
        # by how much is said, and not compared with what
        number = next((amount for amount in numbers if amount.unit in ("%", "times", count.unit)), None)
        aside = [left for left in aside if number is None or left.words != number.words]
        return [Found("number", number.number, number.words)] if number else [], aside
    if taken is None:
        return [], aside
    aside = [Aside("second", left.words) if left.why == "unit" else left for left in aside]
    found = [Found("number", taken.number, taken.words)]
    if unit := _unit(taken.unit, count, how, differs):
        found.append(Found("unit", unit, how.words if how and unit == how.value else taken.words))
    return found, aside


def _unit(unit: str, count: Counted | None, how: Found | None, differs: bool) -> str:
    """The unit of the claim's number; empty where the words leave it open."""
    if how and how.value in COMPARED_AS and (unit in ("%", ANY_UNIT) or how.value == unit):
        return how.value
    if unit != ANY_UNIT:
        return unit
    if differs:
        return count.difference if count and how else ""
    return count.unit if count else ""


def _missing(
    given: Mapping[str, str], count: Counted | None, text: str, language: str
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What has to be said before anything can be tested, and what is open."""
    asked = ("season", "road") if count is None else sayable_places(count)
    still_open = [part for part in asked if part not in given and PLACES[part] not in given]
    if count and count.id == "in_a_stop" and "speed_kmh" not in given:
        still_open.append("speed_kmh")
    if count is None:
        return tuple(part for part in ("quantity", "number") if part not in given), tuple(still_open)
    if count.beyond:
        return (), tuple(still_open)
    missing = [part for part in ("number", "unit") if part not in given][:1]
    alone = not any(key.startswith(AGAINST) for key in given)
    if missing == ["unit"] and alone and _first("change", text, language):
        missing = ["case"]
    return tuple(missing), tuple(still_open)


def left_aside(sentence: str) -> list[str]:
    """Every word of a sentence on which its reading does not rest, as they stand together."""
    reading = read(sentence)
    return [*(aside.words for aside in reading.aside), *reading.unread]


def words_stand(asked: Question) -> bool:
    """Whether a claim's words, the list's or one's own, say what is tested."""
    if not asked.own:
        return asked.as_listed
    return bool(asked.claim.text) and keep_to(asked.given, asked.claim.scope)


def keep_to(given: Mapping[str, str], scope: Mapping[str, Open]) -> bool:
    """Whether a claim's words, read anew, say what is tested: whatever is read in them must be so still.

    `given` is the claim in its flat form, with its words; `scope` what its conditions fix, as of
    `model.claims.specification.claim_of`.
    """
    reading = read(given.get("words", ""))
    stated, count = reading.given, counted()[given["quantity"]]
    if stated.get("quantity", count.id) != count.id:
        return False
    claimed = [] if count.beyond else [key for key in ("relation", "unit") if key in stated]
    if any(stated[key] != given.get(key) for key in claimed):
        return False
    if "number" in stated and not count.beyond and numbers_of(stated["number"]) != numbers_of(given["number"]):
        return False
    ours = {piece.part for piece in reading.found if piece.assumed}
    conditions = {key: text for key, text in stated.items() if key not in (*FLAT, *ours)}
    return all(_still_so(key, text, given, scope, count) for key, text in conditions.items())


def _still_so(key: str, text: str, given: Mapping[str, str], scope: Mapping[str, Open], count: Counted) -> bool:
    """Whether a condition that was read is tested: as it was said or narrower."""
    if key.startswith(AGAINST):
        return key in given and (INPUTS[key.removeprefix(AGAINST)].kind == "number" or given[key] == text)
    tested = scope.get(PLACES.get(key, key))
    if tested is None:
        return False
    if key in PLACES:
        return tested.within(places().of(key)[text])
    return tested.within(narrowed(INPUTS[key], count.open.get(key, Open(())), text))
