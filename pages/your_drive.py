"""Describe a drive, see what regeneration saves on it, and where the energy goes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import streamlit as st

from model.describe.car import CAR_FIELDS
from model.describe.leg_hills import HILL_KM, WAY, way_of
from model.describe.parameters import assumed_figures, car_of
from model.describe.scenario import (
    CONDITION_FIELDS,
    DRIVER_FIELDS,
    LEG_FIELDS,
    MAX_LEGS,
    SEASONS,
    YEAR_FIELDS,
    Leg,
    Scenario,
)
from model.kernel.savings import Result
from model.sampling.beside_now import price_key
from model.sampling.hybrid import has_engine, has_plug
from model.words.bands import band_promise
from model.words.entries import HABITS, help_of
from pages.parts import departures, link, state, wording
from pages.parts.answer_line import choose_drive
from pages.parts.controls import control, say_refusals, side_by_side, widget_key
from pages.parts.drive_part import before
from pages.parts.energy_part import draw_energy
from pages.parts.facts import drive_facts, fact_rows
from pages.parts.folding import in_sight
from pages.parts.owner_questions import ask_on_first_page
from pages.parts.plain_text import inert
from pages.parts.quick_part import draw_quick
from pages.parts.reach_words import band_text, reach_text, stops_text, year_text
from pages.parts.sheet_part import draw_sheet
from pages.parts.trailer import draw_trailer
from pages.parts.trust import draw_trust

CAR_GROUPS = {
    "printed": ("printed_wh_per_km", "printed_range_km", "printed_test", "shown_wh_per_km"),
    "weight": (
        "mass_kg", "rotating_mass_share", "drag_area_m2", "rolling_coefficient", "tyre_cold_share", "tyre_warm_up_min",
        "driveline_cold_n_per_t", "driveline_warm_up_min",
        "f0_n", "f1_n_per_mps", "f2_n_per_mps2", "front_load_share", "cg_height_m", "wheelbase_m",
    ),
    "motor": (
        "motor_peak_kw", "regen_peak_kw", "motor_base_speed_kmh", "motor_top_speed_kmh", "motor_loss_fixed",
        "motor_loss_speed", "motor_loss_speed2", "motor_loss_working", "motor_loss_torque2", "zero_torque_drag_share",
        "gear_efficiency", "open_pulling_share", "open_slowing_share",
    ),
    "battery": (
        "usable_kwh", "pack_voltage_v", "cell_resistance_share", "cell_resistance_usual",
        "resistance_activation_j_per_mol", "acceptance_level",
        "charge_rate_factor", "pack_heat_capacity_kj_per_k_kwh", "pack_heat_loss_w_per_k", "pack_heater_kw",
        "pack_heater_until_c", "cold_capacity_loss_per_k", "accessory_w", "charging_efficiency",
    ),
    "slowing": (
        "driven_axle", "front_regen_share", "regen_cap_mps2", "fade_start_kmh", "fade_end_kmh", "grip_reserve_share",
        "slip_control_delay_s", "brake_build_up_s", "disc_heat_capacity_kj_per_k_t", "disc_cooling_w_per_k_t",
    ),
    "engine": ("sustain_soc", "engine_efficiency", "engine_drag_kw"),
    "cabin": (
        "heat_source", "heater_max_kw", "heat_pump_cop_at_0c", "cabin_loss_w_per_k", "cabin_heat_capacity_kj_per_k",
    ),
    "weather": (
        "wind_kmh", "altitude_m", "cabin_set_c", "parked_c", "battery_temp_c", "plugged_in", "tyres_warm",
    ),
}  # fmt: skip
"""Every figure of the car but its name and its pedal, which the answer line asks for; and what is seldom asked of the
surroundings."""
LEG_ENTRIES = (("distance_km", "speed_kmh"), ("stops", "slow_downs"))
HILL_ENTRIES = {"flat": (), "up": ("climb_m",), "down": ("descent_m",), "up_and_down": ("climb_m", "descent_m")}
"""The metres asked for, by where the leg leads."""


# describing


def describe() -> None:
    """Legs, the way back, and habits: rows of which one is open at a time."""
    scenario, display = state.scenario(), state.display()
    st.session_state["refusal-said"] = False
    with st.container(key="legs-head", horizontal=True, vertical_alignment="center", horizontal_alignment="distribute",
                      gap="xsmall"):  # fmt: skip
        st.subheader(display.say("legs"), anchor=False, width="content")
        state.set_widget("there-and-back", scenario.return_trip)
        st.toggle(display.say("there-and-back"), key="there-and-back", on_change=take_return)
        if scenario.return_trip:
            with st.popover(wording.way_back_words(scenario.conditions, display), type="tertiary", key="way-back"):
                edit_way_back()
        st.button(
            display.say("add-a-leg"),
            type="tertiary",
            icon=":material/add:",
            on_click=move_legs,
            args=((*scenario.legs, Leg()), len(scenario.legs)),
            disabled=len(scenario.legs) >= MAX_LEGS,
        )
    refusal = state.refusal()
    above = st.container() if refusal else None
    with st.container(key="rows", gap=None):
        for place, leg in enumerate(scenario.legs):
            if row(f"leg-{place}", display.say("leg-row", leg=place + 1, described=wording.leg_words(leg, display))):
                edit_leg(place)
        if row("habits", wording.habits_words(scenario, display)):
            edit_habits()
    # at the entry that led to it, where that is open
    if above and not st.session_state["refusal-said"]:
        above.error(wording.together(refusal))


def row(name: str, text: str) -> bool:
    """A line that says what is entered; whether its entries are open below it."""
    # an expander would close when its label changes, and the label is what is being entered
    is_open = st.session_state.get("open-row") == name
    # the icon says nothing to who cannot see it, so the words tell too
    st.button(
        state.display().say("row-close", row=text) if is_open else text,
        type="tertiary",
        width="stretch",
        icon=":material/expand_less:" if is_open else ":material/expand_more:",
        icon_position="right",
        key=f"row-{name}",
        on_click=open_row,
        args=(None if is_open else name,),
    )
    return is_open


def open_row(name: str | None) -> None:
    """Open one row and close the others."""
    st.session_state["open-row"] = name


def take_return() -> None:
    """Write whether the drive is driven back."""
    if not state.is_late("there-and-back"):
        state.put(replace(state.scenario(), return_trip=st.session_state["there-and-back"]))


def move_legs(legs: tuple[Leg, ...], opened: int | None) -> None:
    """Take the legs in a new order or number, and open one of them."""
    state.put_whole(replace(state.scenario(), legs=legs))
    open_row(None if opened is None else f"leg-{opened}")


def edit_way_back() -> None:
    """How long the car stands before it is driven back, and whether on a plug."""
    control(CONDITION_FIELDS["stands_h"])
    control(CONDITION_FIELDS["stands_plugged_in"])


def edit_leg(place: int) -> None:
    """The entries of one leg, and its place among the others."""
    legs = state.scenario().legs
    others = (*legs[:place], *legs[place + 1 :])

    def moved(to: int) -> tuple[Leg, ...]:
        return (*others[:to], legs[place], *others[to:])

    say = state.display().say
    with st.container(key="entries", gap="xsmall"):
        for keys in LEG_ENTRIES:
            side_by_side(*(LEG_FIELDS[key] for key in keys), leg=place)
        st.caption(say("leg-help"))
        edit_hill(place)
        left, right = st.columns(2, wrap=False)
        with left:
            if legs[place].slow_downs:
                control(LEG_FIELDS["slow_to_kmh"], leg=place, help="", say_refusal=False)
        with right:
            control(LEG_FIELDS["surface"], leg=place, look="list", help="")
        say_refusals(widget_key(LEG_FIELDS["slow_to_kmh"], place))
        with st.container(horizontal=True, gap="xsmall"):
            st.button(say("leg-earlier"), icon=":material/arrow_upward:", key="leg-up", disabled=place == 0,
                      on_click=move_legs, args=(moved(max(place - 1, 0)), place - 1))  # fmt: skip
            st.button(say("leg-later"), icon=":material/arrow_downward:", key="leg-down",
                      disabled=place == len(legs) - 1, on_click=move_legs,
                      args=(moved(place + 1), place + 1))  # fmt: skip
            st.button(say("leg-remove"), icon=":material/delete:", key="leg-remove", disabled=len(legs) == 1,
                      on_click=move_legs, args=(others, None))  # fmt: skip


def edit_hill(place: int) -> None:
    """Up, down or flat; how many metres, how steep and over which length, each of which gives the others."""
    leg, metres = state.scenario().legs[place], HILL_ENTRIES[way_of(state.scenario().legs[place])]
    control(WAY, leg=place, help="", hide_label=True)
    if not metres:
        return
    if len(metres) == 1:
        side_by_side(LEG_FIELDS[metres[0]], LEG_FIELDS["grade_pct"], leg=place)
        side_by_side(HILL_KM, leg=place)
    else:
        side_by_side(*(LEG_FIELDS[key] for key in metres), leg=place)
        side_by_side(LEG_FIELDS["grade_pct"], HILL_KM, leg=place)
    st.caption(wording.hill_words(leg, state.display()))


def edit_habits() -> None:
    """The three habits, each with the number behind its word, the load and the charge at the start."""
    driver = state.scenario().driver
    with st.container(key="entries", gap="xsmall"):
        for key in HABITS:
            control(DRIVER_FIELDS[key], label=state.display().say("habit-label", habit=key), help="")
            st.caption(wording.habit_number(key, getattr(driver, key), state.display()))
        control(CONDITION_FIELDS["payload_kg"])
        draw_trailer()
        label = state.display().say("charge-at-start")
        control(CONDITION_FIELDS["soc_start"], look="slider", label=label, help="")
        control(YEAR_FIELDS["daily_charge_limit"], look="slider")


@dataclass(frozen=True)
class Door:
    """A short way in beside the starting drives: its message, its icon, and what it opens."""

    label: str
    icon: str
    draw: Callable[[], None]


DOORS = {
    "quick": Door("door-quick", ":material/bolt:", draw_quick),
    "sheet": Door("door-sheet", ":material/directions_car:", draw_sheet),
}


def draw_doors() -> None:
    """A drive in five answers, a car from its data sheet; and the cards of Show for who wants to be led."""
    say, opened = state.display().say, st.session_state.get("open-door")
    with st.container(key="doors", horizontal=True, width="content", vertical_alignment="center", gap="xsmall"):
        for name, door in DOORS.items():
            is_open = name == opened
            st.button(
                say("door-close" if is_open else door.label), type="tertiary", key=f"door-{name}",
                icon=":material/close:" if is_open else door.icon, on_click=open_door,
                args=(None if is_open else name,),
            )  # fmt: skip
        if link.new_here():
            # the cards of Show are the guided first run; who needs none goes on here
            with st.container(key="guide", width="content"):
                st.page_link("show.py", label=say("guide"), query_params=link.own_link(), help=say("guide-help"))


def open_door(name: str | None) -> None:
    """Open one of the short ways in, and close the other."""
    st.session_state["open-door"] = name


# answering


def answer() -> None:
    """The headline and what it comes to; for a drive that cannot be driven, that of the last one that could."""
    scenario, display = state.answered(), state.display()
    if scenario is None:
        st.markdown(state.display().say("no-answer"))
        return
    result, bands = state.outcome(scenario).result, state.answer(scenario)
    assert result is not None and bands is not None
    with before(scenario, "headline"):
        st.header(wording.headline(bands, display, marked=True), anchor=False)
    if scenario == state.scenario():
        draw_charging(result)
    else:
        st.markdown(wording.answer_before(scenario, display))
    if not result.followed:
        slower = wording.not_followed(state.described_duration_s(scenario), result.trace.duration_s, display)
        if slower:
            st.warning(slower)
    frost, unusual = departures.frost_text(scenario, display), departures.unusual_text(scenario, display)
    for sentence in (frost, unusual, band_text(result, bands, display)):
        if sentence:
            st.markdown(sentence)
    with before(scenario, "facts"), st.container(key="facts", gap=None):
        st.html(fact_rows(drive_facts(scenario, result, bands, display)))
        draw_year(scenario)
    if has_engine(result.car):
        st.caption(display.say("hybrid-energy"))
    if scenario == state.scenario():
        draw_trust()
    with st.expander(display.say("beside-drawer"), type="compact", key="beside-drawer", on_change="rerun") as drawer:
        if drawer.open:
            beside_entries(scenario)
    priced = has_plug(result.car)
    made_of = display.say("year-made-of", priced=priced)
    with st.expander(made_of, type="compact", key="year-drawer", on_change="rerun") as drawer:
        if drawer.open:
            year_entries(priced=priced)
    ask_on_first_page()


def draw_charging(result: Result) -> None:
    """How far the battery goes; where that is not to the end, or the car charges on the way, the charging stops."""
    scenario, display = state.scenario(), state.display()
    if not (result.trace.ends or scenario.conditions.charging_stops):
        return
    for sentence in (reach_text(result, display), stops_text(result, display)):
        if sentence:
            st.markdown(sentence)
    with st.container(key="charging", gap="xsmall"):
        needed = state.stops_needed() if result.trace.ends else 0
        if needed > scenario.conditions.charging_stops:
            st.button(
                display.say("charge-on-the-way", stops=needed), key="add-charging", type="primary",
                icon=":material/ev_station:", on_click=charge_on_the_way, args=(needed,),
            )  # fmt: skip
        side_by_side(*(CONDITION_FIELDS[key] for key in ("charging_stops", "charge_stop_to")))


def charge_on_the_way(stops: int) -> None:
    """Take as many charging stops as are needed."""
    state.put_whole(state.scenario().with_setting("charging_stops", stops))


@st.fragment(parallel=True)
def draw_year(scenario: Scenario) -> None:
    """The year's row; drawn beside the rest of the page, since four seasons have to be driven for it."""
    year = state.year(scenario)
    if year is not None:
        display = state.display()
        rows = [wording.year_fact(year, scenario.year, display, state.year_fuel(scenario))]
        if beside := state.beside_now(scenario):
            rows.append(wording.beside_fact(beside, scenario.year, display))
        st.html(fact_rows(rows))
        if moved := state.moved_prices():
            st.caption(inert(wording.moved_prices(moved, display)))
        result = state.outcome(scenario).result
        if result and (told := year_text(year, scenario, result, state.display())):
            st.caption(told)


