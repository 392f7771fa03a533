"""Parts of a sheet: figures that several calculators put together in the same way."""
