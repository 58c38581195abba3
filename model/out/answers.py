"""Answers as JSON: the same bytes from the command line and from the pages.

An answer holds the scenario it is for. Given back, it is answered again with the same parts, so whatever a page hands
out is reproduced by ``python -m model drive FILE``.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, overload

from model import MODEL_VERSION
from model.describe.fields import Field, InputError
from model.describe.scenario import Scenario
from model.describe.scenario_io import scenario_from_json, scenario_to_json
from model.kernel.savings import Result
from model.sampling.beside_now import beside_now
from model.sampling.drives import Bands, answer_of, drive, effective_cars, samples_of, year_of
from model.sampling.hybrid import fuel_answers, fuel_of_year, has_engine
from model.sampling.range_figure import RANGE_KM, RangeOnRoad, range_on_road
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE, RUNS, SEED, Band
from model.words.bands import band_promise
from model.words.refusals import COMMAND_LINE

if TYPE_CHECKING:
    from model.out.comparison import Difference

SIGNIFICANT_DIGITS = 6
RUNS_FIELD = Field("runs", "count", "", "band-runs", 1, 5000, default=RUNS)


@dataclass(frozen=True)
class Asked:
    """A described drive, and what to answer about it beside the drive itself.

    `band_runs` and `year_runs` are the sampled cars behind the band and behind each season of the year, 0 for neither.
    `test_range` is a printed range [km] and the test it is from, None where it is not asked about.
    """

    scenario: Scenario
    band_runs: int = 0
    year_runs: int = 0
    advice: bool = False
    test_range: tuple[float, str] | None = None


def asked_by(data: object) -> Asked:
    """What a scenario file asks, or an answer given earlier; raises `InputError` where it cannot be read."""
    if not isinstance(data, Mapping) or "scenario" not in data:
        return Asked(scenario_from_json(data))

    def part(name: str) -> Mapping[str, object] | None:
        given = data.get(name)
        if given is not None and not isinstance(given, Mapping):
            raise InputError("answer-part-no-object", part=name, given=str(given))
        return given

    band, year, road = part("band"), part("year"), part("range_on_road")
    return Asked(
        scenario_from_json(data["scenario"]),
        band_runs=0 if band is None else int(RUNS_FIELD.number(band.get("runs", RUNS))),
        year_runs=0 if year is None else int(RUNS_FIELD.number(year.get("runs", RUNS))),
        advice=part("advice") is not None,
        test_range=None if road is None else (RANGE_KM.number(road.get("test_range_km")), str(road.get("test"))),
    )


def drive_answer(asked: Asked) -> dict[str, object]:
    """The answer for a described drive, every key ending in its unit."""
    scenario = asked.scenario
    result = drive(scenario)
    answer = result_answer(result, scenario, band_runs=asked.band_runs, legs=True)
    if asked.test_range is not None:
        answer["range_on_road"] = _waterfall(range_on_road(scenario, *asked.test_range))
    if asked.advice:
        answer["advice"] = _advice(scenario)
    if asked.year_runs:
        year = year_of(scenario, asked.year_runs)
        answer["year"] = of_year = {"runs": asked.year_runs, "seed": SEED} | asdict(year)
        if beside := beside_now(year, scenario.year, result.car):
            of_year["beside_now"] = asdict(beside)
        if has_engine(result.car):
            of_year["saved_fuel_l"] = asdict(fuel_of_year(scenario))
    return answer


def result_answer(result: Result, scenario: Scenario, *, band_runs: int = 0, legs: bool = False) -> dict[str, object]:
    """The answer for any drive; without `legs` something else was driven in place of the scenario's legs."""
    answer = result.answers() | described(scenario, legs=legs)
    if has_engine(result.car):
        answer["fuel"] = fuel_answers(scenario, result)
    limit = scenario.year.daily_charge_limit
    # how far an engine reaches depends on its tank
    reaches = not has_engine(result.car)
    if reaches:
        answer |= {"range_km": result.range_km(), "daily_range_km": result.range_km(limit)}
    if band_runs:
        bands = answer_of(result, samples_of(scenario, result, band_runs), limit)
        band = drawn_for(band_runs) | {"cars_unable": bands.unable} | _bands(bands)
        if (worth := effective_cars(scenario, band_runs, result.trace)) is not None:
            band["effective_cars"] = worth
        if reaches:
            ranges = {name: getattr(bands, name) for name in ("range_km", "daily_range_km", "range_gain_km")}
            band |= {name: points(ends) for name, ends in ranges.items()}
        answer["band"] = band
    return answer


