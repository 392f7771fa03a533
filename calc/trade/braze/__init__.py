"""Brazed and soldered joints: filler, flux, clearance, tube, and how long they take to heat."""
