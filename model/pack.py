"""The battery over one trace: what it takes and gives in each step, and how its charge and temperature follow.

Charge and temperature stand at the starts of blocks of steps, everything else of the battery is held over a block.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from model import battery
from model.car import Car
from model.scenario import Conditions
from model.trace import Array
from model.units import J_PER_KWH
from model.wheel_demand import BLOCK, Demand

ROOM_PER_BLOCK = 0.25
"""The most of a nearly full battery's room that one block may fill [1]; only a hybrid's battery takes so fast."""
SOC_TOLERANCE = 1e-6
TEMPERATURE_TOLERANCE_K = 5e-3
FULL_TOLERANCE = 1e-12
"""No sweep ends with more charge than the battery holds, but for rounding."""
CHARGE_STEP = 1e-4
"""Step of charge [1] over which the fall of the charge acceptance is taken."""


@dataclass(frozen=True, eq=False)
class PackState:
    """Where a sweep stands.

    `soc` [1] and `pack_c` [°C] at block starts and at the end, shape (runs, blocks + 1). In each block: `heater_w`, the
    power of the battery's heater [W]; `share`, the part of what is asked of a hybrid's battery that it gives [1].
    `unsettled` is how much charge that part may still move [1].
    """

    soc: Array
    pack_c: Array
    heater_w: Array
    share: Array
    unsettled: float = 0.0

    @property
    def now_soc(self) -> Array:
        """Charge in each block [1]."""
        return np.clip(self.soc[:, :-1], 0.0, 1.0)

    @property
    def now_c(self) -> Array:
        """Temperature in each block [°C]."""
        return self.pack_c[:, :-1]


@dataclass(frozen=True, eq=False)
class Draw:
    """What the cells give in each step [W], charging negative, with their loss over power squared [1/W].

    For a hybrid: `engine_w`, what its engine gives in the battery's place; `asked_w`, what the battery was asked for.
    Shapes (runs, blocks, steps of a block).
    """

    cell_w: Array
    loss_per_w2: Array
    engine_w: Array | None = None
    asked_w: Array | None = None


@dataclass(frozen=True, eq=False)
class Pack:
    """The battery of one car, or of many, over one trace."""

    car: Car
    soc_start: Any
    start_c: Any
    measured_c: Array | None
    runs: int
    step_s: Array
    block_s: Array
    ambient_c: Array

    @classmethod
    def of(cls, demand: Demand, car: Car, conditions: Conditions, runs: int, measured_c: Array | None) -> Pack:
        """Lay a battery over the blocks of a trace; a measured temperature [°C] replaces the computed one."""
        step_s = demand.step_s.reshape(-1, BLOCK)
        blocks = len(step_s)
        if measured_c is not None:
            at = np.minimum(np.arange(blocks + 1) * BLOCK, len(measured_c) - 1)
            measured_c = np.broadcast_to(measured_c[at], (runs, blocks + 1))
        return cls(
            car=car,
            soc_start=conditions.soc_start - (demand.warm_cabin_j + demand.warm_pack_j) / (car.usable_kwh * J_PER_KWH),
            start_c=battery.start_temperature_c(conditions, demand.ambient_c[:, :1]),
            measured_c=measured_c,
            runs=runs,
            step_s=step_s,
            block_s=step_s.sum(-1)[None, :],
            ambient_c=demand.ambient_c.reshape(-1, blocks, BLOCK).mean(-1),
        )

    @property
    def capacity_j(self) -> Any:
        """Energy between empty and full [J]."""
        return self.car.usable_kwh * J_PER_KWH

    @property
    def heated(self) -> bool:
        """Whether a heater may run; where the temperature was measured its power is not known and taken as none."""
        return self.measured_c is None and bool(np.any(np.asarray(self.car.pack_heater_kw) > 0))

    @property
    def floor(self) -> Any:
        """Charge below which a hybrid's engine gives what the battery would have to [1]; None without an engine."""
        return None if self.car.sustain_soc is None else np.minimum(self.car.sustain_soc, self.soc_start)

    def by_block(self, values: NDArray[Any]) -> Array:
        """Steps in a row, cut into blocks."""
        return values.reshape(self.runs, -1, BLOCK)

    def energy_j(self, power_w: Array) -> Array:
        """Energy of a power in each block [J]; einsum, because arrays in between would take most of the time."""
        return np.einsum("rbs,bs->rb", power_w, self.step_s)

    def loss_j(self, loss_per_w2: Array, cell_w: Array) -> Array:
        """Heat in the cells in each block [J]."""
        return loss_per_w2[..., 0] * np.einsum("rbs,rbs,bs->rb", cell_w, cell_w, self.step_s)

    def temperature_c(self, heat_j: Array) -> Array:
        """Temperature at block starts and at the end [°C]: as measured, else from the heat put in."""
        if self.measured_c is not None:
            return self.measured_c
        return battery.pack_temperature_c(self.car, heat_j, self.block_s, self.ambient_c, self.start_c)

    def first_guess(self, power_w: Array) -> PackState:
        """Start with everything at the voltage and resistance of the start: that saves a sweep."""
        power_w = self.by_block(power_w)
        blocks = power_w.shape[1]
        soc = np.broadcast_to(np.asarray(self.soc_start, dtype=float), (self.runs, 1))
        start_c = np.broadcast_to(self.start_c if self.measured_c is None else self.measured_c[:, :1], (self.runs, 1))
        ohms = battery.resistance_ohm(self.car, soc, start_c)
        heat = self.loss_j((ohms / battery.open_circuit_v(self.car, soc) ** 2)[..., None], power_w)
        used = np.cumsum((self.energy_j(power_w) + heat) / self.capacity_j, axis=1)
        return PackState(
            soc=np.concatenate([soc, self.soc_start - used], axis=1),
            pack_c=self.temperature_c(heat),
            heater_w=np.zeros((self.runs, blocks)),
            share=np.ones((self.runs, blocks)),
        )

    def accepted_w(self, state: PackState, more: float = 0.0) -> Array:
        """What the battery takes in each block [W], with `more` charge than it has [1]."""
        charge = np.minimum(state.now_soc + more, 1.0)
        # acceptance is held over a block, so none may fill more than its part of the room
        fills = (1 - charge) * self.capacity_j / np.maximum(self.block_s, 1e-9)
        return np.minimum(battery.acceptance_w(self.car, charge, state.now_c), ROOM_PER_BLOCK * fills)

    def acceptance_slope(self, state: PackState, accepted_w: Array, over: NDArray[np.bool_]) -> Array:
        """How charging falls with charge where acceptance holds it [1], so that the next sweep foresees it (Newton)."""
        fall = (self.accepted_w(state, CHARGE_STEP) - accepted_w) / CHARGE_STEP
        slope = fall * (self.by_block(over) * self.step_s).sum(-1) / self.capacity_j
        return np.clip(slope, -ROOM_PER_BLOCK, 0.0)

    def draw(self, state: PackState, power_w: Array) -> Draw:
        """What the cells give for a power at the terminals [W]."""
        volts = battery.open_circuit_v(self.car, state.now_soc)[..., None]
        ohms = battery.resistance_ohm(self.car, state.now_soc, state.now_c)[..., None]
        terminal_w = self.by_block(power_w)
        engine_w = asked_w = None
        if self.floor is not None:
            pulled = np.maximum(terminal_w, 0.0)
            asked_w = np.minimum(pulled, battery.greatest_w(volts, ohms))
            engine_w = pulled - asked_w * state.share[..., None]
            terminal_w = terminal_w - engine_w
        # for a power P at the terminals the cells give 2 P / (1 + sqrt(1 − 4 P R / V²)), worked out in place
        loss_per_w2 = ohms / volts**2
        cell_w = terminal_w * (-4 * loss_per_w2)
        cell_w += 1
        np.sqrt(np.maximum(cell_w, 0.0, out=cell_w), out=cell_w)
        cell_w += 1
        np.divide(2 * terminal_w, cell_w, out=cell_w)
        return Draw(cell_w, loss_per_w2, engine_w, asked_w)

    def after(self, state: PackState, draw: Draw, slope: Array) -> PackState:
        """Charge, temperature, heater and share that follow from a draw."""
        taken = -self.energy_j(draw.cell_w) / self.capacity_j
        share, unsettled = state.share, 0.0
        if draw.asked_w is None:
            soc = battery.recurrence(1 + slope, taken - slope * state.now_soc, self.soc_start)
        else:
            drawn = self.energy_j(np.maximum(draw.cell_w, 0.0)) / self.capacity_j
            asked = self.energy_j(draw.asked_w) / self.capacity_j
            partly = asked * state.share
            # what the battery alone would draw from its charge, the loss in its cells as it is with its present share
            alone = asked * np.divide(drawn, partly, out=np.ones_like(drawn), where=partly > 0)
            gained = taken + drawn
            soc = battery.recurrence(1 + slope, gained - alone - slope * state.now_soc, self.soc_start, self.floor)
            given = soc[:, :-1] + gained - soc[:, 1:]
            share = np.clip(given / np.maximum(alone, 1e-300), 0.0, 1.0)
            unsettled = float(np.abs((share - state.share) * alone).sum(-1).max())
        heat, heater_w = self.loss_j(draw.loss_per_w2, draw.cell_w), state.heater_w
        if self.heated:
            most_w = np.asarray(self.car.pack_heater_kw) * 1000
            always_on = self.temperature_c(heat + most_w * self.block_s)
            heater_w = most_w * battery.heater_share(self.car, always_on)
            heat = heat + heater_w * self.block_s
        return PackState(soc, self.temperature_c(heat), heater_w, share, unsettled)


def settled(before: PackState, after: PackState) -> bool:
    """Whether a sweep moved charge and temperature by less than their tolerances, and filled no battery too full."""
    charge = max(np.abs(after.soc - before.soc).max(), after.unsettled)
    warmth = np.abs(after.pack_c - before.pack_c).max()
    return bool(
        charge < SOC_TOLERANCE and warmth < TEMPERATURE_TOLERANCE_K and after.soc.max() <= 1 + FULL_TOLERANCE
    )
