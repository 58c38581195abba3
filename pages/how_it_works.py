"""How it works: six panels, one idea each, computed with the visitor's own car and drive."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import pandas as pd
import streamlit as st

from model.describe.fields import InputError
from model.kernel.savings import Result
from model.one_stop.bigger_motor import CHANGES, POWER_TIMES, by_power
from model.one_stop.machine_map import QUADRANTS, cloud_of, use_of
from model.one_stop.panels import FASTEST_KMH, PANEL_FIELDS, PanelSettings, settings_of
from model.one_stop.repeated_stops import repeated_stops
from model.one_stop.stop_energy import back_by_speed, energy_of, hardest_mps2, stop, way_out
from model.one_stop.who_slows import grip_by_speed, hardest_of, late_motor, split_of
from model.words.entries import held_value
from model.words.quantities import Display, Value
from model.words.refusals import refusal_words
from pages.parts import own_settings, panel_words, redrawn, state
from pages.parts.charts import panels, panels_machine
from pages.parts.charts.limits import LIMITS, limit_text
from pages.parts.drive_part import last_answer
from pages.parts.figure import Picture, figure
from pages.parts.panel_words import PanelWords
from pages.parts.plain_text import inert
from pages.parts.theme import TEXT_PX, Spec
from pages.parts.typography import together

PANEL = "panel"
"""The page's parameter in the address for which panel is shown; what is set on it stands beside it."""
TWO_SPEEDS = ("slower_kmh", "faster_kmh")
SPEED_STEP = 5.0
SLIDER_STEPS = {**dict.fromkeys((*TWO_SPEEDS, "from_kmh"), SPEED_STEP), "power_times": float(POWER_TIMES[0])}
"""Steps of the sliders, in the unit shown."""
SLOWING_STEPS = {False: 0.5, True: 0.01}
"""Of how hard the car is slowed: in m/s², and in g for US readers."""
STOPS = ("1", "10")


@dataclass(frozen=True)
class Shown:
    """What a panel shows: its words, its picture and the numbers behind it."""

    said: PanelWords
    chart: Spec
    table: pd.DataFrame


def say(name: str, **values: Value) -> str:
    """A message to the visitor."""
    return state.display().say(name, **values)


def unit() -> str:
    """The visitor's unit of speed."""
    return state.display().unit("km/h")


# controls, which live in the address


def settings() -> PanelSettings:
    """What is set, as the sliders can show it."""
    now, steps = settings_of(st.query_params.to_dict())[0], SLIDER_STEPS
    if state.display().us:
        # its slider in g stands for what it shows
        steps = steps | {"slowing_mps2": SLOWING_STEPS[True]}
    slid = {key: own_settings.as_slid(PANEL_FIELDS[key], getattr(now, key), step) for key, step in steps.items()}
    return replace(now, **slid)


def slider(key: str, label: str) -> None:
    """A slider for one setting."""
    own_settings.slide(PANEL_FIELDS[key], getattr(settings(), key), SLIDER_STEPS[key], label)


def two_speeds_slider() -> None:
    """One slider with a handle for each of two speeds."""
    fields, now, name = [PANEL_FIELDS[key] for key in TWO_SPEEDS], settings(), "set-two-speeds"

    def take() -> None:
        for field, speed in zip(fields, st.session_state[name], strict=True):
            own_settings.put(field, held_value(field, speed, state.display()))

    speeds = (own_settings.on_slider(field, getattr(now, field.key), SPEED_STEP) for field in fields)
    st.session_state[name] = tuple(sorted(speeds))
    st.slider(say("panel-two-speeds", unit=unit()), *own_settings.slider_ends(fields[0], SPEED_STEP), step=SPEED_STEP,
              format="%g", key=name, on_change=take)  # fmt: skip


def slowing_slider() -> None:
    """How hard the car is slowed, in the visitor's unit."""
    display = state.display()
    label = say("panel-how-hard", unit=display.unit("m/s²"))
    own_settings.slide(PANEL_FIELDS["slowing_mps2"], settings().slowing_mps2, SLOWING_STEPS[display.us], label)


