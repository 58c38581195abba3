"""What a visitor brings, a text, a file, a number in a cell: taken within bounds or refused in a sentence, and soon."""

import base64
import json
import resource
import time
from contextlib import contextmanager

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model.describe.fields import InputError
from model.describe.scenario import LEG_FIELDS, SETTINGS, Scenario
from model.describe.scenario_io import scenario_to_json, starting_drives, to_link
from model.words.quantities import Display
from pages.parts.controls import typed_number, value_in
from pages.parts.opening import from_file, from_text
from tests.refused import told

FIELDS = {key: field for key, field in (SETTINGS | LEG_FIELDS).items() if field.kind in ("number", "count")}
DRIVES = [scenario for _, _, scenario in starting_drives().values()]
FILE = json.dumps(scenario_to_json(DRIVES[0])).encode()
PIECES = st.sampled_from(
    ["1e999", "-0", "NaN", "null", "[]", "{}", '""', "\ud800", "9" * 400, "\N{MINUS SIGN}5", "½", "٣"]
)


MOST_S, MOST_MB = 2.0, 300
"""What one may take [s of the processor], and all together [MB]."""


@pytest.fixture(scope="module", autouse=True)
def memory_is_bounded():
    """Of all that the module's tests bring."""
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    yield
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < MOST_MB * 1024


@contextmanager
def soon():
    """What is done within takes no longer than a visitor waits."""
    begin = time.process_time()
    yield
    assert time.process_time() - begin < MOST_S


def within_bounds(scenario):
    for key, field in SETTINGS.items():
        value = value_in(scenario, field)
        if field.kind in ("number", "count") and value is not None:
            assert field.minimum <= value <= field.maximum, key
    for leg in scenario.legs:
        for key, field in LEG_FIELDS.items():
            value = getattr(leg, key)
            if field.kind in ("number", "count") and value is not None:
                assert field.minimum <= value <= field.maximum, key


def opened(work):
    """What was opened is within bounds; what was refused says why."""
    try:
        with soon():
            found = work()
    except InputError as refused:
        assert told(refused).strip()
    else:
        within_bounds(found.scenario)


@given(st.sampled_from(sorted(FIELDS)), st.one_of(st.text(max_size=30), PIECES), st.booleans())
@example("mass_kg", "9" * 400, False)
def test_a_number_cell_holds_a_number_within_bounds_or_refuses(key, text, us):
    field = FIELDS[key]
    try:
        with soon():
            kept = field.parse(typed_number(field, text, Display(us=us)))
    except (InputError, ValueError):
        return
    assert kept is None or field.minimum <= kept <= field.maximum


@given(st.sampled_from(DRIVES), st.data())
def test_a_link_with_any_value_changed_opens_or_is_refused(drive, data):
    link = to_link(drive)
    key = data.draw(st.sampled_from([*link, *FIELDS]))
    link[key] = data.draw(st.one_of(st.text(max_size=60), PIECES))
    text = "&".join(f"{name}={value}" for name, value in link.items())
    opened(lambda: from_text(f"https://drive.net/?{text}", Scenario()))


@given(st.one_of(st.text(max_size=200), PIECES))
def test_any_text_opens_a_drive_or_is_refused(text):
    opened(lambda: from_text(text, Scenario()))
    opened(lambda: from_text("{" + text, Scenario()))


BYTES = st.one_of(st.binary(max_size=12), PIECES.map(lambda text: text.encode(errors="replace")))


@given(st.integers(0, len(FILE) - 1), st.integers(0, 12), BYTES)
@example(0, 0, b"\xff\xfe")
def test_a_file_with_any_bytes_changed_opens_or_is_refused(place, taken, put):
    data = FILE[:place] + put + FILE[place + taken :]
    opened(lambda: from_file(data, "drive.json"))
    opened(lambda: from_file(b"<!-- " + base64.b64encode(data) + b" -->", "page.html"))
