"""The car: what it weighs, what holds it back, what its motor, battery and brakes can do."""

from __future__ import annotations

from dataclasses import dataclass

from model.describe.fields import InputError, choice, fields_of, number, text
from model.describe.figures import Quantity


@dataclass(frozen=True, kw_only=True)
class Car:
    """One car, every figure in the unit of its field.

    Numeric figures may also be arrays of shape (runs, 1): the kernel broadcasts them, which is how a band runs many
    cars at once. Values come from a class in ``assets/`` and from what the user stated (`model.describe.parameters`).
    """

    name: str = text("Name", "What to call this car.", default="car")

    # what has to be moved
    mass_kg: float = number(
        "kg", 500, 4500, (900, 3000), "Mass with driver",
        "The car as driven, with its driver. Passengers and luggage are added under load.",
    )
    rotating_mass_share: float = number(
        "1", 0, 0.3, (0.02, 0.1), "Rotating mass",
        "Wheels and motor have to be spun up too: their inertia as a share of the car's mass.",
    )
    drag_area_m2: float = number(
        "m²", 0.2, 4, (0.45, 1.6), "Drag area",
        "Drag coefficient times frontal area. Not used when measured road-load coefficients are given.",
    )
    rolling_coefficient: float = number(
        "1", 0, 0.05, (0.0045, 0.015), "Rolling resistance coefficient",
        "Rolling force over weight at 20 °C. Not used when measured road-load coefficients are given.",
    )
    tyre_cold_share: float = number(
        "1", 0, 1, (0.05, 0.5), "Cold tyres roll harder by",
        "What a tyre that has stood adds to its rolling resistance when warmed up, in the same air.",
    )
    tyre_warm_up_min: float = number(
        "min", 0.5, 60, (4, 20), "Tyres warm up within",
        "Time after which about a third of the cold tyres' share is left.",
    )
    driveline_cold_n_per_t: float = number(
        "N/t", 0, 400, (10, 120), "Cold driveline drags by",
        "What gear oil, bearings and grease that have stood at 20 °C drag more than when warmed up, a tonne of car. "
        "More in the cold, as oil thickens.",
    )
    driveline_warm_up_min: float = number(
        "min", 0.1, 30, (0.5, 4), "Driveline warms up within",
        "Time after which about a third of the cold driveline's extra drag is left.",
    )
    f0_n: float | None = number(
        "N", 0, 1000, (50, 400), "Road load f0",
        "Constant part of the measured road load at 20 °C. Give f0, f1 and f2 together or not at all.",
        default=None, optional=True,
    )
    f1_n_per_mps: float | None = number(
        "N/(m/s)", -10, 20, (-2, 6), "Road load f1", "Part of the measured road load that grows with speed.",
        default=None, optional=True,
    )
    f2_n_per_mps2: float | None = number(
        "N/(m/s)²", 0, 3, (0.25, 1), "Road load f2", "Part of the measured road load that grows with speed squared.",
        default=None, optional=True,
    )

    # motor, inverter and gear
    motor_peak_kw: float = number(
        "kW", 5, 1000, (30, 500), "Motor power", "Peak power of all drive motors together, at the motor shaft.",
    )
    motor_base_speed_kmh: float = number(
        "km/h", 10, 150, (25, 90), "Speed of full motor power",
        "Road speed at which the motor's peak torque first gives its peak power. Below it, torque is the limit.",
    )
    motor_top_speed_kmh: float = number(
        "km/h", 60, 400, (120, 260), "Motor's highest road speed", "Road speed at the motor's highest turning speed.",
    )
    regen_peak_kw: float | None = number(
        "kW", 0, 1000, (10, 300), "Motor power when slowing",
        "The most the motor may take from the wheels. Left empty: as much as it can pull with.",
        default=None, optional=True,
    )
    motor_loss_fixed: float = number(
        "1", 0, 0.02, (0, 0.01), "Motor loss, fixed part",
        "Power electronics while moving, as a share of the motor's peak power.",
    )
    motor_loss_speed: float = number(
        "1", 0, 0.05, (0, 0.02), "Motor loss, speed part",
        "Bearings and iron at 46 m/s that grow with speed, as a share of peak power.",
    )
    motor_loss_speed2: float = number(
        "1", 0, 0.1, (0, 0.06), "Motor loss, speed-squared part",
        "Eddy currents and air in the machine at 46 m/s, as a share of peak power.",
    )
    motor_loss_working: float = number(
        "1", 0, 0.05, (0, 0.01), "Motor loss, part of a working motor",
        "What a motor under load loses at 46 m/s beyond one that is only turned: field weakening and ripple of the "
        "current, growing with speed, as a share of peak power.",
    )
    motor_loss_torque2: float = number(
        "1", 0, 0.5, (0, 0.25), "Motor loss, torque-squared part",
        "Copper and switching loss at peak torque, as a share of peak power.",
    )
    open_pulling_share: float = number(
        "1", -0.5, 0.5, (-0.15, 0.15), "Unknown loss, pulling",
        "What cars of one mass, road load and power differ in beyond everything here: a share of the motor's power "
        "when it pulls. Above 0: thirstier than the model's car.",
        default=0.0,
    )
    open_slowing_share: float = number(
        "1", -0.5, 1, (-0.3, 0.3), "Unknown loss, slowing",
        "Of the motor's power when it slows the car, what does not come back beyond everything here. Brake pads that "
        "touch although the motor could do it all are in it.",
        default=0.0,
    )
    zero_torque_drag_share: float = number(
        "1", 0, 1, (0, 1), "Drag of the idle motor",
        "1: the motor keeps spinning and drags when it does nothing. 0: it rolls free.",
    )
    gear_efficiency: float = number(
        "1", 0.5, 1, (0.93, 0.99), "Gear efficiency",
        "Each way, motor shaft to wheels: what its load costs. What it drags without load is part of the road load.",
    )

    # battery
    usable_kwh: float = number("kWh", 0.3, 250, (0.4, 120), "Usable battery", "Energy between empty and full.")
    pack_voltage_v: float = number("V", 40, 1000, (200, 850), "Battery voltage", "Mean open-circuit voltage.")
    cell_resistance_share: float | None = number(
        "1", 0, 0.2, (0.001, 0.05), "Cell resistance",
        "Voltage drop over mean voltage when the battery would be emptied in one hour, at 25 °C. Left empty: by what "
        "motor the battery has to feed.",
        default=None, optional=True,
    )
    cell_resistance_usual: float = number(
        "1", 0, 0.2, (0.01, 0.05), "Cell resistance of a usual battery",
        "The same for a battery whose motor could empty it 2.3 times an hour. One that feeds a stronger motor for its "
        "size is built for it and has less.",
    )
    resistance_activation_j_per_mol: float = number(
        "J/mol", 0, 80000, (10000, 40000), "Cold makes resistance grow",
        "Activation energy of the cell resistance (Arrhenius).",
    )
    acceptance_level: float = number(
        "1", -1, 1, (-1, 1), "Charge acceptance",
        "Which of the three acceptance tables: −1 low, 0 mid, 1 high, or between.",
    )
    pack_heat_capacity_kj_per_k_kwh: float = number(
        "kJ/K per kWh", 1, 80, (3, 40), "Battery heat capacity", "Heat that warms one usable kWh of battery by 1 K.",
    )
    pack_heat_loss_w_per_k: float = number(
        "W/K", 0, 100, (1, 20), "Battery heat loss", "Heat the battery gives to the air for each degree it is warmer.",
    )
    pack_heater_kw: float = number(
        "kW", 0, 20, (0, 8), "Battery heater", "Warms a cold battery while driving. 0: it warms by its own use only.",
        default=0.0,
    )
    pack_heater_until_c: float = number(
        "°C", -20, 30, (0, 20), "Battery heater runs until", "Battery temperature at which its heater stops.",
        default=10.0,
    )
    cold_capacity_loss_per_k: float = number(
        "1/K", 0, 0.02, (0, 0.008), "Charge the cold holds back",
        "Share of the usable battery that cannot be drawn for each kelvin the battery starts below 20 °C.",
    )
    charge_rate_factor: float | None = number(
        "1", 0.1, 50, (0.5, 20), "Charge rate of the cells",
        "Times the acceptance table. Left empty: by what motor the battery has to feed, 1 where it could empty it 2.3 "
        "times an hour.",
        default=None, optional=True,
    )
    accessory_w: float = number(
        "W", 0, 3000, (100, 800), "Accessories", "Lights, computers, pumps: always on. Cabin heat is counted apart.",
    )
    charging_efficiency: float = number(
        "1", 0.5, 1, (0.8, 0.95), "Charging efficiency", "Battery energy gained over energy from the wall.",
    )

    # what is printed about this very car
    printed_wh_per_km: float | None = number(
        "Wh/km", 30, 1000, (100, 350), "Printed consumption",
        "From the wall, as the test named below gave it. Keeps, of the cars that it could be, those that use as much.",
        default=None, optional=True,
    )
    printed_range_km: float | None = number(
        "km", 10, 2000, (100, 800), "Printed range", "Of the test named below. Counts as printed consumption does.",
        default=None, optional=True,
    )
    printed_test: str = choice(
        ("wltc3b", "udds", "hwfet", "us-cycles", "us-label", "nedc"), "Test of the printed figure",
        "wltc3b, nedc: the European tests. udds, hwfet: the US city and highway cycle before the label's correction; "
        "us-cycles: both, 55 to 45; us-label: what stands on the US label.",
        default="wltc3b",
    )

    # slowing
    driven_axle: str = choice(("front", "rear", "all"), "Driven wheels", "The wheels the motor can slow.")
    front_regen_share: float | None = number(
        "1", 0, 1, (0.2, 0.8), "Front axle's share of the motor slowing",
        "Counts where all wheels are driven. Left empty: each axle slows in proportion to the weight on it.",
        default=None, optional=True,
    )
    slip_control_delay_s: float = number(
        "s", 0, 2, (0.02, 0.5), "Slip control acts after",
        "Time from the moment the wheels begin to slip until the car takes the motor's slowing back.",
    )
    brake_pedal: str = choice(
        ("blended", "friction"), "Brake pedal",
        "Blended: the pedal asks the motor first and adds friction where needed. "
        "Friction: the pedal works the discs only, and the motor slows the car only on lift-off.",
    )
    regen_cap_mps2: float = number(
        "m/s²", 0, 8, (0.7, 3.5), "Motor slowing limit",
        "The most slowing the maker lets the motor do, for comfort and stability.",
    )
    fade_start_kmh: float = number(
        "km/h", 0, 60, (4, 20), "Motor slowing fades below",
        "Below this speed the motor hands over to the friction brakes.",
    )
    fade_end_kmh: float = number(
        "km/h", 0, 60, (0, 10), "Motor slowing ends at", "At and below this speed friction does all the slowing.",
    )
    front_load_share: float = number(
        "1", 0.2, 0.8, (0.4, 0.65), "Weight on the front axle",
        "Share of the weight on the front axle, standing still.",
    )
    cg_height_m: float = number("m", 0.2, 1.5, (0.45, 0.8), "Height of the centre of gravity", "Above the road.")
    wheelbase_m: float = number("m", 1.5, 5, (2.2, 3.8), "Wheelbase", "Between the axles.")
    grip_reserve_share: float = number(
        "1", 0, 0.9, (0.1, 0.5), "Grip kept in reserve",
        "Share of the driven axle's grip that the car does not use for motor slowing.",
    )

    brake_build_up_s: float = number(
        "s", 0, 2, (0.1, 0.6), "Brakes build up within",
        "Time from touching the brake pedal to full braking in an emergency. Counts in stopping distances only.",
    )
    disc_heat_capacity_kj_per_k_t: float = number(
        "kJ/K per t", 1, 20, (3, 8), "Front discs' heat capacity",
        "Heat that warms both front discs by 1 K, a tonne of car.",
    )
    disc_cooling_w_per_k_t: float = number(
        "W/K per t", 1, 60, (4, 16), "Front discs' cooling, standing",
        "Heat both front discs give to still air, a tonne of car. Moving air carries off more.",
    )

    # engine of a hybrid
    sustain_soc: float | None = number(
        "1", 0, 0.95, (0.1, 0.6), "Charge the engine keeps",
        "A hybrid's engine sees to it that the charge does not fall below this. Left empty: there is no engine.",
        default=None, optional=True,
    )
    engine_efficiency: float = number(
        "1", 0.05, 0.5, (0.15, 0.42), "Engine, fuel to drive",
        "Energy that reaches the electric drive's terminals, or replaces what would, over energy in the fuel.",
        default=0.28,
    )
    engine_drag_kw: float = number(
        "kW", 0, 100, (0, 30), "Engine's drag",
        "Slowing power of the turning engine, used where the battery does not take what the motor could give.",
        default=0.0,
    )

    # cabin
    heat_source: str = choice(
        ("resistive", "heat_pump", "engine"), "Cabin heater",
        "A plain electric heater, a heat pump, or the waste heat of a hybrid's engine.",
    )
    heater_max_kw: float = number("kW", 0, 15, (2, 8), "Heater's greatest power", "Electric power at most.")
    heat_pump_cop_at_0c: float = number(
        "1", 1, 6, (1.5, 4), "Heat pump at 0 °C", "Heat given over electricity taken at 0 °C outside.",
    )
    cabin_loss_w_per_k: float = number(
        "W/K", 5, 600, (50, 250), "Cabin heat loss",
        "Heat lost through walls, windows and fresh air for each degree between inside and outside.",
    )
    cabin_heat_capacity_kj_per_k: float = number(
        "kJ/K", 1, 600, (30, 200), "Cabin heat capacity", "Heat that warms air, seats and trim by 1 K.",
    )

    @property
    def has_measured_road_load(self) -> bool:
        """Whether the road load is given as measured coefficients rather than as drag area and rolling."""
        return self.f0_n is not None


CAR_FIELDS = fields_of(Car)


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
