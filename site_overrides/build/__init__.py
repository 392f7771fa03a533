"""Builds the site: engine, pages, engine files into the site, release manifest."""
