# Why the friction brakes had to help.

# Each reads on after “because”.
# $limit: one of lift_off_only, drivability, motor_torque, motor_power, grip, low_speed_fade, nothing_to_gain, battery, no_regeneration
limit-why = { $limit ->
    [lift_off_only] the brake pedal works the discs only
    [drivability] the slowing was harder than the motor is allowed to do
    [motor_torque] the motor was at its greatest force
    [motor_power] the motor was at its greatest power
    [grip] the driven wheels had no more grip to spare
    [low_speed_fade] near walking pace the motor hands over
    [nothing_to_gain] so little slowing costs the motor more than it gives back
    [battery] the battery could take no more, being cold, full or small
   *[no_regeneration] regeneration was off
}

# The same for the column of a table.
# $limit: one of lift_off_only, drivability, motor_torque, motor_power, grip, low_speed_fade, nothing_to_gain, battery, no_regeneration
limit-short = { $limit ->
    [lift_off_only] pedal
    [drivability] slowing limit
    [motor_torque] motor force
    [motor_power] motor power
    [grip] grip
    [low_speed_fade] low speed
    [nothing_to_gain] nothing to gain
    [battery] battery
   *[no_regeneration] off
}

# A clause: the reason that left most to friction, and a second one where it left nearly as much.
# $weight: one of alone, nearly, mostly, most
# $first: text
# $second: text
limit-because = { $weight ->
    [alone] because { $first }
    [nearly] because { $first } and, nearly as much, because { $second }
    [mostly] mostly because { $first }
   *[most] most of all because { $first }
}

# $why: text
friction-helps = Friction helps { $why }.

# $why: text
friction-still-helps = Friction still helps { $why }.

## The strip: speed and height along the road, and what slowed the car where

strip-motor = motor slows the car

strip-friction = friction brakes

strip-charges = charges

strip-flat = flat

# What a pointer finds over a slow-down.
strip-slow-down = slow-down

strip-to-motor = to the motor

strip-to-friction = to friction

# $distance: quantity in km
# $fastest: quantity in km/h
# $slow_downs: count
# $rise: quantity in m
# $flat: yes or no
strip-road = { $flat ->
    [yes] Speed along { $distance } on a flat road, up to { $fastest }, with { $slow_downs ->
        [one] { $slow_downs } slow-down
       *[other] { $slow_downs } slow-downs
    }.
   *[no] Speed along { $distance } over { $rise } of height, up to { $fastest }, with { $slow_downs ->
        [one] { $slow_downs } slow-down
       *[other] { $slow_downs } slow-downs
    }.
}

strip-nothing-braked = Nothing had to be braked.

# $braked: quantity in kWh
# $motor: share
# $friction: share
strip-braked = Of { $braked } of braking at the wheels, the motor did { $motor } and the friction brakes { $friction }.

# $braked: quantity in kWh
# $motor: share
# $friction: share
# $why: text
strip-braked-because = Of { $braked } of braking at the wheels, the motor did { $motor } and the friction brakes
    { $friction }, { $why }.

# $places: list of quantity in km
strip-charged = Charges after { $places }.

# $notes: list
strip-marked = Marked along the road: { $notes }.

# $start: quantity in km
# $end: quantity in km
# $note: text
strip-note = { $start } to { $end }: { $note }
