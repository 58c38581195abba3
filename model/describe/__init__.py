"""What is described: the fields and their units, car, driver, conditions and drive, files, and the trace."""
