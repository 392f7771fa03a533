"""Answers, forms and drawings as HTML, SVG and text."""
