"""The claims that are tested, read from ``assets/claims.json`` and checked: a wrong entry is named in one sentence.

Their words stand in ``assets/words/en/claim_list.ftl``, a message each.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from functools import cache
from typing import Any

from model.claims.draws import GENERATORS
from model.claims.inputs import INPUTS, Open, narrowed, open_from
from model.claims.measures import COMPARED, Measure
from model.claims.quantities import QUANTITIES
from model.describe.fields import Entry, InputError
from model.describe.messages import parts_of
from model.describe.parameters import DEFAULT_CLASS, REFERENCE_CLASSES
from model.describe.tables import ASSETS, TableError, unknown
from model.kernel.phrases import PHRASES

FILE, OWN_FILE = "claims.json", "claim_quantities.json"
WORDS = "assets/words/en/claim_list.ftl"
CLAIM_RUNS = 1009
"""Drawn runs of a claim, unless it says otherwise: so many that the 5 and 95 % points move by less than 2 % of the
median, or of the band where that is wider, from seed to seed."""
BROADLY, ALWAYS = 0.75, 0.95
"""A claim is true broadly from the first share of the runs on [1], one that says "always" from the second."""
ABOUT = 0.1
"""A claim of "about" a number, of an average or of a top is true within this share of it [1], unless the claim says
otherwise. Common practice, no source."""
ABOUT_NOTHING = {"%": 3.0, "points": 3.0, "times": 0.03, "km": 1.0, "kWh/100 km": 0.5, "m/s²": 0.05}
"""A claim of about nothing is true within this much of it [the unit's]; in another unit only at nothing. Common
practice, no source."""
UNITS = (*ABOUT_NOTHING, "Wh", "MW", "")
"""What a claim's number may be in."""
RELATIONS = ("at_least", "about", "at_most", "up_to", "on_average", "between")
ANY_CAR = sorted(REFERENCE_CLASSES, key=lambda car_class: car_class != DEFAULT_CLASS)
_USUAL: dict[str, Any] = {
    "relation": "between", "scope": {}, "said": {}, "within_share": ABOUT, "always": False, "runs": CLAIM_RUNS,
    "words": {}, "names": (), "beyond": False, "compared": "", "against": {}, "counted": "", "text": "",
}  # fmt: skip
"""What need not stand in the file."""


@dataclass(frozen=True)
class Claim:
    """One claim as it is printed, and what it is tested on.

    `scope` is what its words fix, `open` what they leave open, `said` the conditions that came with its publication.
    `words` says by which place or season the claim's words name what an input runs over, `names` which inputs the noun
    for the quantity names. `beyond` says that the claim itself is beyond the model, and the quantity only next to it.
    A difference between two cases is `compared` (one of COMPARED) with a case that differs in what `against` sets.
    `counted` is what a claim of one's own counts, empty for those of the list: see `model.claims.specification`; `text`
    are its words.
    """

    id: str
    quantity: str
    number: tuple[float, ...]
    unit: str
    relation: str
    within_share: float
    always: bool
    runs: int
    denominators: tuple[str, ...]
    scope: Mapping[str, Open]
    open: Mapping[str, Open]
    said: Mapping[str, str]
    words: Mapping[str, str]
    names: tuple[str, ...]
    beyond: bool
    compared: str
    against: Mapping[str, Entry]
    counted: str
    text: str

    @property
    def message(self) -> str:
        """The message with the words of a claim of the list; what else is said of it are attributes of that."""
        return f"listed-{self.id}"

    @property
    def measure(self) -> Measure:
        """What its number measures."""
        return Measure(self.quantity, self.compared, tuple(self.against.items()))

    @property
    def broadly(self) -> float:
        """From which share of the runs on it is true broadly [1]."""
        return ALWAYS if self.always else BROADLY


class _Wrong(ValueError):
    """What is wrong with an entry."""


def _keys(given: Mapping[str, Any], known: Iterable[str], needed: Iterable[str]) -> None:
    for key in given:
        if key not in (names := list(known)):
            raise _Wrong(unknown("key", key, names))
    if missing := [key for key in needed if key not in given]:
        raise _Wrong(f"{', '.join(missing)} must be given")


def _open(key: str, given: Any) -> Open:
    """What one input runs over."""
    over = open_from(INPUTS[key], ANY_CAR if (key, given) == ("car", "any") else given)
    numbers = over.numbers
    if over.band and len(over.values) != 3:
        raise _Wrong(f"{key} has {len(over.values)} numbers; a band has three: low, mid, high")
    if over.band and list(numbers) != sorted(numbers):
        raise _Wrong(f"{key} has low above mid, or mid above high: {', '.join(f'{end:g}' for end in numbers)}")
    if not over.values or (len(set(over.values)) < len(over.values) and not over.band):
        raise _Wrong(f"{key} names no value, or one of them twice")
    return over


def _claim(data: Mapping[str, Any]) -> Claim:
    """One entry as a claim; `_Wrong`, or what its fields refuse, where it cannot be used."""
    keys = [field.name for field in fields(Claim) if field.name not in ("counted", "text")]
    _keys(data, keys, [name for name in keys if name not in _USUAL])
    data = _USUAL | dict(data)
    numbers = tuple(map(float, data["number"] if isinstance(data["number"], list) else [data["number"]]))
    for part in ("scope", "open", "said", "words", "against"):
        _keys(data[part], INPUTS, ["car"] if part == "open" else [])
    scope, still_open = ({key: _open(key, value) for key, value in data[part].items()} for part in ("scope", "open"))
    known_names = {"quantity": QUANTITIES, "unit": UNITS, "relation": RELATIONS, "compared": ("", *COMPARED)}
    for name, known in known_names.items():
        if data[name] not in known:
            raise _Wrong(unknown(name, str(data[name]), known))
    if data["runs"] not in GENERATORS:
        raise _Wrong(f"runs {data['runs']} is none of {', '.join(map(str, GENERATORS))}")
    if len(numbers) != (2 if data["relation"] == "between" else 1) or list(numbers) != sorted(numbers):
        raise _Wrong(f"number does not fit {data['relation']}: two for between, the lower first, else one")
    for denominator in data["denominators"]:
        if denominator not in PHRASES:
            raise _Wrong(unknown("denominator", str(denominator), PHRASES))
    for key, text in data["said"].items():
        narrowed(INPUTS[key], still_open.get(key, Open(())), text)
    if missing := [key for key in data["words"] if key not in still_open]:
        raise _Wrong(f"words of {', '.join(missing)}, which the claim does not leave open")
    for name in data["words"].values():
        if name not in place_names():
            raise _Wrong(unknown("word", str(name), place_names()))
    for key in data["names"]:
        if key not in scope | still_open:
            raise _Wrong(f"names has {key!r}, which is neither in scope nor open")
    against = {key: INPUTS[key].parse(value) for key, value in data["against"].items()}
    if bool(against) != bool(data["compared"]):
        raise _Wrong("compared and against go together")
    checked = {"number": numbers, "scope": scope, "open": still_open, "against": against}
    rows = {name: tuple(data[name]) for name in ("denominators", "names")}
    claim = Claim(**data | checked | rows)
    _with_words(claim)
    return claim


def _with_words(claim: Claim) -> None:
    """Check that the claim has its words."""
    parts = parts_of(claim.message)
    if parts is None:
        raise _Wrong(f"its words are missing, the message {claim.message} in {WORDS}")
    needed = {"left-out"} | ({"beyond"} if claim.beyond else set())
    if "denominator" not in claim.scope:
        needed |= {"what"}
    if missing := sorted(needed - parts):
        raise _Wrong(f"the message {claim.message} in {WORDS} has no .{missing[0]}")


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise _Wrong(f"{key!r} is given twice in one entry" + (f" ({found['id']})" if "id" in found else ""))
        found[key] = value
    return found


@cache
def place_names() -> tuple[str, ...]:
    """The kinds of road and the seasons that a claim's words may name."""
    table = json.loads((ASSETS / OWN_FILE).read_text("utf-8"))
    return *table["roads"], *table["seasons"]


@cache
def claims() -> dict[str, Claim]:
    """Every claim, by id.

    Raises
    ------
    TableError
        Where the file or one of its claims cannot be used.
    """
    try:
        data = json.loads((ASSETS / FILE).read_text("utf-8"), object_pairs_hook=_once)
    except json.JSONDecodeError as broken:
        raise TableError(f"assets/{FILE}, row {broken.lineno}: {broken.msg}.") from None
    except _Wrong as wrong:
        raise TableError(f"assets/{FILE}: {wrong}.") from None
    entries = data.get("claims") if isinstance(data, dict) else None
    if not isinstance(entries, list):
        raise TableError(f"assets/{FILE}: there is no list of claims by the name of 'claims'.")
    found: dict[str, Claim] = {}
    for place, data in enumerate(entries, 1):
        if not isinstance(data, dict):
            raise TableError(f"assets/{FILE}, claim {place}: it is not an entry of keys and values.")
        here = f"assets/{FILE}, claim {place} ({data.get('id', 'without an id')})"
        try:
            claim = _claim(data)
        except (_Wrong, InputError) as wrong:
            raise TableError(f"{here}: {str(wrong).removesuffix('.')}.") from None
        except (AttributeError, KeyError, TypeError, ValueError) as wrong:
            raise TableError(f"{here}: something has not the form that it should have ({wrong}).") from None
        if claim.id in found:
            raise TableError(f"{here}: another claim has that id.")
        found[claim.id] = claim
    return found
