"""The vocabulary in which a calculator is declared.

A calculator is one typed function. Its `Annotated` parameters say what a reader
is asked, its result dataclass says what is shown. The form, the link, the
command line, the worked steps and the property tests all read that one
declaration.
"""

from calc.declare.declaration import OUTFIT, Calculator, DeclarationError, calculator
from calc.declare.files import Offered
from calc.declare.inputs import RULE_SETS, Asked, ByRules, Choice, Day, Field, Words, by_rules
from calc.declare.results import Answer, Beside, Caution, Picture, Shown, Step, Table
from calc.declare.working import worked
from calc.values.figures import Figure

__all__ = [
    "OUTFIT", "RULE_SETS", "Answer", "Asked", "Beside", "ByRules", "Calculator", "Caution", "Choice", "Day",
    "DeclarationError", "Field", "Figure", "Offered", "Picture", "Shown", "Step", "Table", "Words", "by_rules",
    "calculator", "worked",
]  # fmt: skip
