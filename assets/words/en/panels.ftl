# How it works: six panels, one idea each.

# $panel: one of speed, flow, quadrants, who, motor, discs
panel-name = { $panel ->
    [speed] Speed
    [flow] There and back
    [quadrants] Quadrants
    [who] Who slows
    [motor] Bigger motor
   *[discs] Discs
}

# $panel: one of speed, flow, quadrants, who, motor, discs
panel-heading = { $panel ->
    [speed] Twice the speed, four times the energy
    [flow] From the wheels to the battery, and out again
    [quadrants] The machine that pulls makes electricity when it slows
    [who] Who slows the car?
    [motor] Would a bigger motor bring back more?
   *[discs] What friction brakes do with it
}

panel-label = Panel
panel-back = Back
panel-next = Next
panel-why = Why

# $source: text
panel-source = Source: { $source }

# A panel's picture for those who hear it.
# $heading: text
# $said: text
panel-alt = { $heading }: { $said }

panel-watt-hour = A watt-hour (Wh) is what a lamp of 60 watts takes in a minute; 1000 of them make a kilowatt-hour (kWh).

# What can be set.

# $unit: text
panel-two-speeds = Two speeds, { $unit }

# $unit: text
panel-stop-from = Stop from, { $unit }

# $unit: text
panel-how-hard = How hard, { $unit }

panel-what-machine-does = What the machine does
panel-emergency-stop = Emergency stop
panel-motor-power = Motor power, times that of your car
panel-what-else-changes = What else changes

# $change: one of nothing, second_motor, twice_the_battery
panel-change = { $change ->
    [nothing] Nothing
    [second_motor] A second motor
   *[twice_the_battery] Twice the battery
}
panel-how-often = How often

# $stops: count
panel-stops = { $stops ->
    [1] One stop
    [10] Ten stops
   *[other] { $stops } stops
}

# Twice the speed.

# $fast: quantity in km/h
# $car: text
# $fast_motion: quantity in Wh
# $times: number
# $slow_motion: quantity in Wh
# $slow: quantity in km/h
panel-speed-motion = At { $fast } your { $car } carries { $fast_motion } of motion, { $times } times the { $slow_motion } it
    carries at { $slow }.

# $slowing: quantity in m/s²
# $each: quantity in km/h
# $fast_back: quantity in Wh
# $fast: quantity in km/h
# $slow_back: quantity in Wh
# $slow: quantity in km/h
# $times: number
panel-speed-back = Stopped evenly at { $slowing } (metres per second, each second: { $each } less every second), it puts
    { $fast_back } back in the battery from { $fast } and { $slow_back } from { $slow }: { $times } times as much.

# Where the slower stop brings nothing.
# $slowing: quantity in m/s²
# $each: quantity in km/h
# $fast_back: quantity in Wh
# $fast: quantity in km/h
# $slow_back: quantity in Wh
# $slow: quantity in km/h
panel-speed-back-many = Stopped evenly at { $slowing } (metres per second, each second: { $each } less every second), it puts
    { $fast_back } back in the battery from { $fast } and { $slow_back } from { $slow }: many times as much.

# $slowing: quantity in m/s²
# $each: quantity in km/h
panel-speed-back-nothing = Stopped evenly at { $slowing } (metres per second, each second: { $each } less every second), it
    puts next to nothing back in the battery.

# Each from panel-speed-loses.
# $losses: list
panel-speed-losses = It need not be the same figure as for the motion, since losses do not grow alike: the faster stop loses
    { $losses }.

# $times: number
# $to: one of road, losses, brakes
panel-speed-loses = { $times } times as much to { $to ->
    [road] air and tyres
    [losses] the motor and its gear
   *[brakes] the friction brakes
}

# $part: one of battery, aboard, losses, brakes, road
# $energy: quantity in Wh
panel-speed-part = { $part ->
    [battery] back in battery
    [aboard] used aboard
    [losses] motor, gear
    [brakes] friction
   *[road] air, tyres
} { $energy }

# What the two lines are.
# $of: one of motion, back
panel-speed-line = { $of ->
    [motion] energy of motion
   *[back] back in the battery after a stop
}

# $unit: text
panel-column-from = From, { $unit }
panel-column-motion = Motion, Wh

# $part: one of battery, aboard, losses, brakes, road
panel-column-part = { $part ->
    [battery] Back in battery, Wh
    [aboard] Used aboard, Wh
    [losses] Motor, gear, Wh
    [brakes] Friction, Wh
   *[road] Air, tyres, Wh
}

