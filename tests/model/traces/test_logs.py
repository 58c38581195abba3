"""Recorded drives as CSV: read at any rate, checked cell by cell, refused in one sentence."""

from dataclasses import replace

import numpy as np
import pandas as pd
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model.describe.fields import InputError
from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.describe.units import KMH_PER_MPS
from model.kernel.run import drive as drive_trace
from model.kernel.run import ledger_of
from model.traces.cleaning import Effect
from model.traces.cycles import cycle_trace
from model.traces.findings import Finding
from model.traces.logs import Recording, read_recording
from model.traces.recorded_names import UNITS
from tests.refused import refuses, told


def drive(rows=60, step_s=1.0):
    """A short drive: up to 36 km/h in fine steps, then on."""
    time_s = (np.arange(rows) * step_s).round(3)
    speed = np.minimum(3.37 * time_s, 36.01) + 0.1 * np.sin(time_s)
    return pd.DataFrame({"time_s": time_s, "speed_kmh": speed.clip(0).round(3)})


def csv(table):
    return table.to_csv(index=False).encode()


def lines(table, changed):
    """The file with some lines (counted from 1) replaced."""
    rows = csv(table).decode().splitlines()
    for line, content in changed.items():
        rows[line - 1] = content
    return "\n".join(rows).encode()


def refusal(data, name="commute.csv"):
    with pytest.raises(InputError) as refused:
        read_recording(data, name)
    return told(refused.value)


def test_a_plain_file_becomes_a_trace_in_steps_of_1_s(tmp_path):
    path = tmp_path / "commute.csv"
    path.write_bytes(csv(drive(601, 0.1)))
    recording = read_recording(path)
    trace = recording.trace
    assert trace.name == "commute.csv"
    assert trace.time_s == pytest.approx(np.arange(61))
    truth = np.trapezoid(drive(601, 0.1)["speed_kmh"], dx=0.1) / KMH_PER_MPS
    assert trace.distance_m == pytest.approx(truth, rel=0.002)
    assert (recording.soc_start, recording.measured) == (None, None)
    assert (trace.ambient_c, trace.battery_temp_c, trace.cabin_w) == (None, None, None)
    assert recording.findings == (Finding("flat"),)


def test_time_may_start_anywhere():
    table = drive()
    shifted = table.assign(time_s=table["time_s"] + 1.7e9)
    assert read_recording(csv(shifted)).trace.speed_mps == pytest.approx(read_recording(csv(table)).trace.speed_mps)


@pytest.mark.parametrize(("separator", "decimal"), [(";", ","), (";", "."), ("\t", ","), ("\t", ".")])
def test_semicolons_tabs_and_decimal_commas(separator, decimal):
    data = drive().to_csv(index=False, sep=separator, decimal=decimal).encode("utf-8-sig")
    assert read_recording(data).trace.speed_mps == pytest.approx(read_recording(csv(drive())).trace.speed_mps)


def test_names_in_capitals_blank_lines_and_trailing_commas_do_no_harm():
    rows = csv(drive()).decode().splitlines()
    text = "\r\n".join(["Time_s, Speed_KMH", *(row + "," for row in rows[1:30]), "", *rows[30:], "", ""])
    assert read_recording(text.encode()).trace.speed_mps == pytest.approx(read_recording(csv(drive())).trace.speed_mps)


def test_what_was_measured_is_passed_on_and_gaps_are_filled():
    table = drive(601, 0.1).assign(
        elevation_m=lambda t: 500 + t["time_s"] / 10,
        ambient_c=[5.0 if row % 100 == 0 else None for row in range(601)],
        battery_temp_c=lambda t: 10 + t["time_s"] / 60,
        soc_pct=np.linspace(80, 78, 601),
        cabin_kw=[2.0 if row % 20 < 10 else 1.0 for row in range(601)],
    )
    recording = read_recording(csv(table))
    trace = recording.trace
    assert trace.ambient_c == pytest.approx(np.full(61, 5.0))
    assert trace.battery_temp_c == pytest.approx(10 + np.arange(61) / 60)
    assert trace.cabin_w.mean() == pytest.approx(1500, rel=0.001)
    assert trace.cabin_w.std() > 400
    assert (trace.elevation_m[0], trace.elevation_m[-1]) == pytest.approx((500, 506), abs=0.5)
    assert recording.soc_start == pytest.approx(0.8)
    assert recording.findings == (Finding("filled", "ambient_c", 594),)


