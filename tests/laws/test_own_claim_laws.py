"""Claims in one's own words: every sentence, read back by a parser of its own, holds of the runs behind it."""

import random
import re

import numpy as np
import pytest

from model.claims.collection import ABOUT_NOTHING
from model.claims.questions import question
from model.claims.specification import OWN_RELATIONS, counted
from model.claims.verdicts import check
from model.describe.fields import InputError
from model.words.claims import made, quotation, sentence
from model.words.quantities import MINUS
from tests.conftest import now_and_nightly

CONDITIONS = (
    {}, {"ambient_c": "-5"}, {"season": "summer"}, {"road": "town"}, {"road": "motorway", "ambient_c": "-12..3"},
    {"car": "city-car"}, {"car": "van,pickup", "soc_start": "0.8"}, {"mass_kg": "2100"}, {"trailer_kg": "800"},
    {"speed_kmh": "40"}, {"height_m": "500"},
)  # fmt: skip
CASES = (
    {}, {"ambient_c": "-7", "against_ambient_c": "23"}, {"mass_kg": "2000", "against_mass_kg": "1500"},
    {"cabin": "yes", "against_cabin": "no"}, {"trailer_kg": "1200", "against_trailer_kg": "0"},
)  # fmt: skip
NUMBER = rf"{MINUS}?\d[\d,]*(?:\.\d+)?"
CLAIMED = re.compile(
    rf" is (?P<always>always )?(?P<relation>at least|at most|up to|on average about|about|between|zero or more|zero or "
    rf"less)(?: (?P<low>{NUMBER})(?: and (?P<high>{NUMBER}))?)?(?: (?P<unit>%|km|kWh/100 km|m/s²|points|times))?"
)
BAND = re.compile(rf"The model gives (?:({NUMBER}) to )?({NUMBER})(?: (%|km|kWh/100 km|m/s²|points|times))?")
VERDICTS = {
    "holds broadly": "holds", "holds only under conditions": "conditions", "is too close to call": "close",
    "does not hold in the modelled range": "false", "does not hold as said": "not as said",
    "cannot be judged from what was said": "unjudged",
}  # fmt: skip
OFTEN = ("in every run", "in no run", "in nearly all of what was varied", "in most of what was varied",
         "only at the edge of what was varied")  # fmt: skip
PLACES = {"in town": ("road", "town"), "on the motorway": ("road", "motorway"), "in summer": ("season", "summer")}
SAID = {"mass_kg": "kg with driver", "trailer_kg": "a trailer of", "soc_start": "charge at the start",
        "speed_kmh": "a speed of", "height_m": "a hill of", "ambient_c": "°C outside"}  # fmt: skip
WAYS = {"the drop in": "% less", "the rise in": "% more", "as a share of": "% of it", "the ratio of": "times",
        " less that in": "points km kWh/100 km m/s²"}  # fmt: skip


def number(text):
    return float(text.replace(",", "").replace(MINUS, "-"))


def claims(seed, count):
    """Flat claims drawn over quantities, relations, numbers and conditions, as far as they go together."""
    drawn = random.Random(seed)
    quantities = [one for one in counted().values() if not one.beyond and one.id != "works_after"]
    while count:
        one = drawn.choice(quantities)
        said = drawn.choice(CONDITIONS) | drawn.choice(CASES)
        keys = {key.removeprefix("against_") for key in said} - {"road", "season"}
        places = {"road": "cycle", "season": "ambient_c"}
        taken = [stands_for for key, stands_for in places.items() if key in said]
        if not keys <= set(one.sayable) or any(key in said or key not in one.open for key in taken):
            continue
        unit = drawn.choice(one.units(any(key.startswith("against_") for key in said)))
        yield {"quantity": one.id, "relation": drawn.choice(OWN_RELATIONS), "unit": unit} | said
        count -= 1


def with_numbers(given, drawn):
    """The claim with a number near what the model gives, so that every verdict comes up; None where it is refused."""
    try:
        values = check(question("own", given | {"relation": "at_least", "number": "1"})).values
    except InputError as refused:
        assert refused.reason in ("claim-ratio-to-nothing", "claim-no-car-can-drive")
        return None
    points = sorted(drawn.choice((0.001, 0.02, 0.06, 0.2, 0.5, 0.8, 0.97)) for _ in range(2))
    found = [f"{float(f'{end:.3g}'):g}" for end in np.quantile(values, points)]
    between = given["relation"] == "between"
    return given | {"number": "..".join(sorted(found, key=float) if between else found[:1])}


