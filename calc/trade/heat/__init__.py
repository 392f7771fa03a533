"""Metal under a flame: hot figures, heat colours, plates, preheat."""
