"""Sentences from numbers. Nothing here draws, and nothing here computes an energy."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from model import MODEL_VERSION
from model.describe import leg_hills
from model.describe.fields import Field
from model.describe.parameters import Assumed, assumed_figures, class_labels
from model.describe.scenario import SEASONS, Conditions, Leg, Scenario, Year
from model.describe.scenario_io import starting_drives
from model.sampling.drives import Answer, YearOfDrives
from model.sampling.hybrid import YearOfFuel
from model.sampling.uncertainty import Band
from model.traces.habits import HABITS
from model.words.entries import choice_word, shown_unit, shown_value, tidy
from model.words.quantities import MINUS, US, Display, entry_text, percent_range_text

NO_BREAK = "\N{NO-BREAK SPACE}"
NEGLIGIBLE_SHARE = 0.01
NEGLIGIBLE_KWH = 0.005
NEGLIGIBLE_L = 0.05
THAN = "than the same drive on friction brakes only"

PEDAL_HELP = (
    "**Blended:** press the brake pedal and the motor slows the car first and charges the battery; the discs help when "
    "more is asked. Most recent electric cars and nearly all hybrids.\n\n"
    "**Friction-only:** the pedal works the discs alone. The motor slows the car only when the foot comes off the "
    "accelerator.\n\n"
    "**How can I tell?** Where the road is clear, brake gently from 50 km/h and have a passenger watch the display of "
    "power or charge. If more goes into the battery as the pedal is pressed, the pedal is blended; if pressing changes "
    "nothing, it is friction-only. The owner's manual says which."
)
GUIDE = "Guide me"
GUIDE_HELP = "Six cards from your drive to its answer and its limits. Close them whenever you like."
CAUTION = (
    "Estimates for explanation, not a promise of range or a car's setting. Your owner's manual, local law and licensed "
    "instructors come first."
)
NO_SUBSTITUTE = "Regeneration neither replaces the friction brakes in an emergency nor holds the car on a hill."
WEAKER = "With a full or cold battery, or on a slippery road, it may be weaker than you are used to, or absent."
PRESS_THE_PEDAL = "Leave more room, and press the brake pedal: it brakes whatever the battery takes."


IN_WORDS = re.compile(rf"(−?\d[\d.,]*) ({'|'.join(sorted(US, key=len, reverse=True))})(?![\w/²])")
"""A figure with a unit that US readers have another for, in a sentence."""


def in_units(text: str, display: Display) -> str:
    """A sentence of the model, its figures in the units shown."""
    if not display.us:
        return text

    def shown(found: re.Match[str]) -> str:
        value = float(found[1].replace(MINUS, "-").replace(",", ""))
        return display.text(value, found[2], 3 if found[2] == "km" else 2)

    return IN_WORDS.sub(shown, text)


def together(sentence: str) -> str:
    """A sentence whose numbers stay on one line with their units."""
    return re.sub(r"(?<=\d) (?=(?:%|°[CF]|m/s²|k?Wh|k[WmgN]|km/h|mph|m|mi|ft|lb|l|s|min)(?!\w))", NO_BREAK, sentence)


def other_version(version: str) -> str:
    """What is said of a link that another version of the model made."""
    return (
        f"This link was made with version {version} of the model; here is version {MODEL_VERSION}, so numbers may have "
        "moved. The change log under “Sources and method” says what was changed."
    )


# the answer

SNOW_IN_THE_YEAR = "Snow and ice, where you set them, lie on winter days only; in the other seasons that road is dry."
NO_ANSWER = "There is no answer yet: the drive cannot be driven as described."


def answer_before(scenario: Scenario, display: Display) -> str:
    """What a grey answer is to, where the drive as described now has none."""
    return f"**In grey, the last answer:** {drive_words(scenario, display)}, before that entry."


HYBRID_ENERGY = (
    "For a hybrid, battery energy includes what its engine gives in the battery's place; what that saves is fuel."
)


def headline(answer: Answer, display: Display) -> str:
    """What regeneration saves on the drive: the band and its denominator, in one sentence."""
    saved, share = answer.saved_kwh, answer.saved_share
    if saved.high < NEGLIGIBLE_KWH:
        return f"Next to nothing saved: no less battery energy {THAN}."
    if share is None or share.low > 1:
        without = display.range_text(answer.friction_only_net_kwh, "kWh")
        if share is None:
            return (
                f"The hill does the driving: slowing with the motor brings the battery "
                f"{display.range_text(saved, 'kWh')} more {THAN}."
            )
        return (
            f"The battery ends fuller than it began. The same drive on friction brakes only takes about {without} out "
            "of it."
        )
    if share.high < NEGLIGIBLE_SHARE:
        return f"Less than 1 % less battery energy {THAN}."
    return f"About {share_text(answer)} less battery energy {THAN}."


def headline_marked(answer: Answer, display: Display) -> str:
    """The headline with its band in the colour of what is back in the battery, as markdown."""
    sentence = headline(answer, display)
    return sentence.replace(share_text(answer), f":blue[{share_text(answer)}]") if answer.saved_share else sentence


def share_text(answer: Answer) -> str:
    """The band of energy saved, such as “14 to 19 %”."""
    assert answer.saved_share is not None
    return percent_range_text(answer.saved_share.low, answer.saved_share.high)


def saved_text(answer: Answer, display: Display) -> str:
    """Energy saved on the drive, beside what the drive takes."""
    return display.range_text(answer.saved_kwh, "kWh")


def taken_text(net_kwh: float, display: Display) -> str:
    """What the drive takes from the battery with regeneration, or gives it."""
    if net_kwh < 0:
        return f"the battery ends {display.text(-net_kwh, 'kWh')} fuller"
    return f"the drive takes about {display.text(net_kwh, 'kWh')}"


def range_fact(answer: Answer, usable_kwh: float, display: Display) -> tuple[str, str, str]:
    """Range gained on a full battery; a drive that takes next to nothing has no range to tell."""
    battery = display.text(usable_kwh, "kWh")
    if answer.range_gain_km is None:
        return "On a full battery", "no range to tell", "this drive takes next to nothing: its hill drives"
    further = further_text(answer.range_gain_km, display)
    return "On a full battery", further, f"with {battery} usable, on drives like this"


def further_text(range_gain_km: Band, display: Display) -> str:
    """Range gained on a full battery."""
    return f"{display.range_text(range_gain_km, 'km')} further"


def year_days(year: YearOfDrives) -> int:
    """Days with this drive in the year."""
    return sum(row.days for row in year.rows)


def year_fact(
    year: YearOfDrives, prices: Year, display: Display, fuel: YearOfFuel | None = None
) -> tuple[str, str, str]:
    """A year's saving: at the wall socket in energy, money and CO₂, and what an engine spares in fuel.

    `fuel` is None for a car without an engine; one that has a plug too is told in both, whatever the day shown.
    """
    days = f"In a year of {year_days(year)} days"
    wall = f"{display.range_text(year.saved_wall_kwh, 'kWh')} from the wall"
    money = display.range_text(year.saved_money, "")
    worth = f"{prices.currency} {money}, {display.range_text(year.saved_co2_kg, 'kg')} CO₂"
    if fuel is None:
        return days, wall, worth
    if fuel.plugged and fuel.saved_l.high < NEGLIGIBLE_L:
        return days, wall, f"{worth}; next to no fuel"
    litres = f"{display.range_text(fuel.saved_l, 'l')} of fuel"
    if not fuel.plugged:
        return days, litres, "less, each season at its own temperature"
    return days, f"{litres} and {wall}", f"less, each season at its own temperature; of the electricity alone {worth}"


def not_followed(described_s: float, driven_s: float) -> str:
    """What the car did where it could not keep the described speeds."""
    digits = 0 if round(described_s / 60) < round(driven_s / 60) else 1
    driven, described = (f"{seconds / 60:.{digits}f}" for seconds in (driven_s, described_s))
    return (
        "This car cannot keep up with the speeds described. It was driven as fast as motor and battery allow, and took "
        f"{driven} minutes instead of {described}."
    )


# the description


def car_words(scenario: Scenario) -> str:
    """The car, such as “family hatch”; says when its figures were changed."""
    changed = any(key != "brake_pedal" for key, _ in scenario.stated)
    return class_name(scenario) + (", adjusted" if changed else "")


def class_name(scenario: Scenario) -> str:
    """The car's class, such as “family hatch”."""
    return class_labels()[scenario.car_class].lower().replace("suv", "SUV")


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
        return starting_drives()[name][0].lower()
    return f"drive of {length_text(scenario, display)}"


