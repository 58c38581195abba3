# A recording of one's own in place of a described drive.

own-road-door = Use my own recording

own-road-upload = A recording of a drive: CSV with time and speed (or positions), or GPX; a route without times
    too; up to 30 MB

own-road-private = The file is held in the server’s memory for this visit only: never on a disk, never in a link. Of
    positions nothing is held once distance and slope are known. After the server or this page is started anew the
    recording must be opened again.

own-road-lost = A recording was open here. Recordings are kept on no disk and in no link, so after a new start it must be opened
    again.

own-road-reading = Reading the file
own-road-computing = Driving it with many cars

own-road-not-kept = The file held positions and nothing else that tells the speed, so nothing of it was kept but the drive.
    What you switch here holds once you open it again.

# $name: text
# $distance: quantity in km
# $minutes: quantity in minutes
own-road-line = on the recording { $name }, { $distance } in { $minutes }

# On a printed picture.
# $car: text
# $name: text
# $distance: quantity in km
# $minutes: quantity in minutes
# $pedal: text
own-road-about = A { $car } { own-road-line }, with a { $pedal }.

own-road-line-empty = on a recording that is still to be opened

own-road-sample = Try the invented sample

own-road-sample-is-invented = This recording is invented: no car has driven it. It was built by this program, for the
    first car that it shows, made 8 % heavier, and given the errors that a phone makes.

own-road-car = The car, its season and what you know of it are those of “Your drive”; charge and temperature come from the
    recording where it has them.

# $distance: quantity in km
# $minutes: quantity in minutes
# $net: quantity in kWh
# $band: span in kWh
own-road-modelled = The modelled car takes { $net } for these { $distance } in { $minutes } (nine in ten cars: { $band }).

# $distance: quantity in km
# $minutes: quantity in minutes
# $net: quantity in kWh
# $band: span in kWh
# $measured: quantity in kWh
own-road-measured = { $measured } were measured on these { $distance } in { $minutes }; the modelled car takes { $net } (nine in
    ten cars: { $band }).

# $shortfall: quantity in kWh
own-road-shortfall = The modelled car could not follow everywhere: { $shortfall } were lacking at its wheels.

own-road-totals = Totals at the battery’s terminals
own-road-out = Out of the battery
own-road-in = Back into it
own-road-net = Net
own-road-share = Recovered share: in over out
own-road-of-measured = Measured
own-road-of-model = Modelled
own-road-of-band = Nine in ten cars

# $hidden: quantity in kWh
own-road-hidden = Both are counted in steps of a second. At its own rate the recording has { $hidden } more coming back, which goes
    in and out within a second.

own-road-chart = Net energy from the start: measured beside modelled
own-road-chart-modelled = Net energy from the start, as modelled

# $modelled: quantity in kWh
# $measured: quantity in kWh
own-road-alt-measured = Two lines that rise with time to { $measured } measured and { $modelled } modelled.

# $modelled: quantity in kWh
own-road-alt = A line that rises with time to { $modelled } as modelled.

own-road-residual = Where the two part
own-road-residual-choose = Looked at by

# $way: one of speed, slow_down, minutes
own-road-residual-by = { $way ->
    [slow_down] Slow-downs
    [minutes] First minutes
   *[speed] Speed
}

own-road-residual-alt = Modelled net energy less measured.

own-road-standing = standing

# $where: text
# $energy: quantity in kWh
# $way: one of more, less
own-road-residual-largest = They part most at { $where }: there the model takes { $energy } { $way ->
    [less] less
   *[more] more
}

# $where: text
# $energy: quantity in kWh
# $way: one of more, less
own-road-residual-first = In { $where } from the start the model takes { $energy } { $way ->
    [less] less
   *[more] more
} than was measured

# $count: count
# $share: share
# $least: quantity in km/h
own-road-residual-slow-down = In { $count ->
    [one] { $count } slow-down
   *[other] { $count } slow-downs
} of { $least } or more the model puts back { $share } of what was measured

own-road-residual-no-slow-down = No slow-down put anything back into the battery.

own-road-above-the-line = above the line: the model puts back more

own-road-fit = A car that fits

own-road-fit-about = Mass, accessories and the unknown loss can be fitted to the first half of the recording, each within what
    is assumed for the class; what you stated stays. The second half shows what the fit is worth. Nothing uses it unless
    you keep it.

own-road-fit-do = Fit the car to the first half

# $until: quantity in minutes
# $fitted: share
# $rest: share
# $before: share
# $bounded: yes or no
# $bound: list
own-road-fit-found = Fitted up to { $until }, the model misses the net energy of that part by { $fitted }, and of the rest, which it
    had not seen, by { $rest }; the car as it was misses the rest by { $before }.{ $bounded ->
    [yes] {" "}At the end of what is assumed: { $bound }. Perhaps it is another class of car.
   *[no] {""}
}

own-road-fit-before = As it was
own-road-fit-after = Fitted

# $kept: yes or no
own-road-fit-keep = { $kept ->
    [yes] This is your car on every page now
   *[no] Keep it as my car
}

own-road-habits = How it was driven

# $apart: quantity in km
# $ahead: quantity in m
# $speed: quantity in km/h
# $slowing: quantity in m/s²
# $pulling: quantity in m/s²
# $lifted: count
# $count: count
# $looks: text
# $pulls: text
own-road-habits-found = The car stops every { $apart }. Half of the stops begin more than { $ahead } ahead, from about { $speed }, and
    have { $slowing } or more in their hardest second; pulling away has { $pulling }. In { $lifted } of { $count ->
    [one] { $count } slow-down
   *[other] { $count } slow-downs
} lifting the foot would have done. The nearest habits: slows down “{ $looks }”, pulls away “{ $pulls }”.

