# The command line’s help: its verbs, and what each takes.

cli-about = The command line: the same model, one JSON object out, one sentence on error.

# $car: text
cli-car = a class id or a car file; { $car } when left out

cli-set = change one setting

cli-band = add the 5 to 95 % band, made to hold nine in ten measured cars

## A standard cycle

cli-cycle = a standard cycle

# $cycles: list
cli-cycle-name = { $cycles }

## A described drive

cli-drive = a described drive

cli-drive-scenario = a scenario (JSON), or an answer to be reproduced

cli-drive-test-range = add the range on this drive of a car with this printed range

# $tests: list
cli-drive-test = what was printed: { $tests }; wltc3b when left out

cli-drive-advise = add the advice on lift-off strength

cli-drive-year = add the year of this drive

## Recorded drives

cli-log = a recorded drive

cli-log-file = a recording (.csv or .gpx)
cli-log-limit = drive positions without times as a route, no faster than this
cli-log-lateral = the same, turns at this acceleration across the car; 2 when left out

cli-study = all recorded drives of a folder

cli-study-folder = with .csv and .gpx files

cli-study-out = put the rows into this table (.csv, .parquet), or go on with it
cli-study-workers = so many processes; 1 when left out
cli-study-dask = ask the workers of this Dask scheduler, such as tcp://10.0.0.5:8786

## Many cars, many drives

cli-cars = many cars on standard cycles: a table with a car in each row, CSV out

cli-cars-table = CSV with columns such as id, like, mass_kg, f0_n, motor_peak_kw

cli-cars-cycles = cycles with commas between; udds,hwfet when left out

cli-compare = two or three described drives, and their differences with bands

cli-compare-scenarios = scenarios (JSON), or answers

## One stop, grip

cli-stop = one slow-down under the microscope

cli-stop-from = speed at its start

cli-stop-to = speed at its end; 0 when left out

cli-stop-equal-distance = all ways over the road that rolling takes

cli-grip = lift-off against available grip

cli-grip-speed = speed; 50 when left out

cli-grip-bend = radius of the bend; straight on when left out

cli-grip-grade = slope; downhill is negative

## Claims

cli-claim = a claim, tested; without an id, all of them

cli-claim-id = a claim’s id, a claim in one’s own words (.json), or an answer to be tested again

cli-claim-run = one run of it, by its row in the table of runs, computed again
