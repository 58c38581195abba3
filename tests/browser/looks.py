"""What is looked at on a page: its names and contrasts, what a finger must hit, its headings, and what is cut off."""

from collections.abc import Callable
from itertools import pairwise
from typing import Any

LEAST_PX = 44
TARGETS = ", ".join(
    (
        '[data-testid="stTopNavLink"]',
        '[data-testid="stPageLink-NavLink"]',
        '[data-testid^="stBaseButton"]',
        '[data-testid="stButtonGroup"] button',
        '[data-testid="stDownloadButton"] button',
        '[data-testid="stPopover"] button',
        '[data-testid="stCheckbox"] label',
        '[data-testid="stRadioOption"]',
        '[data-testid="stExpander"] summary',
        '[data-testid="stSelectbox"] [role="group"]',
        '[data-testid="stNumberInputContainer"]',
        '[data-testid="stTextInputRootElement"]',
        '[data-testid="stSlider"] [role="group"]',
    )
)
"""What a finger must hit."""
SIZES = """
    elements => elements.filter(element => element.checkVisibility()).map(element => {
        const box = element.getBoundingClientRect();
        return [element.dataset.testid ?? element.tagName, element.innerText, box.width, box.height];
    })
"""
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
STREAMLITS_OWN = {
    ("presentation-role-conflict", "stFileUploaderDropzone"): (
        "The place for a file is named although its role says that it means nothing. Since it can no longer be "
        "focused (streamlit/streamlit pull request 15928) nobody meets it: the button inside has its own name."
    ),
}
"""What the automatic check finds in what Streamlit draws and we do not: rule, element, and why it does no harm."""
CUT = """
    () => {
        const cut = [], walker = document.createTreeWalker(document.querySelector('[data-testid="stApp"]'), 4);
        while (walker.nextNode()) {
            const text = walker.currentNode, holder = text.parentElement;
            if (!text.data.trim() || !holder.checkVisibility() || holder.closest("svg, style, script")) continue;
            const range = document.createRange();
            range.selectNodeContents(text);
            const box = range.getBoundingClientRect();
            // what is there for screen readers only is a pixel wide
            if (box.width < 2 || box.height < 2) continue;
            for (let outer = holder; outer; outer = outer.parentElement) {
                const style = getComputedStyle(outer), edge = outer.getBoundingClientRect();
                if (edge.width < 3 || edge.height < 3) break;
                const spare = parseFloat(getComputedStyle(holder).fontSize) / 4;
                const beside = ["hidden", "clip"].includes(style.overflowX)
                    && (box.right > edge.right + 1 || box.left < edge.left - 1);
                const below = ["hidden", "clip"].includes(style.overflowY)
                    && (box.bottom > edge.bottom + spare || box.top < edge.top - spare);
                if (beside || below) { cut.push(text.data.trim().slice(0, 60)); break; }
                if (["auto", "scroll"].includes(style.overflowX) || ["auto", "scroll"].includes(style.overflowY)) break;
            }
        }
        const main = document.querySelector('[data-testid="stMain"]');
        if (main.scrollWidth > main.clientWidth) cut.push("the page, sideways");
        for (const picture of document.querySelectorAll('[data-testid="stVegaLiteChart"] svg.marks')) {
            if (picture.getBoundingClientRect().right > innerWidth) cut.push("a picture, sideways");
        }
        return cut;
    }
"""
"""Texts that something hides a part of, and what needs scrolling sideways."""
OFF_SCREEN = """
    parts => parts.filter(part => {
        const shown = [...document.querySelectorAll(part)].map(element => element.getBoundingClientRect());
        return !shown.length || shown.some(box => box.top < 0 || box.bottom > innerHeight || box.left < 0
            || box.right > innerWidth);
    })
"""


def faults(page: Any, *, context: str | None = None, **options: Any) -> list[str]:
    """What the automatic check finds that is not in the table of Streamlit's own; on the page or in one part of it."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page, context, {"resultTypes": ["violations"], **options}).response["violations"]
    return [
        f"{fault['id']}: {node['html'][:200]} {node['failureSummary']}"
        for fault in found
        for node in fault["nodes"]
        if not any(fault["id"] == rule and f'data-testid="{testid}"' in node["html"] for rule, testid in STREAMLITS_OWN)
    ]


def come_to_nothing(page: Any, look: Callable[[], list[Any]]) -> None:
    """Assert that a look finds nothing; pictures and lines may take a moment to follow the width of the window."""
    for _ in range(60):
        if not (found := look()):
            return
        page.wait_for_timeout(50)
    raise AssertionError(found)


def resize(page: Any, width: int, height: int) -> None:
    """Another window, in which no text is cut and nothing stands beside it."""
    page.set_viewport_size({"width": width, "height": height})
    come_to_nothing(page, lambda: page.evaluate(CUT))


def assert_on_first_screen(page: Any, parts: tuple[str, ...]) -> None:
    """Every element of these parts is seen without scrolling."""
    come_to_nothing(page, lambda: page.evaluate(OFF_SCREEN, list(parts)))


def assert_large_enough(page: Any) -> None:
    """Nothing that a finger must hit is too small."""
    sizes = page.locator(TARGETS).evaluate_all(SIZES)
    assert sizes
    assert [size for size in sizes if min(size[2:]) < LEAST_PX] == []


def assert_headings_in_order(page: Any) -> None:
    """There is one first heading, it comes first, and no level is skipped."""
    levels = page.locator("h1, h2, h3, h4, h5, h6").evaluate_all("all => all.map(one => Number(one.tagName[1]))")
    assert levels.count(1) == 1 and levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))