def on_drive(scenario: Scenario, display: Display) -> str:
    """The car on its drive, such as “city car on the flat town commute”."""
    article = "a" if drive_id(scenario) is None else "the"
    return f"{car_words(scenario)} on {article} {drive_words(scenario, display)}"


def length_text(scenario: Scenario, display: Display) -> str:
    """How far the drive goes, the way back included."""
    length = sum(leg.distance_km for leg in scenario.legs) * (2 if scenario.return_trip else 1)
    return f"{tidy(display.value(length, 'km'), 3):g} {display.unit('km')}"


def season_of(conditions: Conditions, year: Year) -> str | None:
    """The season whose temperature it is; None for a temperature of its own."""
    return next((name for name in SEASONS if getattr(year, f"{name}_c") == conditions.ambient_c), None)


def season_words(conditions: Conditions, year: Year, display: Display) -> str:
    """Season and temperature, such as “spring, 11 °C”, and what else is out of the ordinary."""
    words = [season_of(conditions, year), temperature_text(conditions.ambient_c, display)]
    words.append(choice_word("surface", conditions.surface, display) if conditions.surface != "dry" else None)
    warmed = "warmed on the plug" if conditions.plugged_in else "warmed from the battery"
    words.append(warmed if conditions.preconditioned else None)
    words.append(None if conditions.cabin else "cabin off")
    return ", ".join(word for word in words if word)


