"""What "X % recovered" is a share of: the seven phrases in use, each turned into the others for one car and drive.

All seven follow from one energy, what regeneration put back at the battery's terminals, and from the drive's other
energies.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypedDict

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity, Several
from model.describe.trace import Array, Numbers
from model.kernel.books import Books
from model.kernel.savings import has_range


@dataclass(frozen=True)
class Phrase:
    """One way to say what came back.

    `share` turns the energy put back [kWh] into the phrase's number, `back` turns the number into the energy; `base`
    [kWh] must be above nothing, else the phrase means nothing on that drive.
    """

    unit: str
    share: Callable[[Books, Numbers], Numbers]
    back: Callable[[Books, Numbers], Numbers]
    base: Callable[[Books, Numbers], Numbers]


def _with_a_range(books: Books, net_kwh: Numbers) -> Array:
    """Net energy of a drive [kWh]; nothing where it is too little for a range to be told."""
    return np.where(has_range(net_kwh, books.distance_km), net_kwh, 0.0)


PHRASES: dict[str, Phrase] = {
    "recovered": Phrase(
        "%",
        lambda books, back: back / books.out,
        lambda books, share: share * books.out,
        lambda books, back: books.out,
    ),
    "of_braking": Phrase(
        "%",
        lambda books, back: back / books.braking,
        lambda books, share: share * books.braking,
        lambda books, back: books.braking,
    ),
    "of_climb": Phrase(
        "%",
        lambda books, back: back * (books.descent_back / books.back) / books.climb_out,
        lambda books, share: share * books.climb_out / (books.descent_back / books.back),
        lambda books, back: np.minimum(books.climb_out, books.descent_back),
    ),
    "range_gain": Phrase(
        "%",
        lambda books, back: (back + books.spared) / (books.out - back),
        lambda books, share: (share * books.out - books.spared) / (1 + share),
        lambda books, back: _with_a_range(books, books.out - back),
    ),
    "electric_braking": Phrase(
        "%",
        lambda books, back: back * (books.electric / books.back) / books.braking,
        lambda books, share: share * books.braking / (books.electric / books.back),
        lambda books, back: np.minimum(books.braking, books.back),
    ),
    "range_lost": Phrase(
        "%",
        lambda books, back: (back + books.spared) / (books.out + books.spared),
        lambda books, share: share * (books.out + books.spared) - books.spared,
        lambda books, back: books.out + books.spared,
    ),
    "display_km": Phrase(
        "km",
        lambda books, back: back * books.distance_km / (books.out - books.back),
        lambda books, km: km * (books.out - books.back) / books.distance_km,
        lambda books, back: _with_a_range(books, books.out - books.back),
    ),
}
"""By the names under which messages tell them in words and as formulas."""


def _or_none(phrase: Phrase, books: Books, back: Numbers) -> Numbers | None:
    return phrase.share(books, back) if np.all(phrase.base(books, back) > 0) else None


def said(books: Books, phrase: str) -> Numbers | None:
    """A drive in the words of one phrase: a share [1], or [km] for the display; None where it means nothing there."""
    return _or_none(PHRASES[phrase], books, books.back)


def convert(books: Books, phrase: str, value: float) -> dict[str, float | None]:
    """A number said in one phrase, in all seven, on this car and drive.

    Parameters
    ----------
    books : Books
        Of the drive; its other energies stay as they are.
    phrase : str
        One of PHRASES.
    value : float
        Share [1], or [km] for the display.

    Returns
    -------
    dict
        By phrase; None where a phrase means nothing, as a climb on a flat road. An electric share of braking above 1
        says that the braking of this drive cannot give so much.

    Raises
    ------
    InputError
        Where the phrase is unknown, means nothing on this drive, or the number is below what it can be.
    """
    if phrase not in PHRASES:
        raise InputError("not-one-of", what="denominator", given=phrase, known=Several(tuple(PHRASES)))
    given = PHRASES[phrase]
    if not given.base(books, books.back) > 0:
        raise InputError("denominator-means-nothing", phrase=phrase)
    back = given.back(books, value)
    if not back >= -1e-9 * books.out:
        raise InputError(
            "less-than-nothing-came-back", given=Quantity(value, "", 6, trimmed=True), phrase=phrase,
            least=Quantity(float(given.share(books, 0.0)), "", 3, trimmed=True),
        )  # fmt: skip
    said_in = {name: _or_none(each, books, back) for name, each in PHRASES.items()}
    return {name: None if number is None else float(number) for name, number in said_in.items()}


class HillLoop(TypedDict):
    """A published drive up and down a hill, by the keys of answers; `headline_share` is what was said to come back."""

    source: str
    up_kwh_per_100_km: float
    down_kwh_per_100_km: float
    mean_kwh_per_100_km: float
    headline_share: float


class WorkedExample(HillLoop):
    """The same with what follows from the two energies, and what the headline would need of a climb."""

    mean_found_kwh_per_100_km: float
    phrases: dict[str, float | None]
    headline_as_share_of_climb_needs_kwh: float


HILL_LOOP: HillLoop = {
    "source": "ADAC, 2024: pass road driven up and down again on a dynamometer (press, second-hand)",
    "up_kwh_per_100_km": 26.4,
    "down_kwh_per_100_km": -7.1,
    "mean_kwh_per_100_km": 9.7,
    "headline_share": 0.35,
}
"""Published figures of a light car on a hill: as shares of a climb, the headline and the two energies do not agree."""


def worked_example() -> WorkedExample:
    """The hill loop's own two energies in every phrase they allow, beside its headline.

    Energy that the motor fed directly was not published and is left at nothing, so here r and s are the same.
    """
    up, down = HILL_LOOP["up_kwh_per_100_km"], -HILL_LOOP["down_kwh_per_100_km"]
    books = Books(
        out=up, back=down, spared=0.0, braking=0.0, electric=0.0, climb_out=up, descent_back=down, distance_km=200.0
    )
    return {
        **HILL_LOOP,
        "mean_found_kwh_per_100_km": (up - down) / 2,
        "phrases": convert(books, "of_climb", down / up),
        "headline_as_share_of_climb_needs_kwh": float(PHRASES["of_climb"].back(books, HILL_LOOP["headline_share"])),
    }
