"""The numbers that claims are about, each computed for every drawn run."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from model.claims.draws import Draws
from model.claims.inputs import CAR_AND_DRIVE
from model.claims.roads import LONG_DRIVE_KM, again_and_again, over_the_hill, steady, stop_from
from model.describe.car import CAR_FIELDS
from model.describe.parameters import DEFAULT_CLASS, car_from
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, Conditions, Driver
from model.describe.trace import Array, Numbers, Trace
from model.describe.units import GRAVITY_MPS2, J_PER_KWH, J_PER_WH, KMH_PER_MPS
from model.kernel.books import Books, book_keeper
from model.kernel.by_stretch import braked_by_stretch
from model.kernel.moments import lift_each
from model.kernel.phrases import PHRASES
from model.kernel.run import Run
from model.kernel.speed_changes import motor_over_brakes_each, rolling_saves_each_j
from model.limits.full_start import PART_CHARGED, ordinary_w
from model.limits.stopping import braking_power_w
from model.physics.battery import take_in_each, usable_share
from model.physics.records import Records, car_records, moments_on_road
from model.traces.cycles import LABORATORY

ELECTRIC_SLOW_DOWN = 0.95
"""A slow-down counts as done by the motor alone when it took at least this share of its braking energy."""
WARM_C = 23.0
"""Temperature that a cold drive is compared with: neither heating nor cooling runs."""
MARKS_KM = np.arange(0.0, LONG_DRIVE_KM, 0.5)
NOTHING = 0.01
"""A base below this share of what turns over on the drive is next to nothing, and a ratio to it says nothing [1]."""


def over(top: Numbers, base: Numbers, scale: Numbers) -> Array:
    """A ratio [1]; infinite, for `verdicts` to refuse, where the base is next to nothing beside `scale`."""
    nothing = base <= NOTHING * scale
    return np.where(nothing, np.inf, top / np.where(nothing, 1.0, base))


def share_of_drive(draws: Draws) -> Array:
    """What comes back [%], as a share of what the draw's denominator says."""
    both = bool(np.isin(draws["denominator"], ("range_gain", "range_lost")).any())
    energies = draws.drive(book_keeper, (True, False) if both else (True,))
    result = np.empty(len(draws))
    for (phrase,), rows in draws.groups(["denominator"]):
        books = Books(*[*energies[:, rows], 1.0])
        said = PHRASES[str(phrase)]
        base = said.base(books, books.back)
        result[rows] = over(100 * said.share(books, books.back) * base, base, books.out)
    return result


def electric_share(draws: Draws) -> Array:
    """Share of braking done by the motor [%]: of the energy, or of the slow-downs that it did alone."""

    def measure(trace: Trace) -> Callable[[Run], Sequence[Array]]:
        slowing = np.diff(trace.speed_mps) < 0
        numbers = np.cumsum(slowing & ~np.append(False, slowing[:-1]))

        def shares(run: Run) -> Sequence[Array]:
            energies = run.energies
            by_motor = over(energies["braking_j"] - energies["friction_j"], energies["braking_j"], run.out_j)
            if not numbers[-1]:
                return by_motor, np.full_like(by_motor, np.inf)
            # what comes before the first slow-down is none
            whole, discs = braked_by_stretch(run, numbers)[..., 1:]
            counts = whole > 1e-3 * whole.max()
            alone = counts & (discs <= (1 - ELECTRIC_SLOW_DOWN) * whole)
            return by_motor, over(alone.sum(-1), counts.sum(-1), np.ones(len(by_motor)))

        return shares

    energy, slow_downs = 100 * draws.drive(measure, (True,), record=True)
    return np.where(draws["counted"] == "energy", energy, slow_downs)


def kinetic_ratio(draws: Draws) -> Array:
    """Kinetic energy at double the speed over that at the speed [1]."""
    moving_kg = draws["mass_kg"] * (1 + draws["rotating_mass_share"])
    slow, fast = (moving_kg * (times * draws["speed_kmh"] / KMH_PER_MPS) ** 2 / 2 for times in (1, 2))
    return fast / slow


def _energies(run: Run) -> Sequence[Array]:
    return run.out_j, run.in_j, run.energies["braking_j"]


def recovered_ratio(draws: Draws) -> Array:
    """Energy put back in an even stop from double the speed over that from the speed [1]."""
    (_, slow, braked), (_, fast, _) = (
        draws.replaced(speed_kmh=times * draws["speed_kmh"]).drive(
            lambda _: _energies, (True,), by=("speed_kmh", "slowing_mps2"), trace=stop_from
        )
        for times in (1, 2)
    )
    return over(fast, slow, braked)


