"""Travel speed by thickness, and the minutes a seam takes."""

from calc.data.tables import table
from calc.formulas.setup.printed import HAIR, require_thickness, spread, value_between
from calc.values.figures import Figure
from calc.values.quantities import Diffusivity, Length, Speed, Time


def travel_speed_by_law(thickness: Length, speed_times_thickness: Diffusivity) -> Speed:
    """Travel speed that falls as the thickness grows.

    Args:
        thickness: m.
        speed_times_thickness: Constant of the law, m²/s; 14 m/h times a
            millimetre for leftward welding.

    Returns:
        m/s.

    Valid for:
        Low-carbon steel; the constant is from memory.

    Source:
        Law of eastern European texts, from memory.

    Examples:
        >>> round(travel_speed_by_law(0.003, 14e-3 / 3600) * 60000)
        78
    """
    return speed_times_thickness / thickness


def travel_time(seam: Length, speed: Speed) -> Time:
    """Time that a torch is on a seam.

    Args:
        seam: Length of the seam, m.
        speed: Of travel, m/s.

    Returns:
        s, without tacking, stops and starts.

    Valid for:
        One run.

    Source:
        [definition]

    Examples:
        >>> travel_time(0.3, 0.0015)
        200.0
    """
    return seam / speed


def travel_speed(thickness: Length, technique: str) -> Figure:
    """Travel speed to expect when welding steel.

    Args:
        thickness: m.
        technique: `leftward` (forehand) or `rightward` (backhand); it picks the
            law. The handbook gives one technique for each thickness.

    Returns:
        m/s: the middle of the handbook's band at that thickness. The band holds
        the handbook's and the law's figures.

    Raises:
        ValueError: The thickness is outside the handbook's rows, or the
            technique is neither.

    Valid for:
        0.8-8 mm of low-carbon steel with an oxy-acetylene flame.

    Source:
        [carvill-1993]; the law is from memory.

    Examples:
        >>> figure = travel_speed(0.003, "leftward")
        >>> [round(v * 60000) for v in (figure.low, figure.value, figure.high)]
        [78, 95, 100]
    """
    require_thickness(thickness)
    laws = {row.technique: row for row in table("welding-speed-laws")}
    if technique not in laws:
        raise ValueError(f"no travel speed is kept for {technique}")
    rows = table("welding-carvill-1993")
    thinnest, thickest = rows[0].thickness, rows[-1].thickness
    if not thinnest * (1 - HAIR) <= thickness <= thickest * (1 + HAIR):
        raise ValueError(f"travel speeds are printed for {thinnest * 1000:g} mm to {thickest * 1000:g} mm")
    held = min(max(thickness, thinnest), thickest)
    slow = value_between([(row.thickness, row.slow) for row in rows], held)
    fast = value_between([(row.thickness, row.fast) for row in rows], held)
    law = laws[technique]
    return spread(
        Figure(
            (slow + fast) / 2,
            rows[0].source,
            rows[0].how_sure,
            low=slow,
            high=fast,
            basis="middle of the handbook's band; the band holds the law by thickness too",
        ),
        [Figure(travel_speed_by_law(thickness, law.speed_times_thickness), law.source, law.how_sure)],
    )


def travel_speed_beyond(thickness: Length) -> Figure:
    """Travel speed to expect on steel thicker than the handbook's rows.

    Args:
        thickness: m, above the thickest row.

    Returns:
        m/s, for one run: the thickest row, less as the thickness grows, so that the
        two meet. The band holds the row's own span and both laws.

    Valid for:
        8-25 mm of low-carbon steel; thick plate is usually welded in several runs.

    Source:
        [carvill-1993] for the row; that speed falls so is from memory.

    Examples:
        >>> figure = travel_speed_beyond(0.010)
        >>> round(figure.value * 60000, 6)  # 37.5 mm/min at 8 mm
        30.0
    """
    require_thickness(thickness)
    last = table("welding-carvill-1993")[-1]
    laws = table("welding-speed-laws")
    share = last.thickness / thickness
    return spread(
        Figure(
            (last.slow + last.fast) / 2 * share,
            laws[0].source,
            laws[0].how_sure,
            low=last.slow * share,
            high=last.fast * share,
            basis="the handbook's last row, less as the thickness grows, for one run",
        ),
        [
            Figure(travel_speed_by_law(thickness, row.speed_times_thickness), row.source, row.how_sure)
            for row in laws
        ],
    )


def backhand_from() -> Length:
    """Thickness of steel from which the handbook prints backhand, m.

    Returns:
        m; thinner steel is welded forehand.

    Source:
        [carvill-1993]

    Examples:
        >>> round(backhand_from() * 1000, 6)
        4.8
    """
    rows = table("welding-carvill-1993")
    return float(min(row.thickness for row in rows if row.technique == "rightward"))


SOLVERS = (travel_speed, travel_speed_beyond, backhand_from)
