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

# Things that have commas of their own.
# $first: text
# $next: text
set-apart = { $first }; { $next }

# $first: text
# $next: text
last-with-and = { $first } and { $next }

# $first: text
# $next: text
last-with-or = { $first } or { $next }

# $part: text
# $whole: text
part-of = { $part } of { $whole }
