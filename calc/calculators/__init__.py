"""One file for each calculator: what it asks, a few lines of sums, what it answers."""
