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
    [energy] the energy used, net of what comes back
    [cold] the range lost against the same drive on a warm, dry day
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
    [more] the rise in { $what }, over the same case with { $other },
    [less] the drop in { $what }, from the same case with { $other },
    [of] { $what }, as a share of that in the same case with { $other },
    [times] the ratio of { $what } to that in the same case with { $other }
   *[difference] { $what }, less that in the same case with { $other },
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
# $verdict: one of holds, conditions, false, not-as-said, unjudged, beyond
# $reason: text
# $band: text
# $varied: text
claim-quotation-own = The claim “{ $claim }”, read as “{ $reading }”, { claim-verdict }: { $reason }. The model gives
    { $band }. { $varied } An estimate, not a measurement.
