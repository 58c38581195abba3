"""The table of fields: what may be entered, in which unit, within which bounds.

Fields are declared once, as metadata on the frozen dataclasses of `model.describe.car` and `model.describe.scenario`.
Widgets, links, files, validation, the report and the tests all read them from here.
"""

from __future__ import annotations

import dataclasses
import difflib
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar, cast, overload

from model.describe.brought import one_line
from model.describe.figures import Figure
from model.describe.typed_numbers import TwoReadings, number_typed, readings

Found = TypeVar("Found")
Entry = float | str | bool | None
"""What a field holds: whole numbers are numbers, None is what is left open."""
_NO_DEFAULT: Any = dataclasses.MISSING
YES_NO_WORDS = {"yes": True, "true": True, "1": True, "on": True, "no": False, "false": False, "0": False, "off": False}


class InputError(ValueError):
    """What cannot be used: the reason, which names the message that tells it, and the parts that the message takes.

    Parts are fields, figures, words, counts, or another refusal; `then` is what was done about it, a reason too.
    `model.words.refusals` says it to a reader.
    """

    def __init__(self, reason: str, /, *, then: str = "", **parts: RefusalPart) -> None:
        super().__init__(reason)
        self.reason, self.then, self.parts = reason, then, parts

    def __str__(self) -> str:
        parts = (f"{name} {part.key if isinstance(part, Field) else part}" for name, part in self.parts.items())
        return f"{self.reason}: {', '.join(parts)}"


@dataclass(frozen=True)
class Field:
    """One thing that can be entered.

    `minimum` and `maximum` bound what is accepted; `usual` bounds what is ordinary: a value outside it is
    accepted and named beside the headline. `default` is None where the car class decides. `message` is the id of the
    message with its name; its help is an attribute of that message.
    """

    key: str
    kind: str  # "number", "count", "choice", "yes_no" or "text"
    unit: str
    message: str
    minimum: float = -math.inf
    maximum: float = math.inf
    usual: tuple[float, float] = (-math.inf, math.inf)
    choices: tuple[str, ...] = ()
    default: Entry = None
    optional: bool = False

    def parse(self, given: object) -> Entry:
        """The value in its own type, or `InputError` naming the field, what was given and what is allowed."""
        if self.optional and (given is None or given == ""):
            return None
        try:
            return self._parse(given)
        except TwoReadings as both:
            raise FieldError(self, given, readings=both.readings) from None
        except (KeyError, OverflowError, TypeError, ValueError):
            raise FieldError(self, given) from None

    def number(self, given: object) -> float:
        """The value of a field that holds a number [its unit]; `InputError` as for `parse`."""
        return cast(float, self.parse(given))

    def _parse(self, given: object) -> Entry:
        if self.kind in ("choice", "text"):
            value = str(given)
            if (self.kind == "choice" and value not in self.choices) or len(value) > 80:
                raise ValueError
            return one_line(value)
        if self.kind == "yes_no":
            return YES_NO_WORDS[str(given).lower()]
        if isinstance(given, bool):
            raise ValueError
        number = number_typed(given, self.allows) if isinstance(given, str) else float(cast(float, given))
        if not self.allows(number):
            raise ValueError
        return int(number) if self.kind == "count" else number

    def allows(self, number: float) -> bool:
        """Whether a number is within bounds, and whole where it is a count."""
        return self.minimum <= number <= self.maximum and (self.kind != "count" or number == round(number))

    def clamp(self, given: object) -> tuple[Entry, FieldError | None]:
        """The nearest allowed value, None where there is none; and what was refused, where something had to change."""
        try:
            return self.parse(given), None
        except FieldError as refused:
            number = number_in(given) if self.kind in ("number", "count") else None
            if number is None:
                return None, FieldError(self, given, left=True)
            number = min(max(number, self.minimum), self.maximum)
            value = self.parse(round(number) if self.kind == "count" else number)
            return value, FieldError(self, given, put=value, readings=refused.readings)

    def clamped(self, given: object) -> float | None:
        """The nearest allowed number [its field's unit]; None where it is none."""
        return cast(float | None, self.clamp(given)[0])

    def is_usual(self, value: Entry) -> bool:
        """Whether the value lies within what is ordinary."""
        is_number = self.kind in ("number", "count") and value is not None
        return not is_number or self.usual[0] <= cast(float, value) <= self.usual[1]

    def text(self, value: Entry) -> str:
        """The value as it stands in links: short, and read back to the same value by `parse`."""
        if self.kind == "yes_no":
            return "yes" if value else "no"
        if self.kind == "number" and value is not None:
            return repr(float(value)).removesuffix(".0")
        return "" if value is None else str(value)


