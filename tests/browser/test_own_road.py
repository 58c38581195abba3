"""A recording that is opened in a browser: no disk holds any of it, and the browser keeps what its columns mean."""

import os
import re
from pathlib import Path

import pytest

ROWS = 150_000
"""Five megabytes and more: the toolkit would put on the disk what is larger than one."""


def written_bytes(server):
    """What the server has written to files so far [bytes]; what it sends is not counted."""
    lines = Path(f"/proc/{server.process.pid}/io").read_text().splitlines()
    return int(dict(line.split(": ") for line in lines)["wchar"])


@pytest.mark.skipif(not os.path.exists("/proc/self/io"), reason="the system does not count what a process writes")
def test_an_upload_never_touches_the_disk_and_its_columns_are_known_again(open_page, server, expect, tmp_path):
    file = tmp_path / "long.csv"
    rows = (f"{second / 10:.1f},{40 + second % 200 / 20:.3f},{500:.6f},{second % 7:.8f}\n" for second in range(ROWS))
    file.write_text("time (s),speed,height (m),note\n" + "".join(rows))
    assert file.stat().st_size > 5_000_000
    page = open_page("/own_road")
    before, where = written_bytes(server), page.url
    page.locator('input[type="file"]').set_input_files(file)
    expect(page.get_by_role("heading", name="The modelled car takes")).to_be_visible()
    assert written_bytes(server) - before < 1_000_000
    expect(page.get_by_text("long.csv").first).to_be_visible()
    expect(page.get_by_test_id("stFileUploaderFile")).to_have_count(0)
    assert page.url.replace("&recorded=yes", "") == where
    # what the columns mean is told once: the next file of the same program is read so, in another session too
    expect(page.get_by_role("heading", name="for these 187 km")).to_be_visible()
    page.get_by_test_id("stButtonGroup").get_by_text("mph", exact=True).click()
    expect(page.get_by_role("heading", name="for these 302 km")).to_be_visible()
    expect(page).not_to_have_url(re.compile("columns="))
    again = open_page("/own_road")
    again.locator('input[type="file"]').set_input_files(file)
    expect(again.get_by_role("heading", name="for these 302 km")).to_be_visible()
    assert [each["name"] for each in again.context.cookies() if "mph" in each["value"]] == ["columns"]
    again.context.clear_cookies(name="columns")
