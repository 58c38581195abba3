"""A table of assets that cannot be used says where it is wrong, in one sentence."""

import json
import re
import shutil

import pytest

from model.claims.collection import OWN_FILE, claims
from model.describe import parameters, tables
from model.describe.changes import changes
from model.describe.parameters import class_labels
from model.describe.tables import ASSETS, TableError
from model.physics.charge_acceptance import acceptance_tables
from model.physics.surfaces import surface_table

CLASSES, SHARED, GRIP, CHARGE, CLAIMS, CHANGES = (
    "car_classes.csv", "parameters.csv", "grip.csv", "charge_acceptance.csv", "claims.json", "changes.csv"
)  # fmt: skip
LOADERS = {
    CLASSES: class_labels, SHARED: class_labels, GRIP: surface_table, CHARGE: acceptance_tables, CLAIMS: claims,
    CHANGES: changes,
}  # fmt: skip
VAN = "van,Van,mass_kg,2100,2350,2700,assumed"


@pytest.fixture
def assets(monkeypatch, tmp_path):
    """A copy of the tables that is read in place of those there are."""
    for name in (*LOADERS, OWN_FILE):
        shutil.copy(ASSETS / name, tmp_path / name)
    forget = [parameters._shared, parameters._classes, *LOADERS.values()]
    monkeypatch.setattr(tables, "ASSETS", tmp_path)
    monkeypatch.setattr("model.claims.collection.ASSETS", tmp_path)
    for cached in forget:
        cached.cache_clear()
    yield tmp_path
    for cached in forget:
        cached.cache_clear()


WRONG = [
    (CLASSES, "van,Van,mass_kg,", "van,Van,mas_kg,", "row 82: key 'mas_kg' is unknown; the nearest is 'mass_kg'."),
    (CLASSES, VAN, VAN.replace("2100", "2400"), "row 82: mass_kg has low above mid: 2400 and 2350."),
    (CLASSES, VAN, VAN.replace("2700", "2300"), "row 82: mass_kg has mid above high: 2350 and 2300."),
    (CLASSES, VAN, VAN.replace("2350", "heavy"), "row 82: mass_kg: 'heavy' cannot be used."),
    (CLASSES, VAN, VAN.replace("2350", "9000"), "row 82: mass_kg: '9000' cannot be used."),
    (CLASSES, "van,Van,drag_area_m2", "van,Van,mass_kg", "row 83: van mass_kg stands in row 82 too."),
    (CLASSES, "van,Van,drag_area_m2", "van,Vans,drag_area_m2", "row 83: van is called 'Vans' here and 'Van' above."),
    (CLASSES, VAN, VAN.replace("assumed", "guessed"), "row 82: kind 'guessed' is unknown; .*"),
    (CLASSES, "van,Van,mass_kg", "vans,Van,mass_kg", "row 82: vans ends here without .*usable_kwh.*has not either."),
    (CLASSES, VAN, VAN + ",1", "row 82: 10 cells where the head has 9 columns."),
    (CLASSES, "class,label,key", "class,label,keys", "row 1: there is no column 'key'."),
    (SHARED, "rotating_mass_share,", "rotating_mas_share,", "row 2: key 'rotating_mas_share' is unknown; .*"),
    (SHARED, "3 to 8 % is usual for cars; no source", " ", "row 2: rotating_mass_share has no source."),
    (SHARED, "tyre_warm_up_min", "tyre_cold_share", "row 5: tyre_cold_share stands in row 4 too."),
    (GRIP, "snow,0.15", "snows,0.15", "row 5: surface 'snows' is unknown; the nearest is 'snow'."),
    (GRIP, "snow,0.15", "snow,0.25", "row 5: grip_low 0.25 is above grip_mid 0.2."),
    (GRIP, "snow,0.15", "snow,O.15", "row 5: grip_low 'O.15' is not a number."),
    (GRIP, "snow,0.15", "ice,0.15", "row 6: ice stands in row 5 too."),
    (CHARGE, "mid,10,1.8", "mid,10,18", "row 19: at charge 0 mid is above high."),
    (CHARGE, "mid,10,1.8", "mid,10,fast", "row 12: 0 'fast' is not a number."),
    (CHARGE, "mid,10,", "mid,15,", ": the temperatures of mid are not those of low, rising."),
    (CHARGE, "mid,10,", "middle,10,", "row 12: level 'middle' is unknown; .*"),
    (CHARGE, "battery_c,0,0.6", "battery_c,0,0.9", "row 1: the charges do not rise from 0 to 1."),
    (CLAIMS, '"runs": 4001', '"rums": 4001', r"claim 1 \(range-gain-in-town\): key 'rums' is unknown; .*'runs'."),
    (CLAIMS, '"runs": 4001', '"runs": 4000', r"claim 1 \(.*\): runs 4000 is none of 607, .*"),
    (CLAIMS, '"ambient_c": [-10, 15, 30]', '"ambient_c": [20, 15, 30]', "claim 1 .*: ambient_c has low above mid, .*"),
    (CLAIMS, '"ambient_c": [-10, 15, 30]', '"ambient": [-10, 15, 30]', "claim 1 .*: key 'ambient' is unknown; .*"),
    (CLAIMS, '"ambient_c": [-10, 15, 30]', '"ambient_c": [-10, "warm", 30]', "claim 1 .*'warm' cannot be used."),
    (CLAIMS, '"share_of_drive", "number": 40', '"share", "number": 40', "claim 1 .*: quantity 'share' is unknown; .*"),
    (CLAIMS, '"recovered-on-test-cycle"', '"range-gain-in-town"', r"claim 2 \(.*\): another claim has that id."),
    (CLAIMS, '"relation": "up_to",', '"unit": "%",', ".*'unit' is given twice in one entry.*"),
    (CLAIMS, '"relation": "up_to",', '"relation": "between",', "claim 1 .*: number does not fit between: .*"),
    (CLAIMS, '"claims": [', '"claims": [,', ", row 2: .*"),
    (CLAIMS, '"claims": [', '"claim": [', "there is no list of claims by the name of 'claims'."),
    (CLAIMS, '"claims": [', '"claims": ["brakes",', "claim 1: it is not an entry of keys and values."),
    (CLAIMS, '"unit": "%"', '"unit": "percent"', "claim 1 .*: unit 'percent' is unknown; .*"),
    (CHANGES, "0.1.1,2026-11-29,change", "0.1,2026-11-29,change", "row 4: version '0.1' is none such as 0.2.0."),
    (CHANGES, "0.1.1,2026-11-29,change", "0.0.9,2026-11-29,change", "row 4: version 0.0.9 stands below 0.1.1."),
    (CHANGES, "0.1.0,2026-11-25", "0.1.0,2026-11", "row 2: date '2026-11' is no day such as 2026-11-29."),
    (CHANGES, "0.1.1,2026-11-29,change", "0.1.1,2026-11-29,chnge", "row 4: kind 'chnge' is unknown; .*'change'."),
    (CHANGES, "718a78845f2424a9", "718a78845f", "row 3: golden '718a78845f' is no digest of sixteen digits."),
    (CHANGES, "version,date", "version,dat", "row 1: there is no column 'date'."),
]


