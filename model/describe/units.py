"""Conversion at the edge: inside the model everything is SI."""

KMH_PER_MPS = 3.6
J_PER_KWH = 3.6e6
J_PER_WH = 3600.0
ZERO_C_IN_K = 273.15
GRAVITY_MPS2 = 9.80665
"""Standard gravity (ISO 80000-3)."""
KM_PER_MILE = 1.609344
N_PER_LBF = 4.4482216152605
KG_PER_LB = 0.45359237
MPS_PER_MPH = 0.44704
