"""Up to three drives side by side: the visitor's, and one or two that differ from it in one thing."""

from __future__ import annotations

from functools import partial

import streamlit as st

from model.describe.figures import Quantity, Several
from model.describe.parameters import car_from
from model.describe.scenario import SEASONS, Scenario
from model.out.comparison import SUBJECTS, car_text, common_km, difference, in_car_of, in_season, others
from model.sampling.hybrid import has_engine
from model.sampling.uncertainty import HIGH_SHARE, LOW_SHARE
from model.words.bands import band_promise
from model.words.quantities import capital
from pages.parts import compare_words as words
from pages.parts import redrawn, state
from pages.parts.charts.compare import side_by_side
from pages.parts.drive_part import last_answer
from pages.parts.figure import csv_text, draw_chart, offer_print
from pages.parts.folding import folded
from pages.parts.plain_text import inert
from pages.parts.reach_words import compared_text
from pages.parts.report import about as described
from pages.parts.theme import TEXT_PX
from pages.parts.typography import together

SUBJECT, VALUES, AS_DRIVEN = "differs", ("b", "c"), "as_driven"
AND_SEASON, KEPT_CAR, KEPT = "and_season", "kept_car", "kept"
"""The page's own parameters in the address: what differs, the value it has in the second drive and in the third,
whether slow-downs are as the car's lift-off makes them, the season of the other drives where that differs too, and a
second car of one's own; the value that stands for this car."""
FIRST_SUBJECT, FIRST_VALUE = "season", ("winter", "summer")
"""Where nothing is asked for; the second value for who is in the first already."""
LIST_PX = 270


def asked() -> tuple[str, list[str], list[str]]:
    """What differs, the values of the second drive and the third, and a sentence for each that cannot be used."""
    given, notices, say = st.query_params.to_dict(), [], state.display().say
    subject = given.get(SUBJECT, FIRST_SUBJECT)
    if subject not in SUBJECTS:
        notices.append(say("compare-no-subject", given=subject, known=Several(tuple(SUBJECTS), "")))
        subject = FIRST_SUBJECT
    offered = offers(subject)
    values = [given[key] for key in VALUES if given.get(key)]
    if SUBJECT not in given and not values:
        values = [value for value in FIRST_VALUE if value in offered][:1]
    for value in values:
        if value not in SUBJECTS[subject](state.shown()) and value != KEPT:
            what = words.subject_text(subject, state.display())
            notices.append(say("compare-no-value", what=what, given=value, known=Several(tuple(offered), "")))
    return subject, [value for value in dict.fromkeys(values) if value in offered], notices


def kept_car() -> str:
    """A second car of one's own, as it was kept; empty where there is none."""
    kept = st.query_params.get(KEPT_CAR) or st.session_state.get("kept-car", "")
    if kept and KEPT_CAR not in st.query_params:
        st.query_params[KEPT_CAR] = kept
    return str(kept)


def and_season(subject: str) -> str:
    """The season of the other drives, where it differs beside the subject; empty where it does not."""
    season = st.query_params.get(AND_SEASON, "")
    return season if season in SEASONS and subject != "season" else ""


def offers(subject: str) -> dict[str, Scenario]:
    """The drives that one's own can be held against, by the value they have."""
    scenario = state.shown()
    found = others(scenario, subject)
    kept = in_car_of(scenario, kept_car()) if subject == "car" else None
    if kept and (kept.car_class, kept.stated) != (scenario.car_class, scenario.stated):
        found = {KEPT: kept} | found
    season = and_season(subject)
    return {value: in_season(drive, season) for value, drive in found.items()} if season else found


def name_of(subject: str, drive: Scenario, is_own: bool = False, spoken: bool = False) -> str:
    """What a drive is called: by what differs, and its season where that differs too; `spoken` within a sentence."""
    display, season = state.display(), and_season(subject)
    name = words.name_of(subject, drive, display)
    if not is_own and subject == "car" and drive == offers(subject).get(KEPT):
        name = display.say("compare-kept", car=name)
    elif spoken:
        name = words.spoken(subject, name, display)
    if is_own or not season:
        return name
    return display.say("compare-and-season", name=name, season=display.say("season-name", season=season))


def keep_car() -> None:
    """Keep the car as it is described now."""
    st.session_state["kept-car"] = st.query_params[KEPT_CAR] = car_text(state.shown())


def put(subject: str, values: list[str]) -> None:
    """Write what is compared into the address."""
    for key in VALUES:
        st.query_params.pop(key, None)
    st.query_params[SUBJECT] = subject
    for key, value in zip(VALUES, values, strict=False):
        st.query_params[key] = value


def choose(subject: str, values: list[str]) -> None:
    """What differs, and up to two values beside the visitor's own."""
    scenario, display = state.shown(), state.display()
    offered = offers(subject)

    def take_subject() -> None:
        picked = st.session_state["compare-subject"]
        put(picked, list(offers(picked))[:1])

    def take_values() -> None:
        # a third pick takes the place of the one picked first
        picked = [value for value in values if value in st.session_state["compare-values"]]
        picked += [value for value in st.session_state["compare-values"] if value not in values]
        put(subject, picked[-len(VALUES) :])

    st.session_state["compare-subject"] = subject
    st.selectbox(
        display.say("compare-what"), list(SUBJECTS), format_func=lambda choice: words.subject_text(choice, display),
        key="compare-subject", on_change=take_subject, width=LIST_PX,
    )  # fmt: skip
    if subject != "season":
        choose_season(subject)
    if subject == "car":
        st.button(display.say("compare-keep"), key="keep-car", type="tertiary", icon=":material/push_pin:",
                  on_click=keep_car, help=display.say("compare-keep-help"))  # fmt: skip
    st.session_state["compare-values"] = values
    st.pills(
        display.say("compare-beside", yours=name_of(subject, scenario, is_own=True)),
        list(offered),
        selection_mode="multi",
        format_func=lambda value: capital(name_of(subject, offered[value])),
        key="compare-values",
        on_change=take_values,
        wrap=True,
    )


