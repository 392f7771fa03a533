"""Quantities, units, numbers as they are written, and one figure with what stands behind it."""
