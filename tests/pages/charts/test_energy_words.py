"""What the energy pictures say: numbers of the same result, and the right words where nothing is saved."""


import pandas as pd
import pytest

from model.describe.scenario import Conditions, Driver
from model.describe.scenario_io import starting_drives
from model.kernel.timeline import books, slow_downs, timeline
from model.sampling.drives import answer_of, drive, samples_of
from model.words.quantities import Display
from pages.parts.charts.energy import braking_rows
from pages.parts.charts.energy_words import (
    before_after_words,
    closure_words,
    ledger_words,
    one_run_words,
    over_time_words,
    slowed_by_words,
)
from pages.parts.charts.limits import because, limit_text
from tests.made_traces import steady, stop_and_go
from tests.pages.charts.specs import driven

METRIC = Display()
UDDS = driven()
DOWN = driven(steady(60, 600, slope=-0.06))
UP = driven(steady(60, 600, slope=0.04))


def test_the_saving_is_told_with_its_whole():
    title, words = before_after_words(books(UDDS), METRIC)
    saved, without = UDDS.saved_kwh, UDDS.friction_only_net_kwh
    assert title == f"Regeneration saves {saved:.2f} of {without:.2f} kWh, {100 * UDDS.saved_share:.0f} %"
    assert f"{books(UDDS).loc['friction_brakes', 'friction_only']:.2f} kWh of this drive end as heat" in words
    assert words.endswith("All other uses are the same.")


def test_uses_that_differ_are_not_called_the_same():
    changed = books(UDDS)
    changed.loc["accessories", "regenerated"] += 0.05
    assert "the same" not in before_after_words(changed, METRIC)[1]


def test_a_drive_without_braking_saves_nothing():
    assert before_after_words(books(UP), METRIC)[0] == "On this drive regeneration saves nothing"


def test_a_battery_that_ends_fuller_is_said_to():
    title, _ = before_after_words(books(DOWN), METRIC)
    assert title == f"With regeneration the battery ends {-DOWN.net_kwh:.2f} kWh fuller than it began"


def test_what_came_back_is_told_by_the_hundred():
    title, words = ledger_words(books(UDDS)["regenerated"], UDDS.ledger.error_share, METRIC)
    assert title == f"Of every 100 Wh that leave the battery, {100 * UDDS.recovered_share:.0f} come back"
    assert f"{books(UDDS).loc['cells', 'regenerated']:.2f} kWh warmed the battery’s own cells" in words
    assert "balance to better than one part in a" in words


def test_the_other_ways_to_come_back():
    assert ledger_words(books(UP)["regenerated"], 0, METRIC)[0] == "Nothing comes back to the battery on this drive"
    nothing_left = books(DOWN)["regenerated"]
    assert nothing_left["battery_out"] == 0
    assert ledger_words(nothing_left, 0, METRIC)[0].startswith("Nothing leaves the battery")
    less_left = nothing_left.copy()
    less_left["battery_out"] = nothing_left["battery_in"] / 2
    assert ledger_words(less_left, 0, METRIC)[0].startswith("More comes back than left")


@pytest.mark.parametrize(
    ("error", "words"), [(3e-16, "a billion"), (5e-10, "a billion"), (5e-7, "a million"), (0.02, "2.0 %")]
)
def test_how_well_the_books_close_is_what_was_found(error, words):
    assert words in closure_words(error, METRIC)
    assert ("do not balance" in closure_words(error, METRIC)) == (error > 1e-6)


def told(result):
    return slowed_by_words(braking_rows(result.wheel_regen_kwh, result.limits_kwh), slow_downs(result), METRIC)


def test_what_slowed_the_car_is_told_with_its_main_reason():
    title, words = told(UDDS)
    assert f"{100 * UDDS.captured_share:.0f} % of the braking" in title
    assert limit_text("low_speed_fade", METRIC) in title and "mostly" not in title
    assert f"over {len(slow_downs(UDDS))} slow-downs" in words and f"{UDDS.wheel_braking_kwh:.3f} kWh" in words
    winter = driven(conditions=Conditions(ambient_c=-10))
    main = max(winter.limits_kwh, key=winter.limits_kwh.__getitem__)
    assert len(winter.limits_kwh) > 1 and f"mostly because {limit_text(main, METRIC)}" in told(winter)[0]


@pytest.mark.parametrize(
    "friction, words",
    [({}, ""), ({"grip": 0.0}, ""), ({"grip": 2.0}, "because {grip}"),
     ({"grip": 1.41, "battery": 1.36}, "because {grip} and, nearly as much, because {battery}"),
     ({"grip": 1.0, "battery": 3.0}, "mostly because {battery}"),
     ({"grip": 4.0, "battery": 3.0, "motor_power": 2.0}, "most of all because {grip}")],
)  # fmt: skip
def test_mostly_is_said_of_more_than_half_and_of_no_tie(friction, words):
    reasons = {limit: limit_text(limit, METRIC) for limit in ("grip", "battery")}
    assert because(friction, METRIC) == words.format(**reasons)


def test_a_pedal_without_the_motor_is_told_as_the_reason():
    idle = driven(stop_and_go(1), brake_pedal="friction", driver=Driver(lift_off_mps2=0.0))
    title, _ = told(idle)
    assert idle.captured_share < 0.1 and f"The motor does {100 * idle.captured_share:.1f} %" in title
    assert title.endswith(f"friction helps because {limit_text('lift_off_only', METRIC)}")


def test_nothing_braked():
    assert told(driven(steady(60, 100)))[0] == "Nothing had to be braked on this drive"


def test_the_charge_is_told_from_start_to_end():
    title, words = over_time_words(timeline(UDDS), Display())
    assert title.startswith("Charge falls from 60 to") and title.endswith("in 23 minutes")
    assert f"at most {timeline(UDDS)['battery_kw'].max():.0f} kW" in words
    assert "57 mph" in over_time_words(timeline(UDDS), Display(us=True))[1]


def test_a_small_change_of_charge_is_told_with_a_decimal():
    title, _ = over_time_words(timeline(driven(steady(50, 120))), Display())
    assert "60.0 to 59." in title


def test_charge_that_rises_and_a_battery_that_only_takes():
    assert "rises" in over_time_words(timeline(DOWN), Display())[0]
    only_takes = pd.DataFrame(
        {"soc": [0.5, 0.6], "step_s": [60.0, 60.0], "battery_kw": [-3.0, -2.0], "speed_kmh": [50.0, 50.0]}
    )
    words = over_time_words(only_takes, Display())[1]
    assert "gives" not in words and "puts at most 3.0 kW into it, and for 2.0 minutes it is charged" in words


def test_one_run_is_told_beside_where_half_of_the_bands_cars_lie():
    """The run with middle figures may stand at the edge of the band: it is no run of the middle car."""
    scenario = starting_drives()["town"][2]
    result = drive(scenario)
    answer = answer_of(result, samples_of(scenario, result, 40))
    words = one_run_words(result, answer, Display())
    run, band = result.saved_share, answer.saved_share
    assert f"which saves {100 * run:.0f} %" in words and f"half of which save under {100 * band.mid:.0f} %" in words
    assert words.count(". ") == 1
    assert "is of many cars" in one_run_words(result, None, Display())
