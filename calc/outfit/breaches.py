"""What is wrong with an act at a moment: one named error for each rule that it breaks."""


class BreachError(ValueError):
    """An act that the state of the outfit does not allow; the message says why."""


class UnknownActError(BreachError):
    """No row of the table of acts has this name."""


class LooseCylinderError(BreachError):
    """A cylinder that is not chained upright is uncapped, opened or fitted."""


class CapError(BreachError):
    """A cylinder moves without its cap, or is opened or fitted under it."""


class ScrewInError(BreachError):
    """A cylinder is opened while the adjusting screw of its regulator is in."""


class NoRegulatorError(BreachError):
    """A valve or a screw is turned where no regulator is fitted, or a second one is fitted."""


class AcetyleneLayError(BreachError):
    """Acetylene is drawn from a cylinder that has not stood upright for its time."""


class OpenEndError(BreachError):
    """Gas is let into a hose whose end is open, or into a torch without a tip."""


class UnderPressureError(BreachError):
    """A part is taken off or fitted while gas presses in it."""


class NoGasError(BreachError):
    """Gas is meant to run or to press where none can."""


class PressureLimitError(BreachError):
    """Acetylene is set above the most that its delivery gauge may show."""


class PullNotFeltError(BreachError):
    """The fuel hose goes on an injector torch whose pull was not felt."""


class NotTestedError(BreachError):
    """A torch is lit whose joints were not found tight."""


class NotPurgedError(BreachError):
    """A torch is lit while a hose holds air, the other gas or a mixture."""


class GasInAirError(BreachError):
    """A torch is lit while gas that was let out still hangs in the air."""


class BothGasesError(BreachError):
    """Both gases run unlit at once."""


class AlightError(BreachError):
    """Something is done with a flame burning that needs every flame out."""


class NotAlightError(BreachError):
    """A flame is set where none burns, or a torch is lit that has no fuel."""


class StarvedFlameError(BreachError):
    """A cylinder is closed while its gas feeds a flame that could be put out at the torch."""


class HotCylinderError(BreachError):
    """A valve or a screw is reached for while a cylinder is hot."""


class LeftUnderPressureError(BreachError):
    """The outfit is left with gas in it, a cylinder open, a screw in or a flame burning."""
