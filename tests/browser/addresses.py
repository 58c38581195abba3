"""Addresses of pages: made for a drive, and read off a page."""

from typing import Any
from urllib.parse import parse_qsl, urlencode, urlsplit

from model.describe.scenario import Scenario
from model.describe.scenario_io import from_link, starting_drives, to_link


def address(path: str, scenario: Scenario, **more: str) -> str:
    """The address at which a page opens with a drive."""
    return f"{path}?{urlencode(to_link(scenario) | more)}"


def link(page: Any) -> dict[str, str]:
    """What stands in a page's address."""
    return dict(parse_qsl(urlsplit(page.url).query))


def scenario_at(page: Any) -> Scenario:
    """The scenario that a page's address stands for."""
    return from_link(link(page), starting_drives()["town"][2])[0]
