"""How hot metal loses its heat to the room."""

AIR, EMISSIVITY = 10.0, 0.8
"""Still air, W/(m²·K), and rusty or scaled metal: common practice."""
WRAPPED_SHARE = 0.25
"""What a blanket lets through of the loss: common practice, no source."""
