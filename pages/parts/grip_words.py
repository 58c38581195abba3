"""The slippery road in sentences from numbers, and what experts advise."""

from __future__ import annotations

from model.describe.figures import Quantity, Several, Share, Span
from model.describe.scenario import Scenario
from model.lift_off.advice import Advice
from model.limits.grip_margin import GripCheck
from model.limits.limit_settings import STRAIGHT, LimitSettings
from model.limits.slippery_road import SLOWER_KMH, SlipperyRoad
from model.words.lift_off import at_most, no_more_than
from model.words.quantities import Display, inside
from pages.parts import lift_off_words
from pages.parts.charts.grip import gives, margin_text, road_name, strength_text
from pages.parts.winter_words import LimitWords


def grip(
    found: SlipperyRoad, advice: Advice, scenario: Scenario, settings: LimitSettings, display: Display
) -> LimitWords:
    """The part in words; `advice` is that for the whole drive, straight on."""
    check, trailer, in_a_bend = found.check, scenario.conditions.trailer_kg, settings.bend != STRAIGHT
    strength, margin = check["lift_off_mps2"], "bend-alone" if bend_alone(check) else check["margin"]
    least = check["largest_lift_off_mps2"]["low"]
    sentence = display.say(
        "grip-asked",
        surface=check["surface"],
        bend=bend_option(settings.bend),
        speed=Quantity(check["speed_kmh"], "km/h", places=0),
        foot="lift-off" if strength else "rolling",
        strength=as_set(strength),
        wheels=check["failing_axle"],
        margin=margin,
        set=_to_set(margin, strength, least, advice, display),
        most=at_most(least, display),
        advised=inside(lift_off_words.heading(advice, display)),
    )
    in_figures = display.say(
        "grip-in-figures",
        wheels=check["failing_axle"],
        asked=Quantity(max(check["demand_by_axle"][axle]["in_all"] for axle in ("front", "rear")), "", places=2),
        gives=gives(check["available_friction"]),
    )
    facts = _facts(check, display, in_a_bend=in_a_bend)
    if in_a_bend:
        slower = strength_text(found.slower["low"], found.slower["high"], display)
        by = Quantity(SLOWER_KMH, "km/h", places=0)
        facts.insert(1, (display.say("grip-slower", slower=by), slower, display.say("grip-slower-beside")))
    if trailer:
        mass = display.figure(Quantity(trailer, "kg", places=0))
        facts.append((display.say("limits-trailer"), mass, display.say("grip-trailer-beside")))
    mind = [display.say("grip-mind-trailer")] if trailer else []
    mind += [
        display.say("grip-mind-slide"),
        display.say("grip-mind-first-time"),
        display.say("grip-mind-margin"),
    ]
    heading, caution = display.say("grip-heading", surface=check["surface"]), display.say("grip-caution")
    do = tuple(_do(found, advice, display))
    return LimitWords(heading, sentence, in_figures, tuple(facts), do, tuple(mind), caution)


def _to_set(margin: str, strength: float, least: float, advice: Advice, display: Display) -> str:
    """Whether the lift-off stays as it is set, or what is told of a gentler one; none is advised that may not hold."""
    if margin == "bend-alone" or strength <= least:
        return "as-it-is"
    if not no_more_than(least, display):
        return "never"
    return "advised" if advice.lift_off_mps2 <= least else "gentler"


def bend_alone(check: GripCheck) -> bool:
    """Whether the bend alone asks for more than the road gives at its best, so that no lift-off is left."""
    return check["margin"] == "none" and check["largest_lift_off_mps2"]["high"] == 0


def as_set(strength: float) -> Quantity:
    """A lift-off strength as it was set."""
    return Quantity(strength, "m/s²", 6, trimmed=True)


def bend_option(bend: str) -> str:
    """A bend as messages choose by it."""
    return bend.replace(" ", "-")


