"""The card to take: one side for whoever drives, one for whoever checks; printed, or as one HTML file."""

from __future__ import annotations

import base64
import json
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from urllib.parse import urlsplit

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from model import MODEL_DATE, MODEL_VERSION
from model.describe.car import CAR_FIELDS, Car
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
from model.words.entries import labelled
from model.words.quantities import Display, Value, inside
from pages.parts import card_words, departures, description, lift_off_words, wording
from pages.parts.charts.drive_strip import drive_strip, strip_finding
from pages.parts.charts.energy_words import before_after_words
from pages.parts.charts.export import svg
from pages.parts.facts import drive_facts
from pages.parts.public_link import public_link, qr_svg, short_text
from pages.parts.reach_words import band_text, reach_text, stops_text, year_text
from pages.parts.source_tables import MAIN_FIGURES, figures_table, prices_table
from pages.parts.trust import left_out
from pages.parts.typography import together

TEMPLATES = Path(__file__).parents[2] / "assets"
STRIP_PX = 820
QR_MODULE_MM, QR_MOST_MM = 0.42, 60.0
"""A module that a telephone reads from a hand's breadth, and the most room there is."""
CARD_PT, CARD_LETTERS, SIDE_MM = (7.0, 14.0), 1000, 240
CHECKS_PT, CHECKS_LETTERS, LEG_LETTERS = (6.0, 9.5), 4950, 30
ROW_LETTERS, LABEL_LETTERS, VALUE_LETTERS = 45, 20, 30
"""A line of a row of figures counts as so many letters; so many stand in its two columns."""
"""Smallest and largest type of a side [pt], how many letters it holds in the largest, and its height [mm], of which the
code takes its part: a side is one sheet of paper, whatever there is to say."""
CLOSE_LEADING, WIDE_LEADING, WIDE_FROM_PT = 1.13, 1.26, 8.0
"""Lines of the second side, in heights of its type, and from which type [pt] on they stand further apart."""
REPRODUCE = "python -m model drive FILE"


@dataclass(frozen=True, eq=False)
class TakeAway:
    """All that the card is made of.

    `year_fuel` is what a hybrid spares in the year, `slowing_in_winter` what to expect of motor slowing on the year's
    winter day, `glance` each limit in short, `band_runs` the sampled cars behind the bands, `made` the day of making,
    `line` what a showroom has put over its card.
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
    line: str = ""


@cache
def template(name: str) -> Template:
    """A page with its places to fill; every text that is filled in is escaped, its numbers kept with their units."""
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
        lstrip_blocks=True, finalize=lambda value: together(value) if type(value) is str else value,
    )  # fmt: skip
    return environment.get_template(name)


def style() -> str:
    """How both sides look."""
    return (TEMPLATES / "paper.css").read_text(encoding="utf-8")


def report_html(taken: TakeAway) -> str:
    """Both sides as one HTML file, complete in itself."""
    return template("report.html").render(contents(taken), style=style(), level=1)


def sheets_html(taken: TakeAway) -> str:
    """Both sides as a part of a page that has a title of its own."""
    return f"<style>{style()}</style>{template('sheets.html').render(contents(taken), level=2)}"


def contents(taken: TakeAway) -> dict[str, object]:
    """What the template's places are filled with."""
    scenario, display = taken.scenario, taken.display
    steps, events, book = timeline(taken.result), slow_downs(taken.result), books(taken.result)
    energy_title, energy_text = before_after_words(book, display)
    link = public_link(taken.link)
    qr = qr_svg(link) if link else ""
    card: dict[str, object] = {
        "card_about": card_about(scenario, display),
        "headline": wording.headline(taken.answer, display),
        "warnings": warnings(taken),
        "cards": cards(taken),
        "no_substitute": display.say("no-substitute"),
        "caution": display.say("caution"),
    }
    figures, also_yours = figures_told(scenario, taken.result.car, display)
    checks: dict[str, object] = {
        "drive": drive_heading(scenario, display),
        "about": about(scenario, display),
        "legs": [description.leg_words(leg, display) for leg in scenario.legs],
        "habits": display.say("paper-habits", habits=description.habits_words(scenario, display)),
        "more": [*more_cards(taken), (energy_title, (energy_text,))],
        "mixed_up": wording.mixed_up_words(taken.result, display),
        "shares": three_shares(taken),
        "year_rest": wording.year_rest(taken.year, display) if taken.year and taken.year_fuel is None else "",
        "band": band_words(taken.band_runs, display),
        "figures": figures,
        "also_yours": display.say("paper-also-yours", figures=Several(tuple(also_yours), ";")) if also_yours else "",
        "left_out": left_out(display),
        "short_text": "" if link else short_text(taken.link),
    }
    three = numbers(taken)
    on_card = letters(card) + letters_of_numbers(three)
    # each leg and each row of figures begins a line, and the drive as text is set wide
    on_checks = letters(checks) + letters(checks["short_text"]) + LEG_LETTERS * len(scenario.legs)
    on_checks += sum(ROW_LETTERS * lines_of(row) - letters(row) for row in figures)
    checks_pt = fitting_pt(on_checks, CHECKS_LETTERS, *CHECKS_PT)
    return card | checks | {
        "numbers": three,
        "words": fixed_words(taken, urlsplit(link).hostname or ""),
        "card_pt": fitting_pt(on_card, CARD_LETTERS * (1 - qr_mm(qr) / SIDE_MM), *CARD_PT),
        "checks_pt": checks_pt,
        # small type has every line that there is to have
        "checks_leading": WIDE_LEADING if checks_pt >= WIDE_FROM_PT else CLOSE_LEADING,
        "strip": svg_address(svg(drive_strip(steps, events, display), STRIP_PX)),
        "strip_text": strip_finding(steps, events, display),
        "link": link,
        "qr": svg_address(qr) if qr else "",
        "qr_mm": qr_mm(qr),
        "scenario_file": data_address(json.dumps(scenario_to_json(scenario), ensure_ascii=False)),
        "reproduce": REPRODUCE,
        "line": taken.line,
    }  # fmt: skip