def friction_work_spared(draws: Draws) -> Array:
    """Work that regeneration spares the friction brakes [%]."""

    def works(run: Run, without: Run) -> Sequence[Array]:
        return run.energies["friction_j"], without.energies["friction_j"], without.out_j

    with_it, without, out = draws.drive(lambda _: works)
    return 100 * over(without - with_it, without, out)


def net_j_per_m(
    draws: Draws, by: Sequence[str] = ("cycle",), trace: Callable[..., Trace] | None = None
) -> Array:
    """Net energy of each run at the battery over its distance [J/m]; zero where next to nothing is left of it.

    `by` and `trace` are those of `Draws.drive`.
    """

    def measure(road: Trace) -> Callable[[Run], Sequence[Array]]:
        return lambda run: (run.net_j / road.distance_m, run.out_j / road.distance_m)

    net, out = draws.drive(measure, (True,), by=by, trace=trace)
    return np.where(net < NOTHING * out, 0.0, net)


def more_range(before: Array, after: Array) -> Array:
    """Range at the second net energy over that at the first, less one [%]."""
    return 100 * (over(before, after, before) - 1)


def range_lost(before: Array, after: Array) -> Array:
    """Range lost from the first net energy to the second [%]."""
    return 100 * (1 - over(before, after, before))


def range_by_lift_off(draws: Draws) -> Array:
    """Range with the strong over that with the gentle lift-off, less one [%], at the same speeds."""
    gentle, strong = (draws.replaced(lift_off_mps2=draws[key]) for key in ("gentle_mps2", "strong_mps2"))
    return more_range(net_j_per_m(gentle), net_j_per_m(strong))


def saved_by_one_pedal(draws: Draws) -> Array:
    """Energy saved [%] by a strong lift-off that brings the car to rest, against a gentle one, at the same speeds."""
    two = draws.replaced(lift_off_mps2=draws["gentle_mps2"], comes_to_rest=False)
    one_pedal = draws.replaced(lift_off_mps2=draws["strong_mps2"], comes_to_rest=True)
    before = net_j_per_m(two)
    return 100 * over(before - net_j_per_m(one_pedal), before, before)


def _light_and_heavy(draws: Draws) -> tuple[Array, Array]:
    heavy = draws.replaced(mass_kg=draws["mass_kg"] * (1 + draws["extra_mass_pct"] / 100))
    light, laden = (case.drive(lambda _: _energies, (True,)) for case in (draws, heavy))
    return light, laden


def share_by_mass(draws: Draws) -> Array:
    """Recovered share of the heavier car less that of the lighter one [percentage points]."""
    light, heavy = _light_and_heavy(draws)
    return 100 * (heavy[1] / heavy[0] - light[1] / light[0])


def net_by_mass(draws: Draws) -> Array:
    """Net energy of the heavier car over that of the lighter one, less one [%]."""
    light, heavy = _light_and_heavy(draws)
    return 100 * (over(heavy[0] - heavy[1], light[0] - light[1], light[0]) - 1)


def _small_and_big(draws: Draws) -> tuple[Array, Array]:
    bigger = draws.replaced(**{key: draws[key] * draws["motor_factor"] for key in ("motor_peak_kw", "regen_peak_kw")})
    small, big = (case.drive(lambda _: _energies, (True,)) for case in (draws, bigger))
    return small, big


def recovered_by_motor(draws: Draws) -> Array:
    """Energy that a bigger or second motor puts back over that of the smaller one, less one [%]."""
    small, big = _small_and_big(draws)
    return 100 * (over(big[1], small[1], small[2]) - 1)


def range_by_motor(draws: Draws) -> Array:
    """Range with a bigger or second motor over that with the smaller one, less one [%]."""
    small, big = _small_and_big(draws)
    return 100 * (over(small[0] - small[1], big[0] - big[1], big[0]) - 1)


def back_from_climb(draws: Draws) -> Array:
    """Energy put back on the descent over what the climb took [%]."""
    energies = draws.drive(book_keeper, by=("grade_pct", "speed_kmh", "height_m"), trace=over_the_hill)
    return 100 * over(energies[6], energies[5], draws["mass_kg"] * GRAVITY_MPS2 * draws["height_m"])


def range_lost_to_cold(draws: Draws) -> Array:
    """Range lost against the same drive at 23 °C on a dry road, car and battery as warm as the air [%]."""
    warm = draws.without(("battery_temp_c", "parked_c")).replaced(ambient_c=WARM_C, surface="dry")
    return range_lost(net_j_per_m(warm), net_j_per_m(draws))


