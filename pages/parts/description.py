"""The drive as it is described, in words: car, road, day, pedal and habits, and what is known of a figure."""

from __future__ import annotations

from dataclasses import replace

from model.describe import leg_hills
from model.describe.fields import Field
from model.describe.figures import Quantity, Several, Share, Span
from model.describe.parameters import Assumed, assumed_figures, class_labels
from model.describe.scenario import SEASONS, Conditions, Leg, Scenario, Year
from model.describe.scenario_io import starting_drives
from model.traces.habits import HABITS as STYLES
from model.words.entries import HABITS, choice_word, entered, habit_text
from model.words.quantities import Display, capital, inside
from pages.parts.typography import NO_BREAK

HABIT_NUMBERS = {
    "looks_ahead": "peak_slowing_mps2",
    "pull_away": "peak_pull_away_mps2",
    "steady_foot": "swing_share",
}
"""Which of the builder's numbers stands behind a habit's words."""


def car_words(scenario: Scenario, display: Display) -> str:
    """The car, such as “family hatch”; says when its figures were changed."""
    changed = any(key != "brake_pedal" for key, _ in scenario.stated)
    return display.say("car-adjusted", car=class_name(scenario)) if changed else class_name(scenario)


def class_name(scenario: Scenario) -> str:
    """The car's class, such as “family hatch”."""
    return inside(class_labels()[scenario.car_class])


def drive_id(scenario: Scenario) -> str | None:
    """The starting drive whose road the scenario has; None for one of the visitor's own."""
    # a strength set for one leg changes the car there, not the road
    road = tuple(replace(leg, lift_off_mps2=None) for leg in scenario.legs)
    for name, (_, _, start) in starting_drives().items():
        if (start.legs, start.return_trip) == (road, scenario.return_trip):
            return name
    return None


def drive_words(scenario: Scenario, display: Display) -> str:
    """The drive: a starting drive's name, or its length."""
    name = drive_id(scenario)
    if name is not None:
        return inside(starting_drives()[name][0])
    return display.say("drive-of-length", length=length_of(scenario))


def on_drive(scenario: Scenario, display: Display) -> str:
    """The car on its drive, such as “city car on the flat town commute”."""
    car, drive = car_words(scenario, display), drive_words(scenario, display)
    return display.say("car-on-drive", car=car, drive=drive, named=drive_id(scenario) is not None)


def length_of(scenario: Scenario) -> Quantity:
    """How far the drive goes, the way back included."""
    length = sum(leg.distance_km for leg in scenario.legs) * (2 if scenario.return_trip else 1)
    return Quantity(length, "km", 3, trimmed=True)


def season_of(conditions: Conditions, year: Year) -> str | None:
    """The season whose temperature it is; None for a temperature of its own."""
    return next((name for name in SEASONS if getattr(year, f"{name}_c") == conditions.ambient_c), None)


def season_words(conditions: Conditions, year: Year, display: Display) -> str:
    """Season and temperature, such as “spring, 11 °C”, and what else is out of the ordinary."""
    season = season_of(conditions, year)
    words: list[str | Quantity] = [display.say("season-name", season=season)] if season else []
    words.append(degrees(conditions.ambient_c))
    if conditions.surface != "dry":
        words.append(choice_word("surface", conditions.surface, display))
    if conditions.preconditioned:
        words.append(display.say("start-warmed", plugged=conditions.plugged_in))
    if not conditions.cabin:
        words.append(display.say("cabin-off"))
    return display.figure(Several(tuple(words), ""))


def day_words(scenario: Scenario, display: Display) -> str:
    """The day that is shown, such as “a day of −5 °C, snow” or “a day in winter, 1 °C”."""
    season = season_of(scenario.conditions, scenario.year) is not None
    return display.say("day-shown", day=season_words(scenario.conditions, scenario.year, display), season=season)


def degrees(celsius: float) -> Quantity:
    """A temperature as it was entered."""
    return Quantity(celsius, "°C", 6, trimmed=True)


def pedal_of(scenario: Scenario) -> str:
    """The kind of brake pedal: as stated, else the class's."""
    assumed = assumed_figures(scenario.car_class)["brake_pedal"].mid
    return str(dict(scenario.stated).get("brake_pedal", assumed))


