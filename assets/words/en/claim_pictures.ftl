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

# $claimed: text
# $empty: yes or no
claim-grid-words = { $empty ->
    [yes] In each field: the middle of what the model gives there; the stronger its shade, the more of it is { $claimed }. Empty fields
        hold no run.
   *[no] In each field: the middle of what the model gives there; the stronger its shade, the more of it is { $claimed }.
}

# $most: list
# $highest: text
# $least: list
# $lowest: text
claim-grid-alt = The claim is true most often with { $most }, where the middle is { $highest }; least often with { $least },
    where it is { $lowest }.

# $why: one of nothing-moves-it, never, everywhere
claim-no-grid = { $why ->
    [nothing-moves-it] Nothing that was drawn changes this number.
    [never] Nothing that was drawn: no run makes it true.
   *[everywhere] Hardly anything: whatever was drawn, it is true nearly everywhere.
}

# One input at a time.
# $input: text
claim-tornado-title = { $input } moves the number most

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
