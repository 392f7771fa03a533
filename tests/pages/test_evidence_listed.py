"""Nothing that a calculator shows is without a value from outside."""


from calc.declare.catalogue import calculators
from tests.published.evidence import listing


def test_every_figure_is_held_to_a_value_from_outside() -> None:
    gaps = {c: listing.missing(c) for c in calculators()}
    assert not {c: g for c, g in gaps.items() if g}
