"""A tested claim as the command line and a file have it: everything to print with, in words and numbers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict

from model import MODEL_DATE, MODEL_VERSION
from model.claims.draws import DRAWN_TOGETHER
from model.claims.inputs import INPUTS, Open
from model.claims.specification import nested
from model.claims.verdicts import Answer
from model.describe.fields import Entry, Field
from model.sampling.uncertainty import SEED
from model.words.claim_inputs import part_words
from model.words.claim_numbers import ENGLISH
from model.words.claims import (
    changed_words,
    left_out,
    made,
    of_list,
    quotation,
    rule,
    sentence,
    short_quotation,
    text,
    varied,
    varied_figures,
    verdict_words,
    what,
)
from model.words.entries import label_of
from model.words.evidence import evidence_answers
from model.words.quantities import Display
from model.words.reading import left_aside


def needs(answer: Answer, display: Display = ENGLISH) -> dict[str, object]:
    """What would have to be true: the region, and the claim by the two inputs that matter most."""
    named, inside, _ = answer.region
    two = answer.by_two
    return {
        "where": {bins.key: part_words(INPUTS[bins.key], bins.part(steps), display) for bins, steps in named},
        "share_there": answer.region_share,
        "share_of_range_there": float(inside.mean()),
        "matter_most": [
            {
                "input": bins.key,
                "label": label_of(INPUTS[bins.key], display),
                "steps": [part_words(INPUTS[bins.key], step, display) for step in bins.steps],
            }
            for bins in answer.bins[:2]
        ],
        **({"share_true": two.shares, "median": two.medians} if two else {}),
    }


def _tornado(answer: Answer, display: Display) -> list[dict[str, Entry]]:
    return [
        {"input": lever.key, "label": label_of(INPUTS[lever.key], display), "unit": INPUTS[lever.key].unit,
         "at_low": lever.at_low, "low": lever.low, "base": lever.base, "high": lever.high, "at_high": lever.at_high}
        for lever in answer.tornado
    ]  # fmt: skip


def run_answers(answer: Answer, run: str, display: Display = ENGLISH) -> dict[str, object]:
    """One run, by its row from 1 in the table of runs, driven again by itself: what was drawn for it, and its number.

    Raises
    ------
    InputError
        Where there is no such row.
    """
    row = int(Field("run", "count", "", "claim-run", 1, len(answer.values)).number(run))
    drawn = {key: values[row - 1 : row].tolist()[0] for key, values in answer.draws.columns.items()}
    low, high = answer.question.bounds
    return {
        "id": answer.question.claim.id,
        "text": text(answer.question, display),
        "run": row,
        # a figure that a car of its kind has not is none of this run's
        "drawn": {key: value for key, value in drawn.items() if value == value and value is not None},
        "number": (number := answer.again(row - 1)),
        "unit": answer.question.claim.unit,
        "claim_true": low <= number <= high,
        "model_version": MODEL_VERSION,
        "model_date": MODEL_DATE,
    }


def claim_answers(answer: Answer, display: Display = ENGLISH) -> dict[str, object]:
    """Everything to print with, as the command line and a file have it."""
    asked, claim = answer.question, answer.question.claim

    def said(over: Mapping[str, Open]) -> dict[str, str]:
        return {key: part_words(INPUTS[key], run_over.part, display) for key, run_over in over.items()}

    return {
        "id": claim.id,
        "text": text(asked, display),
        "reading": made(asked, display) if asked.own else of_list(claim, "reading", display) if asked.as_listed else "",
        **({"left_aside": left_aside(asked.claim.text)} if asked.own and asked.claim.text else {}),
        **({"words_changed": changed} if (changed := changed_words(asked, display)) else {}),
        "what": what(asked, display),
        "unit": claim.unit,
        "number": list(asked.number),
        "relation": asked.relation,
        **({"specification": nested(asked.given)} if asked.own else {"settings": dict(asked.given)}),
        "said": said({key: over for key, over in asked.declared.items() if not over.varies} | asked.said),
        "not_said": said(asked.not_said),
        "verdict": verdict_words(answer, display),
        "rule": rule(answer, display),
        "quantiles": answer.quantiles,
        "share_of_range": answer.share,
        "share_of_whole_range": answer.whole_share,
        "needs": needs(answer, display),
        "tornado": _tornado(answer, display),
        "denominators": list(claim.denominators),
        "left_out": left_out(claim, display),
        **evidence_answers(answer, display),
        "sentence": sentence(answer, display),
        "quotes": {"short": short_quotation(answer, display), "long": quotation(answer, display)},
        "method": {
            "runs": len(answer.values),
            "left_out_runs": answer.left_out,
            "seed": SEED,
            "draw": display.say("claim-method-draw"),
            "drawn_together": DRAWN_TOGETHER,
            "varied": varied(answer, display),
            "model_error": {**asdict(answer.error), "could_turn": list(answer.close_by)},
            "figures": [asdict(figure) for figure in varied_figures(answer, display)],
        },
        "model_version": MODEL_VERSION,
        "model_date": MODEL_DATE,
    }
