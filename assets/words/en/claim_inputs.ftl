# Inputs of claims: their values, what they run over, and conditions as nouns. Numbers come ready, with their units.

## Values

# What may be driven, in few words: the standard cycles, the starting drives, and a hill of 300 m.
# $choice: one of udds, hwfet, us06, nycc, wltc3b, wltc3b-low, wltc3b-medium, wltc3b-high, wltc3b-extra-high, nedc, nedc-urban, nedc-extra-urban, town, suburb-hill, hill, motorway, mountain-valley
claim-value-cycle = { $choice ->
    [udds] UDDS city
    [hwfet] HWFET highway
    [us06] US06
    [nycc] NYCC
    [wltc3b] WLTC
    [wltc3b-low] WLTC low
    [wltc3b-medium] WLTC medium
    [wltc3b-high] WLTC high
    [wltc3b-extra-high] WLTC extra high
    [nedc] NEDC
    [nedc-urban] NEDC urban
    [nedc-extra-urban] NEDC extra-urban
    [town] flat town
    [suburb-hill] suburb and hill
    [hill] hill road
    [motorway] motorway
   *[mountain-valley] mountain valley
}

# $choice: one of resistive, heat_pump, engine
claim-value-heat-source = { $choice ->
    [resistive] plain electric
    [heat_pump] heat-pump
   *[engine] engine
}

# $choice: one of dry, wet, standing-water, snow, ice, glazed-ice
claim-value-surface = { $choice ->
    [dry] dry
    [wet] wet
    [standing-water] standing water
    [snow] snow-covered
    [ice] icy
   *[glazed-ice] glazed ice
}

# $choice: one of energy, slow_downs
claim-value-counted = { $choice ->
    [energy] energy
   *[slow_downs] slow-downs
}

# $choice: one of by_drive, yes, no
claim-value-tyres-warm = { $choice ->
    [by_drive] usual
    [yes] warm
   *[no] cold
}

# $choice: one of far, usual, late
claim-value-looks-ahead = { $choice ->
    [far] far
    [usual] usual
   *[late] late
}

# $choice: one of steady, usual, restless
claim-value-steady-foot = { $choice ->
    [steady] steady
    [usual] usual
   *[restless] restless
}

# $yes: yes or no
claim-value-whether = { $yes ->
    [yes] yes
   *[no] no
}

# The unit of a factor.
unit-times = times

# All values of an input but some.
# $left: text
claim-any-but = any but { $left }

# More values than a line holds.
# $values: count
claim-any-of = any of { $values }

