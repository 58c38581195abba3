"""Lift-off: how strongly the car should slow when the foot comes up, why, and what that changes."""

from __future__ import annotations

import math

import streamlit as st

from model.describe.fields import Field, InputError
from model.describe.figures import Quantity
from model.describe.parameters import car_from
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS, Scenario
from model.describe.units import KM_PER_MILE, KMH_PER_MPS
from model.lift_off.hills import held_downhills, rolling_downhill_pct, slowing_on_hills
from model.one_stop.slow_down import FROM_KMH, TO_KMH, compare, unneeded_dip
from model.words.entries import help_of
from model.words.lift_off import bare_strength
from model.words.quantities import number_text
from model.words.refusals import refusal_words
from pages.parts import departures, description, redrawn, state
from pages.parts import lift_off_hill_words as hill_words
from pages.parts import lift_off_words as words
from pages.parts.charts.lift_off import whole_axis
from pages.parts.charts.lift_off_hills import on_hills
from pages.parts.charts.slow_down import one_slow_down
from pages.parts.controls import abreast, control, say_refusals, widget_key
from pages.parts.drive_part import last_answer, strip_behind
from pages.parts.figure import Picture, figure, titled
from pages.parts.folding import folded, in_sight, section
from pages.parts.owner_questions import ask_of_lift_off
from pages.parts.slow_down_words import dip_words, slow_down_words, ways_table
from pages.parts.state import LiftOff
from pages.parts.strip_notes import lift_off_notes
from pages.parts.theme import TEXT_PX
from pages.parts.trailer import draw_trailer

HILL_SPEEDS = {False: (30.0, 50.0, 80.0, 120.0), True: (20.0, 50.0 / KM_PER_MILE, 50.0, 75.0)}
"""In km/h, and in mph for US readers; the second is the one at which the advice is asked to hold a hill."""
HILL_SPEED = "hill_kmh"
"""The page's own parameter in the address: the speed on hills."""
SLOW_DOWN_KMH = (80.0, 50.0)
FASTEST_KMH, SPEED_STEP = 140.0, 5.0
DIP_KMH = 10.0


def set_strength(strength: float) -> None:
    """Set the car to a strength, on every leg."""
    scenario = state.scenario().with_setting("lift_off_mps2", strength)
    for place in range(len(scenario.legs)):
        scenario = scenario.with_leg(place, "lift_off_mps2", None)
    state.put_whole(scenario)
    redrawn.changed()


# the answer


def answer(found: LiftOff) -> None:
    """Word, number and because; beside them what is set and what is preferred."""
    scenario, display, advice = state.scenario(), state.display(), found.advice.overall
    yours = scenario.driver.lift_off_mps2
    advised = words.advised(advice, display)
    st.header(advised.title, anchor=False)
    because, meaning = advised.reasons
    st.markdown(f"{meaning} {because}")
    for caveat in advised.caveats:
        st.markdown(f"**{caveat}**")
    with st.container(key="lift-set", horizontal=True, vertical_alignment="bottom"):
        control(DRIVER_FIELDS["lift_off_mps2"], look="slider", label=words.slider_label(yours, display), help="")
        st.button(
            display.say("lift-off-set"),
            on_click=set_strength,
            args=(advice.lift_off_mps2,),
            disabled=words.yours_name(yours, scenario.legs, display)
            == words.strength_text(advice.lift_off_mps2, display),
        )
    if sentence := words.too_much(yours, found.case, display):
        st.warning(sentence)
    control(DRIVER_FIELDS["prefers"], label=display.say("lift-off-prefer"), help="")
    ask_road(scenario)
    if question := departures.frost_text(scenario, display):
        st.warning(question)
        control(CONDITION_FIELDS["ambient_c"], help="", where="part")
    with st.expander(display.say("lift-off-more"), type="compact", key="lift-drawer", on_change="rerun") as drawer:
        if drawer.open:
            more_settings()
    ask_of_lift_off(advice)


def ask_road(scenario: Scenario) -> None:
    """The road's surface and the trailer: side by side, to keep the answer short."""
    surface, trailer = CONDITION_FIELDS["surface"], CONDITION_FIELDS["trailer_kg"]
    if scenario.conditions.trailer_kg:
        # there is its drag area to ask for too, and no room beside
        control(surface, look="list", help="", where="part")
        draw_trailer()
        return
    with abreast("road"):
        control(surface, look="list", help="", where="part", say_refusal=False)
        control(trailer, help="", say_refusal=False)
    say_refusals(widget_key(surface, where="part"), widget_key(trailer))


