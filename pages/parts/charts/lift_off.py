"""The whole axis of lift-off strengths in a picture."""

from __future__ import annotations

import numpy as np
import pandas as pd

from model.describe.figures import Quantity
from model.describe.trace import Array
from model.lift_off.slowing import LAMP_LIT_ABOVE_MPS2, LAMP_OFF_UP_TO_MPS2
from model.words.lift_off import bare_strength
from model.words.quantities import Display
from pages.parts.charts.layers import (
    ASIDE,
    PX_X,
    PX_Y,
    along_held,
    between,
    by_name,
    layer,
    line,
    next_step,
    upright,
    where,
    words,
)
from pages.parts.theme import Palette, Rows, Spec, dressed, palette

STRONGEST = 2.5
"""Where the axis of strengths ends [m/s²]."""
KINDS = {"as_driven": [1, 0], "same_speeds": [4, 3]}
"""The two curves, and their dash."""
ZONES = (
    (0.0, LAMP_OFF_UP_TO_MPS2, "gentle", "not-lit"),
    (LAMP_OFF_UP_TO_MPS2, LAMP_LIT_ABOVE_MPS2, "firm", "may-be-lit"),
    (LAMP_LIT_ABOVE_MPS2, STRONGEST, "strong", "lit"),
)
"""From, to [m/s²], the word for the strength, and what UN R13-H says of the stop lamps there."""


RULER_PX, ADVISED_PX = 44, 60
PANELS = {
    "presses": (82, 76),
    "net_kwh": (184, 20),
    "friction_kwh": (230, 20),
}
"""Top and height of each panel [px]: what is felt most has the most room, and none's words meet another's."""
TOP_PX, FOOT_PX = 82, 251
AXIS_PX = FOOT_PX + 14
KEY_PX = {"as_driven": 0, "same_speeds": 170}
"""Where the samples of the two curves begin [px]; both fit a telephone."""
LATE_MPS2 = 1.5
"""From here on words stand to the left of what they name [m/s²]."""
LEAST_SPAN = 0.1
"""The axis of energy spans at least this share of it, so that a trifle looks like one [1]."""


def energy_span(table: pd.DataFrame) -> list[float]:
    """The ends of the energy axis [kWh], at figures so round that they stand still a while."""
    low, high = (float(end(_both(table, "net_kwh"))) for end in (np.min, np.max))
    high = max(high, low + LEAST_SPAN * abs(low), low + 0.01)
    step = max(0.01, 10 ** np.floor(np.log10(high - low)) / 2)
    return [float(np.floor(low / step) * step), float(np.ceil(high / step) * step)]


def whole_axis(
    table: pd.DataFrame,
    tie_kwh: tuple[float, float],
    grip_limit: float,
    advised: float,
    yours: float,
    display: Display,
    dark: bool = False,
) -> Spec:
    """Energy, friction heat and presses of the brake pedal over lift-off strength, as driven and at the same speeds.

    Parameters
    ----------
    table : DataFrame
        Of `model.lift_off.curves.curve_table`.
    tie_kwh : tuple
        The best energy and the most that counts as equal [kWh].
    grip_limit : float
        The most that the rule of grip leaves [m/s²].
    advised, yours : float
        Strengths to mark [m/s²]; one beyond the axis is marked at its end.
    """
    colours = palette(dark)
    x = along_held("lift_off_mps2", STRONGEST, "m/s²", 90, display)
    domains = {
        "net_kwh": energy_span(table),
        "friction_kwh": [0.0, next_step(float(_both(table, "friction_kwh").max()), 0.05)],
        "presses": [0.0, next_step(float(_both(table, "presses").max()), 10)],
    }
    ups: dict[str, Spec] = {}
    for key, (top, height) in PANELS.items():
        energy = key == "net_kwh"
        ticks = {
            end: display.figure(Quantity(end, "", places=2) if energy else Quantity(end, "", 6, trimmed=True))
            for end in domains[key]
        }
        ups[key] = upright("y", domains[key], [top + height, top], ticks)

    layers = _marked_strengths(colours, x, grip_limit, display)
    tie = {"y": ups["net_kwh"] | {"axis": None}, "y2": {"field": "y2"}}
    layers.append(layer("tie", "rect", tie, color=colours.wash))
    for key in PANELS:
        for kind, dash in KINDS.items():
            driven = kind == "as_driven"
            colour = colours.friction if key == "friction_kwh" else colours.ink if driven else colours.quiet
            y = ups[key] | {"field": f"{kind}_{key}"} | ({} if driven else {"axis": None})
            layers.append(line("curves", x, y, colour, dash, 2.5 if driven else 2))
    layers += _chosen(colours, x) + _words(colours)
    texts: list[Spec] = [
        {"x": 4, "y": top - 8, "text": display.say("lift-off-panel", panel=key)} for key, (top, _) in PANELS.items()
    ]
    texts += [
        {"x": start + 25, "y": 5, "text": display.say("lift-off-curve", kind=kind)} for kind, start in KEY_PX.items()
    ]
    chosen = [
        {
            "at": min(strength, STRONGEST),
            "what": what,
            "text": display.say("lift-off-name", kind=what, strength=bare_strength(strength)),
            "late": bool(strength > LATE_MPS2),
        }
        for what, strength in (("advised", advised), ("yours", yours))
    ]
    zones = [
        {"lift_off_mps2": start, "end": end, "kind": word, "word": display.say("lift-off-word", word=word),
         "lamps": display.say("lift-off-ruler", zone=lamps)}
        for start, end, word, lamps in ZONES
    ]  # fmt: skip
    drawn = "lift_off_mps2", *(f"{kind}_{key}" for kind in KINDS for key in PANELS)
    late = bool(grip_limit > LATE_MPS2)
    over = {"lift_off_mps2": grip_limit, "end": STRONGEST, "late": late, "at": STRONGEST if late else grip_limit}
    datasets: dict[str, Rows] = {
        "curves": {name: np.round(table[name].to_numpy(), 4) for name in drawn},
        "tie": [{"y": tie_kwh[0], "y2": min(tie_kwh[1], domains["net_kwh"][1])}],
        "chosen": chosen,
        "words": texts,
        "key": [{"x": start, "x2": start + 20, "y": 5, "kind": kind} for kind, start in KEY_PX.items()],
        "zones": zones,
        "grip": [over],
    }
    return dressed(layers, datasets, AXIS_PX, dark)