# What an input is, as it stands in a sentence: “it depends most on …”, “varied: …”.
# $input: one of speed_kmh, grade_pct, mass_kg, rotating_mass_share, drag_area_m2, rolling_coefficient, tyre_cold_share, tyre_warm_up_min, driveline_cold_n_per_t, driveline_warm_up_min, f0_n, f1_n_per_mps, f2_n_per_mps2, motor_peak_kw, motor_base_speed_kmh, motor_top_speed_kmh, regen_peak_kw, motor_loss_fixed, motor_loss_speed, motor_loss_speed2, motor_loss_working, motor_loss_torque2, open_pulling_share, open_slowing_share, zero_torque_drag_share, gear_efficiency, usable_kwh, pack_voltage_v, cell_resistance_share, cell_resistance_usual, resistance_activation_j_per_mol, acceptance_level, pack_heat_capacity_kj_per_k_kwh, pack_heat_loss_w_per_k, pack_heater_kw, pack_heater_until_c, cold_capacity_loss_per_k, charge_rate_factor, accessory_w, charging_efficiency, printed_wh_per_km, printed_range_km, printed_test, driven_axle, front_regen_share, slip_control_delay_s, brake_pedal, regen_cap_mps2, fade_start_kmh, fade_end_kmh, front_load_share, cg_height_m, wheelbase_m, grip_reserve_share, brake_build_up_s, disc_heat_capacity_kj_per_k_t, disc_cooling_w_per_k_t, sustain_soc, engine_efficiency, engine_drag_kw, heat_source, heater_max_kw, heat_pump_cop_at_0c, cabin_loss_w_per_k, cabin_heat_capacity_kj_per_k, ambient_c, cabin, cabin_set_c, surface, tyres, tyres_warm, grip_level, wind_kmh, altitude_m, soc_start, shown_wh_per_km, battery_temp_c, parked_c, preconditioned, plugged_in, stands_h, stands_plugged_in, charging_stops, charge_stop_to, payload_kg, trailer_kg, trailer_drag_area_m2, looks_ahead, pull_away, steady_foot, lift_off_mps2, comes_to_rest, slowing_on_request, prefers, car, cycle, hybrid, denominator, counted, slower_by_kmh, slowing_mps2, height_m, gentle_mps2, strong_mps2, extra_mass_pct, motor_factor, delay_ms, time_made_up
claim-input = { $input ->
    [speed_kmh] the speed
    [grade_pct] the slope
    [mass_kg] the mass of the car
    [rotating_mass_share] the share of mass that turns
    [drag_area_m2] the car’s air resistance
    [rolling_coefficient] the rolling resistance of the tyres
    [tyre_cold_share] how much harder cold tyres roll
    [tyre_warm_up_min] the time in which tyres warm up
    [driveline_cold_n_per_t] the drag of a cold driveline
    [driveline_warm_up_min] the time in which the driveline warms up
    [f0_n] the constant part of the road load
    [f1_n_per_mps] the part of the road load that grows with speed
    [f2_n_per_mps2] the part of the road load that grows with speed squared
    [motor_peak_kw] the power of the motor
    [motor_base_speed_kmh] the speed from which the motor has its full power
    [motor_top_speed_kmh] the highest speed of the motor
    [regen_peak_kw] the power at which the motor slows
    [motor_loss_fixed] the constant losses of the motor
    [motor_loss_speed] the motor losses that grow with speed
    [motor_loss_speed2] the motor losses that grow with speed squared
    [motor_loss_working] the losses of a working motor
    [motor_loss_torque2] the motor losses that grow with torque squared
    [open_pulling_share] losses in driving that no maker publishes
    [open_slowing_share] losses in braking that no maker publishes
    [zero_torque_drag_share] the drag of the idle motor
    [gear_efficiency] the efficiency of the gears
    [usable_kwh] the size of the battery
    [pack_voltage_v] the voltage of the battery
    [cell_resistance_share] the resistance of the cells
    [cell_resistance_usual] how far the resistance of the cells is from the usual
    [resistance_activation_j_per_mol] how much cold raises the resistance of the cells
    [acceptance_level] how much charge the battery accepts
    [pack_heat_capacity_kj_per_k_kwh] the heat that the battery holds
    [pack_heat_loss_w_per_k] the heat that the battery loses
    [pack_heater_kw] the power of the battery’s heater
    [pack_heater_until_c] the temperature to which the battery is heated
    [cold_capacity_loss_per_k] the charge that cold holds back
    [charge_rate_factor] how fast the cells can be charged
    [accessory_w] the power of the accessories
    [charging_efficiency] the efficiency of charging
    [printed_wh_per_km] the printed consumption
    [printed_range_km] the printed range
    [printed_test] the test of the printed figure
    [driven_axle] which wheels are driven
    [front_regen_share] the front axle’s share of the motor’s slowing
    [slip_control_delay_s] the delay of slip control
    [brake_pedal] the kind of brake pedal
    [regen_cap_mps2] the strongest slowing by the motor
    [fade_start_kmh] the speed below which the motor’s slowing fades
    [fade_end_kmh] the speed at which the motor’s slowing ends
    [front_load_share] the weight on the front axle
    [cg_height_m] the height of the centre of gravity
    [wheelbase_m] the wheelbase
    [grip_reserve_share] the grip that is kept in reserve
    [brake_build_up_s] the time in which the brakes build up
    [disc_heat_capacity_kj_per_k_t] the heat that the brake discs hold
    [disc_cooling_w_per_k_t] the cooling of the brake discs
    [sustain_soc] the charge that the engine keeps
    [engine_efficiency] the efficiency of the engine
    [engine_drag_kw] the drag of the engine
    [heat_source] the kind of cabin heater
    [heater_max_kw] the greatest power of the heater
    [heat_pump_cop_at_0c] the yield of the heat pump at freezing point
    [cabin_loss_w_per_k] the heat that the cabin loses
    [cabin_heat_capacity_kj_per_k] the heat that the cabin holds
    [ambient_c] the outside temperature
    [cabin] whether the cabin is heated or cooled
    [cabin_set_c] the temperature of the cabin
    [surface] the road surface
    [tyres] the kind of tyres
    [tyres_warm] whether tyres and gears are warm at the start
    [grip_level] how much grip such a road has
    [wind_kmh] the headwind
    [altitude_m] the height above sea level
    [soc_start] the charge at the start
    [shown_wh_per_km] the average that the car shows
    [battery_temp_c] the temperature of the battery at the start
    [parked_c] the temperature where the car stood
    [preconditioned] whether the car was warmed up before leaving
    [plugged_in] whether it was plugged in meanwhile
    [stands_h] the time the car stands before the way back
    [stands_plugged_in] whether it is plugged in there
    [charging_stops] the number of charging stops
    [charge_stop_to] the charge at which a charging stop ends
    [payload_kg] the load
    [trailer_kg] the mass of the trailer
    [trailer_drag_area_m2] the air resistance of the trailer
    [looks_ahead] how far ahead the driver looks
    [pull_away] how briskly the driver pulls away
    [steady_foot] how steady the driver’s foot is
    [lift_off_mps2] the lift-off strength
    [comes_to_rest] whether the car comes to rest without the brake pedal
    [slowing_on_request] whether the car slows more only on request
    [prefers] what the driver prefers
    [car] the kind of car
    [cycle] the drive
    [hybrid] the kind of hybrid
    [denominator] which share is meant
    [counted] what is counted
    [slower_by_kmh] the speed that is lost
    [slowing_mps2] how hard the car slows
    [height_m] the height of the hill
    [gentle_mps2] the strength of the gentle setting
    [strong_mps2] the strength of the strong setting
    [extra_mass_pct] how much heavier the car is
    [motor_factor] how much stronger the bigger motor is
    [delay_ms] the switching delay
   *[time_made_up] whether lost time is made up
}

