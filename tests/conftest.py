"""What tests share: repeatable property tests, the app as a real server, and its pages in a real browser."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from hypothesis import HealthCheck, settings
from streamlit.testing.v1 import AppTest

ROOT = Path(__file__).resolve().parent.parent
BROWSERS = ("chromium", "chromium-browser", "google-chrome")
BROWSER_ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    # one process draws all pages of this machine, and keeps what it has loaded and compiled
    "--process-per-site",
)
START_SECONDS = 120
AT_REST = '[data-testid="stApp"][data-test-script-state="notRunning"]'
NOT_YET_DRAWN = '[data-testid="stSkeleton"], [data-testid="stAppSkeleton"]'
NOTE_VIOLATIONS = """
    window.policyViolations = [];
    document.addEventListener("securitypolicyviolation",
        event => window.policyViolations.push(event.violatedDirective + " " + event.blockedURI));
"""

# How long an example takes to make says how busy the machine is, not what is wrong.
UNTIMED = {"deadline": None, "suppress_health_check": [HealthCheck.too_slow]}
settings.register_profile("repeatable", **UNTIMED, derandomize=True, max_examples=500)
settings.register_profile("nightly", **UNTIMED, print_blob=True, max_examples=20_000)
NIGHTLY = bool(os.environ.get("NIGHTLY"))
settings.load_profile("nightly" if NIGHTLY else "repeatable")


def now_and_nightly(now: Iterable[Any], nightly: Iterable[Any]) -> list[Any]:
    """Cases of a test: those of every run, and those that wait for the nightly one."""
    later = (case if isinstance(case, tuple) else (case,) for case in nightly)
    return [*now, *(pytest.param(*values, marks=pytest.mark.nightly) for values in later)]


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Use the processors for the whole suite; what is named on the command line runs in this process."""
    whole = config.args_source is not pytest.Config.ArgsSource.ARGS
    return min(os.cpu_count() or 1, 4) if whole else 0


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark what needs a browser, to be left out with ``-m "not browser"``; leave out what has its own run.

    Speed is measured beside no other test, and what is marked as nightly needs ``NIGHTLY`` in the environment.
    """
    beside_others = pytest.mark.skip(reason="speed is measured alone: pytest tests/benchmarks")
    later = pytest.mark.skip(reason="one of many alike, tried by .ci/run nightly")
    for item in items:
        if item.get_closest_marker("nightly") and not NIGHTLY:
            item.add_marker(later)
        if "chromium" in getattr(item, "fixturenames", ()):
            item.add_marker("browser")
        if "PYTEST_XDIST_WORKER" in os.environ and item.path.parent.name == "benchmarks":
            item.add_marker(beside_others)


@pytest.fixture(scope="session", autouse=True)
def whole_pages() -> Iterator[None]:
    """Have `AppTest` hold the whole page after a change.

    Of a run that redraws only some parts it keeps those alone, where a browser keeps the others. So the page is drawn
    whole once more; that parts redrawn leave a page as it is drawn whole is held over the wire, in ``test_redrawn.py``.
    """
    run = AppTest._run

    def run_whole(app: AppTest, *args: Any, **kwargs: Any) -> AppTest:
        run(app, *args, **kwargs)
        if "drawn" in app.session_state and app.session_state["drawn"].redrawn:
            run(app)
        return app

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(AppTest, "_run", run_whole)
        yield


@dataclass
class Server:
    """A running server: where it answers, what it has written so far, and how to stop it."""

    url: str
    log_file: Path
    process: subprocess.Popen

    @property
    def log(self) -> str:
        """Everything written to standard output and standard error."""
        return self.log_file.read_text(encoding="utf-8")


def free_port() -> int:
    """A port nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def is_healthy(url: str) -> bool:
    """Whether a server answers."""
    try:
        with urllib.request.urlopen(f"{url}/_stcore/health", timeout=2) as answer:
            return bool(answer.status == 200)
    except OSError:
        return False


def wait_until_healthy(server: Server) -> None:
    """Return once the server answers; fail with its log where it stops or stays silent."""
    for _ in range(START_SECONDS * 10):
        if server.process.poll() is not None:
            break
        if is_healthy(server.url):
            return
        time.sleep(0.1)
    pytest.fail(f"The server did not start:\n{server.log}")


