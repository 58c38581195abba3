# The slippery road.

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
grip-heading = { $surface ->
    [dry] Grip, on your road as it is: dry
    [wet] When the road is slippery
    [standing-water] When the road is slippery
    [snow] When the road is slippery
    [ice] When the road is slippery
   *[glazed-ice] When the road is slippery
}

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
# $bend: one of straight-on, roundabout, tight-bend, bend, gentle-bend
# $speed: quantity in km/h
# $foot: one of lift-off, rolling
# $strength: quantity in m/s²
# $wheels: one of front, rear, both
# $margin: one of bend-alone, none, small, moderate, larger
# $set: one of as-it-is, gentler, advised, never
# $most: quantity in m/s²
# $advised: text
grip-asked = { $surface ->
    [dry] On a dry road
    [wet] On a wet road
    [standing-water] On standing water
    [snow] On packed snow
    [ice] On ice
   *[glazed-ice] On glazed ice
}{ $bend ->
    [straight-on] {""}
    [roundabout] {" "}in a roundabout
    [tight-bend] {" "}in a tight bend
    [bend] {" "}in a bend
   *[gentle-bend] {" "}in a gentle bend
} at { $speed } { $margin ->
    [bend-alone] the bend alone asks for more grip than there is: no margin is left, whatever the lift-off.
   *[larger] { $foot ->
        [lift-off] your lift-off of { $strength }
       *[rolling] rolling on
    } { $margin ->
        [none] asks for more grip than there is: there is no margin, and { $wheels ->
            [front] the front wheels
            [rear] the rear wheels
           *[both] all four wheels
        } would slide before slip control steps in.
        [small] may ask for more grip than there is: the margin is small.
        [moderate] asks for over half of the least grip there is: the margin is moderate.
       *[larger] asks for at most half of the least grip there is.
    }
}{ $set ->
    [as-it-is] {""}
    [gentler] {" "}The road may hold only { $most }.
    [advised] {" "}The road may hold only { $most }; advised on this drive: { $advised }.
   *[never] {" "}Where there is least grip, no lift-off holds: set rolling on.
}
grip-caution = Margin is a word for these assumptions alone: stability control is not modelled.

# The figures behind it.
# $wheels: one of front, rear, both
# $asked: number
# $gives: numbers
grip-in-figures = { $wheels ->
    [front] The front wheels are
    [rear] The rear wheels are
   *[both] All four wheels are
} asked for a grip of { $asked } of the weight they carry; the road gives { $gives }. { grip-is }
grip-is = Grip is the share of the weight on an axle with which its tyres can push along or across the road.

# What it comes to.

grip-largest = Largest lift-off
grip-largest-beside = the strongest for which there is grip, over the road’s band
grip-largest-bend-alone = with the least grip of the band the bend alone asks for all there is

# $slower: quantity in km/h
grip-slower = { $slower } slower
grip-slower-beside = would be the largest in this bend

grip-lets-go = If it lets go

# What happens first when more grip is asked than there is.
# $wheels: one of front, rear, both
grip-failure = { $wheels ->
    [front] the nose runs wide
    [rear] the tail steps out
   *[both] all four wheels let go together
}
grip-lets-go-beside = what happens first when more is asked than there is

# $slip: share
# $delay: quantity in s
grip-slip = with the least grip the wheels turn { $slip } slower than the road when slip control acts, { $delay } later
    (assumed)

grip-pedal = Brake pedal

grip-pedal-beside = what friction brakes with ABS may reach straight on: they brake four wheels

grip-weight = Weight in front

# $share: share
grip-weight-beside = while slowing; standing still { $share }

grip-slope = On this slope

# $downhill: yes or no
grip-slope-beside = is what the lift-off comes to: the slope { $downhill ->
    [yes] pulls against it
   *[no] adds to it
}

grip-trailer-beside = pushes with its mass and puts no weight on the driven wheels; whether car and trailer stay stable is
    not modelled

# Bands of strengths.

