# The cold battery.

cold-heading = When the battery is cold

cold-days = A day in winter

# $air: quantity in °C
# $winter: yes or no
cold-day = { $winter ->
    [yes] Winter day, { $air }
   *[no] { $air }
}

cold-nothing-to-recover = There is nothing to recover on this drive, so the battery has nothing to hold back.

# $battery: quantity in °C
# $charge: share
# $lasts: one of never, first, always
# $minutes: count
# $km: text
cold-slowing = With the battery at { $battery } and { $charge } charge, { $lasts ->
    [never] the motor slows the car as usual from the start.
    [always] motor slowing stays weaker than usual all the way.
   *[first] motor slowing is weaker than usual for the first { $minutes ->
        [one] minute, { $km }.
       *[other] { $minutes } minutes, { $km }.
    }
}

# With a battery that takes much in the cold, and with one that takes little.
# $most: one of never, first, always
# $most_minutes: count
# $most_km: text
# $least: one of never, first, always
# $least_minutes: count
# $least_km: text
cold-batteries-differ = Batteries differ: with one that takes much in the cold, motor slowing { $most ->
    [never] is as usual from the start
    [always] stays weaker on this drive
   *[first] is as usual after { $most_minutes ->
        [one] { $most_minutes } minute, { $most_km }
       *[other] { $most_minutes } minutes, { $most_km }
    }
}; with one that takes little, it { $least ->
    [never] is as usual from the start
    [always] stays weaker on this drive
   *[first] is as usual after { $least_minutes ->
        [one] { $least_minutes } minute, { $least_km }
       *[other] { $least_minutes } minutes, { $least_km }
    }
}.

# $lasts: one of never, first, always
# $minutes: count
# $km: text
cold-batteries-alike = Whether the battery takes much or little in the cold, motor slowing { $lasts ->
    [never] is as usual from the start
    [always] stays weaker on this drive
   *[first] is as usual after { $minutes ->
        [one] { $minutes } minute, { $km }
       *[other] { $minutes } minutes, { $km }
    }
}.

cold-charge-leaves-little-room = It is the charge that leaves little room, not the cold.

# $surface: one of snow, ice, glazed-ice
cold-usual-on-this-road = “As usual” means as strong as the grip allows { $surface ->
    [snow] on packed snow
    [ice] on ice
   *[glazed-ice] on glazed ice
}, where the motor slows the car less anyway.

# What it comes to.

cold-taken = The battery can take

# Where all batteries of the band take as much.
# $ordinary: quantity in kW
# $battery: quantity in °C
# $charge: share
cold-taken-beside = at the start, at { $battery } and { $charge } charge; ordinary slow-downs of this drive put { $ordinary } into
    it

# $least: number
# $most: quantity in kW
# $ordinary: quantity in kW
# $battery: quantity in °C
# $charge: share
cold-taken-differs = at the start, at { $battery } and { $charge } charge; { $least } to { $most }, depending on the battery;
    ordinary slow-downs of this drive put { $ordinary } into it

# $season: one of winter, spring, summer, autumn, other
cold-season-takes = { $season ->
    [winter] Winter takes
    [spring] Spring takes
    [summer] Summer takes
    [autumn] Autumn takes
   *[other] This weather takes
}

# $mild: quantity in °C
# $part: one of cabin, heater, tyres, air, braking, rest
# $energy: quantity in kWh
cold-season-than = than a dry day at { $mild } on this drive; { season-part } { $energy }

# $part: one of cabin, heater, tyres, air, braking, rest
season-part = { $part ->
    [cabin] cabin
    [heater] battery heater
    [tyres] tyres, snow and water
    [air] denser air
    [braking] braking not recovered
   *[rest] motor, gear and rest
}

cold-range = Range

# $shorter: yes or no
# $share: share
cold-range-change = { $shorter ->
    [yes] −{ $share }
   *[no] +{ $share }
}

# $range: quantity in km
# $mild: quantity in km
cold-range-beside = { $range } instead of { $mild }, with every assumed figure at its middle, over many such drives, each
    starting as this one does

cold-warmed-up = Warmed up first
cold-nothing-to-gain = nothing to gain
cold-warm-as-it-is = battery and cabin are warm as it is

# $heating: quantity in kWh
# $braking: quantity in kWh
# $discs: one of less, more
# $battery: quantity in kWh
# $cabin: quantity in kWh
# $plugged: yes or no
# $share: share
cold-warm-up-brings = on the drive: { $heating } in heating, and { $discs ->
    [more] { $braking } more in braking for the discs, since the engine keeps up the charge
   *[less] { $braking } in braking that the discs no longer do
}. It costs { $battery } for the battery and { $cabin } for the cabin, { $plugged ->
    [yes] from the wall
   *[no] from the battery, { $share } of it
}

# What helps.

# $saved: quantity in kWh
# $costs: quantity in kWh
# $plugged: yes or no
cold-warm-up-pays = **Warm the car up before leaving**: { $saved } less on this drive, for { $costs } { $plugged ->
    [yes] from the wall
   *[no] from the battery
}.

# $spared: quantity in kWh
# $costs: quantity in kWh
# $plugged: yes or no
cold-warm-up-does-not-pay = **Warming up before leaving does not pay in energy**: it costs { $costs } { $plugged ->
    [yes] from the wall
   *[no] from the battery
} and spares { $spared } on this drive. It is for warmth, and for motor slowing as usual from the start.

