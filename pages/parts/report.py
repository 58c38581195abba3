"""The take-away: one HTML file that holds the drive, its answer and all that stands behind it, ready to print."""

from __future__ import annotations

import base64
import json
import re
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from model import MODEL_DATE, MODEL_VERSION
from model.describe.scenario import Scenario
from model.describe.scenario_io import scenario_to_json
from model.kernel.savings import Result
from model.kernel.timeline import books, slow_downs, timeline
from model.lift_off.advice import Advice
from model.sampling.drives import Answer, YearOfDrives
from model.sampling.hybrid import YearOfFuel
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE, SEED
from model.words.quantities import Display, capital, percent_text
from pages.parts import departures, lift_off_words, winter_words, wording
from pages.parts.charts.drive_strip import drive_strip, strip_finding
from pages.parts.charts.energy import before_after
from pages.parts.charts.energy_words import before_after_words
from pages.parts.charts.export import svg
from pages.parts.facts import fuel_fact
from pages.parts.public_link import public_link, qr_svg, short_text
from pages.parts.reach_words import band_text, reach_text, stops_text, year_text
from pages.parts.source_tables import figures_table
from pages.parts.trust import left_out

TEMPLATES = Path(__file__).parents[2] / "assets"
STRIP_PX, BEFORE_AFTER_PX = 820, 420
QR_MODULE_MM, QR_MOST_MM = 0.42, 60.0
"""A module that a telephone reads from a hand's breadth, and the most room there is."""
REPRODUCE = "python -m model drive FILE"


@dataclass(frozen=True, eq=False)
class TakeAway:
    """All that the page is made of.

    `year_fuel` is what a hybrid spares in the year, `glance` each limit in short,
    `slowing_in_winter` what to expect of motor slowing on the year's winter day, `band_runs` the sampled cars behind
    the bands, `made` the day of making.
    """

    scenario: Scenario
    result: Result
    answer: Answer
    year: YearOfDrives | None
    year_fuel: YearOfFuel | None
    glance: dict[str, str]
    slowing_in_winter: str
    advice: Advice | None
    described_s: float
    link: dict[str, str]
    display: Display
    band_runs: int
    made: date


@cache
def template() -> Template:
    """The page with its places to fill; every text that is filled in is escaped."""
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
        lstrip_blocks=True,
    )  # fmt: skip
    return environment.get_template("report.html")


def report_html(taken: TakeAway) -> str:
    """The page as one HTML text."""
    return template().render(contents(taken))


def contents(taken: TakeAway) -> dict[str, Any]:
    """What the template's places are filled with."""
    scenario, display, answer = taken.scenario, taken.display, taken.answer
    steps, events, book = timeline(taken.result), slow_downs(taken.result), books(taken.result)
    energy_title, energy_text = before_after_words(book, display)
    link = public_link(taken.link)
    qr = qr_svg(link) if link else ""
    return {
        "headline": wording.headline(answer, display),
        "about": about(scenario, display),
        "warnings": warnings(taken),
        "facts": facts(taken),
        "strip": svg(drive_strip(steps, events, display), STRIP_PX),
        "strip_text": strip_finding(steps, events, display),
        "energy": svg(before_after(book, display), BEFORE_AFTER_PX),
        "energy_title": energy_title,
        "energy_text": energy_text,
        "cards": cards(taken),
        "legs": [wording.leg_words(leg, display) for leg in scenario.legs],
        "there_and_back": scenario.return_trip,
        "way_back": wording.way_back_words(scenario.conditions, display),
        "habits": wording.habits_words(scenario, display),
        "caution": display.say("caution"),
        "figures": figures_table(scenario.car_class, dict(scenario.stated), display).to_numpy().tolist(),
        "band": band_words(taken.band_runs),
        "left_out": left_out(display),
        "version": MODEL_VERSION,
        "model_date": MODEL_DATE,
        "made": taken.made.isoformat(),
        "link": link,
        "qr": qr,
        "qr_mm": qr_mm(qr),
        "short_text": short_text(taken.link),
        "scenario_file": data_address(json.dumps(scenario_to_json(scenario), ensure_ascii=False)),
        "host": urlsplit(link).hostname or "",
        "reproduce": REPRODUCE,
    }


