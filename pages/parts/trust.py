"""How far the answer can be trusted: what the published checks found, and what the model leaves out."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median

import streamlit as st

from model.checks.check import Check, Found
from model.checks.published import CertifiedCar, certified_cars, evidence
from model.words.quantities import MINUS
from pages.parts.link import own_link

LEFT_OUT = (
    "Traffic, lights and other people, beyond the stops and slow-downs that you describe.",
    "The side forces of bends on tyres, gusts of wind, and rain or snow beyond what the road's surface adds.",
    "What one car's software does that no one publishes: how it shares braking between axles, saves its battery, or "
    "holds back in the first minutes. Limits stand for it.",
    "Ageing of the battery, and cells that differ from each other.",
    "Brake discs that drag a little when they should be free, and a trailer's own brakes.",
    "Sun, damp and passengers in the cabin, beyond one assumed heat.",
    "Charging while the car stands before the way back: it goes back with the charge that it came with.",
    "What a charger on the way can give, its queue and its way off the road: the car charges as fast as the battery "
    "takes it.",
    "Losses while parked, and charging losses other than one average.",
)
NARROW = "\N{NO-BREAK SPACE}"


def number(value: float, unit: str = "%") -> str:
    """A found number as it is told."""
    return f"{value:.1f}{NARROW}{unit}".replace("-", MINUS)


def _missed(check: Check, found: Found) -> str:
    """A number outside what is published, named."""
    assert found.off is not None
    off = number(abs(found.off), "points" if found.unit == "%" else found.unit)
    return f"{check.title[:1].lower()}{check.title[1:]}, {found.what} (off by {off})"


def others_words(checks: Sequence[Check]) -> str:
    """The other checks in a paragraph: what was compared, which published ranges hold the model and which do not."""
    titles = "; ".join(check.title[:1].lower() + check.title[1:] for check in checks)
    compared = [(check, found) for check in checks for found in check.found if found.off is not None]
    ranges = [(check, found) for check, found in compared if isinstance(found.published, tuple)]
    outside = [_missed(check, found) for check, found in ranges if found.off]
    said = [f"Held beside {len(checks)} more publications: {titles}."]
    if ranges:
        said.append(
            f"Of {len(ranges)} published ranges the model lies within {len(ranges) - len(outside)}"
            + (f" and **outside {len(outside)}: {'; '.join(outside)}**." if outside else ".")
        )
    points = [(check, found) for check, found in compared if (check, found) not in ranges and found.unit == "%"]
    if points:
        size = median(abs(found.off or 0.0) for _, found in points)
        worst = max(points, key=lambda pair: abs(pair[1].off or 0.0))
        said.append(
            f"Beside {len(points)} published single percentages it is off by {size:.1f} points for the median one, and "
            f"by most for **{_missed(*worst)}**."
        )
    return " ".join(said)


def largest_misses(cars: Sequence[CertifiedCar], how_many: int = 2) -> str:
    """The certified cars that the model misses by most in the city."""
    worst = sorted(cars, key=lambda car: -abs(car.city_error_pct))[:how_many]
    return " and ".join(
        f"the {car.description.split(',')[0]} ({car.id}) by {abs(car.city_error_pct):.0f} %" for car in worst
    )


def first_words(check: Check, cars: Sequence[CertifiedCar]) -> str:
    """The errors on the certified cars in one paragraph. `check` is `epa_certification`, made from the same cars."""
    city, highway, city_lean, highway_lean = (found.value for found in check.found)
    lean = [f"{abs(value):.1f} % too {'high' if value > 0 else 'low'}" for value in (city_lean, highway_lean)]
    return (
        f"On {len(cars)} cars measured for certification in the United States, the model's energy from the wall is off "
        f"by {city:.1f} % in the city and {highway:.1f} % on the highway for the median car, too high or too low. The "
        f"median bias: {lean[0]} in the city, {lean[1]} on the highway. In the city it misses {largest_misses(cars)}. "
        "No figure was fitted to a single car, but the losses were chosen with these results in view."
    )


def draw_trust() -> None:
    """Draw the drawer."""
    with st.expander("How far can I trust this?", type="compact", key="trust-drawer", on_change="rerun") as drawer:
        if not drawer.open:
            return
        checks = evidence()
        st.markdown(first_words(checks[0], certified_cars()), width=760)
        st.markdown(others_words(checks[1:]), width=760)
        st.page_link("sources.py", label="Every number, with its source", query_params=own_link())
        st.markdown("**Left out:**\n\n" + "\n".join(f"- {item}" for item in LEFT_OUT), width=760)
