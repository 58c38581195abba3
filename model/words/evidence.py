"""What has been measured of a claim, in words: its verdict, both verdicts in one sentence, and each number."""

from __future__ import annotations

import math

from model.claims.evidence import CONTRADICTS, MIXED, SUPPORTS, Beside, Evidence, Measurement, evidence
from model.claims.questions import Question
from model.claims.verdicts import BEYOND, CONDITIONS, FALSE, HOLDS, NOT_AS_SAID, Answer
from model.describe.figures import Several
from model.describe.messages import parts_of
from model.kernel.phrases import PHRASES
from model.words.claim_inputs import noun
from model.words.claim_numbers import shown, with_unit
from model.words.quantities import Display, capital

TOGETHER = {
    (SUPPORTS, HOLDS): "agree", (CONTRADICTS, FALSE): "agree", (CONTRADICTS, NOT_AS_SAID): "agree",
    (MIXED, CONDITIONS): "agree", (SUPPORTS, FALSE): "differ", (SUPPORTS, NOT_AS_SAID): "differ",
    (CONTRADICTS, HOLDS): "differ", (MIXED, HOLDS): "differ", (MIXED, FALSE): "differ", (MIXED, NOT_AS_SAID): "differ",
}  # fmt: skip
"""Whether both verdicts say the same or the opposite; neither where they do not stand here."""


def measured(found: Evidence, display: Display) -> str:
    """The verdict of the measurements, as a sentence."""
    return display.say("claim-measured", verdict=found.verdict)


def both(answer: Answer, display: Display) -> str:
    """One sentence that holds the verdict of the measurements and that of the model."""
    found = evidence(answer.question)
    if answer.verdict == BEYOND:
        return f"{measured(found, display)} {display.say('claim-heading-beyond')}"
    together = TOGETHER.get((found.verdict, answer.verdict), "neither")
    return display.say("claim-both", measured=found.verdict, together=together, verdict=answer.verdict)


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
    high = with_unit(shown(measurement.high, measurement.unit, display), measurement.unit, display)
    if math.isinf(measurement.low):
        return display.say("measured-at-most", high=high, ruled=measurement.kind == "regulation")
    if measurement.low == measurement.high:
        return high
    return display.say("span", low=shown(measurement.low, measurement.unit, display), high=high)


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
