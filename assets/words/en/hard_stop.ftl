# The emergency stop, and the brakes that rest meanwhile.

hard-stop-heading = When you must stop at once

# $speed: quantity in km/h
# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
# $distances: span in m
# $thinking: quantity in m
hard-stop-distances = From { $speed } { on-the-road }: { $distances } to rest, { $thinking } of them before the brakes act.
hard-stop-friction = The friction brakes do it, on four wheels with ABS. Regeneration neither replaces them nor holds the
    car.

# What it comes to.

hard-stop-slowing = Slowing

# $force: quantity in kN
# $power: quantity in kW
hard-stop-slowing-beside = on average; as braking begins { $force } and { $power } at the wheels

hard-stop-motor = The motor’s part

# $share: share
hard-stop-motor-beside = at the most, { $share } of what the wheels brake, air left out, with the battery as at the start;
    many cars leave a hard stop to the discs

hard-stop-alone = On the motor alone
hard-stop-no-end = no end

hard-stop-alone-beside = on a dry road, reaction included; there it fades and never brings the car to rest

# $distance: quantity in m
# $speed: quantity in km/h
hard-stop-rolls-on = { $distance } down to { $speed }, then it rolls on

# Where standing water takes longer than packed snow.
# $speed: quantity in km/h
hard-stop-floats = At { $speed } tyres all but float on standing water, which is called aquaplaning: a stop there takes longer
    than on packed snow.

hard-stop-slope = Standing on a slope

# $slope: quantity in %
hard-stop-slope-beside = hold the car on { $slope }: brake pedal or parking brake. A motor does not hold a parked car

hard-stop-comparison = For comparison

# $sight: quantity in m
hard-stop-comparison-beside = worked out from the typical distances of the UK Highway Code; road designers allow { $sight }
    (AASHTO)

# What to do.

hard-stop-do-press = **Press the brake pedal hard and keep pressing.** Do not wait for lift-off to do it.
hard-stop-do-distance = **Keep more distance**: with a cold or full battery or on a slippery road the motor’s part is
    missing.
hard-stop-do-parking = **Use the parking brake** as the manual says.
hard-stop-do-exercise = **Exercise the brakes** now and then where traffic and the manual allow it.

# What to mind.

hard-stop-mind-rust = **Brakes that rest corrode**: discs rust, pads may seize. Have them inspected as the manual says.
hard-stop-mind-signs = **Grinding, pulling to one side, a long or soft pedal, a warning lamp**: have a qualified workshop
    look at it.
hard-stop-mind-assumed = All four wheels are assumed to use all of their grip, air is left out, and the driver presses at
    once: a real stop is likely to be longer.

# Stopping distances on every road.

# $times: number
hard-stop-title = Stopping on ice takes { $times } times the distance of a dry road

# $reaction: quantity in s
hard-stop-words = Faint: { $reaction } of reaction. Orange: braking at the middle of the road’s grip; the line spans its
    band. Blue: the motor without friction brakes, until it fades; outlined, how far the car then rolls.
hard-stop-motor-alone = the motor alone, on a dry road

# Where it stops with the most grip only.
# $distance: quantity in m
hard-stop-or-no-end = { $distance } or no end

hard-stop-column-road = Road
hard-stop-column-reaction = Reaction
hard-stop-column-most = Most grip
hard-stop-column-middle = Middle
hard-stop-column-least = Least grip

# How little of a hard stop a motor could do.

# $share: share
hard-stop-motor-title = The motor could do at most { $share } of what the wheels brake

# $speed: quantity in km/h
hard-stop-motor-words = Blue: the most the motor could take, whether or not the car asks it to. Orange: what is left to
    the discs. Force and power as braking begins from { $speed }, energy over it all. Air is left out here; “Who slows”
    under How it works counts air and tyres among what slows the car.

# $part: one of force, power, energy
hard-stop-part = { $part ->
    [force] Force
    [power] Power
   *[energy] Energy
}

# $part: one of force, power, energy
# $share: share
hard-stop-part-by-motor = { hard-stop-part }: motor { $share }

hard-stop-column-part = Of the stop
hard-stop-column-motor = Motor at most, %
hard-stop-column-whole = In all

# The brakes that rest.

# $share: share
brakes-title = On your drive the discs do { $share } of the work they would do alone
brakes-title-nothing = Your drive asks nothing of the discs, with or without regeneration

# $pressed: one of never, daily, seldom
# $days: quantity in days
brakes-words = { $pressed ->
    [never] They are never pressed firmly.
    [daily] They are pressed firmly every day, over the year.
   *[seldom] They are pressed firmly every { $days }, over the year.
} Less work means less wear only where rust does not decide first: how long they last cannot be told from it.

brakes-discs-only = Discs only
brakes-with-regeneration = With regeneration
brakes-column-run = Run

# $unit: text
brakes-column-heat = Heat, { $unit }