def test_the_model_honours_what_was_measured_and_its_books_close():
    cycle = cycle_trace("udds")
    distance = np.concatenate([[0], np.cumsum(cycle.step_m)])
    table = pd.DataFrame({
        "time_s": cycle.time_s,
        "speed_kmh": cycle.speed_mps * KMH_PER_MPS,
        "elevation_m": np.round(200 + 30 * np.sin(distance / 1500)),
        "ambient_c": -5.0,
        "battery_temp_c": np.linspace(-4, 8, len(distance)),
        "cabin_kw": np.linspace(4, 2, len(distance)),
    })  # fmt: skip
    trace = read_recording(csv(table)).trace
    car, conditions, driver = car_from("family-hatch"), Conditions(ambient_c=20.0), Driver()

    def run_of(trace):
        return drive_trace(trace, car, conditions, driver)

    run = run_of(trace)
    books = ledger_of(run, trace)
    assert books.error_share < 1e-9
    assert books.cabin == pytest.approx(3000 * trace.duration_s)
    assert run.pack_c[0, 0] == pytest.approx(-4)
    assert run.pack_c[0, -1] == pytest.approx(8, abs=0.1)
    # each measurement matters to the charge used: without it the model would have taken its own
    used = run.soc[0, 0] - run.soc[0, -1]
    for field in ("ambient_c", "battery_temp_c", "cabin_w"):
        other = run_of(replace(trace, **{field: None}))
        assert abs(other.soc[0, 0] - other.soc[0, -1] - used) > 1e-3 * used


@given(st.lists(st.floats(-80, 150), min_size=101, max_size=101), st.sampled_from([0.2, 1.0, 2.0]))
def test_measured_energy_keeps_its_integral(power, step_s):
    table = drive(101, step_s).assign(battery_power_kw=np.round(power, 6))
    measured = read_recording(csv(table)).measured
    truth = np.trapezoid(table["battery_power_kw"], table["time_s"]) / 3600
    assert measured.battery_net_kwh == pytest.approx(truth, abs=1e-6)
    assert measured.battery_out_kwh - measured.battery_in_kwh == pytest.approx(measured.battery_net_kwh)


def test_measured_totals_and_share():
    power = np.where(np.arange(61) < 40, 18.0, -9.0)
    table = drive(61).assign(battery_power_kw=power, soc_pct=np.linspace(55.5, 54, 61))
    measured = read_recording(csv(table)).measured
    # between the 39th and 40th second the power crosses from 18 to −9 kW: that step counts by its mean
    assert measured.battery_out_kwh == pytest.approx((39 * 18 + 4.5) / 3600)
    assert measured.battery_in_kwh == pytest.approx(20 * 9 / 3600)
    assert measured.recovered_share_of_output == pytest.approx(measured.battery_in_kwh / measured.battery_out_kwh)
    assert (measured.soc_start, measured.soc_end) == pytest.approx((0.555, 0.54))