def about(scenario: Scenario, display: Display) -> str:
    """Car, drive, season, pedal and what else departs from the ordinary, in one sentence."""
    season = wording.season_of(scenario.conditions, scenario.year)
    apart = departures.text(scenario, display)
    day = f"{'in' if season else 'at'} {wording.season_words(scenario.conditions, scenario.year, display)}"
    return (
        f"A {wording.on_drive(scenario, display)} {day}, with a "
        f"{wording.pedal_words(scenario, display)}{f', {apart}' if apart else ''}."
    )


def warnings(taken: TakeAway) -> list[str]:
    """What has to stand beside the headline."""
    result, found = taken.result, []
    if not result.followed:
        found.append(wording.not_followed(taken.described_s, result.trace.duration_s, taken.display))
    scenario, display = taken.scenario, taken.display
    beside = (departures.frost_text(scenario, display), departures.unusual_text(scenario, display))
    reached = reach_text(result, display), stops_text(result, display)
    of_year = year_text(taken.year, scenario, result, display)
    found += filter(None, [*reached, *beside, band_text(result, taken.answer, display), of_year])
    return found


def facts(taken: TakeAway) -> list[tuple[str, str, str]]:
    """What the saving comes to, and the three shares that must not be taken for each other."""
    answer, result, display = taken.answer, taken.result, taken.display
    taken_kwh = wording.taken_text(result.net_kwh, display)
    rows = [(display.say("on-this-drive"), wording.saved_text(answer, display), taken_kwh)]
    if fuel := fuel_fact(taken.scenario, result, display):
        rows.append(fuel)
    else:
        rows.append(wording.range_fact(answer, result.car.usable_kwh, display))
    if taken.year is not None:
        rows.append(wording.year_fact(taken.year, taken.scenario.year, display, taken.year_fuel))
    shares = (
        ("recovered share", result.recovered_share, "back in the battery over out of it"),
        ("energy saved", result.saved_share, "of the drive on friction brakes only"),
        ("range gain", result.range_gain, "from the same battery"),
    )
    told = [
        f"{name} {percent_text(share)} ({of_what})"
        for name, share, of_what in shares
        # more than all of it is no share: the hill gave it
        if share is not None and (name == "range gain" or share <= 1)
    ]
    if told:
        rows.append(("Three shares that are easily mixed up, from middle figures", "", "; ".join(told)))
    return rows


def cards(taken: TakeAway) -> list[tuple[str, tuple[str, ...]]]:
    """The advice on lift-off with its reason, and when regeneration is not there: title and sentences of each."""
    advice, display, found = taken.advice, taken.display, []
    if advice is not None:
        told, driver = lift_off_words.advised(advice, display), taken.scenario.driver
        day = f"For {wording.day_words(taken.scenario, display)}."
        yours = f"The car is set to {lift_off_words.yours_name(driver.lift_off_mps2, taken.scenario.legs)}."
        found.append((f"Lift-off strength advised: {told.title}", (day, *told.sentences, yours)))
    glance = "; ".join(
        f"{winter_words.part_name(part, display).lower()}: {words}" for part, words in taken.glance.items()
    )
    in_short = f"{capital(glance)}."
    limits = wording.limits_card(taken.display)
    limits = replace(limits, sentences=(*limits.sentences, in_short))
    short = [wording.setting_card(taken.scenario, taken.display), limits]
    if taken.year is not None:
        short.insert(1, wording.winter_card(taken.year, taken.slowing_in_winter, display))
    return [*found, *((card.title, card.sentences) for card in short)]


def band_words(runs: int) -> str:
    """How the bands are made."""
    return (
        f"Bands run from {LOW_SHARE * 100:.0f} to {HIGH_SHARE * 100:.0f} % of {runs} sampled cars: for each, every "
        f"figure with a low and a high is drawn between them (triangular distribution, Latin hypercube, seed {SEED}). "
        "What you stated is fixed. The comparison is the same speeds on friction brakes only."
    )


def qr_mm(qr: str) -> float:
    """How large a QR code is printed [mm]."""
    found = re.match(r'<svg viewBox="0 0 (\d+)', qr)
    return min(QR_MOST_MM, QR_MODULE_MM * int(found[1])) if found else 0.0


def data_address(text: str) -> str:
    """A JSON text as an address that holds all of it."""
    return "data:application/json;base64," + base64.b64encode(text.encode()).decode()
