# A claim in somebody’s own words: what is counted, against what, where, and what the model cannot say.

# As a noun.
# $quantity: one of recovered, of_braking, range_gain, electric_braking, range_lost, of_climb, display_km, range, energy, cold, braking_work, works_after, slowing, charge_to_leave_free, in_a_stop, stability, brake_life
own-counted = { $quantity ->
    [recovered] the share of the battery’s output that is put back
    [of_braking] the share of the braking energy at the wheels that reaches the battery
    [range_gain] the extra range over the same speeds on friction brakes alone
    [electric_braking] the share of the braking energy at the wheels that the motor takes
    [range_lost] the energy saved by regeneration (the share of the range lost without it)
    [of_climb] the share of the climb’s energy that is put back on the descent
    [display_km] the gain on the range display (over each { QUANTITY(100, unit: "km") })
    [range] the range on a full battery
    [energy] the net energy used
    [cold] the range that cold takes from the same drive on a warm day
    [braking_work] the friction work that regeneration spares the brakes
    [works_after] the distance until the motor slows as usual
    [slowing] the deceleration when the foot comes up
    [charge_to_leave_free] the share of the battery that a descent fills
    [in_a_stop] the share of a stop’s braking energy that reaches the battery
    [stability] the share of the driven axle’s grip that a lift-off asks for
   *[brake_life] the friction work that regeneration spares the brakes
}

# $what: text
# $compared: one of more, less, of, times, difference
# $other: list
claim-compared = { $compared ->
    [more] the rise in { $what } over the same case with { $other }
    [less] the drop in { $what } from the same case with { $other }
    [of] { $what } as a share of that in the same case with { $other }
    [times] the ratio of { $what } to that in the same case with { $other }
   *[difference] { $what } less that in the same case with { $other }
}

# Without what sets the other case apart, as a condition.
claim-no-trailer = no trailer
claim-battery-car = a car that drives on its battery alone

# $place: one of town, country, motorway, mountain, test, winter, spring, summer, autumn
claim-place = { $place ->
    [town] in town
    [country] on country roads
    [motorway] on the motorway
    [mountain] in the mountains
    [test] on the test cycle
    [winter] in winter
    [spring] in spring
    [summer] in summer
   *[autumn] in autumn
}

# $beyond: one of stability, brake_life
claim-own-beyond = { $beyond ->
    [stability] whether a car stays stable depends on bends, tyres, slip control and the driver, and the model moves it
        along a straight road
   *[brake_life] how long brakes last also depends on rust, on pads and discs themselves and on when they are replaced, none
        of which is modelled
}

# To quote, with the claim and how it was read.
# $claim: text
# $reading: text
# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
# $reason: text
# $measured: text
# $band: text
# $varied: text
claim-quotation-own = By this model the claim “{ $claim }”, read as “{ $reading }”, { claim-verdict }. { $measured }
    { $reason }. The model gives { $band }. { $varied } An estimate, not a measurement.

# In a list to choose from.
# $quantity: one of recovered, of_braking, range_gain, electric_braking, range_lost, of_climb, display_km, range, energy, cold, braking_work, works_after, slowing, charge_to_leave_free, in_a_stop, stability, brake_life
own-counted-name = { $quantity ->
    [recovered] Recovered: of what the battery gave
    [of_braking] Recovered: of the braking energy, into the battery
    [range_gain] More range than on friction brakes only
    [electric_braking] Electric share of the braking energy
    [range_lost] Range lost without regeneration (energy saved)
    [of_climb] Recovered: of what a climb took
    [display_km] More on the range display
    [range] Range on a full battery
    [energy] Energy used
    [cold] Cost of the cold: range lost
    [braking_work] Braking work taken off the friction brakes
    [works_after] Distance until it works as usual
    [slowing] Deceleration with the foot up
    [charge_to_leave_free] Charge to leave free for a descent
    [in_a_stop] Recovered: of one stop’s braking energy
    [stability] Whether the car stays stable (cannot be tested)
   *[brake_life] How long the brakes last (cannot be tested)
}

# How a claim in own words was read, below its title.
# $reading: text
claim-read-as = Read as: { $reading }

# The same of a claim that the model cannot judge, with what it can give.
# $instead: text
claim-read-as-beyond = No energy model can judge this. { $instead } is what it can give.

# Below a title that was made from the test.
# $words: text
own-words-changed = The words you pasted said “{ $words }”: changed since.


## Phrasing it on the page

own-row = Phrase a claim in your own words
own-group = As articles have them
own-title = A claim in your own words
own-heading = Your claim
own-test = Test this claim
own-words-label = The claim, in your own words
own-words-such-as = Towing a caravan halves the range.
own-words-help = Paste a sentence: it is read by plain rules, and every part of the reading can be corrected below. Another
    sentence is read anew.
own-quantity-label = What is counted
own-relation-label = Claimed as
own-unit-label = Unit
own-choose = Choose
own-not-said = Not said

# $place: one of road, season
own-place-label = { $place ->
    [road] Road
   *[season] Season
}
own-against-label = Compared with the same case but for
own-against-none = Nothing: one case
own-against-help = Name what differs between the two cases, such as a trailer, the heater or the lift-off strength.

