"""What is described: the conditions, the driver, the legs of the drive, the year around it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Any

from model.describe.car import CAR_FIELDS
from model.describe.fields import Field, InputError, choice, count, fields_of, number, text, yes_no
from model.describe.figures import Quantity

SURFACES = ("dry", "wet", "standing-water", "snow", "ice", "glazed-ice")
"""From the most grip to the least in town: where leg and season differ, the slipperier one counts."""
FROZEN = ("snow", "ice", "glazed-ice")
"""Surfaces that lie in winter only."""
TYRES = ("any", "summer", "winter")
"""Kinds of tyre; "any" where it is not known: the middle of the road's band."""


@dataclass(frozen=True, kw_only=True)
class Conditions:
    """Weather, road and charge at the start of the drive."""

    ambient_c: float = number(
        "°C", -40, 50, (-15, 35), "Outside temperature",
        "Cold air is denser, cold tyres roll harder, a cold battery takes less.", default=20.0,
    )
    cabin: bool = yes_no("Cabin heating and cooling", "Whether heater and air conditioning may run.", default=True)
    cabin_set_c: float = number("°C", 10, 30, (18, 24), "Cabin temperature", "What the heater aims at.", default=21.0)
    surface: str = choice(
        SURFACES, "Road surface",
        "Where a leg says otherwise, the slipperier of the two counts. Over the year snow and ice lie on winter days "
        "only.", default="dry",
    )
    tyres: str = choice(TYRES, "Tyres", "What is fitted; any where it is not known.", default="any")
    tyres_warm: str = choice(
        ("by_drive", "yes", "no"), "Tyres and gears warm at the start",
        "Cold tyres roll harder for the first kilometres, cold gear oil and bearings drag. By drive: warm on a "
        "standard cycle, which is driven warm in the laboratory, and cold on every other drive.", default="by_drive",
    )
    grip_level: float = number(
        "1", -1, 1, (-1, 1), "Grip within the surface's band", "−1: the least grip of the band, 0 mid, 1 the most.",
        default=0.0,
    )
    wind_kmh: float = number(
        "km/h", -100, 100, (-30, 30), "Headwind",
        "On the way out; on the way back it comes from behind. Negative: the other way round.", default=0.0,
    )
    altitude_m: float = number(
        "m", -400, 5000, (0, 2500), "Height above sea level",
        "Of the start of the drive: thin air drags less. The drive's own heights, and a recording's, count from it.",
        default=0.0,
    )
    soc_start: float = number(
        "1", 0, 1, (0.15, 0.9), "Charge at the start", "Share of the usable battery: 0 empty, 1 full.", default=0.6
    )
    shown_wh_per_km: float | None = number(
        "Wh/km", 10, 1000, (80, 400), "Average that the car shows for this drive",
        "What its display says of this very drive, battery energy over distance. Keeps, of the cars that it could be, "
        "those that use as much.",
        default=None, optional=True,
    )
    battery_temp_c: float | None = number(
        "°C", -40, 60, (-15, 40), "Battery temperature at the start",
        "Left empty: as cold or warm as where the car stood, or 20 °C when warmed up beforehand.", default=None,
        optional=True,
    )
    parked_c: float | None = number(
        "°C", -40, 50, (-15, 35), "Temperature where the car stood",
        "In a garage, say. Battery and cabin start from it. Left empty: as cold or warm as the air outside.",
        default=None, optional=True,
    )
    preconditioned: bool = yes_no(
        "Warmed up before leaving", "Battery and cabin brought to temperature before the drive begins.", default=False
    )
    plugged_in: bool = yes_no(
        "Plugged in meanwhile",
        "Whether warming up takes its energy from the wall. From the battery, it counts as energy of the drive.",
        default=True,
    )
    stands_h: float = number(
        "h", 0, 168, (0, 24), "Stands before the way back",
        "Tyres, gear oil, cabin and battery cool meanwhile. Counts where there is a way back.", default=8.0,
    )
    stands_plugged_in: bool = yes_no(
        "Plugged in there",
        "Whether a car that is warmed up before leaving is warmed up for the way back too, from that plug. It is not "
        "charged meanwhile.",
        default=False,
    )
    charging_stops: int = count(
        0, 9, (0, 4), "Charging stops",
        "The most there may be on the drive: one stands where the charge would fall to a tenth. Its time counts.",
        default=0,
    )
    charge_stop_to: float = number(
        "1", 0.2, 1, (0.5, 0.9), "Charge at a stop up to", "Charging slows down as the battery gets full.", default=0.8
    )
    payload_kg: float = number(
        "kg", 0, 1500, (0, 400), "Load", "Passengers and luggage beside the driver.", default=0.0
    )
    trailer_kg: float = number(
        "kg", 0, 3500, (0, 2000), "Trailer",
        "Its mass, loaded. It counts in the energy and in what a hill gives; whether car and trailer stay stable is "
        "not modelled. The trailer's own brakes are left out.", default=0.0,
    )
    trailer_drag_area_m2: float = number(
        "m²", 0, 6, (0.3, 3), "Trailer's extra drag area",
        "Added to the car's drag area where there is a trailer: a low box about 0.5, a caravan about 2.", default=1.0,
    )