def more_settings() -> None:
    """Coming to rest, slowing on request, and strengths for single legs."""
    scenario, display = state.scenario(), state.display()
    for key in ("comes_to_rest", "slowing_on_request"):
        control(DRIVER_FIELDS[key], help="")
        st.caption(help_of(DRIVER_FIELDS[key], display))
    field = LEG_FIELDS["lift_off_mps2"]
    st.markdown(display.say("lift-off-legs-help", help=help_of(field, display)))
    for place, leg in enumerate(scenario.legs):
        label = display.say("lift-off-of-leg", leg=place + 1, described=description.leg_words(leg, display),
                            unit=display.unit("m/s²"))  # fmt: skip
        control(field, leg=place, label=label, help="")


def draw_axis(found: LiftOff) -> None:
    """The whole axis of strengths."""
    scenario, display, advice = state.shown(), state.display(), found.advice.overall
    title, alt = words.axis_words(found.table, advice.lift_off_mps2, found.case.grip_limit_mps2, display)
    chart = whole_axis(
        found.table, found.case.energy_tie_kwh, found.case.grip_limit_mps2, advice.lift_off_mps2,
        scenario.driver.lift_off_mps2, display, state.dark(),
    )  # fmt: skip
    shown = Picture(
        chart, alt, lambda: words.axis_table(found.table, display).iloc[:, : words.SHOWN_COLUMNS], title,
        file=lambda: words.axis_table(found.table, display),
    )  # fmt: skip
    figure(lambda: shown, "whole-axis", f"{scenario.car_class}-lift-off.csv")
    with folded(display.say("lift-off-lines"), "lines") as is_open:
        if is_open:
            st.markdown(words.kinds_text(found.table, found.case.brake_pedal, display))
    with st.expander(display.say("lift-off-rules"), type="compact", key="rules-drawer", on_change="rerun") as drawer:
        if drawer.open:
            st.markdown(words.rules_text(advice, display))


# what it changes


def draw_changes(found: LiftOff) -> None:
    """What the advice changes, and what would change it."""
    scenario, display, advice = state.shown(), state.display(), found.advice.overall
    name = words.yours_name(scenario.driver.lift_off_mps2, scenario.legs, display)
    title, table = words.changes(state.as_driven(), found.table, advice, name, display)
    left, right = st.columns(2, gap="large")
    with left:
        st.markdown(f"### {title}")
        st.table(table, border="horizontal", hide_index=True, alt=title)
        st.caption(display.say("lift-off-afresh"))
    with right:
        would_change = titled(display.say("lift-off-would-change"), words.what_if_text(found.advice, display))
        others = titled(display.say("lift-off-others"), words.others_text(advice, display))
        st.markdown(f"{would_change}\n\n{others}")


def draw_legs(found: LiftOff) -> None:
    """The advice leg by leg; the picture above has it along the road."""
    display = state.display()
    lines = words.leg_lines(state.shown().legs, found.advice.legs, display)
    st.markdown("\n\n".join([display.say("lift-off-brackets"), *lines]), width=TEXT_PX)


# hills


@st.fragment
def draw_hills(found: LiftOff) -> None:
    """What those behind see on a hill, and which hill is held."""
    scenario, display, dark = state.shown(), state.display(), state.dark()
    advised, yours = found.advice.overall.lift_off_mps2, scenario.driver.lift_off_mps2
    speed = hill_speed()
    # of equal strengths the more important name stays
    kinds = {0.0: "rolling", yours: "yours", advised: "advised"}
    names = {
        strength: display.say("lift-off-name", kind=kinds[strength], strength=bare_strength(strength))
        for strength in dict.fromkeys((advised, yours, 0.0))
    }
    slowing = slowing_on_hills(scenario, speed, tuple(names))
    title, sentences = hill_words.hill_words(slowing, advised or yours, speed, display)
    left, right = st.columns(2, gap="large")
    with left:
        shown = Picture(
            on_hills(slowing, [*names.items()], display, dark), f"{title}. {sentences}",
            lambda: hill_words.hill_table(slowing, names, display, every_pct=hill_words.SHOWN_GRADES_PCT),
            title, sentences, file=lambda: hill_words.hill_table(slowing, names, display),
        )  # fmt: skip
        figure(lambda: shown, "hills", f"{scenario.car_class}-lift-off-on-hills.csv")
    with right:
        speeds = hill_speeds()
        rolls = hill_words.rolling_words(speeds, rolling_downhill_pct(scenario, speeds), display)
        held = display.say("lift-off-held", speed=Quantity(speed, "km/h"))
        st.markdown(titled(display.say("lift-off-holding"), f"{rolls}\n\n{held}"))
        table = hill_words.held_table(held_downhills(scenario, speed), display)
        st.table(table, border="horizontal", hide_index=True, alt=held)


def hill_speeds() -> list[float]:
    """The speeds on hills to choose among [km/h]; round ones in the units shown."""
    display = state.display()
    return [display.held(shown, "km/h") for shown in HILL_SPEEDS[display.us]]


