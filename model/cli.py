"""The command line: the same model, one JSON object out, one sentence on error."""

from __future__ import annotations

import argparse
import json
import math
import sys
from collections.abc import Mapping, Sequence
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any, NoReturn

from model import MODEL_VERSION
from model.claims import check, claims, question, question_from_json
from model.cycles import CYCLES, cycle_trace
from model.drives import drive, samples_of
from model.fields import InputError
from model.grip_margin import BEND_RADIUS_M, GRADE_PCT, SPEED_KMH, grip_check
from model.hybrid import fuel_answers, has_engine
from model.lift_off_advice import RULES, advise
from model.lift_off_curves import curves_of
from model.logs import read_recording
from model.parameters import DEFAULT_CLASS, car_from
from model.range_figure import TESTS, range_on_road
from model.savings import Result, evaluate
from model.scenario import Scenario
from model.scenario_io import (
    read_json,
    scenario_from_json,
    scenario_to_json,
    with_car,
    with_settings,
)
from model.slow_down import FROM_KMH, TO_KMH, compare
from model.stopping import emergency_answers
from model.uncertainty import HIGH_SHARE, LOW_SHARE, RUNS, SEED, Band
from model.units import KMH_PER_MPS

SIGNIFICANT_DIGITS = 6


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise InputError(f"{message[0].upper()}{message[1:]}; see python -m model --help.")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="python -m model", description=__doc__)
    verbs = parser.add_subparsers(dest="verb", required=True, parser_class=_Parser)

    def verb(name: str, about: str) -> argparse.ArgumentParser:
        one = verbs.add_parser(name, help=about, description=about)
        one.add_argument("--car", help=f"a class id or a car file; {DEFAULT_CLASS} when left out")
        one.add_argument("--set", action="append", default=[], metavar="KEY=VALUE", help="change one setting")
        one.add_argument("--band", action="store_true", help="add the 5 to 95 %% band over the assumed figures")
        return one

    verb("cycle", "a standard cycle").add_argument("name", help=", ".join(CYCLES))
    described = verb("drive", "a described drive")
    described.add_argument("scenario", type=Path, help="a scenario file (JSON)")
    described.add_argument("--test-range-km", help="add the range on this drive of a car with this printed range")
    described.add_argument("--test", default="wltc3b", help=f"what was printed: {', '.join(TESTS)}; wltc3b if left out")
    described.add_argument("--advise", action="store_true", help="add the advice on lift-off strength")
    verb("log", "a recorded drive").add_argument("file", type=Path, help="a recording (.csv or .gpx)")
    stop = verb("stop", "one slow-down under the microscope")
    stop.add_argument("--from-kmh", required=True, help="speed at its start")
    stop.add_argument("--to-kmh", default="0", help="speed at its end; 0 when left out")
    stop.add_argument("--equal-distance", action="store_true", help="all ways over the road that rolling takes")
    grip = verb("grip", "lift-off against available grip")
    grip.add_argument("--speed-kmh", default="50", help="speed; 50 when left out")
    grip.add_argument("--bend-radius-m", help="radius of the bend; straight on when left out")
    grip.add_argument("--grade-pct", default="0", help="slope; downhill is negative")
    claim = verb("claim", "a claim, tested; without an id, all of them")
    claim.add_argument("id", nargs="?", help="a claim's id, or an answer (.json) to be tested again")
    return parser


def settings_from(pairs: Sequence[str]) -> dict[str, str]:
    """The ``KEY=VALUE`` pairs of ``--set``."""
    settings = {}
    for pair in pairs:
        key, equals, value = pair.partition("=")
        if not equals:
            raise InputError(f"--set {pair!r}: the form is KEY=VALUE, such as ambient_c=5.")
        settings[key.strip()] = value.strip()
    return settings


def scenario_from_options(base: Scenario, options: argparse.Namespace) -> tuple[Scenario, set[str]]:
    """The scenario with ``--car`` and ``--set`` put in, and the keys that were given."""
    given: set[str] = set()
    if options.car is not None:
        car: Any = options.car
        if car.endswith(".json"):
            car = read_json(Path(car))
            given |= set(car) if isinstance(car, Mapping) else set()
        base = with_car(base, car)
    settings = settings_from(options.set)
    scenario = with_settings(base, settings)
    car_from(scenario.car_class, dict(scenario.stated))
    return scenario, given | set(settings)


def _answer(result: Result, scenario: Scenario, options: argparse.Namespace) -> dict[str, Any]:
    answer = result.answers() | _described(scenario, legs=options.verb == "drive")
    if has_engine(result.car):
        answer["fuel"] = fuel_answers(scenario, result)
    if options.band:
        samples = samples_of(scenario, result)
        answer["band"] = {
            "quantiles": [LOW_SHARE, 0.5, HIGH_SHARE],
            "runs": RUNS,
            "seed": SEED,
            "energy_saved_share": _points(Band.of(samples.saved_share)),
            "saved_kwh": _points(Band.of(samples.saved_kwh)),
            "battery_net_kwh": _points(Band.of(samples.net_kwh)),
        }
    return answer


