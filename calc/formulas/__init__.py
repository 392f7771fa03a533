"""Pure functions on SI floats, by topic: setup, heat, gas."""
