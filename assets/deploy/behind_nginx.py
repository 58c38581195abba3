"""Several servers and nginx before them, on this machine: ``python assets/deploy/behind_nginx.py --help``.

A server that ends is started anew; its visitors are with another one meanwhile. Stops with Ctrl+C.
"""

from __future__ import annotations

import argparse
import os
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Sequence
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
START_SECONDS = 180
NGINX_CONF = """
daemon off;
pid {folder}/nginx.pid;
error_log stderr warn;
worker_processes 1;
events {{ worker_connections 4096; }}
http {{
    client_body_temp_path {folder}/body;
    proxy_temp_path {folder}/proxy;
    fastcgi_temp_path {folder}/fastcgi;
    uwsgi_temp_path {folder}/uwsgi;
    scgi_temp_path {folder}/scgi;
    include {folder}/site.conf;
}}
"""


def free_ports(count: int) -> list[int]:
    """Ports of this machine nobody listens on."""
    probes = [socket.create_server(("127.0.0.1", 0)) for _ in range(count)]
    try:
        return [probe.getsockname()[1] for probe in probes]
    finally:
        for probe in probes:
            probe.close()


def write_settings(folder: Path, address: str, port: int, ports: Sequence[int]) -> Path:
    """Write nginx's settings into a folder: ours, where to listen and which servers there are."""
    shutil.copy(HERE / "site.conf", folder)
    (folder / "listen.conf").write_text(f"listen {address}:{port};\n")
    # an unanswered call takes a server out for a second; then it is tried again
    lines = (f"server 127.0.0.1:{port} max_fails=1 fail_timeout=1s;\n" for port in ports)
    (folder / "servers.conf").write_text("".join(lines))
    (folder / "nginx.conf").write_text(NGINX_CONF.format(folder=folder))
    return folder / "nginx.conf"


def start_server(port: int, secret: str) -> subprocess.Popen[bytes]:
    """Start one server, reachable from this machine only."""
    command = [sys.executable, "-m", "streamlit", "run", "app.py", "--server.address", "127.0.0.1"]
    # all servers accept what one of them signed, so that an upload is not refused after a change of server
    given = os.environ | {"STREAMLIT_SERVER_COOKIE_SECRET": secret}
    return subprocess.Popen([*command, "--server.port", str(port)], cwd=ROOT, env=given, stdin=subprocess.DEVNULL)


def answers(port: int) -> bool:
    """Whether a server answers."""
    try:
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/_stcore/health", timeout=2) as answer:
            return bool(answer.status == 200)
    except OSError:
        return False


def wait_for(port: int, process: subprocess.Popen[bytes]) -> None:
    """Return once a server answers.

    Raises
    ------
    SystemExit
        Where it ended, or stays silent.
    """
    until = time.monotonic() + START_SECONDS
    while not answers(port):
        if process.poll() is not None or time.monotonic() > until:
            sys.exit(f"The server on port {port} did not start.")
        time.sleep(0.2)


def run(address: str, port: int, ports: Sequence[int]) -> None:
    """Start servers and nginx, and start again what ends, until this process is told to stop."""
    nginx = shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")
    if nginx is None:
        sys.exit("nginx is needed and was not found; on Debian: apt-get install nginx.")
    secret = secrets.token_hex(32)
    with tempfile.TemporaryDirectory() as folder:
        settings = write_settings(Path(folder), address, port, ports)
        running: dict[int, subprocess.Popen[bytes]] = {}
        proxy = None
        try:
            for place in ports:
                # one after the other: the first compiles, the others find what it kept
                running[place] = start_server(place, secret)
                wait_for(place, running[place])
            proxy = subprocess.Popen([nginx, "-c", str(settings), "-p", folder, "-e", "stderr"])
            print(f"Brake to Battery: http://{address}:{port}, {len(ports)} servers behind it", flush=True)
            while proxy.poll() is None:
                for place, process in running.items():
                    if process.poll() is not None:
                        print(f"The server on port {place} ended and is started anew.", flush=True)
                        running[place] = start_server(place, secret)
                time.sleep(1)
            sys.exit("nginx ended.")
        finally:
            for process in [*running.values(), *([proxy] if proxy else [])]:
                process.terminate()
            for process in [*running.values(), *([proxy] if proxy else [])]:
                process.wait()


def main() -> None:
    """Read the command line and run."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--address", default="127.0.0.1", help="of this machine, to listen on (0.0.0.0: on all)")
    parser.add_argument("--port", type=int, default=8501, help="to listen on")
    parser.add_argument("--servers", type=int, default=2, help="how many servers, one a processor at most")
    given = parser.parse_args()
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    try:
        run(given.address, given.port, free_ports(given.servers))
    except KeyboardInterrupt:
        sys.exit(0)


if __name__ == "__main__":
    main()
