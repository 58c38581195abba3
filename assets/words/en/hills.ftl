# Full battery and long hills.

hills-heading = When the battery is full, and on long hills

# $drop: quantity in m
# $speed: quantity in km/h
# $why: one of no-motor, used-up
hill-gives-nothing = A hill of { $drop } gives nothing back at { $speed }: { $why ->
    [no-motor] the motor does not slow the car.
   *[used-up] air, tyres and what is used aboard take it all.
}

# $drop: quantity in m
# $charge: share
hill-start = For a hill of { $drop } down, start at { $charge } or less: then motor slowing keeps its strength all the way.

# Where no charge gives it.
# $drop: quantity in m
# $share: share
hill-leave-free = For a hill of { $drop } down, leave { $share } of the battery free. Motor slowing is weaker at any charge.

# What the battery makes of it.
hill-little-never = A battery that takes little never gives that strength.

# $least: number
# $most: share
hill-start-differs = Batteries differ: the charge to start at lies from { $least } to { $most }.

# The charges that the picture shows, in their order.
# $power: share
# $fits: share
hill-order = Started higher, the motor slows less once the charge is above { $power }; started above { $fits }, some of the
    hill goes to the discs.

# Hybrids.

# $slope: quantity in %
hybrid-hill-gives-nothing = A { $slope } descent gives nothing back: air, tyres and what is used aboard take it all.

# $drop: quantity in m
# $slope: quantity in %
hybrid-full-after = From the charge its engine keeps, this hybrid’s battery is full after { $drop } of a { $slope } descent.

# $drag: quantity in kW
# $drop: quantity in m
hybrid-then = Then the engine is dragged along, which takes up to { $drag }, and the discs take the rest. That is why it
    revs on the way down. The hill asked here goes down { $drop }.

# What it comes to.

hill-gives-back = It gives back

# $power: quantity in kW
# $speed: quantity in km/h
# $slope: quantity in %
hill-gives-back-beside = to the battery, { $power } at the most, at { $speed } on { $slope }, less what is used aboard

hill-holding = Holding the speed

# $motor: quantity in kW
# $discs: quantity in kW
# $discs_help: yes or no
hill-holding-beside = asked at the wheels; of that the motor brakes with up to { $motor }, the discs { $discs_help ->
    [yes] with up to { $discs }
   *[no] with nothing
}

hill-leaving-full = Leaving home full

# $lasts: one of never, first, always
# $minutes: count
# $km: text
hill-leaving-full-beside = on your drive than leaving at 60 %; motor slowing { $lasts ->
    [never] is as usual from the start
    [always] stays weaker on this drive
   *[first] is as usual after { $minutes ->
        [one] { $minutes } minute, { $km }
       *[other] { $minutes } minutes, { $km }
    }
}

hill-your-drive = Your drive
hill-your-drive-beside = the most by which its charge rises above the start

hill-fuel = Fuel saved
hill-fuel-beside = by regeneration on your drive; a wide band, since an engine’s efficiency in traffic is not published

limits-trailer = Trailer
hill-trailer-beside = is counted; its own brakes are left out

# What to do.

# $charge: share
hill-do-charge = **If the hill begins at your door, charge to { $charge } at most.**
hill-do-speed = **Choose the speed before the hill**: a low one leaves the motor enough for all of it.
hill-do-strongest = **Use the strongest motor slowing that grip allows**, so that the discs stay cool for when they are
    needed.
hill-do-position = **Use the position for slopes that the manual names**: the engine holds the car, and the discs rest.
hill-do-cool = **Stop to cool** if the brakes smell, the pedal goes soft or they bite less.

# What to mind.

hill-mind-full = **With a full battery the car slows less when the foot comes up.** Some cars keep the feel with the
    discs; the manual says which.
hill-mind-neutral = **Never coast downhill in neutral**: nothing but the discs holds the car then, and in many places the
    law forbids it. Do not ride the brake pedal.
hill-mind-assumed = **What a battery takes near full is assumed**: no published map was found.

# What the battery takes as it fills.

near-full-never = The battery cannot take all that the hill gives
near-full-enough = Up to nearly full the battery can take what the hill gives

# $charge: share
near-full-above = Above { $charge } charge the battery can take less than the hill gives
near-full-words = Charge along, power upwards, the battery as warm as at the start. The band runs from a battery that takes little to one that takes much, the
    dashed line is the middle one. Dotted: the charge at the top from which the hill just fits in.

# $power: quantity in kW
near-full-hill-gives = the hill gives { $power }
near-full-takes = the battery can take

# $charge: share
near-full-fits = fits in up to { $charge }
near-full-column-charge = Charge, %

# How warm the discs get on the way down.

# $warm: yes or no
# $reached: quantity in °C
discs-title = The front discs { $warm ->
    [yes] reach { $reached }
   *[no] stay cold
} with the motor

# $warm: yes or no
# $reached: quantity in °C
# $full: quantity in °C
discs-title-full = The front discs { $warm ->
    [yes] reach { $reached }
   *[no] stay cold
} with the motor, and reach { $full } if the battery is full

# $reached: quantity in °C
# $caution: one of below, within, above
discs-words = On friction brakes only they reach { $reached } and { $caution ->
    [below] stay below where ordinary pads begin to lose bite
    [within] come to where ordinary pads begin to lose bite, which drivers call fade
   *[above] pass the heat in which ordinary pads have lost their bite, which drivers call fade
}. One lump of iron stands for both; their heat capacity, cooling and the band of fade are assumed. Brake fluid that holds
    water may boil sooner.

discs-band = pads begin to lose bite

# $run: one of motor, full, alone
# $reached: quantity in °C
discs-line = { $run ->
    [motor] with the motor { $reached }
    [full] full battery { $reached }
   *[alone] discs only { $reached }
}

discs-column-down = Down
discs-column-motor = With the motor
discs-column-full = From a full battery
discs-column-alone = Discs only

# What slopes give back of what they took.

# $share: share
# $speed: quantity in km/h
slopes-title = The way down a 6 % slope gives back { $share } of what the way up took, at { $speed }

# $speed: quantity in km/h
slopes-title-nothing = A 6 % slope gives nothing back at { $speed }
slopes-words = Downhill is not free: it was paid for on the way up. Below zero even the way down takes energy, for air,
    tyres and what is used aboard. In your car and this weather, at the charge you start with; heating and cooling left
    out.

# $slope: quantity in %
slopes-yours = this hill, { $slope }

# $speed: quantity in km/h
# $share: share
slopes-line = { $speed }: { $share }

slopes-column-slope = Slope, %
slopes-column-speed = Speed
slopes-column-share = Given back, %