# There and back.

# $motion: quantity in Wh
# $speed: quantity in km/h
# $back: quantity in Wh
# $stored: quantity in Wh
# $wheels: quantity in Wh
# $share: share
panel-flow-back = Of { $motion } of motion at { $speed }, { $back } are put back in the battery and { $stored } of them end in
    its cells; pulling away with those brings { $wheels } back to the wheels, { $share }.

# $motion: quantity in Wh
# $speed: quantity in km/h
# $friction: quantity in Wh
panel-flow-nothing = Of { $motion } of motion at { $speed }, nothing ends in the cells; friction brakes turn { $friction }
    into heat.

panel-flow-there = Slowing the car, the motor works as a generator: it makes alternating current, which changes direction
    many times a second. The inverter, its power electronics, turns that into direct current, the only kind that the
    battery’s cells can keep.

# $share: share
panel-flow-kept = Of what reaches the gear, { $share } gets that far.

# $share: share
panel-flow-out = Pulling away, the same chain runs the other way and passes on { $share }. So a stop that need not be made
    beats any that is recovered.

# $energy: quantity in Wh
panel-flow-motion = Motion: { $energy }

# $energy: quantity in Wh
panel-flow-in-cells = In the cells: { $energy }

# $energy: quantity in Wh
panel-flow-at-wheels = Back at the wheels: { $energy }

# $part: one of road, friction, engine, gear, motor, aboard, cells
# $way: one of in, out
panel-flow-part = { $part ->
    [road] air and tyres
    [friction] friction brakes
    [engine] turning the engine
    [gear] gear
    [motor] { $way ->
        [in] motor and inverter
       *[out] inverter and motor
    }
    [aboard] lights, computers
   *[cells] heat in the cells
}

# $part: one of road, friction, engine, gear, motor, aboard, cells
# $way: one of in, out
# $energy: quantity in Wh
panel-flow-line = { panel-flow-part } { $energy }

# $part: one of road, friction, engine, gear, motor, aboard, cells
# $way: one of in, out
panel-flow-row = { $way ->
    [in] In: { panel-flow-part }
   *[out] Out: { panel-flow-part }
}
panel-flow-row-motion = Motion
panel-flow-row-in-cells = In the cells
panel-flow-row-at-wheels = Back at the wheels
panel-flow-column-part = Part of the way
panel-flow-column-energy = Energy, Wh

# Four quadrants.

# $force: quantity in kN
panel-quadrants-never = Your drive never does this. The machine could, with up to { $force }, forwards or, mirrored, backwards.

# $minutes: quantity in minutes
# $shaft: quantity in kWh
# $electric: quantity in kWh
# $share: share
panel-quadrants-pulling = On your drive the motor pulls for { $minutes } and makes { $shaft } at its shaft from { $electric }
    of electricity, { $share }.

# $minutes: quantity in minutes
# $electric: quantity in kWh
# $shaft: quantity in kWh
# $share: share
panel-quadrants-slowing = On your drive the motor slows the car for { $minutes } and makes { $electric } of electricity from
    { $shaft } at its shaft, { $share }.

# $us: yes or no
panel-quadrants-axes = To the right the car goes forwards, to the left backwards; above the line the force points forwards,
    below it backwards. Force is in { $us ->
        [yes] pounds (lbf)
       *[no] kilonewtons (kN)
    }, as it reaches the road; turned round an axle it is called torque.

# $pulling: quantity in km/h
# $slowing: quantity in km/h
# $pulls: quantity in kW
# $slows: quantity in kW
panel-quadrants-border = The firm border is what the machine can do: one greatest torque up to { $pulling } when pulling or
    { $slowing } when slowing, one greatest power beyond, here { $pulls } pulling and { $slows } slowing.

# $steps: list of quantity in %
panel-quadrants-shades = Efficiency is what comes out over what goes in: the stronger the shade, the better, with steps at
    { $steps }. Each dot is part of your drive, the larger the more energy passes there.

# $quadrant: one of pulling_forwards, slowing_forwards, slowing_backwards, pulling_backwards
panel-quadrant = { $quadrant ->
    [pulling_forwards] Pulling forwards
    [slowing_forwards] Slowing forwards
    [slowing_backwards] Slowing backwards
   *[pulling_backwards] Pulling backwards
}

# In a corner of the picture.
# $quadrant: one of pulling_forwards, slowing_forwards, slowing_backwards, pulling_backwards
panel-quadrant-corner = { $quadrant ->
    [pulling_forwards] pulling forwards
    [slowing_forwards] slowing forwards
    [slowing_backwards] slowing backwards
   *[pulling_backwards] pulling backwards
}

