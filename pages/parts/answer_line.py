"""The answer line: car, drive, season and pedal in one sentence, each word opening its control, and the headline."""

from __future__ import annotations

from dataclasses import replace

import streamlit as st
from streamlit.elements.lib.mutable_popover_container import PopoverContainer

from model.describe.car import CAR_FIELDS
from model.describe.parameters import class_labels
from model.describe.scenario import CONDITION_FIELDS, SEASONS, Scenario
from model.describe.scenario_io import starting_drives
from pages.parts import departures, state, wording
from pages.parts.controls import control
from pages.parts.link import own_link
from pages.parts.reach_words import reach_text

ACTIONS = (
    ("show.py", "Show", ":material/present_to_all:"),
    ("compare.py", "Compare", ":material/compare_arrows:"),
    ("take_away.py", "Take away", ":material/print:"),
)
"""What can be done with the answer: page, word and icon."""
ENTRIES_PX = 420
"""Width of what a word opens, where the screen has it."""


def draw_answer_line(*, with_answer: bool) -> None:
    """Draw the line; pages that state the headline themselves ask for it without the answer."""
    scenario, display = state.scenario(), state.display()
    with st.container(key="answer-line", horizontal=True, vertical_alignment="center", gap=None):
        say("A")
        with word("car", wording.car_words(scenario)):
            choose_car()
        say("on a" if wording.drive_id(scenario) is None else "on the")
        with word("drive", wording.drive_words(scenario, display)):
            choose_drive("line")
        say("in" if wording.season_of(scenario.conditions, scenario.year) else "at")
        season = wording.season_words(scenario.conditions, scenario.year, display)
        with word("season", season), st.container(width=ENTRIES_PX):
            choose_season()
        say("with a")
        with word("pedal", wording.pedal_words(scenario, display)), st.container(width=ENTRIES_PX):
            control(CAR_FIELDS["brake_pedal"], help="", behind=True)
            st.markdown(wording.PEDAL_HELP)
        if apart := departures.by_key(scenario, display):
            say("and")
            with word("apart", ", ".join(apart.values())):
                take_off(apart, changes=with_answer)
        answer = state.answer() if with_answer else None
        if answer is not None:
            say(f"**{wording.headline(answer, display)}**")
            result = state.outcome().result
            if result is not None and (reached := reach_text(result, display)):
                say(reached)
        with st.container(key="actions", horizontal=True, width="content"):
            for file, label, icon in ACTIONS:
                st.page_link(file, label=label, icon=icon, query_params=own_link())
    say_kept()


def take_off(apart: dict[str, str], *, changes: bool) -> None:
    """What departs from the ordinary, each to be taken off with one tap; and where it `changes`, if not here."""
    st.markdown("All this counts in the answer. A tap takes it off.")
    for key, text in apart.items():
        st.button(text, key=f"take-off-{key}", icon=":material/close:", on_click=as_usual, args=(key,), width="stretch")
    if changes:
        st.page_link("your_drive.py", label="Change it on the first page", query_params=own_link())


def as_usual(key: str) -> None:
    """Make one departure ordinary again."""
    state.put_whole(departures.as_usual(state.scenario(), key))


def say_kept() -> None:
    """What was stated of another car and is kept for this one, to be let go of with one tap."""
    scenario = state.scenario()
    if st.session_state.get("kept_for") != (scenario.car_class, scenario.stated):
        return
    with st.container(key="kept", horizontal=True, vertical_alignment="center", gap="small"):
        st.markdown(departures.kept_text(scenario, state.display()), width="content")
        st.button(f"Take those of the class {wording.class_name(scenario)}", key="let-go", type="tertiary",
                  icon=":material/undo:", on_click=let_go)  # fmt: skip


def let_go() -> None:
    """Take the class's own figures; the pedal is asked for beside the car and stays."""
    stated = tuple(item for item in state.scenario().stated if item[0] == "brake_pedal")
    state.put_whole(replace(state.scenario(), stated=stated))