# Degrees apart, not a temperature.
# $degrees: quantity in °
# $saved: quantity in kWh
cold-heater-lower = **Set the heater { $degrees } lower**: { $saved } less on this drive.

# $warmth: quantity in °C
# $saved: quantity in kWh
cold-park-warmer = **Park where it is warmer**, at { $warmth }, say: { $saved } less on this drive.

# $degrees: quantity in °
# $saved: quantity in kWh
cold-charge-late = **Charge just before leaving** rather than the evening before: { $saved } less on this drive, if that
    leaves the battery { $degrees } warmer (assumed).

# What to mind.

cold-mind-feel = **The change of feel is the hazard**, more than the energy: motor slowing may come back from one
    slow-down to the next. Weak lift-off on a frosty morning is no fault; the owner’s manual says what your car shows and
    does then.

cold-mind-assumed = **No published map of what a car’s battery takes by temperature and charge was found.** The three
    behind this are assumed; their shape is that of small cells’ data sheets. “Adjust the car” on the first page, under
    Battery, moves between them.

# The map of charge acceptance.

# $lasts: one of never, first, always
# $minutes: count
cold-map-title = { $lasts ->
    [never] From the start the battery takes what slow-downs give
    [always] All along this drive the battery holds back
   *[first] After { $minutes ->
        [one] { $minutes } minute
       *[other] { $minutes } minutes
    } the battery takes what slow-downs give
}

# $ordinary: quantity in kW
cold-map-words = Across: battery temperature. Upwards: charge. Figures are what a middle battery can take. Strong
    blue: every battery of the band takes the { $ordinary } of ordinary slow-downs. Faint: some do, the middle one from the
    dashed line on. From the dot on: your drive.

cold-zone-weaker = weaker
cold-zone-differs = batteries differ
cold-zone-usual = as usual
cold-start = start
cold-end = end

cold-column-battery = Battery

# $level: text
cold-column-up-to-charge = { $level }: up to charge, %

# Why lift-off fades.

# $speed: quantity in km/h
fade-usual = As usual, at { $speed }

# $speed: quantity in km/h
fade-slow = Near walking pace, at { $speed }
fade-full = Full battery

# $warmth: quantity in °C
fade-cold = Cold battery, { $warmth }

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
fade-slippery = Slippery road, { road-name }

fade-because-slow = Near walking pace the motor hands over to the discs.
fade-because-full = A full battery has no room.
fade-because-cold = A cold battery takes little.
fade-because-slippery = On a slippery road, here of middle grip, slip control takes a part away: what is left is nothing to count on.

# $asked: quantity in m/s²
# $least: quantity in m/s²
fade-title = The same lift-off of { $asked } may shrink to { $least }

# $asked: quantity in m/s²
fade-title-gentle = So gentle a lift-off, { $asked }, does not fade

fade-drawn = Grey is slowing by air and tyres, blue by the motor; the outline is what was asked for.

fade-column-lift-off = Lift-off

# $unit: text
fade-column-asked = Asked, { $unit }

# $unit: text
fade-column-motor = Motor, { $unit }

# $unit: text
fade-column-rolling = Air and tyres, { $unit }

# What the season takes.

# $mild: quantity in °C
season-title-alike = This drive takes as much as on a dry day at { $mild }

# $warmth: quantity in °C
# $energy: quantity in kWh
# $part: one of cabin, heater, tyres, air, braking, rest
season-title-more = At { $warmth } this drive takes { $energy } more, most of it for { $part ->
    [cabin] the cabin
    [heater] the battery’s heater
    [tyres] tyres, snow and water
    [air] denser air
    [braking] lost braking
   *[rest] motor and gear
}

# $warmth: quantity in °C
# $energy: quantity in kWh
# $part: one of cabin, heater, tyres, air, braking, rest
season-title-less = At { $warmth } this drive takes { $energy } less, most of it for { $part ->
    [cabin] the cabin
    [heater] the battery’s heater
    [tyres] tyres, snow and water
    [air] the air, which is thinner
    [braking] braking that is not lost
   *[rest] motor and gear
}

# $mild: quantity in °C
season-against = Against a dry day at { $mild }, by the books of both drives.

# $less: yes or no
season-heating-hides = Heating also makes the share that regeneration saves look smaller: more is taken, while { $less ->
    [yes] less
   *[no] as much
} comes back.

season-column-part = Part
season-column-more = More, kWh

# Published figures beside this drive's own.

cold-published-title = Published figures disagree, and both can be right

# $at: quantity in °C
cold-published-stand = 12 % less range at { $at } with the heater off, 41 % less with heating on
cold-published-stand-ground = mean of five cars on a test stand, a long run
cold-published-trips = up to 31.9 % of range lost by heating, up to 21.7 % by limited regeneration
cold-published-trips-ground = more than 125 trips of two cars
cold-published-read = A long run on a test stand warms the battery and spreads the first heating over a
    long way; a short cold drive does neither.

cold-own-drive = This model, your drive

# $share: share
# $less: yes or no
cold-own-range = { $share } { $less ->
    [yes] less
   *[no] more
} range

# $at: quantity in °C
# $mild: quantity in °C
cold-own-ground = at { $at }, heating as you set it, against a dry day at { $mild }
