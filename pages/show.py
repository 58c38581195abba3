"""Six cards to hold towards somebody: the drive, the number, before and after, lift-off, winter, the limits."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from html import escape

import streamlit as st

from model.describe.parameters import class_labels
from model.kernel.savings import Result
from model.kernel.timeline import books
from model.limits.limit_settings import LimitSettings
from pages.parts import departures, description, lift_off_words, link, show_words, state, winter_words, wording
from pages.parts.answer_line import choose_drive, pick_season, say_left_out, take_car
from pages.parts.charts.energy import before_after
from pages.parts.charts.lift_off_steps import lift_off_steps
from pages.parts.charts.pedal import foot_and_pedal
from pages.parts.charts.range_road import range_road, range_road_words, season_roads
from pages.parts.charts.squares import NARROW_PX, SQUARE_PX, counted, squares
from pages.parts.drive_part import draw_strip, last_answer
from pages.parts.facts import fact_rows, fuel_spared
from pages.parts.figure import draw_chart, print_files
from pages.parts.folding import is_narrow
from pages.parts.quick_part import draw_quick
from pages.parts.reach_words import band_text, reach_text, stops_text, year_text
from pages.parts.show_words import ShowCard
from pages.parts.showroom_part import draw_settings, pick_car
from pages.parts.theme import Spec, palette
from pages.parts.typography import together

CARD = "card"
"""The page's own parameter in the address: which card, from 1."""
DOUBLE_TAP_S = 0.4
"""Whoever means one card may tap twice; for this long after a card was drawn [s] a tap was meant for the one before."""


# the cards


def say(card: ShowCard) -> ShowCard:
    """Draw the large words of a card, and the sentences below them."""
    say_title(card)
    say_sentences(card)
    return card


def say_title(card: ShowCard) -> None:
    """The day that a card is about, and its large words."""
    if card.day:
        st.markdown(f"{card.day[:1].upper()}{card.day[1:]}")
    st.title(card.title, anchor=False)


def say_sentences(card: ShowCard) -> None:
    """What stands below the large words, or below the picture between them."""
    if card.sentences:
        st.html("".join(f"<p>{escape(together(sentence))}</p>" for sentence in card.sentences))
    if card.small:
        st.markdown(together(card.small))


def tell() -> ShowCard:
    """Drive, car and season, one tap each."""
    scenario, display = state.scenario(), state.display()
    card = say(show_words.tell(display))
    if refusal := state.refusal():
        st.error(refusal)
    draw_strip()
    choose_drive("show", label=display.say("show-drive"))
    draw_quick(plain=True)
    pick_car()
    choose_class(scenario.car_class)
    say_left_out()
    pick_season()
    with st.container(key="tell-foot", horizontal=True, horizontal_alignment="distribute", vertical_alignment="center"):
        season = description.season_words(scenario.conditions, scenario.year, display)
        apart = departures.text(scenario, display)
        st.caption(display.say("card-tell-now", day=season, apart=apart, also=bool(apart)), width="content")
        st.page_link("your_drive.py", label=display.say("show-another-drive"), query_params=link.own_link())
    return card


def choose_class(car_class: str) -> None:
    """The car's class: one tap, or on a telephone two, where ten names would take half of the card."""
    key = state.set_widget("choose-car", car_class)
    choose = {"label": state.display().say("show-car"), "options": [*class_labels()], "key": key, "on_change": take_car,
              "kwargs": {"keep": False}, "format_func": lambda name: class_labels()[name]}  # fmt: skip
    if is_narrow():
        st.selectbox(**choose)
    else:
        st.pills(required=True, wrap=True, **choose)


def picture(chart: Spec, title: str, key: str) -> None:
    """A picture of the card, known by `key`, with what it shows in words; to be had for print."""
    draw_chart(chart, alt=title, key=key)
    pictures[key] = chart, title


def offer_pictures() -> None:
    """The pictures of the card as files."""
    if pictures and st.toggle(state.display().say("for-print"), key=f"show-for-print-{here}"):
        for key, (chart, title) in pictures.items():
            print_files(chart, title, None, key=key, name=f"{state.shown().car_class}-{key}")


def number(result: Result) -> ShowCard:
    """What it saves."""
    scenario, display = state.shown(), state.display()
    bands = state.answer(scenario)
    assert bands is not None
    beside = [reach_text(result, display), stops_text(result, display), band_text(result, bands, display),
              departures.frost_text(scenario, display), departures.unusual_text(scenario, display)]
    if not result.followed:
        beside.append(wording.not_followed(state.described_duration_s(scenario), result.trace.duration_s, display))
    fuel = fuel_words(result)
    drawn_too = bands.range_km is not None and bands.range_gain_km is not None and not fuel
    card = show_words.number(bands, scenario, display, [line for line in beside if line], fuel, drawn=drawn_too)
    say_title(card)
    if drawn_too:
        with st.container(key="show-road"):
            road = range_road(bands, display, state.dark(), large=not is_narrow())
            picture(road, range_road_words(bands, display), "show-range")
    say_sentences(card)
    say_money()
    return card


