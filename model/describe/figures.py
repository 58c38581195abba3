"""Figures as a finding carries them: numbers with their unit, not yet words. `model.words` says them to a reader."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Quantity:
    """A figure held in `unit`, empty for a plain number.

    It is told with `digits` significant digits; with `places` decimals where that is given; and without zeros that say
    nothing where it is `trimmed`, as what somebody entered is. A difference is `signed`: a plus before what is more.
    A `bare` one stands without its unit, which is told beside it.
    """

    value: float
    unit: str
    digits: int = 2
    places: int | None = None
    trimmed: bool = False
    signed: bool = False
    bare: bool = False


@dataclass(frozen=True)
class Span:
    """From one figure to another, both held in `unit`.

    Both are told with `digits` significant digits of the larger, or with `places` decimals where that is given. Where
    it is `trimmed` each end has so many digits, and no zeros that say nothing; a difference is `signed`.
    """

    low: float
    high: float
    unit: str
    digits: int = 2
    places: int | None = None
    trimmed: bool = False
    signed: bool = False


@dataclass(frozen=True)
class Part:
    """So much of a whole, both held in `unit`; it is rounded down, never to be told as all of it."""

    value: float
    whole: float
    unit: str


@dataclass(frozen=True)
class Share:
    """A share [1], told in percent: whole from ten on, else with one decimal; or with `places` decimals."""

    value: float
    places: int | None = None


@dataclass(frozen=True)
class Shares:
    """From one share to another [1], told in percent."""

    low: float
    high: float


@dataclass(frozen=True)
class Several:
    """Things in a row, “a, b and c”.

    `last` is what stands before the last: “and”, “or”, nothing more than between the others (“”), or “;” between all.
    """

    items: tuple[Figure | str, ...]
    last: str = "and"


Figure = Quantity | Span | Part | Share | Shares | Several
