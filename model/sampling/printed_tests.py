"""What is printed about cars: on which test, and how the figure comes from its cycles."""

from __future__ import annotations

from dataclasses import dataclass

from model.describe.scenario import Conditions

RANGE_TEST = Conditions(ambient_c=23.0, cabin=False, soc_start=0.6, tyres_warm="yes")
"""As range is tested: warm, heating and cooling off, no load besides the driver."""
US_LABEL_FACTOR = 0.7
"""Range on the US label over range on the two US cycles (the usual factor of the 40 CFR 600 label; from memory)."""


@dataclass(frozen=True)
class Test:
    """A published kind of range figure: its cycles with their shares by distance, and figure over range on them."""

    cycles: tuple[tuple[str, float], ...]
    factor: float = 1.0


_US = (("udds", 0.55), ("hwfet", 0.45))
TESTS = {
    "wltc3b": Test((("wltc3b", 1.0),)),
    "udds": Test((("udds", 1.0),)),
    "hwfet": Test((("hwfet", 1.0),)),
    "us-cycles": Test(_US),
    "us-label": Test(_US, US_LABEL_FACTOR),
    "nedc": Test((("nedc", 1.0),)),
}
