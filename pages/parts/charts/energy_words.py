"""What the energy pictures show, in words computed from the same numbers. Each gives a title and its sentences."""

from __future__ import annotations

import pandas as pd

from model.words.quantities import Display, number_text, percent_text
from pages.parts.charts.energy import GROUPS, fixed, grouped, places_for
from pages.parts.charts.limits import because

BOUNDS_IN_WORDS = (
    (1e-12, "one part in a trillion"),
    (1e-9, "one part in a billion"),
    (1e-6, "one part in a million"),
)


def before_after_words(books: pd.DataFrame) -> tuple[str, str]:
    """What regeneration changes. `books` is from `model.kernel.timeline.books`."""
    uses = grouped(books)
    net = uses.sum()
    places = places_for(net.abs().max())
    saved = net["friction_only"] - net["regenerated"]
    heat = {run: fixed(float(uses[run][GROUPS["friction"][0]]), places) for run in ("regenerated", "friction_only")}
    losses = uses.loc[GROUPS["losses"][0]]
    way = losses["regenerated"] - losses["friction_only"]
    if round(saved, places) <= 0:
        title = "On this drive regeneration saves nothing"
    elif net["regenerated"] > 0:
        title = (
            f"Regeneration saves {fixed(saved, places)} of {fixed(net['friction_only'], places)} kWh, "
            f"{percent_text(saved / net['friction_only'])}"
        )
    else:
        title = f"With regeneration the battery ends {fixed(-net['regenerated'], places)} kWh fuller than it began"
    sentences = (
        f"With friction brakes only, {heat['friction_only']} kWh of this drive end as heat in the discs; with "
        f"regeneration {heat['regenerated']} kWh do."
    )
    if round(abs(way), places) > 0:
        change = "costs" if way > 0 else "saves"
        sentences += f" The way back through gear and motor {change} {fixed(abs(way), places)} kWh."
    others = uses.drop([GROUPS["friction"][0], GROUPS["losses"][0]]).round(places)
    if others["friction_only"].equals(others["regenerated"]):
        sentences += " All other uses are the same."
    return title, sentences


def ledger_words(book: pd.Series, error_share: float) -> tuple[str, str]:
    """How much of what left the battery came back, and how well the books close. `book` is one column of the books."""
    out, back = book["battery_out"], book["battery_in"]
    places = places_for(max(out, back))
    if out <= 0:
        title = f"Nothing leaves the battery, and {fixed(back, places)} kWh come in"
    elif back > out:
        title = f"More comes back than left: {fixed(back, places)} kWh against {fixed(out, places)}"
    elif back <= 0:
        title = "Nothing comes back to the battery on this drive"
    else:
        title = f"Of every 100 Wh that leave the battery, {100 * back / out:.0f} come back"
    sentences = (
        "Read it from the top: each use begins where the one before it ends, and what is used and what comes back add "
        f"up to what came in. A further {fixed(book['cells'], places)} kWh warmed the battery's own cells, behind its "
        f"terminals, where this picture begins. {closure_words(error_share)}"
    )
    return title, sentences


def closure_words(error_share: float) -> str:
    """How well the books close, cells included."""
    for bound, words in BOUNDS_IN_WORDS:
        if error_share < bound:
            return f"The books, cells included, balance to better than {words} of the energy turned over."
    return f"The books do not balance: {percent_text(error_share)} of the energy turned over is missing."


def slowed_by_words(rows: pd.DataFrame, slow_downs: pd.DataFrame) -> tuple[str, str]:
    """What slowed the car. `rows` is from `braking_rows`, `slow_downs` from `model.kernel.timeline`."""
    total = rows["kwh"].sum()
    if total <= 0:
        return "Nothing had to be braked on this drive", "Air and tyres slowed the car wherever it slowed."
    motor = rows.loc[rows["meaning"] == "back", "share"].sum()
    friction = rows[rows["meaning"] == "friction"]
    title = f"The motor does {percent_text(motor)} of the braking"
    if len(friction):
        reasons = friction["words"].str.removeprefix("Friction, because ")
        title += f"; friction helps {because(dict(zip(reasons, friction['kwh'], strict=True)))}"
    count = len(slow_downs)
    sentences = (
        f"Counted at the wheels, over {count} slow-down{'' if count == 1 else 's'} and what is held back downhill: "
        f"{fixed(total, places_for(total))} kWh beyond what air and tyres slow anyway."
    )
    return title, sentences


def over_time_words(timeline: pd.DataFrame, display: Display) -> tuple[str, str]:
    """What the battery does over the drive. `timeline` is from `model.kernel.timeline`."""
    first, last = 100 * timeline["soc"].iloc[0], 100 * timeline["soc"].iloc[-1]
    places = 0 if abs(first - last) >= 1 else 1
    minutes = timeline["step_s"] / 60
    title = (
        f"Charge {'falls' if last < first else 'rises'} from {first:.{places}f} to {last:.{places}f} % of the battery "
        f"in {number_text(minutes.sum())} minutes"
    )
    gives, takes = timeline["battery_kw"].max(), -timeline["battery_kw"].min()
    sentence = f"The car reaches {display.text(timeline['speed_kmh'].max(), 'km/h')}."
    if gives > 0:
        sentence += f" The battery gives at most {number_text(gives)} kW."
    if takes > 0:
        taking = minutes[timeline["battery_kw"] < 0].sum()
        sentence += (
            f" It takes at most {number_text(takes)} kW, and for {number_text(taking)} minutes it is charged: then the "
            "motor makes more than is used aboard."
        )
    return title, sentence
