"""Look-ups and choices of the trade that several calculators share."""
