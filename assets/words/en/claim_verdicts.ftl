# A tested claim: the verdict, why, and the rule it goes by. `$where` is what was said, with its comma, or nothing; `$what`
# is the claim’s number as a noun, `$claimed` what is claimed of it.

# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
claim-verdict = { $verdict ->
    [holds] holds broadly
    [conditions] holds only under conditions
    [false] does not hold in the modelled range
    [not-as-said] does not hold as said
    [unjudged] cannot be judged from what was said
    [close] is too close to call
   *[beyond] cannot be judged by an energy model
}

# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
claim-heading = By the model this claim { claim-verdict }.

claim-heading-beyond = An energy model cannot judge this claim.

# The same where what is so lies above what was claimed.
# $by: one of runs, top, mean
# $given: text
claim-heading-too-low = { $by ->
    [runs] By the model this is too low: it gives { $given }.
    [top] By the model this is too low: it reaches { $given }.
   *[mean] By the model this is too low: on average it gives { $given }.
}

# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
# $measured: text
# $reason: text
# $band: text
# $varied: text
claim-sentence = By the model this claim { claim-verdict }. { $measured } { $reason }. The model gives { $band }. { $varied }
    An estimate, not a measurement.

# Of a claim that no model of energy can judge nothing is said but why, and what the model can give beside it.
# $reason: text
# $varied: text
claim-sentence-beyond = An energy model cannot judge this claim. { $reason }. { $varied } An estimate, not a measurement.

# $claim: text
# $quoted: yes or no
# $reason: text
# $varied: text
claim-quotation-beyond = { $quoted ->
    [yes] An energy model cannot judge the claim “{ $claim }”. { $reason }. { $varied } An estimate, not a measurement.
   *[no] An energy model cannot judge a claim about this. { $reason }. { $varied } An estimate, not a measurement.
}

# To quote, with the claim, which is without its full stop: as it was made, or in words made from the test.
# $claim: text
# $quoted: yes or no
# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
# $measured: text
# $reason: text
# $band: text
# $varied: text
claim-quotation = { $quoted ->
    [yes] By this model the claim “{ $claim }” { claim-verdict }. { $measured } { $reason }. The model gives { $band }.
        { $varied } An estimate, not a measurement.
   *[no] What was tested: { $claim }. By this model it { claim-verdict }. { $measured } { $reason }. The model gives
        { $band }. { $varied } An estimate, not a measurement.
}

claim-subject-on-page = it is true
claim-subject-read = this is so

# $what: text
# $claimed: text
claim-subject = { $what } is { $claimed }

# What is tested, as a sentence.
# $where: text
# $what: text
# $claimed: text
claim-made = { $where }{ $what } is { $claimed }.

# What the model can give beside a claim that it cannot judge.
# $where: text
# $what: text
claim-made-beyond = { $where }{ $what }.

# What the runs give of it, as a title.
# $where: text
# $what: text
# $band: text
claim-finding = { $where }{ $what }: { $band }

# What is claimed of the number. `$high` has the unit, `$low` has none.
# $relation: one of at_least, about, at_most, up_to, on_average, between, zero-or-more, zero-or-less
# $always: yes or no
# $number: text
# $low: text
# $high: text
claim-claimed = { $relation ->
    [about] { $always ->
        [yes] always about { $number } ({ $low } to { $high })
       *[no] about { $number } ({ $low } to { $high })
    }
    [on_average] { $always ->
        [yes] always on average about { $number } ({ $low } to { $high })
       *[no] on average about { $number } ({ $low } to { $high })
    }
    [at_most] { $always ->
        [yes] always at most { $number }
       *[no] at most { $number }
    }
    [up_to] { $always ->
        [yes] always up to { $number }
       *[no] up to { $number }
    }
    [zero-or-more] { $always ->
        [yes] always zero or more
       *[no] zero or more
    }
    [zero-or-less] { $always ->
        [yes] always zero or less
       *[no] zero or less
    }
    [between] between { $low } and { $high }
   *[at_least] { $always ->
        [yes] always at least { $number }
       *[no] at least { $number }
    }
}

# What was said, before a sentence.
# $named: one of places, conditions, both
# $places: list
# $conditions: list
claim-where = { $named ->
    [places] { $places },
    [conditions] with { $conditions },
   *[both] { $places }, with { $conditions },
}

# The middle of the runs beside where they lie.
# $span: text
# $median: text
claim-band = { $span }, with a median of { $median }

## Why

# $often: one of never, at-the-edge, partly, always, nearly-always, mostly
# $nearest: text
claim-how-often = { $often ->
    [never] in no run: { $nearest }
    [at-the-edge] only at the edge of what was varied: { $nearest }
    [partly] in part of what was varied
    [always] in every run
    [nearly-always] in nearly all of what was varied
   *[mostly] in most of what was varied
}

