"""The container's recipe and the proxy's settings name what exists; the proxy itself is tried in ``tests/browser``."""

import re

from packaging.requirements import Requirement

from tests.conftest import ROOT

DEPLOY = ROOT / "assets" / "deploy"


def test_the_recipe_copies_what_exists_and_all_that_the_app_needs():
    copied = [
        source
        for line in (DEPLOY / "Containerfile").read_text().splitlines()
        if line.startswith("COPY ")
        for source in line.split()[1:-1]
    ]
    assert [source for source in copied if not (ROOT / source).exists()] == []
    assert {"app.py", "model", "pages", "assets", ".streamlit", "requirements.txt"} <= set(copied)


def test_the_locked_versions_are_allowed_and_leave_nothing_open():
    locked = dict(line.split("==") for line in (DEPLOY / "constraints.txt").read_text().splitlines() if "==" in line)
    asked = [Requirement(line) for line in (ROOT / "requirements.txt").read_text().splitlines() if line[:1].isalpha()]
    assert len(asked) >= 10
    for one in asked:
        assert one.specifier.contains(locked[one.name.lower().replace(".", "-")]), one


def test_the_compose_file_gives_the_proxy_the_files_its_settings_include():
    included = set(re.findall(r"include ([\w.]+);", (DEPLOY / "site.conf").read_text()))
    compose = (DEPLOY / "compose.yaml").read_text()
    assert included == {"servers.conf", "listen.conf"}
    for name in included:
        assert f"./compose/{name}:/etc/nginx/{name}:ro" in compose
        assert (DEPLOY / "compose" / name).read_text().endswith(";\n")
    for server in re.findall(r"server ([\w-]+):8501", (DEPLOY / "compose" / "servers.conf").read_text()):
        assert f"\n  {server}: *server\n" in compose
