"""Widgets, links, the session, words and figures of the pages."""

import warnings

import pandas as pd

with warnings.catch_warnings():
    # pandas 3 keeps words as columns of Arrow and turns them back for every picture and table; its successor takes away
    # this way out, and is not allowed yet (requirements.txt)
    warnings.simplefilter("ignore", DeprecationWarning)
    pd.set_option("future.infer_string", False)
