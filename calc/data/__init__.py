"""Tables of published figures, each row with its source, and the texts that they fill."""