def number_in(given: object) -> float | None:
    """The number that was given, as such or as text [its field's unit]; None where it is none."""
    if isinstance(given, str):
        return next(iter(readings(given)), None)
    is_number = isinstance(given, int | float) and not isinstance(given, bool) and given == given
    return cast(float, given) if is_number else None


class FieldError(InputError):
    """A value that its field does not take.

    `given` is what was given and `leg` the leg it was for, from 1; `readings` the two numbers that it can be read as,
    where it can. Of a value that was not insisted on, `put` is what was taken in its place, or it was `left` as usual.
    """

    def __init__(
        self,
        field: Field,
        given: object,
        *,
        leg: int | None = None,
        put: Entry = None,
        left: bool = False,
        readings: tuple[float, ...] = (),
    ) -> None:
        super().__init__("field-two-readings" if readings else "field-refused", field=field)
        self.field, self.given, self.leg, self.put, self.left, self.readings = field, given, leg, put, left, readings

    def __str__(self) -> str:
        return f"{self.field.key}: {self.given!r} cannot be used"

    def of_leg(self, leg: int) -> FieldError:
        """The same, of a leg (from 1)."""
        return FieldError(self.field, self.given, leg=leg, put=self.put, left=self.left, readings=self.readings)


RefusalPart = Figure | Field | InputError | str | int


@overload
def number(
    unit: str, minimum: float, maximum: float, usual: tuple[float, float], *, default: float = ..., kind: str = ...
) -> float: ...


@overload
def number(
    unit: str, minimum: float, maximum: float, usual: tuple[float, float], *, default: None, optional: bool
) -> float | None: ...


def number(
    unit: str,
    minimum: float,
    maximum: float,
    usual: tuple[float, float],
    *,
    default: float | None = _NO_DEFAULT,
    optional: bool = False,
    kind: str = "number",
) -> float | None:
    """Declare a numeric dataclass field with its unit, bounds [that unit] and ordinary range."""
    about = dict(kind=kind, unit=unit, minimum=minimum, maximum=maximum, usual=usual, optional=optional)
    return dataclasses.field(default=default, metadata=about)


def count(minimum: int, maximum: int, usual: tuple[int, int], *, default: int = 0) -> int:
    """Declare a whole number."""
    about = dict(kind="count", unit="", minimum=minimum, maximum=maximum, usual=usual)
    return dataclasses.field(default=default, metadata=about)


def choice(choices: Iterable[str], *, default: str = _NO_DEFAULT) -> str:
    """Declare a choice between named values."""
    return dataclasses.field(default=default, metadata=dict(kind="choice", unit="", choices=tuple(choices)))


def yes_no(*, default: bool = _NO_DEFAULT) -> bool:
    """Declare a yes or no."""
    return dataclasses.field(default=default, metadata=dict(kind="yes_no", unit=""))


def text(*, default: str = _NO_DEFAULT) -> str:
    """Declare a short text."""
    return dataclasses.field(default=default, metadata=dict(kind="text", unit=""))


def fields_of(cls: type[object], topic: str) -> dict[str, Field]:
    """The table of fields of one dataclass, by key, in the order of declaration; named by the messages of a topic."""
    table = {}
    for item in dataclasses.fields(cast(Any, cls)):
        if "kind" in item.metadata:
            default = None if item.default is dataclasses.MISSING else item.default
            table[item.name] = Field(key=item.name, message=f"{topic}-{item.name}", default=default, **item.metadata)
    return table


def find(table: Mapping[str, Found], key: str) -> Found:
    """What a table has under that key, mostly a field, or `InputError` that suggests the nearest key there is."""
    if key in table:
        return table[key]
    near = difflib.get_close_matches(key, table, n=1, cutoff=0.5)
    if near:
        raise InputError("setting-unknown-but-near", key=key, nearest=near[0])
    raise InputError("setting-unknown", key=key)


def filled(cls: type[Found], values: Mapping[str, Entry]) -> Found:
    """A dataclass of fields with these values, which have been parsed."""
    return cls(**cast(dict[str, Any], values))


def changed(held: Found, values: Mapping[str, Entry]) -> Found:
    """A dataclass of fields with some values changed, which have been parsed."""
    return dataclasses.replace(cast(Any, held), **values)


def from_link(table: Mapping[str, Field], link: Mapping[str, object]) -> tuple[dict[str, Entry], list[InputError]]:
    """The values that a link carries for a table's fields, held in bounds, and what was refused and changed."""
    values: dict[str, Entry] = {}
    notices: list[InputError] = []
    for key, field in table.items():
        if key in link:
            value, notice = field.clamp(link[key])
            values[key] = field.default if value is None and not field.optional else value
            notices += [notice] if notice else []
    return values, notices
