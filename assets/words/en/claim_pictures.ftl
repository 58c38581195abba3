# Pictures of a tested claim, their titles, and what they say to whoever does not see them.

# The pile of all runs: what its dark and its pale part are, and the rows below it.
claim-runs-otherwise = otherwise

# $band: text
claim-runs-model = The model: { $band }

# $number: text
claim-runs-claimed = claimed: { $number }

# The two inputs that matter most.
# $down: text
# $across: text
claim-grid-title = It depends most on { $down } and on { $across }

# $down: text
# $across: text
claim-grid-inputs = { $down }, by { $across }

# $given: text
# $dark: yes or no
claim-grid-words = In each field: the middle of what the model gives there. The { $dark ->
    [yes] brighter
   *[no] darker
} the field, the more runs { $given }.

claim-grid-empty = Empty fields hold no run.

# What runs do that make a claim true.
# $relation: one of at_least, at_most, zero-or-more, zero-or-less, up_to, between
# $number: text
# $low: text
# $high: text
claim-grid-runs = { $relation ->
    [at_least] reach at least { $number }
    [at_most] stay at or below { $number }
    [up_to] stay at or below { $number }
    [zero-or-more] are not below zero
    [zero-or-less] are not above zero
   *[between] lie between { $low } and { $high }
}

# $most: list
# $highest: text
# $least: list
# $lowest: text
claim-grid-alt = The claim is true most often with { $most }, where the middle is { $highest }; least often with { $least },
    where it is { $lowest }.

# $why: one of nothing-moves-it, never, by-chance, everywhere
claim-no-grid = { $why ->
    [nothing-moves-it] Nothing that was varied changes this number.
    [never] Nothing that was varied: it holds in no run.
   [by-chance] No single thing that was varied stands out of chance.
   *[everywhere] Almost nothing: it holds in nearly every run.
}

# $input: text
claim-grid-of-one = Of all that was varied only { $input } stands out of chance.

# One input at a time.
# $input: text
claim-tornado-title = What matters most: { $input }

claim-tornado-words = One input after the other goes to the ends of its range; the others stay as in the base case, at their
    first or mid value.

# $number: text
claim-tornado-base = the base case, { $number }

# $number: text
claim-tornado-claimed = claimed, { $number }

# $number: text
# $at: text
claim-swing-end = { $number } { $at }

# $input: text
# $low: text
# $at_low: text
# $high: text
# $at_high: text
claim-tornado-alt = { $input }: { $low } { $at_low }, { $high } { $at_high }.

claim-tornado-input = Input
claim-tornado-lowest = Lowest
claim-tornado-lowest-is = Lowest is
claim-tornado-highest = Highest
claim-tornado-highest-is = Highest is

# The number meant as another share, below the phrase.
# $band: text
# $verdict: text
claim-share-found = { $band }: { $verdict }

# How it was tested, as the first part of a paragraph.
# $runs: count
# $together: list
# $lead: text
# $seed: text
claim-method-note = { $runs } runs of an energy model of the car, one for each draw of what was not said and of the
    car’s assumed figures ({ claim-method-draw }; { $together } rise with { $lead }; seed { $seed }). The band is what lies
    between the lowest and the highest 5 % of the runs.

# $earlier: text
# $now: text
claim-moved = When the link was made the model gave { $earlier }; now it gives { $now }.

# The list of claims.
# $group: one of range, braking, foot, car, cold
claim-group = { $group ->
    [range] Range and what comes back
    [braking] Speed and braking
    [foot] The foot
    [car] The car
   *[cold] Cold and motorway
}
