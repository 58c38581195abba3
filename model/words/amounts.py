"""Numbers with their units as they stand in a sentence, in figures or in words, by the rules of its language."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache

from model.describe.tables import rows
from model.describe.typed_numbers import readings

FIGURES = r"\d(?:[\d.,]|[ '’](?=\d{3}(?!\d)))*\d|\d"
"""A number in figures, whose thousands may be set apart."""
POINT_IN_THREES = re.compile(r"\d{1,3}(\.\d{3})+")
WHOLE = ("km", "kg", "m")
"""Units of which nobody claims thousandths: there a point before three figures sets thousands apart."""
ANY_UNIT = "*"
"""The unit of nothing, which is as much in every unit."""


NOT_READ = ("money", "time", "bare", "down")
"""In place of a unit: of what no claim counts, of a number without a unit, of one number that falls to another."""


@dataclass(frozen=True)
class Rule:
    """A row of the language's table: what it finds, the value that is found, and the pattern to look for."""

    finds: str
    value: str
    pattern: re.Pattern[str]


@cache
def rules(language: str) -> tuple[Rule, ...]:
    """The rows of ``assets/words/<language>/claim_reading.csv``, in their order."""
    table = rows(f"words/{language}/claim_reading.csv")
    return tuple(Rule(row["finds"], row["value"], re.compile(row["pattern"], re.IGNORECASE)) for row in table)


def of_kind(finds: str, language: str) -> tuple[Rule, ...]:
    """The rules that find one kind of thing."""
    return tuple(rule for rule in rules(language) if rule.finds == finds)


@dataclass(frozen=True)
class Amount:
    """A number, or two where `high` is not empty, in the unit in which the program holds it, and its words.

    `unit` is one of NOT_READ where it can be no claim's number, and ANY_UNIT of nothing. `place` is where it begins;
    `spoken` are its further readings, as number and unit.
    """

    low: str
    high: str
    unit: str
    words: str
    place: int
    spoken: tuple[tuple[str, str], ...] = ()

    @property
    def number(self) -> str:
        """As a setting."""
        return f"{self.low}..{self.high}" if self.high else self.low

    def in_unit(self, fits: Callable[[str], bool]) -> Amount | None:
        """The reading whose unit fits; None where none does."""
        for low, unit in ((self.low, self.unit), *self.spoken):
            if fits(unit):
                return Amount(low, self.high, unit, self.words, self.place)
        return None


def held(number: float) -> str:
    """A number as a setting, at six digits."""
    return f"{float(f'{number:.6g}') + 0.0:g}" if abs(number) < 1e5 else repr(round(number, 3)).removesuffix(".0")


@cache
def _found_by(language: str) -> tuple[re.Pattern[str], re.Pattern[str]]:
    """Numbers with a unit, and numbers in figures without one."""
    spelt = [rule.pattern.pattern for rule in of_kind("numeral", language)]
    number = rf"(?:minus |[-−–])?(?:{'|'.join([FIGURES, *spelt])})"
    units = "|".join(f"(?:{rule.pattern.pattern})" for rule in of_kind("unit", language))
    to = "|".join(rule.pattern.pattern for rule in of_kind("span", language))
    span = rf"(?<![\w.,])(?P<low>{number})(?:[ -]?(?P<its>{units}))?(?: ?(?:{to}) ?(?P<high>{number}))?"
    with_unit = rf"{span}[ -]?(?P<unit>(?(its)(?P=its)|(?:{units})))(?!\w)"
    money = "|".join(rule.pattern.pattern.replace("FIGURES", f"(?:{FIGURES})") for rule in of_kind("price", language))
    return re.compile(f"(?P<money>{money})|{with_unit}", re.IGNORECASE), re.compile(rf"(?<![\w.,])(?:{FIGURES})(?!\w)")


def _number(text: str, unit: str, language: str) -> float | None:
    text = re.sub(r"^minus ", "-", text, flags=re.IGNORECASE)
    for rule in of_kind("numeral", language):
        if rule.pattern.fullmatch(text.lstrip("-−–")):
            return float(rule.value) * (-1 if text[0] in "-−–" else 1)
    if unit in WHOLE and POINT_IN_THREES.fullmatch(text):
        text = text.replace(".", "")
    found = readings(text)
    return found[-1] if found else None


def _with_unit(met: re.Match[str], language: str) -> Amount:
    if met["money"]:
        return Amount("", "", "money", met[0], met.start())
    rule = next(other for other in of_kind("unit", language) if other.pattern.fullmatch(met["unit"]))
    unit, _, factor = rule.value.partition("*")

    def value(text: str) -> str:
        number = _number(text, unit, language) if text else None
        if number is None:
            return ""
        return held((number - 32) / 1.8) if factor == "F" else held(number * float(factor or 1))

    low, high = value(met["low"]), value(met["high"] or "")
    if high and float(low) > float(high):
        return Amount("", "", "down", met[0], met.start())
    return Amount(low, high, unit, met[0], met.start())


def _spoken(sentence: str, language: str) -> Iterator[Amount]:
    for rule in of_kind("number", language):
        for met in rule.pattern.finditer(sentence):
            (low, unit), *others = (tuple(reading.split(" ")) for reading in rule.value.split(" or "))
            yield Amount(low, "", unit, met[0], met.start(), tuple((number, of) for number, of in others))


def amounts(sentence: str, language: str) -> list[Amount]:
    """Every number, as they stand in the sentence: with a unit, in words, and bare."""
    with_unit, bare = _found_by(language)
    found = []
    rest = sentence
    for met in with_unit.finditer(sentence):
        found.append(_with_unit(met, language))
        rest = rest[: met.start()] + " " * len(met[0]) + rest[met.end() :]
    found += _spoken(rest, language)
    found += [Amount("", "", "bare", met[0], met.start()) for met in bare.finditer(rest)]
    return sorted((each for each in found if each.low or each.unit in NOT_READ), key=lambda each: each.place)
