"""The message files, ``assets/words/<language>/*.ftl``: one file a topic, in the syntax of Fluent.

A message may be broken over lines like prose: one line break is a space, an empty line stays an empty line.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache
from threading import Lock
from typing import Any, cast

from fluent.runtime import FluentBundle
from fluent.runtime.types import FluentType
from fluent.syntax import FluentParser, ast
from fluent.syntax.visitor import Visitor

from model.describe.tables import ASSETS

FOLDER = ASSETS / "words"
LINE_BREAK = re.compile(r"(?<!\n)\n(?!\n)")
BEGINNING = re.compile(r"^([a-zA-Z][\w-]*) *=", re.M)
NAMED = re.compile(r"\{\s*([a-z][\w-]*)")
READING = Lock()
FixedQuantity = Callable[..., str]
"""Writes a figure that stands in a message itself: its value, its unit, and its digits where three are too many."""

class MessageError(ValueError):
    """A message that is not there, or cannot be said: a fault of ours, never of what a reader entered."""


class _Prose(Visitor):
    """Makes one line of text that was broken over several."""

    def visit_TextElement(self, node: ast.TextElement) -> None:
        node.value = LINE_BREAK.sub(" ", node.value)


class Files:
    """The message files of a language; each is read when something of it is said, since all take half a second."""

    def __init__(self, language: str):
        self.texts = {path.name: path.read_text("utf-8") for path in sorted((FOLDER / language).glob("*.ftl"))}
        if not self.texts:
            raise MessageError(f"There are no messages in the language {language!r}.")
        self.homes = {name: file for file, text in self.texts.items() for name in BEGINNING.findall(text)}
        self._read: dict[str, dict[str, ast.Message]] = {}

    def messages(self, file: str) -> dict[str, ast.Message]:
        """The messages of a file, by id."""
        if file not in self._read:
            self._read[file] = self._parsed(file)
        return self._read[file]

    def _parsed(self, file: str) -> dict[str, ast.Message]:
        found: dict[str, ast.Message] = {}
        resource = FluentParser(with_spans=False).parse(self.texts[file])
        _Prose().visit(resource)
        for entry in resource.body:
            if isinstance(entry, ast.Junk):
                line = (entry.content or "").strip().splitlines()[0]
                raise MessageError(f"{file}: {line!r} is not the beginning of a message, or it does not end well.")
            if isinstance(entry, ast.Term):
                raise MessageError(f"{file}: -{entry.id.name} is a term; write it as a message.")
            if isinstance(entry, ast.Message):
                if entry.id.name in found:
                    raise MessageError(f"{file}: there is a message {entry.id.name} already.")
                found[entry.id.name] = entry
        return found

    def needed(self, name: str) -> set[str]:
        """The file in which a message stands, and those of all messages that it may name; none where it is nowhere."""
        needed: set[str] = set()
        asked = [self.homes[name]] if name in self.homes else []
        while asked:
            file = asked.pop()
            needed.add(file)
            named = {self.homes[other] for other in NAMED.findall(self.texts[file]) if other in self.homes}
            asked += named - needed
        return needed


@cache
def files(language: str) -> Files:
    """The message files of a language."""
    return Files(language)


def parts_of(name: str, language: str = "en") -> frozenset[str] | None:
    """The attributes of a message; None where there is no such message."""
    known = files(language)
    if name not in known.homes:
        return None
    return frozenset(attribute.id.name for attribute in known.messages(known.homes[name])[name].attributes)


@cache
def messages(language: str = "en") -> dict[str, ast.Message]:
    """Every message of a language, by its id.

    Raises
    ------
    MessageError
        Where a file has something that is no message, an id stands twice, or there is no such language.
    """
    found: dict[str, ast.Message] = {}
    for file in files(language).texts:
        for name, message in files(language).messages(file).items():
            if name in found:
                raise MessageError(f"{file}: there is a message {name} already.")
            found[name] = message
    return found


@cache
def bundle(language: str = "en", quantity: FixedQuantity | None = None) -> FluentBundle:
    """What says the messages that were read; figures in them without marks of isolation."""
    # typed as if it took one argument; it is given all that stand in the message
    functions = {"QUANTITY": cast(Callable[[Any], FluentType], quantity)} if quantity else {}
    return FluentBundle([language], functions=functions, use_isolating=False)


def _speaker(name: str, language: str, quantity: FixedQuantity | None) -> FluentBundle:
    """The bundle, with what a message needs read into it."""
    found = bundle(language, quantity)
    # a visitor must not find a message before those it names
    with READING:
        if not found.has_message(name):
            for file in files(language).needed(name):
                found.add_resource(ast.Resource(list(files(language).messages(file).values())))
    return found


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
    whole, _, attribute = name.partition(".")
    spoken = _speaker(whole, language, quantity)
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