def _both(table: pd.DataFrame, key: str) -> Array:
    return np.concatenate([table[f"{kind}_{key}"].to_numpy() for kind in KINDS])


def _marked_strengths(colours: Palette, x: Spec, grip_limit: float, display: Display) -> list[Spec]:
    """The zones of the stop lamps as a ruler with the words for strengths, and where grip forbids more."""
    colour = dict(zip((word for _, _, word, _ in ZONES), (colours.ground, colours.wash, colours.quiet), strict=True))
    zone = {"x": x, "x2": {"field": "end"}}
    ruler = zone | between(RULER_PX, RULER_PX + 7) | {"fill": by_name("kind", colour)}
    layers = [
        layer("zones", "rect", ruler, stroke=colours.quiet, strokeWidth=1),
        words("zones", x, {"value": 20}, "word", xOffset=4, fontWeight=600),
        words("zones", x, {"value": 36}, "lamps", xOffset=4, fontWeight=400),
        {"transform": [{"filter": "datum.lift_off_mps2 > 0"}]}
        | layer("zones", "rule", {"x": x} | between(RULER_PX + 7, FOOT_PX), color=colours.quiet, strokeDash=[1, 3]),
    ]
    if grip_limit < STRONGEST:
        text = {"value": display.say("lift-off-over-grip")}
        over = {"x": x | {"field": "at"}, "y": {"value": TOP_PX + 9}, "text": text}
        layers += [
            layer("grip", "rect", zone | between(TOP_PX, FOOT_PX), color=colours.wash, opacity=0.6),
            layer("grip", "text", over, **ASIDE),
        ]
    return layers


def _chosen(colours: Palette, x: Spec) -> list[Spec]:
    """The advised strength as a full line with its name above, the visitor's as a dotted one with its name below."""
    layers: list[Spec] = []
    looks: dict[str, tuple[float, float, Spec, float, int]] = {
        "advised": (ADVISED_PX - 9, FOOT_PX, {"strokeWidth": 2.5}, ADVISED_PX, 600),
        "yours": (TOP_PX, AXIS_PX, {"strokeWidth": 2, "strokeDash": [2, 3]}, FOOT_PX + 7, 400),
    }
    at = x | {"field": "at"}
    for what, (start, end, look, y, weight) in looks.items():
        layers += [
            where("what", what) | layer("chosen", "rule", {"x": at} | between(start, end), color=colours.ink, **look),
            where("what", what) | words("chosen", at, {"value": y}, **ASIDE, fontWeight=weight),
        ]
    return layers


def _words(colours: Palette) -> list[Spec]:
    """The titles of the panels, and the names of the two curves beside a sample of each."""
    colour = by_name("kind", dict(zip(KINDS, (colours.ink, colours.quiet), strict=True)))
    look = {"color": colour, "strokeDash": by_name("kind", KINDS)}
    return [
        layer("key", "rule", {"x": PX_X, "x2": {"field": "x2"}, "y": PX_Y} | look, strokeWidth=2.5),
        # a rim of ground keeps the lines behind the letters apart from them
        words("words", PX_X, PX_Y, stroke=colours.ground, strokeWidth=5),
        words("words", PX_X, PX_Y),
    ]