def _facts(check: GripCheck, display: Display, *, in_a_bend: bool) -> list[tuple[str, str, str]]:
    largest = [check["largest_lift_off_mps2"][end] for end in ("low", "high")]
    brakes = [max(check["four_wheel_braking_mps2"][end], 0.0) for end in ("low", "high")]
    alone = largest[0] == 0 and in_a_bend
    beside = display.say("grip-largest-bend-alone") if alone else display.say("grip-largest-beside")
    slip, lets_go = check["slip_when_control_acts"]["low"], display.say("grip-lets-go-beside")
    if slip > 0.005:
        delay = Quantity(check["slip_control_delay_s"], "s", 6, trimmed=True)
        lets_go = display.say("grip-slip", slip=Share(slip), delay=delay)
    band = display.figure(Span(brakes[0], brakes[1], "m/s²"))
    slowing, standing = (Share(check[key]["front"]) for key in ("axle_load_share", "axle_load_share_standing"))
    facts = [
        (display.say("grip-largest"), strength_text(largest[0], largest[1], display), beside),
        (display.say("grip-lets-go"), display.say("grip-failure", wheels=check["failing_axle"]), lets_go),
        (display.say("grip-pedal"), band, display.say("grip-pedal-beside")),
        (display.say("grip-weight"), display.figure(slowing), display.say("grip-weight-beside", share=standing)),
    ]
    if check["grade_pct"]:
        left = display.figure(Quantity(check["slowing_here_mps2"], "m/s²", places=2))
        slope = display.say("grip-slope-beside", downhill=check["grade_pct"] < 0)
        facts.append((display.say("grip-slope"), left, slope))
    return facts


def _do(found: SlipperyRoad, advice: Advice, display: Display) -> list[str]:
    check, do = found.check, []
    if check["margin"] == "none":
        do.append(display.say("grip-do-none", alone=bend_alone(check)))
    do.append(display.say("grip-do-set", advice=lift_off_words.slippery_text(advice, display)))
    do += [display.say("grip-do-early"), display.say("grip-do-pedal", axle=check["driven_axle"])]
    if found.winter_times > 1.05:
        do.append(display.say("grip-do-tyres", surface=check["surface"], times=Quantity(found.winter_times, "")))
    return do


def axles_words(check: GripCheck, display: Display) -> tuple[str, str]:
    """What the drawing of both axles shows; `check` is from `model.limits.grip_margin`."""
    return display.say("axles-title", margin=check["margin"]), display.say("axles-words")


def axles_numbers(check: GripCheck, display: Display) -> str:
    """What the drawing of both axles says in figures."""
    front, rear = (Quantity(check["demand_by_axle"][axle]["in_all"], "", places=2) for axle in ("front", "rear"))
    return display.say("axles-numbers", front=front, rear=rear, gives=gives(check["available_friction"]))


def roads_words(found: SlipperyRoad, display: Display) -> tuple[str, str]:
    """The largest lift-off on every road."""
    roads = found.by_surface
    short = {
        margin: [display.say("a-road", surface=surface) for surface in roads.loc[roads["margin"] == margin, "surface"]]
        for margin in ("none", "small")
    }
    where = {
        margin: "nowhere" if not names else "everywhere" if len(names) == len(roads) else "some"
        for margin, names in short.items()
    }
    title = display.say(
        "roads-title", yours=as_set(found.check["lift_off_mps2"]), without=where["none"], small=where["small"],
        no_margin=Several(tuple(short["none"])), small_margin=Several(tuple(short["small"])),
    )  # fmt: skip
    return title, display.say("roads-words")


def roads_numbers(found: SlipperyRoad, display: Display) -> str:
    """What the picture of all roads says in figures."""
    rows, yours = found.by_surface, found.check["lift_off_mps2"]
    by_road = [
        display.say("roads-number", road=road_name(surface, display), margin=margin_text(margin, low, yours, display))
        for surface, margin, low in zip(rows["surface"], rows["margin"], rows["low"], strict=True)
    ]
    return display.say("roads-numbers", roads=Several(tuple(by_road), ""))


def weight_words(found: SlipperyRoad, display: Display) -> tuple[str, str]:
    """Weight shift."""
    standing, braking = (Share(float(found.loads["front"].iloc[end])) for end in (0, -1))
    return display.say("weight-title", standing=standing, braking=braking), display.say("weight-words")


def advice(display: Display) -> list[tuple[str, str, str]]:
    """Who advises what on regeneration in winter, and on what ground."""
    club = display.say("advice-of-a-club")
    clubs = ("Auto Club Europa, January 2025", "Touring Club Schweiz")
    in_the_press = [display.say("advice-in-the-press", who=who) for who in clubs]
    return [
        (in_the_press[0], display.say("advice-lowest-level"), club),
        (in_the_press[1], display.say("advice-could-unsettle"), club),
        ("Norwegian EV association, 2022", display.say("advice-not-without-reservation"),
         display.say("advice-six-cars", speed=Quantity(60, "km/h", places=0))),
        ("Vilnius Gediminas Technical University, Applied Sciences 2025, 15, 10926",
         display.say("advice-oversteer-grows"), display.say("advice-two-cars-measured")),
        (display.say("advice-manuals"), display.say("advice-manuals-say"), display.say("advice-manuals-ground")),
    ]  # fmt: skip