def as_certified(draws: Draws) -> Draws:
    """The same cars as a laboratory tests them, whatever was said of weather, road, load, trailer, charge and foot."""
    return draws.without(CONDITION_FIELDS | DRIVER_FIELDS).replaced(ambient_c=WARM_C)


def range_below_test_cycle(draws: Draws) -> Array:
    """Range at a steady speed below that of the car as certified on the test cycle [%]."""
    on_road = net_j_per_m(draws, by=("speed_kmh",), trace=steady)
    return range_lost(net_j_per_m(as_certified(draws)), on_road)


def range_gain_over_recovered(draws: Draws) -> Array:
    """Range gain over recovered share [1]: the factor by which whoever takes one for the other is wrong."""
    books = Books(*[*draws.drive(book_keeper), 1.0])
    recovered = PHRASES["recovered"].share(books, books.back)
    return over(PHRASES["range_gain"].share(books, books.back), recovered, np.ones(len(draws)))


def _cars(draws: Draws, conditions: Conditions, driver: Driver, *keys: str) -> Records:
    """Every run's car; of what is not the car's own, `keys` are as drawn."""
    own = {key for key in draws.columns if key in CAR_FIELDS and CAR_FIELDS[key].kind == "number"}
    return car_records(car_from(DEFAULT_CLASS), conditions, driver, {key: draws[key] for key in own.union(keys)})


def saved_by_coasting(draws: Draws) -> Array:
    """Battery energy that rolling down to a lower speed saves against slowing on the motor, over the same road [Wh].

    Flat road, no cabin. See `model.kernel.speed_changes.rolling_saves_j`.
    """
    saved_j = np.empty(len(draws))
    rolling_saves_each_j(
        _cars(draws.replaced(driven_axle="all"), LABORATORY, Driver(), "driven_axle", "ambient_c"),
        moments_on_road(len(draws)),
        draws["speed_kmh"] / KMH_PER_MPS,
        draws["slower_by_kmh"] / KMH_PER_MPS,
        draws["slowing_mps2"],
        draws["time_made_up"],
        saved_j,
    )
    return saved_j / J_PER_WH


def stop_by_motor_over_brakes(draws: Draws) -> Array:
    """Distance of a stop by the motor alone over that of one with all the grip there is [1], without reaction time.

    The motor may work down to standstill, which flatters it; it stays within the car's own limits and the grip of its
    wheels.
    """
    ratio = np.empty(len(draws))
    keys = ("driven_axle", "surface", "grip_level", "ambient_c")
    motor_over_brakes_each(
        _cars(draws, LABORATORY, Driver(comes_to_rest=True), *keys),
        moments_on_road(len(draws)),
        draws["speed_kmh"] / KMH_PER_MPS,
        ratio,
    )
    return ratio


def full_stop_power_mw(draws: Draws) -> Array:
    """Braking power at the first moment of a full stop from top speed [MW]."""
    mass, speed = draws["mass_kg"] + draws["payload_kg"], draws["motor_top_speed_kmh"] / KMH_PER_MPS
    return braking_power_w(mass, draws["slowing_mps2"], speed) / 1e6


def hybrid_over_battery(draws: Draws) -> Array:
    """Energy that a hybrid puts back over that of a battery car on the same road [%].

    The hybrid starts with the charge that its engine keeps, so with the room that it usually has.
    """
    hybrids = draws.in_cars(draws["hybrid"])
    hybrids = hybrids.replaced(soc_start=hybrids["sustain_soc"])
    (_, hybrid, _), (_, by_battery, braked) = (case.drive(lambda _: _energies, (True,)) for case in (hybrids, draws))
    return 100 * over(hybrid, by_battery, braked)


def range_km(draws: Draws) -> Array:
    """Range from full to empty, the same drive over and over [km]; a cold battery holds some of its charge back."""

    def measure(trace: Trace) -> Callable[[Run], Sequence[Array]]:
        return lambda run: (run.net_j / trace.distance_m, run.out_j / trace.distance_m, run.energies["pack_c_end"])

    net, out, pack_c = draws.drive(measure, (True,))
    usable_j = draws["usable_kwh"] * J_PER_KWH * usable_share(draws["cold_capacity_loss_per_k"], pack_c)
    return over(usable_j / 1000, net, out)


def energy(draws: Draws) -> Array:
    """Net energy at the battery [kWh/100 km]."""
    return net_j_per_m(draws) * 100_000 / J_PER_KWH


def km_on_display(draws: Draws) -> Array:
    """What the range display gains over 100 km, if it reckons with this drive's consumption [km]."""
    back, out = draws.drive(lambda _: lambda run: (run.in_j, run.out_j), (True,))
    return over(100 * back, out - back, out)


