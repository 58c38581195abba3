"""What has been measured of a claim, in words: its verdict beside the model's, and each number."""

from __future__ import annotations

import math

from model.claims.evidence import NONE, Beside, Evidence, Measurement, evidence, standing
from model.claims.questions import OF_ALL_RUNS, Question
from model.claims.verdicts import BEYOND, Answer, deciding
from model.describe.figures import Several
from model.describe.messages import parts_of
from model.kernel.phrases import PHRASES
from model.words.claim_inputs import noun
from model.words.claim_numbers import number_words, shown, span_words, with_unit
from model.words.quantities import Display, capital

MECHANICS = "mechanics"
"""The kind of a number that follows from mechanics, and asks for no measurement."""


def measured(found: Evidence, display: Display) -> str:
    """The verdict of the measurements, as a sentence."""
    return display.say("claim-measured", verdict=found.verdict)


def by_model(answer: Answer, display: Display) -> str:
    """The model's verdict as a sentence; that it is too low, and what is so, where that lies above what was claimed."""
    if answer.verdict == BEYOND:
        return display.say("claim-heading-beyond")
    unit, relation = answer.question.claim.unit, answer.question.relation
    if not answer.too_low:
        return display.say("claim-heading", verdict=answer.verdict)
    if relation in OF_ALL_RUNS:
        by = "top" if relation == "up_to" else "mean"
        given = number_words(deciding(answer.values, relation), unit, display)
        return display.say("claim-heading-too-low", by=by, given=given)
    return display.say("claim-heading-too-low", by="runs", given=span_words(*answer.band(answer.values), unit, display))


def beside_model(answer: Answer, display: Display) -> str:
    """What has been measured, beside the model's verdict, as a sentence."""
    found = evidence(answer.question)
    verdict = MECHANICS if found.verdict == NONE and answer.error.kind == MECHANICS else found.verdict
    numbers = span_of(*found.ends, answer.question.claim.unit, display) if found.same else ""
    return display.say("claim-heading-measured", measured=verdict, stands=standing(answer), numbers=numbers)


def both(answer: Answer, display: Display) -> str:
    """The verdict line: the model's verdict, and what has been measured."""
    return f"{by_model(answer, display)} {beside_model(answer, display)}"


def measured_rule(asked: Question, display: Display) -> str:
    """The rule by which measurements are judged, as printed."""
    relation = asked.relation if asked.relation in ("up_to", "on_average") else "other"
    return display.say("claim-measured-rule", relation=relation, always=asked.claim.always)


def verdict_of_one(beside: Beside, display: Display) -> str:
    """What a measurement says of the claim, or why it does not count."""
    if not beside.why_not:
        return display.say("claim-one-says", says=beside.says)
    measurement = beside.measurement
    share = display.say("phrase", phrase=measurement.of) if measurement.of in PHRASES else measurement.of
    apart = Several(tuple(noun(key, display) for key in beside.apart) or ("",))
    return display.say("claim-why-not", why=beside.why_not, of=share, apart=apart, kind=measurement.kind)


def measured_what(measurement: Measurement, display: Display) -> str:
    """What was measured, as it stands within a sentence."""
    return display.say(measurement.message)


def as_published(measurement: Measurement, display: Display) -> str:
    """What a source says in place of a number; empty where it gives one."""
    if "number" not in (parts_of(measurement.message, display.language) or ()):
        return ""
    message = f"{measurement.message}.number"
    return display.say(message)


def number(measurement: Measurement, display: Display) -> str:
    """A published number with its unit, or in its source's words where it gives none."""
    if said := as_published(measurement, display):
        return said
    ruled = measurement.kind == "regulation"
    return span_of(measurement.low, measurement.high, measurement.unit, display, ruled=ruled)


def span_of(low: float, high: float, unit: str, display: Display, ruled: bool = False) -> str:
    """Published numbers with their unit; only the most where it alone is known."""
    most = with_unit(shown(high, unit, display), unit, display)
    if math.isinf(low):
        return display.say("measured-at-most", high=most, ruled=ruled)
    return most if low == high else display.say("span", low=shown(low, unit, display), high=most)


def row_text(beside: Beside, source: str, display: Display) -> str:
    """A measurement with its source, in words."""
    measurement = beside.measurement
    verdict, what = capital(verdict_of_one(beside, display)), capital(measured_what(measurement, display))
    said = {"what": what, "source": source, "kind": measurement.kind, "verdict": verdict}
    return display.say("claim-measurement", **said)


def evidence_answers(answer: Answer, display: Display) -> dict[str, object]:
    """What has been measured, as the command line and a file have it."""
    asked = answer.question
    found = evidence(asked)
    return {
        "measured": {
            "verdict": found.verdict,
            "sentence": measured(found, display),
            "rule": measured_rule(asked, display),
        },
        "both": both(answer, display),
        "sources": [_row(beside, display) for beside in (*found.same, *found.near)],
    }


def _row(beside: Beside, display: Display) -> dict[str, object]:
    measurement = beside.measurement
    low, high = measurement.low, measurement.high
    value = high if math.isinf(low) or low == high else [low, high]
    return {
        "value": value,
        "at_most": math.isinf(measurement.low),
        "unit": measurement.unit,
        "of": measurement.of,
        "what": measured_what(measurement, display),
        "kind": measurement.kind,
        "source": measurement.source.name,
        "date": measurement.source.published,
        "address": measurement.source.address,
        "read": measurement.source.read or measurement.source.how,
        "counts": not beside.why_not,
        "says": beside.says,
        "why_not": "" if not beside.why_not else verdict_of_one(beside, display),
    }
