# What departs from the ordinary, in a few words each, and questions about what was entered.

## Beside season, car and pedal

# $mass: quantity in kg
# $drag: quantity in m²
# $own_drag: yes or no
apart-trailer = { $own_drag ->
    [yes] towing { $mass } with { $drag } of drag area
   *[no] towing { $mass }
}

# $mass: quantity in kg
apart-load = { $mass } load

# $wind: quantity in km/h
# $ahead: yes or no
apart-wind = { $ahead ->
    [yes] { $wind } headwind
   *[no] { $wind } tailwind
}

# $height: quantity in m
apart-altitude = { $height } above sea level

# $tyres: one of any, summer, winter
apart-tyres = { $tyres ->
    [any] tyres of either kind
    [summer] summer tyres
   *[winter] winter tyres
}

# $tyres: one of by_drive, yes, no
apart-tyres-warm = { $tyres ->
    [by_drive] tyres warm or cold as on any drive
    [yes] tyres warm at the start
   *[no] tyres cold at the start
}

# $cabin: quantity in °C
apart-cabin = cabin at { $cabin }

# $charge: share
apart-charge = charged to { $charge }

# $air: quantity in °C
apart-parked = parked at { $air }

# $battery: quantity in °C
apart-battery = battery at { $battery }

# $stops: count
# $charge: share
apart-charging-stops = { $stops ->
    [one] { $stops } charging stop
   *[other] { $stops } charging stops
} up to { $charge }

# $grip: number
apart-grip = grip at { $grip } of its band

# $strength: quantity in m/s²
apart-lift-off = lift-off { $strength }

# A row of strengths follows, each from apart-on-legs.
# $strengths: list
apart-lift-off-of-legs = lift-off { $strengths }

# $to_rest: yes or no
apart-to-rest = { $to_rest ->
    [yes] comes to rest without the brake pedal
   *[no] rolls on near walking pace
}

# $on_request: yes or no
apart-slowing = { $on_request ->
    [yes] slows only on request
   *[no] slows as the foot comes up
}

# A road or a strength that some legs have for themselves.
# $what: text
# $legs: list
# $count: count
apart-on-legs = { $count ->
    [one] { $what } on leg { $legs }
   *[other] { $what } on legs { $legs }
}

## Figures stated of the car, when another class is chosen

# $figures: list
kept-of-car = Kept as you entered them: { $figures }.

# $figures: list
left-out-of-car = Left out, as entered before: { $figures }.

# $field: text
# $value: text
left-out-figure = { $field } { $value }

## What is out of the ordinary, or does not go together

# $inputs: list
unusual-inputs = Unusual inputs: { $inputs }.

# `$leg` is 0 for what is no leg’s.
# $leg: count
# $field: text
# $given: text
# $usual: text
unusual-input = { $leg ->
    [0] { $field } { $given } (usual { $usual })
   *[other] leg { $leg }: { $field } { $given } (usual { $usual })
}

# $surface: one of snow, ice, glazed-ice
# $warmth: quantity in °C
frost-question = { $surface ->
    [snow] Snow
    [ice] Ice
   *[glazed-ice] Glazed ice
} at { $warmth }? Set the temperature of that day: battery, tyres and cabin depend on it.