def km_until_usual(draws: Draws) -> Array:
    """Distance until the battery takes what the drive's ordinary slow-downs give [km], in steps of half a kilometre.

    Ordinary is what four fifths of the energy come at from a warm, part-charged battery, as in
    `model.limits.full_start`. A car that does not come to it counts with all of LONG_DRIVE_KM.
    """
    usual = draws.replaced(soc_start=PART_CHARGED, battery_temp_c=WARM_C)
    (usual_w,) = usual.drive(lambda _: lambda run: (ordinary_w(run),), (True,), record=True)

    def measure(trace: Trace) -> Callable[[Run], Sequence[Array]]:
        marks = np.searchsorted(np.cumsum(trace.step_m), 1000 * MARKS_KM)

        def taken(run: Run) -> Sequence[Array]:
            soc, pack_c = np.clip(run.soc[:, marks], 0, 1), run.pack_c[:, marks]
            takes_w = np.empty_like(soc)
            for car, at_soc, at_c, to_w in zip(run.cars, soc, pack_c, takes_w, strict=True):
                take_in_each(car, at_soc, at_c, to_w)
            return list(takes_w.T)

        return taken

    takes_w = draws.drive(measure, (True,), trace=again_and_again, record=True)
    enough = takes_w >= usual_w
    km = np.where(enough.any(0), MARKS_KM[enough.argmax(0)], LONG_DRIVE_KM)
    return np.where(np.isnan(takes_w[0]) | np.isnan(usual_w), np.nan, km)


def charge_to_leave_free(draws: Draws) -> Array:
    """What a descent puts back, as a share of the usable battery [%]: the charge to leave free for it."""
    energies = draws.drive(book_keeper, (True,), by=("grade_pct", "speed_kmh", "height_m"), trace=over_the_hill)
    return 100 * energies[6] / (draws["usable_kwh"] * J_PER_KWH)


def back_from_stop(draws: Draws) -> Array:
    """What an even stop puts back, as a share of its braking energy at the wheels [%]."""
    _, back, braked = draws.drive(
        lambda _: _energies, (True,), by=("speed_kmh", "slowing_mps2"), trace=stop_from
    )  # fmt: skip
    # a slow stop may leave nothing to brake at all
    return 100 * np.divide(back, braked, out=np.zeros_like(back), where=braked > 0)


def _feet_up(draws: Draws) -> tuple[Array, Array]:
    keys = [key for key in draws.columns if key in CAR_AND_DRIVE]
    moments = moments_on_road(len(draws))
    moments["speed_mps"] = draws["speed_kmh"] / KMH_PER_MPS
    slowing, of_grip = np.empty(len(draws)), np.empty(len(draws))
    lift_each(_cars(draws, LABORATORY, Driver(), *keys), moments, slowing, of_grip)
    return slowing, of_grip


def slowing_with_foot_up(draws: Draws) -> Array:
    """What the car slows by when the foot comes up, on a flat road [m/s²]."""
    return _feet_up(draws)[0]


def grip_asked(draws: Draws) -> Array:
    """Grip that a lift-off on a straight road asks of the driven axle, as a share of what there is [%]."""
    return 100 * _feet_up(draws)[1]


def lost_to_delay(draws: Draws) -> Array:
    """Share of the recovered energy [%] that comes in the first moments of each slow-down, until the motor turns."""

    def rates(run: Run) -> Sequence[Array]:
        taken = np.maximum(-run.terminal_w, 0)
        slowing = run.motor_n > 0
        begins = slowing & ~np.pad(slowing, ((0, 0), (1, 0)))[:, :-1]
        return (taken * begins).sum(-1), run.in_j, run.energies["braking_j"]

    first_w, back_j, braked = draws.drive(lambda _: rates, (True,), record=True)
    return 100 * over(first_w * draws["delay_ms"] / 1000, back_j, braked)


QUANTITIES: dict[str, Callable[[Draws], Array]] = {
    quantity.__name__: quantity
    for quantity in (
        share_of_drive,
        electric_share,
        kinetic_ratio,
        recovered_ratio,
        friction_work_spared,
        range_by_lift_off,
        saved_by_one_pedal,
        share_by_mass,
        net_by_mass,
        recovered_by_motor,
        range_by_motor,
        back_from_climb,
        range_lost_to_cold,
        range_below_test_cycle,
        range_gain_over_recovered,
        saved_by_coasting,
        stop_by_motor_over_brakes,
        full_stop_power_mw,
        lost_to_delay,
        hybrid_over_battery,
        range_km,
        energy,
        km_on_display,
        km_until_usual,
        charge_to_leave_free,
        back_from_stop,
        slowing_with_foot_up,
        grip_asked,
    )
}
"""What claims are tested on, by name."""


