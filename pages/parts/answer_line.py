"""The answer line: car, drive, season and pedal in one sentence, each word opening its control, and the headline."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

import streamlit as st
from streamlit.elements.lib.mutable_popover_container import PopoverContainer

from model.describe.car import CAR_FIELDS
from model.describe.figures import Several
from model.describe.parameters import class_labels
from model.describe.scenario import CONDITION_FIELDS, SEASONS, Scenario
from model.describe.scenario_io import starting_drives
from model.out.comparison import in_car
from model.words.quantities import Display, capital
from pages.parts import departures, description, redrawn, state, wording
from pages.parts.controls import control
from pages.parts.link import own_link
from pages.parts.reach_words import reach_text

ACTIONS = (
    ("show.py", "page-show", ":material/present_to_all:"),
    ("compare.py", "page-compare", ":material/compare_arrows:"),
    ("take_away.py", "page-take-away", ":material/print:"),
)
"""What can be done with the answer: page, message and icon."""
MARK = "\x00"
"""What stands in the sentence on both sides of a word that opens a control."""
ENTRIES_PX = 420
"""Width of what a word opens, where the screen has it."""


def draw_answer_line(*, with_answer: bool, driven: str = "") -> None:
    """Draw the line; pages that state the headline themselves ask for it without the answer.

    What is `driven` in place of the described drive stands in the line behind the car, and nothing of that drive.
    """

    def words() -> Sequence[str]:
        return pieces(driven)[1::2]

    redrawn.stands(words)
    with st.container(key="answer-line", horizontal=True, vertical_alignment="center", gap=None):
        # apart from the answer, which would be gone for a moment where the sentence has a word more than before
        with st.container(key="answer-words", horizontal=True, vertical_alignment="center", gap=None, width="content"):
            for place, piece in enumerate(pieces(driven)):
                if place % 2:
                    redrawn.part(f"line-{piece}", partial(open_word, piece, with_answer), of=partial(word_of, piece))
                else:
                    between = partial(words_between, driven, place)
                    redrawn.part(f"line-{place}", partial(say_between, between), of=between)
        if with_answer:
            redrawn.part("line-answer", say_answer)
        redrawn.part("actions", draw_actions, of=own_link)
    redrawn.part("left-out", partial(say_left_out, with_answer), of=about_car)


def pieces(driven: str) -> Sequence[str]:
    """The sentence: what stands between its words, and every other time a word."""
    return line(driven).split(MARK)


def words_between(driven: str, place: int) -> str:
    """What stands between words."""
    return pieces(driven)[place].strip()


def say_between(between: Callable[[], str]) -> None:
    """What stands between words, where anything does."""
    if text := between():
        say(text)


def line(driven: str) -> str:
    """The sentence, its words between marks."""
    scenario, display = state.scenario(), state.display()
    words = {name: f"{MARK}{name}{MARK}" for name in WORDS}
    if driven:
        return display.say("answer-line-driven", car=words["car"], driven=driven)
    return display.say(
        "answer-line",
        named=description.drive_id(scenario) is not None,
        season=description.season_of(scenario.conditions, scenario.year) is not None,
        also=bool(departures.by_key(scenario, display)),
        **words,
    )


def word_of(name: str) -> str:
    """What a word of the line says."""
    return WORDS[name](state.scenario(), state.display())


def apart_words(scenario: Scenario, display: Display) -> str:
    """What departs from the ordinary."""
    return display.figure(Several(tuple(departures.by_key(scenario, display).values()), ""))


def day_words(scenario: Scenario, display: Display) -> str:
    """The season, or the day's temperature."""
    return description.season_words(scenario.conditions, scenario.year, display)


WORDS: dict[str, Callable[[Scenario, Display], str]] = {
    "car": description.car_words,
    "drive": description.drive_words,
    "day": day_words,
    "pedal": description.pedal_words,
    "apart": apart_words,
}
"""What each word of the line says."""


