"""A cold day: how soon a battery is back to normal, and the map of what it takes."""

from dataclasses import replace

import numpy as np
import pytest

from model.describe.parameters import car_from, car_of
from model.describe.scenario_io import starting_drives
from model.limits.cold_day import MAP_C, accepted_kw, cold_day, highest_charges, normal_by_battery
from model.limits.full_start import ordinary_charging_w, until_normal
from model.limits.winter import season_costs
from model.sampling.drives import drive

FROSTY = starting_drives()["motorway"][2].with_setting("ambient_c", -7.0)
FROSTY_DRIVE = drive(FROSTY)
COSTS = season_costs(FROSTY_DRIVE.trace, FROSTY_DRIVE.car, FROSTY.conditions, FROSTY.driver)


def test_a_battery_that_takes_more_is_normal_sooner():
    found = cold_day(FROSTY, COSTS, normal_by_battery(FROSTY))
    assert found.takes_kw["low"] < found.takes_kw["mid"] < found.ordinary_kw < found.takes_kw["high"]
    assert found.normal["high"].minutes == 0 < found.normal["mid"].minutes
    assert found.normal["low"] is None
    assert found.normal["mid"] == until_normal(drive(FROSTY))
    assert found.ordinary_kw * 1000 == ordinary_charging_w(drive(FROSTY))


def test_the_map_is_the_batterys_own():
    found = cold_day(FROSTY, COSTS, normal_by_battery(FROSTY))
    car = car_of(FROSTY)
    for row in found.takes_all.dropna().iloc[::7].itertuples():
        assert accepted_kw(replace(car, acceptance_level=-1.0), row.battery_c, row.low)[0] >= found.ordinary_kw
        assert accepted_kw(replace(car, acceptance_level=-1.0), row.battery_c, row.low + 0.01)[0] < found.ordinary_kw
    assert (found.takes_all["mid"].dropna() <= found.takes_all["high"].loc[found.takes_all["mid"].notna()]).all()
    assert found.takes_all["low"].isna().sum() > found.takes_all["high"].isna().sum()
    for row in found.accepted.itertuples():
        assert row.kw == pytest.approx(accepted_kw(car, row.battery_c, row.soc)[0])
    assert (found.way["battery_c"].iloc[0], found.way["soc"].iloc[0]) == (-7.0, FROSTY.conditions.soc_start)


def test_no_battery_takes_endless_power_and_every_one_takes_none():
    car = car_from("family-hatch")
    assert np.isnan(highest_charges(car, 1e9)).all()
    assert (highest_charges(car, 0.0) == 1.0).all() and len(MAP_C) == len(highest_charges(car, 0.0))
