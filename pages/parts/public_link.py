"""The link that others can open: where this server is known to the outside, the whole address, and its QR code."""

from __future__ import annotations

import ipaddress
import os
from collections.abc import Mapping
from urllib.parse import urlencode, urlsplit

import segno
from segno.encoder import DataOverflowError

PUBLIC_URL = "BRAKE_TO_BATTERY_PUBLIC_URL"
"""The environment variable with the address at which this server is reached from anywhere."""
PRIVATE_ENDINGS = (".local", ".localhost", ".internal", ".lan", ".home.arpa", ".test", ".invalid", ".example")
"""Names that mean nothing outside the network they are used in."""


def is_public(host: str) -> bool:
    """Whether a host can be reached from anywhere, as far as its name or number tells."""
    try:
        return ipaddress.ip_address(host).is_global
    except ValueError:
        return "." in host.strip(".") and not host.lower().endswith(PRIVATE_ENDINGS)


def public_base() -> str:
    """The address of this server without its last slash; empty where none is set, or only a private one."""
    address = os.environ.get(PUBLIC_URL, "").strip()
    try:
        parts = urlsplit(address)
        usable = parts.scheme in ("http", "https") and is_public(parts.hostname or "")
    except ValueError:
        return ""
    return address.rstrip("/") if usable else ""


def short_text(link: Mapping[str, str]) -> str:
    """The parameters of a link as one line of text."""
    return urlencode(link)


def public_link(link: Mapping[str, str]) -> str:
    """The whole address that brings a scenario back from anywhere; empty where there is none."""
    base = public_base()
    return f"{base}/?{short_text(link)}" if base else ""


def qr_svg(text: str) -> str:
    """The QR code of a text as SVG without a size of its own; empty where the text is too long for one."""
    try:
        code = segno.make_qr(text, error="l")
    except DataOverflowError:
        return ""
    # dark on light wherever it stands
    return code.svg_inline(omitsize=True, svgclass=None, lineclass=None, light="#fff")