@st.fragment(parallel=True)
def say_money() -> None:
    """What a year costs, beside the car driven now where that is known; drawn beside the rest, as on the first page."""
    scenario, display = state.shown(), state.display()
    if (year := state.year(scenario)) is None:
        return
    # what a hybrid spares stands with the number
    lines = [] if state.year_fuel(scenario) else [show_words.year_cost(year, scenario.year, display)]
    if beside := state.beside_now(scenario):
        what, much, _ = wording.beside_fact(beside, scenario.year, display)
        lines.append(display.say("card-fact", what=what, much=much))
    if lines:
        st.html(f"<p>{' '.join(escape(together(line)) for line in lines)}</p>")


def fuel_words(result: Result) -> str:
    """What a hybrid spares, on 100 km and in the year; empty for other cars."""
    scenario, display = state.shown(), state.display()
    year, year_fuel = state.year(scenario), state.year_fuel(scenario)
    in_year, days = "", 0
    if year is not None and year_fuel is not None:
        _, in_year, _ = wording.year_fact(year, scenario.year, display, year_fuel)
        days = wording.year_days(year)
    return show_words.fuel_words(fuel_spared(scenario, result), in_year, days, display)


def bars(result: Result) -> ShowCard:
    """Before and after: of a hundred squares, which were heat and which are saved; else as bars."""
    book, display = books(result), state.display()
    card = say(show_words.bars(book, state.shown(), display))
    counts, heat = counted(book), show_words.heat(book, display)
    if counts is None:
        with st.container(key="show-bars"):
            picture(before_after(book, display, state.dark()), f"{card.title}. {card.why}", "show-chart")
            st.html(marked_lines(heat))
        return card
    square_px = NARROW_PX if is_narrow() else SQUARE_PX
    with st.container(key="show-squares", gap="xsmall"):
        for run, lines in (("friction_only", heat[:1]), ("regenerated", heat[1:])):
            st.html(marked_lines(lines))
            alt = f"{' '.join(text for _, text in lines)}. {show_words.squares_text(counts[run], display)}"
            picture(squares(counts[run], square_px, state.dark()), alt, f"show-{run}")
        st.html(key_of_squares(counts["regenerated"]))
    return card


def marked_lines(texts: Sequence[tuple[str, str]]) -> str:
    """Large lines, each beside the colour of what it is about."""
    colours = palette(state.dark())
    lines = (f'<p style="border-color: {getattr(colours, of)}" class="{of}">{escape(together(text))}</p>'
             for of, text in texts)  # fmt: skip
    return f'<div class="lines">{"".join(lines)}</div>'


def key_of_squares(counts: Mapping[str, int]) -> str:
    """What each kind of square is, in their order."""
    colours, display = palette(state.dark()), state.display()
    kinds = (
        f'<span><i class="{of}" style="border-color: {getattr(colours, of)}"></i>'
        f"{escape(show_words.square_name(of, display))}</span>"
        for of, count in counts.items() if count
    )  # fmt: skip
    return f"<p>{escape(display.say('card-squares'))} {' '.join(kinds)}</p>"


def lift_off(_result: Result) -> ShowCard:
    """Which lift-off, and why."""
    found, scenario, display = state.lift_off(), state.shown(), state.display()
    assert found is not None
    card = show_words.lift_off(found.advice, scenario, display)
    *sentences, pedal = card.sentences
    say_title(card)
    with st.container(key="show-steps"):
        advice, set_now = found.advice.overall, scenario.driver.lift_off_mps2
        steps = lift_off_steps(advice, set_now, display, state.dark(), large=not is_narrow())
        picture(steps, card.title, "show-strengths")
    say_sentences(replace(card, sentences=tuple(sentences)))
    return replace(card, why=f"{pedal}\n\n{card.why}")


def winter(_result: Result) -> ShowCard:
    """A winter day."""
    expected = winter_words.slowing_expected(state.slowing_in_winter(), state.display())
    year, display = state.year(state.shown()), state.display()
    card = show_words.winter(year, expected, display)
    roads = season_roads(year, display, state.dark(), large=not is_narrow())
    if roads is None:
        return say(card)
    # what the picture shows it also says
    reached, *others = card.sentences
    say(replace(card, sentences=tuple(others)))
    with st.container(key="show-road"):
        picture(roads, reached, "show-roads")
    return card


