# How far, how much, for how much: beside what regeneration saves, and beside the car that is driven now.

## On one drive

# $gain: span in km
# $limit: share
# $daily: span in km
# $full: yes or no
range-made-of = { $full ->
    [yes] { $gain } of it from regeneration
   *[no] { $gain } of it from regeneration; charged to { $limit } it is { $daily }
}

# $taken: quantity in kWh
# $saved: span in kWh
# $fuller: yes or no
# $heats: yes or no
# $cabin: share
drive-takes-less = { $fuller ->
    [yes] the battery ends { $taken } fuller; { $saved } of regeneration
   *[no] takes about { $taken }{ $heats ->
        [yes] , { $cabin } of it for the cabin
       *[no] {""}
    }; { $saved } saved
}

## Easily mixed up: three energies of one drive, from middle figures

mixed-up = Easily mixed up

made-name = Made by the motor

# $wheels: quantity in kWh
made-beside = of electricity while it slows the car, out of { $wheels } of motion that it takes at the wheels

back-name = Put back

# $aboard: quantity in kWh
back-beside = into the battery; the other { $aboard } go straight to heater, lights and computers

back-beside-all = into the battery: all of it

saved-name = Saved

# $more: yes or no
# $spared: quantity in kWh
saved-beside = less out of the battery than the same speeds take on friction brakes only: what the motor makes{ $more ->
    [yes] , and { $spared } that its electronics draw from the battery in slow-downs when it makes nothing
   *[no] {""}
}

# $made: quantity in kWh
# $back: quantity in kWh
# $saved: quantity in kWh
paper-mixed-up = made by the motor { $made } (electricity, while it slows the car); put back { $back } (into the battery);
    saved { $saved } (less out of the battery than on friction brakes only)

## In a year

# $currency: text
# $cost: numbers
year-cost = { $currency } { $cost } for electricity

# $currency: text
# $money: numbers
year-cost-beside = all seasons, whatever the day shown; without regeneration { $currency } { $money } more

# $energy: span in kWh
# $co2: span in kg
year-rest = Without regeneration the year would take { $energy } more from the wall, which stands for { $co2 } of CO₂.

## The car that is driven now

beside-drawer = Beside the car you drive now

# $fuel: one of petrol, diesel, hybrid
beside-name = { $fuel ->
    [petrol] Your petrol car now
    [diesel] Your diesel car now
   *[hybrid] Your hybrid now
}

# $currency: text
# $cost: number
# $fuel: one of petrol, diesel, hybrid
beside-cost = { $fuel ->
    [diesel] { $currency } { $cost } for diesel
   *[petrol] { $currency } { $cost } for petrol
    [hybrid] { $currency } { $cost } for petrol
}

# $distance: quantity in km
# $used: quantity in litres/100 km
# $currency: text
# $price: quantity in per l
# $yours: yes or no
beside-made-of = on the same { $distance }: { $used }, as you say, at { $currency } { $price }, { $yours ->
    [yes] your price
   *[no] near the official means of 2024: yours to change
}

# The two bars.
# $currency: text
# $cost: numbers
beside-bar-yours = The car described: { $currency } { $cost } of electricity a year

# $fuel: one of petrol, diesel, hybrid
# $currency: text
# $cost: number
beside-bar-now = { $fuel ->
    [petrol] Your petrol car now: { $currency } { $cost } of petrol
    [diesel] Your diesel car now: { $currency } { $cost } of diesel
   *[hybrid] Your hybrid now: { $currency } { $cost } of petrol
}

# Both cars by name, each with its own sum.
# $car: text
# $fuel: one of petrol, diesel, hybrid
# $distance: quantity in km
# $currency: text
# $cost: numbers
# $fuel_cost: number
beside-both = { $fuel ->
    [petrol] Over the same { $distance } in a year, the { $car } takes electricity for { $currency } { $cost }, and the petrol
        car you drive now takes petrol for { $currency } { $fuel_cost }.
    [diesel] Over the same { $distance } in a year, the { $car } takes electricity for { $currency } { $cost }, and the diesel
        car you drive now takes diesel for { $currency } { $fuel_cost }.
   *[hybrid] Over the same { $distance } in a year, the { $car } takes electricity for { $currency } { $cost }, and the hybrid
        you drive now takes petrol for { $currency } { $fuel_cost }.
}

# How far the two sums are apart; what is larger may be in doubt.
# $larger: one of fuel, electricity, neither
# $fuel: one of petrol, diesel, hybrid
# $car: text
# $currency: text
# $apart: numbers
beside-apart = { $larger ->
    [fuel] The two sums are { $currency } { $apart } apart; the larger is { $fuel ->
        [petrol] for the petrol of the car you drive now.
        [diesel] for the diesel of the car you drive now.
       *[hybrid] for the petrol of the hybrid you drive now.
    }
    [electricity] The two sums are { $currency } { $apart } apart; the larger is for the electricity of the { $car }.
   *[neither] Which of the two sums is the larger cannot be told: one lies within the band of the other.
}

beside-left-out = Neither sum includes purchase, tax, insurance, upkeep or a charging point.

beside-none = Enter what your car uses now, and the year of both stands side by side.

beside-no-hybrid = No sum stands here for a hybrid. What regeneration saves it is known within a band; how much fuel it
    burns in all depends on how its engine works, which this model leaves out.

# $currency: text
# $unit: text
# $fuel: one of petrol, diesel, hybrid
beside-price = { $fuel ->
    [diesel] Diesel, { $currency } { $unit }
   *[petrol] Petrol, { $currency } { $unit }
    [hybrid] Petrol, { $currency } { $unit }
}

# $price: text
# $used: text
beside-help = Consumption: { $used } Price: { $price }
