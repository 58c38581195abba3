"""Lift-off on hills in sentences from numbers: what slopes make of a strength, what holds the car, where it rolls."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import pandas as pd

from model.describe.figures import Quantity, Several
from model.words import lift_off as spoken
from model.words.quantities import Display, capital
from pages.parts.typography import together

SHOWN_GRADES_PCT = 2.0
"""The page shows every grade that is a multiple of this [%]; the file has all."""


def hill_words(slowing: pd.DataFrame, strength: float, speed_kmh: float, display: Display) -> tuple[str, str]:
    """What a slope makes of a strength: the finding, and what it means."""
    by_grade = slowing[slowing["lift_off_mps2"] == strength].set_index("grade_pct")["slowing_mps2"]
    flat, down, up = (float(by_grade[grade]) for grade in (0.0, -6.0, 6.0))
    title = display.say(
        "lift-off-on-hills",
        held=down > 0.05,
        flat=Quantity(flat, "m/s²", places=1),
        slope=Quantity(6, "%", places=0),
        down=Quantity(down, "m/s²", places=1, bare=True),
        up=Quantity(up, "m/s²", places=1, bare=True),
    )
    sentences = [display.say("lift-off-hills-mean", speed=Quantity(speed_kmh, "km/h"))]
    if strength - flat > 0.05:
        left = Quantity(flat, "m/s²", places=1, bare=True)
        sentences.insert(0, display.say("lift-off-left-of-it", left=left, strength=spoken.strength(strength)))
    return together(title), together(" ".join(sentences))


def hill_table(
    slowing: pd.DataFrame, names: Mapping[float, str], display: Display, every_pct: float | None = None
) -> pd.DataFrame:  # fmt: skip
    """Slowing over the grade, one column a strength; of the grades those that are multiples of one [%], or all.

    `slowing` is from `slowing_on_hills`.
    """
    if every_pct is not None:
        slowing = slowing[slowing["grade_pct"] % every_pct == 0]
    unit = display.unit("m/s²")
    columns = {
        strength: display.say("lift-off-hill-column", name=capital(name), unit=unit) for strength, name in names.items()
    }
    wide = slowing.pivot(index="grade_pct", columns="lift_off_mps2", values="slowing_mps2")
    wide = display.value(wide, "m/s²").round(2)
    return wide[list(names)].rename(columns=columns).rename_axis(display.say("lift-off-grade")).reset_index()


def held_table(held: pd.DataFrame, display: Display) -> pd.DataFrame:
    """What keeps the speed on each downhill, in words. `held` is from `model.lift_off.hills.held_downhills`."""
    say = display.say

    def written(value: float, unit: str, places: int) -> str:
        return together(display.figure(Quantity(value, unit, places=places)))

    return pd.DataFrame(
        {
            say("lift-off-held-downhill"): [
                display.figure(Quantity(grade, "%", 6, trimmed=True)) for grade in held["grade_pct"]
            ],
            say("lift-off-held-by"): [
                say("lift-off-held-rolling") if pd.isna(mps2) else written(mps2, "m/s²", 2)
                for mps2 in held["lift_off_mps2"]
            ],
            say("lift-off-held-takes"): [written(kw, "kW", 0) for kw in held["asked_kw"]],
            say("lift-off-held-can"): [
                together(say("lift-off-held-power", power=Quantity(kw, "kW", places=0), held=bool(enough)))
                for kw, enough in zip(held["can_kw"], held["held"], strict=True)
            ],
        }
    )


def rolling_words(speeds_kmh: Sequence[float], grades_pct: Sequence[float], display: Display) -> str:
    """Downhills on which the rolling car keeps its speed."""
    downhills = [
        display.say("lift-off-rolls-on", speed=Quantity(speed, "km/h"), slope=Quantity(grade, "%", places=1))
        for speed, grade in zip(speeds_kmh, grades_pct, strict=True)
    ]
    return together(display.say("lift-off-rolls", downhills=Several(tuple(downhills))))
