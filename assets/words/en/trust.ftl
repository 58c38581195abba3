# How far the answer can be trusted: what the published checks found, and what the model leaves out.

trust-question = How far can I trust this?

trust-every-number = Every number, with its source

trust-in-full = All of it in words, and what is left out

# The errors at a glance.
trust-row-city = Energy in the city

trust-row-highway = Energy on the highway

trust-row-others = Other measurements

# $off: quantity in %
trust-row-off = off by { $off }

# $cars: count
trust-row-certified = for the median of { $cars } cars measured for certification in the United States

# $inside: count
# $ranges: count
trust-row-met = { $inside } of { $ranges } met

# $count: count
trust-row-publications = results that { $count } other publications give as a range of values

# The certified cars. An error is of the energy from the wall.
# $cars: count
# $city: quantity in %
# $highway: quantity in %
# $city_lean: quantity in %
# $city_way: one of high, low
# $highway_lean: quantity in %
# $highway_way: one of high, low
# $misses: list
trust-certified = On { $cars } cars measured for certification in the United States, the model’s energy from the wall is
    off by { $city } in the city and { $highway } on the highway for the median car, too high or too low. The median
    bias: { $city_way ->
    [high] { $city_lean } too high in the city
   *[low] { $city_lean } too low in the city
}, { $highway_way ->
    [high] { $highway_lean } too high on the highway
   *[low] { $highway_lean } too low on the highway
}. Its largest misses in the city are { $misses }. No figure was fitted to a single car, but the losses were chosen with
    these results in view.

# $car: text
# $id: text
# $off: quantity in %
trust-car-missed = the { $car } ({ $id }) by { $off }

# The other checks.
# $count: count
# $titles: list
trust-others = { $count ->
    [one] Compared with { $count } more publication: { $titles }.
   *[other] Compared with { $count } more publications: { $titles }.
}

# $ranges: count
# $inside: count
trust-ranges-met = Of { $ranges } published ranges the model lies within { $inside }.

# $ranges: count
# $inside: count
# $outside: count
# $missed: list
trust-ranges = Of { $ranges } published ranges the model lies within { $inside } and **outside { $outside }: { $missed }**.

# $count: count
# $median: quantity in points
# $worst: text
trust-percentages = Beside { $count } published single percentages it is off by { $median } for the median one, and by most
    for **{ $worst }**.

# A number outside what is published.
# $title: text
# $what: text
# $off: quantity in points
trust-missed = { $title }, { $what } (off by { $off })

## What the model leaves out

left-out = Left out:

left-out-traffic = Traffic, lights and other people, beyond the stops and slow-downs that you describe.

left-out-bends = The side forces of bends on tyres, gusts of wind, and rain or snow beyond what the road’s surface adds.

left-out-software = What one car’s software does that no one publishes: how it shares braking between axles, saves its
    battery, or holds back in the first minutes. Limits stand for it.

left-out-ageing = Ageing of the battery, and cells that differ from each other.

left-out-drag = Brake discs that drag a little when they should be free, and a trailer’s own brakes.

left-out-cabin = Sun, damp and passengers in the cabin, beyond one assumed heat.

left-out-charging = Charging while the car stands before the way back: it goes back with the charge that it came with.

left-out-chargers = What a charger on the way can give, its queue and its way off the road: the car charges as fast as the
    battery takes it.

left-out-parked = Losses while parked, and charging losses other than one average.
