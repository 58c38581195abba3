"""Winter and limits: when regeneration will not be there, for the visitor's own car, drive and season."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from html import escape

import numpy as np
import pandas as pd
import streamlit as st

from model.limits.grip_margin import BENDS_M
from model.limits.limit_settings import LIMIT_FIELDS, LIMIT_PARTS, STRAIGHT, LimitSettings, settings_of, slipperiest
from model.words.lift_off import no_more_than
from model.words.refusals import refusal_words
from pages.parts import cold_words, grip_words, hill_words, own_settings, redrawn, state, stop_words, winter_words
from pages.parts.charts import cold as cold_charts
from pages.parts.charts import grip as grip_charts
from pages.parts.charts import hills as hill_charts
from pages.parts.charts import stops as stop_charts
from pages.parts.drive_part import before, last_answer
from pages.parts.folding import folded, is_narrow
from pages.parts.limit_part import (
    HALVES,
    ask_day,
    ask_road,
    in_units,
    named,
    part,
    picture,
    roads_in_words,
    side_by_side,
)
from pages.parts.link import own_link
from pages.parts.owner_questions import ask_of_winter
from pages.parts.plain_text import inert
from pages.parts.trailer import draw_trailer
from pages.parts.typography import together
from pages.parts.winter_words import BATTERIES

ROAD_COLUMNS = {"low": "roads-column-least", "mid": "roads-column-middle", "high": "roads-column-most"}
STEPS = {"grip_kmh": 5.0, "slope_pct": 1.0, "hill_kmh": 5.0, "stop_kmh": 5.0, "reaction_s": 0.1}
"""Steps of the sliders, in the units shown."""
FROSTS_C = (-7.0, -15.0)
"""Days of frost that are offered beside the year's winter day [°C]."""


def settings() -> LimitSettings:
    """What is set on this page, as the sliders can show it."""
    given = settings_of(st.query_params.to_dict())[0]
    slid = {key: own_settings.as_slid(LIMIT_FIELDS[key], getattr(given, key), step) for key, step in STEPS.items()}
    return replace(given, **slid)


def sliders(*keys: str) -> None:
    """Sliders side by side."""
    for column, key in zip(st.columns(len(keys), wrap=False), keys, strict=True):
        with column:
            own_settings.slide(LIMIT_FIELDS[key], getattr(settings(), key), STEPS[key])


# cold battery


def draw_cold() -> None:
    """The cold battery."""
    found, scenario, display, dark = state.cold(), state.shown(), state.display(), state.dark()
    part(cold_words.cold(found, scenario, display), cold_controls, draw_map)
    ask_of_winter()
    names = cold_words.fade_names(display)
    left, right = st.columns(HALVES, gap="large")
    parts, unit = found.costs.parts_kwh, display.unit("m/s²")

    def slowings(held: Iterable[float]) -> list[float]:
        return [round(display.value(slowing, "m/s²"), 2) for slowing in held]

    def fades_table() -> pd.DataFrame:
        return pd.DataFrame(
            {
                display.say("fade-column-lift-off"): names,
                display.say("fade-column-asked", unit=unit): slowings(lift.asked_mps2 for lift in found.fades),
                display.say("fade-column-motor", unit=unit): slowings(lift.motor_mps2 for lift in found.fades),
                display.say("fade-column-rolling", unit=unit): slowings(lift.rolling_mps2 for lift in found.fades),
            }
        )

    def parts_table() -> pd.DataFrame:
        rows = [
            (cold_charts.part_name(part, display), round(kwh, 3)) for part, kwh in cold_charts.season_rows(parts)
        ]
        return pd.DataFrame(rows, columns=[display.say("season-column-part"), display.say("season-column-more")])

    with left:
        chart = cold_charts.fading(found.fades, names, display, dark)
        picture(chart, cold_words.fade_words(found.fades, display), fades_table, "fading")
    with right:
        chart = cold_charts.season_costs(parts, display, dark)
        picture(chart, cold_words.season_words(found, scenario, display), parts_table, "season")
    title, read = display.say("cold-published-title"), display.say("cold-published-read")
    side_by_side(title, cold_words.evidence(state.season_costs_at(cold_words.STAND_C), display), read)


