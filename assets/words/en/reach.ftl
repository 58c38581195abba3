# How far the battery goes, and the charging stops on the way.

# Where the battery does not last, up to where the answer is.
# $reached: part in km
reach-too-weak = After { $reached } the battery cannot give the power that is asked; this answer is for the road up to
    there.

# $reached: part in km
reach-empty = The battery is empty after { $reached }; this answer is for the road up to there.

# $reached: part in km
# $stops: count
reach-empty-after-charging = With { $stops ->
    [one] { $stops } charging stop
   *[other] { $stops } charging stops
} the battery is empty after { $reached }; this answer is for the road up to there.

# $places: list of quantity in km
# $stops: count
# $minutes: quantity in minutes
# $charged: quantity in kWh
charging-stops = { $stops ->
    [one] { $stops } charging stop
   *[other] { $stops } charging stops
}, after { $places }: { $minutes } in all, which the drive’s time includes, and { $charged } into the battery, counted
    apart from what slowing down gives back.

# Drives side by side.
# $until: part in km
reach-compared = Not every battery lasts as far: all are compared over the first { $until }, where the first of them is
    empty.

# Cars of the band that get less far than the one shown.
# $unable: count
# $cars: count
band-empty-sooner = In the band, { $unable } of { $cars } sampled cars { $unable ->
    [one] does not get even that far; it is counted as if it did.
   *[other] do not get even that far; they are counted as if they did.
}

# $unable: count
# $cars: count
band-charges-sooner = In the band, { $unable } of { $cars } sampled cars would have to charge sooner, or could not do
    this drive; { $unable ->
    [one] it is counted as if it could.
   *[other] they are counted as if they could.
}

# Cars of the band that drive it more slowly than the one shown.
# $unable: count
# $cars: count
# $longer: share
# $slowest: share
band-slower = In the band, { $unable } of { $cars } sampled cars would take over { $longer } longer, for want of power,
    the slowest { $slowest }; { $unable ->
    [one] it is counted as if it kept up.
   *[other] they are counted as if they kept up.
}

# $unable: count
# $cars: count
band-unable = In the band, { $unable } of { $cars } sampled cars could not do this drive, for want of power or charge;
    { $unable ->
    [one] it is counted as if it could.
   *[other] they are counted as if they could.
}

# A row of seasons follows, each from year-season-reach.
# $seasons: list
year-reach = Over the year each day counts as far as its battery goes: { $seasons }.

# $season: one of winter, spring, summer, autumn
# $reached: part in km
year-season-reach = { $season ->
    [winter] in winter { $reached }
    [spring] in spring { $reached }
    [autumn] in autumn { $reached }
   *[summer] in summer { $reached }
}

# A row of seasons follows, each from year-season-stops.
# $seasons: list
year-stops = Over the year each day has the charging stops that it needs: { $seasons }.

# $season: one of winter, spring, summer, autumn
# $stops: count
year-season-stops = { $season ->
    [winter] { $stops } in winter
    [spring] { $stops } in spring
    [autumn] { $stops } in autumn
   *[summer] { $stops } in summer
}
