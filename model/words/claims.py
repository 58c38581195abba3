"""A tested claim in words: the verdict, why, what was varied, and the rule; metric unless displayed otherwise."""

from __future__ import annotations

from dataclasses import dataclass

from model import MODEL_VERSION
from model.claims.collection import Claim
from model.claims.draws import DRAWN_TOGETHER, EVENLY
from model.claims.inputs import INPUTS, Extent
from model.claims.questions import OF_ALL_RUNS, Question
from model.claims.regions import LEAST_REGION, MOST_CONDITIONS
from model.claims.verdicts import BEYOND, CLOSE, CONDITIONS, FALSE, HARDLY, NOT_AS_SAID, UNJUDGED, Answer, deciding
from model.describe.fields import Entry
from model.describe.figures import Quantity, Several, Share
from model.describe.messages import parts_of
from model.words.claim_inputs import condition, noun, part_words
from model.words.claim_numbers import ENGLISH, number_words, shown, span_and_median, span_words, with_unit
from model.words.evidence import beside_model
from model.words.quantities import Display, capital
from model.words.reading import words_stand


def what(asked: Question, display: Display = ENGLISH) -> str:
    """What is tested, in words."""
    claim = asked.claim
    if asked.own:
        counted = display.say("own-counted", quantity=claim.counted)
        if not claim.compared:
            return counted
        other = Several(tuple(_other_case(key, value, display) for key, value in claim.against.items()))
        return display.say("claim-compared", what=counted, compared=claim.compared, other=other)
    if "denominator" in asked.declared:
        return display.say("own-counted", quantity=str(asked.declared["denominator"].base))
    message = f"{claim.message}.what"
    named = {key: part_words(INPUTS[key], asked.declared[key].part, display) for key in claim.names}
    return display.say(message, **named)


def _other_case(key: str, value: Entry, display: Display) -> str:
    if key == "hybrid":
        return display.say("claim-battery-car")
    if key == "trailer_kg" and value == 0:
        return display.say("claim-no-trailer")
    return condition(INPUTS[key], Extent((value,)), display)


def claimed(asked: Question, display: Display = ENGLISH, always: bool | None = None) -> str:
    """What the quantity is claimed to be, in words; `always` only if it is told otherwise than the claim has it."""
    unit, relation = asked.claim.unit, asked.relation
    low, high = asked.bounds
    said = {"number": with_unit(shown(asked.number[0], unit, display), unit, display),
            "low": shown(low, unit, display),
            "high": with_unit(shown(high, unit, display), unit, display)}  # fmt: skip
    if asked.number[0] == 0 and relation in ("at_least", "at_most"):
        relation = "zero-or-more" if relation == "at_least" else "zero-or-less"
    always = asked.claim.always if always is None else always
    return display.say("claim-claimed", relation=relation, always=always, **said)


def runs_do(asked: Question, display: Display = ENGLISH) -> str:
    """What runs do that make a claim true, after “the more runs”."""
    unit, relation, (low, high) = asked.claim.unit, asked.relation, asked.bounds
    if relation in ("at_least", "at_most") and asked.number[0] == 0:
        relation = "zero-or-more" if relation == "at_least" else "zero-or-less"
    elif relation not in ("at_least", "at_most", "up_to"):
        relation = "between"
    return display.say("claim-grid-runs", relation=relation, low=shown(low, unit, display),
                       number=with_unit(shown(asked.number[0], unit, display), unit, display),
                       high=with_unit(shown(high, unit, display), unit, display))  # fmt: skip


def where(asked: Question, display: Display = ENGLISH) -> str:
    """The conditions of the test, before a sentence: “in town, with a blended pedal, ”, or nothing."""
    claim = asked.claim
    within = {key: asked.declared[key].within({**claim.open, **claim.scope}[key]) for key in claim.words}
    places = [display.say("claim-place", place=word) for key, word in claim.words.items() if within[key]]
    said = {key: over for key, over in asked.declared.items()
            if (key in asked.said or key in claim.scope) and not (asked.own and within.get(key))}  # fmt: skip
    conditions = sorted(
        (condition(INPUTS[key], over.part, display) for key, over in said.items()
         if key != "denominator" and key not in claim.names),
        key=len,
    )  # fmt: skip
    named = "both" if places and conditions else "places" if places else "conditions"
    if not places and not conditions:
        return ""
    given = {"places": Several(tuple(places), ""), "conditions": Several(tuple(conditions))}
    return f"{display.say('claim-where', named=named, **given)} "


