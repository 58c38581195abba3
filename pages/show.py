"""Three cards to hold towards somebody: one number, one setting, one caveat."""

from __future__ import annotations

from html import escape

import streamlit as st

from pages.parts import state, wording
from pages.parts.link import own_link

CARD = "card"
"""The page's own parameter in the address: which card, from 1."""


def cards() -> list[wording.Card]:
    """The cards for the session's scenario; one with the refusal where there is no answer."""
    scenario, display, bands = state.scenario(), state.display(), state.answer()
    if bands is None:
        return [wording.Card("This drive cannot be driven as described", (state.outcome().refusal,))]
    return [
        wording.number_card(bands, scenario, display),
        wording.setting_card(scenario),
        wording.caveat_card(state.year(), display),
    ]


def turn(to: int) -> None:
    """Show another card."""
    st.query_params[CARD] = str(to)


shown = cards()
asked = st.query_params.get(CARD, "1")
number = min(max(int(asked), 1), len(shown)) if asked.isdecimal() else 1
card = shown[number - 1]
with st.container(key="show"):
    with st.container(key="card", gap="small"):
        st.title(card.title, anchor=False)
        st.html("".join(f"<p>{escape(sentence)}</p>" for sentence in card.sentences))
    with st.container(key="show-foot", gap="small"):
        with st.container(horizontal=True, wrap=False, horizontal_alignment="distribute", vertical_alignment="center"):
            st.button("Back", key="show-back", shortcut="Left", disabled=number == 1, on_click=turn, args=(number - 1,))
            st.markdown(f"{number} of {len(shown)}", width="content")
            st.page_link("your_drive.py", label="Close", query_params=own_link())
            st.button("Next", key="show-next", type="primary", shortcut="Right", disabled=number == len(shown),
                      on_click=turn, args=(number + 1,))  # fmt: skip
        st.markdown(wording.CAUTION)