@pytest.mark.parametrize(
    ("column", "value", "found"),
    [
        ("battery_power_kw", -10.0, Finding("power_sign", "battery_power_kw")),
        ("cabin_kw", None, Finding("column_empty", "cabin_kw")),
        ("cabin_kw", 1500, Finding("out_of_range", "cabin_kw", 60)),
        ("Heating power", 1500, Finding("watts", "cabin_kw")),
        ("SoC", 0.8, Finding("share_not_percent", "soc_pct")),
        ("ambient_c", -127, Finding("out_of_range", "ambient_c", 60)),
        ("soc_pct", "full", Finding("no_number", "soc_pct", 60)),
        ("elevation_m", 5 * np.arange(60.0), Finding("steep", "elevation_m")),
    ],
)
def test_a_welcome_column_that_cannot_be_used_is_told_and_refuses_nothing(column, value, found):
    assert found in read_recording(csv(drive().assign(**{column: value}))).findings


def test_one_value_out_of_range_leaves_the_others():
    table = drive().assign(ambient_c=5.0, soc_pct=np.linspace(80, 79, 60))
    table.loc[30, ["ambient_c", "soc_pct"]] = [-127, 255]
    recording = read_recording(csv(table))
    assert recording.trace.ambient_c == pytest.approx(np.full(60, 5.0)) and recording.soc_start == pytest.approx(0.8)
    assert Finding("out_of_range", "soc_pct", 1) in recording.findings


def test_current_and_voltage_are_power():
    table = drive().assign(**{"HV current (A)": 25.0, "HV voltage (V)": 400.0})
    recording = read_recording(csv(table))
    assert recording.power_w == pytest.approx(np.full(59, 10_000))
    assert Finding("two_sources", "battery_power_kw") in recording.findings


@pytest.mark.parametrize(
    ("column", "factor", "found"), [("speed_kmh", 1 / 3.6, "speed_unit"), ("elevation_m", 3.28, "height_unit")]
)
def test_units_that_do_not_fit_are_asked_about(column, factor, found):
    table = drive(300).assign(elevation_m=lambda t: 300 + 25 * np.sin(t["time_s"] / 40))
    assert not any(each.what == found for each in read_recording(csv(table)).findings)
    (asked,) = [each for each in read_recording(csv(table.assign(**{column: factor * table[column]}))).findings
                if each.what == found]  # fmt: skip
    assert asked.asks and asked.column == column


def test_cells_that_say_another_unit_than_their_column_are_put_into_it():
    table = drive().assign(ambient_c=20.0)
    mixed = table.astype(object)
    mixed.loc[20:29, "speed_kmh"] = [f"{speed / 1.609344:.4f} mph" for speed in table["speed_kmh"][20:30]]
    mixed.loc[30:39, "speed_kmh"] = [f"{speed:.3f} km/h" for speed in table["speed_kmh"][30:40]]
    mixed.loc[:30, "ambient_c"] = "68 °F"
    recording = read_recording(csv(mixed))
    assert recording.trace.speed_mps == pytest.approx(read_recording(csv(table)).trace.speed_mps, abs=1e-3)
    assert recording.trace.ambient_c == pytest.approx(np.full(60, 20.0))
    assert "no_number" not in [each.what for each in recording.findings]


def test_power_that_is_counted_the_other_way_stays_so_whatever_unit_a_cell_says():
    mixed = drive().assign(power=["-5 kW", "-5000 W"] * 30)
    (way,) = [unit for unit in UNITS["battery_power_kw"] if unit.startswith("kW, ")]
    recording = read_recording(csv(mixed), columns={"power": ("battery_power_kw", way)})
    assert recording.power_w == pytest.approx(np.full(59, 5000.0))


def test_times_that_go_back_are_left_out_and_told():
    back = drive().assign(time_s=lambda t: t["time_s"].where(~t.index.isin([30, 31]), t["time_s"] - 9))
    recording = read_recording(csv(back))
    (effect,) = recording.effects
    assert (effect.step, effect.count) == ("backward", 2) and recording.trace.duration_s == 59
    with refuses("times must rise from row to row; in 2 rows they do not"):
        read_recording(csv(back), off=frozenset({"backward"}))


