# Of the drive: conditions, driver, legs, year: what each field is called, and a help. Ids end in the keys of files.
# A name begins with a small letter, as within a sentence, unless it always has a capital; labels get theirs in code.

## Conditions

conditions-ambient_c = outside temperature
    .help = Cold air is denser, cold tyres roll harder, a cold battery takes less.

conditions-cabin = cabin heating and cooling
    .help = Whether heater and air conditioning may run.

conditions-cabin_set_c = cabin temperature
    .help = What the heater aims at.

conditions-surface = road surface
    .help = Where a leg says otherwise, the slipperier of the two counts. Over the year snow and ice lie on winter
        days only.

conditions-tyres = tyres
    .help = What is fitted; any where it is not known.

conditions-tyres_warm = tyres and gears warm at the start
    .help = Cold tyres roll harder for the first kilometres, cold gear oil and bearings drag. By drive: warm on a
        standard cycle, which is driven warm in the laboratory, and cold on every other drive.

conditions-grip_level = grip within the surface’s band
    .help = −1: the least grip of the band, 0 mid, 1 the most.

conditions-wind_kmh = headwind
    .help = On the way out; on the way back it comes from behind. Negative: the other way round.

conditions-altitude_m = height above sea level
    .help = Of the start of the drive: thin air drags less. The drive’s own heights, and a recording’s, count from it.

conditions-soc_start = charge at the start
    .help = Share of the usable battery: 0 empty, 1 full.

conditions-shown_wh_per_km = average that the car shows for this drive
    .help = What its display says of this very drive, battery energy over distance. Keeps, of the cars that it could
        be, those that use as much.

conditions-battery_temp_c = battery temperature at the start
    .help = Left empty: as cold or warm as where the car stood, or { QUANTITY(20, unit: "°C") } when warmed up
        beforehand.

conditions-parked_c = temperature where the car stood
    .help = In a garage, say. Battery and cabin start from it. Left empty: as cold or warm as the air outside.

conditions-preconditioned = warmed up before leaving
    .help = Battery and cabin brought to temperature before the drive begins.

conditions-plugged_in = plugged in meanwhile
    .help = Whether warming up takes its energy from the wall. From the battery, it counts as energy of the drive.

conditions-stands_h = stands before the way back
    .help = Tyres, gear oil, cabin and battery cool meanwhile. Counts where there is a way back.

conditions-stands_plugged_in = plugged in there
    .help = Whether a car that is warmed up before leaving is warmed up for the way back too, from that plug. It is
        not charged meanwhile.

conditions-charging_stops = charging stops
    .help = The most there may be on the drive: one stands where the charge would fall to a tenth. Its time counts.

conditions-charge_stop_to = charge at a stop up to
    .help = Charging slows down as the battery gets full.

conditions-payload_kg = load
    .help = Passengers and luggage besides the driver.

conditions-trailer_kg = trailer
    .help = Its mass, loaded. It counts in the energy and in what a hill gives; whether car and trailer stay stable is
        not modelled. The trailer’s own brakes are left out.

conditions-trailer_drag_area_m2 = trailer’s extra drag area
    .help = Added to the car’s drag area where there is a trailer: a low box about 0.5, a caravan about 2.

## Driver

driver-looks_ahead = looks ahead
    .help = Early: lifts well ahead and slows gently. Late: stays on the accelerator and brakes harder.

driver-pull_away = pulls away
    .help = How hard the car is driven up to speed.

driver-steady_foot = steadiness of the foot
    .help = A restless foot lets the speed swing and slows more than needed, then speeds up again.

driver-lift_off_mps2 = lift-off strength
    .help = Total slowing on a flat road when the foot comes up, road load included.

driver-comes_to_rest = comes to rest without the brake pedal
    .help = Whether lift-off alone brings the car to a stop.

driver-slowing_on_request = more slowing only on request
    .help = Yes: the car rolls on when the foot comes up and slows at the lift-off strength when asked to, for a
        moment.

