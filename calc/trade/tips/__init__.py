"""Tip, pressures and flows for a job, by print and by the tips that a reader has."""
