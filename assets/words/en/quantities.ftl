# How figures are written. A quantity comes ready with its unit into every other message.

# $number: text
# $unit: text
with-unit = { $number } { $unit }

# $low: text
# $high: text
span = { $low } to { $high }

# The beginning of a row of three or more.
# $first: text
# $next: text
in-a-row = { $first }, { $next }

# $first: text
# $last: text
last-with-and = { $first } and { $last }

# $first: text
# $last: text
last-with-or = { $first } or { $last }

# $part: text
# $whole: text
part-of = { $part } of { $whole }
