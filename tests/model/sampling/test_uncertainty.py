"""Bands: the draw, the distribution, and that the same question gives the same bytes."""

import numpy as np
import pytest

from model.describe.parameters import Assumed, assumed_figures, car_from, open_figures
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.sampling.uncertainty import RUNS, Band, Samples, run_samples, sample, triangular
from model.traces.cycles import cycle_trace
from tests.made_traces import steady

WARM = Conditions(ambient_c=20.0, cabin=False)
CAR = car_from("family-hatch")
FIGURES = open_figures("family-hatch", {})
TRACE = cycle_trace("udds")


def figure(low, mid, high):
    return Assumed(low, mid, high, "assumed", "")


def test_half_of_the_figures_are_drawn_on_either_side_of_mid():
    shares = np.array([0.0, 0.5, 1.0])
    assert triangular(shares, 2.0, 3.0, 4.0) == pytest.approx([2, 3, 4])
    assert triangular(shares, 0.0, 1.0, 4.0) == pytest.approx([0, 1, 4])
    # a half thins out evenly: three quarters of it lie in the half of its reach that is nearer to mid
    assert triangular(np.array([0.125, 0.875]), 0.0, 1.0, 4.0) == pytest.approx([0.5, 2.5])
    assert triangular(shares, 5.0, 5.0, 5.0) == pytest.approx([5, 5, 5])


def test_draws_have_the_mean_of_the_triangle():
    drawn = sample({"mass_kg": figure(1000.0, 1600.0, 1900.0)}, 2000)["mass_kg"]
    assert drawn.mean() == pytest.approx((1000 + 4 * 1600 + 1900) / 6, rel=1e-3)
    assert drawn.min() >= 1000 and drawn.max() <= 1900


def test_every_equal_share_is_drawn_once():
    """Latin hypercube: one draw from each of the strata, for every figure, in its own order."""
    runs = 40
    drawn = sample({"a": figure(0.0, 0.5, 1.0), "b": figure(0.0, 0.5, 1.0)}, runs)
    for values in drawn.values():
        x = values[:, 0]
        share = np.where(x < 0.5, 2 * x**2, 1 - 2 * (1 - x) ** 2)
        assert sorted(np.floor(share * runs).astype(int)) == list(range(runs))
    assert abs(np.corrcoef(drawn["a"][:, 0], drawn["b"][:, 0])[0, 1]) < 0.4


def test_the_order_of_the_figures_does_not_matter():
    forwards = sample(FIGURES, 20)
    backwards = sample(dict(reversed(FIGURES.items())), 20)
    assert all(np.array_equal(forwards[key], backwards[key]) for key in FIGURES)


def test_a_figure_is_drawn_alike_whatever_else_is_drawn():
    alone = sample({"mass_kg": FIGURES["mass_kg"]}, 20)["mass_kg"]
    assert np.array_equal(alone, sample(FIGURES, 20)["mass_kg"])


def test_the_same_question_gives_the_same_bytes():
    first, second = (run_samples(TRACE, CAR, WARM, Driver(), sample(FIGURES, 40)) for _ in range(2))
    for name in ("out_kwh", "in_kwh", "friction_only_net_kwh"):
        assert getattr(first, name).tobytes() == getattr(second, name).tobytes()


def test_the_draw_is_the_one_it_has_always_been():
    """A draw that moved, with a new numpy say, would move every printed band."""
    drawn = sample({"mass_kg": figure(1650.0, 1800.0, 1950.0)}, 5)["mass_kg"][:, 0]
    assert drawn == pytest.approx(
        [1824.6616860780598, 1886.7907946687908, 1751.8657703738475, 1804.1033460843469, 1724.7719310871437], rel=1e-9
    )


