"""The command line on consoles and with file names that are not UTF-8."""

import io
import json
import os
import sys
from pathlib import Path

import pytest

from model.out.cli import main


def printed(monkeypatch, encoding, *arguments):
    """What a verb writes to a console of that encoding."""
    raw = io.BytesIO()
    with monkeypatch.context() as patched:
        patched.setattr(sys, "stdout", io.TextIOWrapper(raw, encoding=encoding))
        assert main(arguments) == 0
        sys.stdout.flush()
        return raw.getvalue()


def test_the_same_bytes_on_every_console(monkeypatch):
    everywhere = {printed(monkeypatch, encoding, "claim") for encoding in ("utf-8", "ascii", "latin-1", "utf-16")}
    assert len(everywhere) == 1 and json.loads(everywhere.pop().decode())["claims"]


@pytest.mark.skipif(os.name == "nt" or sys.platform == "darwin", reason="file names are text on this system")
def test_a_recording_whose_name_is_not_text_does_not_silence_a_study(monkeypatch, tmp_path):
    rows = "time_s,speed_kmh\n" + "".join(f"{second},{min(5 * second, 40)}\n" for second in range(60))
    for name in (b"a\xff.csv", b"b.csv"):
        Path(os.fsdecode(os.fsencode(tmp_path) + b"/" + name)).write_text(rows)
    answer = json.loads(printed(monkeypatch, "utf-8", "study", str(tmp_path)))
    assert [drive["name"][0] for drive in answer["drives"]] == ["a", "b"] and answer["refused"] == 0
