"""What can be set on the panels that explain how it works; what they show comes from the model and the user's drive."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from model.describe.fields import InputError, choice, fields_of, filled, from_link, number
from model.one_stop.bigger_motor import CHANGES
from model.one_stop.machine_map import QUADRANTS

FASTEST_KMH = 130.0
"""The fastest stop that is explained: beyond it few drives go, and a fixed scale would be too coarse."""


@dataclass(frozen=True, kw_only=True)
class PanelSettings:
    """One stop that several panels follow, and what one panel alone asks."""

    slower_kmh: float = number("km/h", 10, FASTEST_KMH, (10, FASTEST_KMH), default=50.0)
    faster_kmh: float = number("km/h", 10, FASTEST_KMH, (10, FASTEST_KMH), default=100.0)
    from_kmh: float = number("km/h", 20, FASTEST_KMH, (20, FASTEST_KMH), default=100.0)
    slowing_mps2: float = number("m/s²", 0.5, 10, (0.5, 10), default=1.5)
    quadrant: str = choice(QUADRANTS, default="slowing_forwards")
    power_times: float = number("1", 0.125, 3, (0.125, 3), default=1.0)
    change: str = choice(CHANGES, default="nothing")
    stops: str = choice(("1", "10"), default="10")


PANEL_FIELDS = fields_of(PanelSettings, "panels")


def settings_of(link: Mapping[str, str]) -> tuple[PanelSettings, list[InputError]]:
    """The settings of a link, and what was refused and changed."""
    values, notices = from_link(PANEL_FIELDS, link)
    return filled(PanelSettings, values), notices