def pedal_words(scenario: Scenario, display: Display) -> str:
    """The brake pedal, such as “blended brake pedal”."""
    return display.say("brake-pedal", pedal=pedal_of(scenario))


def pedal_help(display: Display) -> str:
    """What the kinds of brake pedal are, and how to tell."""
    return display.say("brake-pedal-help", speed=Quantity(50, "km/h", places=0))


def hill_words(leg: Leg, display: Display) -> str:
    """Where the hill of a leg is, under its entries."""
    length = leg_hills.hill_km(leg)
    if length > leg_hills.WHOLE_SHARE * leg.distance_km:
        return display.say("hill-all-the-way", length=Quantity(leg.distance_km, "km"))
    rest = Quantity(leg.distance_km - length, "km")
    return display.say("hill-on-part", length=Quantity(length, "km"), rest=rest)


def leg_words(leg: Leg, display: Display) -> str:
    """One leg in a line: length, speed, what interrupts it, hills."""
    say = display.say
    parts = [say("leg-road", distance=Quantity(leg.distance_km, "km"), speed=Quantity(leg.speed_kmh, "km/h"))]
    if leg.stops:
        parts.append(say("leg-with-stops", stops=leg.stops))
    if leg.slow_downs:
        parts.append(say("leg-slow-downs", slow_downs=leg.slow_downs))
    if not leg.stops and not leg.slow_downs:
        parts.append(say("leg-without-stops"))
    if leg.climb_m:
        parts.append(say("leg-climb", height=Quantity(leg.climb_m, "m")))
    if leg.descent_m:
        parts.append(say("leg-descent", height=Quantity(leg.descent_m, "m")))
    if leg.surface != "dry":
        parts.append(choice_word("surface", leg.surface, display))
    # a line that is too long breaks at a comma, not between a figure and its unit
    return display.figure(Several(tuple(part.replace(" ", NO_BREAK) for part in parts), ""))


def way_back_words(conditions: Conditions, display: Display) -> str:
    """How long the car stands before the way back, such as “after 8 h”, and whether plugged in."""
    if not conditions.stands_h:
        return display.say("way-back-at-once")
    stands = Quantity(conditions.stands_h, "h", 6, trimmed=True)
    return display.say("way-back-after", stands=stands, plugged=conditions.stands_plugged_in)


def habits_words(scenario: Scenario, display: Display) -> str:
    """Habits, load and charge in a line; habits that are as usual are not named."""
    driver, conditions = scenario.driver, scenario.conditions
    unusual = [key for key in HABITS if getattr(driver, key) != "usual"]
    words = [habit_text(key, getattr(driver, key), display) for key in unusual] or [display.say("habits-as-usual")]
    if conditions.payload_kg:
        words.append(display.say("habits-load", mass=Quantity(conditions.payload_kg, "kg")))
    if conditions.trailer_kg:
        words.append(display.say("habits-trailer", mass=Quantity(conditions.trailer_kg, "kg")))
    words.append(display.say("habits-charge", charge=Share(conditions.soc_start, 0)))
    return capital(display.figure(Several(tuple(words), "")))


def habit_number(key: str, choice: str, display: Display) -> str:
    """The number of the builder that stands behind the word of a habit."""
    value = STYLES[HABIT_NUMBERS[key]][choice]
    if key == "looks_ahead":
        return display.say("habit-slowing-number", slowing=Quantity(value, "m/s²", 6, trimmed=True))
    if key == "pull_away":
        return display.say("habit-pulling-number", rate=Quantity(value, "m/s²", 6, trimmed=True))
    deeper = STYLES["over_slowing_share"][choice]
    return display.say("habit-swing-number", swing=Share(value, 0), deeper=Share(deeper, 0), also=deeper > 0)


def provenance(field: Field, assumed: Assumed, display: Display) -> str:
    """A class's band of one figure, what kind of knowledge it is, and where it is from."""
    known = known_words(assumed, display)
    if field.kind != "number" or assumed.low == assumed.high:
        return known
    low, high = (entered(field, end, display) for end in assumed.numbers[::2])
    band = display.figure(Span(low.value, high.value, low.unit, low.digits, trimmed=True))
    return display.say("provenance-with-band", band=band, known=known)


def known_words(assumed: Assumed, display: Display) -> str:
    """What kind of knowledge a figure is, and where it is from."""
    return display.say("provenance", kind=assumed.kind.replace(" ", "-"), source=assumed.source)
