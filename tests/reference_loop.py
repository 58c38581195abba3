"""The same equations as the kernel, written a second time as a plain loop over steps, for the tests to compare with.

Pure Python floats; time runs forward once, with charge, temperature, resistance and acceptance held over blocks of
ten steps. Only the tables of ``assets/`` and the cell's curves are shared with the model.
"""

from __future__ import annotations

import bisect
import math
from dataclasses import dataclass

from model.battery import RESISTANCE_AT_CHARGE, VOLTAGE_AT_CHARGE, acceptance_tables
from model.car import Car
from model.scenario import SURFACES, Conditions, Driver
from model.trace import Trace
from model.tyre_grip import surface_table

GRAVITY = 9.80665
BLOCK = 10


@dataclass
class Totals:
    """Energies [J] of one drive, and how the battery ended."""

    out_j: float = 0.0
    in_j: float = 0.0
    braking_j: float = 0.0
    friction_j: float = 0.0
    soc_end: float = 0.0
    pack_c_end: float = 0.0


def between(x: float, xs: list[float], ys: list[float]) -> float:
    """Straight lines between points, held at the ends."""
    if x <= xs[0]:
        return ys[0]
    if x >= xs[-1]:
        return ys[-1]
    cell = bisect.bisect_right(xs, x) - 1
    return ys[cell] + (ys[cell + 1] - ys[cell]) * (x - xs[cell]) / (xs[cell + 1] - xs[cell])


