"""Charts as tests look at them."""

import altair
import pandas as pd

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.kernel.savings import evaluate
from model.traces.cycles import cycle_trace


def tables(spec):
    """What a chart draws, each part as a table."""
    return {name: pd.DataFrame(rows) for name, rows in spec["datasets"].items()}


def assert_valid(spec):
    """Hold a specification against the published schema of Vega-Lite; what it draws must be in its tables."""
    # Chart.from_dict would hold it against every other kind of chart first
    # the first rows of each table tell as much about its shape as all of them
    datasets = {name: table.head(2).to_dict("records") for name, table in tables(spec).items()}
    altair.LayerChart.from_dict(spec | {"datasets": datasets})
    for layer in spec["layer"]:
        name = layer["data"].get("name")
        if name is None:
            continue
        fields = {
            channel["field"]
            for channels in layer["encoding"].values()
            for channel in (channels if isinstance(channels, list) else [channels])
            if "field" in channel
        }
        assert fields <= set(tables(spec)[name].columns)


def boxes(spec, meaning=None):
    """The boxes set by hand in a picture; those of one meaning, where one is asked for."""
    table = tables(spec)["boxes"]
    return table if meaning is None else table[table["meaning"] == meaning]


def texts(spec):
    """All words set by hand in a picture."""
    return " | ".join(tables(spec)["words"]["text"])


def driven(trace=None, *, conditions=None, driver=None, **stated):
    """The result of a trace, of UDDS unless given, in a family hatch."""
    car = car_from("family-hatch", stated)
    return evaluate(trace or cycle_trace("udds"), car, conditions or Conditions(), driver or Driver())