def day_words(scenario: Scenario, display: Display) -> str:
    """The day that is shown, such as “a day of −5 °C, snow” or “a day in winter, 1 °C”."""
    named = season_of(scenario.conditions, scenario.year)
    return f"a day {'in' if named else 'of'} {season_words(scenario.conditions, scenario.year, display)}"


def temperature_text(celsius: float, display: Display) -> str:
    """A temperature in whole degrees."""
    shown = round(display.value(celsius, "°C"))
    return f"{shown} {display.unit('°C')}".replace("-", MINUS)


def pedal_of(scenario: Scenario) -> str:
    """The kind of brake pedal: as stated, else the class's."""
    assumed = assumed_figures(scenario.car_class)["brake_pedal"].mid
    return dict(scenario.stated).get("brake_pedal", assumed)


def pedal_words(scenario: Scenario, display: Display) -> str:
    """The brake pedal, such as “blended brake pedal”."""
    return f"{choice_word('brake_pedal', pedal_of(scenario), display)} brake pedal"


def counted(count: int, one: str, many: str = "") -> str:
    """A count with its word: “1 stop”, “3 stops”."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def hill_words(leg: Leg, display: Display) -> str:
    """Where the hill of a leg is, under its entries."""
    length = leg_hills.hill_km(leg)
    if length > leg_hills.WHOLE_SHARE * leg.distance_km:
        return f"All the way: {display.text(leg.distance_km, 'km')}."
    rest = display.text(leg.distance_km - length, "km")
    return f"Hill on {display.text(length, 'km')} of the leg; the other {rest} are flat."


def leg_words(leg: Leg, display: Display) -> str:
    """One leg in a line: length, speed, what interrupts it, hills."""
    parts = [f"{display.text(leg.distance_km, 'km')} at {display.text(leg.speed_kmh, 'km/h')}"]
    if leg.stops:
        parts.append(counted(leg.stops, "stop"))
    if leg.slow_downs:
        parts.append(counted(leg.slow_downs, "slow-down"))
    if not leg.stops and not leg.slow_downs:
        parts.append("nothing in the way")
    if leg.climb_m:
        parts.append(f"{display.text(leg.climb_m, 'm')} up")
    if leg.descent_m:
        parts.append(f"{display.text(leg.descent_m, 'm')} down")
    if leg.surface != "dry":
        parts.append(choice_word("surface", leg.surface, display))
    # a line that is too long breaks at a comma, not between a figure and its unit
    return ", ".join(part.replace(" ", NO_BREAK) for part in parts)


HABIT_NUMBERS = {
    "looks_ahead": ("slows down", "peak_slowing_mps2", "{:g} m/s² at the hardest moment of a stop"),
    "pull_away": ("pulls away", "peak_pull_away_mps2", "{:g} m/s² at the hardest moment of pulling away"),
    "steady_foot": ("holds speed", "swing_share", "speed swings up and down by {:.0f} %"),
}
"""What a habit does, and which of the builder's numbers stands behind its words."""


def way_back_words(conditions: Conditions) -> str:
    """How long the car stands before the way back, such as “after 8 h”, and whether on a plug."""
    if not conditions.stands_h:
        return "at once"
    return f"after {conditions.stands_h:g} h" + (", on a plug" if conditions.stands_plugged_in else "")


