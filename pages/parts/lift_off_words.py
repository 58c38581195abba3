"""Lift-off in sentences from numbers: the advice, what it changes, leg by leg, on hills, and beside comfort."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby

import pandas as pd

from model.describe.scenario import Leg
from model.describe.units import GRAVITY_MPS2, KMH_PER_MPS
from model.lift_off.advice import Advice, Case, DriveAdvice
from model.lift_off.slowing import COMFORT_CONVENTIONS, lamp_zone_of, word_of
from model.words import lift_off as spoken
from model.words.quantities import Display, capital, number_text, percent_text
from pages.parts.wording import Told, counted, leg_words, together

NARROW = "\N{NO-BREAK SPACE}"
HARDLY = 0.005
"""A change of energy below this share is said to be hardly any [1]."""
LAMP_WORDS = {"not lit": "must not light", "may be lit": "may light", "lit": "must light"}
"""What UN R13-H says of the stop lamps, to read on after them."""
DECIDED_BY = {"grip": 0, "energy": 1, "preference": 2}
"""The place of the rule that decided, in their order."""
CAUTIONS = (
    "**Somebody close behind.** With the foot only partly lifted, the stop lamps of some cars stay dark. To warn "
    "whoever follows, press the brake pedal lightly.",
    "**Passengers.** Gentler slowing with fewer changes between pulling and slowing spares those who feel sick. Stop "
    "when somebody does.",
    "**Cancelling cruise control** is a foot that comes up: with a strong setting the car slows hard at once. Have the "
    "foot on the accelerator before you cancel.",
    "**A slippery road is no place to try a strong setting for the first time.** Try it on a dry and empty road. On "
    "snow and ice slow down earlier and more gently; advice differs by car, and the owner's manual comes first.",
    "**It can fade without notice**: with a full, cold or hot battery, when grip control steps in, and below walking "
    "pace. Keep the brake pedal within reach, and use it for hard stops. A motor does not hold a parked car.",
)
KINDS_TEXT = (
    "**As you would drive it**, the full line: the foot comes up where your habit lifts it, and the car slows as its "
    "lift-off makes it. This is what the foot changes; {driven}.\n\n"
    "**Same speeds**, the broken line: the speeds of your habit, whatever the strength. This is what the car changes; "
    "{same}, because {why}.\n\n"
    "Shaded in the energy: within 1 % of the best. The ruler shows what UN R13-H says of the stop lamps: they must not "
    "light up to 0.7, may from there to 1.3, and must above 1.3 m/s². That holds for cars under that regulation; other "
    "markets differ."
)
WHY_SAME = {
    "blended": "a blended brake pedal leaves the motor the same work either way",
    "friction": "the brake pedal works the discs alone, and only lifting off charges the battery",
}


def strength_text(mps2: float) -> str:
    """A strength with its unit."""
    return f"{mps2:g}{NARROW}m/s²"


def percent(share: float) -> str:
    """A share in percent."""
    return together(percent_text(share))


# the answer


def heading(advice: Advice, display: Display) -> str:
    """Word and number."""
    strength = spoken.strength(advice.lift_off_mps2)
    return together(display.say("advice-heading", word=spoken.word_id(advice.word), strength=strength))


def meaning(strength: float, display: Display) -> str:
    """A strength in other numbers, and the stop lamps at it."""
    lamps = f"Under UN R13-H the stop lamps {LAMP_WORDS[lamp_zone_of(strength)]}."
    if strength == 0:
        return f"Air and tyres alone slow the car. {lamps}"
    per_second = display.text(strength * KMH_PER_MPS, "km/h")
    return f"That is {strength / GRAVITY_MPS2:.2f}{NARROW}g: {per_second} less each second. {lamps}"


def advised(advice: Advice, display: Display) -> Told:
    """The strength advised with its reason and what it means, and with what holds on slippery roads."""
    reasons = because(advice, display), meaning(advice.lift_off_mps2, display)
    return Told(heading(advice, display), reasons, (slippery_text(advice, display),))


def because(advice: Advice, display: Display) -> str:
    """The fact that decided."""
    return together(spoken.because(advice.because, display))


def slippery_text(advice: Advice, display: Display) -> str:
    """What is advised in its place on snow and ice."""
    return together(spoken.on_slippery_roads(advice.slippery, display))


def too_much(yours: float, case: Case, display: Display) -> str:
    """A sentence where the strength now set breaks the rule of grip; else empty."""
    if yours <= case.grip_limit_mps2:
        return ""
    return together(display.say("advice-yours-asks-too-much", road=case.road, yours=spoken.strength(yours)))


def change_text(before: float, after: float) -> str:
    """A change of energy in words to read on after its subject."""
    if before == 0:
        return "has no share to tell"
    share = (after - before) / abs(before)
    if abs(share) < HARDLY:
        return "hardly changes"
    return f"{'rises' if share > 0 else 'falls'} by {percent(abs(share))}"


def pressed_text(before: float, after: float) -> str:
    """A change of the presses in words to read on after them."""
    if round(before) == round(after):
        return f"stay at {before:.0f}"
    return f"{'fall' if after < before else 'rise'} from {before:.0f} to {after:.0f}"


def axis_words(table: pd.DataFrame, advised: float, grip_limit: float) -> tuple[str, str]:
    """The finding over the axis of strengths, and a longer text of the picture. `table` is from `curve_table`."""
    end = advised or grip_limit
    rows = table.set_index("lift_off_mps2")
    first, last = rows.iloc[0], rows.loc[[end]].iloc[0]
    presses = pressed_text(first["as_driven_presses"], last["as_driven_presses"])
    energy = change_text(first["as_driven_net_kwh"], last["as_driven_net_kwh"])
    title = f"From 0 to {strength_text(end)}, presses {presses} and energy {energy}"
    if end == 0:
        title = "There is grip for no more than rolling on"
    ends = (table.iloc[0], table.iloc[-1])
    facts = [
        f"{words} {number_text(ends[0][key], 3)} {unit}at 0 and {number_text(ends[1][key], 3)} {unit}at "
        f"{strength_text(ends[1]['lift_off_mps2'])}"
        for words, key, unit in (
            ("battery energy as you would drive it", "as_driven_net_kwh", "kWh "),
            ("at the same speeds", "same_speeds_net_kwh", "kWh "),
            ("heat in the friction brakes as you would drive it", "as_driven_friction_kwh", "kWh "),
            ("at the same speeds", "same_speeds_friction_kwh", "kWh "),
            ("presses of the brake pedal as you would drive it", "as_driven_presses", ""),
            ("at the same speeds", "same_speeds_presses", ""),
        )
    ]
    alt = f"{title}. Over lift-off strength: {'; '.join(facts)}. Advised: {strength_text(advised)}."
    return title, alt


AXIS_COLUMNS = {
    "lift_off_mps2": ("Lift-off, m/s²", 1),
    "as_driven_net_kwh": ("Battery as driven, kWh", 3),
    "same_speeds_net_kwh": ("Battery, same speeds, kWh", 3),
    "as_driven_friction_kwh": ("Friction as driven, kWh", 3),
    "same_speeds_friction_kwh": ("Friction, same speeds, kWh", 3),
    "as_driven_presses": ("Presses as driven", 0),
    "same_speeds_presses": ("Presses, same speeds", 0),
    "mean_mps2": ("Mean slowing as driven, m/s²", 2),
    "high_mps2": ("95th percentile of slowing as driven, m/s²", 2),
    "reversals": ("Changes between pulling and slowing as driven", 0),
    "duration_s": ("Time as driven, s", 0),
    "word": ("Word", 0),
    "lamp_zone": ("Stop lamps under UN R13-H", 0),
}
"""Columns of the file, and their decimals."""
SHOWN_COLUMNS = 7
"""The first of them, those of the picture, stand on the page."""
SHOWN_GRADES_PCT = 2.0
"""The page shows every grade that is a multiple of this [%]; the file has all."""


def axis_table(table: pd.DataFrame) -> pd.DataFrame:
    """The curves over the axis for a reader. `table` is from `curve_table`."""
    rounded = table.round({key: digits for key, (_, digits) in AXIS_COLUMNS.items()})
    return rounded[list(AXIS_COLUMNS)].rename(columns={key: name for key, (name, _) in AXIS_COLUMNS.items()})


def hill_table(slowing: pd.DataFrame, names: Mapping[float, str]) -> pd.DataFrame:
    """Slowing over the grade, one column a strength. `slowing` is from `slowing_on_hills`."""
    columns = {strength: f"{capital(name)}, m/s²" for strength, name in names.items()}
    wide = slowing.pivot(index="grade_pct", columns="lift_off_mps2", values="slowing_mps2").round(2)
    return wide[list(names)].rename(columns=columns).rename_axis("Grade, %").reset_index()


def kinds_text(table: pd.DataFrame, pedal: str) -> str:
    """The two curves explained, with how far energy moves on each."""

    def moves(kind: str) -> str:
        net = table[f"{kind}_net_kwh"]
        share = (net.max() - net.min()) / max(abs(net.min()), 1e-9)
        return "energy hardly moves with it" if share < HARDLY else f"energy moves by up to {percent(share)}"

    return KINDS_TEXT.format(driven=moves("as_driven"), same=moves("same_speeds"), why=WHY_SAME[pedal])


# what it changes, and why

CHANGES = (
    ("net_kwh", "Energy from the battery"),
    ("presses", "Presses of the brake pedal"),
    ("friction_kwh", "Heat in the friction brakes"),
    ("mean_mps2", "Mean slowing"),
    ("high_mps2", "Slowing exceeded in 5 % of the time that the car slows"),
    ("reversals", "Changes between pulling and slowing"),
    ("duration_s", "Time"),
)


def value_text(key: str, value: float) -> str:
    """One figure of the comparison with its unit."""
    if key.endswith("_kwh"):
        return f"{number_text(value, 3 if key == 'net_kwh' else 2)}{NARROW}kWh"
    if key.endswith("_mps2"):
        return f"{value:.2f}{NARROW}m/s²"
    return f"{value / 60:.1f}{NARROW}min" if key == "duration_s" else f"{value:.0f}"


def changes(
    yours: Mapping[str, float], table: pd.DataFrame, advice: Advice, name: str
) -> tuple[str, pd.DataFrame]:
    """What the advised strength changes against what is set: the finding, and a table of words.

    `yours` is from `model.lift_off.curves.as_set`, `table` from `curve_table`; `name` says what is set.
    """
    advised = advice.lift_off_mps2
    row = table.set_index("lift_off_mps2").loc[[advised]].iloc[0]
    best = {key: float(row[key] if key in row else row[f"as_driven_{key}"]) for key, _ in CHANGES}
    words = pd.DataFrame(
        {
            "As you would drive it": [text for _, text in CHANGES],
            f"Yours, {name}": [value_text(key, yours[key]) for key, _ in CHANGES],
            f"Advised, {strength_text(advised)}": [value_text(key, best[key]) for key, _ in CHANGES],
        }
    )
    if name == strength_text(advised):
        return "Yours is what is advised", words
    if words.iloc[:, 1].equals(words.iloc[:, 2]):
        return "Yours changes nothing against what is advised", words
    energy = change_text(yours["net_kwh"], best["net_kwh"])
    presses = pressed_text(yours["presses"], best["presses"])
    price = ": the price of grip in reserve" if advice.rule == "grip" and best["net_kwh"] > yours["net_kwh"] else ""
    return f"With the advised strength presses {presses} and energy {energy}{price}", words


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
    return "\n".join(
        f"- {capital(together(spoken.supposed(one, display)))}: **{one.word}**, {strength_text(one.lift_off_mps2)}"
        for one in advice.what_if
    )


def others_text(advice: Advice, display: Display) -> str:
    """The nearest strength under each other word, and what speaks against it."""
    lines = []
    for other in advice.alternatives:
        share = other.energy_change_share
        energy = "" if share is None else f"{percent(abs(share))} {'more' if share > 0 else 'less'} energy, "
        if share is not None and abs(share) < HARDLY:
            energy = "about the same energy, "
        presses, minus = counted(other.presses, "press", "presses"), spoken.against(other, advice, display)
        lines.append(
            f"- **{capital(other.word)}**, {strength_text(other.lift_off_mps2)}: {energy}{presses}, "
            f"{number_text(other.friction_kwh)} kWh of friction heat. Against it: {minus}."
        )
    return together("\n".join(lines))


# leg by leg


def leg_notes(steps: pd.DataFrame, advice: DriveAdvice) -> list[tuple[float, float, str, str]]:
    """Stretches of the drive that are advised the same: from, to [km], the advice in words and in short.

    `steps` is from `model.kernel.timeline.timeline`.
    """
    strengths = [advice.legs[leg] for leg in steps["leg"]]
    ends = zip(steps["distance_km"], strengths, strict=True)
    notes, start = [], 0.0
    for strength, those in groupby(ends, key=lambda item: (item[1].lift_off_mps2, item[1].word)):
        end = float([place for place, _ in those][-1])
        notes.append((start, end, f"{strength[1]}, {strength_text(strength[0])}", f"{strength[0]:g}"))
        start = end
    return notes


def leg_line(place: int, leg: Leg, advice: Advice, display: Display) -> str:
    """One leg: the advice, the leg, and the deciding fact."""
    set_to = "" if leg.lift_off_mps2 is None else f" You set {strength_text(leg.lift_off_mps2)} here."
    return (
        f"**{place + 1}. {capital(advice.word)}, {strength_text(advice.lift_off_mps2)}:** {leg_words(leg, display)}. "
        f"{because(advice, display)}{set_to}"
    )


# hills


def hill_words(slowing: pd.DataFrame, strength: float, speed_kmh: float, display: Display) -> tuple[str, str]:
    """What a slope makes of a strength: the finding, and what it means."""
    by_grade = slowing[slowing["lift_off_mps2"] == strength].set_index("grade_pct")["slowing_mps2"]
    flat, down, up = (float(by_grade[grade]) for grade in (0.0, -6.0, 6.0))
    downhill = (
        f"{down:.1f} on a 6{NARROW}% downhill"
        if down > 0.05
        else f"not enough to hold the car on a 6{NARROW}% downhill"
    )
    title = f"{flat:.1f}{NARROW}m/s² on a flat road is {downhill} and {up:.1f} on a 6{NARROW}% climb"
    left = (
        f"Motor or grip leave {flat:.1f} of the {strength_text(strength)} that are set. "
        if strength - flat > 0.05
        else ""
    )
    sentences = left + (
        f"At {display.text(speed_kmh, 'km/h')}. The motor pulls as on a flat road and the hill adds its part, so that "
        "those behind see a different slowing, and by UN R13-H perhaps other stop lamps, than the setting says. Where "
        "a line crosses zero, lifting off just keeps the speed."
    )
    return title, sentences


def held_table(held: pd.DataFrame) -> pd.DataFrame:
    """What keeps the speed on each downhill, in words. `held` is from `model.lift_off.hills.held_downhills`."""
    return pd.DataFrame(
        {
            "Downhill": [f"{grade:g} %" for grade in held["grade_pct"]],
            "Held by": ["rolling" if pd.isna(s) else f"{s:.2f}{NARROW}m/s²" for s in held["lift_off_mps2"]],
            "Takes": [f"{kw:.0f}{NARROW}kW" for kw in held["asked_kw"]],
            "Motor can take": [
                f"{kw:.0f}{NARROW}kW" + ("" if enough else ": brake too")
                for kw, enough in zip(held["can_kw"], held["held"], strict=True)
            ],
        }
    )


def rolling_words(speeds_kmh: Sequence[float], grades_pct: Sequence[float], display: Display) -> str:
    """Downhills on which the rolling car keeps its speed."""
    parts = [
        f"{display.text(speed, 'km/h')} on {grade:.1f}{NARROW}%"
        for speed, grade in zip(speeds_kmh, grades_pct, strict=True)
    ]
    return (
        f"Rolling, with neither power nor slowing, this car keeps {', '.join(parts[:-1])} and {parts[-1]}. On a "
        "shallower downhill there is nothing to take back, so roll; on a steeper one the motor has something to hold."
    )


# comfort


def comfort_text(hard_mps2: float) -> str:
    """Slowing that people use as a reference, with sources, beside what the drive has."""
    lines = [f"- **{strength_text(slowing)}**: {what} ({source})." for slowing, what, source in COMFORT_CONVENTIONS]
    return "\n".join(
        (
            f"As you would drive it, one slowing second in twenty is harder than {hard_mps2:.1f}{NARROW}m/s². For "
            "comparison:\n",
            *lines,
            "\nConventions of road design, not limits of what passengers bear. For how abruptly slowing may come on "
            "no such figure was found that could be checked, so no rule here goes by it.",
        )
    )


def yours_name(strength: float, legs: Sequence[Leg]) -> str:
    """What is set: one strength, or one for some legs of their own."""
    own = any(leg.lift_off_mps2 is not None for leg in legs)
    return "by leg" if own else strength_text(strength)


def slider_label(strength: float) -> str:
    """The label of the strength's slider, with its word."""
    return f"Yours: {word_of(strength)}, {strength_text(strength)}"