def say(text: str) -> None:
    """Words between the controls of the line."""
    st.markdown(text, width="content")


def word(key: str, text: str) -> PopoverContainer:
    """A word of the line that opens its control."""
    # one that kept its state in the session would close when its label changes
    return st.popover(text, type="tertiary", key=f"word-{key}")


def choose_car() -> None:
    """The car's class."""
    key = state.set_widget("choose-car", state.scenario().car_class, behind=True)
    st.radio(
        "Car class",
        list(class_labels()),
        format_func=lambda name: class_labels()[name],
        key=key,
        on_change=take_car,
        help="Invented middle of each class, no real car. “Adjust the car” on the first page changes its figures.",
    )


def take_car() -> None:
    """Write the car's class that was picked."""
    if state.is_late(key := state.key_of("choose-car")):
        return
    changed = replace(state.scenario(), car_class=st.session_state[key])
    if any(figure != "brake_pedal" for figure, _ in changed.stated):
        st.session_state["kept_for"] = (changed.car_class, changed.stated)
    state.put_whole(changed)


def start(name: str) -> None:
    """Take a starting drive: its road, and its car, season and habits unless the visitor has set their own."""
    now = state.scenario()
    starts = {key: scenario for key, (_, _, scenario) in starting_drives().items()}
    if any(brought(now) == brought(other) for other in starts.values()):
        state.put_whole(replace(starts[name], year=now.year))
    else:
        state.put_whole(replace(now, legs=starts[name].legs, return_trip=starts[name].return_trip))


def brought(scenario: Scenario) -> tuple[object, ...]:
    """What a starting drive brings beside its road."""
    return scenario.car_class, scenario.stated, scenario.conditions, scenario.driver


def choose_drive(where: str) -> None:
    """The four starting drives, one tap each."""

    def take() -> None:
        if st.session_state[key] is not None and not state.is_late(key):
            start(st.session_state[key])

    name = wording.drive_id(state.scenario())
    key = state.set_widget(f"choose-drive-{where}", name, behind=where == "line")
    with st.container(key=f"drives-{where}", gap=None):
        st.pills(
            "Start from one of four invented drives",
            list(starting_drives()),
            format_func=lambda name: starting_drives()[name][0],
            key=key,
            on_change=take,
            wrap=True,
            label_visibility="collapsed",
        )
        scenario, display = state.scenario(), state.display()
        length = wording.length_text(scenario, display)
        own = f"Your own drive, {length} in all. Pick one above to start over."
        st.caption(f"{starting_drives()[name][1]} {length} in all." if name else own)


def pick_season(*, behind: bool = False, help: str | None = None, named: bool = True) -> None:
    """The four seasons, one tap each; `named` where the widget shows its name."""
    scenario = state.scenario()

    def take() -> None:
        now, season = state.scenario(), st.session_state[key]
        if season is not None and not state.is_late(key):
            state.put_whole(now.with_setting("ambient_c", getattr(now.year, f"{season}_c")))

    key = state.set_widget("choose-season", wording.season_of(scenario.conditions, scenario.year), behind=behind)
    st.segmented_control(
        "Season", SEASONS, format_func=str.capitalize, key=key, on_change=take, width="stretch", help=help,
        label_visibility="visible" if named else "collapsed",
    )  # fmt: skip


def choose_season() -> None:
    """Season, exact temperature, road surface, cabin and a start warmed up on the plug."""
    pick_season(
        behind=True,
        help="Sets the temperature to that of the season; what each season's is can be changed on the first page."
    )
    control(CONDITION_FIELDS["ambient_c"], behind=True)
    control(CONDITION_FIELDS["surface"], look="list", behind=True)
    control(CONDITION_FIELDS["preconditioned"], behind=True)
    control(CONDITION_FIELDS["cabin"], behind=True)
