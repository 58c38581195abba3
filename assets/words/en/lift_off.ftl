# What a lift-off strength means and changes: stop lamps, the axis of strengths, leg by leg, on hills, comfort.

# Words for strengths stand in lift-off-word.
# $word: text
# $strength: quantity in m/s²
lift-off-yours = Yours: { $word }, { $strength }

## A strength in other numbers

# What UN R13-H says of the stop lamps.
# $lamps: one of not-lit, may-be-lit, lit
# $us: yes or no
strength-zero = Air and tyres alone slow the car. { $us ->
    [yes] In the EU (UN R13-H)
   *[no] Under UN R13-H
} the stop lamps { $lamps ->
    [not-lit] must not light
    [may-be-lit] may light
   *[lit] must light
}.

# $each: quantity in km/h
# $lamps: one of not-lit, may-be-lit, lit
# $us: yes or no
strength-means = That is { $each } less each second. { $us ->
    [yes] In the EU (UN R13-H)
   *[no] Under UN R13-H
} the stop lamps { $lamps ->
    [not-lit] must not light
    [may-be-lit] may light
   *[lit] must light
}.

# $lamps: one of not-lit, may-be-lit, lit
stop-lamps = { $lamps ->
    [not-lit] not lit
    [may-be-lit] may be lit
   *[lit] lit
}

## The axis of strengths

# Presses of the brake pedal before and after, and by how much the energy changes.
# $end: quantity in m/s²
# $presses: one of stay, fall, rise
# $before: count
# $after: count
# $energy: one of unknown, hardly, rises, falls
# $share: share
# $near: yes or no
lift-off-axis = From 0 to { $end }, presses { $presses ->
    [stay] stay at { $after }
    [fall] fall from { $before } to { $after }
   *[rise] rise from { $before } to { $after }
}{ $energy ->
    [unknown] ; the change in energy cannot be given as a share
    [hardly] {" "}and energy hardly changes
    [rises] {" "}and energy rises by { $share }
   *[falls] {" "}and energy falls by { $share }{ $near ->
        [yes] , near the best
       *[no] {""}
    }
}

lift-off-axis-no-grip = There is grip for no more than rolling on

# $title: text
# $facts: list
# $advised: quantity in m/s²
lift-off-axis-alt = { $title }. Over lift-off strength: { $facts }. Advised: { $advised }.

# $curve: one of as_driven_net_kwh, same_speeds_net_kwh, as_driven_friction_kwh, same_speeds_friction_kwh, as_driven_presses, same_speeds_presses
# $first: text
# $last: text
# $strength: quantity in m/s²
lift-off-axis-fact = { $curve ->
    [as_driven_net_kwh] battery energy as you would drive it { $first } at 0 and { $last } at { $strength }
    [same_speeds_net_kwh] battery energy at the same speeds { $first } at 0 and { $last } at { $strength }
    [as_driven_friction_kwh] heat in the friction brakes as you would drive it { $first } at 0 and { $last } at { $strength }
    [same_speeds_friction_kwh] heat in the friction brakes at the same speeds { $first } at 0 and { $last } at { $strength }
    [as_driven_presses] presses of the brake pedal as you would drive it { $first } at 0 and { $last } at { $strength }
   *[same_speeds_presses] presses of the brake pedal at the same speeds { $first } at 0 and { $last } at { $strength }
}

# $column: one of lift_off_mps2, as_driven_net_kwh, same_speeds_net_kwh, as_driven_friction_kwh, same_speeds_friction_kwh, as_driven_presses, same_speeds_presses, mean_mps2, high_mps2, reversals, duration_s, word, lamp_zone
# $unit: text
lift-off-column = { $column ->
    [lift_off_mps2] Lift-off, { $unit }
    [as_driven_net_kwh] Battery as driven, kWh
    [same_speeds_net_kwh] Battery, same speeds, kWh
    [as_driven_friction_kwh] Friction as driven, kWh
    [same_speeds_friction_kwh] Friction, same speeds, kWh
    [as_driven_presses] Presses as driven
    [same_speeds_presses] Presses, same speeds
    [mean_mps2] Mean slowing as driven, { $unit }
    [high_mps2] 95th percentile of slowing as driven, { $unit }
    [reversals] Changes between pulling and slowing as driven
    [duration_s] Time as driven, s
    [word] Word
   *[lamp_zone] Stop lamps under UN R13-H
}

