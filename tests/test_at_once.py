"""No part of an answer waits for the part before it to be confirmed."""

import os
import socket

import pytest

from app import send_at_once


@pytest.mark.parametrize("family, address", [(socket.AF_INET, "127.0.0.1"), (socket.AF_INET6, "::1")])
def test_a_visitor_who_comes_in_is_sent_each_part_at_once(family, address):
    try:
        door = socket.create_server((address, 0), family=family)
    except OSError:
        pytest.skip(f"this machine has no {address}")
    with door:
        send_at_once()
        with socket.create_connection(door.getsockname()[:2]), door.accept()[0] as visitor:
            assert visitor.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY)


def test_what_is_not_listening_stays_as_it_is_and_no_file_is_left_open():
    with socket.socket() as other:
        before = os.listdir("/dev/fd") if os.path.isdir("/dev/fd") else []
        send_at_once()
        assert not other.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY)
        assert not before or len(os.listdir("/dev/fd")) == len(before)
