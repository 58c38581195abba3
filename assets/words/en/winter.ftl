# What takes regeneration away: the four parts in short, and what they share.

# $part: one of cold, grip, hills, stop
limit-name = { $part ->
    [cold] Cold battery
    [grip] Slippery road
    [hills] Full battery, hills
   *[stop] Emergency stop
}

limits-title = Winter and limits
limits-in-figures = In figures
limits-in-short = The four limits in short
limits-what-to-do = What to do
limits-mind = Mind
limits-another-leg = Where a leg of your drive says otherwise, the slipperiest of all counts here.
limits-set-lift-off = Set the lift-off strength

# How far the car has come, where it is on the way back.
# $km: quantity in km
come-on-way-back = { $km } counting the way back

# An energy too small to print.
next-to-nothing = next to nothing

# $energy: quantity in kWh
energy-more = { $energy } more

# $energy: quantity in kWh
energy-less = { $energy } less

# A share too small to print.
hardly-any-share = less than 0.1 %

# $share: share
leave-free = leave { $share } of the battery free
nothing-to-leave-free = nothing to leave free

# Batteries by how much charge they take.
battery-takes-little = Takes little
battery-in-the-middle = Middle
battery-takes-much = Takes much

# The head of a column: what a battery takes.
# $level: text
column-in-kw = { $level }, kW

# The four parts in a few words each, below their names.

# $lasts: one of never, first, always
# $minutes: count
glance-cold = { $lasts ->
    [never] as usual from the start
    [always] weaker all the way
   *[first] weaker for { $minutes ->
        [one] { $minutes } minute
       *[other] { $minutes } minutes
    }
}

# Where a battery that takes little in the cold does worse than the middle one.
# $lasts: one of never, first, always
# $minutes: count
# $little: one of never, first, always
# $little_minutes: count
glance-cold-differs = { $lasts ->
    [never] as usual from the start
    [always] weaker all the way
   *[first] weaker for { $minutes ->
        [one] { $minutes } minute
       *[other] { $minutes } minutes
    }
}; { $little ->
    [never] as usual from the start
    [always] weaker all the way
   *[first] weaker for { $little_minutes ->
        [one] { $little_minutes } minute
       *[other] { $little_minutes } minutes
    }
} if the battery takes little

# $margin: one of none, small, moderate, larger
# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
glance-grip = { $margin ->
    [none] no margin
    [small] small margin
    [moderate] moderate margin
   *[larger] grip for at least twice what is asked
} { $surface ->
    [dry] on a dry road
    [wet] on a wet road
    [standing-water] on standing water
    [snow] on snow
    [ice] on ice
   *[glazed-ice] on glazed ice
}

# $margin: one of none, small, moderate, larger
margin-name = { $margin ->
    [none] none
    [small] small
    [moderate] moderate
   *[larger] larger
}

# The hill is the one that is asked about, not the drive's.
# $free: text
# $drop: quantity in m
glance-hill = { $free } before a descent of { $drop }

# $charge: share
# $drop: quantity in m
glance-hill-start = start at { $charge } or less before a descent of { $drop }
glance-small-battery = a small battery fills soon

# $distances: span in m
# $speed: quantity in km/h
glance-stop = { $distances } from { $speed }, reaction included

# What to expect of motor slowing on a cold day.

expect-no-winter-drive = This drive cannot be driven in winter as it is described.
expect-usual = The battery takes what slow-downs give, and the motor slows the car as usual.

# $lasts: one of first, always
# $minutes: count
expect-less = Expect less slowing { $lasts ->
    [always] all the way
   *[first] for the first { $minutes ->
        [one] minute
       *[other] { $minutes } minutes
    }
}.

# Where a battery that takes little in the cold does worse than the middle one.
# $lasts: one of first, always
# $minutes: count
# $little: one of first, always
# $little_minutes: count
expect-less-differs = Expect less slowing { $lasts ->
    [always] all the way
   *[first] for the first { $minutes ->
        [one] minute
       *[other] { $minutes } minutes
    }
}, { $little ->
    [always] all the way
   *[first] for the first { $little_minutes ->
        [one] minute
       *[other] { $little_minutes } minutes
    }
} if the battery takes little in the cold.

# Where only a battery that takes little slows the car less than usual.
# $little: one of first, always
# $little_minutes: count
expect-less-with-little = With most batteries the motor slows the car as usual; with one that takes little in the cold,
    expect less slowing { $little ->
        [always] all the way
       *[first] for the first { $little_minutes ->
            [one] minute
           *[other] { $little_minutes } minutes
        }
    }.

# The stretch of the drive's picture on which motor slowing is weaker.
strip-held-back = the battery holds motor slowing back
strip-weaker = weaker