@dataclass(frozen=True, kw_only=True)
class Driver:
    """Habits: what the feet do."""

    looks_ahead: str = choice(
        ("far", "usual", "late"), "Looks ahead",
        "Far: lifts early and slows gently. Late: keeps on and brakes harder.", default="usual",
    )
    pull_away: str = choice(("gentle", "usual", "brisk"), "Pulls away", "How hard the car is driven up to speed.",
                            default="usual")
    steady_foot: str = choice(
        ("steady", "usual", "restless"), "Steadiness of the foot",
        "A restless foot lets the speed swing and slows more than needed, then pulls up again.", default="usual",
    )
    lift_off_mps2: float = number(
        "m/s²", 0, 3.5, (0, 2.5), "Lift-off strength",
        "Total slowing on a flat road when the foot comes up, road load included.", default=1.0,
    )
    comes_to_rest: bool = yes_no(
        "Comes to rest without the brake pedal", "Whether lift-off alone brings the car to a stop.", default=False
    )
    slowing_on_request: bool = yes_no(
        "More slowing only on request",
        "Yes: the car rolls on when the foot comes up and slows at the lift-off strength when asked to, for a moment.",
        default=False,
    )
    prefers: str = choice(
        ("fewest_presses", "gentlest_ride"), "Prefers",
        "What the advice on lift-off goes by where grip and energy leave a choice.", default="fewest_presses",
    )


@dataclass(frozen=True, kw_only=True)
class Leg:
    """One stretch of the drive, in numbers people know."""

    distance_km: float = number("km", 0.05, 1000, (0.5, 300), "Distance", "Length of this leg.", default=5.0)
    speed_kmh: float = number(
        "km/h", 2, 200, (3, 140), "Typical speed", "The speed driven where nothing is in the way.", default=50.0
    )
    stops: int = count(
        0, 500, (0, 60), "Stops", "Times the car comes to rest on this leg, its end included.", default=4
    )
    slow_downs: int = count(
        0, 500, (0, 80), "Slow-downs", "Times the car slows without stopping: bends, roundabouts, traffic.", default=4
    )
    slow_to_kmh: float = number("km/h", 0, 180, (5, 110), "Slows down to", "Speed at the bottom of a slow-down.",
                                default=30.0)
    climb_m: float = number("m", 0, 4000, (0, 1500), "Climb", "Height gained on this leg.", default=0.0)
    descent_m: float = number("m", 0, 4000, (0, 1500), "Descent", "Height lost on this leg.", default=0.0)
    grade_pct: float = number("%", 0.1, 25, (0.1, 12), "How steep", "Steepness of the hills on this leg.", default=5.0)
    surface: str = choice(SURFACES, "Road surface", "The slipperier of this and the season's counts.", default="dry")
    lift_off_mps2: float | None = number(
        "m/s²", 0, 3.5, (0, 2.5), "Lift-off strength here", "Left empty: the same as on the rest of the drive.",
        default=None, optional=True,
    )


SEASONS = ("winter", "spring", "summer", "autumn")


@dataclass(frozen=True, kw_only=True)
class Year:
    """How often the drive is driven, in which seasons, and what a kilowatt-hour costs."""

    winter_days: int = count(0, 366, (0, 100), "Days in winter", "Days with this drive in winter.", default=55)
    winter_c: float = number("°C", -40, 50, (-20, 15), "Winter temperature", "A usual winter day.", default=1.0)
    spring_days: int = count(0, 366, (0, 100), "Days in spring", "Days with this drive in spring.", default=55)
    spring_c: float = number("°C", -40, 50, (0, 25), "Spring temperature", "A usual spring day.", default=11.0)
    summer_days: int = count(0, 366, (0, 100), "Days in summer", "Days with this drive in summer.", default=55)
    summer_c: float = number("°C", -40, 50, (10, 40), "Summer temperature", "A usual summer day.", default=22.0)
    autumn_days: int = count(0, 366, (0, 100), "Days in autumn", "Days with this drive in autumn.", default=55)
    autumn_c: float = number("°C", -40, 50, (0, 25), "Autumn temperature", "A usual autumn day.", default=10.0)
    currency: str = text("Currency", "The sign that stands with prices; with US units $ until you choose.", default="€")
    price_per_kwh: float = number(
        "per kWh", 0, 100, (0.05, 1), "Price of electricity",
        "Default: mean EU household price, first half of 2024, 0.2889 €/kWh (Eurostat, quoted second-hand); with US "
        "units 0.16 $/kWh, the mean US household price of 2023 (EIA, from memory).",
        default=0.29,
    )
    co2_g_per_kwh: float = number(
        "g/kWh", 0, 1500, (10, 900), "CO₂ of electricity",
        "Default: about the EU mix of 2023, 210 g CO₂e/kWh (from memory); with US units that of the United States, "
        "2022, 390 g/kWh (EIA).",
        default=210.0,
    )


