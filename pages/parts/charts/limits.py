"""Why the friction brakes had to help: the model's limits in plain words."""

LIMIT_WORDS = {
    "lift_off_only": "the brake pedal works the discs only",
    "drivability": "the slowing was harder than the motor is allowed to do",
    "motor_torque": "the motor was at its greatest force",
    "motor_power": "the motor was at its greatest power",
    "grip": "the driven wheels had no more grip to spare",
    "low_speed_fade": "near walking pace the motor hands over",
    "battery": "the battery could take no more, being cold, full or small",
    "no_regeneration": "regeneration was off",
}
"""Each reads on after “because”; keys are `model.braking.LIMITS`."""

LIMIT_NAMES = {
    "lift_off_only": "pedal",
    "drivability": "slowing limit",
    "motor_torque": "motor force",
    "motor_power": "motor power",
    "grip": "grip",
    "low_speed_fade": "low speed",
    "battery": "battery",
    "no_regeneration": "off",
}
"""The same for the column of a table."""
