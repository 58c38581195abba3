"""Every source has a name, a date or none, an address that can stand in a link, and a way in which it was read."""

import pytest

from model.claims.evidence import measurements
from model.describe import tables
from model.describe.parameters import assumed_figures, class_labels
from model.describe.sources import sources
from model.describe.tables import ASSETS, TableError, rows


@pytest.fixture
def table(monkeypatch, tmp_path):
    """A copy of the table that is read in place of the one there is."""
    path = tmp_path / "sources.csv"
    path.write_text((ASSETS / "sources.csv").read_text("utf-8"), "utf-8")
    monkeypatch.setattr(tables, "ASSETS", tmp_path)
    sources.cache_clear()
    yield path
    sources.cache_clear()


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (",2024-01-07,", ",7 January 2024,", "published '7 January 2024' is no date"),
        ("https://doi.org/10.3390/atmos15010075", "doi 10.3390/atmos15010075", "address 'doi 10.3390"),
        ("https://doi.org/10.3390/atmos15010075", "https://doi.org/10.3390/(atmos", "address 'https://doi.org"),
        ("wong,", "noon-1994,", "noon-1994 stands in row"),
        ('worked out here",,,,', 'worked out here",,,2026-11-25,', "what is computed has a day"),
        (",2026-11-30,abstract", ",,abstract", "what is abstract has no day"),
        (",abstract", ",glimpsed", "how 'glimpsed' is unknown"),
    ],
)
def test_a_row_that_cannot_be_used_is_named(table, old, new, said):
    text = table.read_text("utf-8")
    assert old in text
    table.write_text(text.replace(old, new, 1), "utf-8")
    with pytest.raises(TableError, match=r"^assets/sources.csv, row \d+: ") as wrong:
        sources()
    assert said in str(wrong.value)


def test_every_source_is_named_by_a_figure_a_measurement_or_a_check():
    from model.checks.published import all_checks

    named = {one.source.id for one in measurements()} | {one for check in all_checks() for one in check.sources}
    for name in ("parameters.csv", "car_classes.csv", "grip.csv"):
        named |= {one for row in rows(name) for one in row["sources"].split()}
    assert named <= set(sources())
    # what the law says of stop lamps stands on a page of its own
    assert set(sources()) - named == {"r13h"}


@pytest.mark.parametrize("car_class", class_labels())
def test_every_published_figure_of_a_car_names_its_sources(car_class):
    assert all(item.sources for item in assumed_figures(car_class).values() if item.kind == "published")
