"""Check a claim: choose it, say what was published, and see whether it holds, where, and how to print it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from urllib.parse import urlencode

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from model.claims.evidence import Beside, evidence
from model.claims.questions import Question, question
from model.claims.specification import MOST_WORDS, OWN, phrased
from model.claims.verdicts import Answer
from model.describe.fields import InputError
from model.words.bands import band_promise
from model.words.claims import rule, varied
from model.words.evidence import measured, measured_rule
from model.words.quantities import capital
from model.words.reading import Reading, read
from model.words.refusals import refusal_words
from pages.parts import claim_files, evidence_words, link, phrase_words, redrawn, state
from pages.parts import claim_words as words
from pages.parts.charts import claims as charts
from pages.parts.claim_address import CLAIM, GAVE, SAID, put, settings
from pages.parts.claim_asking import asked, choose_claim, message, say_conditions, say_number
from pages.parts.claim_phrasing import draw_phrasing
from pages.parts.drive_part import draw_drive
from pages.parts.figure import Picture, draw_chart, figure, offer_print
from pages.parts.folding import folded, in_sight, is_narrow
from pages.parts.plain_text import inert
from pages.parts.public_link import public_base
from pages.parts.reading_words import not_yet
from pages.parts.road_part import draw_own_road
from pages.parts.theme import TEXT_PX, WIDTH_PX
from pages.parts.typography import together

# answering


def answer(now: Question) -> Answer:
    """The verdict, its reason, the rule, and where the runs lie."""
    display, dark = state.display(), state.dark()
    # the line is there before and after, so that nothing moves when the model has run
    line = st.empty()
    line.caption(words.progress(now, state.display()))
    found = state.claim(now.claim.id, tuple(now.given.items()))
    line.caption(words.eyebrow(found, display))
    st.header(words.heading(found, display), anchor=False)
    rows, keys = words.rows_of(found, display), words.keys(found, display)
    chart = charts.distribution(found.values, words.bounds_of(found), rows, now.claim.unit, keys, display, dark)
    with st.container(key="claim-runs", gap="small"):
        st.markdown(f"### {words.finding(found, display)}")
        draw_chart(chart, alt=words.distribution_alt(found, rows, display), key="claim-runs-chart")
    st.markdown(words.reason(found, display))
    heading = message("claim-figures-heading")
    with st.expander(heading, type="compact", key="figures-drawer", on_change="rerun") as drawer:
        if drawer.open:
            st.markdown(together(varied(found, display)))
            st.table(words.varied_table(found, display), border="horizontal", hide_index=True,
                     alt=heading)  # fmt: skip
    with st.expander(message("claim-rule"), type="compact", key="why-drawer"):
        rules = rule(found, display), measured_rule(now, display), words.left_out(found, display)
        st.markdown("\n\n".join(rules))
    return found


def draw_evidence(found: Answer) -> None:
    """Beside each other what has been measured, and a sentence to quote."""
    of = evidence(found.question)
    left, right = st.columns([11, 10], gap="large")
    with left:
        st.markdown(f"### {message('claim-evidence-heading')}")
        if of.same:
            draw_measurements(of.same, message("claim-same-alt"))
        else:
            st.markdown(measured(of, state.display()))
        if of.near:
            near = message("claim-near-heading")
            with st.expander(near, type="compact", key="near-drawer", on_change="rerun") as drawer:
                if drawer.open:
                    draw_measurements(of.near, message("claim-near-alt"))
    with right:
        st.markdown(f"### {message('claim-quote-heading')}")
        st.code(words.quotable_short(found, state.display()), language=None, wrap_lines=True)
        with st.expander(message("print-quote-long"), type="compact", key="quote-drawer", on_change="rerun") as drawer:
            if drawer.open:
                st.code(words.quotable(found, state.display()), language=None, wrap_lines=True)


def draw_measurements(beside_claim: Sequence[Beside], alt: str) -> None:
    """Measurements as a table; on a telephone under one another, each a few lines."""
    table = evidence_words.table(beside_claim, state.display())
    if is_narrow():
        st.markdown("\n\n".join(f"**{number}**: {text}" for number, text in table.itertuples(index=False)))
    else:
        st.table(table, border="horizontal", hide_index=True, alt=alt)


def draw_needs(found: Answer) -> None:
    """What would have to be true, and what moves the number."""
    display = state.display()
    if why := words.why(found, display):
        st.markdown(why, width=TEXT_PX)
    grid = words.grid_of(found, display)
    if grid is None:
        st.markdown(words.no_grid(found, display))
        draw_tornado(found)
        return
    left, right = st.columns(2, gap="large")
    with left:
        if conditions := words.conditions(found, display):
            st.markdown("\n".join(f"- {capital(condition)}" for condition in conditions))
        shown = Picture(
            charts.region(grid, display, state.dark()), words.grid_alt(grid, display), words.grid_table(grid),
            words.grid_title(found, display), words.grid_words(found, display, state.dark()),
            about=words.claim_text(found.question, display),
        )  # fmt: skip
        figure(lambda: shown, "claim-needs", f"{found.question.claim.id}-needs.csv")
    with right:
        draw_tornado(found)


def draw_tornado(found: Answer) -> None:
    """How far each input alone moves the number."""
    if not found.tornado:
        return
    claim, display = found.question.claim, state.display()
    chart = charts.tornado(
        words.swings_of(found, display), found.tornado[0].base, found.question.bounds, claim.unit, display, state.dark()
    )
    title = words.tornado_title(found, display)
    shown = Picture(
        chart, f"{title}. {words.tornado_alt(found, display)}", words.tornado_table(found, display), title,
        message("claim-tornado-words"), about=words.claim_text(found.question, display),
    )  # fmt: skip
    figure(lambda: shown, "claim-tornado", f"{claim.id}-tornado.csv")


def draw_phrases(found: Answer) -> None:
    """Which of the seven phrases the number can mean, and what it would be worth as each."""
    now = found.question
    st.markdown(phrase_words.share_intro(now.claim, state.display()), width=TEXT_PX)
    with st.expander(message("claim-phrases"), type="compact", key="phrases-drawer", on_change="rerun") as drawer:
        if drawer.open:
            if "denominator" in now.claim.scope:
                draw_shares(now)
            phrases = phrase_words.phrases_table(now.claim, state.display(), formulas=not is_narrow())
            st.table(phrases, border="horizontal", hide_index=True, alt=message("claim-phrases-alt"))


def draw_shares(now: Question) -> None:
    """The same number meant as each share that fits; each is a claim of its own, tested when it is asked for."""
    with st.container(key="claim-shares", width=WIDTH_PX):
        line = st.empty()
        line.caption(words.progress(now, state.display()))
        key = "quantity" if now.own else "denominator"
        answers = {
            name: state.claim(now.claim.id, tuple((dict(now.given) | {key: name}).items()))
            for name in now.claim.denominators
        }
        rows = [words.phrase_row(name, found, state.display()) for name, found in answers.items()]
        title = state.display().say("phrases-shares-title")
        line.markdown(f"### {title}")
        st.markdown(phrase_words.shares_words(now, state.display()))
        draw_chart(charts.bands(rows, now.bounds, now.claim.unit, state.dark()), key="claim-shares-chart",
                   alt=f"{title}. " + " ".join(f"{row.text}." for row in rows))  # fmt: skip
        claimed = words.claim_text(now, state.display())
        offer_print(lambda: (charts.bands(rows, now.bounds, now.claim.unit), title), claimed,
                    key="claim-shares", name=f"{now.claim.id}-shares")  # fmt: skip


# to print with


def draw_print(found: Answer) -> None:
    """How it was tested, files, and the link that brings all of it back."""
    now = found.question
    st.markdown(f"### {message('claim-method-heading')}")
    method = f"{claim_files.method_note(found, state.display())} {band_promise(state.display())}"
    st.markdown(method, width=TEXT_PX)
    st.markdown(f"### {message('claim-files-heading')}")
    with st.expander(message("print-files-fold"), type="compact", key="files-drawer", on_change="rerun") as drawer:
        if drawer.open:
            st.markdown(message("print-files-about"), width=TEXT_PX)
            draw_files(found)
    st.markdown(message("claim-command"), width=TEXT_PX)
    st.code(claim_files.command(now), language=None, wrap_lines=True)
    st.markdown(message("claim-link"), width=TEXT_PX)
    st.code(link_of(found), language=None, wrap_lines=True)


def draw_files(found: Answer) -> None:
    """A button for each file; what is in it is made when it is asked for."""
    with st.container(key="claim-files", horizontal=True, gap="small"):
        for what, (ending, make, mime) in claim_files.files_of(found).items():
            st.download_button(
                message("print-file", file=what), partial(make, found), f"{found.question.claim.id}.{ending}", mime,
                key=f"file-{ending}", on_click="ignore", icon=":material/download:",
            )  # fmt: skip


def link_of(found: Answer) -> str:
    """The address of the page as it stands, with the version and what it gave."""
    now = found.question
    given = {SAID + key: value for key, value in now.given.items()}
    base = f"{public_base()}/{claim_files.PATH}" if public_base() else (st.context.url or "").partition("?")[0]
    return f"{base}?{urlencode(link.own_link() | {CLAIM: now.claim.id} | given | {GAVE: claim_files.gave(found)})}"


BELOW = (
    ("claim-needs-heading", "needs", draw_needs),
    ("claim-share-heading", "share", draw_phrases),
    ("claim-print-heading", "print", draw_print),
)
"""What folds below an answer and its evidence, in this order: heading, anchor, and what draws it."""


def draw_below(found: Answer) -> None:
    """Evidence and a quote; behind their headings, what else is known of an answer."""
    now = found.question
    with st.container(), folded(message("claim-measured-and-quoted"), "measured") as is_open:
        if is_open:
            draw_evidence(found)
    for heading, anchor, draw in BELOW:
        if draw is draw_phrases and (now.beyond or (now.own and not now.claim.denominators)):
            continue
        # nothing makes a claim true that cannot be judged
        if draw is draw_needs and now.beyond:
            continue
        with st.container(), folded(message(heading), anchor, when=True) as is_open:
            if is_open:
                draw(found)


def answer_in_sight(now: Question, sight: DeltaGenerator) -> Answer | None:
    """The answer, its heading kept in sight; None, and a sentence why, where there is none."""
    try:
        found = answer(now)
    except InputError as refused:
        st.error(inert(refusal_words(refused, state.display())))
        return None
    with sight:
        in_sight(lambda: words.heading(found, state.display()))
    if link.other_version() and (sentence := words.moved(st.query_params.get(GAVE, ""), found, state.display())):
        st.info(sentence)
    return found


def reading_of(given: Mapping[str, str]) -> Reading | None:
    """How the words are read; None where there are none, or too many."""
    try:
        return read(given["words"]) if given.get("words") else None
    except InputError:
        return None


def draw_own() -> None:
    """Everything that belongs to a claim in one's own words, as far as it is said."""
    given = settings()
    try:
        now, why = question(OWN, given), ""
    except InputError as refused:
        now, why = None, refusal_words(refused, state.display())
    with st.container(gap="small"):
        choose_claim(OWN)
        said = words.quoted(given["words"][:MOST_WORDS]) if given.get("words") else message("own-title")
        st.title(inert(words.claim_text(now, state.display()) if now else said), anchor=False)
        if now and (sentence := words.read_as(now, state.display())):
            st.caption(inert(sentence))
    sight = st.container(key="sight")
    answering, saying = st.columns([11, 10], gap="large")
    with saying, st.container(key="claim-said", gap="xsmall"):
        st.subheader(message("own-heading"), anchor=False)
        draw_phrasing(given)
        if now:
            st.subheader(message("claim-said-heading"), anchor=False)
            say_conditions(now)
            st.caption(message("claim-open-rest"))
    with answering, st.container(key="claim-answer", gap="xsmall"):
        if now is None and not given:
            return
        if now is None:
            st.info(inert(not_yet(given, reading_of(given), why, state.display())))
            return
        found = answer_in_sight(now, sight)
    if found:
        draw_below(found)


