"""The energy model of Brake to Battery: SI floats inside, no interface imports."""

MODEL_VERSION = "0.2.0"
"""Printed on every answer; raised whenever a number may change."""

MODEL_DATE = "2026-11-29"
"""The day from which answers of this version hold."""
