# Which lift-off strength is advised, why, and what would change it.

# $word: one of rolling-on, gentle, firm, strong
# $strength: quantity in m/s²
advice-heading = { $word ->
    [rolling-on] Rolling on, { $strength }
    [gentle] Gentle, about { $strength }
    [firm] Firm, about { $strength }
   *[strong] Strong, about { $strength }
}

## The deciding fact

# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
# $axle: one of front, rear, all
# $most: quantity in m/s²
because-grip = More than { $most } would ask for over half of the grip of the { lift-off-wheels } { lift-off-on-road }.

# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
# $axle: one of front, rear, all
# $most: quantity in m/s²
# $strength: quantity in m/s²
because-grip-and-no-more-gained = More than { $most } would ask for over half of the grip of the { lift-off-wheels }
    { lift-off-on-road }; between { $strength } and { $most } it makes next to no difference.

# $pedal: one of blended, friction
# $of: one of drive, leg
# $strength: quantity in m/s²
# $more: share
because-less-takes-energy = Below { $strength } { $of ->
    [drive] the drive
   *[leg] such a leg
} takes up to { $more } more energy than at best, because { $pedal ->
    [friction] the brake pedal works the friction brakes only.
   *[blended] later and harder braking leaves more to the friction brakes.
}

# $most: quantity in m/s²
because-more-takes-energy = Above { $most } a foot that slows too much and speeds up again takes over 1 % more energy.

because-gentlest-ride = Energy is within 1 % of the best, and you prefer the gentlest ride.

because-nothing-is-spared = More strength would spare you next to no presses of the brake pedal and no energy to speak of.

# $presses: count
# $rolling: count
because-fewest-presses = Energy is within 1 % of the best, and you would press the brake pedal { $presses ->
    [0] never
    [one] once
   *[other] { $presses } times
}, against { $rolling ->
    [one] once
   *[other] { $rolling }
} in a car that rolls on.

# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
lift-off-on-road = { $road ->
    [dry] on a dry road
    [wet] on a wet road
    [standing-water] on standing water
    [snow] on packed snow
    [ice] on ice
   *[glazed-ice] on glazed ice
}

# $axle: one of front, rear, all
lift-off-wheels = { $axle ->
    [front] front wheels
    [rear] rear wheels
   *[all] wheels
}

## The rules, in their order

rule-grip = First, lifting off may ask for half of the grip of the driven wheels on the season’s road, no more.

rule-energy = Then, energy as you would drive it must be within 1 % of the best.

rule-preference = Then, as you prefer: the fewest presses of the brake pedal, give or take one in twenty, or the gentlest
    ride.

rule-gentler = Between equals, the gentler wins.

# $rule: text
rule-that-decided = **{ $rule }** This one decided here.

## On slippery roads

# What to set before one comes to it, and what the road holds where it grips least.
# $road: one of snow, ice, glazed-ice
# $advised: text
# $held: quantity in m/s²
advice-on-one-road = Before { $road ->
    [snow] packed snow
    [ice] ice
   *[glazed-ice] glazed ice
} set { $advised }: it may hold only { $held }. { slippery-advice-differs }

slippery-advice-differs = Experts disagree; the manual comes first.

# $advised: text
# $on_snow: number
# $on_ice: quantity in m/s²
advice-on-snow-or-ice = Before packed snow or ice set { $advised }: snow may hold only { $on_snow }, ice { $on_ice }.
    { slippery-advice-differs }

# $snow: text
# $ice: text
# $on_snow: number
# $on_ice: quantity in m/s²
advice-on-snow-and-on-ice = Before packed snow set { $snow }, before ice { $ice }: they may hold only { $on_snow } and
    { $on_ice }. { slippery-advice-differs }

# $word: one of rolling-on, gentle, firm, strong
# $strength: quantity in m/s²
advised-strength = { lift-off-word }, { $strength }

# Over a stretch of the drive, whose advice may differ from that for the whole.
# $strength: text
advised-on-part = for this part: { $strength }

# $word: one of rolling-on, gentle, firm, strong
lift-off-word = { $word ->
    [rolling-on] rolling on
    [gentle] gentle
    [firm] firm
   *[strong] strong
}

## The advice in words alone, to be read at two metres

# $there: one of rolling-on, gentle, firm, strong
lift-off-word-there = { $there ->
    [rolling-on] none
    [gentle] gentle
    [firm] firm
   *[strong] strong
}

# $word: one of rolling-on, gentle, firm, strong
# $there: one of rolling-on, gentle, firm, strong
# $road: one of snow, ice, glazed-ice, snow-or-ice
advice-in-words = { $road ->
    [snow] { lift-off-word }, but { lift-off-word-there } on packed snow
    [ice] { lift-off-word }, but { lift-off-word-there } on ice
    [glazed-ice] { lift-off-word }, but { lift-off-word-there } on glazed ice
   *[snow-or-ice] { lift-off-word }, but { lift-off-word-there } on snow or ice
}

# $word: one of rolling-on, gentle, firm, strong
# $snow: text
# $ice: text
advice-in-words-apart = { lift-off-word }, but { $snow } on snow and { $ice } on ice

# $word: one of rolling-on, gentle, firm, strong
advice-in-words-alike = { lift-off-word }, on snow and ice too

# Where the strength that is set breaks the rule of grip.
# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
# $yours: quantity in m/s²
advice-yours-asks-too-much = Yours, { $yours }, asks for over half of the grip of the driven wheels { lift-off-on-road }.

## What would change the advice

# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
would-change-on-road = { lift-off-on-road }

would-change-for-gentlest-ride = for passengers who want the gentlest ride

would-change-for-fewest-presses = for the fewest presses

# $pedal: one of blended, friction
would-change-with-pedal = { $pedal ->
    [blended] with a blended brake pedal
   *[friction] with a friction-only brake pedal
}

# $speed: quantity in km/h
# $slope: quantity in %
would-change-on-hill = to keep { $speed } on a { $slope } downhill without the brake pedal

nothing-would-change-it = Neither another road surface, other passengers, the other kind of brake pedal nor a hill would.

## What speaks against another strength

# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
against-grip = asks for over half of the grip { lift-off-on-road }

against-energy = takes over 1 % more energy than at best

# $presses: count
# $instead: count
against-presses = { $presses ->
    [one] { $presses } press
   *[other] { $presses } presses
} of the brake pedal instead of { $instead }

against-strength = stronger than it need be

# $road: one of dry, wet, standing-water, snow, ice, glazed-ice
road-in-an-answer = { $road ->
    [dry] a dry road
    [wet] a wet road
    [standing-water] standing water
    [snow] packed snow
    [ice] ice
   *[glazed-ice] glazed ice
}
