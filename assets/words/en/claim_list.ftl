# The claims of the list, one message each, named after the claim: its own words, as they are printed. Its attributes: `what` is
# counted, how its words are read, what the model leaves out, why the runs spread so wide, why it is beyond the model.

listed-range-gain-in-town = Regenerative braking gives up to 40 % more range in town.
    .left-out = Hills, slippery roads, and what the foot does otherwise without regeneration.
    .why = The measured 11 to 22 % are of one micro hatch at a few settings and on a few cycles. The model runs over
        eight kinds of car, two kinds of brake pedal, stop-and-go as well as flowing traffic, frost and heat, so its
        numbers spread wider. The claim about the dynamometer, in the same list, is tested with what is known of
        that measurement.

listed-recovered-on-test-cycle = On the WLTC test cycle electric cars recover 22 % of the energy on average.
    .left-out = Cars whose makers recover little on purpose; early and very small cars.

listed-recovered-is-range = 22 % of the energy is recovered, so the car goes 22 % farther.
    .what = the ratio of range gain to recovered share
    .left-out = Nothing that matters: with shares this large the two differ by arithmetic alone.

listed-range-gain-on-dynamometer = On a dynamometer a small car with regeneration only on lift-off went 11 to 22 %
    farther with it.
    .left-out = The settings and cycles of the measurement, of which only the abstract was read.
    .why = Of the measurement only the abstract was read. That the car slows with its motor on lift-off alone is
        from memory; a span of lift-off strengths and one cycle stand in for its settings and cycles.

listed-range-lost-without = Without regeneration a fifth of the range is lost.
    .left-out = Drivers who would look farther ahead if nothing came back.

listed-electric-share-of-braking = 90 % of braking is electric.
    .what = the electric share of braking
    .left-out = Emergency stops and slippery roads, where the friction brakes do more.

listed-four-times-the-energy = At double the speed a car holds four times the energy.
    .what = the ratio of kinetic energy at double the speed to that at single speed
    .left-out = What a trip uses: air, tyres and accessories do not follow this rule.

listed-four-times-comes-back = At double the speed four times the energy comes back when the car brakes.
    .what = the ratio of energy put back in a stop from double the speed to that from single speed
    .reading = “Four times” is read as within 5 %, as for kinetic energy.
    .left-out = Hills, wind, and brake pedals that work the discs alone.
    .why = Stops run from a mild lift-off to a firm press on a pedal that lets the motor brake as hard as it can.
        Two things pull the ratio apart. The last metres, in which the motor gives nothing, weigh more on the slower
        stop. Air and the motor’s power limit take more of the faster one. Where the two happen to balance, four
        times comes back. For “roughly four times”, put in 3.2 to 4.8.

listed-brakes-last-longer = With regenerative braking the brakes last twice as long.
    .what = the friction work that regeneration spares the brakes
    .reading = Half of the friction work spared would be twice the life if wear followed work alone, which it does
        not.
    .left-out = Rust: brakes that are hardly used corrode, and inspections find more brake faults on electric cars.
        Friction work is not a life in kilometres.
    .beyond = how long brakes last also depends on rust, on the pads and discs themselves and on when they are
        replaced, none of which is modelled

listed-brakes-work-half = Regenerative braking takes at least half of the work off the friction brakes.
    .what = the friction work that regeneration spares the brakes
    .left-out = Rust: brakes that are hardly used corrode, and inspections find more brake faults on electric cars.
        Friction work is a stand-in for wear, not a life in kilometres.

listed-lift-off-changes-range = The strongest lift-off setting gives 10 % more range.
    .what = the range gained by the strong setting over the gentle one at the same speeds
    .left-out = What the foot does: a strong setting can make a driver slow more than needed and pull away again.

listed-one-pedal-saves = Driving with one pedal saves 15 % of the energy.
    .what = the energy saved by a strong lift-off to standstill over a gentle one at the same speeds
    .left-out = A driver who looks farther ahead because of the one pedal, or less far.

listed-heavier-recovers-more = A heavier car recovers a larger share.
    .what = the recovered share of the heavier car less that of the car that weighs less
    .reading = “Larger” is read as any difference above zero.
    .left-out = The heavier car has the same motor, battery and shape here.

listed-weight-costs-nothing = A heavier car recovers more, so its weight costs nothing.
    .what = the extra energy use of the heavier car net of what it recovers
    .reading = “Nothing” is read as at most 1 % more energy.
    .left-out = The heavier car has the same motor, battery and shape here.

listed-bigger-motor-recovers-more = A bigger or second motor recovers more.
    .what = the extra energy that the bigger motor puts back over the smaller one
    .reading = “More” is read as any difference above zero.
    .left-out = A second motor that rolls free until it is needed; a bigger battery that often comes with it;
        slippery roads, where a second driven axle helps.

listed-bigger-motor-goes-farther = A bigger or second motor recovers more, so the car goes farther.
    .what = the range gained by the bigger motor over the smaller one
    .reading = “Farther” is read as any difference above zero: what counts is the energy used net of what comes
        back.
    .left-out = A second motor that rolls free until it is needed; a bigger battery that often comes with it;
        slippery roads, where a second driven axle helps.

listed-free-charge-on-descents = What a climb takes comes back on the way down.
    .what = the share of the climb’s energy that is put back on the descent
    .left-out = Bends and stops on the way, where more is lost.

listed-useless-in-winter = In winter regenerative braking is useless.
    .reading = “Useless” is read as saving at most 3 % of the energy.
    .left-out = Ice and snow, where slip control takes the motor back.

listed-cold-halves-range = At { QUANTITY(-7, unit: "°C") } half the range is lost.
    .what = the range lost against the same drive on a warm, dry day
    .left-out = Energy that a cold battery keeps back at the end of its charge.

# $cycle: text
listed-motorway-range = On a winter motorway an electric car reaches a third less than its test-cycle range.
    .what = the range lost at a steady speed against the { $cycle } test of the car as certified
    .left-out = Hills, rain, snow and stops on the way; the car’s official figure may come from better tyres.

listed-coasting-always-wins = Coasting always beats slowing with the motor.
    .what = the battery energy that coasting saves in one slow-down
    .left-out = Hills and those who follow: a coasting car is slow for a long way.

listed-stops-as-fast-as-brakes = Lifting the foot stops the car as fast as the brakes.
    .what = the ratio of the stopping distance on the motor alone to that on the brakes
    .reading = “As fast” is read as at most 5 % more distance.
    .left-out = Reaction time, which is shorter for a foot that only lifts; a cold or full battery; slopes and
        bends.

listed-two-megawatts = A full stop from top speed brakes with more than 2 MW.
    .what = the braking power at the first moment
    .reading = Slowing runs up to { QUANTITY(11.9, unit: "m/s²") }, the best grip of the table of roads, which goes
        beyond what 2 MW need.
    .left-out = Air, which helps to slow the car at such speeds; the motor takes a small part of this power.

listed-switching-delay = The delay between pulling and slowing costs 5 % of what could be recovered.
    .what = the recovered energy that is lost while friction fills in for the delay
    .left-out = A driver who brakes a little harder after the delay and loses almost nothing.

listed-hybrid-against-battery-car = A hybrid recovers as much as a battery car.
    .what = what the hybrid puts back as a share of what a battery car puts back on the same road
    .reading = “As much” is read as at least 90 %.
    .left-out = How the engine’s work reaches the wheels; fuel, which is where a hybrid’s energy comes from.
