"""Take-away pages as tests look at them: a usual drive and one with as much to say as can be."""

from dataclasses import replace
from datetime import date

from model.describe.car import CAR_FIELDS
from model.describe.parameters import assumed_figures
from model.describe.scenario import MAX_LEGS
from model.describe.scenario_io import starting_drives
from model.lift_off.advice import advise
from model.lift_off.curves import curves_of
from model.limits.all_limits import at_a_glance, season_costs_of
from model.limits.cold_day import normal_by_battery
from model.limits.limit_settings import LimitSettings
from model.sampling.drives import answer_of, drive, samples_of, trace_of, winter_day, year_of
from model.sampling.hybrid import year_of_fuel
from model.words.quantities import Display
from pages.parts.link import link_of
from pages.parts.report import TakeAway
from pages.parts.winter_words import glance, slowing_expected

RUNS = 20
MADE = date(2026, 12, 24)
TOWN = starting_drives()["town"][2]


def taken(scenario, display=None, made=MADE):
    """What the page Take away gathers for a scenario, with few sampled cars."""
    display = display or Display()
    result, asked = drive(scenario), LimitSettings()
    return TakeAway(
        scenario=scenario,
        result=result,
        answer=answer_of(result, samples_of(scenario, result, RUNS)),
        year=year_of(scenario, 5),
        year_fuel=year_of_fuel(scenario),
        glance=glance(
            at_a_glance(scenario, asked, season_costs_of(scenario), normal_by_battery(scenario)), asked, display
        ),
        slowing_in_winter=slowing_expected(normal_by_battery(winter_day(scenario)), display),
        advice=advise(curves_of(scenario)).overall,
        described_s=trace_of(scenario).duration_s,
        link=link_of(scenario, display),
        display=display,
        band_runs=RUNS,
        made=made,
    )


def with_most_to_say():
    """As many legs as there may be, every number of the car stated, unusual weather, and a car that cannot keep up."""
    leg = replace(
        TOWN.legs[0], distance_km=4.567, speed_kmh=87.654, stops=3, slow_downs=4, slow_to_kmh=43.21, climb_m=102.3,
        descent_m=103.4, grade_pct=7.65, surface="standing-water", lift_off_mps2=0.85,
    )  # fmt: skip
    scenario = replace(TOWN, car_class="plug-in-hybrid", legs=(leg,) * MAX_LEGS, return_trip=True)
    for key, figure in assumed_figures(scenario.car_class).items():
        if key in CAR_FIELDS and isinstance(figure.mid, float):
            # six digits, as many as can be entered
            stated = float(f"{1.00123 * figure.mid:.6g}")
            scenario = scenario.with_setting(key, min(stated, CAR_FIELDS[key].maximum))
    settings = {"name": "W" * 80, "currency": "W" * 80, "payload_kg": 555.5, "trailer_kg": 2250.5, "wind_kmh": -40.0,
                "ambient_c": -17.5, "looks_ahead": "late", "pull_away": "brisk", "steady_foot": "restless",
                "preconditioned": True}  # fmt: skip
    for key, value in settings.items():
        scenario = scenario.with_setting(key, value)
    return scenario
