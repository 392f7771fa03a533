"""Procedures' arithmetic for oxy-fuel work: sourced tables, formulas, calculators.

`calc.answer("oxygen-left", gauge="1500 psi", water_volume="43 L")` gives one
object with results, bands, sources, cautions and working.
"""

from calc.answer.answering import answer
from calc.ask.errors import InputError

__all__ = ["InputError", "answer"]
