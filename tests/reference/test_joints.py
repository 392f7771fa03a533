"""Area of a cap against quadrature of the circle it is cut from."""

import pytest
from scipy.integrate import quad

from calc.formulas.setup.joints import cap_area


@pytest.mark.parametrize(
    ("width", "height"), [(4, 0.5), (5, 0.6), (7, 0.8), (9, 1.0), (16, 1.6), (2, 1.0), (2, 1.5)]
)
def test_cap_is_the_segment_of_a_circle(width: float, height: float) -> None:
    radius = (width**2 / 4 + height**2) / (2 * height)
    centre = height - radius
    area = quad(lambda y: 2 * (radius**2 - (y - centre) ** 2) ** 0.5, 0, height)[0]
    assert cap_area(width, height) == pytest.approx(area, rel=1e-6)