# $strongest: quantity in m/s²
strength-over = over { $strongest }
strength-none = none

# $least: number
# $strongest: quantity in m/s²
strength-band-beyond = { $least } to more than { $strongest }

# What to do.

# Where more is asked than the road gives.
# $alone: yes or no
grip-do-none = { $alone ->
    [yes] **Go slower into this bend, or not at all**: before any lift-off it asks for more than this road gives.
   *[no] **Do not let the foot come up all at once**: this road cannot give the grip that takes. Ease it up, well before
        you need to be slower.
} Whether to drive on such a road is the first question; what the manual says of it comes before this page.

# $advice: text
grip-do-set = **Set it for the road**, or see whether the car has a setting for slippery ones. { $advice }
grip-do-early = **Slow down early and straight on**, before the bend. Steering and slowing share one grip.

# $axle: one of front, rear, all
grip-do-pedal = **Brake with the pedal, gently.** It works on four wheels with ABS; lift-off works on { $axle ->
    [front] the front wheels
    [rear] the rear wheels
   *[all] all four wheels
} through the motor.

# $surface: one of dry, wet, standing-water, snow, ice, glazed-ice
# $times: number
grip-do-tyres = **Winter tyres do more than any setting**: { on-the-road } they have { $times } times the grip of summer
    tyres in the figures used here.

# What to mind.

grip-mind-trailer = **With a trailer**, strong slowing of one axle on a slippery slope can make car and trailer jackknife.
    Keep lift-off gentle, and do what the manual says of the trailer’s own brakes.
grip-mind-slide = **If it slides**, look and steer where you want to go, and do what your training and the manual say,
    whether that is a little accelerator or the brake pedal. A licensed instructor can show it on a closed course.
grip-mind-first-time = **A slippery road is no place to try a strong setting for the first time.**
grip-mind-margin = **What a margin is.** { margin-rule } On ice grip spreads so widely that no one figure holds (SAE 960959).
margin-rule = No margin: more grip is asked than the high end of the road’s band gives. Small: more than its low end gives.
    Moderate: more than half of that. Larger: no more than half of it.

# Both axles from above.

# $margin: one of none, small, moderate, larger
axles-title = { $margin ->
    [larger] What is asked lies well inside what there is
    [moderate] What is asked lies inside what there is
    [small] What is asked reaches beyond what there may be
   *[none] What is asked reaches beyond all there is
}
axles-words = The car from above. Each arrow is what is asked of an axle: back for slowing, aside for the bend. Inside the
    firm ellipse the least grip of the road’s band is enough, outside the dotted one not even the most.

# $front: number
# $rear: number
# $gives: numbers
axles-numbers = Front axle asked for { $front } of grip, rear axle asked for { $rear } of grip; there is { $gives }.

# $axle: one of front, rear
axle-name = { $axle ->
    [front] Front axle
   *[rear] Rear axle
}

# $share: share
axle-weight = { $share } of the weight

# $asked: number
axle-asked = asked for { $asked }

# $gives: numbers
axle-there-is = there is { $gives }

axles-column-axle = Axle
axles-column-along = Asked along
axles-column-across = Asked across
axles-column-in-all = Asked in all
axles-column-weight = Share of the weight

# The largest lift-off on every road.

# $yours: quantity in m/s²
# $without: one of nowhere, some, everywhere
# $no_margin: list
# $small: one of nowhere, some, everywhere
# $small_margin: list
roads-title = { $without ->
    [nowhere] { $small ->
        [nowhere] Each of these roads has more grip than your { $yours } asks for
        [everywhere] Your { $yours } may be too much for every one of these roads
       *[some] Your { $yours } may be too much for { $small_margin }
    }
    [everywhere] Your { $yours } is too much for every one of these roads
   *[some] Your { $yours } is too much for { $no_margin }{ $small ->
        [nowhere] {""}
       *[some] , and may be for { $small_margin }
    }
}
roads-words = Each road is as long as the lift-off that it holds: firm as far as its least grip goes, fading out to its most.
    “Sources and method” says where the figures are from.

