# What cannot be used, one message a reason; a page begins each with a capital. `$field` is a field’s name, which code makes ready: its label on a page, its
# key in files and on the command line.

## An entry of one field

# $where: text
# $given: text
# $allowed: text
field-refused = { $where }: { $given } cannot be used, { $allowed } can.

# $where: text
# $given: text
# $first: number
# $second: number
field-two-readings = { $where }: “{ $given }” can be read as { $first } or as { $second }; leave out the comma, or type a
    point.

# What follows where something was put in its place.
# $put: text
field-was-set = It was set to { $put }.

field-was-left = It was left as usual.

field-falls = For a road that falls, choose Down.

field-keeps-last = The answer keeps the last entry.

# The program failed where it should have taken an entry over.
field-not-taken = This could not be taken over, through no fault of yours. The answer keeps the last entry.

# $field: text
# $leg: count
field-of-leg = { $field }, leg { $leg }

# A refusal that was put into words where it arose.
# $sentence: text
as-told = { $sentence }

field-given-nothing = an empty entry

# $given: text
field-given-words = “{ $given }”

# What a field takes.
# $low: text
# $high: text
# $whole: yes or no
field-takes-numbers = { $whole ->
    [yes] whole numbers from { $low } to { $high }
   *[no] { $low } to { $high }
}

field-takes-yes-or-no = yes or no

field-takes-text = a short text

# $key: text
# $nearest: text
setting-unknown-but-near = “{ $key }” is not a known setting; the nearest is { $nearest }.

# $key: text
setting-unknown = “{ $key }” is not a known setting.

# $given: text
# $what: one of car, like, cycle, test, denominator, claim
# $known: list
not-one-of = { $what ->
    [car] car: “{ $given }” is not one of the classes { $known }.
    [like] like: “{ $given }” is not one of the classes { $known }.
    [cycle] cycle: “{ $given }” is not one of { $known }.
    [test] test: “{ $given }” is not one of { $known }.
    [denominator] denominator: “{ $given }” is not one of { $known }.
   *[claim] claim: “{ $given }” is not one of { $known }.
}

## The car

# $f0: text
# $f1: text
# $f2: text
road-load-in-part = { $f0 }, { $f1 } and { $f2 }: give all three, or none of them.

# $end: text
# $low: quantity in km/h
# $start: text
# $high: quantity in km/h
fade-ends-above-start = { $end }: { $low } is above { $start }, { $high }; it must be at or below it.

# The class of a link.
# $given: text
# $left: text
car-class-left = Car class: “{ $given }” is not known here. It was left at { $left }.

# What follows a refusal of a link’s car.
car-left = The car was left as its class says.

# $given: text
car-no-object = car: “{ $given }” is neither a class id nor an object with a car’s figures.

# $given: text
# $known: list
road-load-no-object = road_load: “{ $given }” is not an object with { $known }.

# $field: text
# $slope: share
# $place: quantity in km
cannot-climb = { $field }: this car cannot climb the { $slope } hill { $place } into the drive; give it more power or less
    load.

# $field: text
# $place: quantity in km
cannot-get-under-way = { $field }: this car cannot get under way { $place } into the drive; give it more power or less
    load.

# $field: text
# $given: quantity in km
# $span: span in km
# $alone: yes or no
printed-range-fits-no-car = { $alone ->
    [yes] { $field }: { $given } does not fit this car; cars like it come to { $span }. Look at the figure, its test, and
        what is stated about the car.
   *[no] { $field }: { $given } together with what else is known does not fit this car; cars like it come to
        { $span }. Look at the figure, its test, and what is stated about the car.
}

# $field: text
# $given: quantity in Wh/km
# $span: span in Wh/km
# $alone: yes or no
consumption-fits-no-car = { $alone ->
    [yes] { $field }: { $given } does not fit this car; cars like it come to { $span }. Look at the figure, its test, and
        what is stated about the car.
   *[no] { $field }: { $given } together with what else is known does not fit this car; cars like it come to
        { $span }. Look at the figure, its test, and what is stated about the car.
}

