# The seven phrases for what comes back, and a range figure on its way to the road.

# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
phrase = { $phrase ->
    [recovered] recovered: of what the battery gave
    [of_braking] of the braking energy at the wheels, into the battery
    [of_climb] of what the climb took, back on the descent
    [range_gain] more range than on friction brakes only
    [electric_braking] of the braking energy, taken by the motor
    [range_lost] of the range, lost without regeneration (energy saved)
   *[display_km] more on the range display
}

# The same where it stands alone.
# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
phrase-name = { $phrase ->
    [recovered] Recovered: of what the battery gave
    [of_braking] Of the braking energy at the wheels, into the battery
    [of_climb] Of what the climb took, back on the descent
    [range_gain] More range than on friction brakes only
    [electric_braking] Of the braking energy, taken by the motor
    [range_lost] Of the range, lost without regeneration (energy saved)
   *[display_km] More on the range display
}

# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
phrase-quoted = “{ phrase }”

# What a number in the phrase says, behind the number.
# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
phrase-said = { $phrase ->
    [recovered] of what the battery gave comes back
    [of_braking] of the braking energy at the wheels reaches the battery
    [of_climb] of what the climb took comes back on the descent
    [range_gain] more range than on friction brakes only
    [electric_braking] of the braking energy at the wheels is taken by the motor
    [range_lost] of the range is lost when regeneration is gone (the same number as energy saved, s)
   *[display_km] more on the range display, if it reckons with this drive’s consumption
}

# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
phrase-formula = { $phrase ->
    [recovered] r = back / out
    [of_braking] back / braking
    [of_climb] back on descents / out on climbs; back on other road keeps its proportion
    [range_gain] s / (1 − s) = (back + spared) / (out − back)
    [electric_braking] (back / conversion) / braking, where conversion = back / electric on this drive
    [range_lost] s = 1 − net / friction-only net = (back + spared) / (out + spared)
   *[display_km] back / (net / distance)
}

# A claim's number as a share.

phrases-no-share = This number is no share of an energy: it compares two cases of the same thing, so none of the seven phrases
    below applies.

# Each from phrase-quoted.
# $phrases: list
phrases-may-mean = Seven phrases are in use for what comes back. Here the number can be meant as { $phrases }.
phrases-each-another = Each gives another number on the same drives.
phrases-shares-title = Meant as another share, the same drives give another number

# $claimed: text
phrases-shares-words = Thin strokes mark what was claimed: { $claimed }.

phrases-column-phrase = Phrase
phrases-column-formula = Formula
phrases-column-can-be-meant = Can be meant
phrases-column-number = Number
phrases-column-of-what = Of what

# $meant: yes or no
phrases-can-be-meant = { $meant ->
    [yes] yes
   *[no] no
}

# The converter.

converter-heading = One energy, seven phrases
converter-intro = What comes back on your drive is one energy; what it is a share of makes seven numbers of it. Say a number in
    one phrase, and read it in the others, for this car on this drive.
converter-nothing = On this drive nothing comes back, so there is nothing to convert.
converter-of-what = Of what
converter-own = As your drive has it, with every assumed figure at its middle.
converter-alt = One number in seven phrases
phrase-means-nothing = means nothing on this drive

# $least: text
converter-too-little = This would mean that less than nothing came back. On this drive the number must be at least { $least }.

# A published hill loop whose headline and energies do not agree.
# $mass: quantity in kg
# $up: quantity in kWh/100 km
# $up_number: number
# $down_number: number
# $mean: number
# $headline: share
# $own: share
# $needs: quantity in kWh/100 km
# $found: number
# $gain: share
# $source: text
hill-loop = **A worked example.** A car of { $mass } was driven up a pass road and down again on a dynamometer. Published: { $up }
    up, { $down_number } back on the way down, { $mean } on average, and a headline of { $headline } recovered. As a share of what the
    climb took the two energies make { $down_number } / { $up_number } = { $own }; for the headline, { $needs } would have had to
    come back. The average agrees with the two energies: ({ $up_number } − { $down_number }) / 2 = { $found }. So the headline
    seems to be a share of something else, which was not said. The same two energies as a gain in range: { $gain }. Source:
    { $source }.

# A printed range on its way to the road.

road-heading = From the test cycle to the road

# $unit: text
road-printed-range = Printed range, { $unit }
road-on-which-test = On which test
# $range: quantity in km
road-until-entered = Nothing has been entered yet. Until then this starts from what the model gives such a car on this
    test, { $range }.

# $test: quantity in km
# $road: span in km
road-title = { $test } on the test, { $road } on your drive

# $printed: yes or no
# $kept: share
# $less: yes or no
# $cars: count
road-words = { $printed ->
    [yes] The printed figure stays as it is; only the ratio of consumptions is the model’s.
   *[no] Each car starts from its own range on the test, and ends where “Your drive” says that a full battery reaches.
} { $less ->
    [yes] { $kept } of it is left with every assumed figure at its middle
   *[no] { $kept } of it is reached, which is no less than on the test, with every assumed figure at its middle
}; the bands are of { $cars } sampled cars.

# $reached: span in km
# $other: yes or no
road-beside = “Your drive” says { $reached } on a full battery: { $other ->
    [yes] it goes by another printed range, the one that was entered of the car.
   *[no] it knows nothing of this printed range, which narrows down what the car may use. Entered under “My car”, it counts
        there too.
}

# $step: one of speeds, hills, load, weather, cabin
# $cost: span in km
road-largest-cost = The largest cost is { road-step }: { $cost }.
road-order-matters = What a step costs depends on the order in which they are taken.

# $step: one of speeds, hills, load, weather, cabin
road-step = { $step ->
    [speeds] your speeds and stops, on flat road
    [hills] your hills
    [load] your load
    [weather] your weather and road
   *[cabin] heating and cooling
}

road-column-step = Step

# $point: one of low, middle, high
# $unit: text
road-column-costs = { $point ->
    [low] Costs low, { $unit }
    [middle] Costs middle, { $unit }
   *[high] Costs high, { $unit }
}

# $point: one of low, middle, high
# $unit: text
road-column-range = { $point ->
    [low] Range low, { $unit }
    [middle] Range middle, { $unit }
   *[high] Range high, { $unit }
}

# The picture of the way to the road.

# $on: text
# $printed: quantity in km
# $entered: yes or no
road-row-printed = { $entered ->
    [yes] Printed
   *[no] By the model, nothing entered
}, { $on }: { $printed }

# $step: one of speeds, hills, load, weather, cabin
road-row-nothing = { road-row-step }: changes nothing

# $step: one of speeds, hills, load, weather, cabin
# $change: one of less, more
# $cost: quantity in km
road-row-changes = { road-row-step }: { $cost } { $change ->
    [less] less
   *[more] more
}

# $step: one of speeds, hills, load, weather, cabin
# $change: one of less, more
# $cost: quantity in km
# $least: number
# $most: number
road-row-changes-band = { road-row-step }: { $cost } { $change ->
    [less] less
   *[more] more
} ({ $least } to { $most })

# $step: one of speeds, hills, load, weather, cabin
road-row-step = { $step ->
    [speeds] Your speeds and stops, flat road
    [hills] Your hills
    [load] Your load
    [weather] Your weather and road
   *[cabin] Heating and cooling
}

# $band: span in km
# $middle: quantity in km
road-row-own = On your drive: { $band }, middle { $middle }