def made(asked: Question, display: Display = ENGLISH) -> str:
    """What is tested, as a sentence; of what the model cannot judge, what it can give."""
    given = {"where": where(asked, display), "what": what(asked, display)}
    if asked.beyond:
        return capital(display.say("claim-made-beyond", **given))
    return capital(display.say("claim-made", claimed=claimed(asked, display), **given))


def text(asked: Question, display: Display = ENGLISH) -> str:
    """The claim as a sentence that says what is tested: its own where that does, else one made from the test."""
    return words_of(asked.claim, display) if words_stand(asked) else made(asked, display)


def words_of(claim: Claim, display: Display = ENGLISH) -> str:
    """The claim in its own words, or in those of the list."""
    return claim.text if claim.counted else display.say(claim.message)


def of_list(claim: Claim, part: str, display: Display = ENGLISH) -> str:
    """What else the list says of a claim, as an attribute of its message; empty where it says nothing of that."""
    if claim.counted or part not in (parts_of(claim.message, display.language) or ()):
        return ""
    message = f"{claim.message}.{part}"
    return display.say(message)


def left_out(claim: Claim, display: Display = ENGLISH) -> str:
    """What the model leaves out of a claim."""
    return display.say("own-left-out", quantity=claim.counted) if claim.counted else of_list(claim, "left-out", display)


def changed_words(asked: Question, display: Display = ENGLISH) -> str:
    """That one's own words no longer say what is tested; empty where they do, or where there are none."""
    if not asked.own or not asked.claim.text or words_stand(asked):
        return ""
    return display.say("own-words-changed", words=asked.claim.text)


def read_as(asked: Question, display: Display = ENGLISH) -> str:
    """How a claim in own words was read, with what was assumed; empty where the words do not stand."""
    if not asked.own or not words_stand(asked):
        return ""
    if asked.beyond:
        return display.say("claim-read-as-beyond", instead=made(asked, display).removesuffix("."))
    return display.say("claim-read-as", reading=made(asked, display))


def beyond(asked: Question, display: Display) -> str:
    """Why the claim itself is beyond the model."""
    if asked.own:
        return display.say("claim-own-beyond", beyond=asked.claim.counted)
    return of_list(asked.claim, "beyond", display)


def verdict_words(answer: Answer, display: Display = ENGLISH) -> str:
    """The verdict within a sentence."""
    return display.say("claim-verdict", verdict=answer.verdict)


def conditions(answer: Answer, display: Display = ENGLISH) -> list[str]:
    """The conditions that can be named, each as a noun, lists at the end."""
    return sorted((condition(INPUTS[bins.key], bins.part(steps), display) for bins, steps in answer.region[0]), key=len)


def reason(answer: Answer, subject: str, display: Display, here: str | None = None) -> str:
    """Why the verdict is what it is, in numbers of the claim's unit; of a subject with its verb.

    `here` is what was said, before a sentence; nothing where it stands beside this already.
    """
    asked, unit = answer.question, answer.question.claim.unit
    here = where(asked, display) if here is None else here
    often = {"often": answer.how_often, "nearest": nearest(answer, display)}
    if answer.verdict == BEYOND:
        instead = made(asked, display).removesuffix(".")
        why = beyond(asked, display)
        return display.say("claim-reason-beyond", beyond=why, instead=instead, band=band(answer, display))
    if answer.verdict == CLOSE:
        close: dict[str, str | int] = {"by": answer.close_by[0], "runs": len(answer.values)}
        close["error"] = error_words(answer, display)
        if asked.relation not in OF_ALL_RUNS:
            return display.say("claim-reason-close", where=here, subject=subject, **often, **close)
        found = number_words(deciding(answer.values, asked.relation), unit, display)
        counted = what(asked, display)
        return display.say("claim-reason-close-number", where=here, what=counted, found=found, **close)
    if asked.relation in OF_ALL_RUNS:
        found = number_words(deciding(answer.values, asked.relation), unit, display)
        given = {"where": here, "what": what(asked, display), "found": found}
        if asked.relation != "on_average":
            beside = {NOT_AS_SAID: "more", FALSE: "less"}.get(answer.verdict, "as-said")
            return display.say("claim-reason-top", beside=beside, **given)
        if not answer.narrower:
            return display.say("claim-reason-mean", **given)
        whole = number_words(deciding(answer.whole, asked.relation), unit, display)
        return display.say("claim-reason-mean-narrower", whole=whole, **given)
    if answer.verdict == CONDITIONS and answer.narrower:
        whole = span_words(*answer.band(answer.whole), unit, display)
        return display.say("claim-reason-narrower", where=here, subject=subject, whole=whole, **often)
    if answer.verdict == CONDITIONS:
        return display.say("claim-reason-conditions", where=here, subject=subject, **_there(answer, display))
    if answer.verdict == NOT_AS_SAID:
        miss = with_unit(shown(answer.farthest_miss, unit, display), unit, display)
        missed = {"where": here, "what": what(asked, display), "miss": miss}
        if not answer.region[0]:
            return display.say("claim-reason-not-always", **missed)
        is_so = claimed(asked, display, always=False)
        return display.say("claim-reason-not-always-but-there", claimed=is_so, **missed, **_there(answer, display))
    if answer.verdict == UNJUDGED:
        first, second = ([noun(bins.key, display) for bins in answer.bins[:2]] + ["", ""])[:2]
        factors = "two" if second else "one" if first else "none"
        named = {"factors": factors, "first": first, "second": second}
        return display.say("claim-reason-unjudged", where=here, subject=subject, **named)
    return display.say("claim-reason", where=here, subject=subject, **often)


