"""The server's entry: ``streamlit run app.py``.

What the pages show is in ``pages/``, what they compute in ``model/``. This file only sets up the process they run in.
"""

import base64
import gc
import hashlib
import re
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import altair  # noqa: F401
import pandas  # noqa: F401
import streamlit as st
from starlette.datastructures import MutableHeaders
from starlette.middleware import Middleware
from starlette.types import ASGIApp, Message, Receive, Scope, Send

import model.simulation  # noqa: F401

ERROR_SENTENCE = "This page could not be drawn; what you entered is kept, so change an entry or reload the page."


def inline_script_hashes() -> str:
    """The scripts written into Streamlit's own page, as a policy names them: nothing else may run inline."""
    page = (Path(st.__file__).parent / "static" / "index.html").read_text(encoding="utf-8")
    scripts = re.findall(r"<script>(.*?)</script>", page, flags=re.DOTALL)
    digests = (base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts)
    return " ".join(f"'sha256-{digest}'" for digest in digests)


CONTENT_SECURITY_POLICY = "; ".join(
    (
        "default-src 'self'",
        f"script-src 'self' 'wasm-unsafe-eval' {inline_script_hashes()}",
        # The interface and the charts set styles on their elements.
        "style-src 'self' 'unsafe-inline'",
        "img-src 'self' data: blob:",
        "font-src 'self' data:",
        "connect-src 'self'",
        "worker-src 'self' blob:",
        "object-src 'none'",
        "base-uri 'self'",
        "form-action 'self'",
        "frame-ancestors 'self'",
    )
)
SECURITY_HEADERS = {
    "Content-Security-Policy": CONTENT_SECURITY_POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
}


class SecurityHeaders:
    """Adds the security headers to every answer the server gives."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on and add the headers as its answer starts."""

        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).update(SECURITY_HEADERS)
            await send(message)

        await self.app(scope, receive, send_with_headers)


@asynccontextmanager
async def warm_start(_app: st.App) -> AsyncIterator[None]:
    """Keep the libraries imported above out of garbage collection.

    Streamlit collects all garbage after every run of a page. Left to look through the libraries each time, that takes
    longer than the page itself.
    """
    gc.collect()
    gc.freeze()
    yield


def show_one_sentence(_error: Exception) -> bool:
    """Say in one sentence that a page failed; Streamlit has by then logged the error with its traceback."""
    st.error(ERROR_SENTENCE)
    return True


app = st.App(
    "pages/entrypoint.py",
    lifespan=warm_start,
    middleware=[Middleware(SecurityHeaders)],
    on_script_error=show_one_sentence,
)
