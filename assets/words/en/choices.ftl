# What may be chosen, in a word or two. They stand on buttons, in lists, and in rows such as “dry, wet or ice”.

# $choice: one of far, usual, late
choice-looks-ahead = { $choice ->
    [far] early
    [usual] as usual
   *[late] late
}

# $choice: one of gentle, usual, brisk
choice-pull-away = { $choice ->
    [gentle] gently
    [usual] as usual
   *[brisk] briskly
}

# $choice: one of steady, usual, restless
choice-steady-foot = { $choice ->
    [steady] steadily
    [usual] as usual
   *[restless] restlessly
}

# $choice: one of fewest_presses, gentlest_ride
choice-prefers = { $choice ->
    [fewest_presses] fewest presses
   *[gentlest_ride] gentlest ride
}

# $choice: one of blended, friction
choice-brake-pedal = { $choice ->
    [blended] blended
   *[friction] friction-only
}

# $choice: one of flat, up, down, up_and_down
choice-way = { $choice ->
    [flat] flat
    [up] up
    [down] down
   *[up_and_down] up and down
}

# $choice: one of resistive, heat_pump, engine
choice-heat-source = { $choice ->
    [resistive] plain electric
    [heat_pump] heat pump
   *[engine] engine
}

# $choice: one of front, rear, all
choice-driven-axle = { $choice ->
    [front] front
    [rear] rear
   *[all] all
}

# $choice: one of dry, wet, standing-water, snow, ice, glazed-ice
choice-surface = { $choice ->
    [dry] dry
    [wet] wet
    [standing-water] standing water
    [snow] snow
    [ice] ice
   *[glazed-ice] glazed ice
}

# $choice: one of any, summer, winter
choice-tyres = { $choice ->
    [any] any
    [summer] summer
   *[winter] winter
}

# $choice: one of by_drive, yes, no
choice-tyres-warm = { $choice ->
    [by_drive] by drive
    [yes] yes
   *[no] no
}

# $choice: one of wltc3b, udds, hwfet, us-cycles, us-label, nedc
choice-printed-test = { $choice ->
    [wltc3b] WLTC
    [udds] UDDS
    [hwfet] HWFET
    [us-cycles] US cycles
    [us-label] US label
   *[nedc] NEDC
}

## Habits of the driver: what is done, and how

# $habit: one of looks_ahead, pull_away, steady_foot
habit-label = { $habit ->
    [looks_ahead] Slows down
    [pull_away] Pulls away
   *[steady_foot] Holds speed
}

# $option: one of far, usual, late
habit-looks-ahead = { $option ->
    [far] slows down early
    [usual] slows down as usual
   *[late] slows down late
}

# $option: one of gentle, usual, brisk
habit-pull-away = { $option ->
    [gentle] pulls away gently
    [usual] pulls away as usual
   *[brisk] pulls away briskly
}

# $option: one of steady, usual, restless
habit-steady-foot = { $option ->
    [steady] holds speed steadily
    [usual] holds speed as usual
   *[restless] holds speed restlessly
}

# $choice: one of petrol, diesel, hybrid
choice-now-fuel = { $choice ->
    [petrol] petrol
    [diesel] diesel
   *[hybrid] hybrid
}