def habits_words(scenario: Scenario, display: Display) -> str:
    """Habits, load and charge in a line; habits that are as usual are not named."""
    driver, conditions = scenario.driver, scenario.conditions
    named = [
        f"{does} {choice_word(key, getattr(driver, key), display)}"
        for key, (does, _, _) in HABIT_NUMBERS.items()
        if getattr(driver, key) != "usual"
    ]
    words = named or ["habits as usual"]
    if conditions.payload_kg:
        words.append(f"{display.text(conditions.payload_kg, 'kg')} load")
    if conditions.trailer_kg:
        words.append(f"{display.text(conditions.trailer_kg, 'kg')} trailer")
    words.append(f"charged to {100 * conditions.soc_start:.0f} %")
    line = ", ".join(words)
    return line[0].upper() + line[1:]


def habit_number(key: str, choice: str) -> str:
    """The number behind the word of a habit."""
    _, name, number = HABIT_NUMBERS[key]
    value = HABITS[name][choice]
    sentence = number.format(100 * value if name.endswith("_share") else value)
    deeper = HABITS["over_slowing_share"][choice] if key == "steady_foot" else 0
    return sentence + (f", and slow-downs go {100 * deeper:.0f} % deeper than needed" if deeper else "")


def provenance(field: Field, assumed: Assumed, display: Display) -> str:
    """A class's band of one figure, what kind of knowledge it is, and where it is from."""
    band = ""
    if field.kind == "number" and assumed.low != assumed.high:
        low, high = (entry_text(shown_value(field, end, display)) for end in (assumed.low, assumed.high))
        band = f"{low} to {high} {shown_unit(field, display)}".rstrip() + ". "
    return f"{band}{assumed.kind.capitalize()}: {assumed.source}."


# what is told with what must be said along with it


@dataclass(frozen=True)
class Told:
    """A title, sentences, and caveats that go with them wherever they are told."""

    title: str
    reasons: tuple[str, ...]
    caveats: tuple[str, ...]

    @property
    def sentences(self) -> tuple[str, ...]:
        """All that stands below the title."""
        return self.reasons + self.caveats


# cards, to show and to print


@dataclass(frozen=True)
class Card:
    """One idea: a few large words and what stands below them."""

    title: str
    sentences: tuple[str, ...]


def setting_card(scenario: Scenario) -> Card:
    """What the kind of brake pedal means for this driver."""
    if pedal_of(scenario) == "blended":
        return Card(
            "The brake pedal charges too",
            (
                "Press it early and gently: the motor slows the car first, the discs do only what is left.",
                "So how strongly the car slows when the foot comes up is a matter of comfort. At the same speeds it "
                "changes the energy by next to nothing.",
            ),
        )
    return Card(
        "Lift the foot early",
        (
            "In this car the brake pedal works the discs alone. Only what the car slows by itself, with the foot off "
            "the accelerator, comes back to the battery.",
        ),
    )


LIMITS_CARD = Card("Regeneration will not always be there", (f"{WEAKER} {PRESS_THE_PEDAL}", NO_SUBSTITUTE))
"""When it is not there, and what it is no substitute for."""


def winter_day_words(year: YearOfDrives, display: Display) -> str:
    """The winter day of the year, such as “the year’s winter day, 1 °C, snow”."""
    row = next(row for row in year.rows if row.season == "winter")
    road = "" if row.surface == "dry" else f", {choice_word('surface', row.surface, display)}"
    return f"the year’s winter day, {temperature_text(row.ambient_c, display)}{road}"


def winter_card(year: YearOfDrives, expected: str, display: Display) -> Card:
    """What winter makes of the saving, beside summer, and of motor slowing: `expected`."""
    slowing = f"{expected} {PRESS_THE_PEDAL}"
    day = {row.season: row for row in year.rows}
    cold, warm = day["winter"], day["summer"]
    saved = display.range_text(cold.saved_kwh, "kWh")
    takes, takes_warm = (taken_text(row.taken_kwh, display) for row in (cold, warm))
    taken = f"On a winter day, at {temperature_text(cold.ambient_c, display)}, {takes}; on a summer day {takes_warm}."
    shares = [row.saved_share for row in (cold, warm) if row.net_kwh.low > 0]
    if len(shares) < 2 or None in shares:
        return Card(f"In winter it saves {saved}", (f"Less {THAN}.", taken, slowing))
    in_winter, in_summer = (percent_range_text(share.low, share.high) for share in shares if share)
    return Card(
        f"In winter it saves {in_winter}",
        (
            f"of the battery energy, beside the same winter drive on friction brakes only. In summer {in_summer}.",
            f"{taken} In winter {saved} are saved.",
            slowing,
        ),
    )
