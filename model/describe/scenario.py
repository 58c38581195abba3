"""What is described: the conditions, the driver, the legs of the drive, the year around it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace

from model.describe.car import CAR_FIELDS
from model.describe.fields import Entry, Field, InputError, changed, choice, count, fields_of, number, text, yes_no
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

    ambient_c: float = number("°C", -40, 50, (-15, 35), default=20.0)
    cabin: bool = yes_no(default=True)
    cabin_set_c: float = number("°C", 10, 30, (18, 24), default=21.0)
    surface: str = choice(SURFACES, default="dry")
    tyres: str = choice(TYRES, default="any")
    tyres_warm: str = choice(("by_drive", "yes", "no"), default="by_drive")
    grip_level: float = number("1", -1, 1, (-1, 1), default=0.0)
    wind_kmh: float = number("km/h", -100, 100, (-30, 30), default=0.0)
    altitude_m: float = number("m", -400, 5000, (0, 2500), default=0.0)
    soc_start: float = number("1", 0, 1, (0.15, 0.9), default=0.6)
    shown_wh_per_km: float | None = number("Wh/km", 10, 1000, (80, 400), default=None, optional=True)
    battery_temp_c: float | None = number("°C", -40, 60, (-15, 40), default=None, optional=True)
    parked_c: float | None = number("°C", -40, 50, (-15, 35), default=None, optional=True)
    preconditioned: bool = yes_no(default=False)
    plugged_in: bool = yes_no(default=True)
    stands_h: float = number("h", 0, 168, (0, 24), default=8.0)
    stands_plugged_in: bool = yes_no(default=False)
    charging_stops: int = count(0, 9, (0, 4), default=0)
    charge_stop_to: float = number("1", 0.2, 1, (0.5, 0.9), default=0.8)
    payload_kg: float = number("kg", 0, 1500, (0, 400), default=0.0)
    trailer_kg: float = number("kg", 0, 3500, (0, 2000), default=0.0)
    trailer_drag_area_m2: float = number("m²", 0, 6, (0.3, 3), default=1.0)


@dataclass(frozen=True, kw_only=True)
class Driver:
    """Habits: what the feet do."""

    looks_ahead: str = choice(("far", "usual", "late"), default="usual")
    pull_away: str = choice(("gentle", "usual", "brisk"), default="usual")
    steady_foot: str = choice(("steady", "usual", "restless"), default="usual")
    lift_off_mps2: float = number("m/s²", 0, 3.5, (0, 2.5), default=1.0)
    comes_to_rest: bool = yes_no(default=False)
    slowing_on_request: bool = yes_no(default=False)
    prefers: str = choice(("fewest_presses", "gentlest_ride"), default="fewest_presses")


@dataclass(frozen=True, kw_only=True)
class Leg:
    """One stretch of the drive, in numbers people know."""

    distance_km: float = number("km", 0.05, 1000, (0.5, 300), default=5.0)
    speed_kmh: float = number("km/h", 2, 200, (3, 140), default=50.0)
    stops: int = count(0, 500, (0, 60), default=4)
    slow_downs: int = count(0, 500, (0, 80), default=4)
    slow_to_kmh: float = number("km/h", 0, 180, (5, 110), default=30.0)
    climb_m: float = number("m", 0, 4000, (0, 1500), default=0.0)
    descent_m: float = number("m", 0, 4000, (0, 1500), default=0.0)
    grade_pct: float = number("%", 0.1, 25, (0.1, 12), default=5.0)
    surface: str = choice(SURFACES, default="dry")
    lift_off_mps2: float | None = number("m/s²", 0, 3.5, (0, 2.5), default=None, optional=True)


SEASONS = ("winter", "spring", "summer", "autumn")


@dataclass(frozen=True, kw_only=True)
class Year:
    """How often the drive is driven, in which seasons, what energy costs, and the car that is driven now.

    Of the car that is driven now the consumption is taken as its owner says; without one nothing is said of it.
    """

    winter_days: int = count(0, 366, (0, 100), default=55)
    winter_c: float = number("°C", -40, 50, (-20, 15), default=1.0)
    spring_days: int = count(0, 366, (0, 100), default=55)
    spring_c: float = number("°C", -40, 50, (0, 25), default=11.0)
    summer_days: int = count(0, 366, (0, 100), default=55)
    summer_c: float = number("°C", -40, 50, (10, 40), default=22.0)
    autumn_days: int = count(0, 366, (0, 100), default=55)
    autumn_c: float = number("°C", -40, 50, (0, 25), default=10.0)
    currency: str = text(default="€")
    price_per_kwh: float = number("per kWh", 0, 100, (0.05, 1), default=0.29)
    co2_g_per_kwh: float = number("g/kWh", 0, 1500, (10, 900), default=210.0)
    daily_charge_limit: float = number("1", 0.1, 1, (0.5, 1), default=0.8)
    now_fuel: str = choice(("petrol", "diesel", "hybrid"), default="petrol")
    now_l_per_100km: float | None = number("litres/100 km", 1, 40, (3, 15), default=None, optional=True)
    petrol_price_per_l: float = number("per l", 0, 100, (0.5, 3), default=1.7)
    diesel_price_per_l: float = number("per l", 0, 100, (0.5, 3), default=1.6)


US_PRICES: dict[str, Entry] = {
    "currency": "$", "price_per_kwh": 0.16, "co2_g_per_kwh": 390.0,
    "petrol_price_per_l": 0.87177, "diesel_price_per_l": 0.99329,
}  # fmt: skip
"""What `Year` has for readers of US units: the mean household price of 2023 (EIA, second-hand), CO₂ of 2022 (EIA), fuel
at 3.30 and 3.76 $/gal, the means of 2024 (EIA, second-hand)."""


def with_prices_of(year: Year, *, us: bool) -> Year:
    """The year with the prices of where its reader is, as long as they are as usual elsewhere and nobody chose them."""
    usual = {key: YEAR_FIELDS[key].default for key in US_PRICES}
    here, elsewhere = (US_PRICES, usual) if us else (usual, US_PRICES)
    as_elsewhere = all(getattr(year, key) == value for key, value in elsewhere.items())
    return changed(year, here) if as_elsewhere else year


def own_prices(year: Year, *, us: bool) -> set[str]:
    """Which of the year's prices, and its CO₂ of electricity, are not as usual where its reader is."""
    usual = with_prices_of(Year(), us=us)
    return {key for key in US_PRICES if getattr(year, key) != getattr(usual, key)}