def draw_claim() -> None:
    """Everything that belongs to the claim."""
    if (claim_id := st.query_params.get(CLAIM, "")) in phrased():
        put(OWN, phrased()[claim_id])
        claim_id = OWN
    if claim_id == OWN:
        draw_own()
        return
    now, notices = asked()
    # each part has a place of its own, so that what opens in one does not make the others be drawn anew
    with st.container(gap="small"):
        if notices:
            st.info("\n\n".join((message("claim-link-in-part"), *map(inert, notices))))
        choose_claim(now.claim.id)
        st.title(words.claim_text(now, state.display()), anchor=False)
        if not now.as_listed:
            st.caption(state.display().say("claim-changed"))
    sight = st.container(key="sight")
    answering, saying = st.columns([11, 10], gap="large")
    with saying, st.container(key="claim-said", gap="xsmall"):
        # the number of a claim that cannot be judged is nobody's claim
        if not now.beyond:
            st.subheader(message("claim-published-heading"), anchor=False)
            say_number(now)
        if sentence := words.reading(now, state.display()):
            st.caption(sentence)
        st.subheader(message("claim-said-heading"), anchor=False)
        say_conditions(now)
        st.caption(message("claim-open-rest"))
    with answering, st.container(key="claim-answer", gap="xsmall"):
        found = answer_in_sight(now, sight)
    if found:
        draw_below(found)


def asked_here() -> object:
    """The claim hangs on what the page's own parameters in the address say of it, and not on the drive."""
    address = st.query_params.to_dict()
    return state.display(), address.items() - link.ours(address).items()


with st.container(key="claim"):
    redrawn.part("claim", draw_claim, of=asked_here)
with folded(message("claim-own-road-heading"), "road", when=True) as is_open:
    if is_open:
        draw_drive()
        redrawn.part("own-road", draw_own_road)