def draw_map() -> None:
    """The map of charge acceptance with the drive on it."""
    found, display = state.cold(), state.display()
    chart = cold_charts.acceptance_map(found.takes_all, found.accepted, found.way, display, state.dark())

    def table() -> pd.DataFrame:
        every = found.takes_all.iloc[::5]
        shown = in_units(every, {"battery_c": display.say("cold-column-battery")}, "°C")
        for level, name in BATTERIES.items():
            shown[display.say("cold-column-up-to-charge", level=display.say(name))] = (100 * every[level]).round(0)
        return shown

    picture(chart, cold_words.map_words(found, display), table, "acceptance", leads=True)


# slippery road


def draw_grip() -> None:
    """The slippery road."""
    state.lift_off_ahead()
    found, scenario, display, dark = state.slippery(settings()), state.shown(), state.display(), state.dark()
    lift_off = state.lift_off()
    assert lift_off is not None
    said = grip_words.grip(found, lift_off.advice.overall, scenario, settings(), display)
    part(said, grip_controls, draw_roads, many_controls=True)
    left, right = st.columns(HALVES, gap="large")
    with left:
        draw_axles()
    with right:
        if found.balance is None:
            slowing = display.say("weight-column-slowing", unit=display.unit("m/s²"))
            loads = found.loads.assign(slowing_mps2=display.value(found.loads["slowing_mps2"], "m/s²"))
            loads = named(loads.round(3), {"front": "weight-column-front", "rear": "weight-column-rear"})
            chart = grip_charts.loads(found.loads, found.check["lift_off_mps2"], display, dark)
            table = loads.rename(columns={"slowing_mps2": slowing})
            picture(chart, grip_words.weight_words(found, display), table, "weight")
        else:
            names = {"front_share": "balance-column-share", "front": "balance-column-front",
                     "rear": "balance-column-rear"}  # fmt: skip
            chart = grip_charts.balance(found.balance, found.check["available_friction"], display, dark)
            words = display.say("balance-title"), display.say("balance-words")
            picture(chart, words, named(found.balance.round(3), names), "balance")
    side_by_side(display.say("advice-title"), grip_words.advice(display), display.say("advice-read"))


def cold_controls() -> None:
    """The day, one tap each for a winter's, and what the battery has been through."""
    scenario, display = state.scenario(), state.display()
    days, here = list(dict.fromkeys((scenario.year.winter_c, *FROSTS_C))), scenario.conditions.ambient_c
    key = state.set_widget("cold-day", here if here in days else None)
    st.pills(
        display.say("cold-days"), days, key=key, on_change=take_day, label_visibility="collapsed",
        format_func=lambda ambient_c: winter_words.day_name(ambient_c, scenario, display),
    )  # fmt: skip
    ask_day("ambient_c", "soc_start")
    ask_day("preconditioned", "cabin")


def take_day() -> None:
    """Make it the cold day that was picked."""
    picked = st.session_state["cold-day"]
    if picked is not None and not state.is_late("cold-day"):
        state.put_whole(state.scenario().with_setting("ambient_c", picked))
        redrawn.changed()


def grip_controls() -> None:
    """The road, speed, bend, slope, tyres and trailer."""
    ask_road()
    sliders("grip_kmh", "slope_pct")
    display = state.display()
    bends = {bend: display.say("bend-name", bend=grip_words.bend_option(bend)) for bend in (STRAIGHT, *BENDS_M)}
    own_settings.choose(LIMIT_FIELDS["bend"], settings().bend, display.say("bend-label"), bends)
    draw_trailer(beside=lambda: ask_day("payload_kg"))
    st.page_link("lift_off.py", label=state.display().say("limits-set-lift-off"), query_params=own_link())


