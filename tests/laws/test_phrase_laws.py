"""The seven phrases are one energy, whatever the drive."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.kernel.books import Books
from model.kernel.phrases import PHRASES, convert, said
from model.kernel.savings import LEAST_WH_PER_KM

SHARE = st.floats(0.01, 0.9)


@st.composite
def books(draw):
    out = draw(st.floats(0.1, 100.0))
    back = out * draw(SHARE)
    electric = back / draw(st.floats(0.5, 0.95))
    climb_out = out * draw(SHARE)
    return Books(
        out=out, back=back, spared=out * draw(st.floats(0.0, 0.2)), electric=electric,
        braking=electric / draw(st.floats(0.3, 1.0)), climb_out=climb_out, descent_back=back * draw(SHARE),
        distance_km=1000 * (out - back) / draw(st.floats(1.001 * LEAST_WH_PER_KM, 1000.0)),
    )  # fmt: skip


@given(books(), st.sampled_from(sorted(PHRASES)), st.sampled_from(sorted(PHRASES)))
def test_there_and_back(drive, one, other):
    value = said(drive, one)
    assert convert(drive, other, convert(drive, one, value)[other])[one] == pytest.approx(value, rel=1e-10)


@given(books())
def test_range_gain_is_more_than_energy_saved_is_more_than_recovered_share(drive):
    assert said(drive, "range_gain") > said(drive, "range_lost") >= said(drive, "recovered") * (1 - 1e-12)


@given(books())
def test_a_drive_that_takes_next_to_nothing_has_no_range_to_tell(drive):
    wh_per_km = 1000 * (drive.out - drive.back) / drive.distance_km
    far = replace(drive, distance_km=drive.distance_km * 1.01 * wh_per_km / LEAST_WH_PER_KM)
    assert said(far, "range_gain") is None and said(far, "display_km") is None
    assert said(far, "range_lost") == said(drive, "range_lost")