CONDITION_FIELDS = fields_of(Conditions, "conditions")
DRIVER_FIELDS = fields_of(Driver, "driver")
LEG_FIELDS = fields_of(Leg, "leg")
YEAR_FIELDS = fields_of(Year, "year")
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
    stated: tuple[tuple[str, Entry], ...] = ()
    conditions: Conditions = field(default_factory=Conditions)
    driver: Driver = field(default_factory=Driver)
    legs: tuple[Leg, ...] = (Leg(),)
    return_trip: bool = False
    year: Year = field(default_factory=Year)

    def with_setting(self, key: str, value: Entry) -> Scenario:
        """A copy with one setting changed; None for a car's figure takes the class's figure again."""
        if key in CAR_FIELDS:
            stated = {k: v for k, v in self.stated if k != key}
            if value is not None:
                stated[key] = value
            return replace(self, stated=tuple(sorted(stated.items())))
        for part, table in (("conditions", CONDITION_FIELDS), ("driver", DRIVER_FIELDS), ("year", YEAR_FIELDS)):
            if key in table:
                return replace(self, **{part: changed(getattr(self, part), {key: value})})
        raise InputError("setting-unknown", key=key)

    def with_leg(self, index: int, key: str, value: Entry) -> Scenario:
        """A copy with one figure of one leg changed."""
        legs = list(self.legs)
        legs[index] = changed(legs[index], {key: value})
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
