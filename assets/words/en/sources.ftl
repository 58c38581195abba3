# Sources and method: where every figure is from, how an answer is made, and where it holds.

## The overview

# $checks: count
sources-overview = The same speeds are driven twice, once with the motor slowing the car and once on friction brakes only:
    the difference is what is saved. Each figure of the car says whether it is published, common practice or assumed, and
    within which band. { $checks } published findings stand beside the model, hits and misses alike.

sources-open = Open everything

sources-close = Close everything

sources-search = To search this page or print it, open everything first.

# $of: one of made, trust, tables
sources-group = { $of ->
    [made] The method
    [trust] The evidence
   *[tables] Tables, sources and words
}

## Headings

sources-method = How an answer is made

sources-figures = The figures of the car

sources-uses = Where the figures are used

sources-band = How a band is made

sources-trust = How far to trust it

sources-checks = The model beside published figures

sources-consistency = Checks that are no evidence

sources-range = Where it holds

sources-left-out = What is left out

sources-acceptance = What the battery accepts

sources-grip = Grip of the road

sources-cycles = Standard cycles

sources-words = Words

sources-changes = Change log and corrections

sources-cautions = Cautions and version

## Paragraphs

method-steps = Your description becomes a speed, second by second. For each step the model asks what force the wheels need:
    to speed up, to climb, against air and tyres. When the car pulls, the battery gives that and what motor, gear, cells
    and cabin take. When it slows, air and tyres do their part first, then the motor as far as the pedal, its own limits,
    the grip and the battery let it, and the friction brakes do the rest. Every step notes which limit held the motor back.

method-shares = The same speeds are then driven with friction brakes only. There the idle motor still turns, and while the
    car slows the wheels turn it. **Energy saved** is how much less the battery gives with regeneration than without, over
    what it gives without. **Recovered share** is what was put back over what was taken out. **Range gain** is how much
    further the battery goes. The three are different numbers.

method-books = Every joule is booked: what left the battery, what came back, and each use by its own law. The books balance
    to one part in a billion, and a test breaks each entry in turn to see that they then do not.

# $car: text
figures-of-class = **{ $car }.** Classes are invented middles of what is on sale, copies of no car. *Published* figures
    have a source, *common practice* has none but is widely used, *assumed* is a judgement, and says so. Another car class
    is chosen in the line at the top of the page.

uses-read = Read from the program itself, so it cannot go out of date.

# $half_city: number
# $half_highway: quantity in %
# $most: quantity in %
band-checked = The range that should hold half of them held { $half_city } in the city and { $half_highway } on the
    highway. The worst missed were large cars of one family of makers, which take up to { $most } more than modelled.

# $low: quantity in %
# $high: quantity in %
# $runs: count
# $seed: text
band-drawn = The model is run many times, and for each run every assumed figure is drawn anew: within its low and high,
    most often near its mid (a triangular distribution, by Latin hypercube: one draw from each of as many equal shares as
    there are runs). The band is what lies between the lowest { $low } and the highest { $high } of the answers. What you
    stated is fixed. { $runs } runs are behind every band but those of claims, the same cars everywhere; the seed is
    { $seed }, so that the same question gives the same answer. The figures are drawn independently of each other. The
    band covers what we do not know of the car. It does not cover how you drive on the day, nor what the model leaves out.

checks-both = Hits and misses alike. No figure is fitted to a single one of them, but the losses were chosen with some in
    view. Numbers marked *reported only* have no published number beside them; they stand here because leaving them out
    would flatter the model.

# What a check is against, and what it is worth.
# $source: text
# $published: text
# $note: text
check-about = Source: { $source }. Published: { $published }. { $note }

checks-one-by-one = The certified cars one by one

checks-wall = Energy from the wall.

consistency-why = These agree, or nearly so, for a reason other than that the model is right. They guard against mistakes
    in the program and are not counted as evidence.

range-holds = The model is one of everyday driving, in steps of one second. Entries beyond what is ordinary are accepted
    and named beside the answer; entries beyond what is allowed are refused.

acceptance-assumed = **No published map of what a car’s battery accepts, over charge and temperature, was found.** The
    tables here are assumed, after the shape of a small cell’s data sheet and drivers’ reports: little below freezing,
    less the fuller the battery. There are three, low, mid and high, and the band runs over all of them. Below is the
    middle one: how many times an hour the battery could be filled at that rate. It is that of a battery which its motor
    could empty 2.3 times an hour; one that feeds a stronger motor for its size takes more, by the square root.

cycles-from = Speeds, second by second, from the regulations’ own tables, driven on a flat road.

changes-when = The version is raised whenever a number may change, and stands on every answer, file and link. A correction
    is named as one, with what it moved.

# $version: text
# $date: text
version-of = Model version { $version } of { $date }. Answers of another version may differ.

## What a table shows, for those who cannot see it

# $check: text
table-check = { $check }: what is published, what was found, and by how much it is off

