"""Cars as rows of numbers: every field of the table is a column, and drawn figures find theirs."""

import numpy as np
import pytest

from model.describe.car import CAR_FIELDS
from model.describe.parameters import car_from
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, Conditions, Driver
from model.physics.records import CAR_RECORD, car_record, car_records, code

CAR = car_from("family-hatch")


def test_every_field_of_car_conditions_and_driver_is_a_column():
    record, parts = car_record(CAR, Conditions(), Driver()), (CAR, Conditions(), Driver())
    for part, table in zip(parts, (CAR_FIELDS, CONDITION_FIELDS, DRIVER_FIELDS), strict=True):
        for key, field in table.items():
            if field.kind == "text":
                assert key not in CAR_RECORD.names
            elif getattr(part, key) is None:
                assert np.isnan(record[key])
            elif field.kind == "choice":
                assert field.choices[record[key]] == getattr(part, key)
            else:
                assert record[key] == getattr(part, key)


def test_drawn_figures_differ_from_car_to_car_whatever_their_kind():
    drawn = {
        "mass_kg": np.array([[1500.0], [1600.0]]), "heat_source": np.array(["heat_pump", "resistive"], dtype=object),
        "cabin": np.array([True, False]), "no_column": np.zeros(2),
    }  # fmt: skip
    records = car_records(CAR, Conditions(), Driver(), drawn)
    assert records["mass_kg"].tolist() == [1500, 1600] and records["cabin"].tolist() == [True, False]
    assert records["heat_source"].tolist() == [code("heat_source", "heat_pump"), code("heat_source", "resistive")]
    assert records["usable_kwh"].tolist() == [CAR.usable_kwh] * 2


def test_a_choice_that_there_is_not_has_no_number():
    with pytest.raises(ValueError):
        code("driven_axle", "middle")