# $input: text
own-this-case = { $input }, in this case
own-other-case = In the other case

# $relation: one of at_least, about, at_most, up_to, on_average, between, always
own-relation = { $relation ->
    [at_least] at least
    [about] about
    [at_most] at most
    [up_to] up to
    [on_average] on average
    [between] between
   *[always] always at least
}

# $why: text
own-not-yet = Not tested yet. { $why }

## What was read from a sentence

reading-heading = How these words are read

# $part: one of quantity, relation, number, season, road, condition, case
# $words: text
# $value: text
# $assumed: yes or no
reading-found = { $part ->
    [quantity] “{ $words }”: what is counted is taken to be { $value }.
    [relation] { $assumed ->
        [yes] “{ $words }”: a bare number is taken to mean { $value } so much. At least, at most or up to can be chosen below.
       *[no] “{ $words }” is read as { $value }.
    }
    [number] “{ $words }” is read as { $value }.
    [season] “{ $words }”: { $value }.
    [road] “{ $words }”: { $value }.
    [case] { $assumed ->
        [yes] “{ $words }”: two cases are compared, { $value }. The figures are assumed; correct them below.
       *[no] “{ $words }”: two cases are compared, { $value }.
    }
   *[condition] { $assumed ->
        [yes] “{ $words }”: { $value }. This is assumed; correct it below.
       *[no] “{ $words }”: { $value }.
    }
}

reading-ceiling = “Up to” is read as a ceiling.

# A number of what the model cannot judge.
# $words: text
reading-not-judged = “{ $words }” is left aside: the model cannot judge it.

# $words: list
reading-unread = Left aside, since no rule here reads it: { $words }.

# $words: text
reading-quoted = “{ $words }”

# $here: text
# $other: text
reading-two = { $here } and { $other }

# $why: one of second, money, time, bare, down, unit, condition
# $words: text
# $unit: text
reading-aside = { $why ->
    [second] “{ $words }” is left aside: one number is tested at a time.
    [money] “{ $words }” is money, which no claim here counts, since prices differ. The energy used can be tested.
    [time] “{ $words }” is time, which no claim here counts.
    [bare] “{ $words }” stands without a unit, so it was not read.
    [down] “{ $words }” goes from one number down to another; say by how much, such as 25 % less.
    [unit] “{ $words }” is not in the unit of what is counted, { $unit }, so it was not read.
   *[condition] “{ $words }” is left aside: it is no condition of what is counted.
}

# $part: one of quantity, relation, number, unit, case
# $unit: one of percent, km, energy, slowing, other
# $filled: yes or no
reading-missing = { $filled ->
    [yes] { reading-not-said } It was put in below.
   *[no] { reading-not-said }
}

# $part: one of quantity, relation, number, unit, case
# $unit: one of percent, km, energy, slowing, other
reading-not-said = { $part ->
    [quantity] It does not say of what: which share, range or energy is meant.
    [relation] It does not say whether the number is a least, an about or a most.
    [number] { $unit ->
        [percent] It does not say how many per cent.
        [km] It does not say how far.
        [energy] It does not say how much energy.
        [slowing] It does not say how strongly the car slows.
       *[other] It does not say how much.
    }
    [case] It does not say compared with what. What differs between the two cases can be named below.
   *[unit] It does not say in which unit the number is.
}

# $part: one of season, road, speed_kmh
reading-open-part = { $part ->
    [season] in which season
    [road] on what kind of road
   *[speed_kmh] from what speed
}

# $parts: list
reading-open = It does not say { $parts }, so the test runs over all of it.

# What the model leaves out of it.
# $quantity: one of recovered, of_braking, range_gain, electric_braking, range_lost, of_climb, display_km, range, energy, cold, braking_work, works_after, slowing, charge_to_leave_free, in_a_stop, stability, brake_life
own-left-out = { $quantity ->
    [recovered] Slippery roads, and what the foot does otherwise without regeneration.
    [of_braking] Emergency stops and slippery roads, where the friction brakes do more.
    [range_gain] Slippery roads, and what the foot does otherwise without regeneration.
    [electric_braking] Emergency stops and slippery roads, where the friction brakes do more.
    [range_lost] Slippery roads, and drivers who would look farther ahead if nothing came back.
    [of_climb] Bends and stops on the way, where more is lost.
    [display_km] Displays that reckon with other drives than this one.
    [range] Ageing of the battery, and a reserve that the display keeps.
    [energy] What charging loses: the energy is counted at the battery.
    [cold] Energy that a cold battery keeps back at the end of its charge.
    [braking_work] Rust, and how pads wear with heat and speed: friction work is no life in kilometres.
    [works_after] Charge that the maker keeps free above a displayed 100 %, with which the motor slows at once. Where
        the motor does not come to slow as usual within { QUANTITY(30, unit: "km") }, these count as the distance.
    [slowing] Hills, and how the slowing builds up.
    [charge_to_leave_free] Bends and stops on the way, where more is lost.
    [in_a_stop] Hills and wind.
    [stability] Bends, slip control and what the driver does; a trailer.
   *[brake_life] Rust, and how pads wear with heat and speed: friction work is no life in kilometres.
}
