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
    [display_km] the gain on the range display over each hundred kilometres
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
# $band: text
# $varied: text
claim-quotation-own = The claim “{ $claim }”, read as “{ $reading }”, { claim-verdict }: { $reason }. The model gives
    { $band }. { $varied } An estimate, not a measurement.
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

# Below a title that was made from the test.
# $words: text
own-words-changed = The words you pasted said “{ $words }”: changed since.


## Phrasing it on the page

own-row = Phrase a claim in your own words
own-group = As articles have them
own-title = A claim in your own words
own-heading = Your claim
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

reading-heading = What was read from these words, and what was not

# $part: one of quantity, relation, number, unit, season, road, condition, case
# $words: text
# $value: text
reading-found = { $part ->
    [quantity] “{ $words }”: what is counted is taken to be { $value }.
    [relation] “{ $words }”: the number is claimed as { $value }.
    [number] “{ $words }”: the number is { $value }.
    [unit] “{ $words }”: the unit is { $value }.
    [season] “{ $words }”: { $value }.
    [road] “{ $words }”: { $value }.
    [case] “{ $words }”: two cases are compared, which differ in this: { $value }. Its two figures may be ours; correct them.
   *[condition] “{ $words }”: { $value }.
}

# $words: list
reading-unused = Left aside, since one number is tested at a time: { $words }.

# $part: one of quantity, relation, number, unit, season, road
reading-part = { $part ->
    [quantity] what is counted
    [relation] whether the number is a least, an about or a most
    [number] the number
    [unit] its unit
    [season] the season
   *[road] the kind of road
}

# $parts: list
reading-missing = Not found, and not guessed: { $parts }.
