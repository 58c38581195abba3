# The page on which a claim is checked: what stands on it whatever the claim.

# $claims: count
claim-choose-another = { $claims ->
    [one] { $claims } claim: choose another
   *[other] { $claims } claims: choose another
}

# $given: text
claim-unknown = “{ $given }” is none of the claims here; the first of them is shown.
claim-link-in-part = Some of the link could not be used.

# $relation: one of at_least, about, at_most, up_to, on_average
claim-relation = { $relation ->
    [at_least] at least
    [about] about
    [at_most] at most
    [up_to] up to
   *[on_average] on average
}
claim-between = between
claim-number = Number

# $unit: text
claim-number-in = Number, { $unit }

# What may be typed, in place of a number.
claim-number-such-as = 11 to 22

# $typed: text
claim-number-refused = Number: “{ $typed }” is neither a number nor a range such as 11 to 22. The answer keeps the last
    entry.

claim-published-heading = What was published
claim-said-heading = What was said about it
claim-open-rest = What was not said is open: the model runs over all of it.
claim-another-condition = Another condition was named
claim-choose-some = Choose one or more

claim-rule = The rule of the verdict
claim-needs-heading = What would have to be true
claim-share-heading = A share of what?
claim-phrases = The seven phrases
claim-phrases-alt = Seven phrases

claim-print-heading = How it was tested, files, and a link back
claim-quote-heading = To quote
claim-method-heading = How it was tested
claim-files-heading = Files, and the link back
claim-command = The JSON file is what this command prints, byte for byte; given back, it is answered again:
claim-link = This link opens the page as it stands, and says so if another version of the model answers:
claim-own-road-heading = On your own road
