"""The foot up beside the brake pedal: where the motor's slowing is missing, and the friction brakes that are there."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.describe.parameters import car_of
from model.describe.scenario import Scenario
from model.lift_off.advice import OnRoad
from model.limits.cold_day import FADES
from model.limits.emergency_stop import emergency_stop
from model.limits.winter import Situation, lift_off_left, why_it_fades


@dataclass(frozen=True)
class FootAndPedal:
    """One situation: what the motor takes as the foot comes up, and a pedal pressed hard on average [m/s²]."""

    situation: Situation
    road: str
    motor_mps2: float
    pedal_mps2: float


def foot_and_pedal(scenario: Scenario, slippery: OnRoad) -> tuple[FootAndPedal, ...]:
    """The scenario's lift-off as usual, with a cold and with a full battery, and what is advised on a slippery road.

    What slip control leaves of a stronger lift-off there is no slowing to count on, so it is not told.
    """
    car, conditions, driver, speed_kmh = car_of(scenario), scenario.conditions, scenario.driver, FADES["speed_kmh"]
    left = {lift.situation: lift.motor_mps2 for lift in why_it_fades(car, conditions, driver, **FADES)}
    there = replace(driver, lift_off_mps2=slippery.lift_off_mps2)
    on_it = replace(conditions, surface=slippery.road)
    left[Situation.SLIPPERY] = lift_off_left(Situation.SLIPPERY, car, on_it, there, speed_kmh).motor_mps2

    found = []
    for situation in (Situation.USUAL, Situation.COLD, Situation.FULL, Situation.SLIPPERY):
        road = slippery.road if situation == Situation.SLIPPERY else "dry"
        pedal = emergency_stop(car, replace(conditions, surface=road), speed_kmh).mean_slowing_mps2
        found.append(FootAndPedal(situation, road, max(float(left[situation]), 0.0), pedal))
    return tuple(found)
