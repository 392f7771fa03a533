"""Setting up: tips, rods, joints, cuts, shades, distances."""