def draw_roads() -> None:
    """The largest lift-off on every road beside the driver's own: the margin."""
    found, display = state.slippery(settings()), state.display()
    rows, unit = found.by_surface, display.unit("m/s²")
    table = pd.DataFrame({display.say("roads-column-road"): roads_in_words(rows)})
    for level, name in ROAD_COLUMNS.items():
        most = [no_more_than(strength, display) for strength in rows[level]]
        table[display.say(name, unit=unit)] = np.round(display.value(np.array(most), "m/s²"), 2)
    table[display.say("roads-column-margin")] = [display.say("margin-name", margin=name) for name in rows["margin"]]
    chart = grip_charts.by_road(rows, found.check["lift_off_mps2"], found.check["surface"], display, state.dark())
    numbers = grip_words.roads_numbers(found, display)
    picture(chart, grip_words.roads_words(found, display), table, "roads", leads=True, numbers=numbers, folds=False)


def draw_axles() -> None:
    """Both axles with what is asked of them."""
    found, display = state.slippery(settings()), state.display()
    check = found.check
    chart = grip_charts.axles(found.asked, check["available_friction"], found.most_friction, display, state.dark())
    rows = [
        {
            display.say("axles-column-axle"): display.say("axle-name", axle=axle),
            display.say("axles-column-along"): round(check["demand_by_axle"][axle]["along"], 3),
            display.say("axles-column-across"): round(check["demand_by_axle"][axle]["across"], 3),
            display.say("axles-column-in-all"): round(check["demand_by_axle"][axle]["in_all"], 3),
            display.say("axles-column-weight"): round(check["axle_load_share"][axle], 3),
        }
        for axle in ("front", "rear")
    ]
    words, numbers = grip_words.axles_words(check, display), grip_words.axles_numbers(check, display)
    picture(chart, words, pd.DataFrame(rows), "axles", numbers=numbers)


# full battery and hills


