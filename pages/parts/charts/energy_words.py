"""What the energy pictures show, in words computed from the same numbers. Each gives a title and its sentences."""

from __future__ import annotations

import pandas as pd

from model.describe.figures import Quantity, Share, Shares
from model.kernel.savings import Result
from model.sampling.drives import Bands
from model.words.quantities import Display
from pages.parts.charts.energy import grouped, places_for
from pages.parts.charts.limits import because

BOUNDS = {"billion": 1e-9, "million": 1e-6}
"""Of what is turned over, the share that the books are told to balance to [1]."""


def before_after_words(books: pd.DataFrame, display: Display) -> tuple[str, str]:
    """What regeneration changes. `books` is from `model.kernel.timeline.books`."""
    uses = grouped(books)
    net = uses.sum()
    places = places_for(net.abs().max())
    saved = net["friction_only"] - net["regenerated"]
    losses = float(uses["regenerated"]["losses"] - uses["friction_only"]["losses"])

    def kwh(energy: float, unit: str = "kWh") -> Quantity:
        return Quantity(float(energy), unit, places=places)

    if round(saved, places) <= 0:
        title = display.say("saves-nothing")
    elif net["regenerated"] > 0:
        without = net["friction_only"]
        title = display.say("saves", saved=kwh(saved, ""), without=kwh(without), share=Share(saved / without))
    else:
        title = display.say("saves-ends-fuller", more=kwh(-net["regenerated"]))
    heat = {run: kwh(uses[run]["friction"]) for run in ("regenerated", "friction_only")}
    sentences = [display.say("saves-heat", **heat)]
    if round(abs(losses), places) > 0:
        sentences.append(display.say("saves-losses", losses=kwh(abs(losses)), costs=losses > 0))
    others = uses.drop(["friction", "losses"]).round(places)
    if others["friction_only"].equals(others["regenerated"]):
        sentences.append(display.say("saves-others-alike"))
    return title, " ".join(sentences)


def one_run_words(result: Result, answer: Bands | None, display: Display) -> str:
    """Where the run with every figure at its middle stands among the cars of the band: it is not their middle car."""
    saved, band = result.saved_share, None if answer is None else answer.saved_share
    if saved is None or band is None:
        none = Share(0.0)
        return display.say("energy-one-run", shared=False, saved=none, band=Shares(0, 0), half=none)
    return display.say(
        "energy-one-run", shared=True, saved=Share(saved), band=Shares(band.low, band.high), half=Share(band.mid)
    )


def ledger_words(book: pd.Series, error_share: float, display: Display) -> tuple[str, str]:
    """How much of what left the battery came back, and how well the books close. `book` is one column of the books."""
    out, back = book["battery_out"], book["battery_in"]
    places = places_for(max(out, back))

    def kwh(energy: float, unit: str = "kWh") -> Quantity:
        return Quantity(float(energy), unit, places=places)

    if out <= 0:
        title = display.say("book-nothing-left", out=kwh(back))
    elif back > out:
        title = display.say("book-more-back", back=kwh(back), out=kwh(out, ""))
    elif back <= 0:
        title = display.say("book-nothing-back")
    else:
        title = display.say("book-of-hundred", back=Quantity(100 * back / out, "", places=0))
    read = display.say("book-read", cells=kwh(book["cells"]))
    return title, f"{read} {closure_words(error_share, display)}"


def closure_words(error_share: float, display: Display) -> str:
    """How well the books close, cells included."""
    for bound, most in BOUNDS.items():
        if error_share < most:
            return display.say("books-balance", bound=bound)
    return display.say("books-missing", missing=Share(error_share))


def slowed_by_words(rows: pd.DataFrame, slow_downs: pd.DataFrame, display: Display) -> tuple[str, str]:
    """What slowed the car. `rows` is from `braking_rows`, `slow_downs` from `model.kernel.timeline`."""
    total = float(rows["kwh"].sum())
    if total <= 0:
        return display.say("slowed-nothing"), display.say("slowed-nothing-why")
    motor = Share(float(rows.loc[rows["meaning"] == "back", "share"].sum()))
    friction = rows[rows["meaning"] == "friction"]
    if len(friction):
        why = because(dict(zip(friction["limit"], friction["kwh"], strict=True)), display)
        title = display.say("slowed-friction-helps", motor=motor, why=why)
    else:
        title = display.say("slowed-motor-does", motor=motor)
    braked = Quantity(total, "kWh", places=places_for(total))
    return title, display.say("slowed-counted", slow_downs=len(slow_downs), braked=braked)


def over_time_words(timeline: pd.DataFrame, display: Display) -> tuple[str, str]:
    """What the battery does over the drive. `timeline` is from `model.kernel.timeline`."""
    first, last = 100 * timeline["soc"].iloc[0], 100 * timeline["soc"].iloc[-1]
    places = 0 if abs(first - last) >= 1 else 1
    minutes = timeline["step_s"] / 60
    title = display.say(
        "over-time-title",
        first=Quantity(first, "", places=places),
        last=Quantity(last, "%", places=places),
        minutes=Quantity(minutes.sum(), "minutes"),
        falls=bool(last < first),
    )
    gives, takes = timeline["battery_kw"].max(), -timeline["battery_kw"].min()
    sentences = [display.say("over-time-reaches", fastest=Quantity(timeline["speed_kmh"].max(), "km/h"))]
    if gives > 0:
        sentences.append(display.say("over-time-gives", power=Quantity(gives, "kW")))
    if takes > 0:
        taking = Quantity(minutes[timeline["battery_kw"] < 0].sum(), "minutes")
        sentences.append(display.say("over-time-takes", power=Quantity(takes, "kW"), minutes=taking))
    return title, " ".join(sentences)