## The drive

drive-goes-nowhere = distance: the drive has no length; it must go somewhere.

# $field: text
# $charge: share
# $reached: quantity in km
# $length: quantity in km
battery-does-not-last = { $field }: { $charge } is not enough; the battery would be empty after about { $reached } of
    { $length }. Start fuller, drive less far, or take a bigger battery.

# $field: text
# $charge: share
# $reached: quantity in km
# $length: quantity in km
battery-too-weak = { $field }: { $charge } is too little; the battery could not give the power that is asked after about
    { $reached } of { $length }. Start fuller, drive less far, or take a bigger battery.

# $most: count
legs-none = legs: none were given; a drive needs 1 to { $most } legs.

# $given: count
# $most: count
legs-too-many = legs: { $given } were given; at most { $most } are allowed.

# $field: text
# $leg: count
# $slow: quantity in km/h
# $speed: quantity in km/h
slow-down-not-below-speed = { $field }, leg { $leg }: { $slow } is not below the leg’s typical speed, { $speed }.

# $climb: text
# $descent: text
# $leg: count
# $up: quantity in m
# $down: quantity in m
# $grade: share
# $needed: quantity in km
# $length: quantity in km
hill-longer-than-leg = { $climb } and { $descent }, leg { $leg }: { $up } up and { $down } down at { $grade } need
    { $needed }, but the leg is { $length } long; make the hill lower or steeper, or the leg longer.

# $distance: text
# $speed: text
# $hours: quantity in h
# $most: quantity in h
drive-takes-too-long = { $distance } and { $speed }: the drive would take { $hours }; at most { $most } can be driven.

# $hill: quantity in km
# $length: quantity in km
hill-does-not-fit = A hill of { $hill } does not fit on a leg of { $length }.

# $height: quantity in m
# $length: quantity in km
# $steep: share
# $most: share
# $there: quantity in m
hill-too-steep = { $height } over { $length } would be { $steep } steep; at most { $most } can be entered, which is
    { $there } there.

# $town: share
# $motorway: share
quick-more-than-whole = { $town } in town and { $motorway } on a motorway are more than the whole drive.

# $stops_field: text
# $downs_field: text
# $leg: count
# $stops: count
# $downs: count
# $length: quantity in km
# $most: count
stops-do-not-fit = { $stops_field } and { $downs_field }, leg { $leg }: { $stops ->
    [one] { $stops } stop
   *[other] { $stops } stops
} and { $downs ->
    [one] { $downs } slow-down
   *[other] { $downs } slow-downs
} do not fit in { $length }; at most { $most } of both together fit there.

# $given: text
# $leg: count
# $known: list
leg-no-object = leg { $leg }: “{ $given }” is not an object with { $known }.

# $leg: count
# $refused: text
leg-refused = leg { $leg }: { $refused }

# $given: count
# $taken: count
legs-of-link-too-many = legs: { $given } were given; the first { $taken } were taken.

# $leg: count
# $given: count
# $least: count
# $most: count
leg-of-link-left-out = leg { $leg }: figures given { $given }, needed { $least } to { $most }; left out.

## One slow-down

# $start: text
# $end: text
# $fast: quantity in km/h
# $slow: quantity in km/h
does-not-slow-by-rolling = { $start } and { $end }: this car does not come from { $fast } to { $slow } by rolling; the
    wind or the hill is too strong.

# $end: text
# $slow: quantity in km/h
# $fast: quantity in km/h
end-not-below-start = { $end }: { $slow } is not below the speed at the start, { $fast }; it must be from 0 to just below
    it.

## Ranges and shares

