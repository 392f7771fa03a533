"""Heat that soaks into a wall, a plate or a bar from one side.

For the question that matters most at the bench: how hot does the far side get, and
how soon. A time from here can always be shorter at the job: take it as the latest.
"""

from math import cos, erfc, exp, inf, isfinite, pi, sqrt
from typing import Annotated

from calc.formulas.heat.bessel import integral_of_erfc, scaled_erfc
from calc.formulas.heat.crossing import crossing
from calc.values.quantities import (
    Area,
    Conductivity,
    Diffusivity,
    HeatTransfer,
    Length,
    PowerDensity,
    Ratio,
    TemperatureRise,
    Time,
    Unit,
)

PerLength = Annotated[float, Unit("1/m")]


def deep_body_rise(
    *,
    flux: PowerDensity,
    depth: Length,
    time: Time,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
    surface_loss: HeatTransfer = 0.0,
) -> TemperatureRise:
    """Rise inside a body too deep for its far side to matter.

    A fitted curve: error functions, in the form that loses no figures.

    Args:
        flux: Heat into the face, W/m².
        depth: Below the face, m.
        time: Since the flame came, s.
        conductivity: W/(m·K).
        diffusivity: m²/s.
        surface_loss: From the face to the air, W/(m²·K).

    Returns:
        K.

    Raises:
        ValueError: The depth or the time is below zero.

    Valid for:
        Heat spread evenly over a face much wider than the depth of interest.

    Source:
        [carslaw-1959] 2.9 and 2.7
    """
    if not (depth >= 0.0 and time >= 0.0):
        raise ValueError("Depth and time cannot be below zero.")
    reach = sqrt(diffusivity * time)
    if reach == 0.0:
        return 0.0
    place = depth / (2.0 * reach)
    if surface_loss == 0.0:
        return 2.0 * flux * reach / conductivity * integral_of_erfc(place)
    loss = surface_loss * reach / conductivity
    if loss < 1e-3:
        # The two terms below nearly cancel; with so little loss two terms of the
        # series in it are exact to 1e-6.
        still = 2.0 * reach / conductivity * integral_of_erfc(place)
        return flux * still * (1.0 - _first_loss(place, loss))
    return flux / surface_loss * (erfc(place) - exp(-place * place) * scaled_erfc(place + loss))


def _first_loss(place: float, loss: float) -> float:
    """Share that a small loss takes: the second integral of erfc over the first, doubled."""
    first = integral_of_erfc(place)
    if first < 1e-290:
        return 0.0
    second = 0.25 * (exp(-place * place) * scaled_erfc(place) - 2.0 * place * first)
    return 2.0 * loss * second / first