def _there(answer: Answer, display: Display) -> dict[str, Several | str]:
    """The conditions that can be named, and what the model gives under them."""
    given = answer.band(answer.values[answer.region[1]])
    return {
        "conditions": Several(tuple(conditions(answer, display))),
        "given": span_words(*given, answer.question.claim.unit, display),
    }


def error_words(answer: Answer, display: Display) -> str:
    """How far off the model was found to be in this number."""
    error = answer.error
    if error.points:
        return display.figure(Quantity(error.points, "points"))
    return display.figure(Share(error.share))


def model_error(answer: Answer, display: Display) -> str:
    """The same as a sentence, with what it is measured on."""
    error = answer.error
    size = error_words(answer, display)
    return display.say("claim-model-error", kind=error.kind, error=size, comparisons=error.comparisons)


@dataclass(frozen=True)
class VariedFigure:
    """A figure that was varied: over what, in words, and how."""

    key: str
    over: str
    how: str


def varied_figures(answer: Answer, display: Display = ENGLISH) -> list[VariedFigure]:
    """Every figure that was varied, in the order of its declaration: what was not said, then the cars' own."""
    declared, drawn = answer.question.not_said, answer.draws
    figures = [
        VariedFigure(key, part_words(INPUTS[key], run_over.part, display),
                     display.say("claim-figures-how", how="band" if run_over.band else "list"))
        for key, run_over in declared.items()
    ]  # fmt: skip
    for key in INPUTS:
        if key in drawn.columns and key not in answer.question.declared and INPUTS[key].kind == "number":
            low, high = float(drawn[key].min()), float(drawn[key].max())
            if low < high:
                how = "together" if key in DRAWN_TOGETHER else "even" if key in EVENLY else "class"
                over = part_words(INPUTS[key], Extent((low, high), stretch=True), display)
                figures.append(VariedFigure(key, over, display.say("claim-figures-how", how=how)))
    return figures


def nearest(answer: Answer, display: Display) -> str:
    """The runs that come nearest to a claim that is true in none."""
    unit, least, most = answer.question.claim.unit, float(answer.values.min()), float(answer.values.max())
    relation = answer.question.relation
    if relation not in ("at_least", "at_most"):
        return display.say("claim-nearest", relation="other", given=span_words(least, most, unit, display))
    end = most if relation == "at_least" else least
    return display.say("claim-nearest", relation=relation, given=with_unit(shown(end, unit, display), unit, display))


def band(answer: Answer, display: Display = ENGLISH) -> str:
    """The band of the runs and their median."""
    low, mid, high = (answer.quantiles[key] for key in ("0.05", "0.5", "0.95"))
    return span_and_median(low, mid, high, answer.question.claim.unit, display)


def varied(answer: Answer, display: Display) -> str:
    """What was varied, and how it was weighted."""
    keys, declared = list(answer.question.not_said), answer.question.declared
    bands, lists = (
        Several(tuple(noun(key, display) for key in keys if declared[key].band == of))
        for of in (True, False)
    )
    if not keys:
        return display.say("claim-varied-nothing")
    if not bands.items:
        return display.say("claim-varied-lists", lists=lists)
    if not lists.items:
        return display.say("claim-varied-bands", bands=bands)
    return display.say("claim-varied-both", lists=lists, bands=bands)


def share_of_design(answer: Answer, display: Display) -> str:
    """In how many of the runs the claim is true, and what that share is not; empty where it cannot be judged."""
    if answer.verdict == BEYOND:
        return ""
    share = answer.share
    how = "none" if share == 0 else "all" if share == 1 else "part"
    how = "hardly-any" if 0 < share < 0.01 else "nearly-all" if 0.99 < share < 1 else how
    return display.say("claim-share-of-design", how=how, share=Share(share, places=0))