## Conditions, as nouns

# $input: one of car, hybrid, cycle, brake_pedal, heat_source, tyres_warm, surface, counted, mass_kg, motor_peak_kw, usable_kwh, motor_top_speed_kmh, ambient_c, soc_start, payload_kg, accessory_w, wind_kmh, lift_off_mps2, gentle_mps2, strong_mps2, slowing_mps2, regen_cap_mps2, speed_kmh, grade_pct, height_m, slower_by_kmh, extra_mass_pct, motor_factor, delay_ms, trailer_kg, denominator
# $value: text
claim-condition = { $input ->
    [car] a { $value }
    [hybrid] a { $value }
    [cycle] the { $value } drive
    [brake_pedal] a { $value } pedal
    [heat_source] a { $value } heater
    [tyres_warm] { $value } tyres at the start
    [surface] a { $value } road
    [counted] { $value } counted
    [mass_kg] a car of { $value } with driver
    [motor_peak_kw] a motor of { $value }
    [usable_kwh] a battery of { $value }
    [motor_top_speed_kmh] a top speed of { $value }
    [ambient_c] { $value } outside
    [soc_start] { $value } charge at the start
    [payload_kg] a load of { $value }
    [accessory_w] accessories of { $value }
    [wind_kmh] a headwind of { $value }
    [lift_off_mps2] a lift-off of { $value }
    [gentle_mps2] a gentle setting of { $value }
    [strong_mps2] a strong setting of { $value }
    [slowing_mps2] slowing at { $value }
    [regen_cap_mps2] a motor that slows by at most { $value }
    [speed_kmh] a speed of { $value }
    [grade_pct] a slope of { $value }
    [height_m] a hill of { $value }
    [slower_by_kmh] { $value } of speed lost
    [extra_mass_pct] { $value } more mass
    [motor_factor] { $value } the power
    [delay_ms] a delay of { $value }
    [trailer_kg] a trailer of { $value }
   *[denominator] { $value }
}

# $input: one of cabin, preconditioned, time_made_up, comes_to_rest
# $yes: yes or no
claim-condition-whether = { $input ->
    [cabin] { $yes ->
        [yes] heating or cooling on
       *[no] no heating or cooling
    }
    [preconditioned] { $yes ->
        [yes] a car warmed up before leaving
       *[no] a car not warmed up before leaving
    }
    [time_made_up] { $yes ->
        [yes] lost time made up
       *[no] lost time not made up
    }
   *[comes_to_rest] { $yes ->
        [yes] a car that comes to rest by itself
       *[no] a car that needs the brake pedal to come to rest
    }
}

# $of: one of car, cycle, surface, other
# $name: text
# $left: text
claim-condition-any-but = { $of ->
    [car] any car but { $left }
    [cycle] any drive but { $left }
    [surface] any road that is not { $left }
   *[other] any { $name } but { $left }
}

# A number of which there is no noun.
# $name: text
# $value: text
claim-condition-at = the { $name } at { $value }

# A choice of which there is no noun.
# $name: text
# $value: text
claim-condition-is = { $name }: { $value }

## On the page

# A line that opens an input.
# $said: yes or no
# $name: text
# $value: text
claim-row = { $said ->
    [yes] { $name }: **{ $value }**
   *[no] { $name }: :gray[not said ({ $value })]
}

# $number: yes or no
# $fixed: yes or no
claim-entry-help = { $number ->
    [yes] { $fixed ->
        [yes] One number, or a range such as 10 to 20. Left empty, it is as the claim’s own words have it.
       *[no] One number, or a range such as 10 to 20. Left empty, it counts as not said.
    }
   *[no] { $fixed ->
        [yes] One or more. Left empty, it is as the claim’s own words have it.
       *[no] One or more. Left empty, it counts as not said.
    }
}

# What is set at one end of a swing.
# $value: text
claim-swing-at = at { $value }
# $condition: text
claim-swing-with = with { $condition }