# $level: share
panel-quadrants-level = over { $level }
panel-quadrants-column-quadrant = Quadrant
panel-quadrants-column-time = Time, min
panel-quadrants-column-shaft = At the shaft, kWh
panel-quadrants-column-electric = Electric, kWh

# Who slows the car.

# $speed: quantity in km/h
# $motor: share
# $friction: share
# $road: share
panel-who-works = In a stop from { $speed } the motor does { $motor } of the work, the friction brakes { $friction }, air and
    tyres { $road }.

# $slowing: quantity in m/s²
# $each: quantity in km/h
panel-who-slowing = The car slows at { $slowing } (metres per second, each second: { $each } less every second).

# $slowing: quantity in m/s²
# $each: quantity in km/h
# $asked: quantity in m/s²
panel-who-slowing-at-most = The car slows at { $slowing } (metres per second, each second: { $each } less every second), all
    that this road has grip for; you ask for { $asked }.

# $late: quantity in s
# $harder: share
# $filled: share
panel-who-late = Motors turn from pulling to slowing within thousandths to tenths of a second (common practice, no source).
    One that is { $late } late costs { $harder } of what this stop recovers if the car then slows a little harder to the same
    place, and { $filled } if the friction brakes fill in.

# $who: one of road, motor, friction
# $share: share
panel-who-line = { $who ->
    [road] air, tyres
    [motor] motor
   *[friction] friction
} { $share }
panel-who-motor-limit = motor’s limit
panel-who-grip = all that the road’s grip allows

# Where that lies far beyond the picture.
# $grip: quantity in m/s²
panel-who-grip-beyond = the road has grip for { $grip }, off the picture

# $unit: text
panel-who-column-speed = Speed, { $unit }

# $unit: text
panel-who-column-road = Air and tyres, { $unit }

# $unit: text
panel-who-column-motor = Motor, { $unit }

# $unit: text
panel-who-column-friction = Friction, { $unit }

panel-who-column-why = Why not more by the motor

# A bigger motor.

# $power: quantity in kW
# $change: one of nothing, second_motor, twice_the_battery
# $braked: yes or no
# $share: share
# $back: quantity in kWh
# $plain: yes or no
# $other_power: quantity in kW
# $other_back: quantity in kWh
# $gain: one of hardly, more, less
panel-motor-does = { $gain ->
    [hardly] Hardly.
    [more] Yes.
   *[less] No, less.
} A motor of { $power }{ $change ->
    [nothing] {""}
    [second_motor] , shared by both axles,
   *[twice_the_battery] {" "}with twice the battery
} does { $braked ->
    [yes] { $share } of the braking
   *[no] no braking
} on your drive and puts { $back } in the battery; { $plain ->
    [yes] { $other_power } would put { $other_back } there.
   *[no] your car as it is, with { $other_power }, puts { $other_back } there.
}

# $driven: one of front, rear, all
# $front: share
# $rear: share
panel-motor-weight = { $driven ->
    [front] Only the front wheels, which carry { $front } of the weight while slowing, are driven here. On a slippery road
        that counts.
    [rear] Only the rear wheels, which carry { $rear } of the weight while slowing, are driven here. On a slippery road that
        counts.
   *[all] With all wheels driven, the front ones carry { $front } of the weight while slowing and can do as much of the
        slowing. On a dry road that changes little; set a slippery one above to see what it does.
}
# $best: quantity in kW
# $most: quantity in kWh
# $largest: quantity in kW
# $back: quantity in kWh
panel-motor-drag = A large motor that does little wastes more: it has more iron and electronics to keep going. With { $best }
    the most reaches the battery, { $most }; with { $largest } it is { $back }.

# $back: number
panel-motor-in-battery = in the battery { $back }

# $lost: number
panel-motor-lost = lost on the way { $lost }

# Over the names beside the picture, whose figures are those of the chosen power.
# $power: text
panel-motor-unit = at { $power }, in kWh

# What left braking to friction, short enough to stand beside the picture.
# $limit: one of lift_off_only, drivability, motor_torque, motor_power, grip, low_speed_fade, nothing_to_gain, battery
panel-motor-limit = { $limit ->
    [lift_off_only] pedal
    [drivability] comfort limit
    [motor_torque] motor’s force
    [motor_power] motor’s power
    [grip] grip
    [low_speed_fade] walking pace
    [nothing_to_gain] nothing to gain
   *[battery] battery
}