def draw_hills() -> None:
    """Full battery and long hills."""
    found, display, dark = state.on_hills(settings()), state.display(), state.dark()
    part(hill_words.hills(found, state.shown(), settings(), display), hill_controls, draw_room)
    left, right = st.columns(HALVES, gap="large")
    with left:
        height = found.down.result.trace.elevation_m
        runs = pd.DataFrame(
            {
                "lost": height[0] - height,
                "motor": found.down.disc_c,
                "full": found.down_full.disc_c,
                "alone": found.down.friction_only_disc_c,
            }
        ).iloc[:: max(1, len(height) // 20)]
        warmth = {
            "motor": display.say("discs-column-motor"),
            "full": display.say("discs-column-full"),
            "alone": display.say("discs-column-alone"),
        }
        height = {"lost": display.say("discs-column-down")}
        table = pd.concat([in_units(runs, height, "m"), in_units(runs, warmth, "°C")], axis=1)
        chart = hill_charts.discs(found.down, found.down_full, display, dark)
        picture(chart, hill_words.disc_words(found.down, found.down_full, display), table, "discs")
    with right:
        slopes = state.slopes()
        table = pd.concat(
            [
                slopes[["grade_pct"]].rename(columns={"grade_pct": display.say("slopes-column-slope")}),
                in_units(slopes, {"speed_kmh": display.say("slopes-column-speed")}, "km/h"),
                (100 * slopes["share"]).round(1).rename(display.say("slopes-column-share")),
            ],
            axis=1,
        )
        chart = hill_charts.given_back(slopes, settings().hill_pct, display, dark)
        picture(chart, hill_words.given_back_words(slopes, display), table, "given-back")


def hill_controls() -> None:
    """The hill, and a trailer."""
    for column, key in zip(st.columns(2, wrap=False), ("hill_m", "hill_pct"), strict=True):
        with column:
            own_settings.enter(LIMIT_FIELDS[key], getattr(settings(), key))
    own_settings.slide(LIMIT_FIELDS["hill_kmh"], settings().hill_kmh, STEPS["hill_kmh"])
    ask_day("soc_start")
    draw_trailer()


def draw_room() -> None:
    """What the battery takes as it fills, and what the hill gives."""
    found, display = state.on_hills(settings()), state.display()
    table = pd.DataFrame({display.say("near-full-column-charge"): 100 * found.takes["soc"]})
    for level, name in BATTERIES.items():
        table[display.say("column-in-kw", level=display.say(name))] = found.takes[level]
    chart, words = hill_charts.near_full(found, display, state.dark()), hill_words.near_full_words(found, display)
    picture(chart, words, table.iloc[::5].round(1), "near-full", leads=True)


# emergency stop


def draw_stop() -> None:
    """The emergency stop, and the brakes that rest."""
    found, display, dark = state.stopped_hard(settings()), state.display(), state.dark()
    here = slipperiest(state.shown()).surface
    part(stop_words.stop(found, here, settings(), display), stop_controls, draw_distances)
    left, right = st.columns(HALVES, gap="large")
    with left:
        parts = stop_words.motor_parts(found)
        heads = ("hard-stop-column-part", "hard-stop-column-motor", "hard-stop-column-whole")
        rows = [
            (display.say("hard-stop-part", part=part), round(100 * share, 1), display.figure(whole))
            for part, share, whole in parts
        ]
        table = pd.DataFrame(rows, columns=[display.say(head) for head in heads])
        words = stop_words.motors_part_words(found, settings(), display)
        picture(stop_charts.motors_part(parts, display, dark), words, table, "motors-part")
    with right:
        per, brakes = "kWh/100 km", found.brakes
        work = [brakes.friction_only_kwh_per_100km, brakes.kwh_per_100km]
        table = pd.DataFrame(
            {
                display.say("brakes-column-run"): stop_charts.runs(display),
                display.say("brakes-column-heat", unit=display.unit(per)): [display.value(heat, per) for heat in work],
            }
        )
        chart = stop_charts.discs_work(work, display, dark)
        picture(chart, stop_words.brakes_words(found, display), table.round(2), "discs-work")


def stop_controls() -> None:
    """The road, speed and reaction."""
    ask_road()
    sliders("stop_kmh", "reaction_s")


def draw_distances() -> None:
    """How far on every road."""
    found, here, display = state.stopped_hard(settings()), slipperiest(state.shown()).surface, state.display()
    rows = found.by_surface
    chart = stop_charts.distances(rows, here, found.motor_only, display, state.dark())
    lengths = {
        "thinking_m": display.say("hard-stop-column-reaction"),
        "high_m": display.say("hard-stop-column-most"),
        "mid_m": display.say("hard-stop-column-middle"),
        "low_m": display.say("hard-stop-column-least"),
    }
    table = in_units(rows, lengths, "m")
    table.insert(0, display.say("hard-stop-column-road"), roads_in_words(rows))
    picture(chart, stop_words.distances_words(found, settings(), display), table, "distances", leads=True)


# the page


def choose_part() -> None:
    """One of the four parts."""
    st.session_state["choose-part"] = settings().part
    st.segmented_control(
        "Part", LIMIT_PARTS, format_func=lambda part: winter_words.part_name(part, state.display()), key="choose-part",
        required=True, width="stretch", label_visibility="collapsed",
        on_change=lambda: own_settings.put(LIMIT_FIELDS["part"], st.session_state["choose-part"]),
    )  # fmt: skip


def draw_glance() -> None:
    """Each part with its number: below its name, and on a telephone at the end of the part."""
    display = state.display()
    names = {part: winter_words.part_name(part, display) for part in LIMIT_PARTS}
    glance = winter_words.glance(state.limits_at_a_glance(settings()), settings(), display)
    cells = "".join(
        f"<div><dt>{escape(names[key])}</dt><dd>{escape(together(text))}</dd></div>"
        for key, text in glance.items()
    )
    with before(state.shown(), "glance"), st.container(key="glance"):
        st.html(f"<dl>{cells}</dl>")


def draw() -> None:
    """The part that the address asks for, and each of them with its number."""
    choose_part()
    is_answered = state.answered() is not None
    if is_answered and not is_narrow():
        draw_glance()
    for notice in settings_of(st.query_params.to_dict())[1]:
        st.info(inert(refusal_words(notice, state.display())))
    if not is_answered:
        st.title(state.display().say("limits-title"), anchor=False)
        st.error(state.refusal())
        return
    with last_answer("limits"):
        {"cold": draw_cold, "grip": draw_grip, "hills": draw_hills, "stop": draw_stop}[settings().part]()
    if is_narrow():
        with folded(state.display().say("limits-in-short"), "glance") as is_open:
            if is_open:
                draw_glance()


redrawn.part("limits", draw)
