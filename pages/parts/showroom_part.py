"""The showroom's own settings on the first card, and its cars to be picked from."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from urllib.parse import urlencode

import streamlit as st

from model.describe.brought import one_line
from pages.parts import showroom, state
from pages.parts.plain_text import inert
from pages.parts.public_link import public_base
from pages.parts.showroom import MOST_LETTERS, SHOWROOM, HouseCar, Showroom


def draw_settings() -> None:
    """Behind one word: the name line, the cars, the prices, the link to keep, and a way to forget it all."""
    say, here = state.display().say, showroom.current()
    with st.popover(say("showroom"), type="tertiary", key="showroom-settings"):
        st.markdown(say("showroom-kept"))
        st.session_state["showroom-line"] = here.line
        st.text_input(say("showroom-line"), key="showroom-line", max_chars=MOST_LETTERS, on_change=_take_line)
        st.text_input(say("showroom-car"), key="showroom-car", max_chars=MOST_LETTERS)
        st.button(say("showroom-add-car"), key="showroom-add", on_click=_add, width="stretch")
        for place, car in enumerate(here.cars):
            st.button(inert(say("showroom-remove", car=car.name)), key=f"showroom-remove-{place}",
                      icon=":material/close:", on_click=partial(_remove, place), width="stretch")  # fmt: skip
        st.button(say("showroom-prices"), key="showroom-prices", on_click=showroom.take_prices, width="stretch")
        if here.prices:
            prices = dict(here.prices)
            values = {"currency": str(prices["currency"]), "price": f"{prices['price_per_kwh']:g}"}
            st.caption(inert(say("showroom-prices-kept", **values)))
        if st.session_state.get("showroom-too-much"):
            st.error(say("showroom-too-much"))
        if text := here.text():
            st.markdown(say("showroom-link"))
            base = public_base() or (st.context.url or "").partition("/show")[0]
            st.code(f"{base}/show?{urlencode({SHOWROOM: text})}", language=None, wrap_lines=True)
            st.button(say("showroom-forget"), key="showroom-forget", on_click=showroom.keep, args=(Showroom(),))


def _take_line() -> None:
    showroom.keep(replace(showroom.current(), line=one_line(st.session_state["showroom-line"])))


def _add() -> None:
    showroom.add_car(st.session_state["showroom-car"])
    st.session_state["showroom-car"] = ""


def _remove(place: int) -> None:
    here = showroom.current()
    showroom.keep(replace(here, cars=here.cars[:place] + here.cars[place + 1 :]))


def pick_car() -> None:
    """The showroom's cars, one tap each; nothing where there are none."""
    cars = {car.name: car for car in showroom.current().cars}
    if not cars:
        return
    now = state.scenario()
    picked = next((name for name, car in cars.items() if _is(car, now.car_class, now.stated)), None)
    key = state.set_widget("choose-own-car", picked)

    def take() -> None:
        if (car := cars.get(st.session_state[key])) and not state.is_late(key):
            state.put_whole(replace(state.scenario(), car_class=car.car_class, stated=car.stated))

    st.pills(state.display().say("showroom-cars"), list(cars), format_func=inert, key=key, on_change=take, wrap=True,
             label_visibility="collapsed")  # fmt: skip


def _is(car: HouseCar, car_class: str, stated: tuple[tuple[str, object], ...]) -> bool:
    return car.car_class == car_class and dict(car.stated) == dict(stated)
