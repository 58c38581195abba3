"""Motor Presse Stuttgart, release of December 2022: an alpine pass of 20 km and 1000 m each way, two cars."""

from model.winter_checks import alpine_pass


def test_energy_up_and_down_the_pass():
    check = alpine_pass()
    print(check)
    assert check.holds, str(check)
    assert len(check.found) == 4
