"""What the panels that explain how it works say: one sentence in numbers of the visitor's own car, then a few more."""

from __future__ import annotations

from dataclasses import dataclass

import pandas as pd

from model.describe.car import Car
from model.describe.figures import Quantity, Several, Share
from model.describe.scenario import Scenario
from model.kernel.savings import Result
from model.limits.friction_brakes import FRONT_SHARE, fade_caution
from model.one_stop import machine_map
from model.one_stop.bigger_motor import POWER_TIMES, front_share
from model.one_stop.machine_map import Use
from model.one_stop.panels import PanelSettings
from model.one_stop.repeated_stops import RepeatedStops
from model.one_stop.stop_energy import StopEnergy, WayOut
from model.one_stop.who_slows import LATE_S
from model.words.quantities import Display, Value
from pages.parts.charts.limits import because
from pages.parts.charts.panels import LEAST_WH, parts_of, wh
from pages.parts.charts.panels_machine import LEFT_TO_FRICTION, LEVELS
from pages.parts.description import class_name
from pages.parts.glossary import meaning


@dataclass(frozen=True)
class PanelWords:
    """The sentence that states what is seen, and what explains it."""

    sentence: str
    more: tuple[str, ...]


def kilowatts(display: Display) -> str:
    """What kWh, Wh and kW are."""
    return f"{meaning('term-kwh', display)} {meaning('term-kw', display)}"


def kmh(speed: float) -> Quantity:
    """A speed."""
    return Quantity(speed, "km/h")


def slowing(mps2: float) -> dict[str, Quantity]:
    """A slowing, and what it takes off the speedometer each second."""
    return {"slowing": Quantity(mps2, "m/s²"), "each": kmh(mps2 * 3.6)}


def helps_words(result: Result, display: Display) -> str:
    """Why the friction brakes help most, as a sentence; empty where they do not help."""
    why = because(result.limits_kwh, display)
    return display.say("friction-helps", why=why) if why else ""

HARDLY = 0.05
"""A gain below this share is told as hardly any [1]."""


def speed_squared(
    scenario: Scenario, stops: list[tuple[float, StopEnergy]], faster: Result, slowing_mps2: float, display: Display
) -> PanelWords:
    """Twice the speed; `stops` are two speeds [km/h] and the energy of a stop from each, the slower first."""
    (slow_kmh, slow), (fast_kmh, fast) = stops
    speeds = {"slow": kmh(slow_kmh), "fast": kmh(fast_kmh)}
    sentence = display.say(
        "panel-speed-motion", car=class_name(scenario), fast_motion=wh(fast.motion), slow_motion=wh(slow.motion),
        times=times(fast.motion, slow.motion), **speeds,
    )  # fmt: skip
    back = {"fast_back": wh(fast.battery), "slow_back": wh(slow.battery)} | speeds | slowing(slowing_mps2)
    if fast.battery < LEAST_WH:
        returns = display.say("panel-speed-back-nothing", **slowing(slowing_mps2))
    elif slow.battery > 0:
        returns = display.say("panel-speed-back", times=times(fast.battery, slow.battery), **back)
    else:
        returns = display.say("panel-speed-back-many", **back)
    parts = parts_of(slow), parts_of(fast)
    grow = [
        display.say("panel-speed-loses", times=times(parts[1][key], parts[0][key]), to=key)
        for key in ("road", "losses", "brakes")
        if parts[0][key] >= LEAST_WH
    ]
    losses = display.say("panel-speed-losses", losses=Several(tuple(grow))) if grow else ""
    loses = " ".join(filter(None, (losses, helps_words(faster, display))))
    return PanelWords(sentence, (returns, loses, display.say("panel-watt-hour")))


def times(more: float, less: float) -> Quantity:
    """How many times as much."""
    return Quantity(more / less, "", places=1)


def flow(from_kmh: float, stop: StopEnergy, out: WayOut, display: Display) -> PanelWords:
    """From the wheels to the battery and out again."""
    motion, speed = wh(stop.motion), kmh(from_kmh)
    there, watt_hour = display.say("panel-flow-there"), display.say("panel-watt-hour")
    kept = _kept_in(stop)
    if kept is not None:
        there += " " + display.say("panel-flow-kept", share=Share(kept))
    if stop.stored < LEAST_WH:
        sentence = display.say("panel-flow-nothing", motion=motion, speed=speed, friction=wh(stop.friction))
        return PanelWords(sentence, (there, watt_hour))
    sentence = display.say(
        "panel-flow-back", motion=motion, speed=speed, back=wh(stop.battery), stored=wh(stop.stored),
        wheels=wh(out.wheels), share=Share(out.wheels / stop.motion),
    )  # fmt: skip
    and_back = display.say("panel-flow-out", share=Share(out.wheels / stop.stored))
    return PanelWords(sentence, (there, and_back, watt_hour))