# $taken: yes or no
own-road-habits-take = { $taken ->
    [yes] These are your habits on “Your drive”
   *[no] Use these as my habits
}

own-road-recognised = What was recognised
own-road-column = Column
own-road-meaning = Taken for
own-road-unit = Unit
own-road-correct = Correct it
own-road-not-read = not read

# $meaning: one of time_s, speed_kmh, latitude, longitude, elevation_m, distance_m, ambient_c, battery_temp_c, soc_pct, cabin_kw, battery_power_kw, battery_a, battery_v, other
own-road-means = { $meaning ->
    [time_s] time
    [speed_kmh] speed
    [latitude] latitude
    [longitude] longitude
    [elevation_m] height
    [distance_m] distance
    [ambient_c] outside temperature
    [battery_temp_c] battery temperature
    [soc_pct] charge
    [cabin_kw] cabin power
    [battery_power_kw] battery power
    [battery_a] battery current
    [battery_v] battery voltage
   *[other] nothing
}

own-road-cleaning = What was cleaned

# $step: one of duplicates, backward, gaps, jumps, noise, standing, stray_heights, height
own-road-step = { $step ->
    [duplicates] Rows with the time of another left out
    [backward] Rows whose time lies before an earlier one left out
    [gaps] Split where nothing was recorded while the car drove
    [jumps] Speeds left out that no car changes to and back from
    [noise] Scatter of the speed smoothed
    [standing] Creeping at rest taken as standing
    [stray_heights] Heights left out that no road leads to
   *[height] Heights smoothed along the road
}

# $step: text
# $before: quantity in km
# $after: quantity in km
# $count: count
own-road-effect = { $step } ({ $count ->
    [one] { $count } sample
   *[other] { $count } samples
}): distance { $before } before, { $after } after

# $step: text
# $before: quantity in m
# $after: quantity in m
# $count: count
own-road-effect-climb = { $step } ({ $count ->
    [one] { $count } sample
   *[other] { $count } samples
}): climb { $before } before, { $after } after

own-road-large = That is a large change: check that the file means what it was taken to mean.

own-road-asked = Please look at this

# $column: text
own-road-unit-of = Unit of “{ $column }”

own-road-say = Say what the columns mean

own-road-found = What was found

# $what: one of no_number, out_of_range, rows_without_time, cut_off, filled, column_empty, column_gap, bridged, speeds_assumed, flat, two_sources, standing_unrecorded, unit_assumed, time_unit, share_not_percent, watts, power_sign, steep
# $column: text
# $count: count
own-road-finding = { $what ->
    [no_number] Cells without a number left out of { $column }: { $count }.
    [out_of_range] Values out of range left out of { $column }: { $count }.
    [rows_without_time] Rows without a time left out: { $count }.
    [cut_off] The file breaks off; what comes before the break was read.
    [filled] Empty cells of { $column } filled from their neighbours: { $count }.
    [column_empty] There is nothing under { $column }.
    [column_gap] Under { $column } too much is missing; it was left out.
    [bridged] Gaps between positions driven at an even speed: { $count }.
    [speeds_assumed] There are no times: the route is driven by the habits of “Your drive”, up to the limit, slower in
        turns, and without a stop for traffic.
    [flat] There is no height: the road was taken as flat.
    [two_sources] Battery power is current times voltage.
    [standing_unrecorded] For { $count } s no speed is given; the car was taken as standing.
    [unit_assumed] The file names no unit for { $column }: is it the one chosen here?
    [time_unit] The times were taken as milliseconds: are they?
    [share_not_percent] No charge is above 1: it was taken as a share of the whole. Is it?
    [watts] The values under { $column } were taken as watts: are they?
    [power_sign] The battery takes more than it gives on a road that does not fall: is power counted the other way round?
   *[steep] The whole road would be steeper than any; its heights were left out. Are they in another unit?
}

# $scatter: quantity in m
own-road-from-positions = Speed was worked out from positions that scatter by { $scatter }. On drives that were tried,
    the net energy was off by 1 % where they hardly scatter, by up to 4 % where they scatter by some metres, and in
    stop-and-go by up to 9 %; the recovered share was off by half a point to four, in stop-and-go by seven.

# $scatter: quantity in m
own-road-heights-scatter = The heights scatter as a receiver’s do, by { $scatter } from second to second. On drives that were tried,
    with heights off by some { QUANTITY(5, unit: "m") } for 20 s at a time, the net energy was off by up to 3 % and the
    recovered share by up to two points.

# $noise: quantity in km/h
own-road-noise-left = The speed scatters by { $noise }, which cannot be told from a restless foot and was left as it is.

# $noise: quantity in km/h
# $net: share
# $points: quantity in points
own-road-noise-doubt = The speed scatters by { $noise }, which cannot be told from a restless foot and was left as it
    is. Without it the modelled net energy would differ by { $net } and the recovered share by { $points }: they may be
    off by so much.

# $energy: quantity in kWh
own-road-charged-standing = The battery took { $energy } while the car stood: leave out charging from outside.

# $speed: quantity in km/h
own-road-speed-unit = The car never gets faster than { $speed }: are the speeds in another unit?

own-road-speed-places = The distance by the speeds is not the distance by the positions: are the speeds in another unit?

own-road-height-unit = The road is hillier than roads are: are the heights in feet?

# $part: count
# $start: quantity in minutes
# $end: quantity in minutes
# $distance: quantity in km
own-road-part = Part { $part }: from { $start } to { $end }, { $distance }
own-road-parts = Which part
