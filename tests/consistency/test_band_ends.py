"""How far the ends of a band move with other cars of the same number; no end shows more digits than it bears."""

import numpy as np
import pytest

from model.describe.figures import Shares
from model.describe.parameters import open_figures_of
from model.describe.scenario_io import starting_drives
from model.sampling.drives import drive
from model.sampling.uncertainty import RUNS, SEED, Band, run_samples, sample
from model.words.quantities import Display

SEEDS = range(SEED, SEED + 12)
UNITS = 2
"""Of the last digit shown: how far another draw may move an end, one standard deviation."""


def last_digit(text):
    """The worth of the last digit of the second number in a text."""
    number = text.split(" to ")[-1].split()[0]
    return 10.0 ** -len(number.partition(".")[2])


@pytest.mark.parametrize("ambient_c", [20.0, -10.0])
@pytest.mark.parametrize("name", starting_drives())
def test_an_end_shows_no_digit_that_another_draw_would_change_much(name, ambient_c):
    scenario = starting_drives()[name][2].with_setting("ambient_c", ambient_c)
    driven = drive(scenario)
    shares, energies = [], []
    for seed in SEEDS:
        drawn = sample(open_figures_of(scenario), RUNS, seed)
        samples = run_samples(driven.trace, driven.car, driven.conditions, driven.driver, drawn)
        shares.append(Band.of(samples.saved_share))
        energies.append(Band.of(samples.saved_kwh))
    for bands, text, factor in (
        (shares, Display().figure(Shares(shares[0].low, shares[0].high)), 100),
        (energies, Display().range_text(energies[0], "kWh"), 1),
    ):
        moved = factor * np.std([(band.low, band.high) for band in bands], axis=0)
        ends = " and ".join(f"{end:.2g}" for end in moved)
        print(f"{name} at {ambient_c:g} °C: {text}; over {len(SEEDS)} seeds its ends move by {ends}")
        assert moved.max() <= UNITS * last_digit(text)
