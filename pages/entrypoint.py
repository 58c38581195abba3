"""What stands on every page: navigation, the answer line, the drive strip and the foot."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta

import streamlit as st

from model import MODEL_VERSION
from model.describe.scenario import with_prices_of
from model.describe.tables import ASSETS
from model.words.quantities import Display
from pages.parts import link, redrawn, showroom, state, wording
from pages.parts.answer_line import ACTIONS, draw_answer_line
from pages.parts.drive_part import Notes, draw_drive, draw_strip, no_notes
from pages.parts.folding import is_narrow
from pages.parts.plain_text import inert
from pages.parts.strip_notes import lift_off_notes, winter_notes
from pages.parts.theme import on_paper, palette


@dataclass(frozen=True)
class Sheet:
    """One page: its file, and the messages of its name in the navigation, its title and what it is about.

    A sheet without a title draws its own, and a `bare` one stands without answer line, strip and foot. One that
    `draws_drive` places line and strip itself; one with a `bare_line` has no strip, nor has one with `bare_line_narrow`
    on a telephone. There one with `finding_first` has the strip at its end, and one that `places_strip` behind its
    answer. `notes` says what it writes over the strip, from the timeline of the drive; `ahead` begins what it works out
    longest. One drawn `in_parts` has redrawn only what a change moves.
    """

    file: str
    name: str
    title: str = ""
    about: str = ""
    hidden: bool = False
    bare: bool = False
    states_headline: bool = False
    draws_drive: bool = False
    bare_line: bool = False
    bare_line_narrow: bool = False
    finding_first: bool = False
    places_strip: bool = False
    notes: Notes = no_notes
    ahead: Callable[[], None] | None = None
    in_parts: bool = False


SHEETS = (
    Sheet("your_drive.py", "page-your-drive", "page-your-drive-title", "page-your-drive-about", states_headline=True,
          places_strip=True, in_parts=True),
    Sheet("lift_off.py", "page-lift-off", "page-lift-off-title", "page-lift-off-about", notes=lift_off_notes,
          places_strip=True, ahead=state.lift_off_ahead, in_parts=True),
    Sheet("winter_and_limits.py", "page-winter", bare_line_narrow=True, notes=winter_notes,
          ahead=state.season_ahead, in_parts=True),
    Sheet("how_it_works.py", "page-how", finding_first=True, in_parts=True),
    Sheet("check_a_claim.py", "page-claim", draws_drive=True, ahead=state.answer_ahead,
          in_parts=True),
    Sheet("show.py", "page-show", hidden=True, bare=True),
    Sheet("compare.py", "page-compare", "page-compare-title", "page-compare-about", hidden=True,
          finding_first=True, in_parts=True),
    Sheet("own_road.py", "page-own-road", "page-own-road-title", "page-own-road-about", hidden=True, draws_drive=True),
    Sheet("take_away.py", "page-take-away", "page-take-away-title", "page-take-away-about", hidden=True,
          bare_line=True, ahead=state.lift_off_ahead, in_parts=True),
    Sheet("sources.py", "page-sources", "page-sources", "page-sources-about", hidden=True, bare_line=True),
)
"""In the order of the navigation; the first is where an address without a page leads."""


def is_listed(sheet: Sheet) -> bool:
    """Whether the navigation names it: on a telephone also what the answer line leads to."""
    return not sheet.hidden or (is_narrow() and sheet.file in {file for file, _, _ in ACTIONS})


def foot() -> None:
    """Where else to go, for telephones, on which the navigation is folded up; the caution, units and sources."""

    def take() -> None:
        shown = st.session_state["display"] = Display(us=st.session_state["units"] == "US")
        now = state.scenario()
        year = with_prices_of(now.year, us=shown.us)
        st.session_state["prices_moved"] = year if year != now.year else None
        state.put(replace(now, year=year))

    display = state.display()
    with st.container(key="foot"):
        if is_narrow():
            redrawn.part("foot-pages", foot_pages, of=link.own_link)
        st.markdown(display.say("caution"))
        with st.container(horizontal=True, vertical_alignment="center"):
            st.session_state["units"] = "US" if display.us else "Metric"
            st.segmented_control(
                display.say("foot-units"), ["Metric", "US"], key="units", on_change=take, required=True,
                format_func=lambda units: display.say("foot-unit-system", units=units.lower()),
                label_visibility="collapsed",
            )  # fmt: skip
            if year := state.moved_prices():
                st.markdown(inert(wording.moved_prices(year, display)), width="content")
            st.button(display.say("foot-print"), key="print", type="tertiary", icon=":material/print:")
            redrawn.part("foot-sources", foot_sources, of=link.own_link)
            st.markdown(display.say("foot-version", version=MODEL_VERSION), width="content")


def foot_pages() -> None:
    """The pages of the navigation."""
    with st.container(key="foot-pages", horizontal=True, gap="small"):
        for sheet in SHEETS:
            if is_listed(sheet):
                st.page_link(sheet.file, label=state.display().say(sheet.name), query_params=link.own_link())


def foot_sources() -> None:
    """Where everything is from."""
    st.page_link("sources.py", label=state.display().say("page-sources"), query_params=link.own_link())


@st.fragment(run_every=timedelta(days=1))
def wake_up() -> None:
    """Draw nothing. With a part that is drawn by the clock the browser asks for the page when it is connected again.

    Without, a tablet that slept longer than its session lives would lose what is tapped first.
    """


st.set_page_config(page_title="Brake to Battery", layout="wide")
st.html(ASSETS / "style.css")
if state.dark():
    st.html(f"<style>{on_paper()}</style>")
wordmark = (ASSETS / "wordmark.svg").read_text(encoding="utf-8")
st.logo(wordmark.replace("currentColor", palette(state.dark()).ink))
showroom.current()
link.read()
# written before the page is drawn, so that what is pressed next is sent with the new address
link.write()
wake_up()
say = state.display().say
# out of sight; assets/own.js presses it when the system turns dark or light, since pictures are drawn for one of them
st.button(say("page-redraw"), key="redraw")
pages = [
    st.Page(
        each.file,
        title=say(each.name),
        default=each is SHEETS[0],
        visibility="visible" if is_listed(each) else "hidden",
    )
    for each in SHEETS
]
page = st.navigation(pages, position="top")
sheet = SHEETS[pages.index(page)]
redrawn.begin(in_parts=sheet.in_parts, ahead=sheet.ahead)
redrawn.stands(state.moved_prices)
with st.container(key="head", gap=None):
    if sheet.title:
        st.title(say(sheet.title), anchor=False)
        st.markdown(say(sheet.about))
    if notices := link.notices():
        st.info("\n\n".join((say("link-in-part"), *map(inert, notices))))
    if version := link.other_version():
        st.info(inert(wording.other_version(version, state.display())))
    strip_last = sheet.finding_first and is_narrow()
    if sheet.bare_line or strip_last or (sheet.bare_line_narrow and is_narrow()):
        draw_answer_line(with_answer=False)
    elif sheet.places_strip and is_narrow():
        draw_answer_line(with_answer=not sheet.states_headline)
    elif not (sheet.bare or sheet.draws_drive):
        draw_drive(with_answer=not sheet.states_headline, notes=sheet.notes)
page.run()
if strip_last:
    draw_strip(leads_back=True)
if not sheet.bare:
    foot()
redrawn.end()
