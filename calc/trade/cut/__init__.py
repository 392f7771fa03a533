"""Cutting steel with oxygen."""