# Where a road may end before the driver's lift-off, with what its least grip holds.
# $yours: number
roads-yours = your lift-off, { $yours }

# $margin: one of none, small, moderate, larger
roads-margin = { $margin ->
    [none] no margin
    [small] small margin
    [moderate] moderate margin
   *[larger] larger margin
}

# $margin: one of none, small, moderate, larger
# $most: quantity in m/s²
roads-may-hold = { roads-margin }: may hold only { $most }

# $margin: one of none, small, moderate, larger
roads-no-lift-off = { roads-margin }: no lift-off holds

# The picture in figures, road by road.
# $roads: list
roads-numbers = By road: { $roads }.

# $road: text
# $margin: text
roads-number = { $road }, { $margin }

roads-column-road = Road

# $unit: text
roads-column-least = Least, { $unit }

# $unit: text
roads-column-middle = Middle, { $unit }

# $unit: text
roads-column-most = Most, { $unit }

roads-column-margin = Margin

# Weight shift.

# $standing: share
# $braking: share
weight-title = Hard braking moves the front axle’s share of the weight from { $standing } to { $braking }
weight-words = Lift-off moves little of it. It is why front wheels can slow more than rear ones, and why a strong lift-off
    on the rear wheels alone is the first to run out of grip. Choose a bend to see what the axles’ shares do.

# $axle: one of front, rear
# $share: share
weight-line = { $axle ->
    [front] front
   *[rear] rear
} { $share }

# $yours: number
weight-yours = your lift-off { $yours }


# $unit: text
weight-column-slowing = Slowing, { $unit }

weight-column-front = Front axle
weight-column-rear = Rear axle

# Slowing shared between the axles in a bend.

balance-title = In a bend the axle that slows is the one that lets go first
balance-words = The same lift-off in this bend, shared differently between the axles. Where the rear axle is asked for
    more, the tail tends to step out; where the front is, the nose tends to run wide.

# $axle: one of front, rear
balance-line = { $axle ->
    [front] front axle
   *[rear] rear axle
}
balance-road = the road gives

# $axle: one of front, rear
balance-driven = { $axle ->
    [front] front driven
   *[rear] rear driven
}
balance-column-share = Slowing by the front axle
balance-column-front = Asked of the front axle
balance-column-rear = Asked of the rear axle

# How sharp a bend is.

bend-label = Bend

# $bend: one of straight-on, roundabout, tight-bend, bend, gentle-bend
bend-name = { $bend ->
    [straight-on] straight on
    [roundabout] roundabout
    [tight-bend] tight bend
    [bend] bend
   *[gentle-bend] gentle bend
}

# Who advises what on regeneration in winter, and on what ground.

advice-title = Experts disagree
advice-of-a-club = advice of a motoring club

# As the press reported it.
# $who: text
advice-in-the-press = { $who }, as reported in the press

advice-lowest-level = Choose the lowest level: strong regeneration can make the car unstable, since ABS and stability
    control cannot step in fast enough.
advice-could-unsettle = It could unsettle the car, but ABS usually watches over it.
advice-not-without-reservation = Does not support without reservation the advice to avoid regeneration.

# $speed: quantity in km/h
advice-six-cars = six all-wheel-drive cars on bare ice with studless tyres, foot lifted in a bend at { $speed }; the
    results of its test of front- and rear-driven cars in 2023 were not seen
advice-oversteer-grows = Oversteer grows, even when stability control has stepped in.
advice-two-cars-measured = two rear-driven cars, measured; abstract
advice-manuals = Owners’ manuals of two cars
advice-manuals-say = One: on snowy slopes it helps to keep steering, but not at the strongest level. The other: the car
    weakens it by itself where grip is poor.
advice-manuals-ground = each for its own car
advice-read = They speak of different cars, roads and speeds. What this page adds is the margin for yours: the gentler the
    lift-off and the lower the speed, the less hangs on who is right. The manual of your car decides.