# The two curves explained, and whether energy moves on each.
# $driven: one of hardly, moves
# $same: one of hardly, moves
# $pedal: one of blended, friction
lift-off-kinds = **As you would drive it**, the full line: the foot comes up where your habit lifts it, and the car slows as
    its lift-off makes it. This is what the foot changes; { $driven ->
    [hardly] energy hardly moves with it
   *[moves] energy moves with it
}.

    {""}**Same speeds**, the broken line: the speeds of your habit, whatever the strength. This is what the car changes;
    { $same ->
    [hardly] energy hardly moves with it
   *[moves] energy moves with it
}, because { $pedal ->
    [blended] a blended brake pedal leaves the motor the same work either way
   *[friction] the brake pedal works the discs alone, and only lifting off charges the battery
}.

    Shaded in the energy: within 1 % of the best. The ruler shows what UN R13-H says of the stop lamps: they must not light
    up to { QUANTITY(0.7, unit: "m/s²") }, may from there to { QUANTITY(1.3, unit: "m/s²") }, and must above that. That holds for cars under that regulation; other markets
    differ.

## What it changes

# $figure: one of net_kwh, presses, friction_kwh, mean_mps2, high_mps2, reversals, duration_s
lift-off-change = { $figure ->
    [net_kwh] Energy from the battery
    [presses] Presses of the brake pedal
    [friction_kwh] Heat in the friction brakes
    [mean_mps2] Mean slowing
    [high_mps2] Slowing exceeded in 5 % of the time that the car slows
    [reversals] Changes between pulling and slowing
   *[duration_s] Time
}

lift-off-change-figures = As you would drive it

# $name: text
lift-off-change-yours = Yours, { $name }

# $strength: quantity in m/s²
lift-off-change-advised = Advised, { $strength }

lift-off-yours-is-advised = Yours is what is advised

lift-off-yours-changes-nothing = Yours changes nothing compared with what is advised

# $presses: one of stay, fall, rise
# $before: count
# $after: count
# $energy: one of unknown, hardly, rises, falls
# $share: share
# $grip: yes or no
lift-off-with-advised = With the advised strength in place of yours presses { $presses ->
    [stay] stay at { $after }
    [fall] fall from { $before } to { $after }
   *[rise] rise from { $before } to { $after }
}{ $energy ->
    [unknown] ; the change in energy cannot be given as a share
    [hardly] {" "}and energy hardly changes
    [rises] {" "}and energy rises by { $share }
   *[falls] {" "}and energy falls by { $share }
}{ $grip ->
    [yes] : the price of grip in reserve
   *[no] {""}
}

# What would change the advice, and to what.
# $supposed: text
# $word: text
# $strength: quantity in m/s²
lift-off-if = { $supposed }: **{ $word }**, { $strength }

# The nearest strength under another word, and what speaks against it.
# $energy: one of unknown, alike, more, less
# $share: share
# $word: text
# $strength: quantity in m/s²
# $presses: count
# $heat: quantity in kWh
# $against: text
lift-off-other = { $energy ->
    [unknown] **{ $word }**, { $strength }: { $presses ->
        [one] { $presses } press
       *[other] { $presses } presses
    }, { $heat } of friction heat. Against it: { $against }.
    [alike] **{ $word }**, { $strength }: about the same energy, { $presses ->
        [one] { $presses } press
       *[other] { $presses } presses
    }, { $heat } of friction heat. Against it: { $against }.
    [more] **{ $word }**, { $strength }: { $share } more energy, { $presses ->
        [one] { $presses } press
       *[other] { $presses } presses
    }, { $heat } of friction heat. Against it: { $against }.
   *[less] **{ $word }**, { $strength }: { $share } less energy, { $presses ->
        [one] { $presses } press
       *[other] { $presses } presses
    }, { $heat } of friction heat. Against it: { $against }.
}

## Leg by leg

# Legs that are advised the same for the same reason.
# $legs: list
# $advice: text
# $described: list
# $because: text
lift-off-leg-advice = **{ $legs }. { $advice }:** { $described }. { $because }

# $strength: quantity in m/s²
lift-off-leg-set = You set { $strength } here.

## On hills

# Slowing on a flat road, on a downhill and on a climb of that slope.
# $flat: quantity in m/s²
# $slope: quantity in %
# $down: number
# $up: number
# $held: yes or no
lift-off-on-hills = { $held ->
    [yes] { $flat } on a flat road is { $down } on a { $slope } downhill and { $up } on a { $slope } climb
   *[no] { $flat } on a flat road is not enough to hold the car on a { $slope } downhill and { $up } on a { $slope } climb
}

