"""The numbers behind claims, against the kernel one run at a time and against closed forms."""

from dataclasses import replace

import numpy as np
import pytest

from model.claims import quantities
from model.claims.draws import Draws, draw, one_at_a_time
from model.claims.inputs import INPUTS, Open
from model.claims.questions import question
from model.claims.roads import named_trace, over_the_hill, steady
from model.claims.verdicts import check
from model.describe.parameters import assumed_figures, car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.limits.emergency_stop import brakes_hold_mps2
from model.limits.motor_only_stop import motor_only_stop
from model.limits.stopping import braking_distance_m
from model.one_stop.bigger_motor import by_power
from model.one_stop.slow_down import compare
from model.traces.cycles import LABORATORY
from model.words.claim_inputs import part_words
from model.words.quantities import Display
from tests.refused import refuses


def drawn(claim_id, rows=slice(0, 30), **settings):
    draws = draw(question(claim_id, settings).declared, 1009, 11)
    columns, shares = ({key: column[rows] for key, column in part.items()} for part in (draws.columns, draws.shares))
    return Draws(columns, shares, draws.inputs)


def result_of(draws, row, trace):
    """One drawn run, driven alone as any drive is."""
    value = {key: column.tolist()[row] for key, column in draws.columns.items()}
    figures = {key: value[key] for key in assumed_figures(value["car"]) if key in value and key != "grip_level"}
    car = car_from(value["car"], figures | ({"brake_pedal": value["brake_pedal"]} if "brake_pedal" in value else {}))
    keys = ("ambient_c", "cabin", "soc_start", "grip_level", "preconditioned")
    around = {key: value[key] for key in keys if key in value}
    conditions = Conditions(**({"cabin": False, "soc_start": LABORATORY.soc_start} | around))
    return evaluate(trace, car, conditions, Driver(lift_off_mps2=value.get("lift_off_mps2", 1.0)))


def driven(values):
    """What was measured, without the cars that could not drive."""
    return values[np.isfinite(values)]


def test_shares_are_those_of_drives_driven_alone():
    draws = drawn("range-gain-in-town")
    shares = quantities.share_of_drive(draws)
    for row in (0, 7, 19, 26):
        alone = result_of(draws, row, named_trace(draws["cycle"][row]))
        assert alone.followed
        assert shares[row] == pytest.approx(100 * alone.range_gain, rel=1e-4)
    alone = result_of(draws, 7, named_trace(draws["cycle"][7]))
    others = {"recovered": "recovered_share", "range_lost": "saved_share", "electric_braking": "captured_share"}
    for phrase, name in others.items():
        share = quantities.share_of_drive(draws.replaced(denominator=phrase))[7]
        assert share == pytest.approx(100 * getattr(alone, name), rel=1e-4)


def test_cars_that_cannot_keep_up_or_run_empty_measure_nothing_and_are_counted():
    draws = drawn("heavier-recovers-more", slice(0, 12), cycle="us06", car="family-hatch")
    followed = [result_of(draws, row, named_trace("us06")).followed for row in range(len(draws))]
    assert {True, False} == set(followed)
    assert (np.isfinite(quantities.net_j_per_m(draws)) == followed).all()
    found = check(question("heavier-recovers-more", {"cycle": "us06", "car": "family-hatch"}))
    assert found.left_out > 0 and len(found.values) + found.left_out == found.question.claim.runs
    assert np.isnan(quantities.net_j_per_m(draws.replaced(soc_start=0.001))).all()
    with refuses("none of the sampled cars can drive this"):
        check(question("heavier-recovers-more", {"cycle": "us06", "car": "city-car"}))


def test_work_spared_and_electric_share_are_those_of_drives_driven_alone():
    draws = drawn("brakes-last-longer").replaced(counted="energy")
    spared, electric = quantities.friction_work_spared(draws), quantities.electric_share(draws)
    for row in (2, 12):
        alone = result_of(draws, row, named_trace(draws["cycle"][row]))
        work = alone.wheel_friction_kwh / alone.friction_only_wheel_friction_kwh
        assert spared[row] == pytest.approx(100 * (1 - work), abs=0.01)
        assert electric[row] == pytest.approx(100 * alone.captured_share, abs=0.01)


def test_slow_downs_counted_are_fewer_than_energy_where_every_stop_ends_on_the_discs():
    draws = drawn("electric-share-of-braking", counted="energy", cycle="udds", brake_pedal="blended")
    energy, counted = (quantities.electric_share(draws.replaced(counted=how)) for how in ("energy", "slow_downs"))
    assert (counted >= 0).all() and (counted <= 100).all()
    assert np.median(counted) < np.median(energy)


def test_kinetic_energy_is_four_times_to_machine_precision():
    assert quantities.kinetic_ratio(drawn("four-times-the-energy")) == pytest.approx(4, rel=1e-15)


