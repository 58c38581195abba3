"""The link: the scenario and how it is shown, read from the address and written back to it.

The address is what survives a reload, a sleeping tablet and Back. A page's own parameters (such as `panel`) stand in it
too; they belong to the page and are left alone here.
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import streamlit as st

from model import MODEL_VERSION
from model.describe.fields import InputError
from model.describe.scenario import SETTINGS, US_PRICES, YEAR_FIELDS, Scenario, with_prices_of
from model.describe.scenario_io import from_link, to_link
from model.words.quantities import Display
from model.words.refusals import refusal_words
from pages.parts import state

UNITS, VERSION = "units", "v"
"""How it is shown, and the version of the model that the link was made with."""
GUIDE = "guide"
"""The parameter with which Show is for who looks at it alone, and not for a showroom."""
PRICES_APART = frozenset({"0.1.0"})
"""Versions in whose links US units had no prices of their own: what such a link leaves out is as with metric units."""
STALE_S = 0.5
"""A browser sends along the address it had when something was pressed. For this long after an address was replaced [s],
meeting it again is such a straggler; later it is a step back."""
SCENARIO_KEYS = frozenset(SETTINGS) | {"car", "legs", "return_trip"}


def link_of(scenario: Scenario, display: Display) -> dict[str, str]:
    """The parameters that bring back a scenario and how it is shown, with the version of the model.

    With US units the prices stand in it even where they are as usual, so that each says itself what it means.
    """
    us = _price_texts({key: getattr(scenario.year, key) for key in US_PRICES}) | {UNITS: "us"}
    return to_link(scenario) | (us if display.us else {}) | {VERSION: MODEL_VERSION}


def _price_texts(prices: Mapping[str, Any]) -> dict[str, str]:
    return {key: YEAR_FIELDS[key].text(price) for key, price in prices.items()}


def parsed(link: Mapping[str, str], base: Scenario) -> tuple[Scenario | None, Display, list[InputError]]:
    """The scenario of a link (None where it carries none), how to show it, and what was refused of it.

    Prices that it does not say are those that are usual with its units, unless it says another currency.
    """
    shown = Display(us=link.get(UNITS) == "us")
    if SCENARIO_KEYS.isdisjoint(link):
        return None, shown, []
    dollars = _price_texts(US_PRICES)
    has_prices = shown.us and link.get(VERSION) not in PRICES_APART
    if has_prices and link.get("currency", dollars["currency"]) == dollars["currency"]:
        link = {**dollars, **link}
    scenario, notices = from_link(link, base)
    return scenario, shown, notices


def own_link() -> dict[str, str]:
    """The parameters for the session as it stands; give them to every link to another page."""
    return link_of(state.scenario(), state.display())


def ours(link: Mapping[str, str]) -> dict[str, str]:
    """The parameters that are not a page's own."""
    return {key: value for key, value in link.items() if key in SCENARIO_KEYS | {UNITS, VERSION}}


def read() -> None:
    """Take over what the address says, unless it says nothing or what this session wrote last."""
    link = ours(st.query_params.to_dict())
    st.session_state.setdefault("new_here", not link)
    moment, replaced = time.monotonic(), st.session_state.get("replaced_links", [])
    stale = any(link == old and moment - when < STALE_S for when, old in replaced)
    if not link or stale or link == st.session_state.get("written_link") or _known(link) in _left():
        return
    scenario, shown, notices = parsed(link, replace(Scenario(), legs=state.first_scenario().legs))
    st.session_state["display"] = shown
    _note(link)
    if scenario is None:
        # as where the units are chosen at the foot
        now = state.scenario()
        state.put(replace(now, year=with_prices_of(now.year, us=shown.us)))
    else:
        state.put_whole(scenario)
        st.session_state["link_notices"] = (scenario, notices, link.get(VERSION, MODEL_VERSION)[:20])


def new_here() -> bool:
    """Whether this session began without a drive of anybody's in the address."""
    return st.session_state["new_here"]


def write() -> None:
    """Put the session into the address, beside the page's own parameters."""
    now, link, moment = st.query_params.to_dict(), own_link(), time.monotonic()
    # noted first: writing the address may already end this run
    before, st.session_state["written_link"] = st.session_state.get("written_link"), link
    _note(link)
    if ours(now) == link:
        return
    recent = [(when, old) for when, old in st.session_state.get("replaced_links", []) if moment - when < STALE_S]
    st.session_state["replaced_links"] = [*recent, (moment, before), (moment, ours(now))]
    st.query_params.from_dict(link | {key: value for key, value in now.items() if key not in ours(now)})


def start_over() -> None:
    """Forget what was entered, and its addresses with it: a step back does not bring them up again.

    How figures are shown stays, and what the showroom set for itself: both go with the place, not with who is there.
    """
    kept = {key: st.session_state[key] for key in ("showroom", "own_prices") if key in st.session_state}
    shown, left = state.display(), _left() | st.session_state.get("own_links", set())
    customer = st.session_state.get("customer", 0) + 1
    st.session_state.clear()
    st.session_state.update(kept, display=shown, left_links=left, customer=customer)
    st.session_state["written_link"] = own_link()
    st.query_params.from_dict(own_link())


def _note(link: Mapping[str, str]) -> None:
    """Note an address as this visitor's."""
    st.session_state.setdefault("own_links", set()).add(_known(link))
    _left().discard(_known(link))


def _known(link: Mapping[str, str]) -> int:
    return hash(frozenset(link.items()))


def _left() -> set[int]:
    """Addresses that were left for good."""
    return st.session_state.setdefault("left_links", set())


def notices() -> list[str]:
    """What a link's values had to be changed to, until the visitor changes something."""
    scenario, refused, _ = st.session_state.get("link_notices", (None, [], ""))
    return [refusal_words(refusal, state.display()) for refusal in refused] if scenario == state.scenario() else []


def other_version() -> str:
    """The version of the model that the link was made with, if it is another, until the visitor changes something."""
    scenario, _, version = st.session_state.get("link_notices", (None, [], MODEL_VERSION))
    return version if version != MODEL_VERSION and scenario == state.scenario() else ""
