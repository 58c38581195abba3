"""A year beside the car that is driven now: its fuel worked by hand, its distance that of the car described."""

from dataclasses import replace

import pytest

from model.describe.parameters import car_of, open_figures_of
from model.describe.scenario import Leg, Scenario, Year, with_prices_of
from model.describe.scenario_io import starting_drives
from model.sampling.beside_now import beside_now
from model.sampling.drives import drive, seasons_of, year_of
from model.words.quantities import LITRES_PER_GALLON, Display

US = Display(us=True)
RUNS = 40


def beside(scenario: Scenario):
    return beside_now(year_of(scenario, RUNS), scenario.year, car_of(scenario))


def of_days(days: int, **year) -> Year:
    """A year with all its days in spring."""
    seasons = {f"{season}_days": 0 for season in ("winter", "summer", "autumn")}
    return Year(spring_days=days, **seasons, **year)


def test_petrol_on_a_commute_by_hand():
    """15 km there and 15 back on 200 days are 6,000 km; at 7 l per 100 km 420 l; at 1.70 € 714 €."""
    road = Leg(distance_km=15.0, speed_kmh=60.0, stops=5)
    found = beside(Scenario(legs=(road,), return_trip=True, year=of_days(200, now_l_per_100km=7.0)))
    assert found.distance_km == pytest.approx(6000, rel=1e-3)
    assert found.fuel_l == pytest.approx(420, rel=1e-3)
    assert found.fuel_cost == pytest.approx(714, rel=1e-3)
    assert (found.fuel, found.price_per_l, found.days) == ("petrol", 1.7, 200)


def test_diesel_on_a_long_run_by_hand():
    """250 km on 40 days are 10,000 km; at 5.2 l per 100 km 520 l; at 1.55 € 806 €. Diesel at the price of diesel."""
    road = Leg(distance_km=250.0, speed_kmh=120.0, stops=2)
    year = of_days(40, now_fuel="diesel", now_l_per_100km=5.2, diesel_price_per_l=1.55, petrol_price_per_l=9.0)
    # a battery that lasts
    found = beside(Scenario(legs=(road,), year=year).with_setting("usable_kwh", 120.0))
    assert found.fuel_l == pytest.approx(520, rel=1e-3)
    assert found.fuel_cost == pytest.approx(806, rel=1e-3)


def test_a_hybrid_in_miles_and_gallons_by_hand():
    """10 miles on 250 days are 2,500 miles; at 50 mpg 50 gallons; at 3.30 $/gal 165 $. A hybrid takes petrol."""
    year = of_days(250, now_fuel="hybrid", now_l_per_100km=US.held(50.0, "litres/100 km"))
    year = with_prices_of(year, us=True)
    road = Leg(distance_km=US.held(10.0, "km"), speed_kmh=US.held(40.0, "km/h"), stops=8)
    found = beside(Scenario(legs=(road,), year=year))
    assert US.value(found.distance_km, "km") == pytest.approx(2500, rel=1e-3)
    assert found.fuel_l / LITRES_PER_GALLON == pytest.approx(50, rel=1e-3)
    assert found.fuel_cost == pytest.approx(165, rel=1e-3)
    assert US.value(found.price_per_l, "per l") == pytest.approx(3.3, abs=1e-4)


def test_the_car_described_costs_what_it_takes_from_the_wall_on_the_same_days():
    """The band holds the middle car's year: every season's wall energy on its days, at the price."""
    scenario = starting_drives()["suburb-hill"][2].with_setting("now_l_per_100km", 6.0)
    found, price = beside(scenario), scenario.year.price_per_kwh
    by_hand = sum(days * one.wall_wh_per_km * one.distance_km / 1000
                  for _, days, then in seasons_of(scenario) for one in [drive(then)])  # fmt: skip
    assert found.wall_kwh.low < by_hand < found.wall_kwh.high
    assert found.cost == found.wall_kwh.scaled(price)


def test_what_comes_from_the_wall_is_what_the_cells_gave():
    """With every figure stated the band closes on the single car's own wall energy."""
    scenario = starting_drives()["town"][2]
    stated = car_of(scenario)
    for key in open_figures_of(scenario):
        scenario = scenario.with_setting(key, getattr(stated, key) if hasattr(stated, key) else 0.0)
    year = year_of(scenario, 3)
    by_hand = sum(days * one.wall_wh_per_km * one.distance_km / 1000
                  for _, days, then in seasons_of(scenario) for one in [drive(then)])  # fmt: skip
    assert year.wall_kwh.mid == pytest.approx(by_hand, rel=1e-6)


def test_nothing_is_set_beside_what_is_not_known():
    town = starting_drives()["town"][2]
    assert beside(town) is None
    hybrid = replace(town, car_class="full-hybrid").with_setting("now_l_per_100km", 6.0)
    assert beside(hybrid) is None