# $given: text
# $relation: one of at_least, at_most, other
claim-nearest = { $relation ->
    [at_least] the highest gives { $given }
    [at_most] the lowest gives { $given }
   *[other] the runs give { $given }
}

# $where: text
# $subject: text
# $often: one of never, at-the-edge, partly, always, nearly-always, mostly
# $nearest: text
claim-reason = { $where }{ $subject } { claim-how-often }

# $beyond: text
# $instead: text
# $band: text
claim-reason-beyond = { $beyond }. { $instead } is what the model can give: { $band }

# $where: text
# $what: text
# $found: text
claim-reason-mean = { $where }{ $what } is { $found } on average

# $where: text
# $what: text
# $found: text
# $whole: text
claim-reason-mean-narrower = { $where }{ $what } is { $found } on average; over the whole range { $whole }

# $where: text
# $what: text
# $found: text
# $beside: one of more, less, as-said
claim-reason-top = { $beside ->
    [more] { $where }it can be more: in one run in twenty { $what } is over { $found }
    [less] { $where }it does not come to that: in only one run in twenty { $what } is over { $found }
   *[as-said] { $where }in one run in twenty { $what } is over { $found }
}

# $where: text
# $subject: text
# $often: one of never, at-the-edge, partly, always, nearly-always, mostly
# $nearest: text
# $whole: text
claim-reason-narrower = { $where }{ $subject } { claim-how-often }; over the whole range the model gives { $whole }

# $where: text
# $subject: text
# $conditions: list
# $given: text
claim-reason-conditions = { $where }{ $subject } only with { $conditions }, where the model gives { $given }; elsewhere it
    often is not

# $where: text
# $what: text
# $miss: text
claim-reason-not-always = { $where }{ $what } is { $miss } in one run, and “always” allows hardly any such run

# $where: text
# $what: text
# $miss: text
# $claimed: text
# $conditions: list
# $given: text
claim-reason-not-always-but-there = { $where }{ $what } is { $miss } in one run, and “always” allows hardly any such run; it
    is { $claimed } with { $conditions }, where the model gives { $given }

# $where: text
# $subject: text
# $factors: one of none, one, two
# $first: text
# $second: text
claim-reason-unjudged = { $factors ->
    [none] { $where }whether { $subject } depends on no one thing that stands out of chance, and no short list of conditions
        settles it
    [one] { $where }whether { $subject } depends most on { $first }, and no short list of conditions settles it
   *[two] { $where }whether { $subject } depends most on { $first } and on { $second }, and no short list of conditions
        settles it
}

# $by: one of error, sampling
# $where: text
# $subject: text
# $often: one of never, at-the-edge, partly, always, nearly-always, mostly
# $nearest: text
# $error: text
# $runs: count
claim-reason-close = { $by ->
    [error] { $where }{ $subject } { claim-how-often }, but a model that is off by { $error }, as this one was found to be,
        could turn that
   *[sampling] { $where }{ $subject } { claim-how-often }, so near to where the verdict turns that { $runs } runs cannot tell
}

# $by: one of error, sampling
# $where: text
# $what: text
# $found: text
# $error: text
# $runs: count
claim-reason-close-number = { $by ->
    [error] { $where }{ $what } comes to { $found }, but a model that is off by { $error }, as this one was found to be, could
        turn the verdict
   *[sampling] { $where }{ $what } comes to { $found }, so near to where the verdict turns that { $runs } runs cannot tell
}

## What the model is off by

# $kind: one of energy, put_back, cold, hill, mechanics, unknown
# $error: text
# $comparisons: count
claim-model-error = { $kind ->
    [energy] The model’s own error in energies is { $error }, the middle size of { $comparisons } misses: makers’ groups of
        certified cars on two cycles, each by its middle car, their data sheets known. A verdict stands only if that error
        cannot turn it.
    [put_back] The model’s own error in what is put back is { $error } of the number, the middle size of { $comparisons }
        misses beside published means of many cars. A verdict stands only if that error cannot turn it.
    [cold] The model’s own error in the range lost to cold is { $error }, the middle size of { $comparisons } misses beside
        published tests of several cars. A verdict stands only if that error cannot turn it.
    [hill] The model’s own error on hills is { $error } of the number, the middle size of { $comparisons } misses beside one
        published drive over a pass. A verdict stands only if that error cannot turn it.
    [mechanics] This number follows from mechanics: no error of the model’s own comes in.
   *[unknown] No measurement tells how far off the model is in this number, so the verdict rests on what was varied.
}

claim-rule-close = Too close to call: that error, or two standard errors of so many runs, could turn the verdict.

# One table: what was varied, over what, and how.
claim-figures-heading = Every figure that was varied, and how
claim-figures-column-figure = Figure
claim-figures-column-over = Over
claim-figures-column-how = How

