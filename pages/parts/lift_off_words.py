"""Lift-off in sentences from numbers: the advice, what it changes, leg by leg, and beside comfort."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby

import numpy as np
import pandas as pd

from model.describe.figures import Quantity, Several, Share
from model.describe.scenario import Leg
from model.describe.units import KMH_PER_MPS
from model.lift_off.advice import ENERGY_TIE, Advice, Case, DriveAdvice
from model.lift_off.slowing import COMFORT_CONVENTIONS, lamp_zone_of, word_of
from model.words import lift_off as spoken
from model.words.quantities import Display, Value, capital
from pages.parts.description import leg_words
from pages.parts.typography import together
from pages.parts.wording import Told

HARDLY = 0.005
"""A change of energy below this share is said to be hardly any [1]."""
DECIDED_BY = {"grip": 0, "energy": 1, "preference": 2}
"""The place of the rule that decided, in their order."""
CAUTIONS = ("caution-behind", "caution-passengers", "caution-cruise", "caution-slippery", "caution-fade")
"""The messages that tell what to mind."""


def strength_text(mps2: float, display: Display) -> str:
    """A strength with its unit."""
    return together(display.figure(spoken.strength(mps2)))


def strength_word(word: str, display: Display) -> str:
    """The word for a strength."""
    return display.say("lift-off-word", word=spoken.word_id(word))


def lamps_of(zone: str) -> str:
    """What UN R13-H says of the stop lamps, as messages choose by it."""
    return zone.replace(" ", "-")


# the answer


def heading(advice: Advice, display: Display) -> str:
    """Word and number."""
    strength = spoken.strength(advice.lift_off_mps2)
    return together(display.say("advice-heading", word=spoken.word_id(advice.word), strength=strength))


def meaning(strength: float, display: Display) -> str:
    """A strength in other numbers, and the stop lamps at it."""
    lamps = lamps_of(lamp_zone_of(strength))
    if strength == 0:
        return display.say("strength-zero", lamps=lamps, us=display.us)
    each = Quantity(strength * KMH_PER_MPS, "km/h")
    return together(display.say("strength-means", each=each, lamps=lamps, us=display.us))


def advised(advice: Advice, display: Display) -> Told:
    """The strength advised with its reason and what it means, and with what holds on slippery roads."""
    reasons = because(advice, display), meaning(advice.lift_off_mps2, display)
    return Told(heading(advice, display), reasons, (slippery_text(advice, display),))


def advised_in_words(advice: Advice, display: Display) -> Told:
    """The same for whoever reads in passing: the word alone as the title, without its figure."""
    caveats = advised(advice, display).caveats
    return Told(capital(spoken.in_words(advice, display)), (because(advice, display),), caveats)


def because(advice: Advice, display: Display, *, of: str = "drive") -> str:
    """The fact that decided, `of` the whole drive or of a leg alone."""
    return together(spoken.because(advice.because, display, of=of))


def slippery_text(advice: Advice, display: Display) -> str:
    """What is advised in its place on snow and ice."""
    return together(spoken.on_slippery_roads(advice.slippery, display))


def too_much(yours: float, case: Case, display: Display) -> str:
    """A sentence where the strength now set breaks the rule of grip; else empty."""
    if yours <= case.grip_limit_mps2:
        return ""
    return together(display.say("advice-yours-asks-too-much", road=case.road, yours=spoken.strength(yours)))


def moved_energy(before: float, after: float) -> dict[str, Value]:
    """How the energy changes, as messages take it."""
    if before == 0:
        return {"energy": "unknown", "share": Share(0.0)}
    share = (after - before) / abs(before)
    change = "hardly" if abs(share) < HARDLY else "rises" if share > 0 else "falls"
    return {"energy": change, "share": Share(abs(share))}


def moved_presses(before: float, after: float) -> dict[str, Value]:
    """How the presses of the brake pedal change, as messages take it."""
    first, last = round(before), round(after)
    change = "stay" if first == last else "fall" if after < before else "rise"
    return {"presses": change, "before": first, "after": last}


AXIS_FACTS = {
    "as_driven_net_kwh": "kWh",
    "same_speeds_net_kwh": "kWh",
    "as_driven_friction_kwh": "kWh",
    "same_speeds_friction_kwh": "kWh",
    "as_driven_presses": "",
    "same_speeds_presses": "",
}
"""The curves of the picture, and their units."""


def _place(table: pd.DataFrame, strength: float) -> int:
    """The row of a `curve_table` for a strength [m/s²]."""
    return int(np.flatnonzero(table["lift_off_mps2"].to_numpy() == strength)[0])


def axis_words(table: pd.DataFrame, advised: float, grip_limit: float, display: Display) -> tuple[str, str]:
    """The finding over the axis of strengths, and a longer text of the picture. `table` is from `curve_table`."""
    end = advised or grip_limit
    curves, place = {curve: table[curve].to_numpy() for curve in AXIS_FACTS}, _place(table, end)
    title = display.say("lift-off-axis-no-grip")
    if end != 0:
        presses, energy = (
            moved(curves[f"as_driven_{what}"][0], curves[f"as_driven_{what}"][place])
            for what, moved in (("presses", moved_presses), ("net_kwh", moved_energy))
        )
        net = curves["as_driven_net_kwh"]
        near = bool(net[place] <= net.min() + ENERGY_TIE * abs(net.min()))
        title = together(display.say("lift-off-axis", end=spoken.strength(end), near=near, **presses, **energy))
    strongest = spoken.strength(float(table["lift_off_mps2"].to_numpy()[-1]))
    facts = [
        display.say(
            "lift-off-axis-fact",
            curve=curve,
            first=Quantity(curves[curve][0], unit, 3),
            last=Quantity(curves[curve][-1], unit, 3),
            strength=strongest,
        )
        for curve, unit in AXIS_FACTS.items()
    ]
    joined, strength = Several(tuple(facts), ";"), spoken.strength(advised)
    return title, together(display.say("lift-off-axis-alt", title=title, facts=joined, advised=strength))


AXIS_PLACES = {
    "lift_off_mps2": 1,
    "as_driven_net_kwh": 3,
    "same_speeds_net_kwh": 3,
    "as_driven_friction_kwh": 3,
    "same_speeds_friction_kwh": 3,
    "as_driven_presses": 0,
    "same_speeds_presses": 0,
    "mean_mps2": 2,
    "high_mps2": 2,
    "reversals": 0,
    "duration_s": 0,
    "word": 0,
    "lamp_zone": 0,
}
"""Columns of the file, and their decimals."""
SHOWN_COLUMNS = 7
"""The first of them, those of the picture, stand on the page."""


def axis_table(table: pd.DataFrame, display: Display) -> pd.DataFrame:
    """The curves over the axis for a reader. `table` is from `curve_table`."""
    shown = table.round(AXIS_PLACES)[list(AXIS_PLACES)].assign(
        word=[strength_word(word, display) for word in table["word"]],
        lamp_zone=[display.say("stop-lamps", lamps=lamps_of(zone)) for zone in table["lamp_zone"]],
    )
    slowings = [column for column in AXIS_PLACES if column.endswith("_mps2")]
    if display.us:
        shown[slowings] = display.value(table[slowings], "m/s²").round(2)
    unit = display.unit("m/s²")
    names = {column: display.say("lift-off-column", column=column, unit=unit) for column in AXIS_PLACES}
    return shown.rename(columns=names)


def kinds_text(table: pd.DataFrame, pedal: str, display: Display) -> str:
    """The two curves explained, and whether energy moves on each."""

    def moves(kind: str) -> str:
        net = table[f"{kind}_net_kwh"]
        share = float((net.max() - net.min()) / max(abs(net.min()), 1e-9))
        return "hardly" if share < HARDLY else "moves"

    return together(
        display.say("lift-off-kinds", driven=moves("as_driven"), same=moves("same_speeds"), pedal=pedal)
    )


# what it changes, and why

CHANGES = ("net_kwh", "presses", "friction_kwh", "mean_mps2", "high_mps2", "reversals", "duration_s")


def value_text(key: str, value: float, display: Display) -> str:
    """One figure of the comparison with its unit."""
    if key.endswith("_kwh"):
        figure = Quantity(value, "kWh", 3 if key == "net_kwh" else 2)
    elif key.endswith("_mps2"):
        figure = Quantity(value, "m/s²", places=2)
    else:
        figure = Quantity(value / 60, "min", places=1) if key == "duration_s" else Quantity(value, "", places=0)
    return together(display.figure(figure))


def changes(
    yours: Mapping[str, float], table: pd.DataFrame, advice: Advice, name: str, display: Display
) -> tuple[str, pd.DataFrame]:
    """What the advised strength changes against what is set: the finding, and a table of words.

    `yours` is from `model.lift_off.curves.as_set`, `table` from `curve_table`; `name` says what is set.
    """
    advised, say = advice.lift_off_mps2, display.say
    columns = {key: key if key in table else f"as_driven_{key}" for key in CHANGES}
    best = {key: float(table[column].to_numpy()[_place(table, advised)]) for key, column in columns.items()}
    strength = strength_text(advised, display)
    words = pd.DataFrame(
        {
            say("lift-off-change-figures"): [say("lift-off-change", figure=key) for key in CHANGES],
            say("lift-off-change-yours", name=name): [value_text(key, yours[key], display) for key in CHANGES],
            say("lift-off-change-advised", strength=strength): [value_text(key, best[key], display) for key in CHANGES],
        }
    )
    if name == strength:
        return say("lift-off-yours-is-advised"), words
    if words.iloc[:, 1].equals(words.iloc[:, 2]):
        return say("lift-off-yours-changes-nothing"), words
    energy = moved_energy(yours["net_kwh"], best["net_kwh"])
    presses = moved_presses(yours["presses"], best["presses"])
    grip = advice.rule == "grip" and best["net_kwh"] > yours["net_kwh"]
    return together(say("lift-off-with-advised", grip=grip, **presses, **energy)), words


def rules_text(advice: Advice, display: Display) -> str:
    """The rules in their order; the one that decided in bold."""
    rules = spoken.rules(display)
    decided = DECIDED_BY[advice.rule]
    rules[decided] = display.say("rule-that-decided", rule=rules[decided])
    return "\n".join(f"{place}. {together(rule)}" for place, rule in enumerate(rules, 1))


def what_if_text(advice: DriveAdvice, display: Display) -> str:
    """What would change the advice, and to what."""
    if not advice.what_if:
        return display.say("nothing-would-change-it")
    lines = [
        display.say(
            "lift-off-if",
            supposed=capital(spoken.supposed(change, display)),
            word=strength_word(change.word, display),
            strength=spoken.strength(change.lift_off_mps2),
        )
        for change in advice.what_if
    ]
    return together("\n".join(f"- {line}" for line in lines))


def others_text(advice: Advice, display: Display) -> str:
    """The nearest strength under each other word, and what speaks against it."""
    lines = []
    for other in advice.alternatives:
        share = other.energy_change_share
        energy = "unknown" if share is None else "more" if share > 0 else "less"
        if share is not None and abs(share) < HARDLY:
            energy = "alike"
        line = display.say(
            "lift-off-other",
            energy=energy,
            share=Share(abs(share or 0.0)),
            word=capital(strength_word(other.word, display)),
            strength=spoken.strength(other.lift_off_mps2),
            presses=other.presses,
            heat=Quantity(other.friction_kwh, "kWh"),
            against=spoken.against(other, advice, display),
        )
        lines.append(f"- {line}")
    return together("\n".join(lines))


# leg by leg


def advice_text(word: str, mps2: float, display: Display) -> str:
    """An advice in few words, such as “firm, 1 m/s²”."""
    return together(display.say("advised-strength", word=spoken.word_id(word), strength=spoken.strength(mps2)))


def leg_notes(
    steps: pd.DataFrame, advice: DriveAdvice, display: Display
) -> list[tuple[float, float, str, str]]:
    """Stretches of the drive that are advised the same: from, to [km], the advice in words and in short.

    `steps` is from `model.kernel.timeline.timeline`.
    """
    legs = steps["leg"].to_numpy()
    last = np.flatnonzero(np.diff(legs, append=-1))
    ends = zip(steps["distance_km"].to_numpy()[last].tolist(), [advice.legs[leg] for leg in legs[last]], strict=True)
    notes, start = [], 0.0
    for (mps2, word), those in groupby(ends, key=lambda item: (item[1].lift_off_mps2, item[1].word)):
        end = [place for place, _ in those][-1]
        short = display.figure(spoken.bare_strength(mps2))
        whole = display.say("advised-on-part", strength=advice_text(word, mps2, display))
        notes.append((start, end, together(whole), short))
        start = end
    return notes


def leg_lines(legs: Sequence[Leg], advice: Sequence[Advice], display: Display) -> list[str]:
    """Leg by leg the advice, the legs it holds for, and the deciding fact; those with the same are told once."""
    alike: dict[tuple[str, str, str], list[int]] = {}
    for place, (leg, leg_advice) in enumerate(zip(legs, advice, strict=True)):
        own = leg.lift_off_mps2
        set_here = "" if own is None else display.say("lift-off-leg-set", strength=spoken.strength(own))
        heading_there = capital(advice_text(leg_advice.word, leg_advice.lift_off_mps2, display))
        alike.setdefault((heading_there, because(leg_advice, display, of="leg"), together(set_here)), []).append(place)
    return [
        " ".join(filter(None, (
            display.say(
                "lift-off-leg-advice", advice=advised_there, because=why,
                legs=Several(tuple(str(place + 1) for place in places)),
                described=Several(tuple(leg_words(legs[place], display) for place in places), ";"),
            ),
            set_here,
        )))
        for (advised_there, why, set_here), places in alike.items()
    ]  # fmt: skip


# comfort


def comfort_text(hard_mps2: float, display: Display) -> str:
    """Slowing that people use as a reference, with sources, beside what the drive has."""
    first = display.say("comfort-of-drive", hard=Quantity(hard_mps2, "m/s²", places=1))
    lines = [
        f"- {display.say('comfort-convention', strength=spoken.strength(slowing), what=what, source=source)}"
        for slowing, what, source in COMFORT_CONVENTIONS
    ]
    return together("\n".join((f"{first}\n", *lines, f"\n{display.say('comfort-conventions')}")))


def cautions(display: Display) -> list[str]:
    """What to mind."""
    return [display.say(name) for name in CAUTIONS]


def yours_name(strength: float, legs: Sequence[Leg], display: Display) -> str:
    """What is set: one strength, or one for some legs of their own."""
    own = any(leg.lift_off_mps2 is not None for leg in legs)
    return display.say("compare-strengths-of-legs") if own else strength_text(strength, display)


def slider_label(strength: float, display: Display) -> str:
    """The label of the strength's slider, with its word."""
    word = strength_word(word_of(strength), display)
    return together(display.say("lift-off-yours", word=word, strength=spoken.strength(strength)))
