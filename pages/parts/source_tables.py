"""The tables of Sources and method, each read from where the fact stands."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import cast

import pandas as pd

import model
from model.checks.check import Check, Outcome
from model.checks.published import CertifiedCar
from model.describe.car import CAR_FIELDS
from model.describe.changes import changes
from model.describe.fields import Entry, Field
from model.describe.figures import Quantity, Several, Share, Span
from model.describe.parameters import Assumed, assumed_figures
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS, YEAR_FIELDS, Year, own_prices
from model.describe.sources import named_sources, sources
from model.describe.tables import rows
from model.sampling.beside_now import price_key
from model.traces.cycles import CYCLES, cycle_trace
from model.words import checks as spoken
from model.words.entries import choice_word, help_of, label_of, labelled, shown_value
from model.words.quantities import Display, capital
from pages.parts.description import known_words
from pages.parts.plain_text import inert
from pages.parts.source_links import cited_with_links
from pages.parts.trust import number
from pages.parts.typography import together

LONG = 24
"""Of more characters than these a column of a telephone's table makes many lines."""


def has_long_cells(table: pd.DataFrame) -> bool:
    """Whether a telephone has no room for the columns beside each other."""
    return any(len(str(cell)) > LONG for cell in table.to_numpy().flat)


def in_rows(table: pd.DataFrame) -> str:
    """A table's rows under one another, each cell after the name of its column: for where columns have no room."""
    names = [str(name) for name in table]
    return "\n\n".join(
        "  \n".join(
            [f"**{first}**", *(f"{name}: {cell}" for name, cell in zip(names[1:], rest, strict=True) if cell != "")]
        )
        for first, *rest in table.itertuples(index=False)
    )


def figure_text(field: Field, value: Entry, display: Display) -> str:
    """A held value as it is read."""
    if value is None:
        return "–"
    if field.kind == "choice":
        return choice_word(field.key, str(value), display)
    if field.kind in ("text", "yes_no"):
        return field.text(value)
    return display.figure(Quantity(cast(float, shown_value(field, value, display)), "", 4, trimmed=True))


MAIN_FIGURES = (
    "mass_kg", "drag_area_m2", "rolling_coefficient", "motor_peak_kw", "regen_peak_kw", "gear_efficiency", "usable_kwh",
    "acceptance_level", "accessory_w", "charging_efficiency", "driven_axle", "regen_cap_mps2", "heat_source",
    "cabin_loss_w_per_k",
)  # fmt: skip
"""What of a car is printed for whoever checks; everything else stands in the app."""


def figures_table(
    car_class: str,
    stated: Mapping[str, Entry],
    display: Display,
    on_page: bool = False,
    on_paper: bool = False,
    idle: frozenset[str] = frozenset(),
) -> pd.DataFrame:
    """Every assumed figure of a car class with its band and provenance; what the visitor stated in its place.

    A page reads cells as Markdown: there sources are links, and what a visitor wrote is made to be none. A sheet of
    paper has the main figures and what was stated, with the names of sources and not what each says. What is `idle` is
    left out unless it was stated.
    """
    table, say = [], display.say
    assumed = assumed_figures(car_class)
    for key, field in (CAR_FIELDS | CONDITION_FIELDS).items():
        label = labelled(field, display)
        if on_paper and key not in MAIN_FIGURES and key not in stated:
            continue
        if key in stated:
            own = figure_text(field, stated[key], display)
            table.append([label, inert(own) if on_page else own, say("figure-yours")])
        elif key in assumed and key not in idle:
            item = assumed[key]
            low, mid, high = (figure_text(field, end, display) for end in (item.low, item.mid, item.high))
            band = mid
            if item.low != item.high:
                band = say("figure-band-in-short" if on_paper else "figure-band", low=low, high=high, mid=mid)
            if on_paper and key == "acceptance_level":
                # a scale of the model's own, which tells a reader nothing
                band = say("figure-acceptance")
            known = known_in_short(item, display) if on_paper else known_words(item, display)
            if on_page and item.sources:
                known = say("figure-with-links", known=known, links=cited_with_links(item.sources, display))
            table.append([label, band, known])
    columns = say("column-figure"), say("column-low-to-high"), say("column-kind-and-source")
    return pd.DataFrame(table, columns=columns)


