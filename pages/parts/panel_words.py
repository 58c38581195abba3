"""What the panels that explain how it works say: one sentence in numbers of the visitor's own car, then a few more."""

from __future__ import annotations

from dataclasses import dataclass

import pandas as pd

from model.describe.car import Car
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
from model.words.quantities import Display, number_text, percent_text
from pages.parts.charts.limits import LIMIT_WORDS, because
from pages.parts.charts.panels import LEAST_WH, parts_of, wh
from pages.parts.charts.panels_machine import LEVELS
from pages.parts.glossary import GLOSSARY
from pages.parts.wording import car_words

WH = "A watt-hour (Wh) is what a lamp of 60 watts takes in a minute; 1000 of them make a kilowatt-hour (kWh)."

KWH = f"{GLOSSARY['kWh and Wh']} {GLOSSARY['kW']}"


@dataclass(frozen=True)
class Said:
    """The sentence that states what is seen, and what explains it."""

    sentence: str
    more: tuple[str, ...]


def times_text(more: float, less: float) -> str:
    """How many times as much, such as “4.0 times”."""
    return f"{more / less:.1f} times" if less > 0 else "many times"


def slowing_words(slowing_mps2: float, display: Display) -> str:
    """A slowing and what it means on the speedometer."""
    each = display.text(slowing_mps2 * 3.6, "km/h")
    return f"{number_text(slowing_mps2)} m/s² (metres per second, each second: {each} less every second)"


def helps_words(result: Result) -> str:
    """Why the friction brakes help most, as a sentence; empty where they do not help."""
    why = because({LIMIT_WORDS[name]: kwh for name, kwh in result.limits_kwh.items()})
    return f"Friction helps {why}." if why else ""


def speed_squared(
    scenario: Scenario, stops: list[tuple[float, StopEnergy]], faster: Result, slowing_mps2: float, display: Display
) -> Said:
    """Twice the speed; `stops` are two speeds [km/h] and the energy of a stop from each, the slower first."""
    (slow_kmh, slow), (fast_kmh, fast) = stops
    low, high = display.text(slow_kmh, "km/h"), display.text(fast_kmh, "km/h")
    sentence = (
        f"At {high} your {car_words(scenario).removesuffix(', adjusted')} carries {wh(fast.motion)} of motion, "
        f"{times_text(fast.motion, slow.motion)} the {wh(slow.motion)} it carries at {low}."
    )
    back = (
        f"Stopped evenly at {slowing_words(slowing_mps2, display)}, it puts {wh(fast.battery)} back in the battery "
        f"from {high} and {wh(slow.battery)} from {low}: {times_text(fast.battery, slow.battery)} as much."
    )
    if fast.battery < LEAST_WH:
        back = f"Stopped evenly at {slowing_words(slowing_mps2, display)}, it puts next to nothing back in the battery."
    grow = [
        f"{times_text(parts_of(fast)[key], parts_of(slow)[key])} as much to {name}"
        for key, name in (("road", "air and tyres"), ("losses", "motor and gear"), ("brakes", "the friction brakes"))
        if parts_of(slow)[key] >= LEAST_WH
    ]
    losses = (
        "It need not be the same figure as for the motion, since losses do not grow alike: the faster stop loses "
        f"{', '.join(grow)}. {helps_words(faster)}"
    )
    return Said(sentence, (back, losses, WH))


