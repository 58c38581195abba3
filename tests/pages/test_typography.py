"""What stays on one line."""

import pytest

from pages.parts.typography import NO_BREAK, together


@pytest.mark.parametrize(
    ("sentence", "kept"),
    [
        ("charged it is 106 to 182 km", "106~to~182~km"),
        ("without regeneration € 45 to 76 more", "€~45~to~76"),
        ("(−1.8 to −1.2)", "−1.8~to~−1.2"),
        ("12 to 16 kWh/100 km", "12~to~16 kWh/100~km"),
    ],
)
def test_a_range_keeps_its_ends_its_unit_and_its_currency(sentence, kept):
    assert kept.replace("~", NO_BREAK) in together(sentence)
