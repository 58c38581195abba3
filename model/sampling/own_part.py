"""What one drive of a car has for itself, beside what the car shares over all its drives.

Tests of one road load and weight differ from each other by a median of 1.7 % (city) and 1.1 % (highway) in the US
certification, and what the model leaves open on city and highway differs for one and the same car: by 2.5 % among the
cars certified from 2019 to 2025, 3 % when widened for so few makers' groups. It counts where drives of one car are
compared, a test or a recording; a described drive's band is wide beside it (it would grow by a fortieth) and leaves it
out.
"""

from __future__ import annotations

from statistics import NormalDist

import numpy as np

from model.describe.trace import Array

OWN_SHARE = 0.03
"""Standard deviation of a drive's energy [1] that its car's other drives do not share: from the certified cars."""
OPEN_KEY = "open_pulling_share"
"""Where this is drawn, cars differ by more than assumed figures, and so do their drives."""


def own_part(places: Array) -> Array:
    """Energy over that of the drawn figures [1], from places in equal shares of the range from 0 to 1 [1]."""
    return np.exp(OWN_SHARE * np.array([NormalDist().inv_cdf(place) for place in places]))
