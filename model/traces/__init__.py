"""Anything to a trace: legs and habits, standard cycles, recordings."""
