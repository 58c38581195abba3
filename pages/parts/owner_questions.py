"""What owners ask, answered where it arises: a line with the question, the answer behind it."""

from __future__ import annotations

from collections.abc import Callable

import streamlit as st

from model.describe.fields import InputError
from model.describe.figures import Quantity, Share
from model.lift_off.advice import Advice
from model.lift_off.counted import COUNTED_S, FROM_KMH, TO_KMH, seconds_of, strength_of
from model.lift_off.slowing import word_of
from model.limits.owner_questions import QUEUE, disc_work_left
from model.words.quantities import Display
from model.words.refusals import refusal_words
from pages.parts import redrawn, state
from pages.parts.controls import enter
from pages.parts.description import degrees
from pages.parts.lift_off_words import advice_text
from pages.parts.theme import TEXT_PX
from pages.parts.typography import together

NO_DIFFERENCE_SHARE = 0.02
"""Savings that differ by less [1] are called the same."""

COUNTED = "counted-step-s"
"""Under which the session keeps the seconds that somebody counted."""
ALIKE_SHARE = 0.1
"""Seconds that differ by less [1] are called the same step: how well they are counted, assumed."""


def question(name: str, draw: Callable[[], None]) -> None:
    """One question, its answer behind it."""
    with st.expander(state.display().say(name), type="compact", key=f"{name}-drawer", on_change="rerun") as drawer:
        if drawer.open:
            redrawn.part(name, draw)


def kwh(energy: float) -> Quantity:
    """An energy as it is told here."""
    return Quantity(energy, "kWh")


def charge_words(display: Display) -> str:
    """The daily limit beside a full battery."""
    starts, limit = state.charged(), state.shown().year.daily_charge_limit
    limit_saved, full_saved = starts.first.saved_kwh, starts.second.saved_kwh
    return display.say(
        "question-charge-told", limit=Share(limit, 0), limit_saved=kwh(limit_saved), full_saved=kwh(full_saved),
        less=full_saved < (1 - NO_DIFFERENCE_SHARE) * limit_saved,
    )  # fmt: skip


def queue_words(display: Display) -> str:
    """A queue with this car."""
    found = state.in_a_queue()
    return display.say(
        "question-queue-told", distance=Quantity(QUEUE.distance_km, "km"), stops=QUEUE.stops,
        speed=Quantity(QUEUE.speed_kmh, "km/h", places=0), taken=kwh(found.net_kwh), saved=kwh(found.saved_kwh),
    )  # fmt: skip


def standing_words(display: Display) -> str:
    """A start after standing in the cold, beside one that is still warm."""
    starts = state.after_standing()
    cold, warm = starts.first, starts.second
    return display.say(
        "question-standing-told", air=degrees(cold.conditions.ambient_c), cold=kwh(cold.net_kwh),
        warm=kwh(warm.net_kwh), cold_saved=kwh(cold.saved_kwh), warm_saved=kwh(warm.saved_kwh),
    )  # fmt: skip


def brakes_words(display: Display) -> str:
    """What is left to the friction brakes, and what that does to them."""
    left = disc_work_left(state.outcome(state.shown()).given)
    if left is None:
        return display.say("question-brakes-none")
    return display.say("question-brakes-told", left=Share(left))


def tell(words: Callable[[Display], str]) -> None:
    """An answer in words, or why there is none: a drive that can be driven as described need not from a low limit."""
    try:
        st.markdown(together(words(state.display())), width=TEXT_PX)
    except InputError as refused:
        st.error(refusal_words(refused, state.display()))


def ask_on_first_page() -> None:
    """What is asked beside the answer."""
    question("question-charge", lambda: tell(charge_words))
    question("question-queue", lambda: tell(queue_words))


def ask_of_lift_off(advice: Advice) -> None:
    """What is asked of lifting off."""
    question("question-step", lambda: count_step(advice))
    question("question-cruise", lambda: tell(lambda display: display.say("question-cruise-told")))
    question("question-brakes", lambda: tell(brakes_words))


def ask_of_winter() -> None:
    """What is asked of a cold day."""
    question("question-standing", lambda: tell(standing_words))


def counted_words(seconds: float, advice: Advice, display: Display) -> str:
    """Which strength the seconds are that were counted, and whether another step is nearer to the one advised."""
    strength, advised = strength_of(seconds), seconds_of(advice.lift_off_mps2)
    if advised is not None and abs(seconds - advised) <= ALIKE_SHARE * advised:
        than = "alike"
    else:
        than = "stronger" if advised is None or seconds < advised else "weaker"
    text, counted = advice_text(word_of(strength), strength, display), Quantity(seconds, "s", 3, trimmed=True)
    return display.say("question-step-counted", seconds=counted, strength=text, than=than)


def count_step(advice: Advice) -> None:
    """Which step of a menu is which strength: seconds counted, and what is to be counted for the one advised."""
    display = state.display()
    speeds = {"from": Quantity(FROM_KMH, "km/h", places=0), "to": Quantity(TO_KMH, "km/h", places=0)}
    st.markdown(together(display.say("question-step-how", **speeds)))
    st.markdown(f"**{together(display.say('question-step-caution'))}**")
    counted = st.session_state.get(COUNTED)

    def put(seconds: float | None) -> None:
        st.session_state[COUNTED] = seconds

    enter(COUNTED_S, "set-counted-s", counted, put, help="")
    if counted is not None:
        st.markdown(f"**{together(counted_words(counted, advice, display))}**")
    strength, seconds = advice.lift_off_mps2, seconds_of(advice.lift_off_mps2)
    text = advice_text(word_of(strength), strength, display)
    if seconds is None:
        st.markdown(together(display.say("question-step-rolls", strength=text)))
        return
    sentence = display.say("question-step-advised", strength=text, seconds=Quantity(seconds, "s", places=0), **speeds)
    st.markdown(together(sentence))