def known_in_short(item: Assumed, display: Display) -> str:
    """What kind of knowledge a figure is, with the names of its sources."""
    if item.kind == "published" and item.sources:
        names = Several(tuple(sources()[name].name for name in item.sources), ";")
        return display.say("provenance", kind="published", source=display.figure(names))
    if item.kind == "published":
        return known_words(item, display)
    return display.say("provenance-in-short", kind=item.kind.replace(" ", "-"))


def prices_table(year: Year, display: Display) -> list[list[str]]:
    """What the year’s sums rest on: each price and the CO₂ of electricity, with its source unless it is one’s own."""
    keys = ["price_per_kwh", "co2_g_per_kwh", *([price_key(year)] if year.now_l_per_100km is not None else [])]
    own, table = own_prices(year, us=display.us), []
    for key in keys:
        field, source = YEAR_FIELDS[key], display.say("price-yours")
        value = figure_text(field, getattr(year, key), display)
        sign = "" if key == "co2_g_per_kwh" else f"{year.currency} "
        table.append([labelled(field, display), f"{sign}{value}", source if key in own else help_of(field, display)])
    return table


USERS = (
    "physics/wheels", "physics/air_and_tyres", "physics/warming_up", "physics/motor_and_gear",
    "physics/slowing_limits", "physics/grip", "physics/cells", "physics/charge_acceptance", "physics/pack_heat",
    "physics/cabin", "physics/engine", "kernel/step", "kernel/march", "kernel/follow", "limits/friction_brakes",
    "sampling/hybrid", "kernel/savings", "physics/battery", "sampling/drives", "lift_off/advice", "limits/grip_margin",
    "limits/emergency_stop", "limits/descent", "limits/winter", "one_stop/machine_map",
)  # fmt: skip
"""The parts of the model that read figures of the car, from the wheels inwards."""


@cache
def uses() -> dict[str, list[Field]]:
    """Which part of the model uses which assumed figures, read from the model's own code."""
    table = {}
    for name in USERS:
        code = (Path(model.__file__).parent / f"{name}.py").read_text(encoding="utf-8")
        used = [field for key, field in CAR_FIELDS.items() if re.search(rf"\.{key}\b|\"{key}\"", code)]
        if used:
            table[name.rpartition("/")[2]] = used
    return table


def uses_table(display: Display) -> pd.DataFrame:
    """Which part of the model uses which assumed figures."""
    table = [
        (display.say("model-part", module=module),
         display.figure(Several(tuple(label_of(field, display) for field in used), ";")))
        for module, used in uses().items()
    ]  # fmt: skip
    return pd.DataFrame(table, columns=[display.say("column-part"), display.say("column-uses")])


def changes_table(display: Display) -> pd.DataFrame:
    """The model's versions, with what each changed or corrected."""
    names = {
        "version": display.say("column-version"),
        "date": display.say("column-date"),
        "kind": display.say("column-kind"),
        "what": display.say("column-what"),
    }
    return pd.DataFrame([dict(row) for row in changes()])[list(names)].rename(columns=names)[::-1]


def published_text(found: Outcome, display: Display) -> str:
    """What is published for a found number."""
    if found.published is None:
        return display.say("found-reported")
    ends = found.published if isinstance(found.published, tuple) else (found.published, found.published)
    return together(display.figure(Span(*ends, found.unit, 6, trimmed=True)))


def check_table(check: Check, display: Display) -> pd.DataFrame:
    """Every number that a check found, beside what is published and by how much it is off."""
    table = []
    for found in check.found:
        off = ""
        if found.off is not None:
            more = display.figure(Quantity(display.value(found.off, found.unit), "", places=1, signed=True))
            off = display.say("found-within") if found.off == 0 else more
        value = together(display.figure(number(found.value, found.unit)))
        table.append([capital(spoken.what(found, display)), published_text(found, display), value, off])
    names = (display.say("column-number"), display.say("column-published"), display.say("column-found"))
    return pd.DataFrame(table, columns=[*names, display.say("column-off")])


