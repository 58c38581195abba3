"""Phrasing a claim of one's own: the words, how they are read, and every part of that to be corrected."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import streamlit as st

from model.claims.inputs import INPUTS
from model.claims.specification import (
    AGAINST,
    FLAT,
    MOST_WORDS,
    OWN,
    OWN_RELATIONS,
    PLACES,
    Counted,
    counted,
    places,
    sayable_places,
)
from model.describe.fields import InputError
from model.words.amounts import held
from model.words.quantities import Display, Value
from model.words.reading import read
from model.words.refusals import refusal_words
from pages.parts import claim_inputs as inputs
from pages.parts import state
from pages.parts.claim_address import put
from pages.parts.plain_text import inert
from pages.parts.reading_words import reading_texts

Given = Mapping[str, str]


def message(name: str, **values: Value) -> str:
    """A message to the visitor."""
    return state.display().say(name, **values)


# changes of the claim, as flat texts


def with_part(given: Given, key: str, value: str) -> dict[str, str]:
    """The claim with one part set, or left out where it is empty; a place and what it stands for do not go together."""
    apart = {key, PLACES.get(key, ""), *(place for place, stands_for in PLACES.items() if stands_for == key)}
    kept = {name: text for name, text in given.items() if name not in apart}
    return kept | ({key: value} if value else {})


def with_number(given: Given, setting: str) -> dict[str, str]:
    """The claim with another number; two of them are claimed as between."""
    changed = dict(given) | {"number": setting}
    if ".." in setting:
        return changed | {"relation": "between"}
    return with_part(changed, "relation", "" if given.get("relation") == "between" else given.get("relation", ""))


def with_quantity(given: Given, quantity: str) -> dict[str, str]:
    """The claim about something else, with what can be said of that too."""
    count = counted()[quantity]
    sayable = {*count.sayable, *sayable_places(count)}
    kept = {key: text for key, text in given.items()
            if key in FLAT or (key.removeprefix(AGAINST) in sayable and not (count.beyond and key.startswith(AGAINST)))}
    return with_unit(kept | {"quantity": quantity})


def with_unit(given: Given) -> dict[str, str]:
    """The claim with its unit only where that is one of its quantity; without a comparison there is but one."""
    differs = any(key.startswith(AGAINST) for key in given)
    units = counted()[given["quantity"]].units(differs)
    unit = given.get("unit", "") if given.get("unit") in units else "" if differs else units[0]
    return with_part(given, "unit", unit)


def number_kept(before: Given, after: Given, display: Display) -> dict[str, str]:
    """The claim in another unit with the number that stood in the entry, whatever unit it is held in."""
    old, new = (given.get("unit", "") for given in (before, after))
    if "number" not in after or old == new or {display.unit(old), display.unit(new)} == {old, new}:
        return dict(after)
    try:
        shown = [display.value(float(part), old) for part in after["number"].split("..")]
    except ValueError:
        return dict(after)
    return dict(after) | {"number": "..".join(held(display.held(number, new)) for number in shown)}


def with_cases(given: Given, keys: list[str]) -> dict[str, str]:
    """The claim as a difference between two cases that differ in some inputs."""
    changed = {key: text for key, text in given.items()
               if not key.startswith(AGAINST) or key.removeprefix(AGAINST) in keys}  # fmt: skip
    for key in keys:
        if f"{AGAINST}{key}" not in changed:
            here, other = _two_of(key, changed.get(key, ""))
            changed = with_part(changed, key, here) | {f"{AGAINST}{key}": other}
    return with_unit(changed)


def _two_of(key: str, said: str) -> tuple[str, str]:
    """A first value for this case and for the other, to be corrected."""
    field = INPUTS[key]
    value = said or inputs.usual_of(field).partition("..")[0]
    if key == "hybrid":
        return value, "none"
    if field.kind == "yes_no":
        return value, "no" if field.parse(value) else "yes"
    if field.kind == "choice":
        return value, next(choice for choice in field.choices if choice != value)
    return value, value


# the form


def draw_phrasing(given: Given) -> None:
    """The claim's own words, its reading, and an entry for each part."""
    display, count = state.display(), counted().get(given.get("quantity", ""))
    _words(given)
    if given.get("words"):
        _reading(given, display)

    def take_quantity() -> None:
        name = st.session_state["own-quantity"]
        changed = with_quantity(given, name) if name else with_part(given, "quantity", "")
        put(OWN, number_kept(given, changed, display))

    def take(key: str, change: Callable[[str], dict[str, str]]) -> Callable[[], None]:
        def taken() -> None:
            put(OWN, number_kept(given, change(st.session_state[key] or ""), display))

        return taken

    st.session_state["own-quantity"] = count.id if count else None
    st.selectbox(
        message("own-quantity-label"), list(counted()), index=None, key="own-quantity",
        format_func=lambda name: message("own-counted-name", quantity=name), placeholder=message("own-choose"),
        on_change=take_quantity,
    )  # fmt: skip
    if count is None:
        return
    if not count.beyond:
        _number(given, count, take)
        _cases(given, count)
    for place in sayable_places(count):
        key = f"own-{place}"
        st.session_state[key] = given.get(place)
        st.selectbox(
            message("own-place-label", place=place), list(places().of(place)), index=None, key=key,
            format_func=lambda name: message("claim-place", place=name), placeholder=message("own-not-said"),
            on_change=take(key, lambda name, place=place: with_part(given, place, name)),  # type: ignore[misc]
        )  # fmt: skip


