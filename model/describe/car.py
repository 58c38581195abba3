"""The car: what it weighs, what holds it back, what its motor, battery and brakes can do."""

from __future__ import annotations

from dataclasses import dataclass

from model.describe.fields import Field, InputError, choice, fields_of, number, text
from model.describe.figures import Quantity


@dataclass(frozen=True, kw_only=True)
class Car:
    """One car, every figure in the unit of its field.

    Numeric figures may also be arrays of shape (runs, 1): the kernel broadcasts them, which is how a band runs many
    cars at once. Values come from a class in ``assets/`` and from what the user stated (`model.describe.parameters`).
    """

    name: str = text(default="car")

    # what has to be moved
    mass_kg: float = number("kg", 500, 4500, (900, 3000))
    rotating_mass_share: float = number("1", 0, 0.3, (0.02, 0.1))
    drag_area_m2: float = number("m²", 0.2, 4, (0.45, 1.6))
    rolling_coefficient: float = number("1", 0, 0.05, (0.0045, 0.015))
    tyre_cold_share: float = number("1", 0, 1, (0.05, 0.5))
    tyre_warm_up_min: float = number("min", 0.5, 60, (4, 20))
    driveline_cold_n_per_t: float = number("N/t", 0, 400, (10, 120))
    driveline_warm_up_min: float = number("min", 0.1, 30, (0.5, 4))
    f0_n: float | None = number("N", 0, 1000, (50, 400), default=None, optional=True)
    f1_n_per_mps: float | None = number("N/(m/s)", -10, 20, (-2, 6), default=None, optional=True)
    f2_n_per_mps2: float | None = number("N/(m/s)²", 0, 3, (0.25, 1), default=None, optional=True)

    # motor, inverter and gear
    motor_peak_kw: float = number("kW", 5, 1000, (30, 500))
    motor_base_speed_kmh: float = number("km/h", 10, 150, (25, 90))
    motor_top_speed_kmh: float = number("km/h", 60, 400, (120, 260))
    regen_peak_kw: float | None = number("kW", 0, 1000, (10, 300), default=None, optional=True)
    motor_loss_fixed: float = number("1", 0, 0.02, (0, 0.01))
    motor_loss_speed: float = number("1", 0, 0.05, (0, 0.02))
    motor_loss_speed2: float = number("1", 0, 0.1, (0, 0.06))
    motor_loss_working: float = number("1", 0, 0.05, (0, 0.01))
    motor_loss_torque2: float = number("1", 0, 0.5, (0, 0.25))
    open_pulling_share: float = number("1", -0.5, 0.5, (-0.15, 0.15), default=0.0)
    open_slowing_share: float = number("1", -0.5, 1, (-0.3, 0.3), default=0.0)
    zero_torque_drag_share: float = number("1", 0, 1, (0, 1))
    gear_efficiency: float = number("1", 0.5, 1, (0.93, 0.99))

    # battery
    usable_kwh: float = number("kWh", 0.3, 250, (0.4, 120))
    pack_voltage_v: float = number("V", 40, 1000, (200, 850))
    cell_resistance_share: float | None = number("1", 0, 0.2, (0.001, 0.05), default=None, optional=True)
    cell_resistance_usual: float = number("1", 0, 0.2, (0.01, 0.05))
    resistance_activation_j_per_mol: float = number("J/mol", 0, 80000, (10000, 40000))
    acceptance_level: float = number("1", -1, 1, (-1, 1))
    pack_heat_capacity_kj_per_k_kwh: float = number("kJ/K per kWh", 1, 80, (3, 40))
    pack_heat_loss_w_per_k: float = number("W/K", 0, 100, (1, 20))
    pack_heater_kw: float = number("kW", 0, 20, (0, 8), default=0.0)
    pack_heater_until_c: float = number("°C", -20, 30, (0, 20), default=10.0)
    cold_capacity_loss_per_k: float = number("1/K", 0, 0.02, (0, 0.008))
    charge_rate_factor: float | None = number("1", 0.1, 50, (0.5, 20), default=None, optional=True)
    accessory_w: float = number("W", 0, 3000, (100, 800))
    charging_efficiency: float = number("1", 0.5, 1, (0.8, 0.95))

    # what is printed about this very car
    printed_wh_per_km: float | None = number("Wh/km", 30, 1000, (100, 350), default=None, optional=True)
    printed_range_km: float | None = number("km", 10, 2000, (100, 800), default=None, optional=True)
    printed_test: str = choice(("wltc3b", "udds", "hwfet", "us-cycles", "us-label", "nedc"), default="wltc3b")

    # slowing
    driven_axle: str = choice(("front", "rear", "all"))
    front_regen_share: float | None = number("1", 0, 1, (0.2, 0.8), default=None, optional=True)
    slip_control_delay_s: float = number("s", 0, 2, (0.02, 0.5))
    brake_pedal: str = choice(("blended", "friction"))
    regen_cap_mps2: float = number("m/s²", 0, 8, (0.7, 3.5))
    fade_start_kmh: float = number("km/h", 0, 60, (4, 20))
    fade_end_kmh: float = number("km/h", 0, 60, (0, 10))
    front_load_share: float = number("1", 0.2, 0.8, (0.4, 0.65))
    cg_height_m: float = number("m", 0.2, 1.5, (0.45, 0.8))
    wheelbase_m: float = number("m", 1.5, 5, (2.2, 3.8))
    grip_reserve_share: float = number("1", 0, 0.9, (0.1, 0.5))

    brake_build_up_s: float = number("s", 0, 2, (0.1, 0.6))
    disc_heat_capacity_kj_per_k_t: float = number("kJ/K per t", 1, 20, (3, 8))
    disc_cooling_w_per_k_t: float = number("W/K per t", 1, 60, (4, 16))

    # engine of a hybrid
    sustain_soc: float | None = number("1", 0, 0.95, (0.1, 0.6), default=None, optional=True)
    engine_efficiency: float = number("1", 0.05, 0.5, (0.15, 0.42), default=0.28)
    engine_drag_kw: float = number("kW", 0, 100, (0, 30), default=0.0)

    # cabin
    heat_source: str = choice(("resistive", "heat_pump", "engine"))
    heater_max_kw: float = number("kW", 0, 15, (2, 8))
    heat_pump_cop_at_0c: float = number("1", 1, 6, (1.5, 4))
    cabin_loss_w_per_k: float = number("W/K", 5, 600, (50, 250))
    cabin_heat_capacity_kj_per_k: float = number("kJ/K", 1, 600, (30, 200))

    @property
    def idle_figures(self) -> frozenset[str]:
        """Keys of figures that play no part in this car, since it lacks what they are of."""
        engine = ("engine_efficiency", "engine_drag_kw") if self.sustain_soc is None else ()
        pump = ("heat_pump_cop_at_0c",) if self.heat_source != "heat_pump" else ()
        heater = ("pack_heater_until_c",) if self.pack_heater_kw == 0 else ()
        return frozenset((*engine, *pump, *heater))


CAR_FIELDS = fields_of(Car, "car")
CONSUMPTION = Field(
    "printed_kwh_per_100km", "number", "kWh/100 km", "sheet-printed_kwh_per_100km", 3, 100, (10, 35), optional=True
)
"""`Car.printed_wh_per_km` as data sheets print it."""


def check_car(car: Car) -> None:
    """Raise `InputError` where figures of the car do not fit together."""
    given = [value is not None for value in (car.f0_n, car.f1_n_per_mps, car.f2_n_per_mps2)]
    if any(given) and not all(given):
        raise InputError(
            "road-load-in-part",
            f0=CAR_FIELDS["f0_n"], f1=CAR_FIELDS["f1_n_per_mps"], f2=CAR_FIELDS["f2_n_per_mps2"],
        )  # fmt: skip
    if car.fade_end_kmh > car.fade_start_kmh:
        raise InputError(
            "fade-ends-above-start",
            end=CAR_FIELDS["fade_end_kmh"], low=Quantity(car.fade_end_kmh, "km/h", 3, trimmed=True),
            start=CAR_FIELDS["fade_start_kmh"], high=Quantity(car.fade_start_kmh, "km/h", 3, trimmed=True),
        )  # fmt: skip
