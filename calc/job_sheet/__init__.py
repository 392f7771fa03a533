"""One job on one sheet, put together from calculators."""