def hill_speed() -> float:
    """The speed on hills, chosen among a few [km/h]."""

    def take() -> None:
        st.query_params[HILL_SPEED] = f"{st.session_state['set-hill-speed']:g}"

    display, speeds = state.display(), hill_speeds()
    given = {f"{speed:g}": speed for speed in speeds}
    speed = given.get(st.query_params.get(HILL_SPEED, ""), speeds[1])
    st.session_state["set-hill-speed"] = speed
    st.segmented_control(
        display.say("lift-off-hill-speed", unit=display.unit("km/h")), speeds,
        format_func=lambda kmh: number_text(display.value(kmh, "km/h")),
        key="set-hill-speed", required=True, on_change=take,
    )  # fmt: skip
    return speed


# one slow-down


@st.fragment
def draw_slow_down(_found: LiftOff) -> None:
    """One slow-down under the microscope."""
    scenario, display = state.shown(), state.display()
    to_kmh, from_kmh = slow_down_speeds()
    car = car_from(scenario.car_class, dict(scenario.stated))
    setting = (car, scenario.conditions, scenario.driver)
    try:
        found = compare(from_kmh / KMH_PER_MPS, to_kmh / KMH_PER_MPS, *setting)
    except InputError as refused:
        st.error(refusal_words(refused, display))
        return
    title, sentences = slow_down_words(found, from_kmh, to_kmh, scenario.driver.lift_off_mps2, display)
    shown = Picture(
        one_slow_down(found, display, state.dark()), f"{title}. {sentences}", lambda: ways_table(found, display),
        title, sentences,
    )  # fmt: skip
    figure(lambda: shown, "slow-down", f"{scenario.car_class}-slow-down.csv")
    dip_to = max(from_kmh - DIP_KMH, from_kmh / 2)
    dip = unneeded_dip(from_kmh / KMH_PER_MPS, dip_to / KMH_PER_MPS, *setting)
    st.markdown(dip_words(dip, from_kmh, dip_to, display), width=TEXT_PX)


def slow_down_speeds() -> tuple[float, float]:
    """Speeds at the end and at the start of the slow-down [km/h], from one slider."""
    display = state.display()
    unit, most = display.unit("km/h"), math.floor(display.value(FASTEST_KMH, "km/h") / SPEED_STEP) * SPEED_STEP

    def take() -> None:
        for field, shown in zip((TO_KMH, FROM_KMH), st.session_state["set-slow-down"], strict=True):
            st.query_params[field.key] = f"{display.held(shown, 'km/h'):.4g}"

    def shown(field: Field, default: float) -> float:
        kmh = field.clamp(st.query_params.get(field.key, default))[0]
        return min(round(display.value(default if kmh is None else kmh, "km/h") / SPEED_STEP) * SPEED_STEP, most)

    start = max(shown(FROM_KMH, SLOW_DOWN_KMH[0]), SPEED_STEP)
    end = min(shown(TO_KMH, SLOW_DOWN_KMH[1]), start - SPEED_STEP)
    st.session_state["set-slow-down"] = (end, start)
    st.slider(display.say("lift-off-slow-down", unit=unit), 0.0, most, step=SPEED_STEP, format="%g",
              key="set-slow-down", on_change=take, width=TEXT_PX)  # fmt: skip
    return display.held(end, "km/h"), display.held(start, "km/h")


# comfort and cautions


def draw_cautions() -> None:
    """What people call comfortable, and what to mind."""
    say = state.display().say
    left, right = st.columns([9, 11], gap="large")
    with left, section(say("lift-off-comfortable"), "comfort") as is_open:
        if is_open:
            st.markdown(words.comfort_text(state.as_driven()["high_mps2"], state.display()))
    with right:
        st.header(say("lift-off-mind"), anchor="mind")
        st.markdown("\n".join(f"- {caution}" for caution in words.cautions(state.display())))


SECTIONS = (
    ("lift-off-changes", "changes", draw_changes),
    ("lift-off-leg-by-leg", "legs", draw_legs),
    ("lift-off-hills", "hills", draw_hills),
    ("lift-off-microscope", "slow-down", draw_slow_down),
)
"""Below the answer: heading, anchor, and what stands there."""


def draw() -> None:
    """The answer, and all that hangs on it."""
    found = state.lift_off()
    if found is None:
        st.error(state.refusal())
        return
    with last_answer("lift-off"):
        in_sight(lambda: words.advised_in_words(found.advice.overall, state.display()).title)
        answering, picture = st.columns(2, gap="medium")
        with answering:
            with st.container(key="lift-answer", gap="xxsmall"):
                answer(found)
            strip_behind(lift_off_notes)
        with picture:
            draw_axis(found)
        for title, anchor, draw_section in SECTIONS:
            with section(state.display().say(title), anchor) as is_open:
                if is_open:
                    draw_section(found)
        draw_cautions()


redrawn.part("lift-off", draw)
