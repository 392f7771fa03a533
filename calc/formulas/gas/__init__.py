"""Gas in cylinders, hoses, tips and rooms."""