# $what: one of speeds, hills, load, weather, cabin
range-without-end = { $what ->
    [hills] With your hills this drive takes next to nothing from the battery; its range has no end.
    [load] With your load this drive takes next to nothing from the battery; its range has no end.
    [weather] In your weather and on your road this drive takes next to nothing from the battery; its range has no end.
    [cabin] With heating and cooling this drive takes next to nothing from the battery; its range has no end.
   *[speeds] At your speeds and stops, on flat road, this drive takes next to nothing from the battery; its range has no
        end.
}

# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
denominator-means-nothing = denominator: { $phrase } ({ phrase-said }) means nothing on this drive.

# $given: number
# $phrase: one of recovered, of_braking, of_climb, range_gain, electric_braking, range_lost, display_km
# $least: number
less-than-nothing-came-back = number: { $given } { phrase-said } would mean that less than nothing came back; on this drive
    it must be at least { $least }.

## Claims

# $field: text
# $given: text
claim-number-unreadable = { $field }: “{ $given }” is neither a number nor a range such as 11..22.

# $field: text
# $given: text
entry-number-unreadable = { $field }: “{ $given }” is neither a number nor a range such as 10 to 20.

# $field: text
# $given: text
range-runs-downwards = { $field }: “{ $given }” runs downwards; give the lower number first.

# $field: text
one-share-at-a-time = { $field }: a number is a share of one thing at a time, not of several.

# $field: text
# $gentle: quantity in m/s²
# $strong: quantity in m/s²
gentle-not-below-strong = { $field }: { $gentle } is not below the strong one, { $strong }.

claim-file-without-claim = claim: the file holds no object with an id and settings, as an answer of this program does.

# A claim in one’s own words.

# $key: text
# $known: list
claim-key-unknown = “{ $key }” is not a key of a claim; these are: { $known }.

# $part: one of quantity, relation, number, unit
claim-part-missing = { $part ->
    [quantity] quantity: what the claim counts must be said.
    [relation] relation: it must be said whether the number is a least, a most, an about or else.
    [number] number: the number that is claimed must be said.
   *[unit] unit: the unit of the number must be said.
}

# $given: text
# $known: list
claim-quantity-unknown = quantity: “{ $given }” is not one of { $known }.

# $part: one of conditions, against
claim-part-no-object = { $part ->
    [conditions] conditions: they must be an object of keys and values.
   *[against] against: it must be an object of keys and values.
}

# $key: text
claim-value-unreadable = { $key }: the value must be a text, a number, a yes or no, or a list of these.

# $given: count
# $most: count
claim-words-too-long = words: { $given } characters are too many, { $most } can be taken.

# $two: yes or no
claim-number-not-of-relation = { $two ->
    [yes] relation: two numbers go with “between”.
   *[no] number: “between” needs two numbers, such as 10..15.
}

# $given: text
# $known: list
# $differs: yes or no
claim-unit-unknown = { $differs ->
    [yes] unit: “{ $given }” is not a unit of this difference between two cases; { $known } can be used.
   *[no] unit: “{ $given }” is not the unit of this quantity; { $known } can be used.
}

# $key: text
claim-case-missing = against: what the other case has in place of { $key } is said, so { $key } of this case must stand in
    the conditions.
claim-hybrid-alone = hybrid: a hybrid is compared with a battery car, so “none” must stand for it in against.
claim-beyond-compared = against: what the model cannot test it cannot compare either.

# $place: one of road, season
# $key: text
claim-place-twice = { $place ->
    [road] road: it stands for { $key }, which this quantity does not have, or which is said too.
   *[season] season: it stands for { $key }, which this quantity does not have, or which is said too.
}

# $place: one of road, season
# $given: text
# $known: list
claim-place-unknown = { $place ->
    [road] road: “{ $given }” is not one of { $known }.
   *[season] season: “{ $given }” is not one of { $known }.
}

# $nothing: count
# $runs: count
claim-ratio-to-nothing = claim: in { $nothing } of { $runs } runs its number is a ratio to next to nothing, which says
    nothing. Name conditions that leave these runs out: a lower charge, a warmer day, another speed or drive.

claim-no-car-can-drive = car: none of the sampled cars can drive this; motor, battery or charge are too small.

