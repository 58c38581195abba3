"""A recorded drive over time: what it took of the battery, measured beside modelled."""

from __future__ import annotations

import pandas as pd

from model.words.quantities import Display
from pages.parts.charts.layers import along, layer, line, thinned
from pages.parts.theme import Spec, dressed, palette

HEIGHT_PX = 260


def energy_chart(table: pd.DataFrame, display: Display, dark: bool = False) -> Spec:
    """Net energy from the start over time, one line or two, each named at its end.

    Parameters
    ----------
    table : DataFrame
        Of `model.out.recorded.energy_over_time`.
    display : Display
        The reader's language.
    dark : bool
        Whether the ground is dark.
    """
    colours = palette(dark)
    columns = [name for name in ("measured_kwh", "modelled_kwh") if name in table]
    rows = table.iloc[thinned(table, "minutes", columns)].round(4)
    end = float(table["minutes"].iloc[-1])
    x = along("minutes", end, "min")
    low, high = min(0.0, float(rows[columns].min().min())), max(0.1, float(rows[columns].max().max())) * 1.12
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
                  dy=-12 if table[name].iloc[-1] >= table[columns].iloc[-1].max() else 14)
        )  # fmt: skip
    return dressed(layers, {"rows": rows[["minutes", *columns]], "ends": pd.DataFrame(ends)}, HEIGHT_PX, dark)