# $how: one of list, band, class, even, together
claim-figures-how = { $how ->
    [list] not said: each value as often as the next
    [band] not said: most often near the middle
    [class] assumed of its class: most often near the middle
    [even] assumed of its class, and drawn as evenly as what was not said
   *[together] assumed of its class, rising with the mass
}

# How runs are drawn, where answer files say it.
claim-method-draw = Latin hypercube; ranges triangular, lists in equal parts; car figures after their class

## What was varied

claim-varied-nothing = Nothing was varied but the car’s assumed figures, each most often near the middle of its band.

# $lists: list
claim-varied-lists = Varied: { $lists }, each value as often as the next.

# $bands: list
claim-varied-bands = Varied: { $bands }, most often near the middle of the range.

# $lists: list
# $bands: list
claim-varied-both = Varied: { $lists }, each value as often as the next; { $bands }, most often near the middle of the
    range.

# $how: one of none, hardly-any, nearly-all, all, part
# $share: share
claim-share-of-design = { $how ->
    [none] Here none of the runs are true: a share of what was varied, as it was weighted; not odds, and not a share of the
        cars on the road.
    [hardly-any] Here less than 1 % of the runs are true: a share of what was varied, as it was weighted; not odds, and not a
        share of the cars on the road.
    [nearly-all] Here more than 99 % of the runs are true: a share of what was varied, as it was weighted; not odds, and not a
        share of the cars on the road.
    [all] Here all of the runs are true: a share of what was varied, as it was weighted; not odds, and not a share of the cars
        on the road.
   *[part] Here { $share } of the runs are true: a share of what was varied, as it was weighted; not odds, and not a share of
        the cars on the road.
}

## The rule, as printed

# $span: text
claim-rule-mean = The mean of the runs is to lie within { $span }. Holds broadly: it does, with what was said and over the
    whole range. Holds only under conditions: with what was said only. Does not hold in the modelled range: it lies outside.

# $span: text
claim-rule-top = The 95 % point of the runs, their top, is to lie within { $span }. Holds broadly: it does, with what was said
    and over the whole range. Holds only under conditions: with what was said only. Does not hold in the modelled range: it
    lies below. Does not hold as said: it lies above.

# $what: text
# $claimed: text
# $broadly: share
# $side: one of at_least, at_most, other
# $quantile: share
claim-rule-broadly = { $side ->
    [at_least] A run is true where { $what } is { $claimed }. Holds broadly: true in at least { $broadly } of the runs (the
        { $quantile } quantile is not below it), with what was said and over the whole range.
    [at_most] A run is true where { $what } is { $claimed }. Holds broadly: true in at least { $broadly } of the runs (the
        { $quantile } quantile is not above it), with what was said and over the whole range.
   *[other] A run is true where { $what } is { $claimed }. Holds broadly: true in at least { $broadly } of the runs, with what
        was said and over the whole range.
}

# $conditions: count
# $least: share
claim-rule-conditions = Holds only under conditions: as often with what was said but not over the whole range; or as often
    within at most { $conditions } conditions that cover at least { $least } of the runs. They are sought on as many runs of
    their own, where the share of each step named is clear of that by one standard error; they were found on one half of
    those, and hold on the other half and here.

claim-rule-conditions-always = Holds only under conditions: as often with what was said but not over the whole range.

# $hardly: share
claim-rule-false = Does not hold in the modelled range: true in fewer than { $hardly }.

claim-rule-between-always = Does not hold as said: anything between, since counter-examples refute “always”.

claim-rule-between = Cannot be judged from what was said: anything else.

# $beyond: text
claim-rule-beyond = No rule judges this claim, which is beyond the model: { $beyond }.

## Beside the verdict

# How the claim’s words are taken.
# $within: share
claim-reads-up-to = “Up to” is read as a ceiling with two ends: the level that one run in twenty passes is to lie no more than
    { $within } above or below the number, so it may fail though most runs stay below.

# $within: share
claim-reads-on-average = “On average”: the mean of the runs is to lie within { $within } of the number.

# $always: share
# $broadly: share
claim-reads-always = “Always” is refuted by counter-examples, so it asks for { $always } of the runs; other claims ask for
    { $broadly }.

# $runs: count
claim-running = Running the model { $runs } times …

# $runs: count
claim-eyebrow = Verdict, from { $runs } runs of the model

# $runs: count
# $left: count
claim-eyebrow-some-left-out = Verdict, from { $runs } runs of the model; { $left } left out

# $what: text
claim-left-out = Left out: { $what }

# $left: count
# $runs: count
claim-cars-left-out = Left out too: { $left ->
    [one] { $left } sampled car
   *[other] { $left } sampled cars
} of { $runs }, unable to keep up with the drive or run flat on the way.

claim-changed = What is tested is no longer what the list’s claim says, so the sentence was made from the test.
