# Standard cycles, and the tests whose figures are printed.

# $cycle: one of udds, hwfet, us06, nycc, wltc3b, wltc3b-low, wltc3b-medium, wltc3b-high, wltc3b-extra-high, nedc, nedc-urban, nedc-extra-urban
cycle-name = { $cycle ->
    [udds] US city cycle (UDDS)
    [hwfet] US highway cycle (HWFET)
    [us06] US hard-driving cycle (US06)
    [nycc] New York City cycle (NYCC)
    [wltc3b] WLTC class 3b
    [wltc3b-low] WLTC class 3b, low
    [wltc3b-medium] WLTC class 3b, medium
    [wltc3b-high] WLTC class 3b, high
    [wltc3b-extra-high] WLTC class 3b, extra high
    [nedc] NEDC
    [nedc-urban] NEDC, urban (ECE-15)
   *[nedc-extra-urban] NEDC, extra-urban (EUDC)
}

# $test: one of wltc3b, udds, hwfet, us-cycles, us-label, nedc
test-name = { $test ->
    [wltc3b] WLTC class 3b
    [udds] US city cycle, before the label’s factor
    [hwfet] US highway cycle, before the label’s factor
    [us-cycles] US city and highway cycles, 55 to 45, before the label’s factor
    [us-label] US label
   *[nedc] NEDC
}