def _kept_in(stop: StopEnergy) -> float | None:
    at_gear = stop.motion - stop.road - stop.friction - stop.engine
    return stop.stored / at_gear if at_gear > 0 else None


def four_quadrants(car: Car, uses: dict[str, Use], chosen: str, display: Display) -> PanelWords:
    """One machine, four jobs."""
    use = uses[chosen]
    found: dict[str, Value] = {
        "minutes": Quantity(use.time_s / 60, "minutes"),
        "shaft": Quantity(use.shaft_kwh, "kWh", 3),
        "electric": Quantity(use.electric_kwh, "kWh", 3),
        "share": Share(use.efficiency or 0.0),
    }
    if use.time_s <= 0:
        greatest_n = machine_map.greatest_n(car, 0.1, slowing=chosen.startswith("slowing"))
        sentence = display.say("panel-quadrants-never", force=Quantity(float(greatest_n) / 1000, "kN"))
    elif chosen == "pulling_forwards":
        sentence = display.say("panel-quadrants-pulling", **found)
    else:
        sentence = display.say("panel-quadrants-slowing", **found)
    pulling, braking = (kmh(machine_map.constant_torque_until_kmh(car, slowing=slowing)) for slowing in (False, True))
    slows_kw = car.motor_peak_kw if car.regen_peak_kw is None else car.regen_peak_kw
    border = display.say(
        "panel-quadrants-border", pulling=pulling, slowing=braking, pulls=Quantity(car.motor_peak_kw, "kW"),
        slows=Quantity(slows_kw, "kW"),
    )  # fmt: skip
    steps = Several(tuple(Quantity(100 * level, "%", places=0) for level in LEVELS))
    shades, axes = (
        display.say("panel-quadrants-shades", steps=steps), display.say("panel-quadrants-axes", us=display.us),
    )  # fmt: skip
    return PanelWords(sentence, (axes, border, shades, kilowatts(display)))


def stop_shares(stop: StopEnergy) -> dict[str, float]:
    """Who does the work of a stop [1]: road, friction (with a hybrid's engine), motor."""
    road, friction = stop.road / stop.motion, (stop.friction + stop.engine) / stop.motion
    return {"road": road, "motor": 1 - road - friction, "friction": friction}


def who_slows(
    settings: PanelSettings, stop: StopEnergy, result: Result, hardest_mps2: float,
    late: tuple[float, float] | None, display: Display,
) -> PanelWords:  # fmt: skip
    """Who slows the car."""
    shares = {who: Share(share) for who, share in stop_shares(stop).items()}
    sentence = display.say("panel-who-works", speed=kmh(settings.from_kmh), **shares)
    if settings.slowing_mps2 > hardest_mps2:
        asked = Quantity(settings.slowing_mps2, "m/s²")
        slows = display.say("panel-who-slowing-at-most", asked=asked, **slowing(hardest_mps2))
    else:
        slows = display.say("panel-who-slowing", **slowing(settings.slowing_mps2))
    delay = ""
    if late:
        lag = Quantity(LATE_S, "s", 6, trimmed=True)
        delay = display.say("panel-who-late", late=lag, harder=Share(late[0]), filled=Share(late[1]))
    return PanelWords(sentence, (slows, helps_words(result, display), delay))


