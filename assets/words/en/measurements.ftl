# What was measured: a row of assets/measurements.csv each, by its id, as it stands within a sentence.

measurement-wager-range = more range by setting and cycle, one micro electric hatch on a dynamometer
measurement-adac-town = recovered in town
measurement-adac-wltc-mean = mean of the cars measured on WLTC
measurement-adac-wltc-cars = worst and best car measured on WLTC
measurement-doe-city = put back on the US city cycle
measurement-doe-highway = put back on the US highway cycle
measurement-doe-combined = put back on the combined US cycles
measurement-ratio-by-arithmetic = 0.22 / (1 - 0.22) over 0.22, if no energy flows past the battery
measurement-recuperation-lost = range lost because cold limits recuperation, two cars on the road
measurement-heating-lost = range lost by heating, two cars on the road
measurement-cold-together = range lost by heating and limited recuperation together, two cars
measurement-brake-dust = less brake dust with a plug-in hybrid’s regeneration (PM2.5 −78 %, PM10 −85 %, particle
    number −87 %)
measurement-euro-7-share = one less 0.15, the friction share that the Euro 7 rules credit to electric cars
measurement-kinetic = half the mass times speed squared
measurement-training = less energy after training drivers of 67 cars to look ahead: the driver, not the pedal
measurement-hill-loop-share = headline for a light and a heavy car; the light car’s own figures make 27 %
measurement-hill-loop-use = car of { QUANTITY(1180, unit: "kg", digits: 4) } and car of { QUANTITY(2830, unit: "kg", digits: 4) }
    on the same hill loop
measurement-pass-share = { QUANTITY(20, unit: "km") } and { QUANTITY(1000, unit: "m") } up, then down: 1.9 of 7.1 kWh
    at { QUANTITY(1500, unit: "kg") }, 3.7 of 12.1 kWh at { QUANTITY(2500, unit: "kg") }
measurement-weight-use = by cycle and size
measurement-aaa-cold-heated = range lost at { QUANTITY(-6.7, unit: "°C", digits: 2) } with the cabin heated, mean of
    five cars
measurement-aaa-cold-unheated = range lost at { QUANTITY(-6.7, unit: "°C", digits: 2) } with the heater off, mean of
    five cars
measurement-aaa-cold-newer = range lost at { QUANTITY(-6.7, unit: "°C", digits: 2) } with the cabin at { QUANTITY(22, unit: "°C") },
    mean of the battery cars
measurement-aaa-cold-hybrids = less distance on the same fuel at { QUANTITY(-6.7, unit: "°C", digits: 2) }, hybrids;
    battery cars lost 39 % of range: the heater counts too
measurement-anl-cold-city = range nearly halved, as consumption nearly doubled, on UDDS driven cold at { QUANTITY(-6.7, unit: "°C", digits: 2) },
    one compact hatch of 2012
    .number = nearly halved
measurement-winter-drive = below the WLTP range on one winter drive of mixed roads, 31 cars: all lost over 10 %, some
    nearly a third
measurement-winter-drives = below the WLTP range on winter drives of mixed roads, over 80 cars
measurement-stop-by-mechanics = from { QUANTITY(100, unit: "km/h") }: { QUANTITY(1.3, unit: "m/s²") } takes { QUANTITY(154, unit: "m", digits: 3) },
    { QUANTITY(9, unit: "m/s²") } takes { QUANTITY(43, unit: "m") }
measurement-longest-stop = longest stop that the brakes are allowed from { QUANTITY(100, unit: "km/h") }
measurement-two-megawatts = needs about { QUANTITY(2700, unit: "kg") }, { QUANTITY(260, unit: "km/h") } and more than
    1.05 g
