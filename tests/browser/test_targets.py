"""Everything a finger must hit is at least 44 px high and wide."""

import pytest

LEAST_PX = 44
TARGETS = ", ".join(
    (
        '[data-testid="stTopNavLink"]',
        '[data-testid="stMainMenuButton"]',
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
SIZES = """
    elements => elements.filter(element => element.checkVisibility()).map(element => {
        const box = element.getBoundingClientRect();
        return [element.dataset.testid ?? element.tagName, element.innerText, box.width, box.height];
    })
"""


@pytest.mark.parametrize(
    "path", ["/", "/show", "/how_it_works?panel=who", "/how_it_works?panel=motor", "/compare", "/take_away"]
)
@pytest.mark.parametrize("width", [390, 1024])
def test_what_a_finger_must_hit_is_large_enough(open_page, path, width):
    page = open_page(path, width=width)
    page.locator("h1").first.wait_for()
    sizes = page.locator(TARGETS).evaluate_all(SIZES)
    assert sizes
    assert [size for size in sizes if min(size[2:]) < LEAST_PX] == []