def choose(key: str, label: str, words: dict[str, str]) -> None:
    """A choice between a few words."""
    own_settings.choose(PANEL_FIELDS[key], getattr(settings(), key), label, words)


def stop_sliders() -> None:
    """The stop that several panels follow."""
    left, right = st.columns(2, wrap=False)
    with left:
        slider("from_kmh", say("panel-stop-from", unit=unit()))
    with right:
        slowing_slider()


# the panels


def speed_squared_controls() -> None:
    """Two speeds, and how hard the car is stopped."""
    left, right = st.columns(2, wrap=False)
    with left:
        two_speeds_slider()
    with right:
        slowing_slider()


def speed_squared(result: Result, now: PanelSettings, display: Display) -> Shown:
    """Energy of motion and what of it comes back, by speed."""
    car = (now.slowing_mps2, result.car, result.conditions, result.driver)
    speeds = sorted((now.slower_kmh, now.faster_kmh))
    results = [stop(speed, *car) for speed in speeds]
    stops = list(zip(speeds, map(energy_of, results), strict=True))
    columns = {say("panel-column-from", unit=unit()): [display.value(speed, "km/h") for speed in speeds]}
    columns[say("panel-column-motion")] = [slowed.motion for _, slowed in stops]
    for key in panels.ENERGY_PARTS:
        columns[say("panel-column-part", part=key)] = [panels.parts_of(slowed)[key] for _, slowed in stops]
    return Shown(
        panel_words.speed_squared(state.shown(), stops, results[1], now.slowing_mps2, display),
        panels.speed_squared(back_by_speed(FASTEST_KMH, *car), stops, display, state.dark()),
        pd.DataFrame(columns).round(1),
    )


def flow(result: Result, now: PanelSettings, display: Display) -> Shown:
    """The way of a stop's energy into the cells and out again."""
    car = (result.car, result.conditions, result.driver)
    energy = energy_of(stop(now.from_kmh, now.slowing_mps2, *car))
    out = way_out(energy.stored, now.from_kmh, *car)
    rows = [(say("panel-flow-row-motion"), energy.motion)]
    rows += [(say("panel-flow-row", part=key, way="in"), getattr(energy, key)) for key in panels.WAY_IN]
    rows += [(say("panel-flow-row-in-cells"), energy.stored)]
    rows += [(say("panel-flow-row", part=key, way="out"), getattr(out, key)) for key in panels.WAY_OUT]
    rows += [(say("panel-flow-row-at-wheels"), out.wheels)]
    table = pd.DataFrame(rows, columns=[say("panel-flow-column-part"), say("panel-flow-column-energy")])
    return Shown(
        panel_words.flow(now.from_kmh, energy, out, display),
        panels.flow(energy, out, display, state.dark()),
        table.round(1),
    )


def four_quadrants(result: Result, now: PanelSettings, display: Display) -> Shown:
    """The machine's map, with the drive in it."""
    uses, cloud = use_of(result), cloud_of(result)
    table = pd.DataFrame(
        {
            say("panel-quadrants-column-quadrant"): [say("panel-quadrant", quadrant=name) for name in QUADRANTS],
            say("panel-quadrants-column-time"): [uses[name].time_s / 60 for name in QUADRANTS],
            say("panel-quadrants-column-shaft"): [uses[name].shaft_kwh for name in QUADRANTS],
            say("panel-quadrants-column-electric"): [uses[name].electric_kwh for name in QUADRANTS],
        }
    )
    return Shown(
        panel_words.four_quadrants(result.car, uses, now.quadrant, display),
        panels_machine.four_quadrants(result.car, cloud, now.quadrant, display, state.dark()),
        table.round(2),
    )