def compare_answer(scenarios: Sequence[Scenario]) -> dict[str, object]:
    """Drives side by side, and what each has more than the first: bands over the same draws, run by run."""
    # imported where it is asked for: with the tables of pandas, it takes as long as driving a cycle
    from model.out.comparison import difference, side_of, told_apart

    sides = [side_of(scenario, scenarios[0].car_class, beside=scenarios[0]) for scenario in scenarios]
    differences = [difference(side, sides[0]) for side in sides[1:]]
    return drawn_for(RUNS) | {
        "drives": [
            {"distance_km": side.reached_km, "described_km": side.described_km}
            | _bands(side.answer)
            | described(side.scenario, legs=True)
            for side in sides
        ],
        "more_than_the_first": [
            _bands(each)
            | {
                "wheel_friction_kwh": points(each.friction_kwh),
                "duration_s": each.duration_s,
                "told_apart": told_apart(each.net_kwh),
            }
            for each in differences
        ],
    }


def drawn_for(runs: int) -> dict[str, object]:
    """How a band was drawn."""
    promise = band_promise(COMMAND_LINE)
    return {"promise": promise, "quantiles": [LOW_SHARE, 0.5, HIGH_SHARE], "runs": runs, "seed": SEED}


def _bands(of: Bands | Difference) -> dict[str, object]:
    return {
        "energy_saved_share": points(of.saved_share),
        "saved_kwh": points(of.saved_kwh),
        "battery_net_kwh": points(of.net_kwh),
    }


def described(scenario: Scenario, *, legs: bool = False) -> dict[str, object]:
    """Which model answered, and to what."""
    data = scenario_to_json(scenario)
    if not legs:
        del data["legs"], data["return_trip"]
    return {"model_version": MODEL_VERSION, "scenario": data}


@overload
def points(band: Band) -> list[float]: ...


@overload
def points(band: None) -> None: ...


def points(band: Band | None) -> list[float] | None:
    """A band as an answer has it: low, mid, high."""
    return None if band is None else [band.low, band.mid, band.high]


def _advice(scenario: Scenario) -> dict[str, object]:
    from model.lift_off.advice import advise
    from model.lift_off.curves import curves_of
    from model.words.lift_off import advice_answers

    return advice_answers(advise(curves_of(scenario)), COMMAND_LINE)


def _waterfall(found: RangeOnRoad) -> dict[str, object]:
    """The way from a printed range to the road, each step with its name."""
    steps = [
        {"id": step.id, "label": COMMAND_LINE.say("road-step", step=step.id)} | asdict(step) for step in found.steps
    ]
    whole = {"middle_range_km": found.middle_range_km, "range_km": asdict(found.range_km)}
    return asdict(found) | {"steps": steps} | whole


def rounded(value: object) -> object:
    """Numbers at six significant digits, the same bytes on every machine; what is not finite becomes null."""
    if isinstance(value, Mapping):
        # what was given is kept digit by digit, or a file given back would ask for another drive
        return {key: item if key == "scenario" else rounded(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [rounded(item) for item in value]
    if isinstance(value, float):
        return float(f"{value:.{SIGNIFICANT_DIGITS}g}") + 0.0 if math.isfinite(value) else None
    return value


def as_text(answer: Mapping[str, object]) -> str:
    """The answer as JSON text."""
    return json.dumps(rounded(answer), indent=2, ensure_ascii=False) + "\n"
