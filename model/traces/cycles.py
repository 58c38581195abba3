"""Standard drive cycles, from the regulations' own tables in ``assets/cycles/``."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from model.describe.fields import InputError
from model.describe.figures import Several
from model.describe.scenario import Conditions
from model.describe.tables import ASSETS
from model.describe.trace import Trace
from model.describe.units import KMH_PER_MPS, MPS_PER_MPH


@dataclass(frozen=True)
class Cycle:
    """One published schedule: its file, the regulation, and which seconds of it are meant."""

    file: str
    regulation: str
    start_s: int = 0
    end_s: int | None = None


_WLTP = "UN GTR No. 15, Annex 1; UN R154"
_NEDC = "UN R83, Annex 4a"
CYCLES = {
    "udds": Cycle("udds", "40 CFR Part 86, App. I (a)"),
    "hwfet": Cycle("hwfet", "40 CFR Part 600, App. I"),
    "us06": Cycle("us06", "40 CFR Part 86, App. I (g)"),
    "nycc": Cycle("nycc", "US EPA dynamometer schedules"),
    "wltc3b": Cycle("wltc_class3b", _WLTP),
    "wltc3b-low": Cycle("wltc_class3b", _WLTP, 0, 589),
    "wltc3b-medium": Cycle("wltc_class3b", _WLTP, 589, 1022),
    "wltc3b-high": Cycle("wltc_class3b", _WLTP, 1022, 1477),
    "wltc3b-extra-high": Cycle("wltc_class3b", _WLTP, 1477, 1800),
    "nedc": Cycle("nedc", _NEDC),
    "nedc-urban": Cycle("nedc", _NEDC, 0, 780),
    "nedc-extra-urban": Cycle("nedc", _NEDC, 780, None),
}


LABORATORY = Conditions(ambient_c=20.0, cabin=False, soc_start=0.6)
"""Where cycles are driven: warm, heating and cooling off; at 20 °C the measured road load holds as it stands, as a
dynamometer sets it. Part-charged, so that the battery takes all."""


@cache
def cycle_trace(name: str) -> Trace:
    """The trace of a standard cycle on a flat road, by its name in `CYCLES`; driven warm, as in the laboratory.

    Raises
    ------
    InputError
        Where there is no cycle of that name.
    """
    if name not in CYCLES:
        raise InputError("not-one-of", what="cycle", given=str(name), known=Several(tuple(CYCLES)))
    cycle = CYCLES[name]
    with open(ASSETS / "cycles" / f"{cycle.file}.csv", encoding="utf-8") as file:
        unit = MPS_PER_MPH if "mph" in file.readline() else 1 / KMH_PER_MPS
        time_s, speed = np.loadtxt(file, delimiter=",", unpack=True)
    within = (time_s >= cycle.start_s) & (time_s <= (np.inf if cycle.end_s is None else cycle.end_s))
    time_s = time_s[within] - cycle.start_s
    return Trace(
        time_s=time_s, speed_mps=speed[within] * unit, elevation_m=np.zeros(len(time_s)), name=name, warmed_up=True
    )


def cycles_in_turn(*names: str) -> Trace:
    """Standard cycles driven one after the other without a pause; `leg` counts them from 0."""
    traces = [cycle_trace(name) for name in names]
    starts = np.cumsum([0.0, *(trace.duration_s for trace in traces)])
    # every cycle begins and ends at rest: one point stands for both
    time_s = np.concatenate([trace.time_s[1:] + start for trace, start in zip(traces, starts, strict=False)])
    speed = np.concatenate([trace.speed_mps[1:] for trace in traces])
    return Trace(
        time_s=np.append(0.0, time_s),
        speed_mps=np.append(traces[0].speed_mps[0], speed),
        elevation_m=np.zeros(len(time_s) + 1),
        name=", ".join(names),
        leg=np.repeat(np.arange(len(traces)), [len(trace.step_s) for trace in traces]),
        warmed_up=True,
    )