@pytest.mark.parametrize("name, right, wrong, said", WRONG)
def test_what_is_wrong_in_a_table_is_said_with_its_row(assets, name, right, wrong, said):
    text = (assets / name).read_text(encoding="utf-8")
    assert right in text
    (assets / name).write_text(text.replace(right, wrong, 1), encoding="utf-8")
    with pytest.raises(TableError) as refused:
        LOADERS[name]()
    assert re.fullmatch(f"assets/{name}[,:]? ?{said}", str(refused.value)), str(refused.value)


@pytest.mark.parametrize("key", ["quantity", "open", "id"])
def test_a_claim_without_what_it_needs_is_named(assets, key):
    listed = json.loads((assets / CLAIMS).read_text(encoding="utf-8"))
    del listed["claims"][0][key]
    (assets / CLAIMS).write_text(json.dumps(listed), encoding="utf-8")
    with pytest.raises(TableError, match=rf"claim 1 .*: {key} must be given"):
        claims()


def test_a_change_that_says_nothing_and_a_version_without_one_are_named(assets, monkeypatch):
    (assets / CHANGES).write_text("version,date,kind,what,golden\n0.1.0,2026-11-25,change, ,\n", encoding="utf-8")
    with pytest.raises(TableError, match=r"^assets/changes.csv, row 2: it does not say what changed.$"):
        changes()
    shutil.copy(ASSETS / CHANGES, assets)
    monkeypatch.setattr("model.describe.changes.MODEL_VERSION", "9.0.0")
    with pytest.raises(TableError, match=r"no row at the end says what changed in 9.0.0.$"):
        changes()
