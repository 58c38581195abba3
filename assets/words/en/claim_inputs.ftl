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
