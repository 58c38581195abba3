"""A visitor without a browser: Streamlit's own messages over a WebSocket.

The protocol is Streamlit's private one, as of the version that ``requirements.txt`` pins; benchmarks lean on it, and
the tests of many at once and of what a change redraws.
"""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from streamlit.proto.BackMsg_pb2 import BackMsg
from streamlit.proto.Delta_pb2 import Delta
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg
from websockets.sync.client import ClientConnection, connect
from websockets.typing import Subprotocol

SAID = ("heading", "markdown", "html", "alert")
"""Elements whose words are read."""
VALUES = {
    "text_input": "string_value", "number_input": "double_value", "selectbox": "string_value",
    "checkbox": "bool_value", "radio": "string_value", "button": "trigger_value",
    "expandable": "bool_value",
}  # fmt: skip
"""In which field of a widget's state its value is sent."""
DAY_FOLDED = {"check_a_claim": "fold-road"}
"""Pages on which the day is asked for in a part that is folded, by its key."""
SHOWN = ("raw_values", "raw_value", "value")
"""Where what a server sets a widget to comes."""


@dataclass
class Node:
    """What stands at a place of the page, and the run that sent it last."""

    delta: Delta
    run: int

    @property
    def is_block(self) -> bool:
        """Whether it holds others."""
        return self.delta.WhichOneof("type") == "add_block"

    @property
    def kind(self) -> str:
        """Which element or block it is."""
        one = self.delta.add_block if self.is_block else self.delta.new_element
        return str(one.WhichOneof("type"))

    @property
    def element(self) -> Any:
        """The element or block itself; a block that is no more than a place has none of its own."""
        one = self.delta.add_block if self.is_block else self.delta.new_element
        return getattr(one, self.kind, one)


def is_last(answer: ForwardMsg) -> bool:
    """Whether a message is the last of what was asked for."""
    ended = answer.WhichOneof("type") == "script_finished"
    return ended and answer.script_finished != ForwardMsg.FINISHED_EARLY_FOR_RERUN


class Visitor:
    """One session on one page; see `visit`.

    `texts` are the words of the last run, in the order in which they came, `messages` and `bytes` what it sent in all.
    `page` is what stands there, by its place, as a browser keeps it: of a run of parts what is not in them stays.
    `held` is what widgets show, by their ids: as they were set last, or changed since.
    """

    def __init__(self, socket: ClientConnection, page: str) -> None:
        self.socket, self.place, self.page_hash, self.address = socket, page, "", ""
        self.texts: list[str] = []
        self.page: dict[tuple[int, ...], Node] = {}
        self.messages = self.bytes = self.run = 0
        self.parts: list[str] = []
        self.held: dict[str, Any] = {}

    def ask(self, link: Mapping[str, Any]) -> float:
        """Open the page, or run it again, with other values in its address; seconds until the server has finished."""
        asked = BackMsg()
        self.address = urlencode(link)
        if not self.page_hash:
            asked.rerun_script.page_name = self.place
        return self._send(asked)

    def change(self, key: str, value: Any) -> float:
        """Change the widget of a key, as a browser does; seconds until the server has finished."""
        node = self.widget(key)
        asked = BackMsg()
        asked.rerun_script.fragment_id = node.delta.fragment_id
        state = asked.rerun_script.widget_states.widgets.add(id=node.element.id)
        self.held[node.element.id] = [value] if node.kind in ("slider", "button_group") else value
        if node.kind == "slider":
            state.double_array_value.data.append(value)
        elif node.kind == "button_group":
            state.string_array_value.data.append(value)
        else:
            setattr(state, VALUES[node.kind], value)
        return self._send(asked)

    def widget(self, key: str) -> Node:
        """The widget of a key."""
        widgets = (node for node in self.page.values() if hasattr(node.element, "id"))
        # a blank at its end makes it another widget of the same key
        return next(node for node in widgets if node.element.id.rstrip().endswith(f"-{key}"))

    def _send(self, asked: BackMsg) -> float:
        asked.rerun_script.query_string = self.address
        asked.rerun_script.page_script_hash = self.page_hash
        answers: list[ForwardMsg] = []
        begin = time.perf_counter()
        self.socket.send(asked.SerializeToString())
        while not (answers and is_last(answers[-1])):
            answers.append(ForwardMsg.FromString(self.socket.recv(timeout=60)))  # type: ignore[arg-type]
        waited = time.perf_counter() - begin
        # a browser reads while the server works on; what this reader needs for it is not what a visitor waits for
        self.texts, self.messages = [], len(answers)
        self.bytes = sum(answer.ByteSize() for answer in answers)
        for answer in answers:
            self._read(answer)
        return waited

    def _read(self, answer: ForwardMsg) -> None:
        kind = answer.WhichOneof("type")
        if kind == "navigation":
            self.page_hash = answer.navigation.page_script_hash
        elif kind == "page_info_changed":
            self.address = answer.page_info_changed.query_string
        elif kind == "new_session":
            self.run, self.parts = self.run + 1, list(answer.metadata.run.fragment_ids)
        elif kind == "delta":
            self._put(tuple(answer.metadata.delta_path), answer.delta)
        elif is_last(answer):
            whole, parts = ForwardMsg.FINISHED_SUCCESSFULLY, ForwardMsg.FINISHED_FRAGMENT_RUN_SUCCESSFULLY
            assert answer.script_finished == (parts if self.parts else whole), answer
            self._forget()

    def _put(self, place: tuple[int, ...], delta: Delta) -> None:
        node = Node(delta, self.run)
        if not node.is_block:
            if node.kind == "exception":
                raise AssertionError(node.element.message)
            if getattr(node.element, "set_value", False):
                values = [getattr(node.element, name) for name in SHOWN if hasattr(node.element, name)]
                value = next(filter(None, values), values[-1])
                self.held[node.element.id] = value if isinstance(value, str | bool | float | int) else list(value)
            if node.kind in SAID:
                self.texts.append(node.element.body)
            # what stood in a container is gone with it
            self.page = {at: one for at, one in self.page.items() if at[: len(place)] != place}
        elif node.kind == "popover":
            self.texts.append(delta.add_block.popover.label)
        self.page[place] = node

    def _forget(self) -> None:
        """Take away what the run did not send anew: everywhere, or within the parts that it drew."""
        redrawn = [
            at for at, node in self.page.items()
            if node.is_block and node.run == self.run and node.delta.fragment_id in self.parts
        ]  # fmt: skip

        def stays(at: tuple[int, ...], node: Node) -> bool:
            within = not self.parts or any(at[: len(block)] == block for block in redrawn)
            return node.run == self.run or not within

        self.page = {at: node for at, node in self.page.items() if stays(at, node)}


@contextmanager
def visit(server_url: str, page: str = "", **more: Any) -> Iterator[Visitor]:
    """Come to a page of a server, and go again; `more` goes to the WebSocket, as cookies do."""
    address = server_url.replace("http", "ws", 1) + "/_stcore/stream"
    with connect(address, subprotocols=[Subprotocol("streamlit")], max_size=None, **more) as socket:
        yield Visitor(socket, page)