def flow(from_kmh: float, stop: StopEnergy, out: WayOut, display: Display) -> Said:
    """From the wheels to the battery and out again."""
    sentence = (
        f"Of {wh(stop.motion)} of motion at {display.text(from_kmh, 'km/h')}, {wh(stop.battery)} are put back in the "
        f"battery and {wh(stop.stored)} of them end in its cells; pulling away with those brings {wh(out.wheels)} back "
        f"to the wheels, {percent_text(out.wheels / stop.motion)}."
    )
    if stop.stored < LEAST_WH:
        sentence = (
            f"Of {wh(stop.motion)} of motion at {display.text(from_kmh, 'km/h')}, nothing ends in the cells; friction "
            f"brakes turn {wh(stop.friction)} into heat."
        )
    there = (
        "Slowing the car, the motor works as a generator: it makes alternating current, which changes direction many "
        "times a second. The inverter, its power electronics, turns that into direct current, the only kind that the "
        f"battery’s cells can keep. Of what reaches the gear, {percent_text(_kept_in(stop))} gets that far."
    )
    and_back = (
        f"Pulling away, the same chain runs the other way and passes on {percent_text(out.wheels / stop.stored)}. "
        "So a stop that need not be made beats any that is recovered."
        if stop.stored >= LEAST_WH
        else ""
    )
    return Said(sentence, (there, and_back, WH))


def _kept_in(stop: StopEnergy) -> float | None:
    at_gear = stop.motion - stop.road - stop.friction - stop.engine
    return stop.stored / at_gear if at_gear > 0 else None


def four_quadrants(car: Car, uses: dict[str, Use], chosen: str, display: Display) -> Said:
    """One machine, four jobs."""
    use = uses[chosen]
    minutes = number_text(use.time_s / 60)
    shaft, electric = number_text(use.shaft_kwh, 3), number_text(use.electric_kwh, 3)
    if use.time_s <= 0:
        kn = number_text(machine_map.greatest_n(car, 0.1, slowing=chosen.startswith("slowing")) / 1000)
        sentence = (
            f"Your drive never does this. The machine could, with up to {kn} kN, forwards or, mirrored, backwards."
        )
    elif chosen == "pulling_forwards":
        sentence = (
            f"On your drive the motor pulls for {minutes} minutes and makes {shaft} kWh at its shaft from "
            f"{electric} kWh of electricity, {percent_text(use.efficiency)}."
        )
    else:
        sentence = (
            f"On your drive the motor slows the car for {minutes} minutes and makes {electric} kWh of electricity "
            f"from {shaft} kWh at its shaft, {percent_text(use.efficiency)}."
        )
    borders = [
        f"{display.text(machine_map.constant_torque_until_kmh(car, slowing=slowing), 'km/h')} when {name}"
        for slowing, name in ((False, "pulling"), (True, "slowing"))
    ]
    steps = " and ".join(f"{100 * level:.0f}" for level in LEVELS)
    return Said(
        sentence,
        (
            "To the right the car goes forwards, to the left backwards; above the line the force points forwards, "
            "below it backwards. Force is in kilonewtons (kN), as it reaches the road; turned round an axle it is "
            "called torque.",
            f"The firm border is what the machine can do: one greatest torque up to {borders[0]} or {borders[1]}, one "
            f"greatest power beyond, here {number_text(car.motor_peak_kw)} kW and "
            f"{number_text(car.motor_peak_kw if car.regen_peak_kw is None else car.regen_peak_kw)} kW.",
            "Efficiency is what comes out over what goes in: the stronger the shade, the better, with steps at "
            f"{steps} %. Each dot is part of your drive, the larger the more energy passes there.",
            KWH,
        ),
    )


def stop_shares(stop: StopEnergy) -> dict[str, float]:
    """Who does the work of a stop [1]: road, friction (with a hybrid's engine), motor."""
    road, friction = stop.road / stop.motion, (stop.friction + stop.engine) / stop.motion
    return {"road": road, "motor": 1 - road - friction, "friction": friction}


def who_slows(
    settings: PanelSettings, stop: StopEnergy, result: Result, hardest_mps2: float,
    late: tuple[float, float] | None, display: Display,
) -> Said:  # fmt: skip
    """Who slows the car."""
    shares = {who: percent_text(share) for who, share in stop_shares(stop).items()}
    slowing = min(settings.slowing_mps2, hardest_mps2)
    sentence = (
        f"In a stop from {display.text(settings.from_kmh, 'km/h')} the motor does {shares['motor']} of the work, "
        f"the friction brakes {shares['friction']}, air and tyres {shares['road']}."
    )
    asked = f"The car slows at {slowing_words(slowing, display)}"
    if settings.slowing_mps2 > hardest_mps2:
        asked += f", all that this road has grip for; you ask for {number_text(settings.slowing_mps2)} m/s²"
    delay = (
        "Motors turn from pulling to slowing within thousandths to tenths of a second (common practice, no source). "
        f"One that is {LATE_S:g} s late costs {percent_text(late[0])} of what this stop recovers if the car then slows "
        f"a little harder to the same place, and {percent_text(late[1])} if the friction brakes fill in."
        if late
        else ""
    )
    return Said(sentence, (f"{asked}.", helps_words(result), delay))