@pytest.mark.parametrize(("step", "before_m", "most"), [("noise", 1000.0, 10.0), ("height", 200.0, 20.0)])
def test_a_change_of_distance_or_climb_that_is_large_is_told(step, before_m, most):
    for way in (1, -1):
        assert Effect(step, 1, before_m, before_m + 1.01 * way * most).is_large
        assert not Effect(step, 1, before_m, before_m + 0.99 * way * most).is_large


def test_what_a_second_hides_is_counted_at_the_own_rate():
    table = drive(601, 0.1)
    ripple = np.where(np.arange(601) % 10 < 5, 20.0, -20.0)
    measured = read_recording(csv(table.assign(battery_power_kw=5 + ripple))).measured
    assert measured.battery_in_kwh == pytest.approx(0, abs=1e-3)
    assert measured.own_rate_in_kwh > 0.08
    assert measured.own_rate_out_kwh - measured.own_rate_in_kwh == pytest.approx(measured.battery_net_kwh)
    assert read_recording(csv(drive().assign(battery_power_kw=5.0))).measured.own_rate_in_kwh is None


def test_charging_from_outside_is_pointed_out():
    table = pd.concat([drive(), pd.DataFrame({"time_s": np.arange(60, 3600.0), "speed_kmh": 0.0})])
    table["battery_power_kw"] = np.where(table["speed_kmh"] > 0, 10.0, -7.0)
    (told,) = [each for each in read_recording(csv(table)).findings if each.what == "charged_standing"]
    assert told.value == pytest.approx(6.9, abs=0.05)


def test_a_power_with_a_long_gap_is_left_out_and_said():
    table = drive().assign(battery_power_kw=5.0, cabin_kw=1.0)
    table.loc[20:30, ["battery_power_kw", "cabin_kw"]] = None
    recording = read_recording(csv(table))
    assert recording.measured is None
    assert recording.trace.cabin_w is None
    assert Finding("column_gap", "battery_power_kw", value=12.0) in recording.findings


def test_short_gaps_in_speed_are_filled_and_said():
    table = drive(601, 0.1)
    full = read_recording(csv(table)).trace.speed_mps
    table.loc[300:340, "speed_kmh"] = None
    recording = read_recording(csv(table))
    assert recording.trace.speed_mps == pytest.approx(full, abs=0.1)
    assert Finding("filled", "speed_kmh", 41) in recording.findings


def test_a_long_gap_is_accepted_where_the_car_stands():
    stop = pd.DataFrame({"time_s": [61, 62, 300], "speed_kmh": [20.0, 0.0, 0.0]})
    again = drive().assign(time_s=lambda t: t["time_s"] + 301)
    recording = read_recording(csv(pd.concat([drive(), stop, again])))
    assert recording.trace.duration_s == 360 and len(recording.parts) == 1
    standing = (recording.trace.time_s > 62) & (recording.trace.time_s < 300)
    assert not recording.trace.speed_mps[standing].any()
    assert Finding("standing_unrecorded", count=238) in recording.findings


def test_a_gap_in_which_the_car_drove_sets_parts_apart_and_nothing_is_invented():
    table = drive(200)
    recording = read_recording(csv(table.drop(index=range(60, 80))))
    assert [(part.start_s, part.end_s) for part in recording.parts] == [(0, 59), (80, 199)]
    assert recording.part == 1 and recording.trace.duration_s == 119
    assert [effect.step for effect in recording.effects] == ["gaps"] and recording.effects[0].is_large
    first = read_recording(csv(table.drop(index=range(60, 80))), part=0)
    assert first.trace.speed_mps == pytest.approx(read_recording(csv(drive(60))).trace.speed_mps)
    joined = read_recording(csv(table.drop(index=range(60, 80))), off=frozenset({"gaps"}))
    assert joined.trace.duration_s == 199


