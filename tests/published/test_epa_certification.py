"""US EPA, Data on Cars used for Testing Fuel Economy, model years 2010 to 2019: nine battery cars.

Measured road load (coast-down coefficients) and test weight, wall energy on UDDS and HWFET before the label's
correction. Everything else as the class of nearest mass has it. No
figure is fitted to a single car, but the losses were chosen with these results in view.
"""

import numpy as np
import pytest

from model.checks.published import certified_cars, epa_certification
from tests.tolerances import assert_within


def test_wall_energy_of_the_certified_cars():
    check = epa_certification()
    print(*certified_cars(), sep="\n  ")
    assert_within(
        check,
        {
            "found-errors-in-the-city": (0, 9),
            "found-errors-on-the-highway": (0, 6),
            "found-lean-in-the-city": (-6, 6),
            "found-lean-on-the-highway": (-6, 6),
        },
    )
    assert len(certified_cars()) == 9


SCATTER = (
    "6.4 in place of 6: no common factor on all nine brings it below 6.3. A compact MPV and a compact SUV read 25 % "
    "low, two trims of one hatch 6 and 8 % high, a like hatch of two years before 5 % low"
)


@pytest.mark.parametrize(
    "what, most",
    [
        pytest.param("city", 6, marks=pytest.mark.xfail(strict=True, reason=SCATTER)),
        ("highway", 5),
    ],
)
def test_the_median_error_is_as_small_as_was_asked(what, most):
    assert np.median([abs(getattr(car, f"{what}_error_pct")) for car in certified_cars()]) <= most


def test_no_common_factor_makes_the_median_error_in_the_city_as_small_as_was_asked():
    ratio = np.array([car.city_modelled / car.city_published for car in certified_cars()])
    least = min(np.median(abs(ratio * factor - 1)) for factor in np.linspace(0.9, 1.2, 301))
    assert 0.06 < least < 0.065


def test_every_car_is_driven_with_its_own_road_load():
    """Two trims of one car differ in road load only, and so must their modelled energy."""
    by_id = {car.id: car for car in certified_cars()}
    assert by_id["EV-B"].car_class == by_id["EV-C"].car_class
    assert by_id["EV-B"].highway_modelled > by_id["EV-C"].highway_modelled


def test_errors_are_modelled_over_published():
    car = certified_cars()[0]
    assert car.city_modelled == pytest.approx(car.city_published * (1 + car.city_error_pct / 100))
    assert car.highway_modelled == pytest.approx(car.highway_published * (1 + car.highway_error_pct / 100))