def _described(scenario: Scenario, *, legs: bool = False) -> dict[str, Any]:
    described = scenario_to_json(scenario)
    if not legs:
        # something else is driven in place of the legs
        del described["legs"], described["return_trip"]
    return {"model_version": MODEL_VERSION, "scenario": described}


def _points(band: Band) -> list[float]:
    return [band.low, band.mid, band.high]


def _cycle(options: argparse.Namespace) -> dict[str, Any]:
    scenario, _ = scenario_from_options(Scenario(), options)
    car = car_from(scenario.car_class, dict(scenario.stated))
    result = evaluate(cycle_trace(options.name), car, scenario.conditions, scenario.driver)
    return {"cycle": options.name} | _answer(result, scenario, options)


def _drive(options: argparse.Namespace) -> dict[str, Any]:
    scenario, _ = scenario_from_options(scenario_from_json(read_json(options.scenario)), options)
    answer = _answer(drive(scenario), scenario, options)
    if options.test_range_km is not None:
        answer["range_on_road"] = range_on_road(scenario, options.test_range_km, options.test).as_json()
    return answer | ({"advice": _advice(scenario)} if options.advise else {})


def _advice(scenario: Scenario) -> dict[str, Any]:
    advice = asdict(advise(curves_of(scenario)))
    for place, leg in enumerate(advice["legs"], 1):
        leg["leg"] = place
    return advice | {"rules": RULES}


def _stop(options: argparse.Namespace) -> dict[str, Any]:
    scenario, _ = scenario_from_options(Scenario(), options)
    car = car_from(scenario.car_class, dict(scenario.stated))
    start, end = FROM_KMH.parse(options.from_kmh), TO_KMH.parse(options.to_kmh)
    ways = compare(
        start / KMH_PER_MPS, end / KMH_PER_MPS, car, scenario.conditions, scenario.driver,
        equal_distance=options.equal_distance,
    )  # fmt: skip
    return {
        "from_kmh": start,
        "to_kmh": end,
        "equal_distance": options.equal_distance,
        "coast": ways.coast.answers(),
        "regen": ways.regen.answers(),
        "friction": ways.friction.answers(),
        "break_even_kmh": ways.break_even_kmh,
        "emergency": emergency_answers(scenario, start),
    } | _described(scenario)


def _log(options: argparse.Namespace) -> dict[str, Any]:
    scenario, given = scenario_from_options(Scenario(), options)
    recording = read_recording(options.file)
    if recording.soc_start is not None and "soc_start" not in given:
        scenario = scenario.with_setting("soc_start", recording.soc_start)
    if recording.trace.ambient_c is not None and "ambient_c" not in given:
        scenario = scenario.with_setting("ambient_c", float(recording.trace.ambient_c.mean()))
    trace = recording.trace
    if "ambient_c" in given:
        trace = replace(trace, ambient_c=None)
    car = car_from(scenario.car_class, dict(scenario.stated))
    result = evaluate(trace, car, scenario.conditions, scenario.driver)
    answer = _answer(result, scenario, options)
    if recording.measured is not None:
        answer["measured"] = recording.measured.__dict__
    return answer | {"notes": list(recording.notes)}


def _grip(options: argparse.Namespace) -> dict[str, Any]:
    scenario, _ = scenario_from_options(Scenario(), options)
    return grip_check(
        car_from(scenario.car_class, dict(scenario.stated)),
        scenario.conditions,
        scenario.driver.lift_off_mps2,
        SPEED_KMH.parse(options.speed_kmh),
        BEND_RADIUS_M.parse(options.bend_radius_m),
        GRADE_PCT.parse(options.grade_pct),
    ) | _described(scenario)


def _claim(options: argparse.Namespace) -> dict[str, Any]:
    if options.id is None:
        return {"claims": [{"id": claim.id, "text": claim.text} for claim in claims().values()]}
    claim_id, settings = options.id, {} if options.car is None else {"car": options.car}
    if claim_id.endswith(".json"):
        asked = question_from_json(read_json(Path(claim_id)))
        claim_id, settings = asked.claim.id, dict(asked.given) | settings
    return check(question(claim_id, settings | settings_from(options.set))).as_json()


VERBS = {"cycle": _cycle, "drive": _drive, "log": _log, "stop": _stop, "grip": _grip, "claim": _claim}


def rounded(value: Any) -> Any:
    """Numbers at six significant digits, the same bytes on every machine; what is not finite becomes null."""
    if isinstance(value, Mapping):
        return {key: rounded(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [rounded(item) for item in value]
    if isinstance(value, float):
        return float(f"{value:.{SIGNIFICANT_DIGITS}g}") + 0.0 if math.isfinite(value) else None
    return value


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one verb; 0 when it answered, 2 when the input cannot be used."""
    try:
        options = _parser().parse_args(arguments)
        answer = VERBS[options.verb](options)
    except InputError as refused:
        print(refused, file=sys.stderr)
        return 2
    print(json.dumps(rounded(answer), indent=2, ensure_ascii=False))
    return 0
