# What owners ask, answered where it arises: short, from the model where it can be computed.

question-charge = Charge to the limit, or full?

# $limit: share
# $limit_saved: quantity in kWh
# $full_saved: quantity in kWh
# $less: yes or no
question-charge-told = { $less ->
    [yes] Leaving with { $limit }, regeneration saves { $limit_saved } on this drive; leaving full, { $full_saved }: a full
        battery takes little back until there is room, and lifting off slows the car less at first.
   *[no] On this drive it makes no difference to speak of: { $limit_saved } saved leaving with { $limit }, { $full_saved }
        leaving full.
} What is better for the battery, the owner’s manual says.

question-queue = And in a queue?

# $distance: quantity in km
# $stops: count
# $speed: quantity in km/h
# $taken: quantity in kWh
# $saved: quantity in kWh
question-queue-told = On { $distance } in a queue, at rest { $stops } times and never faster than { $speed }, this car takes
    { $taken }; regeneration saves { $saved }. There is little motion to take back at such speeds, and near walking pace the
    motor hands over to the brakes. Cabin, lights and computers run on all the while.

question-step = Which step of my car is that?

# $from: quantity in km/h
# $to: quantity in km/h
question-step-how = If the menu names no such figure, count: foot off the accelerator at { $from }, and the seconds until { $to }. All
    its slowing counts, so it is the strength that is meant here.

question-step-caution = Only on an empty, level, dry road with nobody behind, within the law, with a passenger who times it;
    the driver looks at the road. Some cars never come to rest by lifting off, and a full or cold battery makes any step
    weaker: the owner’s manual says what each does.

counted-seconds = seconds counted
    .help = From the first speed to the second, foot up.

# $seconds: quantity in s
# $strength: text
# $from: quantity in km/h
# $to: quantity in km/h
question-step-advised = Advised is { $strength }: the step that takes about { $seconds } from { $from } to { $to }.

# $seconds: quantity in s
# $strength: text
# $than: one of alike, weaker, stronger
question-step-counted = { $seconds } is { $strength }: { $than ->
    [alike] that is the step advised.
    [weaker] weaker than advised. Choose a stronger step.
   *[stronger] stronger than advised. Choose a weaker step.
}

# $strength: text
question-step-rolls = Advised is { $strength }: the step that slows the car least.

question-cruise = Does cruise control use it?

question-cruise-told = In most cars yes: it asks the motor first to hold the speed downhill or to keep the distance, and adds
    the friction brakes where the motor is not enough or the battery takes no more. How strongly lifting off is set to slow
    does not matter meanwhile. Common practice, no source: the owner’s manual says what this car does.

question-brakes = What does it do to the brakes?

# $left: share
question-brakes-told = On this drive the friction brakes are left with { $left } of the work that they would have to do
    alone. Pads last longer, but discs that are hardly used rust, above all in wet and salt. A few firm stops from speed
    now and then, where the road is clear and dry, wipe them clean, and the workshop should look at them every year.
    (The share is the model’s; the rest is common practice, no source.)

question-brakes-none = On this drive the friction brakes have nothing to do even alone. Discs that are hardly used rust: a few
    firm stops from speed now and then, where the road is clear and dry, wipe them clean. Common practice, no source.

question-standing = What does the cold do after standing?

# $air: quantity in °C
# $cold: quantity in kWh
# $warm: quantity in kWh
# $cold_saved: quantity in kWh
# $warm_saved: quantity in kWh
question-standing-told = One way at { $air }, after standing in that air, the drive takes { $cold } and regeneration saves
    { $cold_saved }. With battery, cabin and tyres still warm from a drive before it would take { $warm } and save { $warm_saved }.
    So the first kilometres of the day are the dearest, and short trips far apart cost more than one round.