def cars_table(cars: Sequence[CertifiedCar], display: Display) -> pd.DataFrame:
    """Wall energy of the certified cars, published and found."""
    unit, say = display.unit("Wh/km"), display.say

    def both(published: float, modelled: float, error_pct: float) -> list[str]:
        shown = [display.figure(Quantity(display.value(energy, "Wh/km"), "")) for energy in (published, modelled)]
        return [*shown, display.figure(Quantity(error_pct, "%", places=0, signed=True))]

    table = [
        [
            say("car-and-id", car=car.description, id=car.id),
            *both(car.city_published, car.city_modelled, car.city_error_pct),
            *both(car.highway_published, car.highway_modelled, car.highway_error_pct),
        ]
        for car in cars
    ]
    columns = [
        column
        for cycle in ("city", "highway")
        for column in (
            say("column-car-published", cycle=cycle, unit=unit),
            say("column-car-found", cycle=cycle),
            say("column-car-error", cycle=cycle),
        )
    ]
    return pd.DataFrame(table, columns=[say("column-car"), *columns])


def ranges_table(display: Display) -> pd.DataFrame:
    """What may be entered for a drive, and within which range it is ordinary."""
    table = []
    for field in (LEG_FIELDS | CONDITION_FIELDS | DRIVER_FIELDS).values():
        if field.kind not in ("number", "count"):
            continue
        spans = [
            display.say("span", low=figure_text(field, low, display), high=figure_text(field, high, display))
            for low, high in (field.usual, (field.minimum, field.maximum))
        ]
        table.append([labelled(field, display), *spans])
    columns = [display.say("column-entry"), display.say("column-ordinary"), display.say("column-allowed")]
    return pd.DataFrame(table, columns=columns)


def cycles_table(display: Display) -> pd.DataFrame:
    """The standard cycles with their regulation and totals."""
    table, say = [], display.say
    for name, cycle in CYCLES.items():
        trace = cycle_trace(name)
        distance = display.figure(Quantity(trace.distance_m / 1000, "km", 3))
        time = display.figure(Quantity(trace.duration_s, "s", places=0))
        table.append([display.say("cycle-name", cycle=name), cycle.regulation, distance, time, trace.stops])
    columns = [say("column-cycle"), say("column-regulation"), say("column-length"), say("column-time")]
    return pd.DataFrame(table, columns=[*columns, say("column-stops")])


def grip_table(display: Display) -> pd.DataFrame:
    """Grip of the road surfaces with provenance and links."""
    names = {
        "surface": display.say("column-surface"),
        "grip_low": display.say("column-low"),
        "grip_mid": display.say("column-mid"),
        "grip_high": display.say("column-high"),
        "kind": display.say("column-kind"),
        "source": display.say("column-source"),
    }
    found = rows("grip.csv")
    table = pd.DataFrame([dict(row) for row in found])[list(names)]
    table["source"] = [
        display.say("figure-with-links", known=row["source"], links=cited_with_links(named_sources(row), display))
        for row in found
    ]
    table["surface"] = [choice_word("surface", surface, display) for surface in table["surface"]]
    return table.rename(columns=names)


def acceptance_table(display: Display) -> pd.DataFrame:
    """The charge rate [1/h] that the middle table accepts, by battery temperature and charge."""
    middle = [dict(row) for row in rows("charge_acceptance.csv") if row["level"] == "mid"]
    table = pd.DataFrame(middle).drop(columns="level")
    temperatures = display.value(table.pop("battery_c").astype(float), "°C")
    name = display.say("column-battery", unit=display.unit("°C"))
    table.insert(0, name, [display.figure(Quantity(warmth, "", places=0)) for warmth in temperatures])
    full = {share: display.say("column-full", charge=Share(float(share), 0)) for share in table.columns[1:]}
    return table.rename(columns=full)