def beside_entries(scenario: Scenario) -> None:
    """The car that is driven now: its fuel, what it uses, what that costs; and the year of both."""
    display, now = state.display(), state.scenario().year
    if has_engine(car_of(scenario)):
        st.markdown(display.say("beside-no-hybrid"))
        return
    control(YEAR_FIELDS["now_fuel"])
    price = YEAR_FIELDS[price_key(now)]
    label = display.say("beside-price", fuel=now.now_fuel, currency=inert(now.currency), unit=display.unit("per l"))
    used, paid = st.columns(2, wrap=False, vertical_alignment="bottom")
    with used:
        control(YEAR_FIELDS["now_l_per_100km"], help="", say_refusal=False)
    with paid:
        control(price, label=label, help="", say_refusal=False)
    say_refusals(*(widget_key(field) for field in (YEAR_FIELDS["now_l_per_100km"], price)))
    beside = state.beside_now(scenario)
    st.markdown(wording.together(inert(wording.beside_words(beside, scenario, display))) if beside
                else display.say("beside-none"))  # fmt: skip
    helps = (help_of(field, display) for field in (YEAR_FIELDS["now_l_per_100km"], price))
    st.caption(display.say("beside-help", **dict(zip(("used", "price"), helps, strict=True))))


def year_entries(*, priced: bool) -> None:
    """Days and temperature of each season; price and CO₂ of electricity, where that is what is saved."""
    say, currency = state.display().say, inert(state.scenario().year.currency)
    for season in SEASONS:
        side_by_side(YEAR_FIELDS[f"{season}_days"], YEAR_FIELDS[f"{season}_c"])
    st.caption(f"{band_promise(state.display())} {say('year-snow')}")
    if not priced:
        return
    price, co2 = say("year-price", currency=currency), say("year-co2")
    asked = (("currency", ""), ("price_per_kwh", price), ("co2_g_per_kwh", co2))
    # two in a row: a third would be cut off where the column is narrow
    places = (*st.columns(2, wrap=False), st.columns(2, wrap=False)[0])
    for column, (key, label) in zip(places, asked, strict=True):
        with column:
            control(YEAR_FIELDS[key], label=label, help="")
    price, co2 = (help_of(YEAR_FIELDS[key], state.display()) for key in ("price_per_kwh", "co2_g_per_kwh"))
    st.caption(say("year-prices-help", price=price, co2=co2))


