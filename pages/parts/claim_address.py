"""What is asked of a claim, as the address carries it."""

from __future__ import annotations

from collections.abc import Mapping

import streamlit as st

CLAIM, SAID, GAVE = "claim", "said_", "gave"
"""The page's parameters in the address: the claim's id, each thing that was said, and in a link to keep what the model
gave when it was made."""


def settings() -> dict[str, str]:
    """What the address says was said."""
    given = st.query_params.to_dict()
    return {key.removeprefix(SAID): value for key, value in given.items() if key.startswith(SAID)}


def put(claim_id: str, given: Mapping[str, str]) -> None:
    """Write the question into the address, beside what is not its own."""
    own = {key: value for key, value in st.query_params.to_dict().items()
           if key not in (CLAIM, GAVE) and not key.startswith(SAID)}  # fmt: skip
    st.query_params.from_dict(own | {CLAIM: claim_id} | {SAID + key: value for key, value in given.items()})
