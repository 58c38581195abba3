"""Which claim is asked about and what is said of it: chosen, typed and kept in the address."""

from __future__ import annotations

from typing import Any

import streamlit as st

from model.claims.collection import claims
from model.claims.inputs import INPUTS
from model.claims.questions import QUESTION_FIELDS, Question, question, sayable
from model.claims.specification import OWN, phrased
from model.describe.fields import InputError
from model.words.entries import help_of, label_of
from model.words.quantities import Value
from model.words.refusals import refusal_words
from pages.parts import claim_inputs as inputs
from pages.parts import claim_words as words
from pages.parts import state
from pages.parts.claim_address import CLAIM, put, settings
from pages.parts.claim_phrasing import with_part
from pages.parts.folding import is_narrow
from pages.parts.plain_text import inert
from pages.parts.typography import together

MOST_BUTTONS = 10
"""More choices than these stand in a list."""
LIST_PX = 320
"""The height of the list of claims on a telephone [px]."""
RELATIONS = ("at_least", "about", "at_most", "up_to", "on_average")


def message(name: str, **values: Value) -> str:
    """A message to the visitor."""
    return state.display().say(name, **values)


# what is asked, which lives in the address


def asked() -> tuple[Question, list[str]]:
    """The question of the address, and a sentence for each part of it that cannot be used."""
    claim_id = st.query_params.get(CLAIM, next(iter(claims())))
    notices: list[str] = []
    kept: dict[str, str] = {}
    if claim_id not in claims():
        notices.append(message("claim-unknown", given=claim_id))
        claim_id = next(iter(claims()))
    for key, value in settings().items():
        try:
            question(claim_id, kept | {key: value})
        except InputError as refused:
            notices.append(refusal_words(refused, state.display()))
        else:
            kept[key] = value
    return question(claim_id, kept), notices


def choose(claim_id: str) -> None:
    """Take up another claim; one of an article becomes one's own, to be changed."""
    put(*((OWN, phrased().get(claim_id, {})) if claim_id == OWN or claim_id in phrased() else (claim_id, {})))
    state.refusals().clear()
    st.session_state["open-claims"] = False
    open_row(None)


def say(key: str, value: str) -> None:
    """Note that something was said; nothing for an input that was left out."""
    if st.query_params.get(CLAIM) == OWN:
        put(OWN, with_part(settings(), key, value))
        return
    now = asked()[0]
    given = {name: text for name, text in now.given.items() if name != key}
    usual = now.claim.said.get(key, "")
    if value != usual:
        given[key] = value or "open"
    put(now.claim.id, given)


def open_row(key: str | None) -> None:
    """Open one condition and close the others."""
    st.session_state["open-said"] = key


# choosing and saying


def choose_claim(chosen: str) -> None:
    """The list of claims, closed until it is asked for, and the way to one of one's own."""
    is_open = st.session_state.get("open-claims", False)

    def turn() -> None:
        st.session_state["open-claims"] = not is_open

    # both ways in stand on the first screen: a claim of the list, and one's own
    with st.container(key="rows-claims", horizontal=True, gap="small"):
        st.button(
            message("claim-choose-another", claims=len(claims()) + len(phrased())), key="row-claims", type="tertiary",
            width="stretch", on_click=turn, icon=f":material/expand_{'less' if is_open else 'more'}:",
            icon_position="right",
        )  # fmt: skip
        st.button(message("own-row"), key=f"row-{OWN}", icon=":material/edit:", icon_position="right", type="tertiary",
                  width="stretch", on_click=choose, args=(OWN,))  # fmt: skip
    if not is_open:
        return
    # on a telephone the list is looked through where it is, so that the answer stays near
    around = st.container(height=LIST_PX, key="claims-list") if is_narrow() else st.container()
    columns = around.columns(2, gap="large")
    groups = list(words.GROUPS.items())
    for column, part in zip(columns, (groups[:2], groups[2:]), strict=True):
        for name, ids in part:
            with column, st.container(key=f"rows-group-{ids[0]}", gap=None):
                st.markdown(f"**{message('claim-group', group=name)}**")
                for claim_id in ids:
                    text, here = together(words.listed_text(claim_id, state.display())), claim_id == chosen
                    st.button(f":gray[{text}]" if here else text, key=f"row-{claim_id}", type="tertiary",
                              width="stretch", on_click=choose, args=(claim_id,), disabled=here)  # fmt: skip
    with columns[0], st.container(key="rows-group-phrased", gap=None):
        st.markdown(f"**{message('own-group')}**")
        for claim_id, said in phrased().items():
            st.button(together(said["words"]), key=f"row-{claim_id}", type="tertiary", width="stretch",
                      on_click=choose, args=(claim_id,))  # fmt: skip


