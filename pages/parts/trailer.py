"""The trailer: its mass, and where there is one what it adds to the drag. One control, on every page it is about."""

from __future__ import annotations

from collections.abc import Callable

import streamlit as st

from model.describe.figures import Quantity
from model.describe.scenario import CONDITION_FIELDS
from pages.parts import redrawn, state
from pages.parts.controls import side_by_side


def draw_trailer(beside: Callable[[], None] | None = None) -> None:
    """Mass of a trailer, 0 for none, and its drag area; then what stands beside it, or below."""
    redrawn.stands(lambda: bool(state.scenario().conditions.trailer_kg))
    if not state.scenario().conditions.trailer_kg:
        if not beside:
            side_by_side(CONDITION_FIELDS["trailer_kg"])
            return
        left, right = st.columns(2, wrap=False)
        with left:
            side_by_side(CONDITION_FIELDS["trailer_kg"])
        with right:
            beside()
        return
    side_by_side(CONDITION_FIELDS["trailer_kg"], CONDITION_FIELDS["trailer_drag_area_m2"])
    none, box, caravan = Quantity(0, "kg"), Quantity(0.5, "m²", trimmed=True), Quantity(2, "m²", trimmed=True)
    st.caption(state.display().say("trailer-help", none=none, box=box, caravan=caravan))
    if beside:
        beside()
