"""One lumped mass: it warms to where its loss meets its heat, and cools to the air."""

import pytest

from model.describe.parameters import car_from
from model.describe.scenario import Conditions, Driver
from model.physics.pack_heat import kept_share, pack_after_c, start_c
from model.physics.records import car_record


def record(stated=None, **conditions):
    return car_record(car_from("family-hatch", stated), Conditions(**conditions), Driver())


def test_a_pack_warms_to_where_loss_meets_heat():
    car, pack_c = record({"usable_kwh": 10.0, "pack_heat_loss_w_per_k": 10.0}), -5.0
    assert pack_after_c(car, pack_c, 2000.0, kept_share(car, 10.0), -5.0) == pytest.approx(-5 + 2000 / 60000, abs=1e-4)
    for _ in range(30000):
        pack_c = pack_after_c(car, pack_c, 2000.0, kept_share(car, 10.0), -5.0)
    # 200 W over 10 W/K; the heat of a step is all there at its end, which is a little too warm
    assert pack_c == pytest.approx(-5 + 20, abs=0.02)


def test_a_warm_pack_cools_to_the_air():
    car, pack_c = record(), 20.0
    for _ in range(20000):
        before, pack_c = pack_c, pack_after_c(car, pack_c, 0.0, kept_share(car, 100.0), 0.0)
        assert 0 < pack_c < before
    assert pack_c < 1e-3


def test_the_pack_starts_as_stated_warmed_or_as_where_it_stood():
    assert start_c(record(), -5.0) == -5
    assert start_c(record(parked_c=3.0), -5.0) == 3
    assert start_c(record(preconditioned=True), -5.0) == 20
    assert start_c(record(preconditioned=True), 30.0) == 30
    assert start_c(record(parked_c=3.0, preconditioned=True), -5.0) == 20
    assert start_c(record(battery_temp_c=8.0, preconditioned=True), -5.0) == 8
