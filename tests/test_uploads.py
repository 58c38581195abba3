"""What is uploaded is held in memory: nothing of it is put on the disk."""

import tomllib
from pathlib import Path

from starlette.formparsers import MultiPartParser

import app
from model.traces.logs import MOST_BYTES

CONFIG = tomllib.loads((Path(app.__file__).parent / ".streamlit" / "config.toml").read_text(encoding="utf-8"))


def test_the_limit_of_uploads_is_what_is_read_and_stays_in_memory():
    most = CONFIG["server"]["maxUploadSize"] * 2**20
    assert MOST_BYTES <= most < MultiPartParser.spool_max_size