def bigger_motor(
    settings: PanelSettings, car: Car, powers: pd.DataFrame, as_it_is: pd.DataFrame, display: Display
) -> Said:
    """Whether a bigger motor recovers more; `powers` with the change asked for, `as_it_is` without."""
    now = _at(powers, settings.power_times)
    plain = settings.power_times == 1 and settings.change == "nothing"
    other = _at(as_it_is, 2.0 if plain else 1.0)
    limits = {name: now[name] for name in LIMIT_WORDS if name in powers and now[name] > 0}
    braked = now["motor_kwh"] + sum(limits.values())
    beside = {"second_motor": ", shared by both axles,", "twice_the_battery": " and twice the battery"}
    kw, other_kw = (number_text(row["motor_kw"]) for row in (now, other))
    kwh, other_kwh = (number_text(row["recovered_kwh"], 3) for row in (now, other))
    share = f"{percent_text(now['motor_kwh'] / braked)} of the braking" if braked > 0 else "no braking"
    sentence = (
        f"{kw} kW of motor{beside.get(settings.change, '')} do {share} on your drive and put {kwh} kWh in the battery; "
        + (f"{other_kw} kW would put" if plain else f"your car as it is, with {other_kw} kW, puts")
        + f" {other_kwh} kWh there."
    )
    why = f"Friction still helps {because({LIMIT_WORDS[name]: kwh for name, kwh in limits.items()})}." if limits else ""
    front = front_share(car, car.regen_cap_mps2)
    axle = car.driven_axle if settings.change != "second_motor" else "all"
    carried = {"front": f"front wheels, which carry {percent_text(front)}",
               "rear": f"rear wheels, which carry {percent_text(1 - front)}"}  # fmt: skip
    weight = (
        f"With all wheels driven, the front ones carry {percent_text(front)} of the weight while slowing and can do "
        "as much of the slowing. On a dry road that changes little; set a slippery one above to see what it does."
        if axle == "all"
        else f"Only the {carried[axle]} of the weight while slowing, are driven here. On a slippery road that counts."
    )
    drag = (
        "A large motor that does little wastes more: it has more iron and electronics to keep going. The dashed line, "
        "what reaches the battery, shows it."
        if powers["recovered_kwh"].iloc[-1] < powers["recovered_kwh"].max()
        else ""
    )
    return Said(sentence, (why, drag, weight, KWH))


def _at(powers: pd.DataFrame, times: float) -> pd.Series:
    return powers.iloc[int((powers["power_times"] - times).abs().argmin())]


def hot_discs(settings: PanelSettings, stops: RepeatedStops, display: Display) -> Said:
    """What the friction brakes do with the energy."""
    hottest = {
        name: display.text(stops.temperature[f"{name}_c"].max(), "°C") for name in ("friction_only", "regenerated")
    }
    count = {"1": "one stop", "10": "ten stops"}[settings.stops]
    sentence = (
        f"After {count} from {display.text(settings.from_kmh, 'km/h')} discs that do all the work reach "
        f"{hottest['friction_only']}, and {stops.friction_only_heat_kwh:.2f} kWh warm the air; with the motor they "
        f"reach {hottest['regenerated']}, and {stops.back_kwh:.2f} kWh are back in the battery."
    )
    caution = {
        "below": "That is below where ordinary pads begin to lose bite.",
        "within": "That is where ordinary pads begin to lose bite, which drivers call fade.",
        "above": "That is beyond where ordinary pads have lost bite, which drivers call fade.",
    }[fade_caution(float(stops.temperature["friction_only_c"].max()))]
    return Said(
        sentence,
        (
            "Friction brakes press pads on a disc at each wheel. They turn motion into heat, the discs pass it on to "
            "the air, and none of it comes back.",
            caution,
            "The car pulls away at once after each stop; what that takes is not counted here.",
            KWH,
        ),
    )


