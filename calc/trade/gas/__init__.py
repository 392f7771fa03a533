"""Gas in cylinders: what is there, what may be drawn, what it costs."""
