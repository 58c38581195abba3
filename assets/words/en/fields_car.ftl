# Of the car: what each field is called, and a help. Ids end in the keys of files.
# A name begins with a small letter, as within a sentence, unless it always has a capital; labels get theirs in code.

## The car

car-name = name
    .help = What to call this car.

car-mass_kg = mass with driver
    .help = The car as driven, with its driver. Passengers and luggage are added under load.

car-rotating_mass_share = rotating mass
    .help = Wheels and motor have to be spun up too: their inertia as a share of the car’s mass.

car-drag_area_m2 = drag area
    .help = Drag coefficient times frontal area. Not used when measured road-load coefficients are given.

car-rolling_coefficient = rolling resistance coefficient
    .help = Rolling force over weight at { QUANTITY(20, unit: "°C") }. Not used when measured road-load coefficients
        are given.

car-tyre_cold_share = cold tyres roll harder by
    .help = What a tyre that has stood adds to its rolling resistance when warmed up, in the same air.

car-tyre_warm_up_min = tyres warm up within
    .help = Time after which about a third of the cold tyres’ share is left.

car-driveline_cold_n_per_t = cold driveline drags by
    .help = What gear oil, bearings and grease that have stood at { QUANTITY(20, unit: "°C") } drag more than when
        warmed up, a tonne of car. More in the cold, as oil thickens.

car-driveline_warm_up_min = driveline warms up within
    .help = Time after which about a third of the cold driveline’s extra drag is left.

car-f0_n = road load f0
    .help = Constant part of the measured road load at { QUANTITY(20, unit: "°C") }. Give f0, f1 and f2 together or
        not at all.

car-f1_n_per_mps = road load f1
    .help = Part of the measured road load that grows with speed.

car-f2_n_per_mps2 = road load f2
    .help = Part of the measured road load that grows with speed squared.

car-motor_peak_kw = motor power
    .help = Peak power of all drive motors together, at the motor shaft.

car-motor_base_speed_kmh = speed of full motor power
    .help = Road speed at which the motor’s peak torque first gives its peak power. Below it, torque is the limit.

car-motor_top_speed_kmh = motor’s highest road speed
    .help = Road speed at the motor’s highest turning speed.

car-regen_peak_kw = motor power when slowing
    .help = The most the motor may take from the wheels. Left empty: as much as it can pull with.

car-motor_loss_fixed = motor loss, fixed part
    .help = Power electronics while moving, as a share of the motor’s peak power.

car-motor_loss_speed = motor loss, speed part
    .help = Bearings and iron at 46 m/s that grow with speed, as a share of peak power.

car-motor_loss_speed2 = motor loss, speed-squared part
    .help = Eddy currents and air in the machine at 46 m/s, as a share of peak power.

car-motor_loss_working = motor loss, part of a working motor
    .help = What a motor under load loses at 46 m/s beyond one that is only turned: field weakening and ripple of the
        current, growing with speed, as a share of peak power.

car-motor_loss_torque2 = motor loss, torque-squared part
    .help = Copper and switching loss at peak torque, as a share of peak power.

car-open_pulling_share = unknown loss, pulling
    .help = What cars of one mass, road load and power differ in beyond everything here: a share of the motor’s power
        when it pulls. Above 0: thirstier than the model’s car.

car-open_slowing_share = unknown loss, slowing
    .help = Of the motor’s power when it slows the car, what does not come back beyond everything here. Brake pads
        that touch although the motor could do it all are in it.

car-zero_torque_drag_share = drag of the idle motor
    .help = 1: the motor keeps spinning and drags when it does nothing. 0: it rolls free.

car-gear_efficiency = gear efficiency
    .help = Each way, motor shaft to wheels: what its load costs. What it drags without load is part of the road load.

car-usable_kwh = usable battery
    .help = Energy between empty and full.

car-pack_voltage_v = battery voltage
    .help = Mean open-circuit voltage.

car-cell_resistance_share = cell resistance
    .help = Voltage drop over mean voltage when the battery would be emptied in one hour, at
        { QUANTITY(25, unit: "°C") }. Left empty: set by the motor that the battery has to feed.

car-cell_resistance_usual = cell resistance of a usual battery
    .help = The same for a battery whose motor could empty it 2.3 times an hour. One that feeds a stronger motor for
        its size is built for it and has less.

car-resistance_activation_j_per_mol = cold makes resistance grow
    .help = Activation energy of the cell resistance (Arrhenius).

