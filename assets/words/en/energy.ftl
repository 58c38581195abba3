# Where the energy goes: before and after, the books as a picture, what slowed the car, and the drive over time.

energy-goes = Where the energy goes

# $saved: share
# $band: shares
# $half: share
# $shared: yes or no
energy-one-run = { $shared ->
    [yes] This picture is of one car with every assumed figure at its middle, which saves { $saved }. The answer above,
        { $band }, is of many cars, half of which save under { $half }.
   *[no] This picture is of one car with every assumed figure at its middle. The answer above is of many cars.
}

## The books

# $entry: one of battery_out, from_hill, from_motion, engine_given, cabin, pack_heater, accessories, losses_driving, air, rolling, climb, kinetic, friction_brakes, engine_drag, losses_slowing, battery_in, cells_given, cells_taken, cells
book-entry = { $entry ->
    [battery_out] Out of the battery
    [from_hill] Given by the hill (ends lower)
    [from_motion] Given by the speed at the start
    [engine_given] Given by the engine
    [cabin] Warming or cooling the cabin
    [pack_heater] Warming the battery
    [accessories] Lights, computers, pumps
    [losses_driving] Motor and gear losses, driving
    [air] Pushing the air aside
    [rolling] Rolling of the tyres
    [climb] Kept by the hill (ends higher)
    [kinetic] Kept by the speed at the end
    [friction_brakes] Heat in the friction brakes
    [engine_drag] Dragging the engine along
    [losses_slowing] Motor and gear losses, slowing
    [battery_in] Back in the battery
    [cells_given] Behind the terminals: given by the cells
    [cells_taken] Behind the terminals: taken by the cells
   *[cells] Behind the terminals: heat in the cells
}

# $name: text
# $energy: text
# $share: share
book-line = { $name }: { $energy }, { $share }

# An amount that was rounded to nothing.
# $least: quantity in kWh
energy-under = under { $least }

# $out: quantity in kWh
book-nothing-left = Nothing leaves the battery, and { $out } come in

# $back: quantity in kWh
# $out: number
book-more-back = More comes back than left: { $back } against { $out }

book-nothing-back = Nothing comes back to the battery on this drive

# $back: number
book-of-hundred = Of every 100 Wh that leave the battery, { $back } come back

# $cells: quantity in kWh
book-read = Read it from the top: each use begins where the one before it ends, and what is used and what comes back add up
    to what came in. A further { $cells } warmed the battery’s own cells, behind its terminals, where this picture begins.

# $bound: one of billion, million
books-balance = { $bound ->
    [billion] The books, cells included, balance to better than one part in a billion of the energy turned over.
   *[million] The books, cells included, balance to better than one part in a million of the energy turned over.
}

# $missing: share
books-missing = The books do not balance: { $missing } of the energy turned over is missing.

## Before and after

# $group: one of road, aboard, losses, friction, downhill
energy-group = { $group ->
    [road] air, tyres, hills
    [aboard] cabin, electronics
    [losses] motor, gear losses
    [friction] friction heat
   *[downhill] hill, less air, tyres
}

energy-saved-bar = saved

# Two lines over a bar.
bar-friction-only = friction{"\u000A"}brakes only

bar-regenerated = with re-{"\u000A"}generation

saves-nothing = On this drive regeneration saves nothing

# $saved: number
# $without: quantity in kWh
# $share: share
saves = Regeneration saves { $saved } of { $without }, { $share }

# $more: quantity in kWh
saves-ends-fuller = With regeneration the battery ends { $more } fuller than it began

# $friction_only: quantity in kWh
# $regenerated: quantity in kWh
saves-heat = With friction brakes only, { $friction_only } of this drive end as heat in the discs; with regeneration
    { $regenerated } do.

# $losses: quantity in kWh
# $costs: yes or no
saves-losses = { $costs ->
    [yes] The way back through gear and motor costs { $losses }.
   *[no] The way back through gear and motor saves { $losses }.
}

saves-others-alike = All other uses are the same.

net-out = Net out of the battery

column-went-into = Went into

column-book-entry = Entry

column-friction-only = Friction brakes only, kWh

column-regenerated = With regeneration, kWh

## What slowed the car

slowed-by-motor = The motor

# $why: text
slowed-by-friction = Friction, because { $why }

slowed-nothing = Nothing had to be braked on this drive

slowed-nothing-why = Air and tyres slowed the car wherever it slowed.

# $motor: share
slowed-motor-does = The motor does { $motor } of the braking

# $motor: share
# $why: text
slowed-friction-helps = The motor does { $motor } of the braking; friction helps { $why }

# $slow_downs: count
# $braked: quantity in kWh
slowed-counted = { $slow_downs ->
    [one] Counted at the wheels, over { $slow_downs } slow-down and what is held back downhill: { $braked } beyond what
        air and tyres slow anyway.
   *[other] Counted at the wheels, over { $slow_downs } slow-downs and what is held back downhill: { $braked } beyond what
        air and tyres slow anyway.
}

# $unit: text
column-at = At, { $unit }

# $unit: text
column-from = From, { $unit }

# $unit: text
column-to = To, { $unit }

# $unit: text
column-hardest = Hardest, { $unit }

column-motor-wh = Motor, Wh

column-friction-wh = Friction, Wh

column-why-friction = Why friction

## The drive over time

over-time-speed = Speed

over-time-out = Power out of the battery

over-time-back = Power back into the battery

over-time-charge = Charge

# $first: number
# $last: quantity in %
# $minutes: quantity in minutes
# $falls: yes or no
over-time-title = { $falls ->
    [yes] Charge falls from { $first } to { $last } of the battery in { $minutes }
   *[no] Charge rises from { $first } to { $last } of the battery in { $minutes }
}

# $fastest: quantity in km/h
over-time-reaches = The car reaches { $fastest }.

# $power: quantity in kW
over-time-gives = The battery gives at most { $power }.

# $power: quantity in kW
# $minutes: quantity in minutes
over-time-takes = Slowing puts at most { $power } into it, and for { $minutes } it is charged: then the motor makes more than
    is used aboard.

column-time-s = Time, s

# $unit: text
column-distance = Distance, { $unit }

# $unit: text
column-speed = Speed, { $unit }

# $unit: text
column-height = Height, { $unit }

column-battery-kw = Battery, kW

column-friction-kw = Friction brakes, kW

column-charge = Charge, %