# $limit: one of lift_off_only, drivability, motor_torque, motor_power, grip, low_speed_fade, nothing_to_gain, battery
# $braked: number
panel-motor-limit-line = { panel-motor-limit } { $braked }
panel-motor-column-times = Times
panel-motor-column-motor = Motor, kW
panel-motor-column-back = In the battery, kWh
panel-motor-column-braked = By the motor, kWh

# $limit: one of lift_off_only, drivability, motor_torque, motor_power, grip, low_speed_fade, nothing_to_gain, battery
panel-motor-column-friction = Friction: { panel-motor-limit }, kWh

# Hot discs.

# $stops: count
# $speed: quantity in km/h
# $alone: quantity in °C
# $heat: quantity in kWh
# $helped: quantity in °C
# $back: quantity in kWh
panel-discs-reach = After { $stops ->
    [1] one stop
    [10] ten stops
   *[other] { $stops } stops
} from { $speed } discs that do all the work reach { $alone }, and { $heat } warm the air; with the motor they reach
    { $helped }, and { $back } are back in the battery.

panel-discs-how = Friction brakes press pads on a disc at each wheel. They turn motion into heat, the discs pass it on to the
    air, and none of it comes back.

# $caution: one of below, within, above
panel-discs-caution = { $caution ->
    [below] That is below where ordinary pads begin to lose bite.
    [within] That is where ordinary pads begin to lose bite, which drivers call fade.
   *[above] That is beyond where ordinary pads have lost bite, which drivers call fade.
}
panel-discs-away = The car pulls away at once after each stop; what that takes is not counted here.

# $run: one of alone, motor
# $reached: quantity in °C
panel-discs-line = { $run ->
    [motor] with motor { $reached }
   *[alone] discs only { $reached }
}
panel-discs-band = where ordinary pads begin to lose bite

# $heat: quantity in kWh
panel-discs-alone = Friction brakes only: { $heat } of heat

# $back: quantity in kWh
# $heat: quantity in kWh
panel-discs-motor = With motor: { $back } back, { $heat } of heat
panel-discs-column-time = Time, s
panel-discs-column-stops = Stops

# $unit: text
panel-discs-column-alone = Discs only, { $unit }

# $unit: text
panel-discs-column-motor = With the motor, { $unit }

# The letters of each panel's equation, and where it is from.

# $pace: quantity in km/h
why-speed-letters = E energy of motion [J; 3600 J are 1 Wh], m mass with load, and with a share for wheels and motor, which have
    to be spun up [kg], v speed [m/s; 1 m/s is { $pace }].
why-speed-source = Mechanics. The mass is that of your car; how much comes back is the model’s own run of this stop.

why-flow-letters = E energy of motion, W what each part of the way takes [J], I current [A], R resistance of the cells [Ω].
why-flow-source = Conservation of energy; each loss has its own law and the sum is checked. Motor, gear and cell figures are
    those of the car’s class: assumed, no measured map of a car on sale was found.

why-quadrants-letters = P power [W], F force at the road [N], v speed [m/s]; a electronics, b v and c v² the spinning machine,
    d F² its windings and switches.
why-quadrants-source = The usual form of a loss map; its four figures are assumed for the class.

why-who-letters = m mass [kg], a slowing [m/s²], F forces [N], μ grip between tyre and road [no unit], g = 9.81 m/s². The motor’s
    part is the least of: what is asked, the comfort limit, its greatest force, its greatest power, what the battery takes,
    the grip of the driven wheels less a reserve, and what is left near walking pace.
why-who-source = Mechanics; grip from the table of road surfaces with its sources. In a real emergency many cars hand the whole
    stop to the friction brakes.

why-motor-letters = P power at the wheels that a slowing asks for [W], m mass [kg], a slowing [m/s²: metres per second, each
    second], v speed [m/s].

# $sizes: count
why-motor-source = The model, run on your drive with { $sizes } motor sizes, at the same speeds even where so small a motor could
    not reach them. Weight is kept the same too, so that one thing changes at a time; a bigger motor or battery would add some.

# $share: share
why-discs-letters = T temperature of both front discs [K], C their heat capacity [J/K], s the front brakes’ share, { $share }, P
    power of all friction brakes [W], k cooling in still air [W/K], v speed [m/s], v₀ the speed that doubles it, r
    radiation [W/K⁴].
why-discs-source = One lump of iron. Front share, heat capacity and cooling are assumed; the form of cooling with speed is that
    of a US method for truck brakes downhill.
