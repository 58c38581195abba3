"""The server's entry: ``streamlit run app.py``.

What the pages show is in ``pages/``, what they compute in ``model/``. This file only sets up the process they run in.
"""

import base64
import gc
import hashlib
import ipaddress
import os
import re
import socket
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from functools import cache
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages
from urllib.parse import urlsplit

import altair  # noqa: F401
import pandas  # noqa: F401
import streamlit as st
from starlette.datastructures import Headers, MutableHeaders
from starlette.formparsers import MultiPartParser
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, PlainTextResponse
from starlette.routing import Route
from starlette.types import ASGIApp, Message, Receive, Scope, Send
from starlette.websockets import WebSocketClose
from streamlit.logger import get_logger
from streamlit.runtime.scriptrunner import get_script_run_ctx

from model.describe.messages import messages
from model.kernel.warm import prepare
from pages import parts
from pages.parts.public_link import PUBLIC_URL

HOME = Path(__file__).parent
TOOLKITS_PAGE = (Path(st.__file__).parent / "static" / "index.html").read_text(encoding="utf-8")
PAGES = {path.stem for path in (HOME / "pages").glob("[a-z]*.py")} - {"entrypoint", "your_drive"} | {""}
"""The pages by their place in the address; the first has none."""
OWN_SCRIPT = "own.js"
TOOLKITS_PLACES = {"_stcore", "static", "media", "component"}
TOOLKITS_FILES = {"favicon.png", "manifest.json"}
MultiPartParser.spool_max_size = 32 * 2**20
"""What is uploaded stays in memory: it would be put on the disk beyond a megabyte. `server.maxUploadSize` is less."""
CLOSED = {"_stcore/metrics"}
"""Nobody is counted here."""
NO_SUCH_PAGE = (
    '<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>Brake to Battery</title>'
    '<p>There is no such page. <a href="/">Brake to Battery starts here.</a></p></html>'
)
NOT_THIS_SERVER = (
    "This server does not go by that name. It is set with --browser.serverAddress, or with the environment variable "
    f"{PUBLIC_URL} where a proxy stands in front of it."
)
ERROR_SENTENCE = "This page could not be drawn; what you entered is kept, so change an entry or reload the page."
NOT_TAKEN_SENTENCE = "Your last change could not be taken over; what you entered before is kept, so reload the page."


def inline_script_hashes() -> str:
    """The scripts written into Streamlit's own page, as a policy names them: nothing else may run inline."""
    scripts = re.findall(r"<script>(.*?)</script>", TOOLKITS_PAGE, flags=re.DOTALL)
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


@cache
def given_names() -> frozenset[str]:
    """The names by which this server is reached, as they were set; of an address only its host."""
    given = (st.get_option("browser.serverAddress"), os.environ.get(PUBLIC_URL, ""))
    names = {name_of(address) for address in (*given, *st.get_option("server.corsAllowedOrigins"))}
    # what was not set has no name, nor has the origin of a page without a host
    return frozenset(names - {""})


def name_of(address: str) -> str:
    """The host of an address or of a host with its port; empty where it has none."""
    try:
        return urlsplit(address if "//" in address else f"//{address}").hostname or ""
    except ValueError:
        return ""


def is_known(name: str) -> bool:
    """Whether this server may be reached by a name: by numbers always, since nobody can make those lead elsewhere."""
    try:
        return bool(ipaddress.ip_address(name))
    except ValueError:
        return name == "localhost" or name in given_names()


