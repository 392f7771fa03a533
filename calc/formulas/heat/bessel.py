"""Special functions that heat flow needs and `math` lacks.

The Bessel functions come multiplied by e to the x, because the plain ones fall to
nothing a few steps ahead of a torch while their partner in the sum grows as fast.
"""

from math import erfc, exp, log, pi, sqrt


def _polynomial(coefficients: tuple[float, ...], x: float) -> float:
    value = 0.0
    for coefficient in reversed(coefficients):
        value = value * x + coefficient
    return value


_I0 = (1.0, 3.5156229, 3.0899424, 1.2067492, 0.2659732, 0.0360768, 0.0045813)
_I1 = (0.5, 0.87890594, 0.51498869, 0.15084934, 0.02658733, 0.00301532, 0.00032411)
_K0_NEAR = (-0.57721566, 0.42278420, 0.23069756, 0.03488590, 0.00262698, 0.00010750, 0.00000740)
_K0_FAR = (1.25331414, -0.07832358, 0.02189568, -0.01062446, 0.00587872, -0.00251540, 0.00053208)
_K1_NEAR = (1.0, 0.15443144, -0.67278579, -0.18156897, -0.01919402, -0.00110404, -0.00004686)
_K1_FAR = (1.25331414, 0.23498619, -0.03655620, 0.01504268, -0.00780353, 0.00325614, -0.00068245)


def scaled_k0(x: float) -> float:
    """Modified Bessel function of the second kind, order 0, times e to the x.

    A fitted curve: polynomials in two spans.

    Args:
        x: Above 0.

    Returns:
        exp(x)·K0(x), within 3e-7 of itself.

    Raises:
        ValueError: x is 0 or less.

    Source:
        [abramowitz-1964] 9.8.1, 9.8.5, 9.8.6
    """
    if not x > 0.0:
        raise ValueError("K0 has no value at zero: the place is on the source itself.")
    if x <= 2.0:
        first = _polynomial(_I0, (x / 3.75) ** 2)
        return exp(x) * (_polynomial(_K0_NEAR, x * x / 4.0) - log(x / 2.0) * first)
    return _polynomial(_K0_FAR, 2.0 / x) / sqrt(x)


def scaled_k1(x: float) -> float:
    """Modified Bessel function of the second kind, order 1, times e to the x.

    A fitted curve: polynomials in two spans.

    Args:
        x: Above 0.

    Returns:
        exp(x)·K1(x), within 3e-7 of itself.

    Raises:
        ValueError: x is 0 or less.

    Source:
        [abramowitz-1964] 9.8.3, 9.8.7, 9.8.8
    """
    if not x > 0.0:
        raise ValueError("K1 has no value at zero: the place is on the source itself.")
    if x <= 2.0:
        first = x * _polynomial(_I1, (x / 3.75) ** 2)
        return exp(x) * (_polynomial(_K1_NEAR, x * x / 4.0) / x + log(x / 2.0) * first)
    return _polynomial(_K1_FAR, 2.0 / x) / sqrt(x)


def scaled_erfc(x: float) -> float:
    """Complementary error function times e to the x squared.

    A fitted curve: a continued fraction where the plain product would be nothing
    times infinity.

    Args:
        x: Above -26, where the value passes what a float holds.

    Returns:
        exp(x²)·erfc(x).

    Raises:
        ValueError: x is below -26.

    Source:
        [abramowitz-1964] 7.1.14
    """
    if not x >= -26.0:
        raise ValueError("The scaled error function is out of range.")
    if x < 5.0:
        return exp(x * x) * erfc(x)
    below = x
    for step in range(40, 0, -1):
        below = x + 0.5 * step / below
    return 1.0 / (below * sqrt(pi))


def integral_of_erfc(x: float) -> float:
    """Integral of the complementary error function from x to infinity.

    Args:
        x: 0 or more.

    Returns:
        ierfc(x), without the loss of figures that the plain difference has far out.

    Source:
        [abramowitz-1964] 7.2.5
    """
    return exp(-x * x) * (1.0 / sqrt(pi) - x * scaled_erfc(x))


SOLVERS = (scaled_k0, scaled_k1, scaled_erfc, integral_of_erfc)