US_PRICES: dict[str, Any] = {"currency": "$", "price_per_kwh": 0.16, "co2_g_per_kwh": 390.0}
"""What `Year` has for readers of US units: the mean household price of 2023 (EIA, from memory), CO₂ of 2022 (EIA)."""


def with_prices_of(year: Year, *, us: bool) -> Year:
    """The year with the prices of where its reader is, as long as they are as usual elsewhere and nobody chose them."""
    usual = {key: fields_of(Year)[key].default for key in US_PRICES}
    here, elsewhere = (US_PRICES, usual) if us else (usual, US_PRICES)
    as_elsewhere = all(getattr(year, key) == value for key, value in elsewhere.items())
    return replace(year, **here) if as_elsewhere else year


CONDITION_FIELDS = fields_of(Conditions)
DRIVER_FIELDS = fields_of(Driver)
LEG_FIELDS = fields_of(Leg)
YEAR_FIELDS = fields_of(Year)
SETTINGS: dict[str, Field] = CAR_FIELDS | CONDITION_FIELDS | DRIVER_FIELDS | YEAR_FIELDS
"""Everything with one value a scenario; legs have several and are told apart by their place."""

MAX_LEGS = 8
LONGEST_H = 48.0
"""A longer way is taken for a slip [h]: a thousand kilometres at walking pace would fill the memory of the machine."""


@dataclass(frozen=True, kw_only=True)
class Scenario:
    """One described drive in one car. The only state the app keeps.

    `stated` holds the figures of the car that the user gave; whatever is not stated comes from the class.
    """

    car_class: str = "family-hatch"
    stated: tuple[tuple[str, Any], ...] = ()
    conditions: Conditions = field(default_factory=Conditions)
    driver: Driver = field(default_factory=Driver)
    legs: tuple[Leg, ...] = (Leg(),)
    return_trip: bool = False
    year: Year = field(default_factory=Year)

    def with_setting(self, key: str, value: Any) -> Scenario:
        """A copy with one setting changed; None for a car's figure takes the class's figure again."""
        if key in CAR_FIELDS:
            stated = {k: v for k, v in self.stated if k != key}
            if value is not None:
                stated[key] = value
            return replace(self, stated=tuple(sorted(stated.items())))
        for part, table in (("conditions", CONDITION_FIELDS), ("driver", DRIVER_FIELDS), ("year", YEAR_FIELDS)):
            if key in table:
                return replace(self, **{part: replace(getattr(self, part), **{key: value})})
        raise InputError("setting-unknown", key=key)

    def with_leg(self, index: int, key: str, value: Any) -> Scenario:
        """A copy with one figure of one leg changed."""
        legs = list(self.legs)
        legs[index] = replace(legs[index], **{key: value})
        return replace(self, legs=tuple(legs))


def check_legs(legs: tuple[Leg, ...]) -> None:
    """Raise `InputError` where the legs cannot be driven as described."""
    if not legs:
        raise InputError("legs-none", most=MAX_LEGS)
    if len(legs) > MAX_LEGS:
        raise InputError("legs-too-many", given=len(legs), most=MAX_LEGS)
    for place, leg in enumerate(legs, 1):
        if leg.slow_downs and leg.slow_to_kmh >= leg.speed_kmh:
            raise InputError(
                "slow-down-not-below-speed", field=LEG_FIELDS["slow_to_kmh"], leg=place,
                slow=Quantity(leg.slow_to_kmh, "km/h", 3, trimmed=True),
                speed=Quantity(leg.speed_kmh, "km/h", 3, trimmed=True),
            )  # fmt: skip
        needed = (leg.climb_m + leg.descent_m) / (leg.grade_pct / 100) / 1000
        if needed > leg.distance_km * (1 + 1e-9):
            raise InputError(
                "hill-longer-than-leg", climb=LEG_FIELDS["climb_m"], descent=LEG_FIELDS["descent_m"], leg=place,
                up=Quantity(leg.climb_m, "m", 3, trimmed=True), down=Quantity(leg.descent_m, "m", 3, trimmed=True),
                grade=Quantity(leg.grade_pct, "%", 6, trimmed=True),
                needed=Quantity(round(needed, 2), "km", 3, trimmed=True),
                length=Quantity(leg.distance_km, "km", 3, trimmed=True),
            )  # fmt: skip
    hours = sum(leg.distance_km / leg.speed_kmh for leg in legs)
    if hours > LONGEST_H:
        raise InputError(
            "drive-takes-too-long", distance=LEG_FIELDS["distance_km"], speed=LEG_FIELDS["speed_kmh"],
            hours=Quantity(math.ceil(hours), "h", places=0), most=Quantity(LONGEST_H, "h", places=0),
        )  # fmt: skip
