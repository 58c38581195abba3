"""The command line, asked within the test's own process."""

import json
from typing import Any

from model.out.cli import main


def answer(capsys: Any, *arguments: str) -> Any:
    """What a command that succeeds answers."""
    assert main(arguments) == 0
    return json.loads(capsys.readouterr().out)