def who_slows_controls() -> None:
    """The stop, and an emergency stop as a preset."""
    stop_sliders()
    hard = PANEL_FIELDS["slowing_mps2"]
    st.button(say("panel-emergency-stop"), icon=":material/emergency:", on_click=own_settings.put,
              args=(hard, hard.maximum))  # fmt: skip


def who_slows(result: Result, now: PanelSettings, display: Display) -> Shown:
    """Slowing over speed by who does it."""
    stopped = stop(now.from_kmh, now.slowing_mps2, result.car, result.conditions, result.driver)
    energy, split = energy_of(stopped), split_of(stopped)
    hardest = hardest_mps2(now.from_kmh, result.conditions)
    grip = grip_by_speed(FASTEST_KMH, result.conditions)
    late = late_motor(stopped, min(now.slowing_mps2, hardest))
    table = split.iloc[:: max(1, len(split) // 20)]
    why = [limit_text(limit, display) if limit in LIMITS else "–" for limit in table["limit"]]
    slowed = display.unit("m/s²")
    table = pd.DataFrame(
        {
            say("panel-who-column-speed", unit=unit()): display.value(table["speed_kmh"], "km/h").round(1),
            say("panel-who-column-road", unit=slowed): display.value(table["road_mps2"], "m/s²").round(2),
            say("panel-who-column-motor", unit=slowed): display.value(table["motor_mps2"], "m/s²").round(2),
            say("panel-who-column-friction", unit=slowed): display.value(table["friction_mps2"], "m/s²").round(2),
            say("panel-who-column-why"): why,
        }
    )
    shares = panel_words.stop_shares(energy)
    return Shown(
        panel_words.who_slows(now, energy, stopped, hardest, late, display),
        panels.who_slows(split, hardest_of(stopped, now.from_kmh), grip, shares, display, state.dark()),
        table,
    )


def bigger_motor_controls() -> None:
    """The motor's power, and what else changes."""
    slider("power_times", say("panel-motor-power"))
    choose("change", say("panel-what-else-changes"), {name: say("panel-change", change=name) for name in CHANGES})


def bigger_motor(result: Result, now: PanelSettings, display: Display) -> Shown:
    """The drive's braking by motor power."""
    powers = by_power(result, now.change)
    as_it_is = powers if now.change == "nothing" else by_power(result)
    names = {
        "power_times": say("panel-motor-column-times"),
        "motor_kw": say("panel-motor-column-motor"),
        "recovered_kwh": say("panel-motor-column-back"),
        "motor_kwh": say("panel-motor-column-braked"),
    }
    names |= {key: say("panel-motor-column-friction", limit=key) for key in panels_machine.LEFT_TO_FRICTION}
    return Shown(
        panel_words.bigger_motor(now, result.car, powers, as_it_is, display),
        panels_machine.bigger_motor(powers, now.power_times, display, state.dark()),
        powers.rename(columns=names).round(3),
    )


def hot_discs_controls() -> None:
    """Where the stops begin, and how many there are."""
    stop_sliders()
    choose("stops", say("panel-how-often"), {stops: say("panel-stops", stops=int(stops)) for stops in STOPS})


def hot_discs(result: Result, now: PanelSettings, display: Display) -> Shown:
    """Disc temperature, heat and what comes back."""
    car = (now.from_kmh, now.slowing_mps2, result.car, result.conditions, result.driver)
    ten = repeated_stops(10, *car)
    asked = ten if now.stops == "10" else repeated_stops(int(now.stops), *car)
    c = display.unit("°C")
    every = asked.temperature.iloc[:: max(1, len(asked.temperature) // 40)]
    table = pd.DataFrame(
        {
            say("panel-discs-column-time"): every["time_s"].round(0),
            say("panel-discs-column-stops"): every["stops"],
            say("panel-discs-column-alone", unit=c): display.value(every["friction_only_c"], "°C").round(0),
            say("panel-discs-column-motor", unit=c): display.value(every["regenerated_c"], "°C").round(0),
        }
    )
    return Shown(
        panel_words.hot_discs(now, asked, display), panels_machine.hot_discs(asked, ten, display, state.dark()), table
    )


def quadrants_controls() -> None:
    """What the machine does."""
    names = {quadrant: say("panel-quadrant", quadrant=quadrant) for quadrant in QUADRANTS}
    choose("quadrant", say("panel-what-machine-does"), names)


PANELS: dict[str, tuple[Callable[[], None], Callable[[Result, PanelSettings, Display], Shown]]] = {
    "speed": (speed_squared_controls, speed_squared),
    "flow": (stop_sliders, flow),
    "quadrants": (quadrants_controls, four_quadrants),
    "who": (who_slows_controls, who_slows),
    "motor": (bigger_motor_controls, bigger_motor),
    "discs": (hot_discs_controls, hot_discs),
}
"""In their order, each with its controls and what it shows; the keys stand in links."""


def panel_key() -> str:
    """The panel asked for; the first where it is none."""
    asked = st.query_params.get(PANEL, "")
    return asked if asked in PANELS else next(iter(PANELS))


def turn(key: str | None) -> None:
    """Show another panel."""
    if key is not None:
        st.query_params[PANEL] = key


def turning() -> None:
    """One panel back, one on, or any of them."""
    keys, key = list(PANELS), panel_key()
    at = keys.index(key)
    last = at == len(keys) - 1
    with st.container(key="panel-turn", horizontal=True, vertical_alignment="center", gap="small"):
        st.button(say("panel-back"), key="panel-back", shortcut="PageUp", disabled=at == 0, on_click=turn,
                  args=(keys[at - 1],))  # fmt: skip
        st.button(say("panel-next"), key="panel-next", shortcut="PageDown", type="primary", disabled=last,
                  on_click=turn, args=(keys[0 if last else at + 1],))  # fmt: skip
        st.session_state["choose-panel"] = key
        names = {panel: say("panel-name", panel=panel) for panel in keys}
        st.pills(say("panel-label"), keys, format_func=names.__getitem__, key="choose-panel", required=True,
                 on_change=lambda: turn(st.session_state["choose-panel"]), label_visibility="collapsed",
                 wrap=True)  # fmt: skip


def draw() -> None:
    """The panel that the address asks for; only this part of the page is drawn anew when it is played with."""
    turning()
    result = state.outcome(state.shown()).result
    if result is None:
        st.title(say("panel-heading", panel=panel_key()), anchor=False)
        st.error(state.refusal())
        return
    with last_answer("panel"):
        draw_panel(panel_key(), result)


def draw_panel(key: str, result: Result) -> None:
    """One panel of a drive."""
    (controls, show), heading = PANELS[key], say("panel-heading", panel=key)
    with st.container(key="panel"):
        saying, seeing = st.columns([5, 6], gap="large")
    with saying:
        st.title(heading, anchor=False)
        for notice in settings_of(st.query_params.to_dict())[1]:
            st.info(inert(refusal_words(notice, state.display())))
        try:
            seen = show(result, settings(), state.display())
        except InputError as refused:
            seen = None
            st.error(refusal_words(refused, state.display()))
        else:
            st.header(together(seen.said.sentence), anchor=False)
        controls()
    if seen is None:
        return
    with seeing:
        more = [line for line in seen.said.more if line]
        alt = " ".join((say("panel-alt", heading=heading, said=seen.said.sentence), *more))
        figure(lambda: Picture(seen.chart, alt, seen.table), f"panel-{key}", f"{key}.csv")
    st.markdown(together("\n\n".join(more)), width=TEXT_PX)
    why_drawer(key)


def why_drawer(key: str) -> None:
    """The equation behind the panel, its letters and its source."""
    display = state.display()
    with st.expander(say("panel-why"), type="compact", key="why-drawer", width=TEXT_PX):
        letters, source = panel_words.letters_and_source(key, display)
        st.markdown(f"$$\n{panel_words.EQUATIONS[key]}\n$$\n\n{letters}")
        st.caption(say("panel-source", source=source))


redrawn.part("panel", draw)
