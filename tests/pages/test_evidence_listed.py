"""Nothing that a calculator shows is without a value from outside, once its rows are written."""

from calc.declare import CALCULATORS
from tests.published.evidence import listing


def test_every_figure_is_held_to_a_value_from_outside() -> None:
    gaps = {c: listing.missing(c) for c in CALCULATORS if c not in listing.TO_FILL}
    assert not {c: g for c, g in gaps.items() if g}
