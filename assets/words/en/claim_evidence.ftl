# What has been measured of a claim, beside what the model says of it.

claim-evidence-heading = What measurements say

# $verdict: one of supports, contradicts, mixed, unsettled, none
claim-measured = { $verdict ->
    [supports] Measurements of the same thing support this claim.
    [contradicts] Measurements of the same thing contradict this claim.
    [mixed] Measurements of the same thing are divided on this claim.
    [unsettled] Measurements of the same thing do not settle this claim.
   *[none] No measurement of the same thing was found.
}

# What has been measured, after the model’s verdict; `$numbers` are what was measured. `$stands`: whether both verdicts say
# the same, the opposite, that the number lies on the other side of what is claimed, or none of these.
# $measured: one of supports, contradicts, mixed, unsettled, mechanics, none
# $stands: one of agrees, differs, other-side, neither
# $numbers: text
claim-heading-measured = { $measured ->
    [supports] { $stands ->
        [differs] But measurements support it ({ $numbers }).
       *[neither] Measurements support it ({ $numbers }).
    }
    [contradicts] { $stands ->
        [agrees] Measurements contradict it too ({ $numbers }).
        [differs] But measurements contradict it ({ $numbers }).
        [other-side] Measurements contradict it from the other side ({ $numbers }).
       *[neither] Measurements contradict it ({ $numbers }).
    }
    [mixed] Measurements are divided on it ({ $numbers }).
    [unsettled] { $stands ->
        [other-side] Measurements point the other way ({ $numbers }) and do not settle it.
       *[neither] Measurements ({ $numbers }) do not settle it.
    }
    [mechanics] This follows from mechanics and asks for no measurement.
   *[none] No measurement of the same thing was found.
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

# What unfolds both on a telephone.
claim-measured-and-quoted = What was measured, and a sentence to quote
