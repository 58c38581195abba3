"""Every figure of the car, to be adjusted or left to its class."""

from __future__ import annotations

import streamlit as st

from model.describe.car import CAR_FIELDS
from model.describe.parameters import assumed_figures
from model.describe.scenario import CONDITION_FIELDS
from model.words.entries import help_of
from pages.parts import description, state
from pages.parts.controls import control

CAR_GROUPS = {
    "printed": ("printed_wh_per_km", "printed_range_km", "printed_test", "shown_wh_per_km"),
    "weight": (
        "mass_kg", "rotating_mass_share", "drag_area_m2", "rolling_coefficient", "tyre_cold_share", "tyre_warm_up_min",
        "driveline_cold_n_per_t", "driveline_warm_up_min",
        "f0_n", "f1_n_per_mps", "f2_n_per_mps2", "front_load_share", "cg_height_m", "wheelbase_m",
    ),
    "motor": (
        "motor_peak_kw", "regen_peak_kw", "motor_base_speed_kmh", "motor_top_speed_kmh", "motor_loss_fixed",
        "motor_loss_speed", "motor_loss_speed2", "motor_loss_working", "motor_loss_torque2", "zero_torque_drag_share",
        "gear_efficiency", "open_pulling_share", "open_slowing_share",
    ),
    "battery": (
        "usable_kwh", "pack_voltage_v", "cell_resistance_share", "cell_resistance_usual",
        "resistance_activation_j_per_mol", "acceptance_level",
        "charge_rate_factor", "pack_heat_capacity_kj_per_k_kwh", "pack_heat_loss_w_per_k", "pack_heater_kw",
        "pack_heater_until_c", "cold_capacity_loss_per_k", "accessory_w", "charging_efficiency",
    ),
    "slowing": (
        "driven_axle", "front_regen_share", "regen_cap_mps2", "fade_start_kmh", "fade_end_kmh", "grip_reserve_share",
        "slip_control_delay_s", "brake_build_up_s", "disc_heat_capacity_kj_per_k_t", "disc_cooling_w_per_k_t",
    ),
    "engine": ("sustain_soc", "engine_efficiency", "engine_drag_kw"),
    "cabin": (
        "heat_source", "heater_max_kw", "heat_pump_cop_at_0c", "cabin_loss_w_per_k", "cabin_heat_capacity_kj_per_k",
    ),
    "weather": (
        "wind_kmh", "altitude_m", "cabin_set_c", "parked_c", "battery_temp_c", "plugged_in", "tyres_warm",
    ),
}  # fmt: skip
"""Every figure of the car but its name and its pedal, which the answer line asks for; and what is seldom asked of the
surroundings."""


def adjust_car() -> None:
    """Every figure of the car with its class's band and provenance."""
    scenario, display = state.scenario(), state.display()
    say = display.say
    st.markdown(say("adjust-car-help"))
    group = st.segmented_control(
        say("car-part"),
        list(CAR_GROUPS),
        format_func=lambda group: say("car-group", group=group),
        default="weight",
        required=True,
        key="car-group",
        label_visibility="collapsed",
    )
    assumed, stated = assumed_figures(scenario.car_class), dict(scenario.stated)
    for key in CAR_GROUPS[group]:
        field = (CAR_FIELDS | CONDITION_FIELDS)[key]
        left, right = st.columns([1, 2], vertical_alignment="center")
        with left:
            control(field, look="list" if field.kind == "choice" else "", help="" if key in CONDITION_FIELDS else None)
        with right:
            if key in CONDITION_FIELDS:
                st.caption(help_of(field, display))
            elif key in stated:
                st.button(say("figure-back"), key=f"reset-{key}", type="tertiary", on_click=reset, args=(key,))
            elif key in assumed:
                st.caption(description.provenance(field, assumed[key], display))
            else:
                st.caption(say("figure-open"))
    st.button(say("all-figures-back"), on_click=reset, args=tuple(stated), disabled=not stated)


def reset(*keys: str) -> None:
    """Take the class's figures again."""
    scenario = state.scenario()
    for key in keys:
        scenario = scenario.with_setting(key, None)
    state.put_whole(scenario)
