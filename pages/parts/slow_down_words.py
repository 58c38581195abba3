"""One slow-down in sentences from numbers: rolling, the motor, friction brakes, and a dip for nothing."""

from __future__ import annotations

from collections.abc import Mapping

import pandas as pd

from model.one_stop.slow_down import SlowDown, Way
from model.words.quantities import Display, number_text
from pages.parts.charts.lift_off import WAYS, wh_text
from pages.parts.lift_off_words import strength_text


def slow_down_words(
    found: SlowDown, from_kmh: float, to_kmh: float, strength: float, display: Display
) -> tuple[str, str]:
    """Rolling against keeping the speed: the finding, then distances, friction brakes and the break-even."""
    coast, regen, friction = found.coast, found.regen, found.friction
    start, end = number_text(display.value(from_kmh, "km/h")), display.text(to_kmh, "km/h")
    before = display.text(regen.lift_m, "m")
    title = (
        f"From {start} to {end}, rolling takes {wh_text(coast.battery_wh)} and {coast.time_s:.0f} s; slowing late with "
        f"the motor {wh_text(regen.battery_wh)} and {regen.time_s:.0f} s"
    )
    sentences = (
        f"All over the same {display.text(coast.distance_m, 'm')}. Rolling, the foot comes up at their start; with the "
        f"motor, slowing at your {strength_text(strength)}, {before} before the end. Slowed on "
        f"friction brakes only it takes {wh_text(friction.battery_wh)}. {break_even_words(found, display)}"
    )
    return title, sentences


def ways_table(found: SlowDown, display: Display) -> pd.DataFrame:
    """The three ways in numbers."""
    ways = {name: getattr(found, key) for key, (name, _, _) in WAYS.items()}
    metres = display.unit("m")
    return pd.DataFrame(
        {
            "Way": list(ways),
            f"Road, {metres}": [round(float(display.value(way.distance_m, "m"))) for way in ways.values()],
            "Time, s": [round(way.time_s, 1) for way in ways.values()],
            "Battery, Wh": [round(way.battery_wh, 1) for way in ways.values()],
            "Back in it, Wh": [round(way.recovered_wh, 1) for way in ways.values()],
            "Friction heat, Wh": [round(way.friction_wh, 1) for way in ways.values()],
            f"Foot up before the end, {metres}": [
                round(float(display.value(way.lift_m, "m"))) for way in ways.values()
            ],
        }
    )


def break_even_words(found: SlowDown, display: Display) -> str:
    """Whether the seconds that rolling costs are worth their energy."""
    lost = found.coast.time_s - found.regen.time_s
    if found.break_even_kmh is None:
        if lost <= 0 or found.coast.battery_wh >= found.regen.battery_wh:
            return "Rolling costs no time or saves no energy here, so there is nothing to weigh up."
        return f"Rolling costs {lost:.0f} s, and pays at any speed that this car may cruise at."
    return (
        f"Rolling costs {lost:.0f} s. If you otherwise cruise below {display.text(found.break_even_kmh, 'km/h')}, you "
        "can make them up by driving a little faster, for less energy than rolling saved: there rolling pays, where "
        "traffic allows it. Above that it does not."
    )


def dip_words(dip: Mapping[str, Way], from_kmh: float, to_kmh: float, display: Display) -> str:
    """What an unneeded dip of the speed costs against keeping it."""
    steady = dip["steady"]

    extra = {way: dip[way].battery_wh - steady.battery_wh for way in ("regen", "friction")}
    costs = {way: f"{'costs' if wh >= 0 else 'saves'} {wh_text(abs(wh))}" for way, wh in extra.items()}
    start, end = number_text(display.value(from_kmh, "km/h")), display.text(to_kmh, "km/h")
    later = dip["regen"].time_s - steady.time_s
    return (
        f"**Slowing for nothing,** from {start} to {end} and up again, {costs['regen']} where the motor slows the car "
        f"and {costs['friction']} on friction brakes, against keeping the speed over the same road, and takes "
        f"{later:.1f} s longer. "
        "Part of the loss hides behind the lower speed, at which the car pushes less air."
    )
