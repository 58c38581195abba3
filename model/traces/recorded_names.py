"""What a column of a recording means, by its name: the quantity, in several languages, and its unit."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from model.describe.units import KMH_PER_MPS

NOT_READ = ""
"""The meaning of a column that is left alone."""

UNITS: dict[str, dict[str, tuple[float, float]]] = {
    "time_s": {"s": (1, 0), "ms": (1e-3, 0), "min": (60, 0), "h": (3600, 0), "clock": (1, 0), "date": (1, 0)},
    "speed_kmh": {"km/h": (1, 0), "m/s": (KMH_PER_MPS, 0), "mph": (1.609344, 0), "kn": (1.852, 0)},
    "latitude": {"°": (1, 0)},
    "longitude": {"°": (1, 0)},
    "elevation_m": {"m": (1, 0), "ft": (0.3048, 0)},
    "distance_m": {"m": (1, 0), "km": (1000, 0), "mi": (1609.344, 0)},
    "ambient_c": {"°C": (1, 0), "°F": (5 / 9, -160 / 9), "K": (1, -273.15)},
    "battery_temp_c": {"°C": (1, 0), "°F": (5 / 9, -160 / 9), "K": (1, -273.15)},
    "soc_pct": {"%": (1, 0), "share": (100, 0)},
    "cabin_kw": {"kW": (1, 0), "W": (1e-3, 0)},
    "battery_power_kw": {
        "kW": (1, 0), "W": (1e-3, 0), "kW, positive when it takes": (-1, 0), "W, positive when it takes": (-1e-3, 0),
    },
    "battery_a": {"A": (1, 0), "A, positive when it takes": (-1, 0)},
    "battery_v": {"V": (1, 0)},
}  # fmt: skip
"""The units a meaning is read in: factor and offset to the held one, the usual unit first."""

SPELT = {
    "s": "s sec secs second seconds sek sekunde sekunden seconde secondes segundos secondi",
    "ms": "ms msec millis millisec milliseconds millisecond millisekunden",
    "min": "min minutes minuten",
    "h": "h hours hour stunden std",
    "km/h": "kmh kph kmph kmt",
    "m/s": "mps ms-1 ms1",
    "mph": "mph mih",
    "kn": "kn kt kts knots knoten",
    "°": "deg degrees grad",
    "m": "m meter metre meters metres metros metri masl",
    "ft": "ft feet foot fuss",
    "km": "km kilometer kilometre kilometers kilometres",
    "mi": "mi mile miles",
    "°C": "c degc celsius",
    "°F": "f degf fahrenheit",
    "K": "k kelvin",
    "%": "pct percent prozent",
    "kW": "kw kilowatt",
    "W": "w watt watts",
    "A": "a amp amps ampere amperes",
    "V": "v volt volts",
}
"""How units are written, without signs: "km/h" is kmh, "°C" is c. What stands in two rows is told by its meaning."""
QUOTIENTS = (
    (r"km ?/? ?h|km h-1", "kmh"),
    (r"(m|met(er|re)s?) ?/ ?s(ec(ond)?)?|m s-1", "mps"),
    (r"mi ?/? ?h", "mph"),
    (r"deg ", "deg"),
)
"""Units of several signs, and the one word they become."""
UNIT_WORDS = {word: unit for unit, words in SPELT.items() for word in words.split()}

TEMPERATURE = "temperature temp temperatur temperatura"
BATTERY = "battery batt bat pack cell cells akku batterie hv bateria batteria accu batteri"
OUTSIDE = "ambient outside outdoor exterior external aussen exterieur exterieure esterna buiten air"
SPEED = "speed velocity v geschwindigkeit tempo vitesse velocidad velocita velocidade snelheid hastighet spd"
POWER = "power leistung puissance potencia potenza vermogen effekt"
MEANINGS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("time_s", ("tempo", "s sec ms")),
    ("battery_temp_c", (BATTERY, TEMPERATURE)),
    ("soc_pct", ("soc charge ladestand ladezustand",)),
    ("soc_pct", (BATTERY, "level stand niveau nivel livello")),
    ("cabin_kw", ("cabin cabine kabine hvac heating heater heizung climate klima chauffage clima", POWER)),
    ("battery_power_kw", (BATTERY, POWER)),
    ("battery_a", (BATTERY, "current strom courant corriente corrente stroom i")),
    ("battery_v", (BATTERY, "voltage spannung tension voltaje tensione spanning u")),
    ("ambient_c", (OUTSIDE, TEMPERATURE)),
    ("speed_kmh", (SPEED,)),
    ("latitude", ("lat latitude breite breitengrad latitud latitudine",)),
    ("longitude", ("lon long lng longitude laenge langengrad laengengrad longitud longitudine",)),
    ("elevation_m", ("elevation altitude height ele elev alt hoehe hohe altitud altitudine hoogte hojd quota",)),
    ("distance_m", ("distance dist strecke wegstrecke entfernung distancia distanza afstand",)),
    ("ambient_c", ("ambient aussentemperatur aussentemp",)),
    ("time_s", ("time t timestamp zeit uhrzeit zeitstempel temps heure tiempo hora tempo tijd tid elapsed datetime",)),
    ("battery_power_kw", (POWER,)),
    ("battery_a", ("current strom courant corriente corrente stroom",)),
    ("battery_v", ("voltage spannung tension voltaje tensione spanning",)),
    ("ambient_c", (TEMPERATURE,)),
    ("cabin_kw", ("cabin heating heizung hvac",)),
)  # fmt: skip
"""Which words make a meaning, one of each group, the more particular first. A word may belong to two languages."""
WORDS = tuple((meaning, tuple(frozenset(group.split()) for group in groups)) for meaning, groups in MEANINGS)
NO_READING = frozenset(
    ["limit", "max", "maximum", "min", "minimum", "average", "avg", "mean", "target", "accuracy", "error", "delta"]
)
"""Words of what is no reading of the moment."""
POSITION = frozenset({"latitude", "longitude"})


@dataclass(frozen=True)
class Column:
    """A column of a file: its name there, what it was taken for (a key of `UNITS`, or `NOT_READ`) and in which unit.

    `stated` tells whether the file names the unit; else it was taken as usual, or for what its values fit.
    """

    name: str
    meaning: str
    unit: str
    stated: bool


def _words(name: str) -> list[str]:
    """The words of a name in plain small letters; a word in capitals inside another starts a new one."""
    text = re.sub(r"(?<=[a-zäöü])(?=[A-Z][a-z])", " ", name)
    text = text.replace("ß", "ss").replace("°", " deg").replace("%", " pct ").replace("_", " ")
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    for written, word in QUOTIENTS:
        plain = re.sub(rf"\b{written}\b", f" {word} ", plain)
    return re.findall(r"[a-z]+", plain)


def _has(words: Sequence[str], group: frozenset[str]) -> bool:
    """Whether a word of the group is among others, or begins or ends a compound of them, as German ones do."""
    ends = tuple(word for word in group if len(word) > 4)
    return any(word in group or word.startswith(ends) or word.endswith(ends) for word in words)


def unit_in(text: str, meaning: str) -> str:
    """The unit of a meaning that a text ends with; empty where there is none."""
    words = _words(text)
    for word in reversed(words):
        unit = UNIT_WORDS.get(word, "")
        if unit in UNITS[meaning]:
            return unit
    return ""


def column(name: str) -> Column:
    """What a name means by itself."""
    words = _words(name)
    for meaning, groups in () if NO_READING.intersection(words) else WORDS:
        if all(_has(words, group) for group in groups):
            unit = unit_in(name, meaning)
            foreign = [UNIT_WORDS[word] for word in words[1:] if UNIT_WORDS.get(word, "") in OTHER_UNITS[meaning]]
            if foreign and not unit:
                # "charge (kW)" is no state of charge
                continue
            return Column(name, meaning, unit or next(iter(UNITS[meaning])), bool(unit))
    return Column(name, NOT_READ, "", False)


LETTERS = {"clock", "date", "h", "s", "m", "K", "km", "mi"}
OTHER_UNITS = {
    meaning: {unit for units in UNITS.values() for unit in units} - set(units) - LETTERS
    for meaning, units in UNITS.items()
}
"""Units that a quantity cannot have; short ones, which are letters of other words, left aside."""


def columns_of(names: Sequence[str], corrected: Mapping[str, tuple[str, str]] | None = None) -> tuple[Column, ...]:
    """What the columns of a file are taken for: each meaning once, the one with a stated unit, else the first.

    `corrected` says it for some of them, by name: meaning and unit.
    """
    corrected = corrected or {}
    found = [
        Column(name, *corrected[name], True) if name in corrected else column(name) for name in names
    ]  # fmt: skip
    taken: dict[str, int] = {}
    for place, item in sorted(enumerate(found), key=lambda each: (each[1].name not in corrected, not each[1].stated)):
        taken.setdefault(item.meaning, place)
    return tuple(
        item if taken[item.meaning] == place else Column(item.name, NOT_READ, "", False)
        for place, item in enumerate(found)
    )


def complete(columns: Sequence[Column]) -> bool:
    """Whether there is what a drive needs: time and speed, or time and position."""
    meanings = {each.meaning for each in columns}
    return "time_s" in meanings and ("speed_kmh" in meanings or meanings >= POSITION)


def is_route(columns: Sequence[Column]) -> bool:
    """Whether there is a road without times: positions, or distances with heights."""
    meanings = {each.meaning for each in columns}
    has_road = meanings >= POSITION or meanings >= {"distance_m", "elevation_m"}
    return has_road and not meanings & {"time_s", "speed_kmh"}
