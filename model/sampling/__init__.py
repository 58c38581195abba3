"""Many cars: what is drawn, what narrows it, and the bands of a drive."""
