"""The seven phrases for what comes back, and a range figure on its way to the road, in words."""

from __future__ import annotations

import pandas as pd

from model.claims.prose import listed
from model.claims.verdicts import Claim, Question
from model.describe.fields import InputError
from model.describe.figures import Quantity
from model.kernel.denominators import HILL_LOOP, PHRASES, Books, convert, said, worked_example
from model.sampling.printed_tests import TESTS
from model.sampling.range_figure import RangeOnRoad
from model.words.quantities import MINUS, Display, capital, percent_text
from model.words.refusals import refusal_words
from pages.parts.claim_inputs import SHORT_PHRASES
from pages.parts.claim_words import claimed_text

SHARES_TITLE = "Meant as another share, the same drives give another number"


def share_intro(claim: Claim) -> str:
    """What the claim's percentage may be a share of."""
    if not claim.denominators:
        return (
            "This number is no share of an energy: it compares two cases of the same thing, so none of the seven "
            "phrases below applies."
        )
    fits = listed([f"“{SHORT_PHRASES[name]}”" for name in claim.denominators], "or")
    other = " Each gives another number on the same drives." if len(claim.denominators) > 1 else ""
    return f"Seven phrases go round for what comes back. Here the number can be meant as {fits}.{other}"


def shares_words(asked: Question) -> str:
    """How to read the picture of the shares."""
    return f"Thin strokes mark what was claimed: {claimed_text(asked)}."


def phrases_table(claim: Claim) -> pd.DataFrame:
    """The seven phrases, and whether the claim can mean them."""
    rows = [
        (capital(SHORT_PHRASES[name]), phrase.formula, "yes" if name in claim.denominators else "no")
        for name, phrase in PHRASES.items()
    ]
    return pd.DataFrame(rows, columns=["Phrase", "Formula", "Can be meant"])


def road_title(found: RangeOnRoad, display: Display) -> str:
    """What the way to the road comes to."""
    return (
        f"{display.text(found.test_range_km, 'km', 3)} on the test, {display.range_text(found.range_km, 'km', 2)} on "
        "your drive"
    )


def road_words(found: RangeOnRoad, display: Display) -> str:
    """What costs most."""
    step = max(found.steps, key=lambda step: step.middle_cost_km)
    kept = found.middle_range_km / found.test_range_km
    left = "of it is left" if kept < 1 else "of it is reached, which is no less than printed,"
    costs = f"The largest cost is {step.label}: {display.range_text(step.cost_km, 'km')}. "
    return (
        f"The printed figure stays as it is; only the ratio of consumptions is the model's. {percent_text(kept)} "
        f"{left} with every assumed figure at its middle; the bands are of {found.runs} sampled cars. "
        f"{costs if step.middle_cost_km >= 0.5 else ''}What a step costs depends on the order in which they are taken."
    )


def road_table(found: RangeOnRoad, display: Display) -> pd.DataFrame:
    """Every step with its band."""
    km = display.unit("km")
    rows = []
    for step in found.steps:
        numbers = (step.cost_km.low, step.middle_cost_km, step.cost_km.high,
                   step.range_km.low, step.middle_range_km, step.range_km.high)  # fmt: skip
        rows.append((step.label, *(round(float(display.value(value, "km")), 1) for value in numbers)))
    names = [f"{what} {point}, {km}" for what in ("Costs", "Range") for point in ("low", "middle", "high")]
    return pd.DataFrame(rows, columns=["Step", *names])


def test_label(test: str) -> str:
    """A test in words."""
    return TESTS[test].label


def phrase_value(name: str, value: float | None, display: Display) -> str:
    """A number of a phrase as it is read."""
    if value is None:
        return "means nothing on this drive"
    if PHRASES[name].unit == "km":
        return display.text(value, "km")
    return percent_text(value)


def converted_table(books: Books, name: str, value: float, display: Display) -> pd.DataFrame:
    """A number said in one phrase, in all seven."""
    rows = [
        (phrase_value(other, number, display), capital(SHORT_PHRASES[other]), PHRASES[other].formula)
        for other, number in convert(books, name, value).items()
    ]
    return pd.DataFrame(rows, columns=["Number", "Of what", "Formula"])


def own_number(books: Books, name: str) -> float | None:
    """What the drive itself gives in a phrase."""
    return said(books, name)


def phrase_unit(name: str, display: Display) -> str:
    """The unit in which a phrase's number is entered."""
    return display.unit(PHRASES[name].unit)


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
    return (
        f"This would mean that less than nothing came back. On this drive the number must be at least {shown:g} "
        f"{phrase_unit(name, display)}."
    )


def hill_example() -> str:
    """The published hill loop whose headline and energies do not agree."""
    example = worked_example()
    up, down = example["up_kwh_per_100_km"], -example["down_kwh_per_100_km"]
    own = example["phrases"]["of_climb"]
    return (
        f"**A worked example.** A car of 1180 kg was driven up a pass road and down again on a dynamometer. Published: "
        f"{up:g} kWh/100 km up, {down:g} back on the way down, {example['mean_kwh_per_100_km']:g} on average, and a "
        f"headline of {percent_text(example['headline_share'])} recovered. As a share of what the climb took the two "
        f"energies make {down:g} / {up:g} = {percent_text(own)}; for the headline, "
        f"{example['headline_as_share_of_climb_needs_kwh']:.1f} kWh would have had to come back. The average agrees "
        f"with the two energies: ({up:g} {MINUS} {down:g}) / 2 = {example['mean_found_kwh_per_100_km']:.2f}. So the "
        "headline seems to be a share of something else, which was not said. The same two energies as a gain in "
        f"range: {percent_text(example['phrases']['range_gain'])}. Source: {HILL_LOOP['source']}."
    )
