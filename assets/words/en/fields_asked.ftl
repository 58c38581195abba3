# Of what single pages, claims and the command line ask, and of what a recording holds: what each field is called, and a
# help. Ids end in the keys of files.
# A name begins with a small letter, as within a sentence, unless it always has a capital; labels get theirs in code.

## Every entry

# $label: text
# $unit: text
label-with-unit = { $label }, { $unit }

# The two buttons beside a number, for those who hear the page.
# $label: text
entry-by-steps = { $label }, by steps

## Limits

limits-part = part

limits-grip_kmh = speed

limits-bend = bend

limits-slope_pct = slope

limits-hill_m = my hill goes down

limits-hill_pct = how steep

limits-hill_kmh = driven at

limits-stop_kmh = stop from

limits-reaction_s = reaction time

## Panels

panels-slower_kmh = the slower speed

panels-faster_kmh = the faster speed

panels-from_kmh = stop from

panels-slowing_mps2 = slowing

panels-quadrant = what the machine does

panels-power_times = motor power

panels-change = what else changes

panels-stops = stops

## Grip

grip-speed_kmh = speed

grip-bend_radius_m = radius of the bend

grip-grade_pct = slope

## One stop

stop-from_kmh = speed at the start

stop-to_kmh = speed at the end

## Range

range-test_range_km = range on the test cycle

## Bands

band-runs = sampled cars

## Phrases

phrase-number = number

## Claims

claim-car = car class
    .help = The kind of car.

claim-cycle = cycle or drive
    .help = A standard cycle, a starting drive, or a hill.

claim-hybrid = hybrid
    .help = The kind of hybrid that is compared.

claim-denominator = a share of what
    .help = What the published percentage is a share of.

claim-counted = what is counted
    .help = Braking energy, or slow-downs done by the motor alone.

claim-slower_by_kmh = speed lost
    .help = In the slow-down.

claim-slowing_mps2 = slowing
    .help = Deceleration of the car.

claim-height_m = height of the hill
    .help = Climbed, then descended.

claim-gentle_mps2 = gentle lift-off strength
    .help = The weaker setting.

claim-strong_mps2 = strong lift-off strength
    .help = The stronger setting.

claim-extra_mass_pct = heavier by
    .help = Mass added to the same car.

claim-motor_factor = power of the bigger motor
    .help = Over that of the smaller one.

claim-delay_ms = switching delay
    .help = From foot up to the motor slowing.

claim-time_made_up = lost time made up
    .help = Whether the time that coasting costs is made up by cruising faster.

question-number = as published
    .help = The claim’s number; ``low..high`` for a range.

question-relation = claimed as
    .help = What the number is to be.

claim-speed_kmh = speed
    .help = The speed driven where nothing is in the way.

claim-grade_pct = slope
    .help = Steepness of the hills on this leg.

## Recordings

recorded-time_s = time

recorded-speed_kmh = speed

recorded-latitude = latitude

recorded-longitude = longitude

recorded-elevation_m = height

recorded-distance_m = distance

recorded-ambient_c = outside temperature

recorded-battery_temp_c = battery temperature

recorded-soc_pct = charge

recorded-cabin_kw = cabin power

recorded-battery_power_kw = battery power

recorded-battery_a = battery current

recorded-battery_v = battery voltage

claim-run = run

study-workers = workers
    .help = Processes that work side by side.

## A route without times

route-limit_kmh = limit
    .help = No part of the route is driven faster.

route-lateral_mps2 = turns are taken at
    .help = Acceleration across the car, which slows it in turns. Common practice, no source: { QUANTITY(2, unit: "m/s²") } without a
        hurry, { QUANTITY(3, unit: "m/s²") } brisk.