def figures_told(scenario: Scenario, car: Car, display: Display) -> tuple[list[list[str]], list[str]]:
    """The main figures and the prices as rows of figure, value and source; and what else was stated, in short."""
    main = {labelled(CAR_FIELDS[key], display) for key in MAIN_FIGURES}
    table = figures_table(scenario.car_class, dict(scenario.stated), display, on_paper=True, idle=car.idle_figures)
    found = table.to_numpy().tolist()
    rows = [row for row in found if row[0] in main] + prices_table(scenario.year, display)
    return rows, [f"{label}: {value}" for label, value, _ in found if label not in main]


def lines_of(row: list[str]) -> int:
    """How many lines a row of figures takes at most: what it is stands beside its value and source."""
    label, *others = map(letters, row)
    return max(math.ceil(label / LABEL_LETTERS), math.ceil(sum(others) / VALUE_LETTERS))


def letters(texts: object) -> float:
    """How many letters of ordinary width stand in texts, however they are nested."""
    if isinstance(texts, str):
        return len(texts) + 0.6 * sum(map(str.isupper, texts))
    if isinstance(texts, Mapping):
        return letters(list(texts.values()))
    return sum(map(letters, texts)) if isinstance(texts, list | tuple) else 0


def letters_of_numbers(rows: list[tuple[str, str, str, str]]) -> float:
    """As how many letters the numbers count: three columns as high as the highest, their figures in larger type."""
    return 3 * max(letters(row) + 2 * letters(row[1]) for row in rows)


def fitting_pt(written: float, held: float, smallest: float, largest: float) -> float:
    """The type [pt] in which so many letters fit a side that holds `held` in its largest.

    The area of a letter goes with the square of its height.
    """
    return round(min(largest, max(smallest, largest * math.sqrt(held / max(written, 1)))), 2)


# the side for whoever drives


def about(scenario: Scenario, display: Display) -> str:
    """Car, drive, season, pedal and what else departs from the ordinary, in one sentence."""
    season = description.season_of(scenario.conditions, scenario.year)
    apart = departures.text(scenario, display)
    said: dict[str, Value] = {
        "car_on_drive": description.on_drive(scenario, display),
        "season": bool(season),
        "day": description.season_words(scenario.conditions, scenario.year, display),
        "pedal": description.pedal_words(scenario, display),
    }
    return display.say("paper-about-apart", apart=apart, **said) if apart else display.say("paper-about", **said)


def card_about(scenario: Scenario, display: Display) -> str:
    """What the title leaves open: how far, on which day, with which pedal, and what else is not as usual."""
    return display.say(
        "paper-card-about",
        length=description.length_of(scenario),
        back=scenario.return_trip,
        also=Several((description.pedal_words(scenario, display), *departures.by_key(scenario, display).values()), ""),
        day=description.day_words(scenario, display),
    )


def numbers(taken: TakeAway) -> list[tuple[str, str, str, str]]:
    """The three numbers: what, how much, beside what it stands, and what has to be said along with it."""
    scenario, result, display = taken.scenario, taken.result, taken.display
    rows = [(*fact, "") for fact in drive_facts(scenario, result, taken.answer, display)]
    if taken.year is not None:
        along = [year_text(taken.year, scenario, result, display)]
        if beside := beside_now(taken.year, scenario.year, result.car):
            along += wording.beside_words(beside, scenario, display)
        of_year = wording.year_fact(taken.year, scenario.year, display, taken.year_fuel)
        rows.append((*of_year, " ".join(filter(None, along))))
    return rows


def warnings(taken: TakeAway) -> list[str]:
    """What has to stand beside the numbers."""
    result, found = taken.result, []
    if not result.followed:
        found.append(wording.not_followed(taken.described_s, result.trace.duration_s, taken.display))
    scenario, display = taken.scenario, taken.display
    beside = (departures.frost_text(scenario, display), departures.unusual_text(scenario, display))
    reached = reach_text(result, display), stops_text(result, display)
    found += filter(None, [*reached, *beside, band_text(result, taken.answer, display)])
    return [*filter(None, found)]


