"""What is said about a recording of one's own: findings, cleaning, totals."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from model.describe.figures import Quantity, Shares, Span
from model.kernel.savings import Result
from model.traces.cleaning import Effect
from model.traces.findings import Finding
from model.traces.logs import DrivenPart, Measured, Recording
from model.words.quantities import Display, percent_text

SAMPLE = Path(__file__).parents[2] / "assets" / "sample_recording.csv"
"""A drive of our own invention, to try the page with."""
WITH_A_FIGURE = {
    "from_positions": ("own-road-from-positions", "scatter", "m"),
    "speed_noise_left": ("own-road-noise-left", "noise", "km/h"),
    "charged_standing": ("own-road-charged-standing", "energy", "kWh"),
    "speed_unit": ("own-road-speed-unit", "speed", "km/h"),
}
"""Findings with a figure: their message, what it is called there, and its unit."""
ALONE = {"speed_places": "own-road-speed-places", "height_unit": "own-road-height-unit"}


def meaning_words(meaning: str, display: Display) -> str:
    """What a column was taken for."""
    return display.say("own-road-means", meaning=meaning or "other")


def finding_words(finding: Finding, display: Display) -> str:
    """One thing that was found, in a sentence."""
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


def headline(recording: Recording, result: Result, band: dict[str, Any], display: Display) -> str:
    """What the drive took, measured where it was, and modelled."""
    net = band["battery_net_kwh"]
    figures: dict[str, Any] = {
        "distance": Quantity(result.distance_km, "km", 3),
        "minutes": Quantity(result.trace.duration_s / 60, "minutes", places=0),
        "net": Quantity(result.net_kwh, "kWh", 3),
        "band": Span(net[0], net[2], "kWh", 3),
    }
    if recording.measured is None:
        return display.say("own-road-modelled", **figures)
    return display.say("own-road-measured", measured=Quantity(recording.measured.battery_net_kwh, "kWh", 3), **figures)


def totals(measured: Measured | None, result: Result, band: dict[str, Any], display: Display) -> list[dict[str, str]]:
    """Rows of a table: out, in, net and recovered share, measured beside modelled, with bands."""

    def kwh(value: float | None) -> str:
        return "" if value is None else display.text(value, "kWh", 3)

    def share(value: float | None) -> str:
        return "" if value is None else percent_text(value)

    net, recovered = band["battery_net_kwh"], band["recovered_share_of_output"]
    spans = (display.figure(Span(net[0], net[2], "kWh", 3)),
             display.figure(Shares(recovered[0], recovered[2])) if recovered else "")  # fmt: skip
    rows: list[tuple[str, Callable[[float | None], str], str, str]] = [
        ("own-road-out", kwh, "battery_out_kwh", ""),
        ("own-road-in", kwh, "battery_in_kwh", ""),
        ("own-road-net", kwh, "battery_net_kwh", spans[0]),
        ("own-road-share", share, "recovered_share_of_output", spans[1]),
    ]
    modelled = {"battery_out_kwh": result.battery_out_kwh, "battery_in_kwh": result.battery_in_kwh,
                "battery_net_kwh": result.net_kwh, "recovered_share_of_output": result.recovered_share}  # fmt: skip
    of_measured, of_model = display.say("own-road-of-measured"), display.say("own-road-of-model")
    beside = display.say("own-road-of-band")
    return [
        {
            "": display.say(name),
            of_measured: say(getattr(measured, key, None)),
            of_model: say(modelled[key]),
            beside: span,
        }
        for name, say, key, span in rows
    ]


def part_words(parts: Sequence[DrivenPart], place: int, display: Display) -> str:
    """One stretch between gaps."""
    part = parts[place]
    start, end = (Quantity(moment / 60, "minutes", places=0) for moment in (part.start_s, part.end_s))
    return display.say(
        "own-road-part", part=place + 1, start=start, end=end, distance=Quantity(part.distance_m / 1000, "km", 3)
    )
