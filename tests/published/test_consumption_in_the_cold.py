"""Argonne National Laboratory, Advanced Powertrain Research Facility, undated (press): a 2012 compact hatch at 20 °F.

The heater's 5 kW are its most; the order of the cycles is an assumption of this check.
"""

from model.checks.cold import consumption_in_the_cold
from tests.tolerances import assert_within


def test_consumption_of_a_small_car_driven_off_cold():
    check = consumption_in_the_cold()
    assert_within(
        check,
        {"found-on-cycle UDDS": (80, 120), "found-on-cycle HWFET": (25, 55), "found-on-cycle US06": (10, 40)},
    )
    udds, hwfet, us06 = (found.value for found in check.found)
    assert udds > hwfet > us06