class Loop:
    """One car under given conditions, as numbers in SI."""

    def __init__(self, car: Car, conditions: Conditions, driver: Driver, regen: bool):
        self.car, self.conditions, self.driver, self.regen = car, conditions, driver, regen
        self.car_mass = car.mass_kg + conditions.payload_kg
        self.mass = self.car_mass + conditions.trailer_kg
        self.car_effective_mass = self.car_mass + car.mass_kg * car.rotating_mass_share
        self.effective_mass = self.car_effective_mass + conditions.trailer_kg
        self.wind = conditions.wind_kmh / 3.6

        warmth = 1 - 0.008 * (conditions.ambient_c - 20)
        if car.f0_n is None:
            self.rolling_0 = car.rolling_coefficient * self.car_mass * GRAVITY * warmth
            self.rolling_1 = 0.0
            self.drag = 0.5 * car.drag_area_m2
        else:
            self.rolling_0 = car.f0_n * self.car_mass / car.mass_kg * warmth
            self.rolling_1 = car.f1_n_per_mps or 0.0
            self.drag = car.f2_n_per_mps2 / 1.2041
        surfaces, surface = surface_table(), SURFACES.index(conditions.surface)
        extra = float(surfaces["extra_rolling"][surface])
        self.soft_road_n = extra * self.car_mass * GRAVITY
        self.trailer_rolling = car.rolling_coefficient * conditions.trailer_kg * GRAVITY * warmth
        self.trailer_soft_road_n = extra * conditions.trailer_kg * GRAVITY
        self.trailer_drag = 0.5 * conditions.trailer_drag_area_m2 if conditions.trailer_kg else 0.0
        self.cold_tyres = conditions.tyres_warm == "no"
        band = [float(surfaces[name][surface]) for name in ("low", "mid", "high")]
        self.grip = between(conditions.grip_level, [-1.0, 0.0, 1.0], band) * (1 - car.grip_reserve_share)
        if conditions.tyres != "any":
            self.grip *= float(surfaces[f"{conditions.tyres}_factor"][surface])
        self.grip_shares = [1.0, *(float(surfaces[f"share_at_{kmh}_kmh"][surface]) for kmh in (90, 130))]

        self.peak_w = car.motor_peak_kw * 1000
        self.regen_w = self.peak_w if car.regen_peak_kw is None else car.regen_peak_kw * 1000
        self.peak_n = self.peak_w / (car.motor_base_speed_kmh / 3.6)
        self.top_speed = car.motor_top_speed_kmh / 3.6

        temperatures, charges, rates = acceptance_tables()
        self.acceptance = temperatures.tolist(), charges.tolist(), rates.tolist()
        self.voltage_over_charge: list[list[float]] = VOLTAGE_AT_CHARGE.tolist()
        self.resistance_over_charge: list[list[float]] = RESISTANCE_AT_CHARGE.tolist()
        xs, ys = self.voltage_over_charge
        pairs = zip(xs, xs[1:], ys, ys[1:], strict=False)
        self.mean_voltage = sum((right - left) * (low + high) / 2 for left, right, low, high in pairs)

    def cold_factor(self, time_s: float) -> float:
        """Rolling resistance over that of warmed-up tyres."""
        if not self.cold_tyres:
            return 1.0
        return 1 + self.car.tyre_cold_share * math.exp(-time_s / (self.car.tyre_warm_up_min * 60))

    def density(self, height_m: float) -> float:
        """Air at a height above the start, a start at sea level taken as the lowest place there is."""
        start_m = self.conditions.altitude_m
        pressure = 101325.0 * (1 - 2.25577e-5 * max(start_m + height_m, min(start_m, 0.0))) ** 5.25588
        return pressure / (287.05 * (self.conditions.ambient_c + 273.15))

    def wheel_n(self, time_s: float, speed: float, acceleration: float, sine: float, density: float) -> float:
        """What the wheels must do in a step."""
        if speed == 0:
            return self.effective_mass * acceleration + self.mass * GRAVITY * sine
        cosine = math.sqrt(1 - sine * sine)
        warm_rolling = (self.rolling_0 + self.trailer_rolling) * self.cold_factor(time_s)
        rolling = (warm_rolling + self.soft_road_n + self.trailer_soft_road_n) * cosine + self.rolling_1 * speed
        air = (self.drag + self.trailer_drag) * density * (speed + self.wind) * abs(speed + self.wind)
        return self.effective_mass * acceleration + self.mass * GRAVITY * sine + rolling + air

    def spin_n(self, speed: float) -> float:
        """Drag of the spinning machine."""
        share = speed / self.top_speed
        return self.peak_w / self.top_speed * (self.car.motor_loss_speed + self.car.motor_loss_speed2 * share)

    def unloaded_n(self, brake: float, speed: float) -> float:
        """What turning the unloaded machine takes of the braking at the wheels."""
        return min(brake, self.spin_n(speed) * self.car.zero_torque_drag_share / self.car.gear_efficiency)

    def motor_slowing_n(
        self, time_s: float, brake: float, speed: float, acceleration: float, sine: float, density: float
    ) -> float:
        """What the motor may take of the braking at the wheels, the battery left aside."""
        car = self.car
        unloaded = self.unloaded_n(brake, speed)
        if not self.regen:
            return unloaded
        moved = self.car_mass * max(-acceleration - GRAVITY * sine, 0.0) * car.cg_height_m / car.wheelbase_m
        axle = self.car_mass * GRAVITY
        if car.driven_axle == "front":
            axle = axle * car.front_load_share + moved
        elif car.driven_axle == "rear":
            axle = axle * (1 - car.front_load_share) - moved
        elif car.front_regen_share is not None:
            front, rear = axle * car.front_load_share + moved, axle * (1 - car.front_load_share) - moved
            axle = min(front / max(car.front_regen_share, 1e-9), rear / max(1 - car.front_regen_share, 1e-9))
        grip = self.grip * between(speed * 3.6, [50.0, 90.0, 130.0], self.grip_shares)
        taken = min(
            brake,
            car.regen_cap_mps2 * self.car_mass,
            self.peak_n / car.gear_efficiency,
            self.regen_w / car.gear_efficiency / max(speed, 1e-3),
            grip * axle,
        )
        if not self.driver.comes_to_rest:
            start, end = car.fade_start_kmh / 3.6, car.fade_end_kmh / 3.6
            taken = min(taken, brake * min(max((speed - end) / max(start - end, 1e-6), 0.0), 1.0))
        if car.brake_pedal == "friction":
            rolling = self.rolling_0 * self.cold_factor(time_s) + self.soft_road_n + self.rolling_1 * speed
            road_load = rolling + self.drag * density * speed * speed
            taken = min(taken, self.driver.lift_off_mps2 * self.car_effective_mass - road_load)
        return max(taken, unloaded)

    def electric_w(self, speed: float, pull: float, brake: float, taken: float) -> float:
        """Power of the motor at the inverter's terminals."""
        if speed == 0:
            return 0.0
        shaft = pull / self.car.gear_efficiency - taken * self.car.gear_efficiency
        fixed = self.peak_w * self.car.motor_loss_fixed
        spinning = self.spin_n(speed) * speed
        if pull == 0 and taken <= self.unloaded_n(brake, speed):
            return shaft * speed + spinning * self.car.zero_torque_drag_share + fixed
        copper = self.peak_w * self.car.motor_loss_torque2 * (shaft / self.peak_n) ** 2
        return shaft * speed + spinning + fixed + copper

    def held_slowing_n(self, speed: float, brake: float, taken: float, least_w: float) -> float:
        """The slowing at which the motor gives just what may go into the battery: halve the span until it is found."""
        low, high = 0.0, taken
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (low, middle) if self.electric_w(speed, 0.0, brake, middle) < least_w else (middle, high)
        return low

    def cabin_w(self, time_s: float) -> float:
        """Electric power of the cabin at one moment."""
        car, ambient, inside = self.car, self.conditions.ambient_c, self.conditions.cabin_set_c
        if not self.conditions.cabin or 18 <= ambient <= 24:
            return 0.0
        if ambient > 24:
            return (car.cabin_loss_w_per_k * max(ambient - inside, 0.0) + 600.0) / 2.5
        cop = max(1.0, car.heat_pump_cop_at_0c + 0.04 * ambient) if car.heat_source == "heat_pump" else 1.0
        strongest = car.heater_max_kw * 1000 * cop
        needed = car.cabin_loss_w_per_k * (inside - ambient)
        if needed >= strongest + 100:
            return strongest / cop
        time_constant = car.cabin_heat_capacity_kj_per_k * 1000 / car.cabin_loss_w_per_k
        parked = ambient if self.conditions.parked_c is None else self.conditions.parked_c
        already = car.cabin_loss_w_per_k * min(max(parked - ambient, 0.0), inside - ambient)
        given = strongest + 100
        reached_s = time_constant * (math.log(1 - already / given) - math.log(1 - needed / given))
        warm = self.conditions.preconditioned or time_s >= reached_s
        return (max(needed - 100, 0.0) if warm else strongest) / cop

    def accepted_w(self, soc: float, pack_c: float) -> float:
        """Power the battery takes: between charges first, then between temperatures, then between tables."""
        temperatures, charges, rates = self.acceptance
        by_level = [between(pack_c, temperatures, [between(soc, charges, row) for row in level]) for level in rates]
        rate = between(self.car.acceptance_level, [-1.0, 0.0, 1.0], by_level) * self.car.charge_rate_factor
        return rate * self.car.usable_kwh * 1000

    def cell(self, soc: float, pack_c: float) -> tuple[float, float]:
        """Open-circuit voltage [V] and resistance [ohm] of the pack."""
        car = self.car
        volts = between(soc, *self.voltage_over_charge) / self.mean_voltage * car.pack_voltage_v
        warm = car.cell_resistance_share * car.pack_voltage_v**2 / (car.usable_kwh * 1000)
        colder = 1 / (pack_c + 273.15) - 1 / 298.15
        arrhenius = math.exp(car.resistance_activation_j_per_mol / 8.314462618 * colder)
        return volts, warm * between(soc, *self.resistance_over_charge) * arrhenius

    def start_c(self) -> float:
        """Pack temperature at the start."""
        if self.conditions.battery_temp_c is not None:
            return self.conditions.battery_temp_c
        parked = self.conditions.ambient_c if self.conditions.parked_c is None else self.conditions.parked_c
        return max(20.0, parked) if self.conditions.preconditioned else parked

    def before_j(self) -> float:
        """What warming cabin and battery before the drive takes from the battery: heat first, then what makes it."""
        car, around = self.car, self.conditions
        if not around.preconditioned or around.plugged_in:
            return 0.0
        parked = around.ambient_c if around.parked_c is None else around.parked_c
        battery_kj = car.pack_heat_capacity_kj_per_k_kwh * car.usable_kwh * (self.start_c() - parked)
        cabin_kj = 0.0
        if around.cabin and around.ambient_c < 18:
            cop = max(1.0, car.heat_pump_cop_at_0c + 0.04 * parked) if car.heat_source == "heat_pump" else 1.0
            cabin_kj = car.cabin_heat_capacity_kj_per_k * max(around.cabin_set_c - parked, 0.0) / cop
        return (battery_kj + cabin_kj) * 1000


