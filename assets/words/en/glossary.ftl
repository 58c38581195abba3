# The terms that the pages use, in plain words: each with what it means.

# $term: text
# $meaning: text
glossary-entry = **{ $term }.** { $meaning }

term-regenerative-braking = Regenerative braking

meaning-regenerative-braking = Slowing the car with its motor, which then works as a generator and charges the battery.

term-friction-brakes = Friction brakes

meaning-friction-brakes = Discs and pads (or drums). They turn motion into heat, and none of it comes back.

term-blended = Blended brake pedal

meaning-blended = The pedal asks the motor first and adds the friction brakes where that is not enough.

term-friction-only = Friction-only pedal

meaning-friction-only = The pedal works the friction brakes alone. The motor slows the car only on lift-off.

term-lift-off = Lift-off strength

meaning-lift-off = How hard the car slows on a flat road when the foot comes off the accelerator, air and tyres included.
    Given in metres per second, each second (m/s²), or in US units in g, the pull of gravity.

term-road-load = Road load

meaning-road-load = What holds a moving car back on a flat road: air and the rolling of the tyres.

term-counterfactual = Counterfactual

meaning-counterfactual = The drive that yours is compared to: the same speeds, with friction brakes only.

term-recovered-share = Recovered share

meaning-recovered-share = Energy put back into the battery over energy taken out of it on the same drive. It is not the
    energy saved: the two differ by a few points.

term-energy-saved = Energy saved

meaning-energy-saved = How much less the battery gives on your drive than on the same drive with friction brakes only, as a
    share of the latter.

term-range-gain = Range gain

meaning-range-gain = How much further a full battery goes. Saving a fifth of the energy takes the car a quarter further.

term-state-of-charge = State of charge

meaning-state-of-charge = How full the battery is, as a share of what can be used of it.

term-charge-acceptance = Charge acceptance

meaning-charge-acceptance = The most power a battery takes. It falls as the battery gets fuller or colder.

term-ledger = Ledger

meaning-ledger = The books of the drive: every watt-hour out of the battery, and what became of it.

term-terminals = Terminals

meaning-terminals = The battery’s two poles, where what goes out and comes in is counted. Heat in the cells arises behind
    them.

term-band = Band

meaning-band = Made to hold nine in ten measured cars: of the runs over the assumed figures, and over what cars of
    one weight, road load and power still differ in, 5 in 100 lie below it and 5 above.

term-net-energy = Net energy

meaning-net-energy = What the battery gave less what it got back.

term-kwh = kWh and Wh

# $reach: quantity in km
meaning-kwh = Kilowatt-hour and watt-hour: amounts of energy. 1 kWh is 1000 Wh, and takes an ordinary electric car some
    { $reach }.

term-kw = kW

meaning-kw = Kilowatt: how fast energy flows.

term-standard-cycle = Standard cycle

meaning-standard-cycle = A speed, second by second, that a regulation lays down so that cars can be compared.
