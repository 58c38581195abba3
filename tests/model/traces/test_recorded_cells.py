"""Which mark is the decimal one, decided from the cells of a table."""

import pytest

from model.traces.recorded_cells import decimal_mark


@pytest.mark.parametrize(
    ("cells", "separator", "mark"),
    [
        # every comma before three digits: thousands where commas set columns apart, else decimals
        (["1,234", "2,345"], ";", ","), (["1,234", "2,345"], ",", "."), (["1,234", "2,345"], "\t", ","),
        (["1.234", "2.345"], ";", "."), (["12", "13"], ";", "."),
        (["1.234,5"], ",", ","), (["1,234.5"], ";", "."), (["1,234,567"], ";", "."), (["1.234.567"], ";", ","),
        (["1,23"], ",", ","), (["0,123"], ",", ","), (["-0.123"], ";", "."), (["1234,567"], ",", ","),
        (["text, more", "2024-01-31 8,5"], ",", "."),
    ],
)  # fmt: skip
def test_the_decimal_mark_of_a_table(cells, separator, mark):
    assert decimal_mark(cells, separator) == mark
