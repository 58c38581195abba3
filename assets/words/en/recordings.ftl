# Recorded drives that cannot be read. Columns are called by their names in the file.

# $name: text
# $why: text
recording-unreadable = { $name } cannot be read: { $why }.

# $name: text
# $most_mb: number
recording-too-large = { $name } is larger than { $most_mb } MB, the most that is read.

# $name: text
recording-empty = { $name } is empty.

# $name: text
recording-of-other-kind = { $name }: only .csv and .gpx files are read.

# $name: text
# $column: text
recording-never-moves = { $name }, { $column }: the car never moves.

# $name: text
# $speed: quantity in km/h
# $after_s: count
# $most: quantity in km/h
recording-too-fast = { $name }: the speed reaches { $speed }, { $after_s } s after the start; up to { $most } is read.

# $name: text
# $column: text
# $before: quantity in km/h
# $after: quantity in km/h
# $after_s: count
# $most: quantity in km/h
recording-jumps = { $name }, { $column }: { $before } becomes { $after } within a second, { $after_s } s after the start; a
    car changes by { $most } at most.

# $name: text
# $column: text
recording-charge-not-in-percent = { $name }, { $column }: no value is above 1; per cent are expected, from 0 to 100.

# $name: text
# $column: text
# $most: share
recording-too-steep = { $name }, { $column }: the road as a whole is steeper than { $most }, the most that is read.

# $name: text
# $lasts: quantity in s
# $least: quantity in s
# $most: quantity in hours
recording-duration = { $name }: the recording lasts { $lasts }; { $least } to { $most } are read.

## Tables (CSV)

# $name: text
# $line: count
csv-too-many-cells = { $name }, line { $line }: there are more cells than column names; columns are separated by commas
    (numbers then with points), semicolons or tabs.

# $name: text
csv-no-table = { $name } is not a table of columns separated by commas, semicolons or tabs.

# $name: text
# $rows: count
# $least: count
csv-too-few-rows = { $name } has { $rows } rows of numbers; at least { $least } are needed.

# $name: text
# $column: text
# $needed: list
csv-column-missing = { $name }, line 1: there is no column { $column }; { $needed } are needed.

# $name: text
# $column: text
# $nearest: text
# $needed: list
csv-column-missing-but-near = { $name }, line 1: there is no column { $column } (“{ $nearest }” is nearest); { $needed } are
    needed.

# $name: text
# $given: text
# $column: text
csv-column-misspelt = { $name }, line 1: column “{ $given }” is not known; name it { $column }, or leave it out.

# $name: text
# $column: text
csv-column-twice = { $name }, line 1: column { $column } stands there twice.

# $name: text
# $line: count
# $column: text
# $given: text
# $low: number
# $high: number
# $unit: text
csv-cell-refused = { $name }, line { $line }, { $column }: “{ $given }” is not a number from { $low } to { $high } { $unit }.

# $name: text
# $line: count
# $column: text
csv-time-missing = { $name }, line { $line }, { $column }: each row needs a time.

# $name: text
# $line: count
# $column: text
# $given: text
# $before: text
csv-times-not-rising = { $name }, line { $line }, { $column }: { $given } does not come after { $before }; times must rise.

# $name: text
# $column: text
# $rows: count
# $least: count
csv-too-few-speeds = { $name }, { $column }: { $rows } rows have a speed; at least { $least } are needed.

# $name: text
# $line: count
# $column: text
# $gap: quantity in s
# $most: quantity in s
csv-speed-gap = { $name }, line { $line }, { $column }: no speed is given for { $gap } before this row; gaps of up to
    { $most } are filled, longer ones only while the car stands.

## Positions (GPX)

# $name: text
gpx-without-times = { $name }: some points have no time; without times there is no speed.

# $name: text
gpx-off-the-earth = { $name }: a position lies beyond 90 degrees of latitude or 180 degrees of longitude.

# $name: text
# $low: number
# $high: quantity in m
gpx-height-refused = { $name }: a height is not from { $low } to { $high }.

# $name: text
# $given_mb: number
# $most_mb: number
gpx-too-large = { $name } has { $given_mb } MB; GPX files are read up to { $most_mb } MB.

# $name: text
gpx-not-in-utf-8 = { $name } is not a GPX file in UTF-8.

# $name: text
gpx-with-entities = { $name }: a GPX file with a DOCTYPE or ENTITY declaration is not read.

# $name: text
gpx-unreadable = { $name } is not a GPX file that can be read.

# $name: text
# $points: count
# $least: count
# $most: count
gpx-points = { $name } holds { $points } track points; { $least } to { $most } are needed.

# $name: text
# $gap: quantity in s
# $after: quantity in s
# $went: quantity in m
# $most: quantity in s
gpx-gap = { $name }: positions are missing for { $gap }, from { $after } after the start on, while the car went { $went }; up
    to { $most } are bridged.