def choose_season(subject: str) -> None:
    """Whether the other drives are on the day of another season too."""
    display = state.display()

    def take() -> None:
        st.query_params[AND_SEASON] = st.session_state["compare-season"]

    def named(season: str) -> str:
        return display.say("season-name", season=season) if season else display.say("compare-same-day")

    st.session_state["compare-season"] = and_season(subject)
    st.selectbox(display.say("compare-others-season"), ["", *SEASONS], format_func=lambda name: capital(named(name)),
                 key="compare-season", on_change=take, width=LIST_PX)  # fmt: skip


def choose_speeds() -> bool:
    """Whether slow-downs are as the car's lift-off makes them: asked where lift-off strengths differ."""

    def take() -> None:
        if st.session_state["compare-speeds"]:
            st.query_params[AS_DRIVEN] = "yes"
        else:
            st.query_params.pop(AS_DRIVEN, None)

    say = state.display().say
    driven = st.query_params.get(AS_DRIVEN) == "yes"
    st.session_state["compare-speeds"] = driven
    st.segmented_control(
        say("compare-speeds"),
        [False, True],
        format_func=lambda driven: say("compare-speeds-option", driven=driven),
        key="compare-speeds",
        on_change=take,
        required=True,
    )
    st.caption(say("compare-speeds-help"))
    return driven


def compare(subject: str, values: list[str], as_driven: bool) -> None:
    """Sentences, picture, table and file."""
    scenario, display, dark = state.shown(), state.display(), state.dark()
    offered = offers(subject)
    drives = [scenario, *(offered[value] for value in values)]
    found = [(drive, *state.side(drive, scenario, as_driven)) for drive in drives]
    for drive, _, refusal in found:
        if refusal and drive == scenario:
            # the others lie on the same road
            st.error(refusal)
            return
        if refusal:
            name = capital(name_of(subject, drive))
            st.error(display.say("compare-refused", name=name, refusal=refusal))
    kept = [(drive, side) for drive, side, _ in found if side is not None]
    if len(kept) < 2 or kept[0][0] != scenario:
        return
    sides, spoken = [side for _, side in kept], []
    if (until_km := common_km(sides)) is not None:
        spoken.append(compared_text(sides, until_km, display))
        again = [state.side(drive, scenario, as_driven, until_km)[0] for drive, _ in kept]
        sides = [side for side in again if side is not None]
    names = [name_of(subject, drive, is_own=drive == scenario, spoken=True) for drive, _ in kept]
    differences = [difference(side, sides[0]) for side in sides[1:]]
    title = words.title(differences, names, display)
    spoken += [
        words.sentences(change, name, names[0], display)
        for change, name in zip(differences, names[1:], strict=True)
    ]
    alt = " ".join((f"{title}.", *spoken))
    if any(has_engine(car_from(drive.car_class, dict(drive.stated))) for drive, _ in kept):
        spoken.append(display.say("compare-engine"))
    names[0] = display.say("compare-yours", name=names[0])
    chart = side_by_side(sides, differences, names, display, dark)
    st.header(together(title), anchor=False)
    with st.container(key="compare-found", horizontal=True, gap="large"):
        draw_chart(chart, alt=alt, key="compare-chart")
        st.markdown(together("\n\n".join(spoken)))
    with folded(display.say("compare-figures"), "compare-table") as is_open:
        if not is_open:
            return
        table = words.table(sides, differences, names, display).map(together)
        st.table(table, border="horizontal", hide_index=True, alt=title)
        numbers, name = words.figures(sides, differences, names, display), f"{scenario.car_class}-comparison"
        with st.container(horizontal=True, vertical_alignment="center"):
            st.download_button(
                display.say("csv-file"), partial(csv_text, numbers, described(scenario, display)), f"{name}.csv",
                "text/csv", key="compare-file", on_click="ignore", type="tertiary", icon=":material/download:",
            )  # fmt: skip
            offer_print(lambda: (chart, title), "; ".join(names), key="compare", name=name)
        low, high = Quantity(100 * LOW_SHARE, "", places=0), Quantity(100 * HIGH_SHARE, "%", places=0)
        bands = display.say("compare-bands", low=low, high=high, cars=state.BAND_RUNS)
        st.caption(f"{bands} {band_promise(display)}", width=TEXT_PX)


def draw() -> None:
    """What is compared, and how it compares."""
    subject, values, notices = asked()
    if notices:
        st.info("\n\n".join(map(inert, notices)))
    with st.container(key="compare-asked", horizontal=True, gap="small"):
        choose(subject, values)
    as_driven = choose_speeds() if subject == "lift_off_mps2" else False
    if state.answered() is None:
        st.error(state.refusal())
    elif values:
        with last_answer("comparison"):
            compare(subject, values, as_driven)
    else:
        st.markdown(state.display().say("compare-pick"))


redrawn.part("comparison", draw)
