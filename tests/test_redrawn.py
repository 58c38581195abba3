"""What a change redraws: after it a page says word for word what the same address says when it is opened anew."""

from collections.abc import Sequence
from typing import Any
from urllib.parse import parse_qsl

import pytest
from google.protobuf.message import Message

from tests.benchmarks.wire import Visitor, visit

NOT_SAID = {"id", "fragment_id", "deferred_file_id", "form_id", "page_script_hash", "icon", "element_hash", "uuid"}
"""Of what is sent, what nobody reads; an icon goes with its words."""
SHOWN = ("raw_values", "raw_value", "value", "default")
"""Where widgets have what they show; said apart."""
CHANGES = {
    "temperature": ("set-ambient_c", "7.5"),
    "season": ("choose-season", "Winter"),
    "pedal": ("set-brake_pedal", "Friction-only"),
    "car": ("choose-car", "City car"),
    "road": ("set-surface", "Wet"),
    "cabin": ("set-cabin", False),
    "drive": ("choose-drive-line", "Motorway run"),
}
"""What is behind the words of the answer line: widget and value."""
PAGES = ["", "lift_off", "winter_and_limits", "how_it_works", "compare", "take_away"]
OF_ONE_PAGE = {
    "a leg's speed": ("", {}, ["row-leg-1"], "set-leg1-speed_kmh", "63"),
    "a leg's way": ("", {}, ["row-leg-0"], "set-leg0-way", "Up"),
    "a leg's metres": ("", {"legs": "8_60_2_4_30_90_0_5_dry_"}, ["row-leg-0"], "set-leg0-climb_m", "120"),
    "slow-downs": ("", {}, ["row-leg-0"], "set-leg0-slow_downs", "0"),
    "a habit": ("", {}, ["row-habits"], "set-looks_ahead", "Early"),
    "a trailer": ("", {}, ["row-habits"], "set-trailer_kg", "800"),
    "charge": ("", {}, ["row-habits"], "set-soc_start", 85.0),
    "mass": ("", {}, ["car-drawer"], "set-mass_kg", "1850"),
    "price": ("", {}, ["year-drawer"], "set-price_per_kwh", "0.41"),
    "price of petrol": ("", {}, ["beside-drawer"], "set-petrol_price_per_l", "2.1"),
    "in a drawer": ("", {}, ["trust-drawer", "question-charge-drawer"], "set-ambient_c", "2"),
    "with a table open": ("", {}, ["ledger-as-table"], "set-ambient_c", "2"),
    "a charging stop": ("", {"legs": "600_120_0_0_30_0_0_5_dry_"}, [], "set-charging_stops", "1"),
    "one's own road below a claim": ("check_a_claim", {}, ["fold-road"], "set-ambient_c", "2"),
    "beyond what a battery holds": ("", {}, ["row-leg-1"], "set-leg1-distance_km", "900"),
}
"""What only one page asks for: the page, its address, what is opened first, widget and value."""


def strings(sent: Message) -> list[Any]:
    """All that a message says, by the order of its fields."""
    said: list[Any] = []
    for field, value in sent.ListFields():
        if field.name in (*NOT_SAID, *SHOWN):
            continue
        for one in value if field.is_repeated else [value]:
            if isinstance(one, Message):
                said += strings(one)
            elif isinstance(one, str | bytes):
                said.append((field.name, one))
    return said


def said_by(visitor: Visitor) -> list[Any]:
    """A page in the order of its places, with what every widget shows."""
    return [
        (node.kind, strings(node.delta), visitor.held.get(getattr(node.element, "id", "")))
        for _, node in sorted(visitor.page.items())
    ]  # fmt: skip


def changed(server: Any, page: str, link: dict[str, Any], opened: Sequence[str], key: str, value: Any) -> None:
    """Change a widget, and hold the page against what its address says to somebody who opens it."""
    with visit(server.url, page) as visitor, visit(server.url, page) as fresh:
        visitor.ask(link)
        for name in opened:
            visitor.change(name, True)
        before = visitor.address
        visitor.change(key, value)
        print(f"{len(visitor.parts)} parts, {visitor.messages} messages")
        assert visitor.address != before
        fresh.ask(dict(parse_qsl(visitor.address, keep_blank_values=True)))
        for name in opened:
            fresh.change(name, True)
        assert said_by(visitor) == said_by(fresh)


@pytest.mark.parametrize("page", PAGES)
@pytest.mark.parametrize("change", CHANGES)
def test_a_page_says_after_a_change_what_it_says_when_opened_anew(page, change, server):
    changed(server, page, {"ambient_c": 9}, [], *CHANGES[change])


@pytest.mark.parametrize("case", OF_ONE_PAGE)
def test_so_it_does_after_a_change_of_what_it_alone_asks_for(case, server):
    page, link, opened, key, value = OF_ONE_PAGE[case]
    changed(server, page, {"ambient_c": 9} | link, opened, key, value)