def say_answer() -> None:
    """The headline, and how far the drive gets."""
    answer, display = state.answer(), state.display()
    if answer is None:
        return
    say(f"**{wording.headline(answer, display)}**")
    result = state.outcome().result
    if result is not None and (reached := reach_text(result, display)):
        say(reached)


def draw_actions() -> None:
    """What can be done with the answer."""
    with st.container(key="actions", horizontal=True, width="content"):
        for file, name, icon in ACTIONS:
            st.page_link(file, label=state.display().say(name), icon=icon, query_params=own_link())


def open_word(name: str, with_answer: bool) -> None:
    """A word of the line, and the control that it opens."""
    with word("season" if name == "day" else name, word_of(name)):
        if name == "car":
            choose_car()
        elif name == "drive":
            choose_drive("line")
        elif name == "apart":
            take_off(departures.by_key(state.scenario(), state.display()), changes=with_answer)
        else:
            with st.container(width=ENTRIES_PX):
                if name == "day":
                    choose_season()
                else:
                    control(CAR_FIELDS["brake_pedal"], help="", behind=True)
                    st.markdown(description.pedal_help(state.display()))


def take_off(apart: dict[str, str], *, changes: bool) -> None:
    """What departs from the ordinary, each to be taken off with one tap; and where it `changes`, if not here."""
    message = state.display().say
    st.markdown(message("line-counts"))
    for key, text in apart.items():
        st.button(text, key=f"take-off-{key}", icon=":material/close:", on_click=as_usual, args=(key,), width="stretch")
    if changes:
        st.page_link("your_drive.py", label=message("line-change"), query_params=own_link())


def as_usual(key: str) -> None:
    """Make one departure ordinary again."""
    state.put_whole(departures.as_usual(state.scenario(), key))
    redrawn.changed()


def about_car() -> object:
    """What is said of the car that was there before hangs on this."""
    kept = [st.session_state.get(name) for name in ("kept_for", "former_car", "open-door")]
    return state.scenario().stated, state.scenario().conditions.shown_wh_per_km, kept


def say_left_out(with_answer: bool = True) -> None:
    """What was stated of the car before: kept for this one or left out, to be turned round with one tap.

    Where a data sheet is open, it is said there, and not in a line without the answer.
    """
    if not with_answer and st.session_state.get("open-door") == "sheet":
        return
    scenario, display = state.scenario(), state.display()
    of_class = description.class_name(scenario)
    if _is_stated(scenario):
        kept = departures.stated_figures(scenario, display)
        if kept.items and st.session_state.get("kept_for") == scenario.car_class:
            with st.container(key="kept", horizontal=True, vertical_alignment="center", gap="small"):
                st.markdown(display.say("kept-of-car", figures=kept), width="content")
                st.button(display.say("line-class-figures", car=of_class), key="class-figures", type="tertiary",
                          icon=":material/undo:", on_click=leave_out)  # fmt: skip
        return
    car_class, former = st.session_state.get("former_car", ("", scenario))
    if car_class != scenario.car_class:
        return
    with st.container(key="left-out", horizontal=True, vertical_alignment="center", gap="small"):
        left_out = departures.stated_figures(former, display)
        st.markdown(display.say("left-out-of-car", figures=left_out) if left_out.items else "", width="content")
        st.button(display.say("line-put-in", car=of_class), key="put-in", type="tertiary",
                  icon=":material/undo:", on_click=put_in, args=(former,))  # fmt: skip


def leave_out() -> None:
    """Take the class's figures in place of what was stated; that can be put in again."""
    now = state.scenario()
    st.session_state["former_car"] = now.car_class, now
    state.put_whole(in_car(now, now.car_class))
    redrawn.changed()


def put_in(former: Scenario) -> None:
    """Take what was stated of the car before for this one; the pedal is asked for beside the car and is as it is."""
    now = state.scenario()
    pedal = tuple(item for item in now.stated if item[0] == "brake_pedal")
    others = tuple(item for item in former.stated if item[0] != "brake_pedal")
    shown = former.conditions.shown_wh_per_km
    state.put_whole(replace(now, stated=tuple(sorted(pedal + others))).with_setting("shown_wh_per_km", shown))
    redrawn.changed()


