"""A picture of a range figure on its way from the test to the road, step by step."""

from __future__ import annotations

from model.describe.figures import Quantity
from model.sampling.range_figure import RangeOnRoad, Step
from model.words.quantities import Display, Value, span_of
from pages.parts.charts.claims import GAP_PX, MARK_PX, TICKS_PX, Axis, wrapped
from pages.parts.charts.layers import next_step
from pages.parts.charts.marks import Box, Words, drawn
from pages.parts.theme import LINE_PX, Spec

STEP_MEANINGS = {"speeds": "road", "hills": "road", "load": "road", "weather": "road", "cabin": "aboard"}


def step_text(step: Step, display: Display) -> str:
    """What a step costs, in words."""
    cost = step.middle_cost_km
    if abs(cost) < 0.5:
        return display.say("road-row-nothing", step=step.id)
    change = "less" if cost > 0 else "more"
    said: dict[str, Value] = {"step": step.id, "change": change, "cost": Quantity(abs(cost), "km")}
    if step.cost_km.low * step.cost_km.high <= 0:
        return display.say("road-row-changes", **said)
    # the unit stands with the cost
    ends = sorted(float(display.value(abs(end), "km")) for end in (step.cost_km.low, step.cost_km.high))
    return display.say("road-row-changes-band", least=Quantity(ends[0], ""), most=Quantity(ends[1], ""), **said)


def to_road(found: RangeOnRoad, label: str, display: Display, dark: bool = False) -> Spec:
    """From the printed range down to the one on the drive, step by step; bands as thin lines, all from zero."""

    def shown(km: float) -> float:
        return float(display.value(km, "km"))

    ends = [found.test_range_km, *(step.range_km.high for step in found.steps)]
    most = next_step(max(map(shown, ends)), 50)
    boxes, words, y = [], [], 0.0

    def row(text: str, bold: bool, *marks: tuple[float, float, str, float]) -> None:
        nonlocal y
        lines = wrapped(text)
        words.append(Words("\n".join(lines), 0, y + LINE_PX / 2, "start", bold=bold))
        y += len(lines) * LINE_PX + 2
        for low, high, meaning, thick in marks:
            boxes.append(Box(low, high, y + (MARK_PX - thick) / 2, y + (MARK_PX + thick) / 2, meaning))
        y += MARK_PX + GAP_PX

    printed = Quantity(found.test_range_km, "km", 3)
    row(display.say("road-row-printed", on=label, printed=printed, entered=found.printed), True,
        (0, shown(found.test_range_km), "quiet", MARK_PX))  # fmt: skip
    before = found.test_range_km
    for step in found.steps:
        after = step.middle_range_km
        low, high = sorted((shown(before), shown(after)))
        row(step_text(step, display), False, (low, max(high, low + most * 0.003), STEP_MEANINGS[step.id], MARK_PX))
        before = after
    band, middle = found.range_km, found.middle_range_km
    own = display.say("road-row-own", band=span_of(band, "km"), middle=Quantity(middle, "km", 3))
    row(own, True,
        (0, shown(middle), "ink", MARK_PX), (shown(band.low), shown(band.high), "quiet", 3))  # fmt: skip
    axis, numbers = Axis(0.0, most, display.unit("km")).line(y)
    return drawn([*boxes, *axis], [*words, *numbers], int(y + TICKS_PX), most, dark)
