"""Numbers as people type them: both decimal marks, true minus signs, thousands set apart; nothing guessed."""

import pytest

from model.describe.typed_numbers import TwoReadings, number_typed


@pytest.mark.parametrize(
    "typed, number",
    [
        ("2,3", 2.3),
        ("2.3", 2.3),
        ("−2,5", -2.5),
        ("–5", -5),
        (" - 5 ", -5),
        ("+7", 7),
        (",5", 0.5),
        ("5,", 5),
        ("0,125", 0.125),
        ("12.345", 12.345),
        ("1,234.5", 1234.5),
        ("1.234,5", 1234.5),
        ("1.234.567", 1234567),
        ("1,234,567", 1234567),
        ("1 234,5", 1234.5),
        ("1\u202f234", 1234),
        ("1\u00a0234\u00a0567", 1234567),
        ("1’234.50", 1234.5),
        ("1234,567", 1234.567),
        ("1e-05", 1e-5),
    ],
)
def test_a_number_is_read_however_it_is_typed(typed, number):
    assert number_typed(typed) == number


@pytest.mark.parametrize(
    "typed", ["", "abc", "5 km", "2,3,4", "1.2.3", "12,34,567", "12 34", "1.234 567", "--5", "nan", "inf", "1_000", "²"]
)
def test_what_is_no_number_is_refused(typed):
    with pytest.raises(ValueError):
        number_typed(typed)


def test_one_comma_before_three_digits_is_decided_by_what_fits_and_never_guessed():
    with pytest.raises(TwoReadings, match=r"1\.25, 1250"):
        number_typed("1,250")
    assert number_typed("1,250", lambda number: number >= 500) == 1250
    assert number_typed("1,250", lambda number: number <= 10) == 1.25
    assert number_typed("1,250", lambda number: number > 9000) == 1.25
