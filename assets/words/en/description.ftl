# The drive as it is described: car, road, day, pedal, habits.

## The car

# $car: text
car-adjusted = { $car }, adjusted

# $pedal: one of blended, friction
brake-pedal = { $pedal ->
    [blended] blended brake pedal
   *[friction] friction-only brake pedal
}

## The road

# $length: quantity in km
drive-of-length = drive of { $length }

# A starting drive goes by its name, one of the reader’s own by its length.
# $car: text
# $drive: text
# $named: yes or no
car-on-drive = { $named ->
    [yes] { $car } on the { $drive }
   *[no] { $car } on a { $drive }
}

# $distance: quantity in km
# $speed: quantity in km/h
leg-road = { $distance } at { $speed }

# $stops: count
leg-with-stops = { $stops ->
    [one] { $stops } stop
   *[other] { $stops } stops
}

# $slow_downs: count
leg-slow-downs = { $slow_downs ->
    [one] { $slow_downs } slow-down
   *[other] { $slow_downs } slow-downs
}

leg-without-stops = nothing in the way

# $height: quantity in m
leg-climb = { $height } up

# $height: quantity in m
leg-descent = { $height } down

# $length: quantity in km
hill-all-the-way = All the way: { $length }.

# $length: quantity in km
# $rest: quantity in km
hill-on-part = Hill on { $length } of the leg; the other { $rest } are flat.

# The way back, after the car has stood for so long.
way-back-at-once = at once

# $stands: quantity in h
# $plugged: yes or no
way-back-after = { $plugged ->
    [yes] after { $stands }, plugged in
   *[no] after { $stands }
}

## The day

# $season: one of winter, spring, summer, autumn
season-name = { $season ->
    [winter] winter
    [spring] spring
    [summer] summer
   *[autumn] autumn
}

# Warmed up before leaving.
# $plugged: yes or no
start-warmed = { $plugged ->
    [yes] warmed while plugged in
   *[no] warmed from the battery
}

cabin-off = cabin off

# $day: text
# $season: yes or no
day-shown = { $season ->
    [yes] a day in { $day }
   *[no] a day of { $day }
}

# $air: quantity in °C
# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
winter-day-of-year = { $surface ->
    [dry] the year’s winter day, { $air }
    [wet] the year’s winter day, { $air }, wet
    [standing-water] the year’s winter day, { $air }, standing water
    [snow] the year’s winter day, { $air }, snow
    [ice] the year’s winter day, { $air }, ice
   *[glazed-ice] the year’s winter day, { $air }, glazed ice
}

## The driver

habits-as-usual = habits as usual

# $mass: quantity in kg
habits-load = { $mass } load

# $mass: quantity in kg
habits-trailer = { $mass } trailer

# $charge: share
habits-charge = charged to { $charge }

# The numbers behind the words of the habits.
# $slowing: quantity in m/s²
habit-slowing-number = { $slowing } at the hardest moment of a stop

# $rate: quantity in m/s²
habit-pulling-number = { $rate } at the hardest moment of pulling away

# $swing: share
# $deeper: share
# $also: yes or no
habit-swing-number = { $also ->
    [yes] speed swings up and down by { $swing }, and slow-downs go { $deeper } deeper than needed
   *[no] speed swings up and down by { $swing }
}

# $speed: quantity in km/h
brake-pedal-help = **Blended:** press the brake pedal and the motor slows the car first and charges the battery; the
    discs help when more is asked. Most recent electric cars and nearly all hybrids are like this.

    {""}**Friction-only:** the pedal works the discs alone. The motor slows the car only when the foot comes off the
    accelerator.

    {""}**How can I tell?** Where the road is clear, brake gently from { $speed } and have a passenger watch the display of
    power or charge. If more goes into the battery as the pedal is pressed, the pedal is blended; if pressing changes
    nothing, it is friction-only. The owner’s manual says which.

## What is known of a figure

# $band: text
# $known: text
provenance-with-band = { $band }. { $known }

# Where there is no room for reasons.
# $kind: one of assumed, common-practice
provenance-in-short = { $kind ->
    [common-practice] Common practice, no source.
   *[assumed] Assumed.
}

# $kind: one of published, assumed, common-practice
# $source: text
provenance = { $kind ->
    [published] Published
    [assumed] Assumed
   *[common-practice] Common practice
}: { $source }.
