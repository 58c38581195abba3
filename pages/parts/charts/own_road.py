"""A recorded drive over time: what it took of the battery, measured beside modelled."""

from __future__ import annotations

from collections.abc import Sequence

import pandas as pd

from model.words.quantities import Display
from pages.parts.charts.layers import along, caption, layer, line, next_step, thinly, thinned
from pages.parts.theme import Spec, dressed, palette

HEIGHT_PX = 260


ROW_PX = 30
"""Height of a bar with its room."""


def residual_chart(labels: Sequence[str], more_kwh: Sequence[float], dark: bool = False) -> Spec:
    """Modelled less measured net energy [kWh], a bar each from a line at nothing; what is more goes to the right."""
    colours = palette(dark)
    rows = pd.DataFrame({"label": list(labels), "more_kwh": list(more_kwh), "none": 0.0})
    end = max(float(rows["more_kwh"].abs().max()) * 1.1, 0.01)
    x = {"field": "more_kwh", "type": "quantitative", "scale": {"domain": [-end, end], "nice": False},
         "axis": {"labelExpr": "format(datum.value, '+~g') + ' kWh'", "tickCount": 4}}  # fmt: skip
    y = {"field": "label", "type": "nominal", "sort": None, "axis": {"labelLimit": 160}}
    layers = [
        layer("rows", "bar", {"x": x, "y": y}, color=colours.ink, height={"band": 0.6}),
        layer("rows", "rule", {"x": x | {"field": "none"}}, color=colours.quiet),
    ]
    return dressed(layers, {"rows": rows.round(4)}, ROW_PX * len(rows) + 20, dark)


def slow_downs_chart(table: pd.DataFrame, display: Display, dark: bool = False) -> Spec:
    """What each slow-down put back [Wh]: measured to the right, modelled upwards, and the line where both are alike.

    The table is of `model.out.residuals.by_slow_down`.
    """
    colours = palette(dark)
    rows = thinly(table[["measured_wh", "modelled_wh"]].sort_values("measured_wh"), 300)
    end = next_step(float(rows.max().max()), 20.0)
    x = along("measured_wh", end, "Wh")
    y = {"field": "modelled_wh", "type": "quantitative", "scale": {"domain": [0, end], "nice": False},
         "axis": {"labelExpr": "format(datum.value, '~g') + ' Wh'", "tickCount": 4}}  # fmt: skip
    alike = pd.DataFrame({"measured_wh": [0.0, end], "modelled_wh": [0.0, end]})
    layers = [
        line("alike", x, y, colours.quiet, [4, 3], 1),
        layer("rows", "point", {"x": x, "y": y}, color=colours.back, size=40),
        caption(display.say("own-road-above-the-line"), 8, 12, align="left", color=colours.quiet),
    ]
    return dressed(layers, {"rows": rows, "alike": alike}, HEIGHT_PX, dark)


def energy_chart(table: pd.DataFrame, display: Display, dark: bool = False) -> Spec:
    """Net energy from the start over time, one line or two, each named at its end.

    The table is of `model.out.recorded.energy_over_time`.
    """
    colours = palette(dark)
    columns = [name for name in ("measured_kwh", "modelled_kwh") if name in table]
    end = float(table["minutes"].iloc[-1])
    x = along("minutes", end, "min")
    low, high = min(0.0, float(table[columns].min().min())), max(0.1, float(table[columns].max().max())) * 1.12
    rows = table.iloc[thinned(table, "minutes", dict.fromkeys(columns, (high - low) / HEIGHT_PX))].round(4)
    looks = {"measured_kwh": (colours.ink, [6, 3], "own-road-of-measured"),
             "modelled_kwh": (colours.back, [1, 0], "own-road-of-model")}  # fmt: skip
    layers, ends = [], []
    for name in columns:
        colour, dash, said = looks[name]
        y = {
            "field": name, "type": "quantitative", "scale": {"domain": [low, high], "nice": False},
            "axis": {"labelExpr": "format(datum.value, '~g') + ' kWh'", "tickCount": 4} if name == columns[0] else None,
        }  # fmt: skip
        layers.append(line("rows", x, y, colour, dash))
        ends.append({"minutes": end, name: float(table[name].iloc[-1]), f"{name} text": display.say(said)})
        layers.append(
            layer("ends", "text", {"x": x, "y": y | {"axis": None}, "text": {"field": f"{name} text"}},
                  align="right", color=colour,
                  dy=-16 if table[name].iloc[-1] >= table[columns].iloc[-1].max() else 20)
        )  # fmt: skip
    return dressed(layers, {"rows": rows[["minutes", *columns]], "ends": pd.DataFrame(ends)}, HEIGHT_PX, dark)