def drive(trace: Trace, car: Car, conditions: Conditions, driver: Driver, regen: bool = True) -> Totals:
    """Drive a trace (without surfaces or measurements of its own) step by step.

    Batteries with a heater and hybrids are left out.
    """
    loop, totals = Loop(car, conditions, driver, regen), Totals()
    if conditions.tyres_warm == "by_drive":
        loop.cold_tyres = not trace.warmed_up
    times, speeds, heights = trace.time_s.tolist(), trace.speed_mps.tolist(), trace.elevation_m.tolist()
    totals.out_j = loop.before_j()
    soc, pack_c = conditions.soc_start - totals.out_j / (car.usable_kwh * 3.6e6), loop.start_c()
    heat_capacity = car.pack_heat_capacity_kj_per_k_kwh * 1000 * car.usable_kwh
    for first in range(0, len(times) - 1, BLOCK):
        last = min(first + BLOCK, len(times) - 1)
        volts, ohms = loop.cell(soc, pack_c)
        room_j = (1 - soc) * car.usable_kwh * 3.6e6
        accepted = min(loop.accepted_w(soc, pack_c), 0.25 * room_j / (times[last] - times[first]))
        from_cells_j = heat_j = 0.0
        for step in range(first, last):
            step_s = times[step + 1] - times[step]
            speed = (speeds[step] + speeds[step + 1]) / 2
            acceleration = (speeds[step + 1] - speeds[step]) / step_s
            sine = (heights[step + 1] - heights[step]) / (speed * step_s) if speed > 0 else 0.0
            passed_s = times[step] - times[0] + step_s / 2
            density = loop.density((heights[step] + heights[step + 1]) / 2)
            wheel = loop.wheel_n(passed_s, speed, acceleration, sine, density)
            pull, brake = max(wheel, 0.0), max(-wheel, 0.0)
            taken = loop.motor_slowing_n(passed_s, brake, speed, acceleration, sine, density)
            electric = loop.electric_w(speed, pull, brake, taken)
            load = car.accessory_w + loop.cabin_w(passed_s)
            if regen and electric < -(load + accepted):
                taken = loop.held_slowing_n(speed, brake, taken, -(load + accepted))
                electric = loop.electric_w(speed, pull, brake, taken)
            terminal = electric + load
            amps = (volts - math.sqrt(volts * volts - 4 * ohms * terminal)) / (2 * ohms)
            from_cells_j += volts * amps * step_s
            heat_j += ohms * amps * amps * step_s
            totals.out_j += max(terminal, 0.0) * step_s
            totals.in_j += max(-terminal, 0.0) * step_s
            totals.braking_j += brake * speed * step_s
            totals.friction_j += (brake - taken) * speed * step_s
        soc -= from_cells_j / (car.usable_kwh * 3.6e6)
        keep = math.exp(-car.pack_heat_loss_w_per_k * (times[last] - times[first]) / heat_capacity)
        pack_c = keep * pack_c + heat_j / heat_capacity + (1 - keep) * conditions.ambient_c
    totals.soc_end, totals.pack_c_end = soc, pack_c
    return totals
