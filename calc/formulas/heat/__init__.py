"""Flames, and metal that a flame heats."""