# the car


def adjust_car() -> None:
    """Every figure of the car with its class's band and provenance."""
    scenario, display = state.scenario(), state.display()
    say = display.say
    st.markdown(say("adjust-car-help"))
    group = st.segmented_control(
        say("car-part"),
        list(CAR_GROUPS),
        format_func=lambda group: say("car-group", group=group),
        default="weight",
        required=True,
        key="car-group",
        label_visibility="collapsed",
    )
    assumed, stated = assumed_figures(scenario.car_class), dict(scenario.stated)
    for key in CAR_GROUPS[group]:
        field = (CAR_FIELDS | CONDITION_FIELDS)[key]
        left, right = st.columns([1, 2], vertical_alignment="center")
        with left:
            control(field, look="list" if field.kind == "choice" else "", help="" if key in CONDITION_FIELDS else None)
        with right:
            if key in CONDITION_FIELDS:
                st.caption(help_of(field, display))
            elif key in stated:
                st.button(say("figure-back"), key=f"reset-{key}", type="tertiary", on_click=reset, args=(key,))
            elif key in assumed:
                st.caption(wording.provenance(field, assumed[key], display))
            else:
                st.caption(say("figure-open"))
    st.button(say("all-figures-back"), on_click=reset, args=tuple(stated), disabled=not stated)


def reset(*keys: str) -> None:
    """Take the class's figures again."""
    scenario = state.scenario()
    for key in keys:
        scenario = scenario.with_setting(key, None)
    state.put_whole(scenario)


if (drawn_for := state.answered()) and (bands := state.answer(drawn_for)):
    in_sight(wording.in_sight(bands, state.display()))
with st.container(key="start", horizontal=True, gap="small"):
    choose_drive("page")
    draw_doors()
if (opened := st.session_state.get("open-door")) is not None:
    DOORS[opened].draw()
answering, describing = st.columns([11, 10], gap="large")
with describing, st.container(key="description", gap="xsmall"):
    describe()
    st.page_link("own_road.py", label=state.display().say("own-road-door"), query_params=link.own_link())
with answering, st.container(key="answer", gap="xsmall"):
    answer()
with st.expander(state.display().say("adjust-car"), type="compact", key="car-drawer", on_change="rerun") as drawer:
    if drawer.open:
        adjust_car()
if (shown := state.answered()) and (drawn := state.outcome(shown).result):
    with before(shown, "energy"):
        draw_energy(shown, drawn, state.display())