def test_a_blended_pedal_makes_lift_off_strength_indifferent():
    gain = quantities.range_by_lift_off(drawn("lift-off-changes-range", brake_pedal="blended"))
    assert np.abs(driven(gain)).max() < 0.2
    assert driven(quantities.range_by_lift_off(drawn("lift-off-changes-range", brake_pedal="friction"))).min() > 0.2


def test_a_motor_of_the_same_size_recovers_the_same():
    draws = drawn("bigger-motor-recovers-more").replaced(motor_factor=1.0)
    assert driven(quantities.recovered_by_motor(draws)) == pytest.approx(0, abs=1e-9)


def test_a_bigger_motor_recovers_as_on_the_page_of_motors():
    said = {"car": "city-car", "cycle": "wltc3b", "motor_factor": "2"}
    draws, _ = one_at_a_time(question("bigger-motor-recovers-more", said).declared)
    alone = by_power(evaluate(named_trace("wltc3b"), car_from("city-car"), LABORATORY, Driver()))
    recovered = alone.set_index("power_times")["recovered_kwh"]
    base = draws.replaced(payload_kg=0.0, regen_cap_mps2=car_from("city-car").regen_cap_mps2)
    found = quantities.recovered_by_motor(base)[0]
    assert found == pytest.approx(100 * (recovered[2.0] / recovered[1.0] - 1), abs=0.3)


def test_a_hill_climbed_and_descended():
    trace = over_the_hill(6.0, 60.0, 300.0)
    assert trace.climb_m == pytest.approx(300) and trace.descent_m == pytest.approx(300)
    assert trace.distance_m == pytest.approx(2 * 300 / np.sin(np.arctan(0.06)))
    draws = drawn("free-charge-on-descents")
    back = quantities.back_from_climb(draws)
    # at 80 km/h down 3 % a van with much drag takes all of the hill to keep its speed
    held_by_air = (draws["grade_pct"] == 3) & (draws["speed_kmh"] == 80)
    assert back.min() >= 0 and back[~held_by_air].min() > 0 and back.max() < 75


@pytest.mark.parametrize(
    "said",
    [{"trailer_kg": "1500"}, {"payload_kg": "400"}, {"surface": "snow"}, {"wind_kmh": "40"}, {"altitude_m": "2500"},
     {"soc_start": "1"}, {"battery_temp_c": "-20"}, {"parked_c": "-20"}, {"tyres_warm": "no"}, {"cabin": "yes"},
     {"lift_off_mps2": "0"}],
)  # fmt: skip
def test_the_test_cycle_is_driven_by_the_car_as_certified(said):
    plain, changed = drawn("motorway-range"), drawn("motorway-range", **said)
    assert set(said) <= set(changed.columns)
    reference = [quantities.net_j_per_m(quantities.as_certified(draws)) for draws in (plain, changed)]
    assert reference[0] == pytest.approx(reference[1], rel=1e-12)


def test_a_trailer_costs_on_the_motorway_what_the_same_drives_say():
    said = {"car": "family-hatch", "trailer_kg": "1000", "speed_kmh": "100", "ambient_c": "15", "cabin": "no"}
    draws, _ = one_at_a_time(question("motorway-range", said | {"wind_kmh": "0", "payload_kg": "0"}).declared)
    car = car_from("family-hatch")
    towing = Conditions(ambient_c=15.0, cabin=False, soc_start=0.9, trailer_kg=1000.0)
    on_road = evaluate(steady(100.0), car, towing, Driver())
    certified = evaluate(named_trace("wltc3b"), car, replace(LABORATORY, ambient_c=quantities.WARM_C), Driver())
    lost = 100 * (1 - (certified.net_kwh / certified.distance_km) / (on_road.net_kwh / on_road.distance_km))
    assert quantities.range_below_test_cycle(draws)[0] == pytest.approx(lost, abs=0.01) and lost > 45


def test_cold_is_held_against_a_warm_dry_day():
    plain = drawn("cold-halves-range", cabin="no", car="family-hatch", preconditioned="no")
    snow, parked = plain.replaced(surface="snow"), plain.replaced(parked_c=-20.0)
    assert (driven(quantities.range_lost_to_cold(snow) - quantities.range_lost_to_cold(plain)) > 5).all()
    assert (driven(quantities.range_lost_to_cold(parked) - quantities.range_lost_to_cold(plain)) > -1e-9).all()


def test_each_run_may_start_at_a_height_of_its_own():
    draws = drawn("range-gain-in-town", slice(0, 40)).replaced(altitude_m=np.linspace(0.0, 3000.0, 40))
    low, high = (quantities.net_j_per_m(draws.replaced(altitude_m=metres)) for metres in (0.0, 3000.0))
    between = quantities.net_j_per_m(draws)
    assert between[0] == pytest.approx(low[0]) and between[-1] == pytest.approx(high[-1])


