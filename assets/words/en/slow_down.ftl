# One slow-down: rolling, the motor, friction brakes, and a dip for nothing.

# $from: quantity in km/h
# $to: quantity in km/h
# $rolling: quantity in Wh
# $rolling_time: quantity in s
# $motor: quantity in Wh
# $motor_time: quantity in s
slow-down-title = From { $from } to { $to }, rolling takes { $rolling } and { $rolling_time }; slowing late with the motor
    { $motor } and { $motor_time }

# $road: quantity in m
# $strength: quantity in m/s²
# $before: quantity in m
# $friction: quantity in Wh
slow-down-words = All three cover the same { $road }. To roll, the foot comes up where they begin; to slow with the motor, at your
    { $strength }, it comes up { $before } before they end. Slowed on friction brakes only, the car takes { $friction }.

break-even-nothing = Rolling costs no time or saves no energy here, so there is nothing to weigh up.

# $lost: quantity in s
break-even-always = Rolling costs { $lost }, and pays at any speed that this car may cruise at.

# $lost: quantity in s
# $speed: quantity in km/h
break-even = Rolling costs { $lost }. If you otherwise cruise below { $speed }, you can make them up by driving a little faster,
    for less energy than rolling saved: there rolling pays, where traffic allows it. Above that it does not.

# $from: quantity in km/h
# $to: quantity in km/h
# $motor: quantity in Wh
# $motor_costs: yes or no
# $friction: quantity in Wh
# $friction_costs: yes or no
# $later: quantity in s
dip-words = **Slowing for nothing,** from { $from } to { $to } and up again, { $motor_costs ->
    [yes] costs { $motor }
   *[no] saves { $motor }
} where the motor slows the car and { $friction_costs ->
    [yes] costs { $friction }
   *[no] saves { $friction }
} on friction brakes, against keeping the speed over the same road, and takes { $later } longer. Part of the loss hides behind
    the lower speed, at which the car pushes less air.

ways-column-way = Way

# $unit: text
ways-column-road = Road, { $unit }
ways-column-time = Time, s
ways-column-battery = Battery, Wh
ways-column-back = Back in it, Wh
ways-column-friction = Friction heat, Wh

# $unit: text
ways-column-foot-up = Foot up before the end, { $unit }