def say_number(now: Question) -> None:
    """The number as published, and whether it was a least, an about or a most."""
    refused, sentence = state.refusals().get("set-number", ("", ""))

    def take_number() -> None:
        typed = st.session_state["set-number"]
        state.refusals().pop("set-number", None)
        try:
            given = inputs.number_setting(typed, now.claim.unit, state.display())
            changed = question(now.claim.id, {"number": given})
        except (InputError, ValueError):
            sentence = message("claim-number-refused", typed=typed)
            state.refusals()["set-number"] = (typed, sentence)
            return
        say_beside("number", given, changed.number == now.claim.number)

    def take_relation() -> None:
        relation = st.session_state["set-relation"] or asked()[0].claim.relation
        say_beside("relation", relation, relation == now.claim.relation)

    st.session_state["set-relation"] = now.relation if now.relation in RELATIONS else None
    st.session_state["set-number"] = refused if sentence else inputs.field_of_number(now, state.display())
    with st.container(key="claim-number", horizontal=True, vertical_alignment="bottom", gap="small"):
        st.selectbox(
            label_of(QUESTION_FIELDS["relation"], state.display()), RELATIONS, index=None,
            format_func=lambda relation: message("claim-relation", relation=relation),
            key="set-relation", on_change=take_relation, disabled=len(now.number) == 2, width=170,
            placeholder=message("claim-between"),
        )  # fmt: skip
        unit = now.claim.unit
        label = message("claim-number-in", unit=unit) if unit else message("claim-number")
        st.text_input(label, key="set-number", on_change=take_number, width=130,
                      placeholder=message("claim-number-such-as"))  # fmt: skip
    if sentence:
        st.error(inert(sentence))


def say_beside(key: str, value: str, as_claimed: bool) -> None:
    """Note a number or a relation; what the claim itself says need not be noted."""
    now = asked()[0]
    given = {name: text for name, text in now.given.items() if name != key}
    put(now.claim.id, given if as_claimed else {key: value} | given)


def say_conditions(now: Question) -> None:
    """A line for each input: what was said of it, or over what it runs; one is open at a time."""
    display = state.display()
    opened = st.session_state.get("open-said")
    with st.container(key="rows-said", gap=None):
        for key in now.declared:
            is_open = opened == key
            st.button(
                inputs.row_text(key, now, display), key=f"row-said-{key}", type="tertiary", width="stretch",
                icon=f":material/expand_{'less' if is_open else 'more'}:", icon_position="right", on_click=open_row,
                args=(None if is_open else key,),
            )  # fmt: skip
            if is_open:
                with st.container(key="entries", gap="xsmall"):
                    entry(key, now)
    others = inputs.listed_keys(now, sayable(now.claim), display)

    def take() -> None:
        if key := st.session_state["say-another"]:
            say(key, inputs.usual_of(INPUTS[key]))
            open_row(key)

    st.session_state["say-another"] = None
    another = message("claim-another-condition")
    st.selectbox(another, others, format_func=lambda key: inputs.label(key, display), key="say-another", on_change=take,
                 index=None, placeholder=another, label_visibility="collapsed")  # fmt: skip


def entry(key: str, now: Question) -> None:
    """The entry of one input: values to choose, or a number or a range to type."""
    field, display, name = INPUTS[key], state.display(), f"set-said-{key}"
    declared = now.declared[key]
    is_said = key in now.said or (key in now.claim.scope and key in now.settings)
    refused, sentence = state.refusals().get(name, ("", ""))

    def take_choices() -> None:
        picked = st.session_state[name]
        say(key, ",".join(field.text(value) for value in (picked if isinstance(picked, list) else [picked])))

    def take_number() -> None:
        typed = st.session_state[name]
        state.refusals().pop(name, None)
        try:
            say(key, inputs.setting_of(key, typed, state.display()) if typed.strip() else "")
        except InputError as refused:
            state.refusals()[name] = (typed, refusal_words(refused, state.display()))

    if field.kind == "number":
        said = {**now.claim.said, **now.settings}.get(key, "open")
        shown = "" if said == "open" or not is_said else inputs.entry_text(key, said, display)
        st.session_state[name] = refused if sentence else shown
        st.text_input(
            inputs.entry_label(key, display), key=name, on_change=take_number,
            placeholder=f"{inputs.open_text(key, declared, display)}", help=help_of(field, display),
        )  # fmt: skip
        if sentence:
            st.error(inert(sentence))
    else:
        options = [True, False] if field.kind == "yes_no" else list(field.choices)
        st.session_state[name] = list(declared.values) if is_said else []
        if key == "denominator":
            # a number is a share of one thing at a time
            options, st.session_state[name] = list(now.claim.denominators), declared.base
        look: dict[str, Any] = {"format_func": lambda value: inputs.value_text(key, value, display), "key": name,
                "on_change": take_choices, "help": help_of(field, display)}  # fmt: skip
        if key == "denominator":
            st.radio(inputs.label(key, display), options, **look)
        elif len(options) > MOST_BUTTONS:
            st.multiselect(inputs.label(key, display), options, placeholder=message("claim-choose-some"), **look)
        else:
            st.pills(inputs.label(key, display), options, selection_mode="multi", wrap=True, **look)
    st.caption(inputs.entry_help(key, now, display))
