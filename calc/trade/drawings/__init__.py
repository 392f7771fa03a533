"""Drawings that need a look-up of the trade."""