def slab_rise(
    *,
    flux: PowerDensity,
    depth: Length,
    time: Time,
    thickness: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> TemperatureRise:
    """Rise inside a slab that is heated evenly on one face and loses nothing at the other.

    A fitted curve: two series for the same thing, each quick where the other is slow.

    Args:
        flux: Heat into the face, W/m².
        depth: Below the heated face, m; the thickness for the far side.
        time: Since the flame came, s.
        thickness: m.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        K. With loss to the air it is less: this is the soonest for a flame that
        spreads over the whole face.

    Raises:
        ValueError: The depth is not inside the slab or the time is below zero.

    Source:
        [carslaw-1959] 3.8
    """
    if not 0.0 <= depth <= thickness or not time >= 0.0:
        raise ValueError("The depth must lie inside the slab, and time cannot run back.")
    if time == 0.0:
        return 0.0
    spread = diffusivity * time / (thickness * thickness)
    if spread < 0.3:
        reach = sqrt(diffusivity * time)
        total = sum(
            integral_of_erfc((2 * n * thickness + depth) / (2.0 * reach))
            + integral_of_erfc((2 * (n + 1) * thickness - depth) / (2.0 * reach))
            for n in range(4)
        )
        return 2.0 * flux * reach / conductivity * total
    back = (thickness - depth) / thickness
    series = sum(
        (1 - n % 2 * 2) / n**2 * exp(-(n * n) * pi * pi * spread) * cos(n * pi * back) for n in range(1, 5)
    )
    shape = spread + (3.0 * back * back - 1.0) / 6.0 - 2.0 / (pi * pi) * series
    return flux * thickness / conductivity * shape


def time_until_slab_rises(
    *,
    flux: PowerDensity,
    rise: TemperatureRise,
    depth: Length,
    thickness: Length,
    conductivity: Conductivity,
    diffusivity: Diffusivity,
) -> Time:
    """Time until a place in a slab has risen by so much.

    A solver: it searches for the time.

    Args:
        flux: Heat into the face, W/m².
        rise: K.
        depth: Below the heated face, m; the thickness for the far side.
        thickness: m.
        conductivity: W/(m·K).
        diffusivity: m²/s.

    Returns:
        s. A place right under a pointed flame can be there sooner.

    Raises:
        ValueError: Flux or rise is not above zero.

    Source:
        [carslaw-1959] 3.8
    """
    if not (0.0 < flux < inf and 0.0 < rise < inf):
        raise ValueError("Heat and rise must be above zero.")
    # Heat that is spread evenly through the slab is an upper bound on the time, once
    # the profile has settled, which takes about half a diffusion time.
    own = thickness * thickness / diffusivity
    latest = own + 2.0 * rise * thickness * conductivity / (flux * diffusivity)
    return crossing(
        lambda t: slab_rise(
            flux=flux,
            depth=depth,
            time=t,
            thickness=thickness,
            conductivity=conductivity,
            diffusivity=diffusivity,
        ),
        rise,
        0.0,
        latest,
    )


def pipe_section(outside: Length, inside: Length) -> Area:
    """Area of metal in a pipe cut across.

    Args:
        outside: Diameter, m.
        inside: Diameter of the bore, m; 0 for a round bar.

    Returns:
        m².

    Source:
        [definition]
    """
    return pi / 4 * (outside**2 - inside**2)


def bar_share(distance: Length, time: Time, diffusivity: Diffusivity, fading: PerLength) -> Ratio:
    """Rise along a bar, as a share of the rise held at its heated end.

    A fitted curve: error functions, in the form that loses no figures.

    Args:
        distance: From the heated end, m.
        time: Since the end became hot, s.
        diffusivity: m²/s.
        fading: How fast its heat fades along it, 1/m; 0 without loss.

    Returns:
        0 to 1.

    Raises:
        ValueError: An input is below zero.

    Valid for:
        A bar or a pipe longer than the heat has come, its end held hot from the start.

    Source:
        [carslaw-1959] 4.5
    """
    if not (distance >= 0.0 and time >= 0.0 and fading >= 0.0):
        raise ValueError("Distance, time and fading cannot be below zero.")
    reach = sqrt(diffusivity * time)
    if distance == 0.0:
        return 1.0
    if reach == 0.0:
        return 0.0
    place, loss = distance / (2.0 * reach), fading * reach
    common = exp(-place * place - loss * loss)
    if place >= loss:
        near = common * scaled_erfc(place - loss)
    else:
        near = exp(-fading * distance) * erfc(place - loss)
    return 0.5 * (near + common * scaled_erfc(place + loss))


def time_until_bar_share(
    share: Ratio, distance: Length, diffusivity: Diffusivity, fading: PerLength
) -> Time | None:
    """Time until a place along a bar has risen by a share of the rise at its end.

    A solver: it searches for the time.

    Args:
        share: Above 0, below 1.
        distance: From the heated end, m.
        diffusivity: m²/s.
        fading: How fast its heat fades along it, 1/m.

    Returns:
        s, or None where the loss to the air keeps the place below that for ever.

    Raises:
        ValueError: The share is not between 0 and 1.

    Source:
        [carslaw-1959] 4.5
    """
    if not (0.0 < share < 1.0 and 0.0 < distance < inf and isfinite(fading)):
        raise ValueError("The share must lie between 0 and 1, and the place off the end.")
    if share >= exp(-fading * distance) * (1.0 - 1e-9):
        return None
    own = distance * distance / diffusivity
    return crossing(lambda t: bar_share(distance, t, diffusivity, fading), share, 1e-4 * own, 1e14 * own)


SOLVERS = (deep_body_rise, slab_rise, time_until_slab_rises, bar_share, time_until_bar_share)