car-acceptance_level = charge acceptance
    .help = Which of the three acceptance tables: −1 low, 0 mid, 1 high, or between.

car-pack_heat_capacity_kj_per_k_kwh = battery heat capacity
    .help = Heat that warms one usable kWh of battery by 1 K.

car-pack_heat_loss_w_per_k = battery heat loss
    .help = Heat the battery gives to the air for each degree it is warmer.

car-pack_heater_kw = battery heater
    .help = Warms a cold battery while driving. 0: it warms by its own use only.

car-pack_heater_until_c = battery heater runs until
    .help = Battery temperature at which its heater stops.

car-cold_capacity_loss_per_k = charge the cold holds back
    .help = Share of the usable battery that cannot be drawn for each kelvin the battery starts below
        { QUANTITY(20, unit: "°C") }.

car-charge_rate_factor = charge rate of the cells
    .help = Times the acceptance table. Left empty: set by the motor that the battery has to feed, 1 where it could
        empty it 2.3 times an hour.

car-accessory_w = accessories
    .help = Lights, computers, pumps: always on. Cabin heat is counted apart.

car-charging_efficiency = charging efficiency
    .help = Battery energy gained over energy from the wall.

car-printed_wh_per_km = printed consumption
    .help = From the wall, as the test named below gave it. Keeps, of the cars that it could be, those that use as
        much.

car-printed_range_km = printed range
    .help = Of the test named below. Counts as printed consumption does.

car-printed_test = test of the printed figure
    .help = wltc3b, nedc: the European tests. udds, hwfet: the US city and highway cycle before the label’s
        correction; us-cycles: both, 55 to 45; us-label: what stands on the US label.

car-driven_axle = driven wheels
    .help = The wheels the motor can slow.

car-front_regen_share = front axle’s share of the motor slowing
    .help = Counts where all wheels are driven. Left empty: each axle slows in proportion to the weight on it.

car-slip_control_delay_s = slip control acts after
    .help = Time from the moment the wheels begin to slip until the car takes the motor’s slowing back.

car-brake_pedal = brake pedal
    .help = Blended: the pedal asks the motor first and adds friction where needed. Friction: the pedal works the
        discs only, and the motor slows the car only on lift-off.

car-regen_cap_mps2 = motor slowing limit
    .help = The most slowing the maker lets the motor do, for comfort and stability.

car-fade_start_kmh = motor slowing fades below
    .help = Below this speed the motor hands over to the friction brakes.

car-fade_end_kmh = motor slowing ends at
    .help = At and below this speed friction does all the slowing.

car-front_load_share = weight on the front axle
    .help = Share of the weight on the front axle, standing still.

car-cg_height_m = height of the centre of gravity
    .help = Above the road.

car-wheelbase_m = wheelbase
    .help = Between the axles.

car-grip_reserve_share = grip kept in reserve
    .help = Share of the driven axle’s grip that the car does not use for motor slowing.

car-brake_build_up_s = brakes build up within
    .help = Time from touching the brake pedal to full braking in an emergency. Counts in stopping distances only.

car-disc_heat_capacity_kj_per_k_t = front discs’ heat capacity
    .help = Heat that warms both front discs by 1 K, a tonne of car.

car-disc_cooling_w_per_k_t = front discs’ cooling, standing
    .help = Heat both front discs give to still air, a tonne of car. Moving air carries off more.

car-sustain_soc = charge the engine keeps
    .help = A hybrid’s engine sees to it that the charge does not fall below this. Left empty: there is no engine.

car-engine_efficiency = engine, fuel to drive
    .help = Energy that reaches the electric drive’s terminals, or replaces what would, over energy in the fuel.

car-engine_drag_kw = engine’s drag
    .help = Slowing power of the turning engine, used where the battery does not take what the motor could give.

car-heat_source = cabin heater
    .help = A plain electric heater, a heat pump, or the waste heat of a hybrid’s engine.

car-heater_max_kw = heater’s greatest power
    .help = Electric power at most.

car-heat_pump_cop_at_0c = heat pump at freezing point
    .help = Heat given over electricity taken at { QUANTITY(0, unit: "°C") } outside.

car-cabin_loss_w_per_k = cabin heat loss
    .help = Heat lost through walls, windows and fresh air for each degree between inside and outside.

car-cabin_heat_capacity_kj_per_k = cabin heat capacity
    .help = Heat that warms air, seats and trim by 1 K.

## As a data sheet has it

sheet-printed_kwh_per_100km = printed consumption
    .help = From the wall, as the test gave it.
