"""The seven phrases for what comes back, and a range figure on its way to the road, in words."""

from __future__ import annotations

import pandas as pd

from model.claims.collection import Claim
from model.claims.questions import Question
from model.describe.fields import InputError
from model.describe.figures import Quantity, Several, Share
from model.kernel.books import Books
from model.kernel.phrases import HILL_LOOP, PHRASES, convert, said, worked_example
from model.sampling.range_figure import RangeOnRoad
from model.sampling.uncertainty import Band
from model.words.quantities import Display, percent_text, span_of
from model.words.refusals import refusal_words
from pages.parts.claim_words import claimed_text

POINTS = ("low", "middle", "high")


def phrase_name(name: str, display: Display) -> str:
    """A phrase that stands alone."""
    return display.say("phrase-name", phrase=name)


def share_intro(claim: Claim, display: Display) -> str:
    """What the claim's percentage may be a share of."""
    if not claim.denominators:
        return display.say("phrases-no-share")
    fits = Several(tuple(display.say("phrase-quoted", phrase=name) for name in claim.denominators), "or")
    sentences = [display.say("phrases-may-mean", phrases=fits)]
    if len(claim.denominators) > 1:
        sentences.append(display.say("phrases-each-another"))
    return " ".join(sentences)


def shares_words(asked: Question, display: Display) -> str:
    """How to read the picture of the shares."""
    return display.say("phrases-shares-words", claimed=claimed_text(asked, display))


def phrases_table(claim: Claim, display: Display, formulas: bool = True) -> pd.DataFrame:
    """The seven phrases, with or without their formulas, and whether the claim can mean them."""
    rows = [
        (phrase_name(name, display), display.say("phrase-formula", phrase=name),
         display.say("phrases-can-be-meant", meant=name in claim.denominators))
        for name in PHRASES
    ]  # fmt: skip
    heads = ("phrases-column-phrase", "phrases-column-formula", "phrases-column-can-be-meant")
    table = pd.DataFrame(rows, columns=[display.say(head) for head in heads])
    return table if formulas else table.drop(columns=display.say("phrases-column-formula"))


def road_title(found: RangeOnRoad, display: Display) -> str:
    """What the way to the road comes to."""
    return display.say("road-title", test=Quantity(found.test_range_km, "km", 3), road=span_of(found.range_km, "km"))


def road_words(found: RangeOnRoad, display: Display) -> str:
    """What costs most."""
    step = max(found.steps, key=lambda step: step.middle_cost_km)
    kept = found.middle_range_km / found.test_range_km
    sentences = [display.say("road-words", printed=found.printed, kept=Share(kept), less=kept < 1, cars=found.runs)]
    if step.middle_cost_km >= 0.5:
        sentences.append(display.say("road-largest-cost", step=step.id, cost=span_of(step.cost_km, "km")))
    return " ".join((*sentences, display.say("road-order-matters")))


def road_beside(reached: Band, display: Display, *, other: bool) -> str:
    """What the answer says is reached [km], which knows nothing of this printed figure or has an `other`."""
    return display.say("road-beside", reached=span_of(reached, "km"), other=other)


def road_table(found: RangeOnRoad, display: Display) -> pd.DataFrame:
    """Every step with its band."""
    km = display.unit("km")
    rows = []
    for step in found.steps:
        numbers = (step.cost_km.low, step.middle_cost_km, step.cost_km.high,
                   step.range_km.low, step.middle_range_km, step.range_km.high)  # fmt: skip
        name = display.say("road-step", step=step.id)
        rows.append((name, *(round(float(display.value(value, "km")), 1) for value in numbers)))
    names = [display.say("road-column-costs", point=point, unit=km) for point in POINTS]
    names += [display.say("road-column-range", point=point, unit=km) for point in POINTS]
    return pd.DataFrame(rows, columns=[display.say("road-column-step"), *names])


def phrase_value(name: str, value: float | None, display: Display) -> str:
    """A number of a phrase as it is read."""
    if value is None:
        return display.say("phrase-means-nothing")
    if PHRASES[name].unit == "km":
        return display.text(value, "km")
    return percent_text(value)


def converted_table(books: Books, name: str, value: float, display: Display) -> pd.DataFrame:
    """A number said in one phrase, in all seven."""
    rows = [
        (phrase_value(other, number, display), phrase_name(other, display),
         display.say("phrase-formula", phrase=other))
        for other, number in convert(books, name, value).items()
    ]  # fmt: skip
    heads = ("phrases-column-number", "phrases-column-of-what", "phrases-column-formula")
    return pd.DataFrame(rows, columns=[display.say(head) for head in heads])


def own_number(books: Books, name: str) -> float | None:
    """What the drive itself gives in a phrase."""
    number = said(books, name)
    return None if number is None else float(number)


def shown_number(name: str, value: float | None, display: Display) -> float:
    """A phrase's number as it is entered: percent, or a length."""
    assert value is not None
    shown = float(display.value(value, "km")) if PHRASES[name].unit == "km" else 100 * value
    return round(shown, 1)


def held_number(name: str, shown: float, display: Display) -> float:
    """The number held for one that was entered."""
    return display.held(shown, "km") if PHRASES[name].unit == "km" else shown / 100


def converter_refusal(refused: InputError, name: str, display: Display) -> str:
    """Why a number cannot be converted, with its least in the unit of the entry."""
    least = refused.parts.get("least")
    if not isinstance(least, Quantity):
        return refusal_words(refused, display)
    shown = shown_number(name, least.value, display)
    return display.say("converter-too-little", least=f"{shown:g} {display.unit(PHRASES[name].unit)}")


def hill_example(display: Display) -> str:
    """The published hill loop whose headline and energies do not agree."""
    example, unit = worked_example(), "kWh/100 km"

    def bare(kwh: float, places: int | None = None) -> Quantity:
        # the unit stands with the first figure alone
        return Quantity(float(display.value(kwh, unit)), "", 4, places, trimmed=places is None)

    up, down = example["up_kwh_per_100_km"], -example["down_kwh_per_100_km"]
    return display.say(
        "hill-loop",
        mass=Quantity(1180, "kg", places=0),
        up=Quantity(up, unit, 4, trimmed=True),
        up_number=bare(up),
        down_number=bare(down),
        mean=bare(example["mean_kwh_per_100_km"]),
        headline=Share(example["headline_share"]),
        own=Share(example["phrases"]["of_climb"] or 0.0),
        needs=Quantity(example["headline_as_share_of_climb_needs_kwh"], unit, places=1),
        found=bare(example["mean_found_kwh_per_100_km"], places=2),
        gain=Share(example["phrases"]["range_gain"] or 0.0),
        source=HILL_LOOP["source"],
    )
