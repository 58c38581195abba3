"""How far the model may lie from what is published: said in the tests, before looking, and never in the model."""

from model.checks.check import Check


def assert_within(check: Check, allowed: dict[str, tuple[float, float]]) -> None:
    """Print the check; every number named in `allowed` must be among those found, and lie there."""
    found = {item.name: item.value for item in check.found}
    print(check.id, *(f"{item.name}: {item.value:.1f} {item.unit}, published {item.published}" for item in check.found),
          sep="\n  ")  # fmt: skip
    missing = set(allowed) - set(found)
    assert not missing, f"not found at all: {missing}"
    outside = {what: found[what] for what, (low, high) in allowed.items() if not low <= found[what] <= high}
    assert not outside, f"{check.id}: outside what is tolerated: {outside}"
