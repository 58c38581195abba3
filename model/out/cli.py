"""The command line: the same model, one JSON object out, one sentence on error."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Mapping, Sequence
from io import TextIOWrapper
from pathlib import Path
from typing import NoReturn, cast

from model.describe.fields import InputError
from model.describe.figures import Several
from model.describe.parameters import DEFAULT_CLASS, car_of
from model.describe.scenario import Scenario
from model.describe.scenario_io import read_json, with_car, with_settings
from model.describe.units import KMH_PER_MPS
from model.kernel.savings import evaluate
from model.out.answers import Asked, as_text, asked_by, compare_answer, described, drive_answer, result_answer
from model.sampling.printed_tests import TESTS
from model.sampling.uncertainty import RUNS
from model.traces.cycles import CYCLES, cycle_trace
from model.words.quantities import Value
from model.words.refusals import COMMAND_LINE, refusal_words


class _Spoken(argparse.HelpFormatter):
    """Help in words from their messages, which are read only now: that takes as long as driving some cycles."""

    def _get_help_string(self, action: argparse.Action) -> str:
        return _told(action.help or "").replace("%", "%%")

    def add_text(self, text: str | None) -> None:
        super().add_text(text and _told(text))


def _told(text: str) -> str:
    if not text.startswith("cli-"):
        return text
    values: dict[str, Value] = {"cycles": Several(tuple(CYCLES), ""), "tests": Several(tuple(TESTS), "")}
    return COMMAND_LINE.say(text, car=DEFAULT_CLASS, **values)


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise InputError("command-unreadable", problem=message)


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="python -m model", description="cli-about", formatter_class=_Spoken)
    verbs = parser.add_subparsers(dest="verb", required=True, parser_class=_Parser)

    def verb(name: str, about: str) -> argparse.ArgumentParser:
        command = verbs.add_parser(name, help=about, description=about, formatter_class=_Spoken)
        command.add_argument("--car", help="cli-car")
        command.add_argument("--set", action="append", default=[], metavar="KEY=VALUE", help="cli-set")
        return command

    def banded(name: str, about: str) -> argparse.ArgumentParser:
        command = verb(name, about)
        command.add_argument("--band", action="store_true", help="cli-band")
        return command

    banded("cycle", "cli-cycle").add_argument("name", help="cli-cycle-name")
    drive = banded("drive", "cli-drive")
    drive.add_argument("scenario", type=Path, help="cli-drive-scenario")
    drive.add_argument("--test-range-km", help="cli-drive-test-range")
    drive.add_argument("--test", default="wltc3b", help="cli-drive-test")
    drive.add_argument("--advise", action="store_true", help="cli-drive-advise")
    drive.add_argument("--year", action="store_true", help="cli-drive-year")
    log = banded("log", "cli-log")
    log.add_argument("file", type=Path, help="cli-log-file")
    log.add_argument("--limit-kmh", help="cli-log-limit")
    log.add_argument("--lateral-mps2", help="cli-log-lateral")
    folder = banded("study", "cli-study")
    folder.add_argument("folder", type=Path, help="cli-study-folder")
    folder.add_argument("--out", type=Path, help="cli-study-out")
    folder.add_argument("--workers", default="1", help="cli-study-workers")
    folder.add_argument("--dask", metavar="ADDRESS", default="", help="cli-study-dask")
    cars = banded("cars", "cli-cars")
    cars.add_argument("table", type=Path, help="cli-cars-table")
    cars.add_argument("--cycles", default="udds,hwfet", help="cli-cars-cycles")
    beside = verb("compare", "cli-compare")
    beside.add_argument("scenarios", type=Path, nargs="+", help="cli-compare-scenarios")
    stop = verb("stop", "cli-stop")
    stop.add_argument("--from-kmh", required=True, help="cli-stop-from")
    stop.add_argument("--to-kmh", default="0", help="cli-stop-to")
    stop.add_argument("--equal-distance", action="store_true", help="cli-stop-equal-distance")
    grip = verb("grip", "cli-grip")
    grip.add_argument("--speed-kmh", default="50", help="cli-grip-speed")
    grip.add_argument("--bend-radius-m", help="cli-grip-bend")
    grip.add_argument("--grade-pct", default="0", help="cli-grip-grade")
    claim = verb("claim", "cli-claim")
    claim.add_argument("id", nargs="?", help="cli-claim-id")
    claim.add_argument("--run", metavar="N", help="cli-claim-run")
    return parser


def settings_from(pairs: Sequence[str]) -> dict[str, str]:
    """The ``KEY=VALUE`` pairs of ``--set``."""
    settings = {}
    for pair in pairs:
        key, equals, value = pair.partition("=")
        if not equals:
            raise InputError("set-without-value", given=pair, such_as="ambient_c=5")
        settings[key.strip()] = value.strip()
    return settings


def scenario_from_options(base: Scenario, options: argparse.Namespace) -> tuple[Scenario, set[str]]:
    """The scenario with ``--car`` and ``--set`` put in, and the keys that were given."""
    given: set[str] = set()
    if options.car is not None:
        car: object = options.car
        if options.car.endswith(".json"):
            car = read_json(Path(options.car))
            given |= set(car) if isinstance(car, Mapping) else set()
        base = with_car(base, car)
    settings = settings_from(options.set)
    scenario = with_settings(base, settings)
    car_of(scenario)
    return scenario, given | set(settings)


# What only some verbs need is imported in them: all of it takes longer than driving a cycle.


def _cycle(options: argparse.Namespace) -> dict[str, object]:
    scenario, _ = scenario_from_options(Scenario(), options)
    car = car_of(scenario)
    result = evaluate(cycle_trace(options.name), car, scenario.conditions, scenario.driver)
    return {"cycle": options.name} | result_answer(result, scenario, band_runs=RUNS if options.band else 0)


def _drive(options: argparse.Namespace) -> dict[str, object]:
    asked = asked_by(read_json(options.scenario))
    scenario, _ = scenario_from_options(asked.scenario, options)
    printed = asked.test_range if options.test_range_km is None else (options.test_range_km, options.test)
    return drive_answer(
        Asked(
            scenario,
            band_runs=asked.band_runs or (RUNS if options.band else 0),
            year_runs=asked.year_runs or (RUNS if options.year else 0),
            advice=asked.advice or options.advise,
            test_range=printed,
        )
    )


def _stop(options: argparse.Namespace) -> dict[str, object]:
    from model.limits.emergency_stop import emergency_answers
    from model.one_stop.slow_down import FROM_KMH, TO_KMH, compare

    scenario, _ = scenario_from_options(Scenario(), options)
    car = car_of(scenario)
    start, end = FROM_KMH.number(options.from_kmh), TO_KMH.number(options.to_kmh)
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
    } | described(scenario)


def _log(options: argparse.Namespace) -> dict[str, object]:
    from model.out.progress import ReadingProgress
    from model.out.recorded import band_of_recording, doubt_of_recording, drive_recording
    from model.traces.route_only import ROUTE_FIELDS, settings_with

    scenario, given = scenario_from_options(Scenario(), options)
    asked = {key: field.parse(getattr(options, key)) for key, field in ROUTE_FIELDS.items()
             if getattr(options, key) is not None}  # fmt: skip
    route = settings_with(asked) if asked else None
    progress = ReadingProgress(sys.stderr)
    try:
        recording, scenario, result = drive_recording(options.file, scenario, frozenset(given), route, progress)
    finally:
        progress.end()
    answer = result_answer(result, scenario, band_runs=RUNS if options.band else 0)
    if options.band:
        answer["band"] = {**cast(Mapping[str, object], answer["band"]), **band_of_recording(scenario, result)}
    if recording.measured is not None:
        answer["measured"] = recording.measured.__dict__
    if (doubt := doubt_of_recording(recording, result)) is not None:
        answer["without_scatter"] = doubt
    return answer | recording.answer()


def _study(options: argparse.Namespace) -> dict[str, object]:
    from model.out.progress import Progress
    from model.out.study import WORKERS, study

    scenario, given = scenario_from_options(Scenario(), options)
    found = study(
        options.folder, scenario, frozenset(given), band=options.band, out=options.out,
        workers=int(WORKERS.number(options.workers)), scheduler=options.dask, how_far=Progress(sys.stderr),
    )  # fmt: skip
    return found | described(scenario)


def _cars(options: argparse.Namespace) -> str:
    from model.out.many_cars import as_csv, table_answers

    if options.car is not None:
        raise InputError("cars-stand-in-table")
    cycles = [name.strip() for name in options.cycles.split(",") if name.strip()]
    if not cycles:
        raise InputError("cycles-none", known=Several(tuple(CYCLES)))
    return as_csv(table_answers(options.table, cycles, settings_from(options.set), band=options.band))


def _compare(options: argparse.Namespace) -> dict[str, object]:
    if not 2 <= len(options.scenarios) <= 3:
        raise InputError("compare-two-or-three", given=len(options.scenarios))
    asked = [asked_by(read_json(file)).scenario for file in options.scenarios]
    return compare_answer([scenario_from_options(scenario, options)[0] for scenario in asked])


def _grip(options: argparse.Namespace) -> dict[str, object]:
    from model.limits.grip_margin import BEND_RADIUS_M, GRADE_PCT, SPEED_KMH, grip_check

    scenario, _ = scenario_from_options(Scenario(), options)
    found = grip_check(
        car_of(scenario),
        scenario.conditions,
        scenario.driver.lift_off_mps2,
        SPEED_KMH.number(options.speed_kmh),
        None if options.bend_radius_m is None else BEND_RADIUS_M.number(options.bend_radius_m),
        GRADE_PCT.number(options.grade_pct),
    )
    say = COMMAND_LINE.say
    words = {"failure": say("grip-failure", wheels=found["failing_axle"]), "margin_rule": say("margin-rule")}
    return found | words | described(scenario)


def _claim(options: argparse.Namespace) -> dict[str, object]:
    from model.claims.collection import claims
    from model.claims.questions import question, question_from_json
    from model.claims.specification import phrased
    from model.claims.verdicts import check
    from model.words.claim_answers import claim_answers, run_answers
    from model.words.claims import words_of

    if options.id is None:
        own = [{"id": name, "text": said.get("words", "")} for name, said in phrased().items()]
        return {"claims": [{"id": claim.id, "text": words_of(claim)} for claim in claims().values()], "phrased": own}
    claim_id, settings = options.id, {} if options.car is None else {"car": options.car}
    if claim_id.endswith(".json"):
        asked = question_from_json(read_json(Path(claim_id)))
        claim_id, settings = asked.claim.id, {**asked.given, **settings}
    answer = check(question(claim_id, settings | settings_from(options.set)))
    return claim_answers(answer) if options.run is None else run_answers(answer, options.run)


VERBS: dict[str, Callable[[argparse.Namespace], dict[str, object] | str]] = {
    "cycle": _cycle, "drive": _drive, "log": _log, "study": _study, "cars": _cars, "compare": _compare, "stop": _stop,
    "grip": _grip, "claim": _claim,
}  # fmt: skip


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one verb; 0 when it answered, 2 when the input cannot be used."""
    if isinstance(sys.stdout, TextIOWrapper):
        # the same bytes on every machine; a file's name need not be text
        sys.stdout.reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")
    try:
        options = _parser().parse_args(arguments)
        answer = VERBS[options.verb](options)
    except InputError as refused:
        print(refusal_words(refused, COMMAND_LINE), file=sys.stderr)
        return 2
    print(answer if isinstance(answer, str) else as_text(answer), end="")
    return 0