# $left: number
# $strength: quantity in m/s²
lift-off-left-of-it = Motor or grip leave { $left } of the { $strength } that are set.

# $speed: quantity in km/h
lift-off-hills-mean = At { $speed }. The motor pulls as on a flat road and the hill adds its part, so that those behind see
    a different slowing, and by UN R13-H perhaps other stop lamps, than the setting says. Where a line crosses zero,
    lifting off just keeps the speed.

# $name: text
# $unit: text
lift-off-hill-column = { $name }, { $unit }

lift-off-grade = Grade, %

lift-off-held-downhill = Downhill

lift-off-held-by = Held by

lift-off-held-takes = Takes

lift-off-held-can = Motor can take

lift-off-held-rolling = rolling

# $power: quantity in kW
# $held: yes or no
lift-off-held-power = { $held ->
    [yes] { $power }
   *[no] { $power }: brake too
}

# Downhills on which the rolling car keeps its speed.
# $downhills: list
lift-off-rolls = Rolling, with neither power nor slowing, this car keeps { $downhills }. On a shallower downhill there is
    nothing to take back, so roll; on a steeper one the motor has something to hold.

# $speed: quantity in km/h
# $slope: quantity in %
lift-off-rolls-on = { $speed } on { $slope }

## Comfort and cautions

# $hard: quantity in m/s²
comfort-of-drive = As you would drive it, slowing exceeds { $hard } in 5 % of the time that the car slows. For comparison:

# $strength: quantity in m/s²
# $what: one of comfortable, sight-distance
# $source: text
comfort-convention = { $what ->
    [comfortable] **{ $strength }**: comfortable slowing for drivers and passengers ({ $source }).
   *[sight-distance] **{ $strength }**: slowing for which stopping sight distances are laid out, 11.2 ft/s² ({ $source }).
}

comfort-conventions = These are conventions of road design, not limits of what passengers bear. For how abruptly slowing may
    set in, no such figure was found that could be checked, so no rule here goes by it.

caution-behind = **Somebody close behind.** With the foot only partly lifted, the stop lamps of some cars stay dark. To warn
    whoever follows, press the brake pedal lightly.

caution-passengers = **Passengers.** Gentler slowing with fewer changes between pulling and slowing spares those who feel
    sick. Stop when somebody does.

caution-cruise = **Cancelling cruise control** is like lifting the foot: with a strong setting the car slows hard at
    once. Have the foot on the accelerator before you cancel.

caution-slippery = **A slippery road is no place to try a strong setting for the first time.** Try it on a dry and empty
    road. On snow and ice slow down earlier and more gently; advice differs by car, and the owner’s manual comes first.

caution-fade = **It can fade without notice**: with a full, cold or hot battery, when slip control steps in, and below
    walking pace. Keep the brake pedal within reach, and use it for hard stops. A motor does not hold a parked car.

## The pictures

# $kind: one of as_driven, same_speeds
lift-off-curve = { $kind ->
    [as_driven] as you would drive it
   *[same_speeds] same speeds
}

# $panel: one of net_kwh, friction_kwh, presses
lift-off-panel = { $panel ->
    [net_kwh] Battery energy, kWh; this axis does not start at 0
    [friction_kwh] Friction heat, kWh
   *[presses] Brake-pedal presses
}

# $zone: one of not-lit, may-be-lit, lit
lift-off-ruler = { $zone ->
    [not-lit] lamps not lit
    [may-be-lit] may be lit
   *[lit] lit
}

lift-off-over-grip = over half of the grip

lift-off-flat = flat

# $slope: text
lift-off-slope-down = { $slope } % down

# $slope: text
lift-off-slope-up = { $slope } % up

# $zone: one of lit, may-be-lit, not-lit, gains
lift-off-hill-zone = { $zone ->
    [lit] stop lamps lit
    [may-be-lit] may be lit
    [not-lit] not lit
   *[gains] the car gains speed
}

# $way: one of coast, regen, friction
lift-off-way = { $way ->
    [coast] Roll
    [regen] Keep the speed, then slow with the motor
   *[friction] The same on friction brakes only
}

lift-off-rolling-line = rolling

lift-off-keeping = keeping the speed, then slowing
