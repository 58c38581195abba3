"""Braking over traction energy of a 1500 kg point mass: our own computation, and so no evidence.

From the regulations' speed tables: 40 CFR Part 86 App. I (UDDS, US06), 40 CFR Part 600 App. I (HWFET), US EPA
schedules (NYCC), UN GTR No. 15 (WLTC class 3b), UN R83 (NEDC). A textbook value for the US cycles agrees from memory:
43, 9, 31 and more than 65 %.
"""

from model.checks.published import braking_over_traction
from tests.tolerances import assert_within


def test_braking_over_traction_energy_of_the_reference_car():
    check = braking_over_traction()
    assert len(check.found) == 6 and not check.is_evidence
    assert_within(check, {item.name: (item.published - 1, item.published + 1) for item in check.found})
