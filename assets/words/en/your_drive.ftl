# The first page: describing the drive and the car.

## Legs and the way back

legs = Legs

there-and-back = There and back

add-a-leg = Add a leg

# $leg: count
# $described: text
leg-row = { $leg }. { $described }

# A row whose entries are open.
# $row: text
row-close = { $row }, close

leg-help = Stops: times at rest, the leg’s end included. Slow-downs: not to rest, as in bends or traffic.

leg-earlier = Earlier

leg-later = Later

leg-remove = Remove

charge-at-start = Charge at the start, % of the usable battery

# $none: quantity in kg
# $box: quantity in m²
# $caravan: quantity in m²
trailer-help = { $none } for no trailer. Added to the car’s drag area: a low box about { $box }, a caravan about
    { $caravan }.

## The answer

# $stops: count
charge-on-the-way = { $stops ->
    [one] Charge on the way: { $stops } stop
   *[other] Charge on the way: { $stops } stops
}

# $priced: yes or no
year-made-of = { $priced ->
    [yes] What goes into the year, price and currency
   *[no] What goes into the year
}

# $currency: text
year-price = { $currency } per kWh

year-co2 = g CO₂ per kWh

# $price: text
# $co2: text
year-prices-help = Price: { $price } CO₂: { $co2 }

change-on-first-page = Change the drive on the first page

no-picture = No picture: the drive cannot be driven as described.

## The car

adjust-car = Adjust the car

adjust-car-help = Whatever you enter here counts as known: it no longer widens the band. All else comes from the class,
    with a note of how well it is known and where it is from.

car-part = Part of the car

# $group: one of printed, weight, motor, battery, slowing, engine, cabin, weather
car-group = { $group ->
    [printed] What is printed or shown
    [weight] Weight and resistance
    [motor] Motor
    [battery] Battery
    [slowing] Slowing
    [engine] Hybrid’s engine
    [cabin] Cabin
   *[weather] Weather and start
}

figure-back = Yours. Back to the class’s figure

figure-open = Left empty unless you know it.

all-figures-back = All figures back to the class

## Below a picture

as-a-table = As a table

csv-file = CSV file

# $shown: count
# $rows: number
first-rows = The first { $shown } of { $rows } rows; the file has them all.

## Short ways in

door-quick = Quick drive

door-sheet = My car

# $door: one of quick, sheet
door-close = { $door ->
    [quick] Close drive
   *[sheet] Close car
}

# $unit: text
quick-one-way = One way, { $unit }

# $rest: share
quick-rest = The rest, { $rest }, is country road.

# What was made less as the other was entered.
# $less: one of town, motorway
# $share: share
quick-gave-way = { $less ->
    [town] So { $share } is left for town.
   *[motorway] So { $share } is left for motorway.
}

# $rest: share
# $town: quantity in km/h
# $country: quantity in km/h
# $motorway: quantity in km/h
quick-makes = The rest, { $rest }, is country road. From these answers the legs are made anew: town at { $town }, country
    road at { $country }, motorway at { $motorway }. Each leg can then be opened and changed.

sheet-class = Nearest class of car

sheet-title = Your car’s data sheet

sheet-help = Figures that stand here already are those of the class: change what your data sheet says otherwise. A printed
    range or consumption narrows the band. Everything else stands under “Adjust the car”.