def _is_stated(scenario: Scenario) -> bool:
    """Whether anything is known of the car beside its class and its pedal."""
    return any(key != "brake_pedal" for key, _ in scenario.stated) or scenario.conditions.shown_wh_per_km is not None


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
        state.display().say("line-car-class"),
        list(class_labels()),
        format_func=lambda name: class_labels()[name],
        key=key,
        on_change=take_car,
        help=state.display().say("line-car-class-help"),
    )


def take_car(name: str = "choose-car", *, keep: bool = True) -> None:
    """Take the car's class that was picked in the widget of that name.

    What was stated of the car is its owner's, and is to `keep`; with a customer's car, of another, it is left out.
    """
    if state.is_late(key := state.key_of(name)):
        return
    now, picked = state.scenario(), st.session_state[key]
    if keep and _is_stated(now):
        st.session_state["kept_for"] = picked
        state.put_whole(replace(now, car_class=picked))
        redrawn.changed()
        return
    _, former = st.session_state.get("former_car", ("", None))
    former = now if _is_stated(now) else former
    if former is not None:
        st.session_state["former_car"] = picked, former
    state.put_whole(in_car(now, picked))
    redrawn.changed()


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


def choose_drive(where: str, *, label: str = "") -> None:
    """The four starting drives, one tap each; with a `label` that is seen they stand without what they are."""

    def asked() -> object:
        return description.drive_id(state.scenario()), description.length_of(state.scenario())

    redrawn.part(f"drives-{where}", partial(draw_drives, where, label), of=asked)


def draw_drives(where: str, label: str) -> None:
    """The starting drives as they stand in one place."""

    def take() -> None:
        if st.session_state[key] is not None and not state.is_late(key):
            start(st.session_state[key])
            redrawn.changed()

    name = description.drive_id(state.scenario())
    key = state.set_widget(f"choose-drive-{where}", name, behind=where == "line")
    scenario, display = state.scenario(), state.display()
    with st.container(key=f"drives-{where}", gap=None):
        st.pills(
            label or display.say("line-drives"),
            list(starting_drives()),
            format_func=lambda name: starting_drives()[name][0],
            key=key,
            on_change=take,
            wrap=True,
            label_visibility="visible" if label else "collapsed",
        )
        if label:
            return
        length = description.length_of(scenario)
        if name:
            st.caption(display.say("line-drive", about=starting_drives()[name][1], length=length))
        else:
            st.caption(display.say("line-own-drive", length=length))


def pick_season(*, behind: bool = False, help: str | None = None) -> None:
    """The four seasons, one tap each."""

    def asked() -> object:
        return description.season_of(state.scenario().conditions, state.scenario().year)

    redrawn.part("season", partial(draw_seasons, behind, help), of=asked)


def draw_seasons(behind: bool, help: str | None) -> None:
    """The seasons as they stand in one place."""
    scenario = state.scenario()

    def take() -> None:
        now, season = state.scenario(), st.session_state[key]
        if season is not None and not state.is_late(key):
            state.put_whole(now.with_setting("ambient_c", getattr(now.year, f"{season}_c")))
            redrawn.changed()

    key = state.set_widget("choose-season", description.season_of(scenario.conditions, scenario.year), behind=behind)
    display = state.display()
    st.segmented_control(
        display.say("line-season"), SEASONS, format_func=lambda name: capital(display.say("season-name", season=name)),
        key=key, on_change=take, width="stretch", help=help,
    )  # fmt: skip


def choose_season() -> None:
    """Season, exact temperature, road surface, cabin and a start warmed up while plugged in."""
    pick_season(behind=True, help=state.display().say("line-season-help"))
    control(CONDITION_FIELDS["ambient_c"], behind=True)
    control(CONDITION_FIELDS["surface"], look="list", behind=True)
    control(CONDITION_FIELDS["preconditioned"], behind=True)
    control(CONDITION_FIELDS["cabin"], behind=True)
