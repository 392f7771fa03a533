"""Welded seams: joints, gaps, tacks, filler rods, beads and tests of metal."""