def _words(given: Given) -> None:
    def take_words() -> None:
        typed = st.session_state["own-words"]
        state.refusals().pop("own-words", None)
        try:
            reading = read(typed)
        except InputError as refused:
            state.refusals()["own-words"] = (typed, refusal_words(refused, state.display()))
        else:
            put(OWN, reading.given)

    refused, sentence = state.refusals().get("own-words", ("", ""))
    st.session_state["own-words"] = refused if sentence else given.get("words", "")
    st.text_area(message("own-words-label"), key="own-words", on_change=take_words, max_chars=MOST_WORDS,
                 placeholder=message("own-words-such-as"), help=message("own-words-help"), height=100)  # fmt: skip
    # what was typed is taken as the box is left, as it is by a press of this
    st.button(message("own-test"), key="own-test", type="primary")
    if sentence:
        st.error(inert(sentence))


def _reading(given: Given, display: Display) -> None:
    """How the words were read, which is open from the first: nothing of it is to pass unseen."""
    try:
        texts = reading_texts(read(given["words"]), given, display)
    except InputError:
        return
    with st.expander(message("reading-heading"), type="compact", key="reading-drawer", expanded=True):
        st.markdown("\n".join(f"- {inert(text)}" for text in texts))


def _number(given: Given, count: Counted, take: Callable[..., Callable[[], None]]) -> None:
    def take_number() -> None:
        typed = st.session_state["own-number"]
        state.refusals().pop("own-number", None)
        try:
            put(OWN, with_number(given, inputs.number_setting(typed, given.get("unit", ""), state.display())))
        except ValueError:
            state.refusals()["own-number"] = (typed, message("claim-number-refused", typed=typed))

    refused, sentence = state.refusals().get("own-number", ("", ""))
    relation, differs = given.get("relation"), any(key.startswith(AGAINST) for key in given)
    number = inputs.span_text(given.get("number", ""), given.get("unit", ""), state.display())
    st.session_state["own-relation"] = relation if relation in OWN_RELATIONS and relation != "between" else None
    st.session_state["own-number"] = refused if sentence else number
    units = list(count.units(differs))
    st.session_state["own-unit"] = given.get("unit") if given.get("unit") in units else None
    with st.container(key="own-number-row", horizontal=True, vertical_alignment="bottom", gap="small"):
        st.selectbox(
            message("own-relation-label"), [name for name in OWN_RELATIONS if name != "between"], index=None,
            key="own-relation", format_func=lambda name: message("own-relation", relation=name), width=150,
            on_change=take("own-relation", lambda name: with_part(given, "relation", name)),
            disabled=relation == "between",
            placeholder=message("claim-between") if relation == "between" else message("own-choose"),
        )  # fmt: skip
        st.text_input(message("claim-number"), key="own-number", on_change=take_number, width=120,
                      placeholder=message("claim-number-such-as"))  # fmt: skip
        st.selectbox(message("own-unit-label"), units, index=None, key="own-unit", width=150,
                     placeholder=message("own-choose"), format_func=state.display().unit,
                     on_change=take("own-unit", lambda name: with_part(given, "unit", name)))  # fmt: skip
    if sentence:
        st.error(inert(sentence))


def _cases(given: Given, count: Counted) -> None:
    keys = [key.removeprefix(AGAINST) for key in given if key.startswith(AGAINST)]

    def take_keys() -> None:
        put(OWN, number_kept(given, with_cases(given, st.session_state["own-against"]), state.display()))

    def label(key: str) -> str:
        return inputs.label(key, state.display())

    options = sorted(count.sayable, key=label)
    st.session_state["own-against"] = [key for key in keys if key in options]
    st.multiselect(
        message("own-against-label"), options, key="own-against", format_func=label, on_change=take_keys,
        placeholder=message("own-against-none"), help=message("own-against-help"),
    )  # fmt: skip
    for key in st.session_state["own-against"]:
        with st.container(key=f"own-case-{key}", horizontal=True, vertical_alignment="bottom", gap="small"):
            _case(given, key, key, message("own-this-case", input=label(key)))
            _case(given, key, f"{AGAINST}{key}", message("own-other-case"))


def _typed(key: str, said: str, display: Display) -> str:
    """A number or a span for its entry; as it is where a link brings something else."""
    try:
        return inputs.entry_text(key, said, display) if said else ""
    except ValueError:
        return said


def _case(given: Given, key: str, part: str, label: str) -> None:
    """The value of one case."""
    field, display, name = INPUTS[key], state.display(), f"own-{part}"
    refused, sentence = state.refusals().get(name, ("", ""))
    said = given.get(part, "")

    def take_typed() -> None:
        typed = st.session_state[name]
        state.refusals().pop(name, None)
        try:
            put(OWN, dict(given) | {part: inputs.setting_of(key, typed, display)})
        except InputError as refused:
            state.refusals()[name] = (typed, refusal_words(refused, display))

    def take_choice() -> None:
        put(OWN, dict(given) | {part: st.session_state[name]})

    if field.kind in ("number", "count"):
        st.session_state[name] = refused if sentence else _typed(key, said, display)
        st.text_input(inputs.with_unit(label, key, display), key=name, on_change=take_typed, width=220)
        if sentence:
            st.error(inert(sentence))
        return
    options = ["yes", "no"] if field.kind == "yes_no" else list(field.choices)
    options = ["none"] if part == f"{AGAINST}hybrid" else options
    st.session_state[name] = said if said in options else None

    def shown(option: str) -> str:
        if option == "none":
            return message("claim-battery-car")
        return inputs.value_text(key, field.parse(option), display)

    st.selectbox(label, options, index=None, key=name, format_func=shown, on_change=take_choice, width=220)
