"""What has been measured of a claim: ``assets/measurements.csv``, and the verdict that it gives by plain rules.

A measurement is of a quantity, under the conditions that are known of it. It counts for a claim if it measures what the
claim is about, as the same share of the same thing, in the same unit, and if its conditions are among those of the
claim. Whatever else bears on it stands near it, with the reason why it does not count.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from model.claims.inputs import INPUTS, Open
from model.claims.quantities import QUANTITIES
from model.claims.questions import Question
from model.claims.verdicts import CONDITIONS, FALSE, HOLDS, NOT_AS_SAID, Answer
from model.describe.fields import Entry, InputError
from model.describe.messages import parts_of
from model.describe.sources import Source, sources
from model.describe.tables import Row, rows
from model.traces.cycles import LABORATORY

WORDS = "assets/words/en/measurements.ftl"
KINDS = (
    "measured", "press on measurements", "published by an authority", "quoted second-hand", "regulation", "computed"
)  # fmt: skip
MEASURED = KINDS[:3]
"""Kinds that count; what is ruled, computed or only quoted by others stands near."""
COUNTS = ("each", "mean")
"""Whether every number from low to high was found in some case, or the number is a mean of cases."""
NEAR_ENOUGH = {"°C": 1.0}
"""How far a measurement's condition may lie from the claim's, by unit; 20 °F is taken for −7 °C."""

SUPPORTS, CONTRADICTS, MIXED, UNSETTLED, NONE = "supports", "contradicts", "mixed", "unsettled", "none"
AGREES, DIFFERS, OTHER_SIDE, NEITHER = "agrees", "differs", "other-side", "neither"
"""How the measurements' verdict stands to the model's; on the other side where one lies above what is claimed and the
other below."""
TOGETHER = {
    (SUPPORTS, HOLDS): AGREES, (CONTRADICTS, FALSE): AGREES, (CONTRADICTS, NOT_AS_SAID): AGREES,
    (MIXED, CONDITIONS): AGREES, (SUPPORTS, FALSE): DIFFERS, (SUPPORTS, NOT_AS_SAID): DIFFERS,
    (CONTRADICTS, HOLDS): DIFFERS, (MIXED, HOLDS): DIFFERS, (MIXED, FALSE): DIFFERS, (MIXED, NOT_AS_SAID): DIFFERS,
}  # fmt: skip
"""Whether both verdicts say the same or the opposite; neither where they do not stand here."""


@dataclass(frozen=True)
class Measurement:
    """One measurement: a number from `low` to `high` [`unit`] of a quantity.

    `low` is minus infinity where only the most is published. `of` is the thing that it is a share of, `conditions` the
    values of inputs that are known of it, `near` the quantities that it bears on without being one of them.
    """

    id: str
    source: Source
    quantity: str
    of: str
    low: float
    high: float
    unit: str
    counts: str
    conditions: Mapping[str, tuple[Entry, ...]]
    kind: str
    near: tuple[str, ...]

    @property
    def message(self) -> str:
        """The message that says what was measured."""
        return f"measurement-{self.id}"


def _measurement(row: Row) -> Measurement:
    for quantity in filter(None, (row["quantity"], *row["near"].split())):
        if quantity not in QUANTITIES:
            raise row.wrong(f"quantity {quantity!r} is none that claims are about")
    if not row["quantity"] and not row["near"]:
        raise row.wrong("it is neither of a quantity that claims are about nor near one")
    conditions = {}
    for pair in row["conditions"].split():
        key, _, values = pair.partition("=")
        if key not in INPUTS:
            raise row.wrong(f"condition {key!r} is nothing that a claim can name")
        try:
            conditions[key] = tuple(INPUTS[key].parse(value) for value in values.split("|"))
        except InputError as refused:
            raise row.wrong(str(refused).removesuffix(".")) from None
    low, high = row.number("low") if row["low"] else -math.inf, row.number("high")
    if low > high:
        raise row.wrong(f"low {row['low']} is above high {row['high']}")
    measurement = Measurement(
        row["id"], sources()[row.one_of("source", sources())], row["quantity"], row["of"], low, high, row["unit"],
        row.one_of("counts", COUNTS), conditions, row.one_of("kind", KINDS), tuple(row["near"].split()),
    )  # fmt: skip
    if parts_of(measurement.message) is None:
        raise row.wrong(f"its words are missing, the message {measurement.message} in {WORDS}")
    return measurement


@cache
def measurements() -> tuple[Measurement, ...]:
    """Every measurement; raises `TableError` where a row cannot be used."""
    return tuple(_measurement(row) for row in rows("measurements.csv", once=("id",)))


@dataclass(frozen=True)
class Beside:
    """A measurement beside a claim.

    `why_not` says why it does not count: empty, ``other-quantity``, ``other-share``, ``other-unit``,
    ``other-conditions`` (which are `apart`), ``not-measured``, ``no-mean``, or ``compared`` where the claim is of a
    difference. `says` is what it says where it counts: ``supports``, ``contradicts``, or ``mixed``, in part.
    """

    measurement: Measurement
    why_not: str = ""
    apart: tuple[str, ...] = ()
    says: str = ""


@dataclass(frozen=True)
class Evidence:
    """What has been measured of a claim: what counts, what is near, and the verdict of what counts."""

    same: tuple[Beside, ...]
    near: tuple[Beside, ...]
    verdict: str

    @property
    def ends(self) -> tuple[float, float]:
        """The lowest and the highest that was measured [the claim's unit]; minus infinity where the most alone is."""
        lows = [beside.measurement.low for beside in self.same]
        known = [low for low in lows if math.isfinite(low)]
        return min(known or lows), max(beside.measurement.high for beside in self.same)


def _apart(asked: Question, measurement: Measurement) -> tuple[str, ...]:
    """The conditions of a measurement that are none of the claim's."""
    apart = []
    for key, values in measurement.conditions.items():
        if key in asked.declared:
            run_over = asked.declared[key]
            if run_over.band:
                slack = NEAR_ENOUGH.get(INPUTS[key].unit, 0.0)
                low, high = run_over.numbers[0] - slack, run_over.numbers[-1] + slack
                met = any(low <= value <= high for value in Open(values).numbers)
            else:
                met = any(_alike(key, value, other) for value in values for other in run_over.values)
        else:
            # what a claim does not speak of is as in a laboratory
            usual = getattr(LABORATORY, key, None)
            met = usual is None or any(_alike(key, value, usual) for value in values)
        if not met:
            apart.append(key)
    return tuple(apart)


def _alike(key: str, value: Entry, other: Entry) -> bool:
    if INPUTS[key].kind == "number" and isinstance(value, int | float) and isinstance(other, int | float):
        return abs(value - other) <= NEAR_ENOUGH.get(INPUTS[key].unit, 0.0)
    return value == other


def _share_of(asked: Question) -> str:
    return str(asked.declared["denominator"].base) if "denominator" in asked.declared else ""


def _beside(asked: Question, measurement: Measurement) -> Beside | None:
    """The measurement beside the claim; None where it has nothing to do with it."""
    quantity = asked.claim.quantity
    if measurement.quantity != quantity or asked.claim.compared:
        return Beside(measurement, "other-quantity") if quantity in (measurement.quantity, *measurement.near) else None
    if "denominator" in asked.declared and measurement.of != _share_of(asked):
        return Beside(measurement, "other-share")
    if measurement.unit != asked.claim.unit:
        return Beside(measurement, "other-unit")
    if measurement.kind not in MEASURED:
        return Beside(measurement, "not-measured")
    if apart := _apart(asked, measurement):
        return Beside(measurement, "other-conditions", apart)
    if asked.relation == "on_average" and measurement.counts != "mean":
        return Beside(measurement, "no-mean")
    return Beside(measurement, says=says(measurement, *asked.bounds))


def says(measurement: Measurement, least: float, most: float) -> str:
    """What one measurement says of a number from `least` to `most` [its unit]."""
    if least <= measurement.low and measurement.high <= most:
        return SUPPORTS
    return CONTRADICTS if measurement.high < least or measurement.low > most else MIXED


def verdict_of_measured(asked: Question, same: tuple[Beside, ...]) -> str:
    """The verdict of what counts, by the printed rule.

    All support: supports. All contradict: contradicts. Else mixed. A claim of a top (“up to”) is about the highest that
    was measured: more than claimed contradicts, as much supports, less leaves it open, since few were measured. A claim
    of “always” is refuted by one that contradicts, and left open by any number that agree.
    """
    if not same:
        return NONE
    if asked.relation == "up_to":
        least, most = asked.top_bounds
        highest = max(same_thing.measurement.high for same_thing in same)
        return CONTRADICTS if highest > most else SUPPORTS if highest >= least else UNSETTLED
    found = {same_thing.says for same_thing in same}
    if asked.claim.always:
        return CONTRADICTS if found - {SUPPORTS} else UNSETTLED
    return found.pop() if len(found) == 1 else MIXED


def evidence(asked: Question) -> Evidence:
    """What has been measured of a claim."""
    found = [beside for measurement in measurements() if (beside := _beside(asked, measurement)) is not None]
    same = tuple(each for each in found if not each.why_not)
    return Evidence(same, tuple(each for each in found if each.why_not), verdict_of_measured(asked, same))


def standing(answer: Answer) -> str:
    """How what has been measured stands to the model's verdict."""
    found = evidence(answer.question)
    if found.same and answer.verdict in (FALSE, NOT_AS_SAID):
        least, most = answer.question.top_bounds if answer.question.relation == "up_to" else answer.question.bounds
        low, high = found.ends
        if (answer.too_low and high < least) or (answer.too_high and low > most):
            return OTHER_SIDE
    return TOGETHER.get((found.verdict, answer.verdict), NEITHER)