## Files

# $name: text
# $why: text
file-unreadable = { $name }: the file cannot be read ({ $why }).

# $name: text
# $why: text
json-invalid = { $name }: not valid JSON ({ $why }).

# $name: text
# $most_mb: count
json-too-large = { $name }: is larger than { $most_mb } MB; no description of a drive is.

scenario-no-object = The file does not hold one JSON object; a scenario is one, with its schema, car and legs.

# $given: text
# $known: text
schema-unknown = schema: “{ $given }” is not known; this version reads schema { $known }.

# $part: text
# $given: text
# $such_as: text
part-no-object = { $part }: “{ $given }” is not an object with settings such as { $such_as }.

# $given: text
legs-no-list = legs: “{ $given }” is not a list of legs.

# $part: text
# $given: text
answer-part-no-object = { $part }: “{ $given }” is not the object that an answer has there.

opened-text = The text

text-without-drive = The text holds no drive. It is a whole link to this app, or begins like “car=city-car&legs=”.

# $name: text
page-damaged = { $name }: the drive inside this page is damaged; use the text or the JSON file.

# $name: text
page-not-ours = { $name }: this page was not made by “Take away” and holds no drive.

## Tables of cars

# $cycle: text
battery-too-small-for-cycle = { $cycle }: the battery runs flat on this cycle or is too weak for it.

# $name: text
# $why: text
table-unreadable = { $name }: the table cannot be read ({ $why }).

# $name: text
table-not-in-utf-8 = { $name }: the table cannot be read; it must be text in UTF-8.

# $name: text
table-without-cars = { $name }: holds no cars; a first line with columns and a line for each car are needed.

# $name: text
table-column-twice = { $name }: a column stands twice in the first line.

# $name: text
# $given: count
# $most: count
table-too-long = { $name }: { $given } cars; { $most } are worked through at once.

# $columns: count
table-line-too-short = The line does not have the { $columns } columns of the first one.

## The command line

# $problem: text
command-unreadable = { $problem }; see python -m model --help.

# $given: text
# $such_as: text
set-without-value = --set “{ $given }”: the form is KEY=VALUE, such as { $such_as }.

cars-stand-in-table = --car: the cars stand in the table; a column “like” names their classes.

# $known: list
cycles-none = --cycles: none was named; they are { $known }.

# $given: count
compare-two-or-three = scenarios: { $given } given; two or three are compared.

# $name: text
# $endings: list
study-no-folder = { $name }: is not a folder; a study needs one with recordings ({ $endings }).

# $name: text
# $endings: list
study-without-recordings = { $name }: holds no recordings; { $endings } files are read.

# $name: text
# $why: text
study-unforeseen = { $name }: cannot be worked through ({ $why }).

# $name: text
study-worker-lost = { $name }: the process that worked on it was ended three times, as when memory runs out; it was left
    out.

study-without-dask = --dask: Dask is not installed here; “pip install distributed” installs it.

# $address: text
# $why: text
study-no-scheduler = --dask: no scheduler answers at { $address } ({ $why }).

# $address: text
study-no-workers = --dask: the scheduler at { $address } has no workers.

# $why: text
study-workers-without-model = --dask: the workers do not find this program; start them in its folder ({ $why }).

# $name: text
# $kinds: list
study-out-of-other-kind = --out: { $name } is no table that can be written; its name ends in { $kinds }.

# $name: text
# $why: text
study-out-unwritable = --out: { $name } cannot be written: { $why }.

# $name: text
study-out-is-another = --out: { $name } is there and is no table of such a study; it was left as it is.

# $name: text
study-out-of-other-settings = --out: { $name } holds rows computed with other settings or by another version; give another
    name.

log-progress = Reading the file

# $done: count
# $files: count
# $refused: count
# $recorded: quantity in hours
# $left: quantity in s
study-progress = { $done } of { $files } files, { $recorded } of driving, { $refused } refused; { $left } left