driver-prefers = prefers
    .help = What the advice on lift-off goes by where grip and energy leave a choice.

## A leg

leg-distance_km = distance
    .help = Length of this leg.

leg-speed_kmh = typical speed
    .help = The speed driven where nothing is in the way.

leg-stops = stops
    .help = Times the car comes to rest on this leg, its end included.

leg-slow_downs = slow-downs
    .help = Times the car slows without stopping: bends, roundabouts, traffic.

leg-slow_to_kmh = slows down to
    .help = Speed at the bottom of a slow-down.

leg-climb_m = climb
    .help = Height gained on this leg.

leg-descent_m = descent
    .help = Height lost on this leg.

leg-grade_pct = how steep
    .help = Steepness of the hills on this leg.

leg-surface = road surface
    .help = The slipperier of this and the season’s counts.

leg-lift_off_mps2 = lift-off strength here
    .help = Left empty: the same as on the rest of the drive.

leg-way = road
    .help = Where the leg leads.

leg-hill_km = over
    .help = Length of road that goes up or down; the rest of the leg is flat.

## The drive

drive-return_trip = there and back
    .help = Whether the legs are then driven back.

## The year

year-winter_days = days in winter
    .help = Days with this drive in winter.

year-winter_c = winter temperature
    .help = A usual winter day.

year-spring_days = days in spring
    .help = Days with this drive in spring.

year-spring_c = spring temperature
    .help = A usual spring day.

year-summer_days = days in summer
    .help = Days with this drive in summer.

year-summer_c = summer temperature
    .help = A usual summer day.

year-autumn_days = days in autumn
    .help = Days with this drive in autumn.

year-autumn_c = autumn temperature
    .help = A usual autumn day.

year-currency = currency
    .help = The sign that stands with prices; with US units $ until you choose.

year-price_per_kwh = price of electricity
    .help = Default: mean EU household price, first half of 2024, 0.2889 €/kWh (Eurostat, quoted second-hand); with US
        units 0.16 $/kWh, the mean US household price of 2023 (EIA, quoted second-hand).

year-co2_g_per_kwh = CO₂ of electricity
    .help = Default: about the EU mix of 2023, 210 g CO₂e/kWh (from memory); with US units that of the United States,
        2022, 390 g/kWh (EIA).

year-daily_charge_limit = daily charge limit
    .help = To what share the car is charged from day to day. Default 80 %: common practice, no source. Some makers advise
        it, others advise full charges: the owner’s manual says which.

year-now_fuel = the car you drive now
    .help = Of a hybrid with a plug only its fuel is counted, not what it charges.

year-now_l_per_100km = its consumption
    .help = Taken as you enter it: best from filling up, else from its display or its papers.

year-petrol_price_per_l = price of petrol
    .help = Default: 1.70 €/l with taxes; the mean of the EU’s 27 states was 1.68 €/l on 20 May 2024 (EU Weekly Oil
        Bulletin, quoted second-hand). With US units 3.30 $/gal, the US mean for regular of 2024 (EIA, quoted
        second-hand).

year-diesel_price_per_l = price of diesel
    .help = Default: 1.60 €/l with taxes; the mean of the EU’s 27 states was 1.57 €/l on 20 May 2024 (EU Weekly Oil
        Bulletin, quoted second-hand). With US units 3.76 $/gal, the US mean of 2024 (EIA, quoted second-hand).

## The drive in five answers

quick-distance_km = distance
    .help = One way.

quick-town_share = in town
    .help = Of the distance. It comes first and last, as where one lives and where one works.

quick-motorway_share = motorway
    .help = Of the distance. What is neither town nor motorway is country road.

quick-way = one hill
    .help = Between start and end. It stands on the longest leg.

quick-height_m = its height
    .help = Between the foot of the hill and its top.

quick-stops = stops
    .help = Times the car comes to rest, arriving included. They are spread over the town.
