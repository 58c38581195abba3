"""One slow-down in sentences from numbers: rolling, the motor, friction brakes, and a dip for nothing."""

from __future__ import annotations

from collections.abc import Mapping

import pandas as pd

from model.describe.figures import Quantity
from model.one_stop.slow_down import SlowDown, Way
from model.words.quantities import Display
from pages.parts.charts.slow_down import WAYS
from pages.parts.typography import together


def wh(energy_wh: float) -> Quantity:
    """An energy to the watt-hour, small ones to a tenth."""
    return Quantity(energy_wh, "Wh", places=int(abs(energy_wh) < 9.95))


def between(from_kmh: float, to_kmh: float, display: Display) -> dict[str, Quantity]:
    """From one speed to another, the unit with the second."""
    return {"from": Quantity(float(display.value(from_kmh, "km/h")), ""), "to": Quantity(to_kmh, "km/h")}


def slow_down_words(
    found: SlowDown, from_kmh: float, to_kmh: float, strength: float, display: Display
) -> tuple[str, str]:
    """Rolling against keeping the speed: the finding, then distances, friction brakes and the break-even."""
    coast, regen, friction = found.coast, found.regen, found.friction
    title = display.say(
        "slow-down-title", rolling=wh(coast.battery_wh), rolling_time=Quantity(coast.time_s, "s", places=0),
        motor=wh(regen.battery_wh), motor_time=Quantity(regen.time_s, "s", places=0),
        **between(from_kmh, to_kmh, display),
    )  # fmt: skip
    ways = display.say(
        "slow-down-words", road=Quantity(coast.distance_m, "m"), strength=Quantity(strength, "m/s²", 6, trimmed=True),
        before=Quantity(regen.lift_m, "m"), friction=wh(friction.battery_wh),
    )  # fmt: skip
    return together(title), together(f"{ways} {break_even_words(found, display)}")


def ways_table(found: SlowDown, display: Display) -> pd.DataFrame:
    """The three ways in numbers."""
    ways = {display.say("lift-off-way", way=key): getattr(found, key) for key in WAYS}
    metres = display.unit("m")
    return pd.DataFrame(
        {
            display.say("ways-column-way"): list(ways),
            display.say("ways-column-road", unit=metres): [
                round(float(display.value(way.distance_m, "m"))) for way in ways.values()
            ],
            display.say("ways-column-time"): [round(way.time_s, 1) for way in ways.values()],
            display.say("ways-column-battery"): [round(way.battery_wh, 1) for way in ways.values()],
            display.say("ways-column-back"): [round(way.recovered_wh, 1) for way in ways.values()],
            display.say("ways-column-friction"): [round(way.friction_wh, 1) for way in ways.values()],
            display.say("ways-column-foot-up", unit=metres): [
                round(float(display.value(way.lift_m, "m"))) for way in ways.values()
            ],
        }
    )


def break_even_words(found: SlowDown, display: Display) -> str:
    """Whether the seconds that rolling costs are worth their energy."""
    lost = found.coast.time_s - found.regen.time_s
    seconds = Quantity(lost, "s", places=0)
    if found.break_even_kmh is not None:
        return display.say("break-even", lost=seconds, speed=Quantity(found.break_even_kmh, "km/h"))
    if lost <= 0 or found.coast.battery_wh >= found.regen.battery_wh:
        return display.say("break-even-nothing")
    return display.say("break-even-always", lost=seconds)


def dip_words(dip: Mapping[str, Way], from_kmh: float, to_kmh: float, display: Display) -> str:
    """What an unneeded dip of the speed costs against keeping it."""
    steady = dip["steady"]
    motor, friction = (dip[way].battery_wh - steady.battery_wh for way in ("regen", "friction"))
    words = display.say(
        "dip-words", motor=wh(abs(motor)), motor_costs=motor >= 0, friction=wh(abs(friction)),
        friction_costs=friction >= 0, later=Quantity(dip["regen"].time_s - steady.time_s, "s", places=1),
        **between(from_kmh, to_kmh, display),
    )  # fmt: skip
    return together(words)
