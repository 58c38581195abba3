"""Numbers, values and conditions of claims as a newspaper says them; in metric units unless others are handed in."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any

from model.describe.fields import Field
from model.describe.messages import rendered
from model.describe.parameters import class_labels

Units = Callable[[Field, float], tuple[float, str]]
"""From a held number to the number and the unit that a reader sees."""
DRIVES = {
    "udds": "UDDS city", "hwfet": "HWFET highway", "us06": "US06", "nycc": "NYCC", "wltc3b": "WLTC",
    "wltc3b-low": "WLTC low", "wltc3b-medium": "WLTC medium", "wltc3b-high": "WLTC high",
    "wltc3b-extra-high": "WLTC extra high", "nedc": "NEDC", "nedc-urban": "NEDC urban",
    "nedc-extra-urban": "NEDC extra-urban", "town": "flat town", "suburb-hill": "suburb and hill", "hill": "hill road",
    "motorway": "motorway", "mountain-valley": "mountain valley",
}  # fmt: skip
"""What may be driven, in few words: the standard cycles, the starting drives, and a hill of 300 m."""
CHOICES = {
    "brake_pedal": {"friction": "friction-only"},
    "heat_source": {"resistive": "plain electric", "heat_pump": "heat-pump"},
    "surface": {"snow": "snow-covered", "ice": "icy"},
    "counted": {"slow_downs": "slow-downs"},
    "tyres_warm": {"yes": "warm", "no": "cold", "by_drive": "usual"},
}
"""Choices in plain words, where their names are none."""
YES_NO = {
    "cabin": ("heating or cooling on", "no heating or cooling"),
    "preconditioned": ("a car warmed up before leaving", "a car not warmed up before leaving"),
    "time_made_up": ("lost time made up", "lost time not made up"),
    "comes_to_rest": ("a car that comes to rest by itself", "a car that needs the brake pedal to come to rest"),
}
CONDITION_NOUNS = {
    "car": "a {}", "hybrid": "a {}", "cycle": "the {} drive", "brake_pedal": "a {} pedal",
    "heat_source": "a {} heater", "tyres_warm": "{} tyres at the start", "surface": "a {} road",
    "counted": "{} counted", "mass_kg": "a car of {} with driver", "motor_peak_kw": "a motor of {}",
    "usable_kwh": "a battery of {}", "motor_top_speed_kmh": "a top speed of {}", "ambient_c": "{} outside",
    "soc_start": "{} charge at the start", "payload_kg": "a load of {}", "accessory_w": "accessories of {}",
    "wind_kmh": "a headwind of {}", "lift_off_mps2": "a lift-off of {}", "gentle_mps2": "a gentle setting of {}",
    "strong_mps2": "a strong setting of {}", "slowing_mps2": "slowing at {}",
    "regen_cap_mps2": "a motor that slows by at most {}", "speed_kmh": "a speed of {}", "grade_pct": "a slope of {}",
    "height_m": "a hill of {}", "slower_by_kmh": "{} of speed lost", "extra_mass_pct": "{} more mass",
    "motor_factor": "{} the power", "delay_ms": "a delay of {}", "denominator": "{}",
    "trailer_kg": "a trailer of {}",
}  # fmt: skip
"""A condition as a noun with its article."""
SHARES = {
    "recovered": "the share of the battery’s output that is put back",
    "of_braking": "the share of the braking energy at the wheels that reaches the battery",
    "range_gain": "the extra range over the same speeds on friction brakes alone",
    "electric_braking": "the share of the braking energy at the wheels that the motor takes",
    "range_lost": "the energy saved by regeneration (the share of the range lost without it)",
}
"""What a share of a drive is called in a sentence, by its denominator."""
NEXT_TO_NOTHING = 5e-3
"""A smaller number of a claim is rounding."""
WHOLE_UNITS = ("°C", "°F", "km/h", "mph", "W", "kg", "lb", "ms")


def metric(field: Field, value: float) -> tuple[float, str]:
    """A number as it is held, but shares in percent."""
    if field.unit == "1" and (field.key.endswith(("_share", "_efficiency")) or field.key == "soc_start"):
        return 100 * value, "%"
    return value, "" if field.unit == "1" else field.unit


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words in a row."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"


def share_words(share: float) -> str:
    """A share in words that never round to nothing or to all."""
    if 0 < share < 0.01:
        return "less than 1 %"
    if 0.99 < share < 1:
        return "more than 99 %"
    return f"{100 * share:.0f} %"


def true_in(share: float, runs: str = "the runs") -> str:
    """A share of the runs, also where it is none or all."""
    if share in (0.0, 1.0):
        return f"{'none' if share == 0 else 'all'} of {runs}"
    return f"{share_words(share)} of {runs}"


# numbers of claims


def shown(value: float) -> str:
    """A number as it was published, at up to three digits."""
    return f"{float(f'{value:.3g}') + 0.0:,g}"


def number_words(value: float, unit: str) -> str:
    """A number that the model gives, at two digits."""
    return span_words(value, value, unit)


def span_words(low: float, high: float, unit: str) -> str:
    """A span that the model gives, at two digits of its larger end; at more where an end would read as none or all."""
    ends = [0.0 if abs(end) < NEXT_TO_NOTHING else end for end in (low, high)]
    largest = max(map(abs, ends))
    places = max(0, 1 - math.floor(math.log10(largest))) if largest else 0
    if any(round(end, places) in (0, 100) and end not in (0, 100) for end in ends):
        places += 1
    least, most = (f"{round(end, places) + 0.0:,.{places}f}" for end in ends)
    return f"{most if least == most else f'{least} to {most}'} {unit}".rstrip()


def span_and_median(low: float, mid: float, high: float, unit: str) -> str:
    """A band and its median."""
    span = span_words(low, high, unit)
    return span if low == high else f"{span}, with a median of {number_words(mid, unit)}"


# inputs of claims


def input_name(field: Field) -> str:
    """What an input is called, within a sentence."""
    return rendered(field.message, {})


def input_label(field: Field) -> str:
    """What an input is called, as a label."""
    name = input_name(field)
    return name[:1].upper() + name[1:]


def value_words(field: Field, value: Any, units: Units = metric, unit: bool = True, digits: int = 3) -> str:
    """One value of an input."""
    if field.key in ("car", "hybrid"):
        return class_labels()[value][:1].lower() + class_labels()[value][1:]
    if field.key == "cycle":
        return DRIVES[value]
    if field.key == "denominator":
        return rendered("phrase-said", {"phrase": value})
    if field.kind == "yes_no":
        return "yes" if value else "no"
    if field.kind == "choice":
        return CHOICES.get(field.key, {}).get(value) or str(value).replace("_", " ").replace("-", " ")
    number, name = units(field, value)
    name = "times" if field.key == "motor_factor" else name
    whole = name in WHOLE_UNITS or (name == "%" and abs(number) >= 2)
    number = round(number) if whole else float(f"{number:.{digits}g}")
    return f"{number + 0.0:,g}{f' {name}' if unit and name else ''}"


def stretch_words(field: Field, low: float, high: float, units: Units = metric) -> str:
    """A stretch of an input's range."""
    least, most = (value_words(field, end, units, digits=2) for end in (low, high))
    return most if least == most else f"{value_words(field, low, units, unit=False, digits=2)} to {most}"


def values_words(field: Field, values: Sequence[Any], units: Units = metric) -> str:
    """Some values of an input; the unit stands with the last."""
    end = len(values) - 1
    return listed([value_words(field, value, units, place == end) for place, value in enumerate(values)], "or")


def condition(field: Field, words: str) -> str:
    """A condition as a noun: “a blended pedal”, “20 °C outside”, “any drive but US06”."""
    if field.kind == "yes_no" and words in ("yes", "no"):
        return YES_NO[field.key][words == "no"] if field.key in YES_NO else f"{input_name(field)}: {words}"
    if words.startswith("any but "):
        noun = {"car": "car", "cycle": "drive"}.get(field.key, input_name(field))
        return f"any {noun} but {words.removeprefix('any but ')}"
    if field.key in CONDITION_NOUNS:
        return CONDITION_NOUNS[field.key].format(words)
    label = input_name(field)
    return f"the {label} at {words}" if field.kind in ("number", "count") else f"{label}: {words}"