class Door:
    """Lets in whoever asks for this server by a name of its own, from its own pages, for something that exists.

    Streamlit would ask a service on the internet for this machine's address before it turns a stranger's page away.
    """

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or turn it away."""
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        host, origin = headers.get("host", ""), headers.get("origin")
        own = origin is None or origin.partition("//")[2] == host
        if not is_known(name_of(host)) or not (own or name_of(origin or "") in given_names() - {"localhost"}):
            refusal = PlainTextResponse(NOT_THIS_SERVER, 403) if scope["type"] == "http" else WebSocketClose(1008)
            await refusal(scope, receive, send)
        elif scope["type"] == "http" and not there_is(scope["path"]):
            await HTMLResponse(NO_SUCH_PAGE, 404)(scope, receive, send)
        else:
            if not own:
                # through a proxy, which calls this server by another name than the browser does
                del MutableHeaders(scope=scope)["origin"]
            await self.app(scope, receive, send)


def there_is(path: str) -> bool:
    """Whether something stands at a path."""
    base = st.get_option("server.baseUrlPath").strip("/")
    place = path.strip("/").removeprefix(base).strip("/")
    known = place in PAGES | TOOLKITS_FILES | {OWN_SCRIPT} or place.split("/")[0] in TOOLKITS_PLACES
    return known and place not in CLOSED


async def page(_request: Request) -> HTMLResponse:
    """Streamlit's page with our name and our script, which runs before all others."""
    return HTMLResponse(own_page(), headers={"Cache-Control": "no-cache"})


@cache
def own_page() -> str:
    """What the browser gets for every page."""
    text = TOOLKITS_PAGE.replace("<title>Streamlit</title>", "<title>Brake to Battery</title>")
    noscript = "<noscript><p>Brake to Battery needs JavaScript, which is switched off in this browser.</p></noscript>"
    text = re.sub("<noscript>.*?</noscript>", noscript, text, flags=re.DOTALL)
    # from here on a telephone knows its window's width; the toolkit's own scripts come later
    told, count = re.subn(r'(<meta\s+name="viewport"[^>]*>)', rf'\1\n    <script src="./{OWN_SCRIPT}"></script>', text)
    assert count == 1
    return told


async def own_script(_request: Request) -> FileResponse:
    """Our script."""
    return FileResponse(HOME / "assets" / OWN_SCRIPT, headers={"Cache-Control": "no-cache"})


def own_routes() -> list[Route]:
    """Our places, which come before Streamlit's."""
    base = "/" + st.get_option("server.baseUrlPath").strip("/")
    routes = {f"{base.rstrip('/')}/{place}": page for place in PAGES}
    return [Route(path, shown) for path, shown in routes.items()] + [
        Route(f"{base.rstrip('/')}/{OWN_SCRIPT}", own_script)
    ]


def send_at_once() -> None:
    """Have each part of an answer leave at once, on whatever socket this process listens.

    Left to itself a system holds a small part back until the one before has been confirmed, which a browser may put off
    for 40 ms; a page is a hundred small parts. Connections inherit this from the socket that they come in by. Streamlit
    hands nobody its sockets, so they are looked for among the open files, where a system lists those.
    """
    listed = Path("/dev/fd")
    for number in os.listdir(listed) if listed.is_dir() else ():
        try:
            found = socket.socket(fileno=int(number))
        except OSError:
            # no socket, or the directory listed
            continue
        is_network = found.family in (socket.AF_INET, socket.AF_INET6) and found.type == socket.SOCK_STREAM
        if is_network and found.getsockopt(socket.SOL_SOCKET, socket.SO_ACCEPTCONN):
            found.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        # it is not ours to close
        found.detach()


@asynccontextmanager
async def warm_start(_app: st.App) -> AsyncIterator[None]:
    """Have the physics compiled and all messages read, and keep what is there by now out of garbage collection.

    Left to look through libraries, pages and words each time, a collection takes longer than a page itself.
    """
    get_logger(__name__).info(prepare())
    for part in walk_packages(parts.__path__, f"{parts.__name__}."):
        import_module(part.name)
    messages()
    gc.collect()
    gc.freeze()
    yield


@asynccontextmanager
async def start(app: st.App) -> AsyncIterator[None]:
    """What is done before the first visitor is let in."""
    send_at_once()
    async with warm_start(app):
        yield


def show_one_sentence(_error: Exception) -> bool:
    """Say in one sentence that a page failed, or what was to be done before it is drawn.

    Streamlit has by then logged the error with its traceback.
    """
    run = get_script_run_ctx()
    st.error(ERROR_SENTENCE if run and run.has_script_started else NOT_TAKEN_SENTENCE)
    return True


app = st.App(
    "pages/entrypoint.py",
    lifespan=start,
    routes=own_routes(),
    middleware=[Middleware(SecurityHeaders), Middleware(Door)],
    on_script_error=show_one_sentence,
)
