# Up to three drives side by side: what differs, by how much, and whether that exceeds the uncertainty.

## What differs

# $subject: one of car, season, lift_off_mps2, brake_pedal, looks_ahead, pull_away, steady_foot, surface, cabin, preconditioned, soc_start, payload_kg, trailer_kg
compare-subject = { $subject ->
    [car] Car
    [season] Season
    [lift_off_mps2] Lift-off strength
    [brake_pedal] Brake pedal
    [looks_ahead] Slowing down
    [pull_away] Pulling away
    [steady_foot] Holding speed
    [surface] Road surface
    [cabin] Cabin heating and cooling
    [soc_start] Charge at the start
    [payload_kg] Load
    [trailer_kg] Trailer
   *[preconditioned] Start
}

# $mass: quantity in kg
# $any: yes or no
compare-load = { $any ->
    [yes] a load of { $mass }
   *[no] no load
}

# $mass: quantity in kg
# $any: yes or no
compare-trailer = { $any ->
    [yes] a trailer of { $mass }
   *[no] no trailer
}

# $name: text
# $season: text
compare-and-season = { $name }, { $season }

compare-others-season = And the others on another day

compare-same-day = the same day

compare-keep = Keep this car

compare-keep-help = Then choose or enter another on the first page; the car you kept is offered here beside it.

# $car: text
compare-kept = the car you kept ({ $car })

# A car, a pedal or a road within a sentence.
# $name: text
compare-one = a { $name }

# What a drive is called where it differs from others in that.
# $season: one of winter, spring, summer, autumn
# $air: quantity in °C
compare-season = { $season ->
    [winter] winter, { $air }
    [spring] spring, { $air }
    [summer] summer, { $air }
   *[autumn] autumn, { $air }
}

compare-strengths-of-legs = a strength for each leg

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
compare-surface = { $surface ->
    [dry] dry road
    [wet] wet road
    [standing-water] road with standing water
    [snow] road under snow
    [ice] road under ice
   *[glazed-ice] road under glazed ice
}

# $on: yes or no
compare-cabin = { $on ->
    [yes] cabin on
   *[no] cabin off
}

# $warmed: yes or no
compare-warmed = { $warmed ->
    [yes] warmed up before leaving
   *[no] not warmed up before leaving
}

## The finding

# $name: text
# $first: text
compare-as-much = { $name } takes as much as { $first }

# $name: text
# $first: text
# $difference: span in kWh
# $more: yes or no
compare-takes = { $more ->
    [yes] { $name } takes { $difference } more than { $first }
   *[no] { $name } takes { $difference } less than { $first }
}

# $name: text
# $first: text
# $less: quantity in kWh
# $more: quantity in kWh
compare-either-way = { $name } takes { $less } less to { $more } more than { $first }

compare-alike = That is no difference to speak of.

# $cars: count
compare-exceeds = The difference **exceeds the uncertainty**: it points the same way in at least { $cars } of 100 sampled
    cars.

compare-open = The difference **does not exceed the uncertainty**: the assumptions leave open which of the two takes less.

# $first: text
compare-same-share = Regeneration saves the same share of energy as with { $first }.

# $points: span in points
compare-share-open = The share that regeneration saves differs by { $points }: too little to tell.

# Where the least rounds to nothing.
# $most: quantity in points
compare-points-up-to = up to { $most }

# $points: text
# $higher: yes or no
compare-share = { $higher ->
    [yes] The share that regeneration saves is { $points } higher.
   *[no] The share that regeneration saves is { $points } lower.
}

# $points: text
compare-share-and-more = The share that regeneration saves is { $points } higher: a larger share saved, and still more
    taken.

# $time: quantity in min
# $longer: yes or no
compare-time = { $longer ->
    [yes] It takes { $time } longer.
   *[no] It takes { $time } less.
}

# $name: text
# $sentences: text
compare-told = **{ $name }.** { $sentences }

compare-engine = What a hybrid’s engine gives in place of its battery is counted as taken from the battery; the fuel burned
    for it holds several times as much energy, and is not counted.

## The picture

# $taken: span in kWh
# $saved: span in kWh
compare-line = takes { $taken }, regeneration saves { $saved }

compare-key = grey: taken · dashed: saved · line: band of what is taken

# $first: text
compare-more-or-less = More or less than { $first }, on a larger scale

# $name: text
# $difference: span in kWh
compare-difference = { $name }: { $difference }

compare-less = takes less

compare-more = takes more

## The table and the file

# $figure: one of net_kwh, saved_kwh, saved_share, friction_kwh, duration_s
compare-figure = { $figure ->
    [net_kwh] Taken from the battery, kWh
    [saved_kwh] Saved by regeneration, kWh
    [saved_share] Energy saved, % of the drive on friction brakes only
    [friction_kwh] Heat in the friction brakes, kWh
   *[duration_s] Time, min
}

# $value: text
# $difference: numbers
compare-cell = { $value } ({ $difference })

# $name: text
# $first: text
compare-less-first = { $name } less { $first }

## The page

compare-what = What differs

# $yours: text
compare-beside = Beside yours, { $yours }: one or two of these

compare-speeds = Speeds

# $driven: yes or no
compare-speeds-option = { $driven ->
    [yes] As you would drive it
   *[no] Same speeds
}

compare-speeds-help = Same speeds: what the car changes. As you would drive it: slow-downs as lift-off makes them, which is
    what the foot changes.

# A drive that cannot be driven, and why.
# $name: text
# $refusal: text
compare-refused = { $name }: { $refusal }

# $name: text
compare-yours = yours, { $name }

# $low: number
# $high: quantity in %
# $cars: count
compare-bands = Each figure is the band from { $low } to { $high } of { $cars } sampled cars; in brackets, how much
    more or less that is than yours. What is assumed alike of both drives is drawn once for both, so the band of a
    difference is narrower than the bands beside it suggest. What belongs to one class of car is drawn apart.

compare-figures = All figures, and how sure they are

compare-pick = Pick one or two above, and they are set beside yours.

# What a link says and cannot be used.
# $given: text
# $known: list
compare-no-subject = What differs: “{ $given }” is not one of { $known }. The season was taken instead.

# $what: text
# $given: text
# $known: list
compare-no-value = { $what }: “{ $given }” is not one of { $known }. It was left out.