def cards(taken: TakeAway) -> list[tuple[str, tuple[str, ...]]]:
    """The setting, with what holds on snow and ice, and the cold: title and sentences of each."""
    advice, display, found = taken.advice, taken.display, []
    if advice is not None:
        advice_words, driver = lift_off_words.advised_in_words(advice, display), taken.scenario.driver
        strength = inside(lift_off_words.heading(advice, display))
        advised = display.say("paper-advised", day=description.day_words(taken.scenario, display), strength=strength)
        yours = lift_off_words.yours_name(driver.lift_off_mps2, taken.scenario.legs, display)
        sentences = (*advice_words.reasons, advised, *advice_words.caveats, display.say("paper-set-to", strength=yours))
        found.append((display.say("card-lift-off", advice=inside(advice_words.title)), sentences))
    if taken.year is not None:
        winter = card_words.winter_card(taken.year, taken.slowing_in_winter, display)
        found.append((winter.title, (*winter.sentences[:-2], winter.sentences[-1])))
    else:
        expected = f"{taken.slowing_in_winter} {display.say('press-the-pedal')}"
        found.append((display.say("card-winter-in-words"), (expected,)))
    return found


# the side for whoever checks


def drive_heading(scenario: Scenario, display: Display) -> str:
    """What stands over the legs."""
    if not scenario.return_trip:
        return display.say("paper-drive")
    return display.say("paper-drive-there-and-back", way_back=description.way_back_words(scenario.conditions, display))


def more_cards(taken: TakeAway) -> list[tuple[str, tuple[str, ...]]]:
    """What the kind of brake pedal means, what winter takes, and when regeneration is not there."""
    display = taken.display
    pedal, limits = card_words.setting_card(taken.scenario, display), card_words.limits_card(display)
    in_short = display.say("paper-glance", **taken.glance)
    found = [(pedal.title, pedal.sentences[:1]), (limits.title, (*limits.sentences, in_short))]
    if taken.year is not None:
        winter = card_words.winter_card(taken.year, taken.slowing_in_winter, display)
        found.append((winter.title, winter.sentences[-2:-1]))
    return found


def three_shares(taken: TakeAway) -> str:
    """The three shares that must not be taken for each other."""
    result, display, shares = taken.result, taken.display, []
    # more than all of it is no share: the hill gave it
    if result.recovered_share is not None and result.recovered_share <= 1:
        shares.append(display.say("paper-recovered-share", share=Share(result.recovered_share)))
    if result.saved_share is not None and result.saved_share <= 1:
        shares.append(display.say("paper-energy-saved", share=Share(result.saved_share)))
    if result.range_gain is not None:
        shares.append(display.say("paper-range-gain", share=Share(result.range_gain)))
    return display.figure(Several(tuple(shares), ";")) if shares else ""


def band_words(runs: int, display: Display) -> str:
    """What the bands promise, and how they are made."""
    low, high = Quantity(100 * LOW_SHARE, "", places=0), Share(HIGH_SHARE, places=0)
    made = display.say("paper-bands", low=low, high=high, cars=runs, seed=str(SEED))
    return f"{band_promise(display)} {made}"


# on both


def fixed_words(taken: TakeAway, host: str) -> dict[str, str]:
    """Headings and labels, by their places."""
    say, scenario, display = taken.display.say, taken.scenario, taken.display
    made = taken.made.isoformat()
    return {
        "title": say("paper-title", about=about(scenario, display)),
        "card": say("paper-card", car_on_drive=description.on_drive(scenario, display)),
        "made": say("paper-made", made=made, version=MODEL_VERSION, date=MODEL_DATE),
        "made_on": say("paper-made-on", made=made),
        "checks": say("paper-checks"),
        "overleaf": say("paper-overleaf"),
        "mixed_up": say("mixed-up"),
        "three_shares": say("paper-three-shares"),
        "open_again": say("paper-open-again"),
        "qr": say("paper-qr"),
        "open_at": say("paper-open-at", host=host),
        "scan": say("paper-scan"),
        "paste": say("paper-paste"),
        "open_page": say("paper-open-page"),
        "drive_file": say("paper-drive-file"),
        "assumed": say("paper-assumed"),
        "reasons": say("paper-reasons"),
        "reproduced": say("paper-reproduced"),
        "left_out": say("paper-left-out"),
        "drive_as_text": say("paper-drive-as-text"),
    }


def qr_mm(qr: str) -> float:
    """How large a QR code is printed [mm]."""
    found = re.match(r'<svg viewBox="0 0 (\d+)', qr)
    return min(QR_MOST_MM, QR_MODULE_MM * int(found[1])) if found else 0.0


def data_address(text: str, kind: str = "application/json") -> str:
    """A text as an address that holds all of it."""
    return f"data:{kind};base64,{base64.b64encode(text.encode()).decode()}"


def svg_address(picture: str) -> str:
    """A picture as an address that holds it; one that stands alone has to name its language."""
    named = picture if "xmlns=" in picture else picture.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1)
    return data_address(named, "image/svg+xml")
