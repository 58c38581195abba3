"""The take-away: one HTML file that holds the drive, its answer and all that stands behind it, ready to print."""

from __future__ import annotations

import base64
import json
import re
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from pathlib import Path
from urllib.parse import urlsplit

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from model import MODEL_DATE, MODEL_VERSION
from model.describe.figures import Quantity, Several, Share
from model.describe.scenario import Scenario
from model.describe.scenario_io import scenario_to_json
from model.kernel.savings import Result
from model.kernel.timeline import books, slow_downs, timeline
from model.lift_off.advice import Advice
from model.sampling.beside_now import beside_now
from model.sampling.drives import Bands, YearOfDrives
from model.sampling.hybrid import YearOfFuel
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE, SEED
from model.words.bands import band_promise
from model.words.quantities import Display, Value
from pages.parts import departures, lift_off_words, wording
from pages.parts.charts.drive_strip import drive_strip, strip_finding
from pages.parts.charts.energy import before_after
from pages.parts.charts.energy_words import before_after_words
from pages.parts.charts.export import svg
from pages.parts.facts import drive_facts
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
    answer: Bands
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


def contents(taken: TakeAway) -> dict[str, object]:
    """What the template's places are filled with."""
    scenario, display, answer = taken.scenario, taken.display, taken.answer
    steps, events, book = timeline(taken.result), slow_downs(taken.result), books(taken.result)
    energy_title, energy_text = before_after_words(book, display)
    link = public_link(taken.link)
    qr = qr_svg(link) if link else ""
    host = urlsplit(link).hostname or ""
    return {
        "headline": wording.headline(answer, display),
        "about": about(scenario, display),
        "words": fixed_words(taken, host),
        "warnings": warnings(taken),
        "facts": facts(taken),
        "strip": svg(drive_strip(steps, events, display), STRIP_PX),
        "strip_text": strip_finding(steps, events, display),
        "energy": svg(before_after(book, display), BEFORE_AFTER_PX),
        "energy_title": energy_title,
        "energy_text": energy_text,
        "cards": cards(taken),
        "legs": [wording.leg_words(leg, display) for leg in scenario.legs],
        "drive": drive_heading(scenario, display),
        "habits": display.say("paper-habits", habits=wording.habits_words(scenario, display)),
        "caution": display.say("caution"),
        "figures": figures_table(scenario.car_class, dict(scenario.stated), display).to_numpy().tolist(),
        "band": band_words(taken.band_runs, display),
        "left_out": left_out(display),
        "link": link,
        "qr": qr,
        "qr_mm": qr_mm(qr),
        "short_text": short_text(taken.link),
        "scenario_file": data_address(json.dumps(scenario_to_json(scenario), ensure_ascii=False)),
        "reproduce": REPRODUCE,
    }


def about(scenario: Scenario, display: Display) -> str:
    """Car, drive, season, pedal and what else departs from the ordinary, in one sentence."""
    season = wording.season_of(scenario.conditions, scenario.year)
    apart = departures.text(scenario, display)
    said: dict[str, Value] = {
        "car_on_drive": wording.on_drive(scenario, display),
        "season": bool(season),
        "day": wording.season_words(scenario.conditions, scenario.year, display),
        "pedal": wording.pedal_words(scenario, display),
    }
    return display.say("paper-about-apart", apart=apart, **said) if apart else display.say("paper-about", **said)


def drive_heading(scenario: Scenario, display: Display) -> str:
    """What stands over the legs."""
    if not scenario.return_trip:
        return display.say("paper-drive")
    return display.say("paper-drive-there-and-back", way_back=wording.way_back_words(scenario.conditions, display))


def fixed_words(taken: TakeAway, host: str) -> dict[str, str]:
    """Headings and labels of the page, by their places."""
    say = taken.display.say
    return {
        "title": say("paper-title", about=about(taken.scenario, taken.display)),
        "made": say("paper-made", made=taken.made.isoformat(), version=MODEL_VERSION, date=MODEL_DATE),
        "open_again": say("paper-open-again"),
        "qr": say("paper-qr"),
        "open_at": say("paper-open-at", host=host),
        "scan": say("paper-scan"),
        "paste": say("paper-paste"),
        "open_page": say("paper-open-page"),
        "drive_file": say("paper-drive-file"),
        "assumed": say("paper-assumed"),
        "reproduced": say("paper-reproduced"),
        "left_out": say("paper-left-out"),
        "drive_as_text": say("paper-drive-as-text"),
    }


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
    result, display, scenario = taken.result, taken.display, taken.scenario
    rows = drive_facts(scenario, result, taken.answer, display)
    if taken.year is not None:
        rows.append(wording.year_fact(taken.year, scenario.year, display, taken.year_fuel))
        if beside := beside_now(taken.year, scenario.year, result.car):
            name, cost, _ = wording.beside_fact(beside, scenario.year.currency, display)
            rows.append((name, cost, wording.beside_words(beside, scenario, display)))
    rows.append((display.say("mixed-up"), "", wording.mixed_up_words(result, display)))
    told = []
    # more than all of it is no share: the hill gave it
    if result.recovered_share is not None and result.recovered_share <= 1:
        told.append(display.say("paper-recovered-share", share=Share(result.recovered_share)))
    if result.saved_share is not None and result.saved_share <= 1:
        told.append(display.say("paper-energy-saved", share=Share(result.saved_share)))
    if result.range_gain is not None:
        told.append(display.say("paper-range-gain", share=Share(result.range_gain)))
    if told:
        rows.append((display.say("paper-three-shares"), "", display.figure(Several(tuple(told), ";"))))
    return rows


def cards(taken: TakeAway) -> list[tuple[str, tuple[str, ...]]]:
    """The advice on lift-off with its reason, and when regeneration is not there: title and sentences of each."""
    advice, display, found = taken.advice, taken.display, []
    if advice is not None:
        told, driver = lift_off_words.advised(advice, display), taken.scenario.driver
        day = display.say("paper-for-day", day=wording.day_words(taken.scenario, display))
        strength = lift_off_words.yours_name(driver.lift_off_mps2, taken.scenario.legs, display)
        yours = display.say("paper-set-to", strength=strength)
        found.append((display.say("paper-advised", advice=told.title), (day, *told.sentences, yours)))
    in_short = display.say("paper-glance", **taken.glance)
    limits = wording.limits_card(taken.display)
    limits = replace(limits, sentences=(*limits.sentences, in_short))
    short = [wording.setting_card(taken.scenario, taken.display), limits]
    if taken.year is not None:
        short.insert(1, wording.winter_card(taken.year, taken.slowing_in_winter, display))
    return [*found, *((card.title, card.sentences) for card in short)]


def band_words(runs: int, display: Display) -> str:
    """What the bands promise, and how they are made."""
    low, high = Quantity(100 * LOW_SHARE, "", places=0), Share(HIGH_SHARE, places=0)
    made = display.say("paper-bands", low=low, high=high, cars=runs, seed=str(SEED))
    return f"{band_promise(display)} {made}"


def qr_mm(qr: str) -> float:
    """How large a QR code is printed [mm]."""
    found = re.match(r'<svg viewBox="0 0 (\d+)', qr)
    return min(QR_MOST_MM, QR_MODULE_MM * int(found[1])) if found else 0.0


def data_address(text: str) -> str:
    """A JSON text as an address that holds all of it."""
    return "data:application/json;base64," + base64.b64encode(text.encode()).decode()