@pytest.mark.parametrize(
    "claim_id, said",
    [("four-times-comes-back", {"speed_kmh": "10"}), ("four-times-comes-back", {"soc_start": "1"}),
     ("electric-share-of-braking", {"cycle": "hill", "counted": "slow_downs"}),
     ("brakes-last-longer", {"cycle": "hill", "wind_kmh": "80"}),
     ("brakes-last-longer", {"cycle": "hill", "trailer_kg": "0", "wind_kmh": "100"})],
)  # fmt: skip
def test_a_ratio_to_nothing_is_refused(claim_id, said):
    with refuses("a ratio to next to nothing"):
        check(question(claim_id, said))


def test_a_ratio_keeps_apart_what_is_nothing_and_what_could_not_be_driven():
    found = quantities.over(np.array([1.0, 2.0, 0.0, np.nan]), np.array([0.5, 0.001, 0.0, np.nan]), np.ones(4))
    assert found[0] == 2 and np.isinf(found[1:3]).all() and np.isnan(found[3])
    lost = quantities.range_lost(np.array([1.0, 1.0, 0.0]), np.array([2.0, 0.0, 0.0]))
    assert lost[0] == 50 and np.isinf(lost[1:]).all()


def test_cold_costs_nothing_where_it_is_not_cold():
    draws = drawn("cold-halves-range").replaced(ambient_c=quantities.WARM_C)
    assert driven(quantities.range_lost_to_cold(draws)) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(
    "from_kmh, slower_kmh, slowing", [(50, 30, 1.3), (80, 30, 1.3), (120, 40, 2.0), (100, 45, 0.8)]
)
def test_coasting_saves_what_the_microscope_says(from_kmh, slower_kmh, slowing):
    draws, _ = one_at_a_time(question("coasting-always-wins").declared)
    one = draws.replaced(speed_kmh=from_kmh, slower_by_kmh=slower_kmh, slowing_mps2=slowing, ambient_c=20.0)
    ways = compare(
        from_kmh / 3.6, (from_kmh - slower_kmh) / 3.6, car_from("family-hatch"), LABORATORY, Driver(),
        slowing_mps2=slowing,
    )  # fmt: skip
    saved = ways.regen.battery_wh - ways.coast.battery_wh
    assert quantities.saved_by_coasting(one.replaced(time_made_up=False))[0] == pytest.approx(saved, rel=0.05, abs=0.5)
    assert (quantities.saved_by_coasting(one.replaced(time_made_up=True))[0] > 0) == (from_kmh < ways.break_even_kmh)


def test_stops_are_those_of_the_stopping_module():
    draws, _ = one_at_a_time(question("stops-as-fast-as-brakes", {"speed_kmh": "80", "surface": "dry"}).declared)
    car = car_from("family-hatch", {"fade_start_kmh": 0.01, "fade_end_kmh": 0.0})
    conditions = Conditions(ambient_c=15.0, cabin=False, soc_start=0.6)
    by_motor = motor_only_stop(car, conditions, 80.0).distance_m
    by_brakes = braking_distance_m(80 / 3.6, brakes_hold_mps2(conditions, 0.0, 15.0))
    assert quantities.stop_by_motor_over_brakes(draws)[0] == pytest.approx(by_motor / by_brakes, rel=0.08)


def test_a_longer_delay_costs_in_proportion():
    draws = drawn("switching-delay")
    short, long = (driven(quantities.lost_to_delay(draws.replaced(delay_ms=ms))) for ms in (100.0, 300.0))
    assert long == pytest.approx(3 * short)


def test_a_hybrid_keeps_its_place_in_the_band():
    draws = drawn("hybrid-against-battery-car")
    hybrids = draws.in_cars(draws["hybrid"])
    figures = assumed_figures("full-hybrid")["mass_kg"]
    full = draws["hybrid"] == "full-hybrid"
    assert figures.low <= hybrids["mass_kg"][full].min() and hybrids["mass_kg"][full].max() <= figures.high
    assert (hybrids["ambient_c"] == draws["ambient_c"]).all() and "sustain_soc" not in draws.columns
    said = drawn("hybrid-against-battery-car", accessory_w="333", brake_pedal="friction")
    assert set(said.in_cars(said["hybrid"])["accessory_w"]) == {333.0}
    assert set(said.in_cars(said["hybrid"])["brake_pedal"]) == {"friction"}
    assert (np.argsort(hybrids["mass_kg"][full]) == np.argsort(draws.shares["mass_kg"][full])).all()


def test_open_inputs_describe_themselves():
    def described(key, over):
        return part_words(INPUTS[key], over.part, Display())

    assert described("lift_off_mps2", Open((0.3, 1.0, 2.0), band=True)) == "0.3 to 2 m/s²"
    assert described("car", Open(("city-car", "large-suv"))) == "city car or large SUV"
    assert described("cycle", Open(("udds",))) == "UDDS city"
