"""An oxy-fuel outfit as a state: valves, screws, hoses, gases and flame, stepped act by act.

`outfit` holds the frozen state, `acts` what each act does and needs, `named` the
states in which a procedure begins or ends, `breaches` the errors that say what is wrong.
"""

from calc.outfit.acts import ACTS, act
from calc.outfit.breaches import BreachError
from calc.outfit.named import NAMED, named
from calc.outfit.state import TORCHES, GasSide, Outfit

__all__ = ["ACTS", "NAMED", "TORCHES", "BreachError", "GasSide", "Outfit", "act", "named"]
