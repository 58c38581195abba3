"""The equations of the kernel written a second time, as a plain loop over steps, for the tests to compare with.

Python floats, time running forward once, charge and temperature carried along from step to step. Nothing of the model
is used but what describes car, road, weather and driver: constants, curves and the reading of tables stand here a
second time. Where a solution is asked for, a span is halved until it is found.
"""

from __future__ import annotations

import bisect
import csv
import math
from collections import defaultdict
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from model.describe.car import Car
from model.describe.scenario import Conditions, Driver
from model.describe.trace import Trace

ASSETS = Path(__file__).resolve().parents[1] / "assets"
GRAVITY = 9.80665
VOLTAGE = [0.0, 0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 1.0], [3.3, 3.45, 3.52, 3.63, 3.71, 3.86, 4.04, 4.17]
RESISTANCE = [0.0, 0.1, 0.2, 0.9, 1.0], [1.6, 1.25, 1.0, 1.0, 1.1]
LEVELS = ("low", "mid", "high")
NO_FORCE = 1e-6
LOSSES_STATED_AT = 165.0 / 3.6


class TooWeak(ValueError):
    """The battery cannot give what is asked; the kernel's callers refuse such drives."""


class Step(NamedTuple):
    """The middle of a step: how long, when, how fast, how steep, how high, and what surrounds it.

    `time_s` counts from where the car set off last, `before_s` is the length of the way out on the way back, else 0.
    """

    lasts_s: float
    time_s: float
    before_s: float
    speed: float
    acceleration: float
    sine: float
    height_m: float
    wind: float
    surface: int
    outside_c: float
    lift_off: float
    cabin_w: float | None


