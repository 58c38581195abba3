"""What has been measured of a claim, in words: its verdict, both verdicts in one sentence, and each number."""

from __future__ import annotations

import math

from model.claims.evidence import CONTRADICTS, MIXED, SUPPORTS, Beside, Evidence, Measurement, evidence
from model.claims.inputs import INPUTS
from model.claims.questions import Question
from model.claims.verdicts import CONDITIONS, FALSE, HOLDS, NOT_AS_SAID, Answer
from model.describe.figures import Several
from model.kernel.phrases import PHRASES
from model.words.claim_numbers import shown, with_unit
from model.words.entries import name_of
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
    one = beside.measurement
    share = display.say("phrase", phrase=one.of) if one.of in PHRASES else one.of
    apart = Several(tuple(name_of(INPUTS[key], display) for key in beside.apart) or ("",))
    return display.say("claim-why-not", why=beside.why_not, of=share, apart=apart, kind=one.kind)


def number(one: Measurement, display: Display) -> str:
    """A published number with its unit."""
    high = with_unit(shown(one.high, one.unit, display), one.unit, display)
    if math.isinf(one.low):
        return display.say("measured-at-most", high=high)
    return high if one.low == one.high else display.say("span", low=shown(one.low, one.unit, display), high=high)


def told(beside: Beside, source: str, display: Display) -> str:
    """A measurement with its source, in words."""
    one = beside.measurement
    verdict = capital(verdict_of_one(beside, display))
    said = {"what": capital(one.what), "source": source, "kind": one.kind, "verdict": verdict}
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
    one = beside.measurement
    value = one.high if math.isinf(one.low) or one.low == one.high else [one.low, one.high]
    return {
        "value": value,
        "at_most": math.isinf(one.low),
        "unit": one.unit,
        "of": one.of,
        "what": one.what,
        "kind": one.kind,
        "source": one.source.name,
        "date": one.source.published,
        "address": one.source.address,
        "read": one.source.read or one.source.how,
        "counts": not beside.why_not,
        "says": beside.says,
        "why_not": "" if not beside.why_not else verdict_of_one(beside, display),
    }
