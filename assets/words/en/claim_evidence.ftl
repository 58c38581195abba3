# What has been measured of a claim, beside what the model says of it.

claim-evidence-heading = What measurements say

claim-model-heading = What the model says

# $verdict: one of supports, contradicts, mixed, unsettled, none
claim-measured = { $verdict ->
    [supports] Measurements of the same thing support this claim.
    [contradicts] Measurements of the same thing contradict this claim.
    [mixed] Measurements of the same thing are divided on this claim.
    [unsettled] Measurements of the same thing do not settle this claim.
   *[none] No measurement of the same thing was found.
}

# Both verdicts in one sentence. `$together`: whether they say the same, the opposite, or neither.
# $measured: one of supports, contradicts, mixed, unsettled, none
# $together: one of agree, differ, neither
# $verdict: one of holds, conditions, false, not-as-said, unjudged, close, beyond
claim-both = { $measured ->
    [supports] { $together ->
        [agree] Measurements support this claim, and so does the model.
        [differ] Measurements support this claim, but by the model it { claim-verdict }.
       *[neither] Measurements support this claim; by the model it { claim-verdict }.
    }
    [contradicts] { $together ->
        [agree] Measurements contradict this claim, and so does the model.
        [differ] Measurements contradict this claim, but by the model it { claim-verdict }.
       *[neither] Measurements contradict this claim; by the model it { claim-verdict }.
    }
    [mixed] { $together ->
        [agree] Measurements are divided on this claim, and so is the model: it { claim-verdict }.
        [differ] Measurements are divided on this claim, but by the model it { claim-verdict }.
       *[neither] Measurements are divided on this claim; by the model it { claim-verdict }.
    }
    [unsettled] Measurements do not settle this claim; by the model it { claim-verdict }.
   *[none] No measurement of the same thing was found; by the model alone this claim { claim-verdict }.
}

# The rule of the measurements’ verdict, as printed.
# $relation: one of up_to, on_average, other
# $always: yes or no
claim-measured-rule = { $relation ->
    [up_to] A measurement counts if it is of what the claim is about: the same quantity and unit, a share of the same thing,
        under conditions that are among the claim’s. What counts for “up to” is the highest that was measured: as much as
        claimed supports, more contradicts, less does not settle it, since few were measured.
    [on_average] A measurement counts if it is of what the claim is about: the same quantity and unit, a share of the same
        thing, under conditions that are among the claim’s, and if it is itself an average. Supports: every one lies within
        what is claimed. Contradicts: every one lies outside. Divided: anything between.
   *[other] { $always ->
        [yes] A measurement counts if it is of what the claim is about: the same quantity and unit, a share of the same
            thing, under conditions that are among the claim’s. One that lies outside what is claimed contradicts “always”;
            any number that lie within do not settle it.
       *[no] A measurement counts if it is of what the claim is about: the same quantity and unit, a share of the same
            thing, under conditions that are among the claim’s. Supports: every one lies within what is claimed.
            Contradicts: every one lies outside. Divided: anything between.
    }
}

# What one measurement says.
# $says: one of supports, contradicts, mixed
claim-one-says = { $says ->
    [supports] within what is claimed
    [contradicts] outside what is claimed
   *[mixed] partly within what is claimed
}

# Why one does not count.
# $why: one of other-quantity, other-share, other-unit, other-conditions, not-measured, no-mean, compared
# $of: text
# $apart: list
# $kind: text
claim-why-not = { $why ->
    [other-quantity] another quantity
    [other-share] another share: { $of }
    [other-unit] in another unit
    [other-conditions] under other conditions: { $apart }
    [not-measured] not measured but { $kind }
    [compared] of one case, where the claim compares two
   *[no-mean] of single cases, where the claim is of an average
}

claim-near-heading = Near, but not this

# A measurement in a row: what, whose, and what it says or why it does not count.
# $what: text
# $source: text
# $kind: text
# $verdict: text
claim-measurement = { $what }. { $source }; { $kind }. { $verdict }.

claim-same-alt = Measurements of what the claim is about, each with its source and what it says

claim-near-alt = Published numbers near the claim, each with its source and why it does not count

column-measured-by = What was measured, by whom, and what it says

claim-measured-and-modelled = Measured, and modelled

# $band: text
claim-modelled = The model gives { $band }.
