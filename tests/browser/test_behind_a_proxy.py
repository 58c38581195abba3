"""Two servers behind nginx, as README starts them; one of them is killed under open tabs."""

import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.browser.test_main_job import HEADLINE, TOWN, address, pick_drive, scenario_at
from tests.conftest import ROOT, Server, free_port, wait_until_healthy

TABS = 3
ESTABLISHED = "01"


def servers_of(process):
    """The servers that were started, by the port they listen on."""
    found = {}
    for child in Path(f"/proc/{process.pid}/task/{process.pid}/children").read_text().split():
        words = Path(f"/proc/{child}/cmdline").read_text().split("\0")
        if "--server.port" in words:
            found[int(words[words.index("--server.port") + 1])] = int(child)
    return found


def open_sockets(port):
    """How many connections a server of this machine holds."""
    lines = [line.split() for line in Path("/proc/net/tcp").read_text().splitlines()[1:]]
    return sum(fields[1].endswith(f":{port:04X}") and fields[3] == ESTABLISHED for fields in lines)


@pytest.fixture(scope="module")
def behind_nginx(tmp_path_factory):
    if not (shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")):
        reason = "no nginx on this machine"
        if os.environ.get("BROWSER_REQUIRED"):
            pytest.fail(reason)
        pytest.skip(reason)
    port, log_file = free_port(), tmp_path_factory.mktemp("nginx") / "log.txt"
    with log_file.open("w", encoding="utf-8") as log:
        process = subprocess.Popen(
            [sys.executable, "assets/deploy/behind_nginx.py", "--port", str(port)],
            cwd=ROOT, stdin=subprocess.DEVNULL, stdout=log, stderr=subprocess.STDOUT,
        )  # fmt: skip
        server = Server(f"http://localhost:{port}", log_file, process)
        try:
            wait_until_healthy(server)
            yield server
        finally:
            process.terminate()
            process.wait(timeout=30)


def test_when_one_server_is_killed_every_tab_goes_on_with_its_own_drive(behind_nginx, chromium, settled, expect):
    drives, tabs = [TOWN.with_leg(1, "stops", 11 + tab) for tab in range(TABS)], []
    contexts = [chromium.new_context() for _ in drives]
    try:
        for context, drive in zip(contexts, drives, strict=True):
            page = context.new_page()
            page.goto(behind_nginx.url + address("/", drive))
            tabs.append(settled(page))
        answers = [page.locator(HEADLINE).inner_text() for page in tabs]
        servers = servers_of(behind_nginx.process)
        assert len(servers) == 2
        # the random cookies may all lead to one server; then that one is killed
        killed = max(servers, key=open_sockets)
        assert open_sockets(killed)
        os.kill(servers[killed], signal.SIGKILL)
        for page, drive, answer in zip(tabs, drives, answers, strict=True):
            expect(page.locator(HEADLINE)).to_have_text(answer)
            assert scenario_at(page) == drive
        # a tap is lost until the page has found the other server
        tabs[0].wait_for_timeout(5000)
        for page in tabs:
            pick_drive(page, "suburb-hill")
            expect(page.locator(".st-key-word-drive")).to_contain_text("suburb", timeout=30_000)
        assert f"The server on port {killed} ended and is started anew." in behind_nginx.log
    finally:
        for context in contexts:
            context.close()
