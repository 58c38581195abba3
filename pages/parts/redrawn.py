"""What a change redraws: the parts of the page that it moves, or everything.

A page's script draws everything. What a drive moves it draws as a `part`, known by a name, with what that part is of;
what it moves outside of them it names with `stands`. After a change (`changed`) those parts are drawn again that are of
something else now. Everything is, where what stands outside the parts moved too, or where nothing did.
"""

from __future__ import annotations

from collections.abc import Callable
from contextvars import ContextVar
from dataclasses import dataclass, field
from enum import IntEnum

import streamlit as st

from pages.parts import link, state

Of = Callable[[], object]
INSIDE: ContextVar[list[tuple[Of, object]] | None] = ContextVar("INSIDE", default=None)
"""What the part is of in which is being drawn."""


class When(IntEnum):
    """When a part is redrawn among those that a change moves."""

    FIRST = 0
    THEN = 1
    LAST = 2


@dataclass
class DrawnPart:
    """A part as it was drawn last: what it was of."""

    when: When
    of: list[tuple[Of, object]] = field(default_factory=list)


@dataclass
class Drawn:
    """What a page has drawn, and for which drive; `outside` is what stands outside its parts."""

    drive: object
    in_parts: bool = False
    ahead: Callable[[], None] | None = None
    parts: dict[str, DrawnPart] = field(default_factory=dict)
    outside: list[tuple[Of, object]] = field(default_factory=list)
    redrawn: list[str] = field(default_factory=list)
    """The parts that the last change had redrawn; none where it was everything."""
    complete: bool = False
    broken_off: set[str] = field(default_factory=set)
    """Whether all was drawn to its end, and the parts that were not: one failed, or a change came before."""

    def moved(self) -> list[str]:
        """The parts that a change moved, in the order in which to redraw them; none where everything has to be."""
        if not self.complete or self.broken_off or any_moved(self.outside):
            return []
        names = [name for name, part in self.parts.items() if any_moved(part.of)]
        return sorted(names, key=lambda name: self.parts[name].when)


def any_moved(ofs: list[tuple[Of, object]]) -> bool:
    """Whether anything is another than when it was drawn."""
    return any(of() != before for of, before in ofs)


def begin(*, in_parts: bool, ahead: Callable[[], None] | None = None) -> None:
    """Begin to draw a page whole; `ahead` begins what it works out longest, now and after each change.

    On one that is not drawn `in_parts` a part is drawn as if it were none, and a change redraws everything.
    """
    st.session_state["drawn"] = Drawn(drive(), in_parts, ahead)
    if ahead:
        ahead()
    stands(frame)


def end() -> None:
    """Note that the page was drawn to its end; where something failed before, a change redraws everything."""
    _drawn().complete = True


def drive() -> object:
    """The drive described, and the units shown: what a part is of that is not said to be of less."""
    return state.scenario(), state.display()


def frame() -> object:
    """What decides on every page which parts there are."""
    now = state.scenario()
    refused = now if state.refusals() or state.outcome().refused else None
    return now.car_class, len(now.legs), now.return_trip, state.display(), refused, link.notices(), link.other_version()


def stands(of: Of) -> None:
    """Have everything redrawn where this moves; within a part that is redrawn instead."""
    inside = INSIDE.get()
    (_drawn().outside if inside is None else inside).append((of, of()))


def part(
    name: str, draw: Callable[[], object], *, of: Of = drive, when: When = When.THEN, beside: bool = False
) -> None:
    """Draw a part of the page; one within another is drawn and redrawn with that.

    It is redrawn alone, so it has to ask the session and the model for all that it shows. One that takes long is drawn
    `beside` the others at first.
    """
    if INSIDE.get() is not None:
        stands(of)
        draw()
    elif _drawn().in_parts:
        _drawn().parts[name] = DrawnPart(when)
        st.fragment(_draw, key=name, parallel=beside)(name, draw, of)
    else:
        draw()


def _draw(name: str, draw: Callable[[], object], of: Of) -> None:
    drawn = _drawn()
    if drawn.drive != drive():
        # a control within has changed the drive and left it at that
        st.rerun()
    drawn.parts[name].of = [(of, of())]
    drawn.broken_off.add(name)
    before = INSIDE.set(drawn.parts[name].of)
    try:
        draw()
    finally:
        INSIDE.reset(before)
    drawn.broken_off.discard(name)


def changed() -> None:
    """Redraw what was changed; the last that a control does."""
    drawn = _drawn()
    if not drawn.in_parts:
        return
    if drawn.ahead:
        drawn.ahead()
    names = drawn.moved()
    if not names:
        st.rerun()
    link.write()
    drawn.drive, drawn.redrawn = drive(), names
    st.rerun(names)


def _drawn() -> Drawn:
    return st.session_state.setdefault("drawn", Drawn(drive()))
