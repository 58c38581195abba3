"""What is said about a recording of one's own: findings, cleaning, totals."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

import pandas as pd

from model.describe.car import CAR_FIELDS
from model.describe.figures import Quantity, Several, Share, Shares, Span
from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.out.fit import Fit
from model.out.recorded import Doubt, RecordedBand
from model.traces.cleaning import Effect
from model.traces.driven_habits import LEAST_DROP_KMH, DrivenHabits
from model.traces.findings import Finding
from model.traces.logs import Measured, Recording
from model.traces.stretches import DrivenPart
from model.words.entries import choice_word, label_of
from model.words.quantities import Display, Value, percent_text
from pages.parts import description
from pages.parts.plain_text import inert

SAMPLE = Path(__file__).parents[2] / "assets" / "sample_recording.csv"
"""A drive of our own invention, to try the page with."""
WITH_A_FIGURE = {
    "from_positions": ("own-road-from-positions", "scatter", "m"),
    "heights_scatter": ("own-road-heights-scatter", "scatter", "m"),
    "speed_noise_left": ("own-road-noise-left", "noise", "km/h"),
    "charged_standing": ("own-road-charged-standing", "energy", "kWh"),
    "speed_unit": ("own-road-speed-unit", "speed", "km/h"),
}
"""Findings with a figure: their message, what it is called there, and its unit."""
ALONE = {"speed_places": "own-road-speed-places", "height_unit": "own-road-height-unit"}


def meaning_words(meaning: str, display: Display) -> str:
    """What a column was taken for."""
    return display.say("own-road-means", meaning=meaning or "other")


def finding_words(finding: Finding, doubt: Doubt | None, display: Display) -> str:
    """One thing that was found, in a sentence; `doubt` says how far scatter that was left may put the answer off."""
    if finding.what == "speed_noise_left" and finding.value is not None and doubt is not None:
        net, points = abs(doubt["net_share"]), abs(100 * (doubt["recovered_difference"] or 0.0))
        return display.say("own-road-noise-doubt", noise=Quantity(finding.value, "km/h"), net=Share(net, places=1),
                           points=Quantity(points, "points", 2))  # fmt: skip
    if finding.what in WITH_A_FIGURE and finding.value is not None:
        message, name, unit = WITH_A_FIGURE[finding.what]
        return display.say(message, **{name: Quantity(finding.value, unit)})
    if finding.what in ALONE:
        return display.say(ALONE[finding.what])
    column = meaning_words(finding.column, display)
    return display.say("own-road-finding", what=finding.what, column=column, count=finding.count)


def effect_words(effect: Effect, display: Display) -> str:
    """What a step of cleaning did."""
    step = display.say("own-road-step", step=effect.step)
    if effect.is_about_height:
        before, after = (Quantity(metres, "m", places=0) for metres in (effect.before_m, effect.after_m))
        return display.say("own-road-effect-climb", step=step, before=before, after=after, count=effect.count)
    before, after = (Quantity(metres / 1000, "km", 4) for metres in (effect.before_m, effect.after_m))
    return display.say("own-road-effect", step=step, before=before, after=after, count=effect.count)


def headline(recording: Recording, result: Result, band: RecordedBand, display: Display) -> str:
    """What the drive took, measured where it was, and modelled."""
    net = band["battery_net_kwh"]
    figures: dict[str, Value] = {
        "distance": Quantity(result.distance_km, "km", 3),
        "minutes": Quantity(result.trace.duration_s / 60, "minutes", places=0),
        "net": Quantity(result.net_kwh, "kWh", 3),
        "band": Span(net[0], net[2], "kWh", 3),
    }
    if recording.measured is None:
        return display.say("own-road-modelled", **figures)
    return display.say("own-road-measured", measured=Quantity(recording.measured.battery_net_kwh, "kWh", 3), **figures)


def totals(
    measured: Measured | None, result: Result, band: RecordedBand, display: Display
) -> list[dict[str, str]]:
    """Rows of a table: out, in, net and recovered share, measured beside modelled, with bands."""

    def kwh(value: float | None) -> str:
        return "" if value is None else display.text(value, "kWh", 3)

    def share(value: float | None) -> str:
        return "" if value is None else percent_text(value)

    out, back, net = (
        display.figure(Span(ends[0], ends[2], "kWh", 3))
        for ends in (band["battery_out_kwh"], band["battery_in_kwh"], band["battery_net_kwh"])
    )
    recovered = band["recovered_share_of_output"]
    rows: list[tuple[str, Callable[[float | None], str], str, str]] = [
        ("own-road-out", kwh, "battery_out_kwh", out),
        ("own-road-in", kwh, "battery_in_kwh", back),
        ("own-road-net", kwh, "battery_net_kwh", net),
        ("own-road-share", share, "recovered_share_of_output",
         display.figure(Shares(recovered[0], recovered[2])) if recovered else ""),
    ]
    modelled = {"battery_out_kwh": result.battery_out_kwh, "battery_in_kwh": result.battery_in_kwh,
                "battery_net_kwh": result.net_kwh, "recovered_share_of_output": result.recovered_share}  # fmt: skip
    of_measured, of_model = display.say("own-road-of-measured"), display.say("own-road-of-model")
    beside = display.say("own-road-of-band")
    return [
        {"": display.say(name)}
        | ({} if measured is None else {of_measured: say(getattr(measured, key))})
        | {of_model: say(modelled[key]), beside: span}
        for name, say, key, span in rows
    ]


def part_words(parts: Sequence[DrivenPart], place: int, display: Display) -> str:
    """One stretch between gaps."""
    part = parts[place]
    start, end = (Quantity(moment / 60, "minutes", places=0) for moment in (part.start_s, part.end_s))
    return display.say(
        "own-road-part", part=place + 1, start=start, end=end, distance=Quantity(part.distance_m / 1000, "km", 3)
    )


def line_words(recording: Recording | None, display: Display) -> str:
    """What the answer line says is driven in place of the described drive."""
    if recording is None:
        return display.say("own-road-line-empty")
    return display.say("own-road-line", name=inert(recording.trace.name), **_how_far(recording))


def _how_far(recording: Recording) -> dict[str, Quantity]:
    trace = recording.trace
    return {
        "distance": Quantity(trace.distance_m / 1000, "km", 3),
        "minutes": Quantity(trace.duration_s / 60, "minutes", places=0),
    }


def about(recording: Recording, scenario: Scenario, display: Display) -> str:
    """What a printed picture of the recording is about: the described car on it."""
    car, pedal = description.car_words(scenario, display), description.pedal_words(scenario, display)
    return display.say("own-road-about", car=car, pedal=pedal, name=recording.trace.name, **_how_far(recording))


def residual_labels(by: str, table: pd.DataFrame, display: Display) -> list[str]:
    """What each row of a table of `model.out.residuals` is for: a step of speed, or of time."""
    if by == "minutes":
        ends = zip(table["from_min"], table["to_min"], strict=True)
        return [display.figure(Span(start, end, "minutes", places=0)) for start, end in ends]
    return [
        display.figure(Span(low, high, "km/h", places=0)) if high else display.say("own-road-standing")
        for low, high in zip(table["from_kmh"], table["to_kmh"], strict=True)
    ]


def residual_finding(by: str, table: pd.DataFrame, display: Display) -> str:
    """What a table of `model.out.residuals` shows, in a sentence."""
    if by == "slow_down":
        measured = float(table["measured_wh"].sum())
        if measured <= 0:
            return display.say("own-road-residual-no-slow-down")
        share = Share(float(table["modelled_wh"].sum()) / measured)
        least = Quantity(LEAST_DROP_KMH, "km/h", places=0)
        return display.say("own-road-residual-slow-down", count=len(table), share=share, least=least)
    largest = int(table["more_kwh"].abs().to_numpy().argmax()) if by == "speed" else 0
    more = float(table["more_kwh"].iloc[largest])
    return display.say(
        "own-road-residual-largest" if by == "speed" else "own-road-residual-first",
        where=residual_labels(by, table, display)[largest],
        energy=Quantity(abs(more), "kWh", 2),
        way="more" if more > 0 else "less",
    )


def habits_words(found: DrivenHabits, display: Display) -> str:
    """What a recording tells of its driver."""
    return display.say(
        "own-road-habits-found",
        apart=Quantity(1 / found.stops_per_km, "km", 2),
        ahead=Quantity(found.ahead_m, "m", 2),
        speed=Quantity(found.ahead_from_kmh, "km/h", places=0),
        slowing=Quantity(found.hardest_slowing_mps2, "m/s²", 2),
        pulling=Quantity(found.hardest_pull_away_mps2, "m/s²", 2),
        lifted=found.by_lift,
        count=found.slow_downs,
        looks=choice_word("looks_ahead", found.looks_ahead, display),
        pulls=choice_word("pull_away", found.pull_away, display),
    )


def fit_words(found: Fit, display: Display) -> str:
    """What a fit is worth, in a sentence or two."""
    bound = Several(tuple(label_of(CAR_FIELDS[key], display) for key in found.at_bound))
    return display.say(
        "own-road-fit-found",
        until=Quantity(found.until_s / 60, "minutes", places=0),
        fitted=Share(found.error_of_fitted, places=1),
        rest=Share(found.error_of_rest, places=1),
        before=Share(found.error_of_rest_before, places=1),
        bounded=bool(found.at_bound),
        bound=bound,
    )


def fit_rows(found: Fit, display: Display) -> list[dict[str, str]]:
    """The figures before and after a fit."""
    before, after = display.say("own-road-fit-before"), display.say("own-road-fit-after")

    def shown(key: str, value: float) -> str:
        field = CAR_FIELDS[key]
        return percent_text(value) if field.unit == "1" else display.text(value, field.unit, 3)

    return [
        {"": label_of(CAR_FIELDS[key], display), before: shown(key, found.before[key]), after: shown(key, value)}
        for key, value in found.after.items()
    ]
