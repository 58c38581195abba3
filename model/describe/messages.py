"""The message files, ``assets/words/<language>/*.ftl``: one file a topic, in the syntax of Fluent.

A message may be broken over lines like prose: one line break is a space, an empty line stays an empty line.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, cast

from fluent.runtime import FluentBundle
from fluent.runtime.types import FluentType
from fluent.syntax import FluentParser, ast
from fluent.syntax.visitor import Visitor

from model.describe.tables import ASSETS

FOLDER = ASSETS / "words"
LINE_BREAK = re.compile(r"(?<!\n)\n(?!\n)")
FixedQuantity = Callable[..., str]
"""Writes a figure that stands in a message itself: its value, its unit, and its digits where three are too many."""

class MessageError(ValueError):
    """A message that is not there, or cannot be said: a fault of ours, never of what a reader entered."""


class _Prose(Visitor):
    """Makes one line of text that was broken over several."""

    def visit_TextElement(self, node: ast.TextElement) -> None:
        node.value = LINE_BREAK.sub(" ", node.value)


@cache
def messages(language: str = "en") -> dict[str, ast.Message]:
    """Every message of a language, by its id.

    Raises
    ------
    MessageError
        Where a file has something that is no message, an id stands twice, or there is no such language.
    """
    found: dict[str, ast.Message] = {}
    for path in sorted((FOLDER / language).glob("*.ftl")):
        resource = FluentParser(with_spans=False).parse(path.read_text(encoding="utf-8"))
        _Prose().visit(resource)
        for entry in resource.body:
            if isinstance(entry, ast.Junk):
                line = (entry.content or "").strip().splitlines()[0]
                raise MessageError(f"{path.name}: {line!r} is not the beginning of a message, or it does not end well.")
            if isinstance(entry, ast.Term):
                raise MessageError(f"{path.name}: -{entry.id.name} is a term; write it as a message.")
            if isinstance(entry, ast.Message):
                if entry.id.name in found:
                    raise MessageError(f"{path.name}: there is a message {entry.id.name} already.")
                found[entry.id.name] = entry
    if not found:
        raise MessageError(f"There are no messages in the language {language!r}.")
    return found


@cache
def bundle(language: str = "en", quantity: FixedQuantity | None = None) -> FluentBundle:
    """A language's messages, ready to be said; figures in them without marks of isolation."""
    # typed as if it took one argument; it is given all that stand in the message
    functions = {"QUANTITY": cast(Callable[[Any], FluentType], quantity)} if quantity else {}
    made = FluentBundle([language], functions=functions, use_isolating=False)
    made.add_resource(ast.Resource(list(messages(language).values())))
    return made


def rendered(
    name: str, values: Mapping[str, str | int], language: str = "en", quantity: FixedQuantity | None = None
) -> str:
    """A message with its values put in.

    Parameters
    ----------
    name : str
        The message's id; behind a point, which of its attributes.
    values : mapping
        By variable: words, figures that are words already, or counts, by which a language chooses its plural.
    language : str
        Whose messages.
    quantity : callable, optional
        How a figure that stands in a message itself is written, as in ``{ QUANTITY(20, unit: "°C") }``.

    Raises
    ------
    MessageError
        Where there is no such message, or a variable of it was not given.
    """
    spoken = bundle(language, quantity)
    whole, _, attribute = name.partition(".")
    if not spoken.has_message(whole):
        raise MessageError(f"There is no message {whole!r}.")
    message = spoken.get_message(whole)
    pattern = message.attributes.get(attribute) if attribute else message.value
    if pattern is None:
        raise MessageError(f"The message {name!r} is empty.")
    # the runtime puts in no more than 1,000 characters: what is longer goes in afterwards
    long = {f"\N{OBJECT REPLACEMENT CHARACTER}{key}": value for key, value in values.items() if _is_long(value)}
    stand_ins = {mark[1:]: mark for mark in long}
    text, errors = spoken.format_pattern(pattern, {**values, **stand_ins})
    if errors:
        raise MessageError(f"The message {name!r} cannot be said: {'; '.join(map(str, errors))}.")
    said = cast(str, text)
    for mark, value in long.items():
        said = said.replace(mark, str(value))
    return said


def _is_long(value: str | int) -> bool:
    return isinstance(value, str) and len(value) > 500
