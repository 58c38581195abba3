"""The whole app without a browser: opened at one of its pages, as somebody sees it who follows a link."""

import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from streamlit.testing.v1 import AppTest

from model.describe.scenario import Scenario
from model.describe.scenario_io import from_link, starting_drives
from model.sampling.drives import answer_of, drive, samples_of
from model.words.quantities import Display
from pages.parts import state, wording
from pages.parts.folding import fold_key
from pages.parts.typography import NO_BREAK

ENTRYPOINT = Path(__file__).parents[2] / "pages" / "entrypoint.py"


def opened_at(page: str, link: dict[str, str], unfolded: Iterable[str] = ()) -> AppTest:
    """A page of the app, drawn once for an address, with those parts `unfolded` that fold on every screen."""
    app = AppTest.from_file(str(ENTRYPOINT), default_timeout=60)
    for key, value in link.items():
        app.query_params[key] = value
    app.switch_page(page)
    for anchor in unfolded:
        app.session_state[fold_key(anchor)] = True
    return ran(app.run())


CLAIM_PARTS = ("needs", "share", "print", "road")
"""What folds on the page of claims."""


def ran(app: AppTest) -> AppTest:
    """The app, which must not have failed."""
    assert not app.exception, [one.value for one in app.exception]
    return app


def in_picture(chart: Any) -> str:
    """What stands in a chart: its description, and the texts of its tables between bytes that are none."""
    tables = b"".join(one.data.data for one in chart.proto.datasets)
    return f"{chart.proto.spec} {chart.proto.alt} {tables.decode(errors='ignore')}".replace("\N{NO-BREAK SPACE}", " ")


def address(app: AppTest) -> dict[str, Any]:
    """What stands in the address now."""
    return {key: values[0] if isinstance(values, list) else values for key, values in app.query_params.items()}


def scenario_of(app: AppTest) -> Scenario:
    """The scenario that the address now stands for."""
    return from_link(address(app), starting_drives()["town"][2])[0]


def headers(app: AppTest) -> list[str]:
    """What a page's parts are headed by."""
    return [plain(one.value) for one in app.header]


def html_of(app: AppTest) -> list[str]:
    """What stands on a page as HTML, styles aside."""
    bodies = [re.sub("<style>.*?</style>", "", one.proto.body, flags=re.DOTALL) for one in app.get("html")]
    return [body for body in bodies if body]


def plain(text: str) -> str:
    """A text with ordinary blanks."""
    return text.replace(NO_BREAK, " ")


def first_page(link: dict[str, str] | None = None) -> AppTest:
    """The first page as somebody sees it who follows a link, or none."""
    return opened_at("your_drive.py", link or {})


def headline_of(scenario: Scenario, display: Display | None = None, runs: int | None = None) -> str:
    """The headline that belongs to a scenario; with as many sampled cars as the tests of pages take."""
    result = drive(scenario)
    answer = answer_of(result, samples_of(scenario, result, runs or state.BAND_RUNS))
    return wording.headline(answer, display or Display(), marked=True)


def label(app: AppTest, key: str) -> str:
    """What a button says."""
    return plain(app.button(key=key).label)


def change(app: AppTest, key: str, value: object) -> AppTest:
    """The app after something was typed."""
    return ran(app.text_input(key=key).set_value(str(value)).run())
