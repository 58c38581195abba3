"""The four limits at a glance agree with each in full."""

from dataclasses import replace

from model.describe.scenario_io import starting_drives
from model.limits.all_limits import at_a_glance, season_costs_of
from model.limits.cold_day import cold_day, normal_by_battery
from model.limits.full_battery import hills
from model.limits.hard_stop import hard_stop
from model.limits.limit_settings import LimitSettings
from model.limits.slippery_road import slippery_road
from model.sampling.drives import drive

FROSTY = starting_drives()["motorway"][2].with_setting("ambient_c", -7.0)


def test_the_glance_agrees_with_the_parts():
    settings = replace(LimitSettings(), hill_m=500.0, bend="bend")
    result, costs = drive(FROSTY), season_costs_of(FROSTY)
    glance = at_a_glance(FROSTY, settings, costs, normal_by_battery(FROSTY))
    assert costs.season.net_kwh == result.net_kwh and glance.costs is costs
    assert cold_day(FROSTY, glance.costs, normal_by_battery(FROSTY)).normal["mid"] == glance.costs.normal
    assert slippery_road(FROSTY, settings).check == glance.grip
    assert hills(FROSTY, settings, result).room["mid"] == glance.room
    assert hard_stop(FROSTY, settings, result).stops == glance.stops
