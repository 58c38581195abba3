"""Steinstraeter et al., World Electric Vehicle Journal 2021, 12(3), 115: range lost by heating and by recuperation."""

from model.checks.cold import effects_of_cold
from tests.tolerances import assert_within


def test_range_lost_by_each_cause():
    """The heat's mean power is a consequence of the assumed heat loss: 3 to 4 kW, as owners log, is consistency."""
    check = effects_of_cold()
    assert_within(
        check,
        {
            "found-recuperation-lost-on-wltc": (17.7, 25.7),
            "found-heating-on-wltc": (26.9, 36.9),
            "found-power-of-heating": (3, 4),
        },
    )


def test_a_short_cold_drive_in_town_goes_beyond_both():
    by_what = {found.what: found.value for found in effects_of_cold().found}
    beyond = {
        cause: by_what[f"found-{cause}-in-town"] - by_what[f"found-{cause}-on-wltc"]
        for cause in ("recuperation-lost", "heating")
    }
    print("a short drive in town loses more, in points:", {cause: f"{points:.1f}" for cause, points in beyond.items()})
    assert all(points > 0 for points in beyond.values())
