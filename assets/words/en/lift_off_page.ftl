# What the page Lift-off says itself; the advice is in a file of its own.

lift-off-set = Set as advised

lift-off-prefer = Where energy does not decide, you prefer the

lift-off-more = More on how this car slows

lift-off-rules = The rules, in their order

# $help: text
lift-off-legs-help = Another strength on single legs. { $help }

# A leg described, with the unit of its strength.
# $leg: count
# $described: text
# $unit: text
lift-off-of-leg = { $leg }. { $described }, { $unit }

lift-off-changes = What it changes

lift-off-afresh = Every strength is driven afresh from where the foot comes up, so yours differs a little from the first
    page, which keeps to the speeds described.

lift-off-would-change = What would change it

lift-off-others = Other strengths, against the advised

lift-off-leg-by-leg = Leg by leg

lift-off-brackets = The answer above is one strength for the whole drive. Here each leg is taken by itself, so that its own may
    differ; the brackets over the drive’s picture show it along the road, on the surface of each leg.

lift-off-hills = On hills, and for those behind

# $kind: one of rolling, yours, advised
# $strength: number
lift-off-name = { $kind ->
    [rolling] rolling on
    [yours] yours { $strength }
   *[advised] advised { $strength }
}

lift-off-holding = Holding a hill without the brake pedal

# $speed: quantity in km/h
lift-off-held = What just keeps { $speed }, with the battery as it is at the start of the drive:

# $unit: text
lift-off-hill-speed = Speed on the hill, { $unit }

lift-off-microscope = One slow-down under the microscope

# $unit: text
lift-off-slow-down = Slow down to, and from, { $unit }

lift-off-comfortable = How much is comfortable?

lift-off-mind = What to mind

# What unfolds the words about the picture on a telephone.
lift-off-lines = What the lines are