@pytest.fixture(scope="session")
def start_server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[..., Server]]:
    """Start a server on a script of the project, as a user does; it is stopped after the last test."""
    with ExitStack() as running:

        def start(script: str = "app.py", environment: dict[str, str] | None = None, port: int = 0) -> Server:
            port, log_file = port or free_port(), tmp_path_factory.mktemp("server") / "log.txt"
            process = subprocess.Popen(
                [sys.executable, "-m", "streamlit", "run", script, "--server.port", str(port)],
                cwd=ROOT,
                env=os.environ | (environment or {}),
                stdin=subprocess.DEVNULL,
                stdout=running.enter_context(log_file.open("w", encoding="utf-8")),
                stderr=subprocess.STDOUT,
            )
            running.callback(process.wait, timeout=20)
            running.callback(process.terminate)
            server = Server(f"http://localhost:{port}", log_file, process)
            wait_until_healthy(server)
            return server

        yield start


@pytest.fixture(scope="session")
def server(start_server: Callable[..., Server]) -> Server:
    """The app, started once for all tests."""
    return start_server()


@pytest.fixture(scope="session")
def chromium() -> Iterator[Any]:
    """A Chromium of this machine with a fresh profile; without one the test is skipped.

    With ``BROWSER_REQUIRED`` set in the environment its absence is a failure.
    """
    executable = next(filter(None, map(shutil.which, BROWSERS)), None)
    if executable is None:
        reason = f"no browser on this machine: looked for {', '.join(BROWSERS)}"
        if os.environ.get("BROWSER_REQUIRED"):
            pytest.fail(reason)
        pytest.skip(reason)
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=executable, args=BROWSER_ARGUMENTS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def expect(chromium: Any) -> Any:
    """Playwright's assertions, which wait for what they expect; longer than is usual, for machines that are busy."""
    from playwright.sync_api import expect

    expect.set_options(timeout=15_000)
    return expect


@pytest.fixture(scope="session")
def settled() -> Callable[[Any], Any]:
    """Wait until a page has been drawn to its end.

    After an input the page may not have begun to change yet: then wait for what the input should bring about.
    """

    def wait(page: Any) -> Any:
        page.wait_for_selector(AT_REST)
        page.wait_for_selector(NOT_YET_DRAWN, state="detached")
        return page

    return wait


@pytest.fixture(scope="session")
def contexts(chromium: Any, server: Server) -> dict[bool, Any]:
    """The browser's contexts, with touch and without; kept for all tests, since a new one loads everything anew.

    In each a tab stays open, for without one the process that draws its pages would end after every test.
    """
    kept = {touch: chromium.new_context(has_touch=touch) for touch in (False, True)}
    for context in kept.values():
        context.new_page().goto(f"{server.url}/_stcore/health")
    return kept


@pytest.fixture
def open_page(contexts: dict[bool, Any], server: Server, settled: Callable[[Any], Any]) -> Iterator[Callable[..., Any]]:
    """Open a page of the app in its own tab, which is a session of its own.

    Afterwards no page may have asked anything of another machine, gone against the content security policy or
    thrown an error.
    """
    outside = []
    errors = []
    kept = [page for context in contexts.values() for page in context.pages]

    def note(request: Any) -> None:
        address = urlsplit(request.url)
        if address.scheme not in ("data", "blob") and address.hostname not in ("localhost", "127.0.0.1"):
            outside.append(request.url)

    def note_error(error: Any) -> None:
        errors.append(str(error.error))

    def open_at(
        path: str = "/",
        *,
        on: Server = server,
        width: int = 1024,
        height: int = 768,
        has_touch: bool = False,
        **media: str,
    ) -> Any:
        page = contexts[has_touch].new_page()
        page.add_init_script(NOTE_VIOLATIONS)
        page.set_viewport_size({"width": width, "height": height})
        page.emulate_media(**media)
        page.goto(on.url + path)
        return settled(page)

    for context in contexts.values():
        context.on("request", note)
        context.on("weberror", note_error)
    yield open_at

    pages = [page for context in contexts.values() for page in context.pages if page not in kept]
    violations = [violation for page in pages for violation in page.evaluate("window.policyViolations ?? []")]
    for page in pages:
        page.close()
    for context in contexts.values():
        context.remove_listener("request", note)
        context.remove_listener("weberror", note_error)
    assert outside == []
    assert violations == []
    assert errors == []