# $car: text
table-figures = Assumed figures of the class { $car }: low, mid, high, kind and source

table-uses = Parts of the model and the figures of the car that each uses

table-cars = Wall energy of nine certified cars, published and found

table-ranges = Entries with their ordinary and their allowed range

table-acceptance = Charge rate accepted, by battery temperature and charge, middle table

table-grip = Friction coefficient of road surfaces: low, mid, high, kind and source

table-cycles = Standard cycles with regulation, length, time and stops

table-changes = Versions of the model with what each changed

## Columns and cells

# $low: text
# $high: text
# $mid: text
figure-band = { $low } to { $high }, mid { $mid }

# Where there is no room for the word; what the brackets hold is said above them.
# $low: text
# $high: text
# $mid: text
figure-band-in-short = { $low } to { $high } ({ $mid })

# In place of the model’s own scale.
figure-acceptance = from batteries that take little in the cold to those that take much

figure-yours = Yours: no band.

price-yours = Yours.

column-figure = Figure

column-low-to-high = Low to high

column-kind-and-source = Kind and source

column-part = Part of the model

column-uses = Figures of the car that it uses

column-version = Version

column-date = Date

column-kind = Kind

column-what = What

column-number = Number

column-published = Published

column-found = Found

column-off = Off by

found-reported = reported only

found-within = within

column-car = Car

# $car: text
# $id: text
car-and-id = { $id }, { $car }

# $cycle: one of city, highway
# $unit: text
column-car-published = { $cycle ->
    [city] City: published, { $unit }
   *[highway] Highway: published, { $unit }
}

# $cycle: one of city, highway
column-car-found = { $cycle ->
    [city] City: found
   *[highway] Highway: found
}

# $cycle: one of city, highway
column-car-error = { $cycle ->
    [city] City: error
   *[highway] Highway: error
}

column-entry = Entry

column-ordinary = Ordinary

column-allowed = Allowed

column-cycle = Cycle

column-regulation = Regulation

column-length = Length

column-time = Time

column-stops = Stops

column-surface = Surface

column-low = Low

column-mid = Mid

column-high = High

column-source = Source

# $unit: text
column-battery = Battery, { $unit }

# $charge: quantity in %
column-full = { $charge } full

# Which parts of the model read figures of the car.
# $module: one of wheels, air_and_tyres, warming_up, motor_and_gear, slowing_limits, grip, cells, charge_acceptance, pack_heat, cabin, engine, step, march, follow, friction_brakes, hybrid, savings, battery, drives, advice, grip_margin, emergency_stop, descent, winter, machine_map
model-part = { $module ->
    [wheels] What a moment asks of the wheels: inertia, rolling, air and slope.
    [air_and_tyres] What air and tyres do to a moving car.
    [warming_up] What is cold at the start and warms up on the way, and cools while the car stands: tyres, gear oil, bearings.
    [motor_and_gear] Motor, inverter and gear: limits and losses of one machine scaled to its rated power.
    [slowing_limits] Slowing: how much of it the motor may do, and which limit says so.
    [grip] Grip between tyres and road, and the weight that rests on the axles while slowing.
    [cells] The battery’s cells: voltage, resistance, what they give and lose for a power at the terminals.
    [charge_acceptance] How fast a battery may be charged, over its charge and its temperature.
    [pack_heat] The battery’s temperature: one lumped mass that its losses and its heater warm and the air cools.
    [cabin] Cabin heating and cooling: what it takes from the battery.
    [engine] A hybrid’s engine: what it gives in place of the battery, and what it takes of the slowing.
    [step] One moment of a drive: what the wheels ask, what the limits allow, what motor, battery and brakes do about it.
    [march] The march: one loop over the steps of a road with charge and battery temperature carried along, one over the
        cars.
    [follow] A trace the car can drive: where motor or battery cannot give what the trace asks, the car is slower.
    [friction_brakes] The friction brakes: how warm they get on descents and in repeated stops, and how little they are used.
    [hybrid] Hybrids: what regeneration saves in fuel, with a wide band, and the charge that the engine keeps.
    [savings] What regeneration saves: one drive with it and without it, and the shares that may be printed.
    [battery] The battery for many values at once: the door to its pointwise physics, and what the cold holds back of it.
    [drives] One door for the app and the command line: a scenario to its result, its band and its year.
    [advice] Which lift-off strength suits a drive, by a few ordered rules that are printed beside the answer.
    [grip_margin] Lift-off against grip: what the motor’s slowing asks of each axle, and what the road may give.
    [emergency_stop] An emergency stop on a given road, and standing still.
    [descent] Hills: what the way up takes and the way down gives, how much charge to leave free, what holds the car there.
    [winter] Winter: what a cold day takes from the user’s own drive, why lift-off fades, what warming up beforehand brings.
   *[machine_map] One electric machine in its four quadrants: how strong, how efficient, and where a drive uses it.
}
