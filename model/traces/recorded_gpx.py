"""Recorded positions as GPX 1.0 or 1.1: from bytes to columns of numbers."""

from __future__ import annotations

import io
import re
from xml.etree import ElementTree

import numpy as np
import pandas as pd

from model.describe.fields import InputError
from model.traces.findings import Finding
from model.traces.recorded_csv import FEWEST_ROWS, FIELDS, MOST_ROWS, SamplesByKey, Table, as_utf8
from model.traces.recorded_names import Column

COLUMNS = (
    Column("time", "time_s", "date", True),
    Column("lat", "latitude", "°", True),
    Column("lon", "longitude", "°", True),
    Column("ele", "elevation_m", "m", True),
)
POINTS = ("trkpt", "rtept")


def gpx_table(data: bytes, name: str) -> Table:
    """Time, position and height of each point of the tracks of a file, or of its routes where it has no tracks.

    Parameters
    ----------
    data : bytes
        The file.
    name : str
        What errors call it.

    Raises
    ------
    InputError
        Where there are no usable positions.
    """
    data = as_utf8(data, name)
    # entities can be made to grow without bound, and no recorder writes them
    if re.search(rb"<!(doctype|entity)", data, re.IGNORECASE):
        raise InputError("gpx-with-entities", name=name)
    found, cut_off = _points(re.sub(rb"^\s*<\?xml[^>]*\?>", b"", data), name)
    rows = found["trkpt"] or found["rtept"]
    if len(rows) < FEWEST_ROWS:
        raise InputError("gpx-points", name=name, points=len(rows), least=FEWEST_ROWS, breaks_off=cut_off)
    latitude, longitude, height = (
        pd.to_numeric(pd.Series([row[place] for row in rows], dtype=object), errors="coerce").to_numpy(float)
        for place in range(3)
    )
    stamps = pd.to_datetime(pd.Series([row[3] for row in rows]), errors="coerce", utc=True, format="ISO8601")
    time_s = np.asarray((stamps - pd.Timestamp(0, tz="UTC")).dt.total_seconds(), dtype=float)
    findings = [Finding("cut_off")] if cut_off else []
    timed = np.isfinite(time_s)
    if not timed.any():
        raise InputError("gpx-without-times", name=name)
    if not timed.all():
        findings.append(Finding("rows_without_time", "time_s", int((~timed).sum())))
    samples: SamplesByKey = {"time_s": time_s, "latitude": latitude, "longitude": longitude, "elevation_m": height}
    samples = {key: values[timed] for key, values in samples.items()}
    for key in ("latitude", "longitude", "elevation_m"):
        beyond = (samples[key] < FIELDS[key].minimum) | (samples[key] > FIELDS[key].maximum)
        if beyond.any():
            findings.append(Finding("out_of_range", key, int(beyond.sum())))
            samples[key] = np.where(beyond, np.nan, samples[key])
    if not np.isfinite(samples["elevation_m"]).any():
        del samples["elevation_m"]
    return Table(samples, tuple(each for each in COLUMNS if each.meaning in samples), tuple(findings))


def _points(data: bytes, name: str) -> tuple[dict[str, list[tuple[str | None, ...]]], bool]:
    """Latitude, longitude, height and time of each point as they are written, by kind; whether the file breaks off."""
    found: dict[str, list[tuple[str | None, ...]]] = {kind: [] for kind in POINTS}
    try:
        for _, element in ElementTree.iterparse(io.BytesIO(data)):
            kind = element.tag.rpartition("}")[2]
            if kind in found:
                inside = {child.tag.rpartition("}")[2]: child.text for child in element}
                place = element.get("lat"), element.get("lon")
                found[kind].append((*place, inside.get("ele"), inside.get("time")))
                if len(found[kind]) > MOST_ROWS:
                    raise InputError("recording-too-many-rows", name=name, most=MOST_ROWS)
                element.clear()
    except ElementTree.ParseError:
        if not any(found.values()):
            raise InputError("gpx-unreadable", name=name) from None
        return found, True
    return found, False
