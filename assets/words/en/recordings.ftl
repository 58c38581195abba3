# Recorded drives that cannot be read. Columns are called by their names in the file.

# $name: text
# $why: text
recording-unreadable = { $name } cannot be read: { $why }.

# $name: text
# $most_mb: number
recording-too-large = { $name } is larger than { $most_mb } MB, the most that is read.

# $name: text
# $most: count
recording-too-many-rows = { $name } has more rows or points than the { $most } that are read.

# $name: text
recording-empty = { $name } is empty.

# $name: text
recording-packed = { $name } is a compressed file or a workbook: unpack it, or save its sheet as CSV.

# $name: text
recording-no-text = { $name } is not a text.

# $name: text
# $kinds: list
recording-of-other-kind = { $name }: only { $kinds } files are read.

# $name: text
# $least: count
recording-too-few-speeds = { $name }: fewer than { $least } rows have a speed.

# $name: text
# $least: count
recording-too-few-positions = { $name }: fewer than { $least } rows have a position.

# $name: text
# $rows: count
recording-times-not-rising = { $name }: times must rise from row to row; in { $rows ->
    [one] one row they do
   *[other] { $rows } rows they do
} not.

# $name: text
# $part: count
# $parts: count
recording-no-such-part = { $name }: there is no part { $part }; the recording has { $parts }.

# $name: text
recording-never-moves = { $name }: the car never moves.

# $name: text
# $speed: quantity in km/h
# $after_s: count
# $most: quantity in km/h
recording-too-fast = { $name }: the speed reaches { $speed }, { $after_s } s after the start; up to { $most } is read.

# $name: text
# $before: quantity in km/h
# $after: quantity in km/h
# $after_s: count
# $most: quantity in km/h
recording-jumps = { $name }: { $before } becomes { $after } within a second, { $after_s } s after the start; a car changes by
    { $most } at most.

# $name: text
# $lasts: quantity in s
# $least: quantity in s
# $most: quantity in hours
recording-duration = { $name }: the recording lasts { $lasts }; { $least } to { $most } are read.

## Tables (CSV)

# $name: text
# $line: count
csv-too-many-cells = { $name }, line { $line }: there are more cells than column names; where commas set columns apart,
    numbers have points.

# $name: text
csv-no-table = { $name } is not a table whose cells can be told apart.

# $name: text
# $rows: count
# $least: count
csv-too-few-rows = { $name } has { $rows } rows with a time; at least { $least } are needed.

# $name: text
# $known: count
# $seen: list
csv-columns-missing = { $name }: { $known ->
    [0] no line names columns that are known
   *[other] only { $seen } could be recognised
}; time and speed are needed, or time, latitude and longitude. A route needs latitude and longitude, or distance
    and height.

## Positions (GPX)

# $name: text
route-without-times = { $name } has no times, and without them no speed. “log --limit-kmh” drives it as a route.

# $name: text
# $least: quantity in km
# $most: quantity in km
route-length = { $name }: only routes { $least } to { $most } long are driven.

# $name: text
gpx-with-entities = { $name }: a GPX file with a DOCTYPE or ENTITY declaration is not read.

# $name: text
gpx-unreadable = { $name } is not a GPX file that can be read.

# $name: text
# $points: count
# $least: count
# $breaks_off: yes or no
gpx-points = { $name } holds { $points } track points{ $breaks_off ->
    [yes] {""} and breaks off
   *[no] {""}
}; at least { $least } are needed.

## Habits

# $stops: count
# $least: count
habits-too-few-stops = There are too few stops from and to rest to read habits from: { $stops }, where { $least } are needed.

## A car that fits

fit-without-power = The recording holds no battery power to fit a car to.

# $least: quantity in minutes
fit-too-short = The recording is too short for a fit: it needs { $least }, half of them to be predicted.

fit-all-stated = Mass, accessories and unknown loss are all stated: nothing is left to fit.

fit-nothing-taken = A half of the recording takes nothing from the battery on balance: there is no share that a fit would miss.
