# What regeneration saves: the headline, the figures below it, the year, and what must stand beside them.

## The headline. The share is the band of energy saved over the same drive on friction brakes only

saved-nothing = Next to nothing saved: no less battery energy than the same drive on friction brakes only.

saved-hardly = Hardly anything saved: under 1 % less battery energy than the same drive on friction brakes only.

# $share: shares
saved-share = About { $share } less battery energy than the same drive on friction brakes only.

# The battery ends fuller than it began, even on friction brakes only.
# $more: span in kWh
saved-hill-drives = The hill does the driving: slowing with the motor leaves the battery { $more } fuller than the same
    drive on friction brakes only.

# $without: span in kWh
saved-ends-fuller = The battery ends fuller than it began. The same drive on friction brakes only takes about { $without }
    out of it.

no-answer = There is no answer yet: the drive cannot be driven as described.

# $drive: text
answer-before = **In grey, the last answer:** { $drive }, before that entry.

# $driven: quantity in minutes
# $described: number
not-followed = This car cannot keep up with the speeds described. It was driven as fast as motor and battery allow, and
    took { $driven } instead of { $described }.

# Beside the figures that changed with the units, and beside the choice of units.
# $us: yes or no
# $currency: text
# $price: number
# $co2: quantity in g
moved-prices = With the units, prices and CO₂ changed to those usual { $us ->
    [yes] in the United States
   *[no] in the EU
}: { $currency } { $price } and { $co2 } a kWh.

## Figures below the headline: what, how much, beside what

# $taken: quantity in kWh
# $fuller: yes or no
drive-takes = { $fuller ->
    [yes] the battery ends { $taken } fuller
   *[no] the drive takes about { $taken }
}

on-this-drive = On this drive

on-a-full-battery = On a full battery

range-none = no range to give

range-none-why = this drive takes next to nothing: its hill drives

in-fuel = In fuel

fuel-beside = less, depending on how well the engine works in traffic

## The year

# $days: count
year-of-days = { $days ->
    [one] In a year of { $days } day
   *[other] In a year of { $days } days
}

# $energy: span in kWh
year-wall = { $energy } from the wall

# $fuel: span in l
year-fuel = { $fuel } of fuel

# $fuel: span in l
# $energy: span in kWh
year-fuel-and-wall = { $fuel } of fuel and { $energy } from the wall

# $currency: text
# $money: numbers
# $co2: span in kg
year-worth-no-fuel = { $currency } { $money }, { $co2 } CO₂; next to no fuel

year-fuel-beside = less, each season at its own temperature

# $currency: text
# $money: numbers
# $co2: span in kg
year-fuel-and-wall-beside = less, each season at its own temperature; of the electricity alone { $currency } { $money },
    { $co2 } CO₂

year-snow = Each day of the year has the temperature of its season, whatever day is shown above. Snow and
    ice, where you set them, lie on winter days only; in the other seasons that road is dry.

hybrid-energy = For a hybrid, battery energy includes what its engine gives in the battery’s place; what that saves is
    fuel.

# In one line, on a telephone.
# $share: text
in-sight = { $share } less than on friction brakes only

# $share: text
# $range: span in km
in-sight-range = { $share } less than on friction brakes; { $range } a battery

## What must be said along with it

caution = Estimates for explanation, not a promise of range or a car’s setting. Your owner’s manual, local law and licensed
    instructors come first.

no-substitute = Regeneration neither replaces the friction brakes in an emergency nor holds the car on a hill.

may-be-weaker = With a full or cold battery, or on a slippery road, it may be weaker than you are used to, or absent.

press-the-pedal = Leave more room, and press the brake pedal: it brakes whatever the battery takes.

# $link: text
# $here: text
link-of-other-version = This link was made with version { $link } of the model; this is version { $here }, so numbers may
    have moved. The change log under “Sources and method” says what was changed.

## Cards

card-blended = The brake pedal charges too

card-blended-press = Press it early and gently: the motor slows the car first, the discs do only what is left.

card-blended-comfort = So how strongly the car slows when the foot comes up is a matter of comfort. At the same speeds it
    changes the energy by next to nothing.

card-friction = Lift the foot early

card-friction-why = In this car the brake pedal works the discs alone. Only what the car slows by itself, with the foot off
    the accelerator, comes back to the battery.

card-limits = What can take regeneration away

# $saved: text
card-winter = In winter it saves { $saved }

card-winter-less = Less than the same drive on friction brakes only.

# $in_summer: shares
card-winter-share = A share of the battery energy that the same winter drive takes on friction brakes only; in summer it
    is { $in_summer }.

# $air: quantity in °C
# $in_winter: text
# $in_summer: text
card-winter-taken = On a winter day, at { $air }, { $in_winter }; on a summer day { $in_summer }.

# $air: quantity in °C
# $in_winter: span in km
# $in_summer: span in km
card-winter-range = A full battery reaches { $in_winter } on a winter day, at { $air }, and { $in_summer } on a summer day.

# $saved: span in kWh
card-winter-saved = In winter { $saved } are saved.

## The way to the cards

guide = Guide me

guide-help = Six cards from your drive to its answer and its limits. Close them whenever you like.

## Opening a drive again

# $file: text
# $here: text
file-of-other-version = This file was made by version { $file } of the model; this is version { $here }.

# $share: share
saved-as-then = Then as now, { $share } of the energy is saved.

# $earlier: share
# $now: share
saved-then-and-now = Then { $earlier } of the energy was saved; now it is { $now }.
