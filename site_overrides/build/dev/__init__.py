"""The site while it is written: one page at a time, as the sources are now."""
