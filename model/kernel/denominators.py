"""What "X % recovered" is a share of: the seven phrases in use, each turned into the others for one car and drive.

All seven follow from one energy, what regeneration put back at the battery's terminals, and from the drive's other
energies. Recovered share and energy saved are kept apart: while slowing, the motor also feeds lights, pumps and heater
directly, and what it spares the battery in this way is saved without ever having been recovered.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Quantity, Several
from model.describe.trace import Array, Trace
from model.describe.units import J_PER_KWH
from model.kernel.run import Run
from model.kernel.savings import Result, has_range


@dataclass(frozen=True, eq=False)
class Books:
    """Energies of one drive [kWh]; numbers, or arrays of shape (runs,).

    `out` and `back` are at the battery's terminals; `spared` is what the battery of the friction-only run has to give
    beyond `out`; `braking` is asked of brakes and motor at the wheels, `electric` the motor's part of it; `climb_out`
    is drawn while the road rises, `descent_back` put back while it falls.
    """

    out: Any
    back: Any
    spared: Any
    braking: Any
    electric: Any
    climb_out: Any
    descent_back: Any
    distance_km: Any


def book_keeper(trace: Trace) -> Callable[..., tuple[Array, ...]]:
    """What to measure on a run of this trace and on its friction-only run: the energies of `Books` in order [J].

    Without the second nothing is known of what was spared, and range and energy saved mean nothing.
    """

    def energies(run: Run, without: Run | None = None) -> tuple[Array, ...]:
        # what warming up takes is none of what the drive itself draws
        out = run.out_j - run.before_j
        return (
            out,
            run.in_j,
            out * np.nan if without is None else without.net_j - out,
            *(run.energies[name] for name in ("braking_j", "motor_j", "climb_out_j", "descent_back_j")),
        )

    return energies


def books_of(result: Result) -> Books:
    """The books of one driven result."""
    energies = book_keeper(result.trace)(result.run, result.without)
    return Books(*[float(energy[0]) / J_PER_KWH for energy in energies] + [result.distance_km])


@dataclass(frozen=True)
class Phrase:
    """One way to say what came back.

    `share` turns the energy put back [kWh] into the phrase's number, `back` turns the number into the energy; `base`
    [kWh] must be above nothing, else the phrase means nothing on that drive.
    """

    id: str
    words: str
    formula: str
    unit: str
    share: Callable[[Books, Any], Any]
    back: Callable[[Books, Any], Any]
    base: Callable[[Books, Any], Any]


def _with_a_range(books: Books, net_kwh: Any) -> Any:
    """Net energy of a drive [kWh]; nothing where it is too little for a range to be told."""
    return np.where(has_range(net_kwh, books.distance_km), net_kwh, 0.0)


PHRASES: dict[str, Phrase] = {
    phrase.id: phrase
    for phrase in (
        Phrase(
            "recovered", "of what the battery gave comes back", "r = back / out", "%",
            lambda books, back: back / books.out,
            lambda books, share: share * books.out,
            lambda books, back: books.out,
        ),
        Phrase(
            "of_braking", "of the braking energy at the wheels reaches the battery", "back / braking", "%",
            lambda books, back: back / books.braking,
            lambda books, share: share * books.braking,
            lambda books, back: books.braking,
        ),
        Phrase(
            "of_climb", "of what the climb took comes back on the descent",
            "back on descents / out on climbs; back on other road keeps its proportion", "%",
            lambda books, back: back * (books.descent_back / books.back) / books.climb_out,
            lambda books, share: share * books.climb_out / (books.descent_back / books.back),
            lambda books, back: np.minimum(books.climb_out, books.descent_back),
        ),
        Phrase(
            "range_gain", "more range than on friction brakes only",
            "s / (1 − s) = (back + spared) / (out − back)", "%",
            lambda books, back: (back + books.spared) / (books.out - back),
            lambda books, share: (share * books.out - books.spared) / (1 + share),
            lambda books, back: _with_a_range(books, books.out - back),
        ),
        Phrase(
            "electric_braking", "of the braking energy at the wheels is taken by the motor",
            "(back / conversion) / braking, where conversion = back / electric on this drive", "%",
            lambda books, back: back * (books.electric / books.back) / books.braking,
            lambda books, share: share * books.braking / (books.electric / books.back),
            lambda books, back: np.minimum(books.braking, books.back),
        ),
        Phrase(
            "range_lost", "of the range is lost when regeneration is gone (the same number as energy saved, s)",
            "s = 1 − net / friction-only net = (back + spared) / (out + spared)", "%",
            lambda books, back: (back + books.spared) / (books.out + books.spared),
            lambda books, share: share * (books.out + books.spared) - books.spared,
            lambda books, back: books.out + books.spared,
        ),
        Phrase(
            "display_km", "more on the range display, if it reckons with this drive's consumption",
            "back / (net / distance)", "km",
            lambda books, back: back * books.distance_km / (books.out - books.back),
            lambda books, km: km * (books.out - books.back) / books.distance_km,
            lambda books, back: _with_a_range(books, books.out - books.back),
        ),
    )
}  # fmt: skip


def _or_none(phrase: Phrase, books: Books, back: Any) -> Any:
    return phrase.share(books, back) if np.all(phrase.base(books, back) > 0) else None


def said(books: Books, phrase: str) -> Any:
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
        raise InputError("denominator-means-nothing", phrase=phrase, words=given.words)
    back = given.back(books, value)
    if not back >= -1e-9 * books.out:
        raise InputError(
            "less-than-nothing-came-back", given=Quantity(value, "", 6, trimmed=True), words=given.words,
            least=Quantity(given.share(books, 0.0), "", 3, trimmed=True),
        )  # fmt: skip
    return {name: _or_none(this, books, back) for name, this in PHRASES.items()}


HILL_LOOP: dict[str, Any] = {
    "source": "ADAC, 2024: pass road driven up and down again on a dynamometer, car of 1180 kg (press, second-hand)",
    "up_kwh_per_100_km": 26.4,
    "down_kwh_per_100_km": -7.1,
    "mean_kwh_per_100_km": 9.7,
    "headline_share": 0.35,
}
"""Published figures of a light car on a hill: as shares of a climb, the headline and the two energies do not agree."""


def worked_example() -> dict[str, Any]:
    """The hill loop's own two energies in every phrase they allow, beside its headline.

    Energy that the motor fed directly was not published and is left at nothing, so here r and s are the same.
    """
    up, down = HILL_LOOP["up_kwh_per_100_km"], -HILL_LOOP["down_kwh_per_100_km"]
    books = Books(
        out=up, back=down, spared=0.0, braking=0.0, electric=0.0, climb_out=up, descent_back=down, distance_km=200.0
    )
    return HILL_LOOP | {
        "mean_found_kwh_per_100_km": (up - down) / 2,
        "phrases": convert(books, "of_climb", down / up),
        "headline_as_share_of_climb_needs_kwh": PHRASES["of_climb"].back(books, HILL_LOOP["headline_share"]),
    }
