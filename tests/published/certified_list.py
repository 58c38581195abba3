"""The certified cars of the US lists as they are read: cycles, powers, and which class of ours stands for each."""

from __future__ import annotations

from functools import cache

from model.describe.tables import rows

CYCLES = {"udds": "city_wall_wh_per_km", "hwfet": "hwy_wall_wh_per_km"}
KW_PER_HP = 0.7457
MOST_KW = 1000.0
"""The most motor power that is accepted."""
CLASS_OF_WORDS = {
    "compact hatch": "family-hatch",
    "small boxy crossover": "compact-crossover",
    "small crossover": "compact-crossover",
    "compact crossover": "compact-crossover",
    "compact luxury crossover": "compact-crossover",
    "midsize crossover": "compact-crossover",
    "midsize crossover, automated-taxi build": "compact-crossover",
    "midsize luxury crossover": "large-suv",
    "large SUV": "large-suv",
    "large luxury SUV": "large-suv",
    "large three-row SUV": "large-suv",
    "compact liftback sedan": "performance-saloon",
    "midsize streamlined sedan": "performance-saloon",
    "large luxury sedan": "performance-saloon",
    "large sport sedan": "performance-saloon",
    "large sport wagon": "performance-saloon",
    "two-seat hypercar": "performance-saloon",
    "large pickup": "pickup",
}
"""Which class of ours stands for the list's kinds of car."""
FEW = {5: 2.015 / 1.645, 6: 1.943 / 1.645, 7: 1.895 / 1.645}
"""By how much a 90 % range widens for a spread that is known from so few distances: Student's over the normal figure.

As many distances as groups from a middle that no group sets, one less from a middle that is the groups' own.
"""


@cache
def certified_rows() -> list[dict[str, str]]:
    """The list's rows."""
    return rows("published/epa_certified_2019_2025.csv")


def motor_kw(row: dict[str, str]) -> float | None:
    """Rated power of a car [kW]; None where it is suspect."""
    return None if row["rated_hp_suspect"] == "yes" else min(float(row["rated_hp"]) * KW_PER_HP, MOST_KW)