def bigger_motor(
    settings: PanelSettings, car: Car, powers: pd.DataFrame, as_it_is: pd.DataFrame, display: Display
) -> PanelWords:
    """Whether a bigger motor recovers more; `powers` with the change asked for, `as_it_is` without."""
    now = _at(powers, settings.power_times)
    plain = settings.power_times == 1 and settings.change == "nothing"
    other = _at(as_it_is, 2.0 if plain else 1.0)
    small, big = (now, other) if plain or settings.power_times < 1 else (other, now)
    limits = {name: now[name] for name in LEFT_TO_FRICTION if name in powers and now[name] > 0}
    braked = now["motor_kwh"] + sum(limits.values())
    sentence = display.say(
        "panel-motor-does",
        power=Quantity(now["motor_kw"], "kW"),
        change=settings.change,
        braked=bool(braked > 0),
        share=Share(now["motor_kwh"] / braked if braked > 0 else 0.0),
        back=Quantity(now["recovered_kwh"], "kWh", 3),
        plain=plain,
        other_power=Quantity(other["motor_kw"], "kW"),
        other_back=Quantity(other["recovered_kwh"], "kWh", 3),
        gain=_gain(small["recovered_kwh"], big["recovered_kwh"]),
    )
    why = display.say("friction-still-helps", why=because(limits, display)) if limits else ""
    front = front_share(car, car.regen_cap_mps2)
    weight = display.say(
        "panel-motor-weight", driven="all" if settings.change == "second_motor" else car.driven_axle,
        front=Share(front), rear=Share(1 - front),
    )  # fmt: skip
    wasted = powers["recovered_kwh"].iloc[-1] < powers["recovered_kwh"].max()
    best, last = powers.iloc[int(powers["recovered_kwh"].to_numpy().argmax())], powers.iloc[-1]
    drag = ""
    if wasted:
        drag = display.say(
            "panel-motor-drag",
            best=Quantity(best["motor_kw"], "kW"), most=Quantity(best["recovered_kwh"], "kWh", 3),
            largest=Quantity(last["motor_kw"], "kW"), back=Quantity(last["recovered_kwh"], "kWh", 3),
        )  # fmt: skip
    return PanelWords(sentence, (why, drag, weight, kilowatts(display)))


def _gain(small_kwh: float, big_kwh: float) -> str:
    """Whether the bigger motor recovers more, as the message says it."""
    if abs(big_kwh - small_kwh) < HARDLY * abs(small_kwh):
        return "hardly"
    return "more" if big_kwh > small_kwh else "less"


def _at(powers: pd.DataFrame, power_times: float) -> pd.Series:
    return powers.iloc[int((powers["power_times"] - power_times).abs().argmin())]


def hot_discs(settings: PanelSettings, stops: RepeatedStops, display: Display) -> PanelWords:
    """What the friction brakes do with the energy."""
    alone_c, helped_c = (float(stops.temperature[f"{name}_c"].max()) for name in ("friction_only", "regenerated"))
    sentence = display.say(
        "panel-discs-reach",
        stops=int(settings.stops),
        speed=kmh(settings.from_kmh),
        alone=Quantity(alone_c, "°C"),
        heat=Quantity(stops.friction_only_heat_kwh, "kWh", places=2),
        helped=Quantity(helped_c, "°C"),
        back=Quantity(stops.back_kwh, "kWh", places=2),
    )
    caution = display.say("panel-discs-caution", caution=fade_caution(alone_c))
    how, away = display.say("panel-discs-how"), display.say("panel-discs-away")
    return PanelWords(sentence, (how, caution, away, kilowatts(display)))


EQUATIONS = {
    "speed": r"E = \tfrac{1}{2}\,m\,v^{2}",
    "flow": r"\begin{gathered} E_\text{cells} = E - W_\text{road} - W_\text{friction} - W_\text{gear} \\"
    r" {} - W_\text{motor} - W_\text{aboard} - \textstyle\int I^{2} R\,\mathrm{d}t \end{gathered}",
    "quadrants": r"\begin{gathered} P = F\,v,\quad F \le F_\text{max},\quad F \le P_\text{max}/v \\"
    r" P_\text{loss} = a + b\,v + c\,v^{2} + d\,F^{2} \end{gathered}",
    "who": r"\begin{gathered} m\,a = F_\text{road} + F_\text{motor} + F_\text{friction} \\ a \le \mu\,g \end{gathered}",
    "motor": r"P = m\,a\,v",
    "discs": r"\begin{gathered} C\,\frac{\mathrm{d}T}{\mathrm{d}t} = s\,P_\text{friction}"
    r" - r\,(T^{4} - T_\text{air}^{4}) \\ {} - k\,(1 + v/v_0)\,(T - T_\text{air}) \end{gathered}",
}
"""The equation behind each panel, its lines short enough for a telephone, which would cut a longer one."""


def letters_and_source(panel: str, display: Display) -> tuple[str, str]:
    """What the letters of a panel's equation stand for, and where it and its figures are from."""
    match panel:
        case "speed":
            return display.say("why-speed-letters", pace=kmh(3.6)), display.say("why-speed-source")
        case "flow":
            return display.say("why-flow-letters"), display.say("why-flow-source")
        case "quadrants":
            return display.say("why-quadrants-letters"), display.say("why-quadrants-source")
        case "who":
            return display.say("why-who-letters"), display.say("why-who-source")
        case "motor":
            return display.say("why-motor-letters"), display.say("why-motor-source", sizes=len(POWER_TIMES))
        case _:
            return display.say("why-discs-letters", share=Share(FRONT_SHARE)), display.say("why-discs-source")