NEEDED = (
    "time and speed are needed, or time, latitude and longitude. A route needs latitude and longitude, or distance and "
    "height."
)
CELLS = "there are more cells than column names; where commas set columns apart, numbers have points."


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "commute.csv is empty."),
        (b" \r\n", "commute.csv is empty."),
        (csv(drive(9)), "commute.csv has 9 rows with a time; at least 10 are needed."),
        (csv(drive(0)), "commute.csv has 0 rows with a time; at least 10 are needed."),
        (csv(drive(60, 0.1)), "commute.csv: the recording lasts 6 s; 10 s to 24 hours are read."),
        (
            csv(pd.DataFrame({"time_s": np.arange(0, 86406, 5), "speed_kmh": 30.5})),
            "commute.csv: the recording lasts 86405 s; 10 s to 24 hours are read.",
        ),
        (b"x" * 30_000_001, "commute.csv is larger than 30 MB, the most that is read."),
        (csv(drive().assign(speed_kmh="fast")), "commute.csv: fewer than 10 rows have a speed."),
        (csv(drive().assign(speed_kmh=np.inf)), "commute.csv: fewer than 10 rows have a speed."),
        (lines(drive(), {14: "12,30,4"}), f"commute.csv, line 14: {CELLS}"),
        (lines(drive(), {14: "12,30,4,5"}), f"commute.csv, line 14: {CELLS}"),
        (csv(drive()).replace(b".", b","), f"commute.csv, line 2: {CELLS}"),
        (csv(drive()[["time_s"]]), f"commute.csv: only time_s could be recognised; {NEEDED}"),
        (
            b"PK\x03\x04\x00\x00\xff",
            "commute.csv is a compressed file or a workbook: unpack it, or save its sheet as CSV.",
        ),
        (b"\x00\x01\x02\xff" * 9 + b"time_s,speed_kmh\n", "commute.csv is not a text."),
        (b"hello\nworld\n", f"commute.csv: no line names columns that are known; {NEEDED}"),
        (csv(drive().assign(speed_kmh=0.2)), "commute.csv: the car never moves."),
        (
            csv(drive(200).assign(speed_kmh=lambda t: np.where(t["time_s"] < 100, 20.0, 90.0))),
            "commute.csv: 20 km/h becomes 90 km/h within a second, 99 s after the start;"
            " a car changes by 43 km/h at most.",
        ),
    ],
)
def test_refusals_are_one_clear_sentence(data, sentence):
    assert refusal(data) == sentence


def test_other_files_are_refused(tmp_path):
    assert refusal(b"x", "commute.xlsx") == "commute.xlsx: only .csv, .tsv, .txt and .gpx files are read."
    with refuses(r"^away\.csv cannot be read: No such file or directory\.$"):
        read_recording(tmp_path / "away.csv")


def test_no_more_than_the_limit_is_read_of_a_file_without_end(tmp_path):
    endless = tmp_path / "endless.csv"
    endless.symlink_to("/dev/zero")
    with refuses("larger than 30 MB"):
        read_recording(endless)


cell = st.one_of(st.floats(allow_nan=True, width=32).map(str), st.integers(-5, 400).map(str), st.text(max_size=4))


@given(st.lists(st.lists(cell, min_size=1, max_size=4), max_size=30), st.sampled_from(",;\t"))
@example([["0", "1"]] * 12, ",")
def test_no_table_gets_past_with_anything_but_a_recording_or_a_sentence(rows, separator):
    text = "\n".join(["time_s" + separator + "speed_kmh", *(separator.join(row) for row in rows)])
    answer_or_sentence(text.encode("utf-8", errors="replace"), "a.csv")


@given(st.binary(max_size=300), st.sampled_from(["a.csv", "a.gpx"]))
def test_no_bytes_get_past_with_anything_but_a_recording_or_a_sentence(data, name):
    answer_or_sentence(data, name)


def answer_or_sentence(data, name):
    try:
        answer = read_recording(data, name)
    except InputError as refused:
        assert told(refused).startswith(name)
        assert "\n" not in told(refused)
    else:
        assert isinstance(answer, Recording)
        assert np.isfinite(answer.trace.speed_mps).all()
