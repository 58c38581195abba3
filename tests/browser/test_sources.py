"""Sources and method in a browser: an address that names a part opens it."""


def test_a_link_to_a_part_opens_it_and_the_address_bar_leads_to_another(open_page, expect):
    page = open_page("/sources#changes")
    expect(page.locator(".st-key-fold-changes table")).to_be_visible()
    expect(page.locator(".st-key-fold-changes summary")).to_be_in_viewport()
    expect(page.locator(".st-key-fold-grip table")).to_have_count(0)
    page.evaluate("location.hash = 'grip'")
    expect(page.locator(".st-key-fold-grip table")).to_be_visible()
    page.get_by_role("button", name="Close everything").click()
    expect(page.locator('[class*="st-key-fold-"] table')).to_have_count(0)