def sentence(answer: Answer, display: Display = ENGLISH) -> str:
    """The verdict, its reason, the band and what was varied: sentences to quote, with their hedge."""
    found = _findings(answer, display)
    if answer.verdict == BEYOND:
        return display.say("claim-sentence-beyond", reason=found["reason"], varied=found["varied"])
    return display.say("claim-sentence", **found)


def quotation(answer: Answer, display: Display = ENGLISH) -> str:
    """The same of the claim as it was made."""
    asked, found = answer.question, _findings(answer, display)
    if answer.verdict == BEYOND:
        claim = text(asked, display).removesuffix(".")
        return display.say("claim-quotation-beyond", claim=claim, quoted=words_stand(asked), reason=found["reason"],
                           varied=found["varied"])  # fmt: skip
    if asked.own and words_stand(asked):
        # the reading has said the conditions and what is counted
        found |= {"reason": capital(reason(answer, display.say("claim-subject-read"), display, here=""))}
        words, reading = (said.removesuffix(".") for said in (text(asked, display), made(asked, display)))
        return display.say("claim-quotation-own", claim=words, reading=reading, **found)
    said = text(asked, display).removesuffix(".")
    return display.say("claim-quotation", claim=said, quoted=words_stand(asked), **found)


def short_quotation(answer: Answer, display: Display = ENGLISH) -> str:
    """The same in two lines: the claim with its verdict; the band, what was measured, and whose estimate it is."""
    asked = answer.question
    said, reading = (sentence.removesuffix(".") for sentence in (text(asked, display), made(asked, display)))
    if answer.verdict == BEYOND:
        first = display.say("print-quote-first", kind="beyond", claim=said, reading="", verdict=answer.verdict,
                            version=MODEL_VERSION)  # fmt: skip
        second = display.say("print-quote-second-beyond", instead=reading, band=band(answer, display))
        return f"{first}\n{second}"
    kind = "read" if asked.own and words_stand(asked) else "quoted" if words_stand(asked) else "made"
    first = display.say("print-quote-first", kind=kind, claim=said, reading=reading,
                        verdict=answer.verdict, version=MODEL_VERSION)  # fmt: skip
    second = display.say("print-quote-second", band=band(answer, display), measured=beside_model(answer, display))
    return f"{first}\n{second}"


def _findings(answer: Answer, display: Display) -> dict[str, str]:
    asked = answer.question
    subject = display.say("claim-subject", what=what(asked, display), claimed=claimed(asked, display))
    return {
        "verdict": answer.verdict,
        "measured": beside_model(answer, display),
        "reason": capital(reason(answer, subject, display)),
        "band": band(answer, display),
        "varied": varied(answer, display),
    }


def rule(answer: Answer, display: Display = ENGLISH) -> str:
    """The rule of the verdict, as printed."""
    asked, broadly = answer.question, answer.question.claim.broadly
    if answer.verdict == BEYOND:
        return display.say("claim-rule-beyond", beyond=beyond(asked, display))
    if asked.relation in OF_ALL_RUNS:
        low, high = asked.top_bounds
        unit = asked.claim.unit
        ends = {"low": shown(low, unit, display), "high": shown(high, unit, display)}
        span = with_unit(display.say("span", **ends), unit, display)
        of_all = display.say("claim-rule-mean" if asked.relation == "on_average" else "claim-rule-top", span=span)
        return " ".join((of_all, display.say("claim-rule-close"), model_error(answer, display)))
    side = asked.relation if asked.relation in ("at_least", "at_most") else "other"
    quantile = Share(1 - broadly if side == "at_least" else broadly, places=0)
    sentences = [
        display.say("claim-rule-broadly", what=what(asked, display), claimed=claimed(asked, display), side=side,
                    broadly=Share(broadly, places=0), quantile=quantile),
    ]  # fmt: skip
    false = display.say("claim-rule-false", hardly=Share(HARDLY, places=0))
    if asked.claim.always:
        between = display.say("claim-rule-between-always")
        sentences += [display.say("claim-rule-conditions-always"), false, between]
    else:
        least = Share(LEAST_REGION, places=1)
        conditions = display.say("claim-rule-conditions", conditions=MOST_CONDITIONS, least=least)
        sentences += [conditions, false, display.say("claim-rule-between")]
    sentences += [display.say("claim-rule-close"), model_error(answer, display)]
    return " ".join([*sentences, share_of_design(answer, display)])
