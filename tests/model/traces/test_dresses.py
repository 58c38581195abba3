"""One drive in every dress that programs and people give it must come back as the same drive."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from model.describe.parameters import car_of
from model.describe.scenario_io import starting_drives
from model.kernel.savings import evaluate
from model.sampling.drives import trace_of
from model.traces.logs import read_recording
from model.traces.recorded_names import NOT_READ, column

SCENARIO = starting_drives()["suburb-hill"][2]
BUILT = trace_of(SCENARIO).until(4000.0, "")
START = datetime(2024, 1, 31, 23, 58, 30, tzinfo=UTC)
POWER_KW = np.where(np.gradient(BUILT.speed_mps) < 0, -8.5, 1234.5 / 100)
NAMES = {
    "ours": ("time_s", "speed_kmh", "elevation_m", "battery_power_kw"),
    "brackets": ("Time [s]", "Speed [km/h]", "Altitude [m]", "Battery power [kW]"),
    "english": ("Timestamp", "Velocity (mph)", "Height (ft)", "HV battery power (W)"),
    "german": ("Zeit", "Geschwindigkeit", "Höhe", "Batterieleistung"),
    "french": ("temps", "vitesse_km/h", "altitude (m)", "puissance batterie [kW]"),
    "short": ("t", "v_mps", "ele", "power"),
}
FACTORS = {"english": (1 / 1.609344, 1 / 0.3048, 1000.0), "short": (1 / 3.6, 1.0, 1.0)}


def moments(kind):
    """The times of the drive as they are written."""
    for seconds in BUILT.time_s:
        when = START + timedelta(seconds=float(seconds))
        yield {
            "seconds": lambda seconds=seconds: f"{seconds + 17:.3f}",
            "milliseconds": lambda seconds=seconds: f"{1000 * seconds + 1.7e12:.0f}",
            "clock": lambda when=when: when.strftime("%H:%M:%S.%f")[:-3],
            "iso": lambda when=when: when.strftime("%Y-%m-%dT%H:%M:%S.%f")[:-3] + "Z",
            "zone": lambda when=when: (when + timedelta(hours=2)).strftime("%Y-%m-%d %H:%M:%S.%f")[:-3] + "+02:00",
            "german": lambda when=when: when.strftime("%d.%m.%Y %H:%M:%S.%f")[:-3],
        }[kind]()


def number_in(value, decimals, decimal, thousands, minus):
    text = f"{value:,.{decimals}f}".replace(",", "T").replace(".", decimal).replace("T", thousands)
    return text.replace("-", minus)


def dressed(names, time, separator, decimal, thousands, minus, encoding, units_row, extras):
    """The drive as a file."""
    speed, height, power = FACTORS.get(names, (1.0, 1.0, 1.0))
    columns = zip(
        moments(time), BUILT.speed_mps * 3.6 * speed, BUILT.elevation_m * height, POWER_KW * power, strict=True
    )
    heads = NAMES[names]

    def line(cells):
        return separator.join(f'"{cell}"' if separator in cell else cell for cell in cells)

    rows = []
    for place, (when, *values) in enumerate(columns):
        cells = [when, *(number_in(value, 3, decimal, thousands, minus) for value in values)]
        cells[3] = "-" if place in extras.get("dashes", ()) else cells[3]
        rows.append(line(cells))
    if "repeat" in extras:
        rows.insert(300, line(heads))
        rows.insert(100, "")
        rows.insert(50, "# a note, in between")
        rows.insert(20, rows[20])
    top = ["sep=" + separator] if "sep" in extras else []
    top += ["# recorded by hand; 12,5 km", "", "Vehicle: none"] if "comments" in extras else []
    units = [line(["s", "km/h", "m", "kW"])] if units_row else []
    text = "\r\n".join([*top, line(heads), *units, *rows, ""])
    return text.encode(encoding)


def energy(trace):
    return evaluate(trace, car_of(SCENARIO), SCENARIO.conditions, SCENARIO.driver).net_kwh


PLAIN = read_recording(dressed("ours", "seconds", ",", ".", "", "-", "utf-8", False, {})).trace
TRUTH = energy(PLAIN)


def test_a_built_drive_comes_back_from_a_file():
    built = energy(BUILT)
    assert built == pytest.approx(TRUTH, rel=1e-3)
    assert PLAIN.distance_m == pytest.approx(BUILT.distance_m, rel=1e-4)


@settings(max_examples=40)
@given(
    st.sampled_from(sorted(NAMES)),
    st.sampled_from(["seconds", "milliseconds", "clock", "iso", "zone", "german"]),
    st.sampled_from([(",", ".", ""), (",", ".", ","), (";", ",", ""), (";", ",", "."), (";", ".", ""), ("\t", ",", ""),
                     ("\t", ".", ","), (";", ",", " "), (";", ".", "'"), ("|", ".", "")]),
    st.sampled_from(["-", "\N{MINUS SIGN}"]),
    st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "latin-1"]),
    st.booleans(),
    st.sets(st.sampled_from(["sep", "comments", "repeat", "dashes"])),
)  # fmt: skip
@example("german", "clock", (";", ",", "."), "\N{MINUS SIGN}", "utf-16", False, {"sep", "repeat", "dashes"})
@example("english", "milliseconds", (",", ".", ","), "-", "latin-1", False, {"comments", "repeat"})
@example("german", "seconds", (";", ",", ""), "-", "utf-8", True, {"comments"})
def test_every_dress_is_the_same_drive(names, time, marks, minus, encoding, units_row, extras):
    minus = "-" if encoding == "latin-1" else minus
    units_row = units_row and names in ("ours", "german", "french") and time == "seconds"
    wishes = dict.fromkeys(extras, ()) | ({"dashes": (70, 71, 200)} if "dashes" in extras else {})
    data = dressed(names, time, *marks, minus, encoding, units_row, wishes)
    recording = read_recording(data)
    assert energy(recording.trace) == pytest.approx(TRUTH, rel=1e-3)
    assert recording.measured.battery_net_kwh == pytest.approx(
        float(np.sum((POWER_KW[1:] + POWER_KW[:-1]) / 2 * BUILT.step_s)) / 3600, rel=0.01
    )
    assert recording.trace.climb_m == pytest.approx(PLAIN.climb_m, rel=0.005)


@pytest.mark.parametrize(
    ("name", "meaning", "unit"),
    [
        ("time_s", "time_s", "s"), ("Zeit (ms)", "time_s", "ms"), ("Uhrzeit", "time_s", "s"),
        ("Tempo (s)", "time_s", "s"),
        ("Tempo (km/h)", "speed_kmh", "km/h"), ("speed_mps", "speed_kmh", "m/s"), ("SpeedKmh", "speed_kmh", "km/h"),
        ("GPS Speed (Meters/second)", "speed_kmh", "m/s"), ("Velocity (mph)", "speed_kmh", "mph"),
        ("Außentemperatur [°C]", "ambient_c", "°C"), ("Outside temperature (°F)", "ambient_c", "°F"),
        ("Battery temp", "battery_temp_c", "°C"), ("State of charge (%)", "soc_pct", "%"), ("SoC", "soc_pct", "%"),
        ("Leistung [kW]", "battery_power_kw", "kW"), ("Heating power (W)", "cabin_kw", "W"),
        ("HV battery current (A)", "battery_a", "A"), ("Spannung", "battery_v", "V"), ("lon", "longitude", "°"),
        ("Höhe", "elevation_m", "m"), ("Altitude (ft)", "elevation_m", "ft"),
        ("charge (kW)", NOT_READ, ""), ("heading_deg", NOT_READ, ""), ("", NOT_READ, ""),
        ("speed_km_h", "speed_kmh", "km/h"), ("Distance (km)", "distance_m", "km"), ("Strecke", "distance_m", "m"),
    ],
)  # fmt: skip
def test_names_are_known_by_meaning_and_unit(name, meaning, unit):
    assert (column(name).meaning, column(name).unit) == (meaning, unit)


def test_what_was_recognised_can_be_corrected():
    data = dressed("short", "seconds", ",", ".", "", "-", "utf-8", False, {})
    assert [(each.name, each.meaning, each.unit, each.stated) for each in read_recording(data).columns] == [
        ("t", "time_s", "s", False),
        ("v_mps", "speed_kmh", "m/s", True),
        ("ele", "elevation_m", "m", False),
        ("power", "battery_power_kw", "kW", False),
    ]
    corrected = read_recording(data, columns={"v_mps": ("speed_kmh", "km/h"), "power": (NOT_READ, "")})
    assert corrected.trace.distance_m == pytest.approx(PLAIN.distance_m / 3.6, rel=1e-3)
    assert corrected.measured is None and corrected.columns[3].meaning == NOT_READ