@pytest.mark.parametrize("seed", now_and_nightly(range(3), range(3, 6)))
def test_a_sentence_read_back_holds_of_its_runs(seed):
    drawn = random.Random(seed)
    found = [given for base in claims(seed, 8) if (given := with_numbers(base, drawn))]
    assert len(found) >= 4
    for given in found:
        asked = question("own", given)
        answer, told = check(asked), made(asked)
        said = sentence(answer)
        claimed = CLAIMED.search(told)
        low, high = (number(claimed[end]) if claimed[end] else 0.0 for end in ("low", "high"))
        numbers = [float(end) for end in given["number"].split("..")]
        assert [low, high][: len(numbers)] == pytest.approx(numbers, rel=5e-3, abs=1e-9), told
        relation = claimed["relation"]
        wanted = "at least" if given["relation"] == "always" else given["relation"].replace("_", " ")
        assert relation.replace("on average about", "on average") in (wanted, "zero or more", "zero or less"), told
        assert bool(claimed["always"]) == (given["relation"] == "always"), told
        conditions_stand_in(told, given)
        # what is true of each run, by what the sentence says alone
        values, about = answer.values, 0.1 * abs(low) if low else ABOUT_NOTHING.get(asked.claim.unit, 0.0)
        true = {
            "at least": values >= low, "zero or more": values >= 0, "at most": values <= low,
            "zero or less": values <= 0, "between": (values >= low) & (values <= high), "up to": values <= low,
        }.get(relation, np.abs(values - low) <= about)  # fmt: skip
        verdict = VERDICTS[next(words for words in VERDICTS if said.startswith(f"By the model this claim {words}. "))]
        assert quotation(answer).count(next(w for w, v in VERDICTS.items() if v == verdict)) >= 1
        number_of_all = {"up to": np.quantile(values, 0.95), "on average about": values.mean()}.get(relation)
        slack = 5e-3 * abs(low) + 1e-9
        if number_of_all is not None:
            off = number_of_all - low
            assert verdict != "holds" or abs(off) <= about + slack, said
            assert verdict != "false" or abs(off) >= about - slack, said
            assert verdict != "not as said" or off >= about - slack, said
        else:
            share, broadly = true.mean(), 0.95 if claimed["always"] else 0.75
            at_edge = np.abs(values[:, None] - [low, high]).min(1) <= slack
            near = at_edge.mean() + 1e-9
            assert verdict != "holds" or share >= broadly - near, said
            assert verdict != "false" or share <= 0.05 + near, said
            assert verdict != "unjudged" or 0.05 - near <= share <= broadly + near, said
            assert verdict != "not as said" or share <= 0.95 + near, said
            often = [words for words in OFTEN if words in said]
            if "in every run" in often:
                assert share >= 1 - near, said
            if "in no run" in often:
                assert share <= near, said
            if "only at the edge of what was varied" in often:
                assert 0 < share < 0.05 + near, said
            if verdict == "conditions":
                assert answer.region[1].any() and answer.true[answer.region[1]].mean() >= 0.75, said
        ends = BAND.search(said)
        band = [number(end) for end in ends.groups()[:2] if end]
        expected = np.quantile(values, [0.05, 0.95])
        assert [band[0], band[-1]] == pytest.approx(expected, rel=0.06, abs=0.06 * np.abs(expected).max() + 0.006), said
        assert (ends[3] or "") == asked.claim.unit or claimed["unit"] == ends[3], said
        assert "safe" not in said


def conditions_stand_in(told, given):
    """Every condition stands in the sentence, and none that was not said."""
    for words, (key, value) in PLACES.items():
        assert (words in told.lower()) == (given.get(key) == value), told
    for key, words in SAID.items():
        here = re.search(r"^(.*?), the ", told)
        before = here[1] if here else ""
        assert (words in before) == (key in given), (told, key)
        if key in given and ".." not in given[key]:
            shown = 100 * float(given[key]) if key == "soc_start" else float(given[key])
            assert f"{shown:,g}".replace("-", MINUS) in before, told
    differs = any(key.startswith("against_") for key in given)
    assert ("the same case with" in told) == differs, told
    ways = [unit for words, unit in WAYS.items() if words in told and (differs or words == "")]
    assert not differs or any(given["unit"] in unit for unit in ways), told
