"""The terms that the pages use, in plain words."""

GLOSSARY = {
    "Regenerative braking": "Slowing the car with its motor, which then works as a generator and charges the battery.",
    "Friction brakes": "Discs and pads (or drums). They turn motion into heat, and none of it comes back.",
    "Blended brake pedal": "The pedal asks the motor first and adds the friction brakes where that is not enough.",
    "Friction-only pedal": "The pedal works the friction brakes alone. The motor slows the car only on lift-off.",
    "Lift-off strength": "How hard the car slows on a flat road when the foot comes off the accelerator, air and tyres "
    "included. In metres per second, each second (m/s²).",
    "Road load": "What holds a moving car back on a flat road: air and the rolling of the tyres.",
    "Counterfactual": "The drive that yours is compared to: the same speeds, with friction brakes only.",
    "Recovered share": "Energy put back into the battery over energy taken out of it on the same drive. It is not the "
    "energy saved: the two differ by a few points.",
    "Energy saved": "How much less the battery gives on your drive than on the same drive with friction brakes only, "
    "as a share of the latter.",
    "Range gain": "How much further a full battery goes. Saving a fifth of the energy takes the car a quarter further.",
    "State of charge": "How full the battery is, as a share of what can be used of it.",
    "Charge acceptance": "The most power a battery takes. It falls as the battery gets fuller or colder.",
    "Ledger": "The books of the drive: every watt-hour out of the battery, and what became of it.",
    "Terminals": "The battery's two poles, where what goes out and comes in is counted. Heat in the cells arises "
    "behind them.",
    "Band": "Where an answer lies while the assumed figures are varied: 5 of 100 runs lie below it, 5 above.",
    "Net energy": "What the battery gave less what it got back.",
    "kWh and Wh": "Kilowatt-hour and watt-hour: amounts of energy. 1 kWh is 1000 Wh, and takes an ordinary electric "
    "car some 6 km (4 miles).",
    "kW": "Kilowatt: how fast energy flows.",
    "Standard cycle": "A speed, second by second, that a regulation lays down so that cars can be compared.",
}
