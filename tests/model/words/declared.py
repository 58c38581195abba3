"""What the comment above each message declares of its variables, and figures of every declared kind to say it with."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from itertools import product

from fluent.syntax import ast
from fluent.syntax.visitor import Visitor

from model.describe.figures import Part, Quantity, Several, Share, Shares, Span
from model.describe.messages import messages
from model.words.quantities import Value

DECLARED = re.compile(r"\$(\w+): (.+)")
FIGURES = (12.345, 0.0456, 25284.0, -3.2)


@dataclass(frozen=True)
class Message:
    """A message: its declared variables with their kinds, those it uses, and the options its selectors tell apart."""

    name: str
    kinds: dict[str, str]
    used: frozenset[str]
    options: dict[str, frozenset[str]]


class _Uses(Visitor):
    def __init__(self) -> None:
        self.used: set[str] = set()
        self.options: dict[str, set[str]] = {}
        self.references: set[str] = set()
        self.texts: list[str] = []

    def visit_TextElement(self, node: ast.TextElement) -> None:
        self.texts.append(node.value)

    def visit_VariableReference(self, node: ast.VariableReference) -> None:
        self.used.add(node.id.name)

    def visit_MessageReference(self, node: ast.MessageReference) -> None:
        self.references.add(node.id.name)

    def visit_SelectExpression(self, node: ast.SelectExpression) -> None:
        if isinstance(node.selector, ast.VariableReference):
            keys = {getattr(variant.key, "name", None) or variant.key.value for variant in node.variants}
            self.options.setdefault(node.selector.id.name, set()).update(keys)
        self.generic_visit(node)


@cache
def _uses(name: str) -> _Uses:
    found = _Uses()
    found.visit(parts()[name])
    for other in set(found.references):
        inner = _uses(other)
        found.used |= inner.used
        found.references |= inner.references
        for key, keys in inner.options.items():
            found.options.setdefault(key, set()).update(keys)
    return found


@cache
def parts() -> dict[str, ast.Pattern]:
    """Everything that can be said: the texts of messages by their ids, their attributes behind a point."""
    found = {}
    for name, message in messages().items():
        found[name] = message.value
        found |= {f"{name}.{attribute.id.name}": attribute.value for attribute in message.attributes}
    return found


def texts_of(name: str) -> list[str]:
    """What a message says between its figures, in all its variants; not what it refers to."""
    found = _Uses()
    found.visit(parts()[name])
    return found.texts


def referred_to() -> set[str]:
    """The messages that stand in others."""
    return set().union(*(_uses(name).references for name in parts()))


@cache
def declared() -> dict[str, Message]:
    """Every message with what its comment declares."""
    found = {}
    for name in parts():
        entry = messages()[name.partition(".")[0]]
        comment = entry.comment.content or "" if entry.comment else ""
        uses = _uses(name)
        options = {key: frozenset(keys) for key, keys in uses.options.items()}
        kinds = dict(DECLARED.findall(comment))
        if entry.attributes:
            # declared once for the message and its attributes, each of which uses some
            used_by_others = set().union(*(_uses(part).used for part in parts() if part.startswith(entry.id.name)))
            kinds = {key: kind for key, kind in kinds.items() if key in uses.used or key not in used_by_others}
        found[name] = Message(name, kinds, frozenset(uses.used), options)
    return found


def options_of(kind: str) -> tuple[str, ...]:
    """The options of “one of a, b, c”."""
    return tuple(kind.removeprefix("one of ").split(", "))


def samples(kind: str) -> list[Value]:
    """What a variable of that kind may be."""
    if kind.startswith("quantity in "):
        return [Quantity(figure, kind.removeprefix("quantity in ")) for figure in FIGURES]
    if kind.startswith("span in "):
        unit = kind.removeprefix("span in ")
        return [Span(1.2, 3.45, unit), Span(2.0, 2.0, unit), Span(-5.0, 40.0, unit)]
    if kind.startswith("part in "):
        return [Part(12.3, 45.6, kind.removeprefix("part in ")), Part(599.99, 600.0, kind.removeprefix("part in "))]
    if kind.startswith("list of "):
        inner = samples(kind.removeprefix("list of "))
        rows = (inner[:1], inner[:2], (inner * 3)[:3])
        return [Several(tuple(row)) for row in rows]  # type: ignore[arg-type]
    if kind.startswith("one of "):
        return list(options_of(kind))
    return {
        "share": [Share(0.0456), Share(0.26), Share(-0.31)],
        "shares": [Shares(0.26, 0.30), Shares(0.01, 0.04), Shares(0.2, 0.2)],
        "number": [Quantity(figure, "") for figure in FIGURES],
        "numbers": [Span(0.15, 0.35, "", places=2), Span(2.0, 2.0, "")],
        "count": [0, 1, 2, 21],
        "text": ["something"],
        "list": [Several(("something",)), Several(("something", "another")), Several(("one", "two", "three"), "or")],
        "yes or no": [True, False],
    }[kind]


def said_in_every_way(message: Message, limit: int = 200) -> list[dict[str, Value]]:
    """Values for a message: each kind in each of its forms, together as far as that is not too much."""
    columns = [[(name, value) for value in samples(kind)] for name, kind in message.kinds.items()]
    # every option of every choice with the first form of the figures, then the figures' forms with the first options
    chosen = [c if message.kinds[c[0][0]].startswith(("one of", "count", "yes")) else c[:1] for c in columns]
    ways = [dict(way) for way in product(*chosen)][:limit]
    longest = max((len(column) for column in columns), default=0)
    return ways + [dict(column[place % len(column)] for column in columns) for place in range(longest)]

