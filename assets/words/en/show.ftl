# The cards to hold towards somebody: one idea each, and what is answered when they ask why.

## Tell me your drive

card-tell = Tell me your drive

card-tell-why = What regeneration saves depends on how often and how deeply the car slows, and on the hills. Four invented
    drives stand for most. Your own, leg by leg, is described on the first page.

    The car is the invented middle of its class. In winter heating costs energy, and a cold battery takes less.

# $day: text
# $apart: text
# $also: yes or no
card-tell-now = { $also ->
    [yes] Now: { $day }, { $apart }.
   *[no] Now: { $day }.
}

card-cannot = This drive cannot be driven as described

## The number

# $share: shares
card-number = { $share } less battery energy

# $saved: span in kWh
# $drive: text
# $apart: text
# $also: yes or no
card-number-saved = That is { $saved }, compared with the same drive on friction brakes only, for a { $drive }{ $also ->
    [yes] , { $apart }
   *[no] {""}
}.

# $range: span in km
# $gain: span in km
card-number-range = A full battery reaches { $range } on drives like this, { $gain } of it from regeneration.

# Lift-off strengths as steps; over each, what asks for it.
steps-advised = advised here
steps-set = set now

# The range as a road.
# $gain: span in km
road-gained = { $gain } from regeneration

# $range: span in km
road-whole = { $range } in all

road-own = on friction brakes only

# $season: one of winter, spring, summer, autumn
# $range: span in km
# $air: quantity in °C
road-of-season = { $season ->
    [winter] Winter, { $air }: { $range }
    [spring] Spring, { $air }: { $range }
   *[summer] Summer, { $air }: { $range }
    [autumn] Autumn, { $air }: { $range }
}

# $daily: span in km
# $limit: share
card-number-daily = Charged to { $limit } the range is { $daily }.

# $saved: span in kWh
# $fuel: text
# $drive: text
# $apart: text
# $also: yes or no
card-number-saved-fuel = That is { $saved }, or { $fuel }, compared with the same drive on friction brakes only, for a
    { $drive }{ $also ->
        [yes] , { $apart }
       *[no] {""}
    }.

# $days: count
# $currency: text
# $cost: numbers
# $money: numbers
card-year-cost = A year of { $days ->
    [one] { $days } day
   *[other] { $days } days
} costs { $currency } { $cost } for electricity; without regeneration it would be { $currency } { $money } more.

# What the car driven now costs.
# $what: text
# $much: text
card-fact = { $what }: { $much }.

card-number-why = The same car drives the same speeds twice: once with the motor slowing it, once on friction brakes only.
    The difference is what is saved.

    It is a range, because nobody knows a car’s every figure: of 100 cars drawn from what is assumed, 90 lie within. “On a
    full battery” is this drive over and over until it is empty.

# What a hybrid spares.
# $fuel: span in l/100 km
fuel-spared = { $fuel } less fuel

# $in_year: text
# $days: count
fuel-spared-in-year = { $days ->
    [one] { $in_year } in a year of { $days } day
   *[other] { $in_year } in a year of { $days } days
}

# $fuel: span in l/100 km
# $in_year: text
# $days: count
fuel-spared-and-in-year = { $days ->
    [one] { $fuel } less fuel: { $in_year } in a year of { $days } day
   *[other] { $fuel } less fuel: { $in_year } in a year of { $days } days
}

## Before and after

# $saved: number
# $without: quantity in kWh
card-bars = { $saved } of { $without } saved

# What becomes of the heat, in three figures.
# $heat: quantity in kWh
card-heat-without = { $heat } end as heat in the discs on friction brakes only

# $heat: quantity in kWh
card-heat-with = { $heat } still do with regeneration

# $saved: quantity in kWh
card-heat-saved = { $saved } less come out of the battery

card-squares = Each square is a hundredth of what the drive takes on friction brakes only:

square-saved = saved

# $squares: count
# $name: text
square-count = { $squares } { $name }

## Lift-off

# $advice: text
card-lift-off = Lift-off: { $advice }

# $title: text
# $sentence: text
card-lift-off-pedal = { $title }. { $sentence }

# $strength: text
card-lift-off-advised = Lift-off is how strongly the car slows as the foot comes up. Advised: { $strength }.

# $yours: text
card-lift-off-set = **Set now: { $yours }.** What these cards say is worked out for that.

# $rules: text
# $changes: text
card-lift-off-why = { $rules }

    {""}**What would change it**

    { $changes }

## Winter

card-winter-in-words = Winter takes some of it away

card-winter-why = In the cold more energy goes into warming the cabin, and air and tyres resist more. What regeneration
    saves is then mostly a smaller part of the whole. A cold battery also takes less at first, so the discs do more.

    Summer and winter are the temperatures set for the year on the first page. It is a range, because nobody knows a car’s
    every figure.

## The limits

card-pedal = Lift-off may fade: press the pedal

# The rows of the picture, and what stands beside the two bars of each.
# $speed: quantity in km/h
pedal-row-usual = Usually, at { $speed }

pedal-foot-usual = foot up: the motor slows the car

pedal-usual = pedal pressed hard

# $left: one of none, some, all
# $share: share
pedal-foot-left = { $left ->
    [none] nothing of it left
    [some] { $share } of it left
   *[all] all of it left
}

pedal-as-ever = pedal as usual

# $there: one of rolling-on, gentle, firm, strong
pedal-foot-set = set { lift-off-word-there } beforehand

pedal-slippery = pedal weaker, but on all four wheels

# A row for who cannot see it.
# $name: text
# $foot: text
# $pedal: text
pedal-row = { $name }: { $foot }; { $pedal }.

card-limits-why = A full battery has no room, and a cold one takes charge slowly. Where a wheel would slip, the car’s
    slip control takes the motor’s slowing away. What is left of it can change from one slow-down to the next.

    A hard stop asks for far more than a motor gives. The friction brakes, on all wheels, do that work.

## Turning the cards

# $card: count
# $cards: count
card-place = { $card } of { $cards }

show-next-customer = Next customer

show-clears = This clears the drive, the car and everything else that was entered. Going back in this tab does not bring it
    up again; the browser’s own list of visited pages keeps its address.

show-clear = Clear everything

show-close = Close

show-back = Back

show-next = Next

show-why = Why?

show-drive = Drive

show-car = Car

show-another-drive = Another drive, leg by leg

## What the showroom sets for itself

showroom = Showroom

showroom-kept = For your own house: kept in this browser alone, apart from what a customer enters. It stays when the next
    customer comes.

showroom-line = Your line on the card to take

showroom-car = A name for the car that is set now

showroom-add-car = Keep this car

# $car: text
showroom-remove = Remove { $car }

showroom-prices = Keep the prices that are set now

# $currency: text
# $price: text
showroom-prices-kept = Kept: { $currency } { $price } per kWh, and what stands beside it under the year.

showroom-cars = Cars of this house

showroom-too-much = That is more than a browser keeps. Remove a car first.

showroom-link = A link to keep, for another tablet of yours:

showroom-forget = Forget all of this
