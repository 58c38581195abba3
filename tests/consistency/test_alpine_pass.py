"""Motor Presse Stuttgart, release of December 2022: an alpine pass of 20 km and 1000 m each way, two cars.

Speed, slope and weather are not published: with those assumed here the model may be off by a fifth, and an agreement
says little.
"""

from model.checks.cold import alpine_pass
from tests.tolerances import assert_within


def test_energy_up_and_down_the_pass():
    check = alpine_pass()
    assert len(check.found) == 4 and not check.is_evidence
    assert_within(check, {item.name: (0.8 * item.published, 1.2 * item.published) for item in check.found})