def test_each_sampled_car_is_the_car_driven_alone():
    drawn = sample(FIGURES, 8)
    conditions = Conditions(ambient_c=-8.0)
    samples = run_samples(TRACE, CAR, conditions, Driver(), drawn)
    assert samples.net_kwh.shape == (8,)
    for index in (0, 3, 4, 7):
        stated = {key: float(values[index, 0]) for key, values in drawn.items() if key in vars(CAR)}
        level = {key: float(values[index, 0]) for key, values in drawn.items() if key not in vars(CAR)}
        alone = evaluate(TRACE, car_from("family-hatch", stated), Conditions(ambient_c=-8.0, **level), Driver())
        assert samples.net_kwh[index] == pytest.approx(alone.net_kwh, rel=1e-5)
        assert samples.friction_only_net_kwh[index] == pytest.approx(alone.friction_only_net_kwh, rel=1e-5)
        assert samples.saved_share[index] == pytest.approx(alone.saved_share, rel=1e-4)


def test_a_band_holds_the_middle_car_and_narrows_with_what_is_stated():
    middle = evaluate(TRACE, CAR, WARM, Driver())
    stated = ("mass_kg", "rolling_coefficient", "drag_area_m2", "accessory_w")
    known = {key: assumed_figures("family-hatch")[key].mid for key in stated}
    shares = ("open_pulling_share", "open_slowing_share")

    def band(figures, without=()):
        drawn = sample({key: this for key, this in figures.items() if key not in without}, 200)
        return Band.of(run_samples(TRACE, CAR, WARM, Driver(), drawn).net_kwh)

    def width(band):
        return band.high - band.low

    wide, narrow = (band(figures, shares) for figures in (FIGURES, open_figures("family-hatch", known)))
    assert wide.low < middle.net_kwh < wide.high
    assert width(wide) > 1.5 * width(narrow)
    # no statement of a figure narrows what the figures do not explain
    assert width(band(FIGURES)) > width(wide)


def test_nothing_open_is_one_run_of_the_car_itself():
    samples = run_samples(TRACE, CAR, WARM, Driver(), {})
    assert samples.net_kwh == pytest.approx([evaluate(TRACE, CAR, WARM, Driver()).net_kwh])


def test_a_band_is_the_five_to_ninety_five_per_cent_range():
    band = Band.of(np.arange(101.0))
    assert (band.low, band.mid, band.high) == (5, 50, 95)
    assert band.scaled(2) == Band(10, 100, 190)


def test_shares_of_the_samples():
    out, back, without, others = np.array([[10.0, 8.0], [2.0, 1.0], [10.0, 14.0], [0.0, 0.0]])
    samples = Samples(out, back, without, others, others, others)
    assert samples.net_kwh.tolist() == [8, 7]
    assert samples.saved_kwh.tolist() == [2, 7]
    assert samples.saved_share == pytest.approx([0.2, 0.5])


def test_two_hundred_runs():
    assert RUNS == 200 and sample(FIGURES)["mass_kg"].shape == (200, 1)


def test_a_figure_that_only_one_of_the_runs_feels_leaves_the_other_alike_in_all():
    """Where the motor hands over at low speed says nothing to a drive on friction brakes only."""
    drawn = sample({"fade_start_kmh": FIGURES["fade_start_kmh"]}, 8)
    samples = run_samples(TRACE, CAR, WARM, Driver(), drawn)
    assert samples.net_kwh.shape == samples.friction_only_net_kwh.shape == (8,)
    assert np.ptp(samples.friction_only_net_kwh) == 0 < np.ptp(samples.net_kwh)


@pytest.mark.parametrize("car_class", ["family-hatch", "full-hybrid"])
def test_any_figure_may_be_the_only_open_one(car_class):
    cold = Conditions(ambient_c=0.0)
    for key, figure in open_figures(car_class, {}).items():
        samples = run_samples(TRACE, car_from(car_class), cold, Driver(), sample({key: figure}, 3))
        assert samples.net_kwh.shape == samples.friction_only_net_kwh.shape == (3,)


def test_without_an_open_figure_there_is_one_car():
    assert run_samples(TRACE, CAR, WARM, Driver(), {}).net_kwh.shape == (1,)


def test_a_drive_of_many_hours_has_a_band_too():
    day_long = steady(20, 9 * 3600)
    assert run_samples(day_long, CAR, WARM, Driver(), sample(FIGURES, 2)).net_kwh.shape == (2,)