def limits(_result: Result) -> ShowCard:
    """When it is not there, of this car, and the pedal that is."""
    found, display, narrow = state.foot_and_pedal(), state.display(), is_narrow()
    lift_off = state.lift_off()
    assert lift_off is not None
    advice = lift_off.advice.overall
    rows = show_words.beside_the_pedal(found, advice.slippery[-1], display)
    slippery = lift_off_words.slippery_text(advice, display)
    card = show_words.limits(display, drawn=bool(rows), slippery=slippery)
    say_title(card)
    if rows:
        chart = foot_and_pedal(found, rows, narrow=narrow, dark=state.dark())
        in_words = " ".join(display.say("pedal-row", name=row.name, foot=row.foot, pedal=row.pedal) for row in rows)
        with st.container(key="show-pedal"):
            picture(chart, f"{card.title}. {in_words}", "show-limits")
    else:
        asked = LimitSettings()
        glance = winter_words.glance(state.limits_at_a_glance(asked), asked, display)
        with st.container(key="facts-limits"):
            st.html(fact_rows((display.say("limit-name", part=part), held, "") for part, held in glance.items()))
    say_sentences(card)
    return card


ANSWERS: tuple[Callable[[Result], ShowCard], ...] = (number, bars, lift_off, winter, limits)
LAST = 1 + len(ANSWERS)


def draw(which: int) -> ShowCard:
    """One card, from 1; where there was no answer yet, why."""
    if which == 1:
        return tell()
    result = state.outcome(state.shown()).result
    if result is None:
        refusal = state.refusal()
        display = state.display()
        return say(ShowCard(display.say("card-cannot"), (refusal,), display.say("card-tell-why")))
    if state.shown() != state.scenario():
        st.page_link("your_drive.py", label=state.display().say("change-on-first-page"), query_params=link.own_link())
    with last_answer("card"):
        found = ANSWERS[which - 2](result)
        if also := also_told(which, result):
            st.markdown(also)
    return found


def also_told(which: int, result: Result) -> str:
    """Up to where the numbers of a card are, on those beside the number's own."""
    scenario, display = state.shown(), state.display()
    if which == 3:
        return reach_text(result, display)
    return year_text(state.year(scenario), scenario, result, display) if which == 5 else ""


# turning them


def place() -> int:
    """The card asked for in the address, from 1."""
    asked = st.query_params.get(CARD, "1")
    return min(max(int(asked), 1), LAST) if asked.isdecimal() and len(asked) < 3 else 1


def turn(to: int) -> None:
    """Show another card, unless the tap was the second of two."""
    if time.monotonic() - drawn()[1] >= DOUBLE_TAP_S:
        st.query_params[CARD] = str(to)


def drawn() -> tuple[int, float]:
    """The card drawn last, and when that was."""
    return st.session_state.get("card_drawn", (0, -math.inf))


def next_customer() -> None:
    """Clear everything, asked once."""
    # known by another name afterwards, so that it does not stay open over the next customer's card
    say = state.display().say
    customer = st.session_state.get("customer", 0)
    with st.popover(say("show-next-customer"), type="tertiary", key=f"next-customer-{customer}"):
        st.markdown(say("show-clears"))
        st.button(say("show-clear"), key="start-over", type="primary", on_click=link.start_over, width="stretch")


here, message = place(), state.display().say
pictures: dict[str, tuple[Spec, str]] = {}
with st.container(key="show"):
    with st.container(key="show-head", horizontal=True, wrap=False, vertical_alignment="center"):
        st.markdown(message("card-place", card=here, cards=LAST))
        # who is led through the cards for themselves has no showroom and no next customer
        if link.GUIDE not in st.query_params:
            if here == 1:
                draw_settings()
            next_customer()
        st.page_link("your_drive.py", label=message("show-close"), query_params=link.own_link())
    with st.container(key="card", gap="small"):
        card = draw(here)
    if drawn()[0] != here:
        st.session_state["card_drawn"] = (here, time.monotonic())
    with st.container(key="show-foot", gap="small"):
        with st.container(horizontal=True, wrap=False, horizontal_alignment="distribute", vertical_alignment="center"):
            st.button(message("show-back"), key="show-back", shortcut="Left", disabled=here == 1,
                      on_click=turn, args=(here - 1,))  # fmt: skip
            with st.popover(message("show-why"), key=f"why-{here}"):
                st.markdown(card.why)
                offer_pictures()
            if here < LAST:
                st.button(message("show-next"), key="show-next", type="primary", shortcut="Right",
                          on_click=turn, args=(here + 1,))  # fmt: skip
            else:
                if st.button(message("page-take-away"), key="show-take", type="primary"):
                    st.switch_page("take_away.py", query_params=link.own_link())
        st.markdown(message("caution"))
