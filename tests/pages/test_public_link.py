"""The link for others: only where the server has an address that others can reach."""

import pytest

from pages.parts.public_link import PUBLIC_URL, is_public, public_base, public_link, qr_svg


@pytest.mark.parametrize(
    "host",
    ["", "localhost", "showroom", "127.0.0.1", "10.1.2.3", "192.168.1.20", "172.16.0.9", "169.254.3.4", "::1",
     "fe80::1", "fd00::5", "laptop.local", "Tablet.LAN", "app.internal", "box.home.arpa", "0.0.0.0", "100.64.0.1", "."],
)  # fmt: skip
def test_private_addresses_are_told_from_public_ones(host):
    assert not is_public(host)


@pytest.mark.parametrize("host", ["drive.net", "a.b.co.uk", "8.8.8.8", "2606:4700::1111"])
def test_public_ones_are_accepted(host):
    assert is_public(host)


@pytest.mark.parametrize(
    ("setting", "base"),
    [
        ("https://drive.net", "https://drive.net"),
        (" https://drive.net/showroom/ ", "https://drive.net/showroom"),
        ("http://8.8.8.8:8501", "http://8.8.8.8:8501"),
        ("drive.net", ""),
        ("ftp://drive.net", ""),
        ("javascript://drive.net/%0aalert(1)", ""),
        ("http://192.168.1.20:8501", ""),
        ("http://localhost:8501", ""),
        ("http://[::1", ""),
        ("", ""),
    ],
)
def test_the_setting_is_an_address_or_nothing(monkeypatch, setting, base):
    monkeypatch.setenv(PUBLIC_URL, setting)
    assert public_base() == base


def test_a_link_is_the_address_and_its_parameters(monkeypatch):
    monkeypatch.delenv(PUBLIC_URL, raising=False)
    assert public_link({"car": "van"}) == ""
    monkeypatch.setenv(PUBLIC_URL, "https://drive.net/")
    assert (
        public_link({"car": "van", "currency": "€ & £"}) == "https://drive.net/?car=van&currency=%E2%82%AC+%26+%C2%A3"
    )


def test_a_code_is_a_picture_that_grows_with_its_text_until_there_is_no_room():
    short, long = qr_svg("https://drive.net/?car=van"), qr_svg("https://drive.net/?" + "a" * 2000)
    assert short.startswith("<svg viewBox") and len(short) < len(long)
    assert qr_svg("a" * 3000) == ""
