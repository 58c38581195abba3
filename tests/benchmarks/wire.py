"""A visitor without a browser: Streamlit's own messages over a WebSocket.

The protocol is Streamlit's private one, as of the version that ``requirements.txt`` pins; only benchmarks lean on it
and the test of many at once.
"""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import Any
from urllib.parse import urlencode

from streamlit.proto.BackMsg_pb2 import BackMsg
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg
from websockets.sync.client import ClientConnection, connect
from websockets.typing import Subprotocol

SAID = ("heading", "markdown", "html", "alert")
"""Elements whose words are read."""


class Visitor:
    """One session on one page; see `visit`.

    `texts` are the words of the last run, in the order in which they came, `messages` and `bytes` what it sent in all.
    """

    def __init__(self, socket: ClientConnection, page: str) -> None:
        self.socket, self.page, self.page_hash = socket, page, ""
        self.texts: list[str] = []
        self.messages = self.bytes = 0

    def ask(self, link: Mapping[str, Any]) -> float:
        """Open the page, or run it again, with other values in its address; seconds until the server has finished."""
        asked = BackMsg()
        asked.rerun_script.query_string = urlencode(link)
        asked.rerun_script.page_script_hash = self.page_hash
        if not self.page_hash:
            asked.rerun_script.page_name = self.page
        self.texts, self.messages, self.bytes = [], 0, 0
        begin = time.perf_counter()
        self.socket.send(asked.SerializeToString())
        while True:
            answer = ForwardMsg()
            received = self.socket.recv(timeout=60)
            answer.ParseFromString(received)
            self.messages += 1
            self.bytes += len(received)
            kind = answer.WhichOneof("type")
            if kind == "navigation":
                self.page_hash = answer.navigation.page_script_hash
            elif kind == "delta" and answer.delta.new_element.WhichOneof("type") == "exception":
                raise AssertionError(answer.delta.new_element.exception.message)
            elif kind == "delta" and (said := answer.delta.new_element.WhichOneof("type")) in SAID:
                self.texts.append(getattr(answer.delta.new_element, said).body)
            elif kind == "delta" and answer.delta.add_block.WhichOneof("type") == "popover":
                self.texts.append(answer.delta.add_block.popover.label)
            elif kind == "script_finished":
                assert answer.script_finished == ForwardMsg.FINISHED_SUCCESSFULLY, answer
                return time.perf_counter() - begin


@contextmanager
def visit(server_url: str, page: str = "", **more: Any) -> Iterator[Visitor]:
    """Come to a page of a server, and go again; `more` goes to the WebSocket, as cookies do."""
    address = server_url.replace("http", "ws", 1) + "/_stcore/stream"
    with connect(address, subprotocols=[Subprotocol("streamlit")], max_size=None, **more) as socket:
        yield Visitor(socket, page)
