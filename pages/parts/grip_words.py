"""The slippery road in sentences from numbers, and what experts advise."""

from __future__ import annotations

import math
from typing import Any

from model.describe.scenario import Scenario
from model.limits.grip_margin import MARGIN_RULE
from model.limits.limit_settings import STRAIGHT, LimitSettings
from model.limits.slippery_road import SLOWER_KMH, SlipperyRoad
from model.words.quantities import MINUS, Display, capital, number_text, percent_text
from pages.parts.charts.grip import SURFACE_WORDS, strength_text
from pages.parts.winter_words import ON, Said, listed, whole

WHEELS = {"front": "the front wheels", "rear": "the rear wheels", "both": "all four wheels", "all": "all four wheels"}


def grip(found: SlipperyRoad, scenario: Scenario, settings: LimitSettings, display: Display) -> Said:
    """The part in words."""
    check, trailer = found.check, scenario.conditions.trailer_kg
    there_is, here = check["available_friction"], capital(ON[check["surface"]])
    where = "" if settings.bend == STRAIGHT else f" in a {settings.bend}"
    asked = max(check["demand_by_axle"][axle]["in_all"] for axle in ("front", "rear"))
    strength, speed = check["lift_off_mps2"], whole(check["speed_kmh"], "km/h", display)
    lift_off = f"your lift-off of {strength:g} m/s²" if strength else "rolling on"
    sentence = (
        f"{here}{where} at {speed} {lift_off} asks {WHEELS[check['failing_axle']]} for {asked:.2f} of grip. There is "
        f"{there_is['low']:.2f} to {there_is['high']:.2f}: margin {check['margin']}."
    )
    facts = _facts(check, in_a_bend=bool(where))
    if where:
        slower = strength_text(found.slower["low"], found.slower["high"])
        facts.insert(1, (f"{whole(SLOWER_KMH, 'km/h', display)} slower", slower, "would be the largest in this bend"))
    if trailer:
        facts.append(
            ("Trailer", whole(trailer, "kg", display), "pushes with its mass and puts no weight on the driven wheels; "
             "whether car and trailer stay stable is not modelled")
        )  # fmt: skip
    return Said(
        "When the road is slippery",
        sentence,
        "Grip is the share of the weight on an axle with which its tyres can push along or across the road.",
        tuple(facts),
        tuple(_do(found)),
        (
            *(
                ("**With a trailer** strong slowing of one axle on a slippery slope can fold car and trailer. Set it "
                 "gentle, and keep to the manual and the trailer’s own brakes.",)
                if trailer
                else ()
            ),
            "**If it slides**, look and steer where you want to go, and do what your training and the manual say, be "
            "it a little accelerator or the brake pedal. A licensed instructor can show it on a closed course.",
            "**A slippery road is no place to try a strong setting for the first time.**",
            f"**Margin is a word for these assumptions alone.** {MARGIN_RULE} On ice grip spreads so widely that no "
            "one figure holds (SAE 960959). Stability control is not modelled.",
        ),
    )  # fmt: skip


def _facts(check: dict[str, Any], *, in_a_bend: bool) -> list[tuple[str, str, str]]:
    largest = [check["largest_lift_off_mps2"][end] for end in ("low", "high")]
    brakes = [max(check["four_wheel_braking_mps2"][end], 0.0) for end in ("low", "high")]
    beside = "the strongest for which there is grip, over the road’s band"
    if largest[0] == 0 and in_a_bend:
        beside = "with the least grip of the band the bend alone asks for all there is"
    slip, lets_go = check["slip_when_control_acts"]["low"], "what happens first when more is asked than there is"
    if slip > 0.005:
        lets_go = (
            f"with the least grip the wheels turn {percent_text(slip)} slower than the road when slip control acts, "
            f"{check['slip_control_delay_s']:g} s later (assumed)"
        )
    facts = [
        ("Largest lift-off", strength_text(*largest), beside),
        ("If it lets go", check["failure"], lets_go),
        ("Brake pedal", f"{number_text(brakes[0])} to {number_text(brakes[1])} m/s²",
         "what friction brakes with ABS may reach straight on: they brake four wheels"),
        ("Weight in front", percent_text(check["axle_load_share"]["front"]),
         f"while slowing; standing still {percent_text(check['axle_load_share_standing']['front'])}"),
    ]  # fmt: skip
    if check["grade_pct"]:
        pull = "pulls against it" if check["grade_pct"] < 0 else "adds to it"
        left = f"{check['slowing_here_mps2']:.2f} m/s²".replace("-", MINUS)
        facts.append(("On this slope", left, f"is what the lift-off comes to: the slope {pull}"))
    return facts