@dataclass(frozen=True)
class Why:
    """The equation behind a panel, what its letters stand for, and where it comes from.

    An equation's lines are short enough for a telephone, which would cut a longer one.
    """

    equation: str
    letters: str
    source: str


WHY = {
    "speed": Why(
        r"E = \tfrac{1}{2}\,m\,v^{2}",
        "E energy of motion [J; 3600 J are 1 Wh], m mass with load, and with a share for wheels and motor, which have "
        "to be spun up [kg], v speed [m/s; 1 m/s is 3.6 km/h].",
        "Mechanics. The mass is that of your car; how much comes back is the model’s own run of this stop.",
    ),
    "flow": Why(
        r"\begin{gathered} E_\text{cells} = E - W_\text{road} - W_\text{friction} - W_\text{gear} \\"
        r" {} - W_\text{motor} - W_\text{aboard} - \textstyle\int I^{2} R\,\mathrm{d}t \end{gathered}",
        "E energy of motion, W what each part of the way takes [J], I current [A], R resistance of the cells [Ω].",
        "Conservation of energy; each loss has its own law and the sum is checked. Motor, gear and cell figures are "
        "those of the car’s class: assumed, no measured map of a car on sale was found.",
    ),
    "quadrants": Why(
        r"\begin{gathered} P = F\,v,\quad F \le F_\text{max},\quad F \le P_\text{max}/v \\"
        r" P_\text{loss} = a + b\,v + c\,v^{2} + d\,F^{2} \end{gathered}",
        "P power [W], F force at the road [N], v speed [m/s]; a electronics, b v and c v² the spinning machine, d F² "
        "its windings and switches.",
        "The usual form of a loss map; its four figures are assumed for the class.",
    ),
    "who": Why(
        r"\begin{gathered} m\,a = F_\text{road} + F_\text{motor} + F_\text{friction} \\ a \le \mu\,g \end{gathered}",
        "m mass [kg], a slowing [m/s²], F forces [N], μ grip between tyre and road [no unit], g = 9.81 m/s². The "
        "motor’s part is the least of: what is asked, the comfort limit, its greatest force, its greatest power, what "
        "the battery takes, the grip of the driven wheels less a reserve, and what is left near walking pace.",
        "Mechanics; grip from the table of road surfaces with its sources. In a real emergency many cars hand the "
        "whole stop to the friction brakes.",
    ),
    "motor": Why(
        r"P = m\,a\,v",
        "P power at the wheels that a slowing asks for [W], m mass [kg], a slowing [m/s²: metres per second, each "
        "second], v speed [m/s].",
        f"The model, run on your drive with {len(POWER_TIMES)} motor sizes, at the same speeds even where so small a "
        "motor could not reach them. Weight is kept the same too, so that one thing changes at a time; a bigger motor "
        "or battery would add some.",
    ),
    "discs": Why(
        r"\begin{gathered} C\,\frac{\mathrm{d}T}{\mathrm{d}t} = s\,P_\text{friction} - r\,(T^{4} - T_\text{air}^{4}) \\"
        r" {} - k\,(1 + v/v_0)\,(T - T_\text{air}) \end{gathered}",
        "T temperature of both front discs [K], C their heat capacity [J/K], s the front brakes’ share, "
        f"{percent_text(FRONT_SHARE)}, P power of all friction brakes [W], k cooling in still air [W/K], v speed "
        "[m/s], v₀ the speed that doubles it, r radiation [W/K⁴].",
        "One lump of iron. Front share, heat capacity and cooling are assumed; the form of cooling with speed is that "
        "of a US method for truck brakes downhill.",
    ),
}
