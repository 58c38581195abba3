"""One stop, explained."""