def table(name: str) -> list[dict[str, str]]:
    """The rows of a file of assets."""
    with (ASSETS / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


GRIP = [
    {name: text if name in ("surface", "kind", "source", "sources") else float(text) for name, text in row.items()}
    for row in table("grip.csv")
]
ACCEPTANCE = table("charge_acceptance.csv")
CHARGES = [name for name in ACCEPTANCE[0] if name not in ("level", "battery_c")]
ACCEPTANCE_AT = [float(row["battery_c"]) for row in ACCEPTANCE if row["level"] == "mid"]
RATES = [[[float(row[name]) for name in CHARGES] for row in ACCEPTANCE if row["level"] == level] for level in LEVELS]
CHARGES = [float(name) for name in CHARGES]


def between(x: float, xs: list[float], ys: list[float]) -> float:
    """Straight lines between points, held at the ends."""
    if x <= xs[0]:
        return ys[0]
    if x >= xs[-1]:
        return ys[-1]
    cell = bisect.bisect_right(xs, x) - 1
    return ys[cell] + (ys[cell + 1] - ys[cell]) * (x - xs[cell]) / (xs[cell + 1] - xs[cell])


def greatest(holds: Callable[[float], bool], high: float) -> float:
    """The greatest number from 0 to `high` for which it holds, where it holds up to some number."""
    if holds(high):
        return high
    low = 0.0
    for _ in range(200):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low


def steps_of(trace: Trace, conditions: Conditions, driver: Driver) -> list[Step]:
    """The middles of a trace's steps."""
    season = [row["surface"] for row in GRIP].index(conditions.surface)
    time, speed, height = trace.time_s.tolist(), trace.speed_mps.tolist(), trace.elevation_m.tolist()
    steps = []
    out = len(time) - 1 if trace.heading is None else trace.heading.tolist().count(1)
    for i in range(len(time) - 1):
        set_off = time[0] if i < out else time[out]
        lasts, mean = time[i + 1] - time[i], (speed[i] + speed[i + 1]) / 2
        measured = trace.ambient_c
        steps.append(Step(
            lasts_s=lasts,
            time_s=time[i] - set_off + lasts / 2,
            before_s=set_off - time[0],
            speed=mean,
            acceleration=(speed[i + 1] - speed[i]) / lasts,
            sine=(height[i + 1] - height[i]) / (mean * lasts) if mean > 0 else 0.0,
            height_m=(height[i] + height[i + 1]) / 2,
            wind=conditions.wind_kmh / 3.6 * (1 if trace.heading is None else int(trace.heading[i])),
            surface=season if trace.surface is None else max(season, int(trace.surface[i])),
            outside_c=conditions.ambient_c if measured is None else float(measured[i] + measured[i + 1]) / 2,
            lift_off=driver.lift_off_mps2 if trace.lift_off_mps2 is None else float(trace.lift_off_mps2[i]),
            cabin_w=None if trace.cabin_w is None else float(trace.cabin_w[i]),
        ))  # fmt: skip
    return steps


class Loop:
    """One car under given conditions, as numbers in SI."""

    def __init__(self, car: Car, conditions: Conditions, driver: Driver, regen: bool, tyres_warm: bool):
        self.car, self.conditions, self.driver, self.regen = car, conditions, driver, regen
        self.tyres_warm = tyres_warm
        self.car_mass = car.mass_kg + conditions.payload_kg
        self.mass = self.car_mass + conditions.trailer_kg
        self.car_effective_mass = self.car_mass + car.mass_kg * car.rotating_mass_share
        self.effective_mass = self.car_effective_mass + conditions.trailer_kg
        self.peak_w = car.motor_peak_kw * 1000
        self.peak_n = self.peak_w / (car.motor_base_speed_kmh / 3.6)
        self.capacity_j = car.usable_kwh * 3.6e6
        self.heat_capacity = car.pack_heat_capacity_kj_per_k_kwh * 1000 * car.usable_kwh

    # what the wheels ask

    def cold(self, at: Step, warm_up_min: float, cools_h: float) -> float:
        """How cold still is what warms up on the way and cools while the car stands: 1 at first, 0 in the end."""
        warmth = 1.0 if self.tyres_warm else 0.0
        if at.before_s:
            warmth = 1 - (1 - warmth) * math.exp(-at.before_s / 60 / warm_up_min)
            warmth *= math.exp(-self.conditions.stands_h / cools_h)
        return (1 - warmth) * math.exp(-at.time_s / 60 / warm_up_min)

    def tyres(self, at: Step) -> float:
        """Rolling resistance over that of warm tyres at 20 °C."""
        cold = self.car.tyre_cold_share * self.cold(at, self.car.tyre_warm_up_min, 1.0)
        return (1 - 0.008 * (at.outside_c - 20)) * (1 + cold)

    def driveline_n(self, at: Step) -> float:
        """What cold gear oil, bearings and grease drag more than warm ones; oil as thick as Walther says."""

        def drag(celsius: float) -> float:
            return max((viscosity(celsius) / viscosity(60)) ** (1 / 3) - 1, 0.0)

        def viscosity(celsius: float) -> float:
            return 10 ** 10 ** (8.542 - 3.354 * math.log10(celsius + 273.15)) - 0.7

        cold = self.cold(at, self.car.driveline_warm_up_min, 1.5)
        tonnes = self.car.mass_kg / 1000
        return cold * self.car.driveline_cold_n_per_t * tonnes * drag(at.outside_c) / drag(20)

    def rolling_n(self, at: Step, cosine: float) -> float:
        """Rolling resistance of the car without its trailer."""
        car, soft = self.car, GRIP[at.surface]["extra_rolling"] * self.car_mass * GRAVITY * cosine
        if car.f0_n is None:
            return car.rolling_coefficient * self.car_mass * GRAVITY * self.tyres(at) * cosine + soft
        measured_n = car.f0_n * self.car_mass / car.mass_kg * cosine + car.f1_n_per_mps * at.speed
        turned_in_neutral_n = self.spin_n(at.speed) * car.zero_torque_drag_share / car.gear_efficiency
        return measured_n * self.tyres(at) + soft - turned_in_neutral_n

    def density(self, at: Step) -> float:
        """Air at the height of the road, a start at sea level taken as the lowest place there is."""
        start_m = self.conditions.altitude_m
        pressure = 101325.0 * (1 - 2.25577e-5 * max(start_m + at.height_m, min(start_m, 0.0))) ** 5.25588
        return pressure / (287.05 * (at.outside_c + 273.15))

    def drag(self) -> float:
        """Force of the air on the car over its density and the square of the speed through it."""
        return 0.5 * self.car.drag_area_m2 if self.car.f0_n is None else self.car.f2_n_per_mps2 / 1.2041

    def wheel_n(self, at: Step) -> float:
        """What the wheels must do."""
        forced = self.effective_mass * at.acceleration + self.mass * GRAVITY * at.sine
        if at.speed == 0:
            return forced
        cosine, trailer, through = math.sqrt(1 - at.sine**2), self.conditions.trailer_kg, at.speed + at.wind
        soft = GRIP[at.surface]["extra_rolling"]
        towed = trailer * GRAVITY * cosine * (self.car.rolling_coefficient * self.tyres(at) + soft)
        drag = self.drag() + (0.5 * self.conditions.trailer_drag_area_m2 if trailer else 0.0)
        held = self.rolling_n(at, cosine) + self.driveline_n(at) + towed
        return forced + held + drag * self.density(at) * through * abs(through)

    # what the limits allow

    def spin_n(self, speed: float) -> float:
        """Drag of the spinning machine."""
        share = speed / LOSSES_STATED_AT
        return self.peak_w / LOSSES_STATED_AT * (self.car.motor_loss_speed + self.car.motor_loss_speed2 * share)

    def unloaded_n(self, brake: float, speed: float) -> float:
        """What turning the unloaded machine takes of the braking at the wheels."""
        return min(brake, self.spin_n(speed) * self.car.zero_torque_drag_share / self.car.gear_efficiency)

    def grip_n(self, at: Step) -> float:
        """What the tyres of the driven axle hold of motor slowing."""
        car, road = self.car, GRIP[at.surface]
        grip = between(self.conditions.grip_level, [-1.0, 0.0, 1.0], [road[f"grip_{end}"] for end in LEVELS])
        if self.conditions.tyres != "any":
            grip *= road[f"{self.conditions.tyres}_factor"]
        shares = [1.0, road["share_at_90_kmh"], road["share_at_130_kmh"]]
        grip *= between(at.speed * 3.6, [50.0, 90.0, 130.0], shares) * (1 - car.grip_reserve_share)
        moved = self.car_mass * max(-at.acceleration - GRAVITY * at.sine, 0.0) * car.cg_height_m / car.wheelbase_m
        front = self.car_mass * GRAVITY * car.front_load_share + moved
        rear = self.car_mass * GRAVITY * (1 - car.front_load_share) - moved
        if car.driven_axle == "front":
            return grip * front
        if car.driven_axle == "rear":
            return grip * rear
        if car.front_regen_share is None:
            return grip * (front + rear)
        return grip * min(front / max(car.front_regen_share, 1e-9), rear / max(1 - car.front_regen_share, 1e-9))

    def allowed_n(self, at: Step, brake: float) -> tuple[float, str]:
        """What the motor may take of the braking, the battery left aside, and which limit bound."""
        car, unloaded = self.car, self.unloaded_n(brake, at.speed)
        if not self.regen:
            return unloaded, "no_regeneration" if brake > unloaded else ""
        regen_w = self.peak_w if car.regen_peak_kw is None else car.regen_peak_kw * 1000
        limits = {}
        if car.brake_pedal == "friction":
            rolling = self.rolling_n(at, 1.0) + self.driveline_n(at) if at.speed > 0 else 0.0
            road_load = rolling + self.drag() * self.density(at) * at.speed**2
            limits["lift_off_only"] = max(at.lift_off * self.car_effective_mass - road_load, 0.0)
        limits["drivability"] = car.regen_cap_mps2 * self.car_mass
        limits["motor_torque"] = self.peak_n / car.gear_efficiency
        limits["motor_power"] = regen_w / car.gear_efficiency / max(at.speed, 1e-3)
        limits["grip"] = self.grip_n(at)
        if not self.driver.comes_to_rest:
            start, end = car.fade_start_kmh / 3.6, car.fade_end_kmh / 3.6
            limits["low_speed_fade"] = brake * min(max((at.speed - end) / max(start - end, 1e-6), 0.0), 1.0)
        most, bound = brake, ""
        for name, limit in limits.items():
            if limit < most:
                most, bound = limit, name
        if most > unloaded and self.electric_w(at, 0.0, brake, most) > self.electric_w(at, 0.0, brake, unloaded):
            return unloaded, bound or "nothing_to_gain"
        return max(most, unloaded), bound

    # what the machine does

    def machine(self, at: Step, pull: float, brake: float, taken: float) -> tuple[float, float]:
        """Force at the shaft, and what motor and inverter lose."""
        shaft = pull / self.car.gear_efficiency - taken * self.car.gear_efficiency
        works = pull > NO_FORCE or taken > self.unloaded_n(brake, at.speed) + NO_FORCE
        copper = self.peak_w * self.car.motor_loss_torque2 * (shaft / self.peak_n) ** 2
        if at.speed == 0:
            return shaft, copper if works else 0.0
        fixed, spinning = self.peak_w * self.car.motor_loss_fixed, self.spin_n(at.speed) * at.speed
        if not works:
            return shaft, spinning * self.car.zero_torque_drag_share + fixed
        working = self.peak_w * self.car.motor_loss_working * at.speed / LOSSES_STATED_AT
        left_open = shaft * at.speed * (self.car.open_pulling_share if shaft > 0 else -self.car.open_slowing_share)
        return shaft, left_open + spinning + working + fixed + copper

    def electric_w(self, at: Step, pull: float, brake: float, taken: float) -> float:
        """Power of the motor at the inverter's terminals."""
        shaft, loss = self.machine(at, pull, brake, taken)
        return shaft * at.speed + loss

    # cabin and battery

    def cabin_w(self, at: Step) -> float:
        """Electric power of the cabin at one moment."""
        car, around = self.car, self.conditions
        ambient, wanted = around.ambient_c, max(around.cabin_set_c - around.ambient_c, 0.0)
        if at.cabin_w is not None:
            return at.cabin_w
        if not around.cabin or 18 <= ambient <= 24:
            return 0.0
        if ambient > 24:
            return (car.cabin_loss_w_per_k * max(ambient - around.cabin_set_c, 0.0) + 600.0) / 2.5
        if car.heat_source == "engine":
            return 0.0
        cop = max(1.0, car.heat_pump_cop_at_0c + 0.04 * ambient) if car.heat_source == "heat_pump" else 1.0
        strongest = car.heater_max_kw * 1000 * cop
        time_constant = car.cabin_heat_capacity_kj_per_k * 1000 / car.cabin_loss_w_per_k
        ever = (strongest + 100) / car.cabin_loss_w_per_k

        def heated(warmer: float, seconds: float) -> float:
            return min(ever - (ever - warmer) * math.exp(-seconds / time_constant), wanted)

        parked = ambient if around.parked_c is None else around.parked_c
        warmer = wanted if around.preconditioned else min(max(parked - ambient, 0.0), wanted)
        if at.before_s:
            # standing it loses six tenths of what it loses driving
            warmer = heated(warmer, at.before_s) * math.exp(-0.6 * around.stands_h * 3600 / time_constant)
            if around.preconditioned and around.stands_plugged_in:
                warmer = wanted
        warm = warmer >= wanted or heated(warmer, at.time_s) >= wanted
        holding = min(max(car.cabin_loss_w_per_k * wanted - 100, 0.0), strongest)
        return (holding if warm else strongest) / cop

    def charge_rate(self) -> float:
        """Times the acceptance tables."""
        stated = self.car.charge_rate_factor
        return (self.car.motor_peak_kw / self.car.usable_kwh / 2.3) ** 0.5 if stated is None else stated

    def accepted_w(self, soc: float, pack_c: float, step_s: float) -> float:
        """Power the battery takes: between charges first, then between temperatures, then between tables."""
        by_level = [between(pack_c, ACCEPTANCE_AT, [between(soc, CHARGES, row) for row in level]) for level in RATES]
        rate = between(self.car.acceptance_level, [-1.0, 0.0, 1.0], by_level) * self.charge_rate()
        return min(rate * self.car.usable_kwh * 1000, (1 - soc) * self.capacity_j / step_s)

    def cell(self, soc: float, pack_c: float) -> tuple[float, float]:
        """Open-circuit voltage [V] and resistance [ohm] of the pack."""
        car, (xs, ys) = self.car, VOLTAGE
        pairs = zip(xs, xs[1:], ys, ys[1:], strict=False)
        mean = sum((right - left) * (low + high) / 2 for left, right, low, high in pairs)
        share = car.cell_resistance_share
        if share is None:
            share = car.cell_resistance_usual * (2.3 * car.usable_kwh / car.motor_peak_kw) ** 0.5
        warm = share * car.pack_voltage_v**2 / (car.usable_kwh * 1000)
        colder = 1 / (pack_c + 273.15) - 1 / 298.15
        arrhenius = math.exp(car.resistance_activation_j_per_mol / 8.314462618 * colder)
        return between(soc, xs, ys) / mean * car.pack_voltage_v, warm * between(soc, *RESISTANCE) * arrhenius

    def start_c(self, outside_c: float) -> tuple[float, float]:
        """Pack temperature at the start, and how much of it was warmed up before."""
        if self.conditions.battery_temp_c is not None:
            return self.conditions.battery_temp_c, 0.0
        parked = outside_c if self.conditions.parked_c is None else self.conditions.parked_c
        warmer = max(20.0 - parked, 0.0) if self.conditions.preconditioned else 0.0
        return parked + warmer, warmer

    def cabin_before_j(self, outside_c: float) -> float:
        """What warming the cabin before the drive takes from the battery."""
        car, around = self.car, self.conditions
        parked = outside_c if around.parked_c is None else around.parked_c
        if not around.cabin or around.ambient_c >= 18 or car.heat_source == "engine":
            return 0.0
        cop = max(1.0, car.heat_pump_cop_at_0c + 0.04 * parked) if car.heat_source == "heat_pump" else 1.0
        return car.cabin_heat_capacity_kj_per_k * 1000 * max(around.cabin_set_c - parked, 0.0) / cop


def drive_step(loop: Loop, at: Step, soc: float, pack_c: float, heater_w: float, share: float) -> dict:
    """What a step comes to [J], with a hybrid's battery giving `share` of what it is asked."""
    car = loop.car
    charge = min(max(soc, 0.0), 1.0)
    volts, ohms = loop.cell(charge, pack_c)
    accepted = loop.accepted_w(charge, pack_c, at.lasts_s)
    wheel = loop.wheel_n(at)
    pull, brake = max(wheel, 0.0), max(-wheel, 0.0)
    taken, bound = loop.allowed_n(at, brake)
    load = car.accessory_w + loop.cabin_w(at) + heater_w
    drag = 0.0
    if loop.regen and loop.electric_w(at, pull, brake, taken) < -(load + accepted):
        least_w = -(load + accepted)
        taken = greatest(lambda n: loop.electric_w(at, 0.0, brake, n) >= least_w, taken)
        bound = "battery"
        drag = min(brake - taken, car.engine_drag_kw * 1000 / max(at.speed, 1e-3))
    shaft, loss = loop.machine(at, pull, brake, taken)
    terminal = shaft * at.speed + loss + load
    engine = 0.0
    if car.sustain_soc is not None and terminal > 0:
        engine = terminal - share * min(terminal, 0.6 * volts**2 / (4 * ohms))
    inside = volts**2 - 4 * ohms * (terminal - engine)
    if inside <= 0:
        raise TooWeak
    amps = 2 * (terminal - engine) / (volts + math.sqrt(inside))
    work = at.speed * at.lasts_s
    return {
        "out": max(terminal, 0.0) * at.lasts_s,
        "in": max(-terminal, 0.0) * at.lasts_s,
        "drawn": max(volts * amps, 0.0) * at.lasts_s,
        "taken": max(-volts * amps, 0.0) * at.lasts_s,
        "cell": ohms * amps**2 * at.lasts_s,
        "engine": engine * at.lasts_s,
        "cabin": loop.cabin_w(at) * at.lasts_s,
        "heater": heater_w * at.lasts_s,
        "motor_loss": loss * at.lasts_s,
        "gear": abs(pull - taken - shaft) * work,
        "braking": brake * work,
        "motor": taken * work,
        "engine_drag": drag * work,
        "friction": (brake - taken - drag) * work,
        f"left_by_{bound}": (brake - taken - drag) * work,
    }


def drive(trace: Trace, car: Car, conditions: Conditions, driver: Driver, regen: bool = True) -> dict[str, float]:
    """Energies of a drive [J] by name, `soc` and `pack_c` at its end; raises `TooWeak` where the battery is."""
    warm = trace.warmed_up if conditions.tyres_warm == "by_drive" else conditions.tyres_warm == "yes"
    loop, totals = Loop(car, conditions, driver, regen, warm), defaultdict(float)
    steps = steps_of(trace, conditions, driver)
    measured = None if trace.battery_temp_c is None else trace.battery_temp_c.tolist()
    pack_c, warmed = loop.start_c(steps[0].outside_c)
    if conditions.preconditioned and not conditions.plugged_in:
        totals["cabin"] = loop.cabin_before_j(steps[0].outside_c)
        totals["heater"] = 0.0 if measured else warmed * loop.heat_capacity
        totals["out"] = totals["cabin"] + totals["heater"]
    soc = conditions.soc_start - totals["out"] / loop.capacity_j
    kept = None if car.sustain_soc is None else min(car.sustain_soc, soc)
    heater_most_w = 0.0 if measured else car.pack_heater_kw * 1000
    for number, at in enumerate(steps):
        if at.before_s and not steps[number - 1].before_s:
            keep = math.exp(-car.pack_heat_loss_w_per_k * conditions.stands_h * 3600 / loop.heat_capacity)
            pack_c = keep * pack_c + (1 - keep) * at.outside_c
            if conditions.preconditioned and conditions.stands_plugged_in:
                pack_c = max(pack_c, 20.0)
        pack_c = measured[number] if measured else pack_c
        # the heater gives what is missing until the battery is as warm as it aims at, as far as it can
        heater_w = min(max(car.pack_heater_until_c - pack_c, 0.0) * loop.heat_capacity / at.lasts_s, heater_most_w)

        def at_share(share: float, at=at, soc=soc, pack_c=pack_c, heater_w=heater_w) -> dict:
            """The step with the battery giving part of what it is asked."""
            return drive_step(loop, at, soc, pack_c, heater_w, share)

        def keeps(share: float, given_at=at_share, soc=soc) -> bool:
            """Whether the charge stays at what the engine keeps."""
            return soc - given_at(share)["drawn"] / loop.capacity_j >= kept

        found = at_share(1.0 if kept is None else greatest(keeps, 1.0))
        for name, joules in found.items():
            totals[name] += joules
        soc -= (found["drawn"] - found["taken"]) / loop.capacity_j
        keep = math.exp(-car.pack_heat_loss_w_per_k * at.lasts_s / loop.heat_capacity)
        heat_j = found["cell"] + heater_w * at.lasts_s
        pack_c = keep * pack_c + heat_j / loop.heat_capacity + (1 - keep) * at.outside_c
    totals |= {"soc": soc, "pack_c": measured[-1] if measured else pack_c}
    return totals
