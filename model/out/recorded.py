"""One recorded drive beside the model: driven by the modelled car, over time, and with its band."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TypedDict

import numpy as np
import pandas as pd

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.describe.units import J_PER_KWH, KMH_PER_MPS
from model.kernel.savings import Result, evaluate
from model.out.answers import points
from model.sampling.drives import draws_of
from model.sampling.own_part import OPEN_KEY, own_part
from model.sampling.uncertainty import PROCESSORS, RUNS, Band, hypercube, run_each
from model.traces.logs import Recording, read_recording
from model.traces.recorded_csv import HowFar, untold
from model.traces.route_only import RouteSettings

OWN = "own_part of a recording"


def drive_recording(
    file: Path, scenario: Scenario, given: frozenset[str], route: RouteSettings | None = None, how_far: HowFar = untold
) -> tuple[Recording, Scenario, Result]:
    """Drive a recording; its own charge and air temperature stand in for what was not `given`, by keys.

    With `route` positions without times are driven too, by the scenario's driver.

    Raises
    ------
    InputError
        Where the file cannot be read or its drive cannot be driven.
    """
    recording = read_recording(file, route=None if route is None else (scenario.driver, route), how_far=how_far)
    return recording, *drive_as_recorded(recording, scenario, given)


def drive_as_recorded(recording: Recording, scenario: Scenario, given: frozenset[str]) -> tuple[Scenario, Result]:
    """The same of a recording that has been read."""
    trace = recording.trace
    if recording.soc_start is not None and "soc_start" not in given:
        scenario = scenario.with_setting("soc_start", recording.soc_start)
    if "ambient_c" in given:
        trace = replace(trace, ambient_c=None)
    elif trace.ambient_c is not None:
        scenario = scenario.with_setting("ambient_c", float(trace.ambient_c.mean()))
    return scenario, evaluate(trace, car_of(scenario), scenario.conditions, scenario.driver)


def energy_over_time(recording: Recording, result: Result) -> pd.DataFrame:
    """What left the battery less what came back until each moment [kWh]: measured, where it was, and modelled.

    One row a step, with `minutes` since the start, `speed_kmh` at its end, and how far it lies `above_start_m`: who has
    the table cannot tell where the drive began.
    """
    trace = result.trace
    steps = {"measured_kwh": recording.power_w, "modelled_kwh": result.run.terminal_w[0]}
    energies = {name: np.cumsum(watts * trace.step_s) / J_PER_KWH for name, watts in steps.items() if watts is not None}
    return pd.DataFrame(
        {"minutes": trace.time_s[1:] / 60, "speed_kmh": trace.speed_mps[1:] * KMH_PER_MPS,
         "above_start_m": trace.elevation_m[1:] - trace.elevation_m[0]} | energies
    )  # fmt: skip


class Doubt(TypedDict):
    """What a recorded drive would come to without the scatter that may be a restless foot's, less what it comes to.

    Of the net energy as a share of it [1], of the recovered share r as a difference [1], None where nothing is given.
    """

    net_share: float
    recovered_difference: float | None


def doubt_of_recording(recording: Recording, result: Result) -> Doubt | None:
    """How far an answer may be off by scatter that was left in the speed; None where none was, or nothing is taken."""
    if recording.in_doubt is None or result.net_kwh <= 0:
        return None
    trace = replace(
        result.trace, speed_mps=recording.in_doubt.speed_mps, elevation_m=recording.in_doubt.elevation_m
    )
    other = evaluate(trace, result.car, result.conditions, result.driver)
    shares = result.recovered_share, other.recovered_share
    return {
        "net_share": other.net_kwh / result.net_kwh - 1,
        "recovered_difference": None if shares[0] is None or shares[1] is None else shares[1] - shares[0],
    }


class RecordedBand(TypedDict):
    """Low, mid and high of what a recorded drive comes to, by the keys of answers."""

    battery_out_kwh: list[float]
    battery_in_kwh: list[float]
    battery_net_kwh: list[float]
    recovered_share_of_output: list[float] | None


def band_of_recording(
    scenario: Scenario, result: Result, runs: int = RUNS, processors: int = PROCESSORS
) -> RecordedBand:
    """Low, mid and high of what a recorded drive takes out, puts back and needs on balance [kWh], and of r [1].

    Over `runs` drawn cars; what was measured weights none of them. A single measured drive has its part of its own
    (`model.sampling.own_part`) in all energy at the terminals alike: it widens the energies and cancels in r.

    Raises
    ------
    InputError
        Where what is printed or shown of the car fits none of the drawn cars.
    """
    drawn = draws_of(scenario, runs, result.trace)
    out_j, in_j = run_each(
        result.trace, result.car, result.conditions, result.driver, drawn, lambda run: (run.out_j, run.in_j), (True,),
        processors=processors,
    )  # fmt: skip
    own = own_part(hypercube([OWN], runs)[OWN]) if OPEN_KEY in drawn else 1.0
    return {
        "battery_out_kwh": points(Band.of(out_j * own / J_PER_KWH)),
        "battery_in_kwh": points(Band.of(in_j * own / J_PER_KWH)),
        "battery_net_kwh": points(Band.of((out_j - in_j) * own / J_PER_KWH)),
        "recovered_share_of_output": points(Band.of(in_j / out_j)) if out_j.min() > 0 else None,
    }