def _do(found: SlipperyRoad) -> list[str]:
    check, largest = found.check, found.check["largest_lift_off_mps2"]["low"]
    do = [
        "**Slow down early and straight on**, before the bend. Steering and slowing share one grip.",
        "**Brake with the pedal, gently.** It works on four wheels with ABS; lift-off works on "
        f"{WHEELS[check['driven_axle']]} through the motor.",
    ]
    if check["lift_off_mps2"] > largest >= 0.1:
        tenths = math.floor(10 * largest)
        do.insert(
            0,
            f"**Set a gentler lift-off**: {tenths / 10:g} m/s² is what the least grip of this road allows. See whether "
            "the car has a setting for slippery roads.",
        )
    if found.winter_times > 1.05:
        do.append(
            f"**Winter tyres do more than any setting**: {SURFACE_WORDS[check['surface']]} gives them "
            f"{number_text(found.winter_times)} times the grip of summer tyres in the figures used here."
        )
    return do


AXLES_READ = (
    "The car from above. Each arrow is what is asked of an axle: back for slowing, aside for the bend. Inside the firm "
    "ellipse the least grip of the road’s band is enough, outside the dotted one not even the most."
)
AXLES_TITLES = {
    "larger": "What is asked lies well inside what there is",
    "moderate": "What is asked lies inside what there is",
    "small": "What is asked reaches beyond what there may be",
}
"""What the drawing of both axles shows, by the margin."""


def axles_numbers(check: dict[str, Any]) -> str:
    """What the drawing of both axles says in figures; `check` is from `model.limits.grip_margin`."""
    there_is, demand = check["available_friction"], check["demand_by_axle"]
    asked = ", ".join(f"{axle} axle asked for {demand[axle]['in_all']:.2f} of grip" for axle in ("front", "rear"))
    return f"{capital(asked)}; there is {there_is['low']:.2f} to {there_is['high']:.2f}."


def roads_words(found: SlipperyRoad) -> tuple[str, str]:
    """The largest lift-off on every road."""
    yours = f"{found.check['lift_off_mps2']:g} m/s²"
    small = found.by_surface.loc[found.by_surface["margin"] == "small", "surface"]
    short = [ON[surface].removeprefix("on ") for surface in small]
    roads = listed(short) if short else "none of these roads"
    if len(short) == len(found.by_surface):
        roads = "every one of these roads"
    title = f"Your {yours} has a small margin on {roads}"
    return title, (
        "Bands: the largest lift-off for which each road has the grip, from its least to its most; the stroke is the "
        "middle. They follow speed, bend and slope set above; where they are from stands under Sources and method."
    )


def weight_words(found: SlipperyRoad) -> tuple[str, str]:
    """Weight shift."""
    first, last = (percent_text(float(found.loads["front"].iloc[end])) for end in (0, -1))
    return f"Hard braking moves the front axle’s share of the weight from {first} to {last}", (
        "Lift-off moves little of it. It is why front wheels can slow more than rear ones, and why a strong lift-off "
        "on the rear wheels alone is the first to run out of grip. Choose a bend to see what the axles’ shares do."
    )


BALANCE_WORDS = (
    "In a bend the axle that slows is the one that lets go first",
    "The same lift-off in this bend, shared differently between the axles. Where the rear axle is asked for more, the "
    "tail tends to step out; where the front is, the nose tends to run wide.",
)
SHARES = ((0.0, "rear driven"), (1.0, "front driven"))
"""Front axle's shares of the motor slowing that have a name."""

ADVICE = (
    ("Auto Club Europa, January 2025, as the press has it",
     "Choose the lowest level: strong recuperation can make the car unstable, since ABS and stability control cannot "
     "step in fast enough.", "advice of a motoring club"),
    ("Touring Club Schweiz, as the press has it",
     "It could unsettle the car, but ABS usually watches over it.", "advice of a motoring club"),
    ("Norwegian EV association, 2022",
     "Does not stand without reservation behind the advice to avoid regeneration.",
     "six all-wheel-drive cars on bare ice with studless tyres, foot lifted in a bend at 60 km/h; the results of its "
     "test of front- and rear-driven cars in 2023 were not seen"),
    ("Vilnius Gediminas Technical University, Applied Sciences 2025, 15, 10926",
     "Oversteer grows, even when stability control has stepped in.", "two rear-driven cars, measured; abstract"),
    ("Owners’ manuals of two cars",
     "One: on snowy slopes it helps to keep steering, but not at the strongest level. The other: the car weakens it by "
     "itself where grip is poor.", "each for its own car"),
)  # fmt: skip
"""Who advises what on regeneration in winter, and on what ground."""
ADVICE_READ = (
    "They speak of different cars, roads and speeds. What this page adds is the margin for yours: the gentler the "
    "lift-off and the lower the speed, the less hangs on who is right. The manual of your car decides."
)
