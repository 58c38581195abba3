"""The kernel answers what it answered when its golden file was written; and the file changes with the version only."""

import pytest

from model.describe.changes import changes
from model.describe.parameters import car_from
from model.describe.units import J_PER_KWH
from model.kernel.ledger import Ledger
from tests.golden.write import ENERGIES, KEYS, answers, digest, read, written_by

WITHIN, WHERE_THE_BATTERY_BINDS = 1e-6, 1e-4
"""Of the energy turned over [1]."""
WITHIN_K = 5e-3
"""For the battery's temperature [K]."""


@pytest.fixture(scope="module")
def pairs():
    """Golden rows, each with what is answered now."""
    golden = {tuple(row[key] for key in KEYS): row for row in read()}
    # a class that was added since is written down with the next version
    now = {tuple(str(row[key]) for key in KEYS): row for row in answers(dict.fromkeys(car for car, *_ in golden))}
    assert list(golden) == sorted(now)
    return [(golden[key], now[key]) for key in golden]


def turned_over(row):
    """Energy turned over [J]."""
    return Ledger(**{name: float(row[name]) for name in Ledger.__dataclass_fields__}).throughput


def test_refusals_are_the_golden_ones(pairs):
    assert [now["refused"] for _, now in pairs] == [golden["refused"] for golden, _ in pairs]
    assert any(golden["refused"] for golden, _ in pairs)


def test_energies_are_the_golden_ones(pairs):
    wrong = []
    for golden, now in pairs:
        if golden["refused"]:
            continue
        binds = float(golden["left_by_battery"]) > 0
        turned = turned_over(golden)
        allowed_j = turned * (WHERE_THE_BATTERY_BINDS if binds else WITHIN)
        allowed = dict.fromkeys(ENERGIES, allowed_j) | {
            "soc_end": allowed_j / (car_from(golden["car"]).usable_kwh * J_PER_KWH),
            "pack_c_end": WITHIN_K,
            "duration_s": WITHIN * float(golden["duration_s"]),
            "followed": 0.0,
        }
        for name, most in allowed.items():
            off = abs(now[name] - float(golden[name]))
            if not off <= most:
                wrong.append(f"{' '.join(golden[key] for key in KEYS)}: {name} is off by {off:.3g}, allowed {most:.3g}")
    assert not wrong, "\n".join(wrong[:20])


def test_every_entry_of_the_ledger_and_every_limit_is_somewhere_golden():
    table = [row for row in read() if not row["refused"]]
    never = {name for name in ENERGIES if all(float(row[name]) == 0 for row in table)}
    assert never == {"kinetic"}, "all drives begin and end at rest"


def test_a_golden_file_that_changes_comes_with_a_version_and_its_digest():
    noted = [row for row in changes() if row["golden"]]
    versions = [row["version"] for row in noted]
    assert len(set(versions)) == len(versions), "one golden file a version"
    assert (noted[-1]["version"], noted[-1]["golden"]) == (written_by(), digest())
