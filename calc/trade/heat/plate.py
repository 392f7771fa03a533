"""A plate under a travelling flame: its pool, the verdict, and the map of heat round it."""

from dataclasses import dataclass

from calc.answer.sentences import degrees, distance
from calc.data.tables import table
from calc.declare import Picture, Table
from calc.formulas.heat.flame_patch import hottest_rise
from calc.formulas.heat.weld_pool import weld_isotherm, weld_pool_width
from calc.show.drawings import heat_map
from calc.show.drawings.heat_map import Isotherm
from calc.trade.flame.heat import STRONG, WEAK

COUPON = "Run a trial coupon of the same metal and thickness first."
WIDE = 8.0
"""A pool wider than this many thicknesses drops out: a practice mark, in no print."""
POINTS = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """The plate and its metal, and what one flame does to it."""

    thickness: float
    speed: float
    start: float
    melting: float
    conductivity: float
    diffusivity: float

    @property
    def rise(self) -> float:
        """From the start to the melting point, K."""
        return self.melting - self.start

    def width(self, power: float) -> float:
        """Width of the pool at a heat that enters the work, m."""
        return weld_pool_width(
            power=power,
            speed=self.speed,
            thickness=self.thickness,
            rise=self.rise,
            conductivity=self.conductivity,
            diffusivity=self.diffusivity,
        )

    def share_of_melting(self, power: float, spread: float, depth: float) -> float:
        """Hottest rise at a depth over the rise to melting."""
        return (
            hottest_rise(
                power=power,
                speed=self.speed,
                depth=depth,
                thickness=self.thickness,
                spread=spread,
                conductivity=self.conductivity,
                diffusivity=self.diffusivity,
            )
            / self.rise
        )


@dataclass(frozen=True, slots=True)
class Pool:
    """What one share of the heat does: nothing, a pool, a pool right through, a hole."""

    width: float
    kind: str


def pool_of(plate: Plate, power: float, face: float, back: float) -> Pool:
    """The pool that one share of the heat makes.

    Args:
        plate: The plate under the flame.
        power: Heat that enters the work, W.
        face: Hottest rise of the face over the rise to melting.
        back: The same on the back.
    """
    if face < 1.0:
        return Pool(0.0, "solid")
    width = plate.width(power)
    if back < 1.0:
        return Pool(width, "face")
    return Pool(width, "hole" if width > WIDE * plate.thickness else "through")


def pools(plate: Plate, power: float, spread: float) -> tuple[Pool, Pool, Pool]:
    """The pools at the weak end, the middle and the strong end of the share of heat that enters.

    Args:
        plate: The plate under the flame.
        power: Heat that enters the work at the middle, W.
        spread: Of the flame's patch of heat, m.

    Raises:
        ValueError: The heat is far outside the sum.
    """
    face = plate.share_of_melting(power, spread, 0.0)
    back = plate.share_of_melting(power, spread, plate.thickness)
    weak, middle, strong = (
        pool_of(plate, power * end, face * end, back * end) for end in (WEAK, 1.0, STRONG)
    )
    return weak, middle, strong


SAID = {
    "solid": "the metal does not melt",
    "face": "the face melts, the back does not",
    "through": "it penetrates: the pool goes through to the back",
    "hole": "it burns through: the pool is too wide to hold",
}


def verdict_words(weak: Pool, middle: Pool, strong: Pool) -> str:
    """What the metal does, in words, at the middle of the band and where its ends differ."""
    if strong.kind == "solid":
        return f"never melts at this travel, even at the strong end of the band. {COUPON}"
    said = SAID[middle.kind]
    for pool, end in ((weak, "weak"), (strong, "strong")):
        if pool.kind != middle.kind:
            said += f"; at the {end} end of the band {SAID[pool.kind]}"
    return f"{said}. {COUPON}"


def _line(power: float, plate: Plate, temperature: float) -> Isotherm | None:
    """The line of one temperature on the face; None where it is a pinprick."""
    rise = temperature - plate.start
    k, alpha = plate.conductivity, plate.diffusivity
    side = weld_isotherm(
        power=power,
        speed=plate.speed,
        thickness=plate.thickness,
        rise=rise,
        conductivity=k,
        diffusivity=alpha,
        points=POINTS,
    )
    line = Isotherm("", side, through=False)
    through = line.half_width() > plate.thickness
    return Isotherm("", side, through) if line.half_width() > 2e-5 else None


def heat_map_of(
    metal: str, plate: Plate, power: float, molten: bool, rules: str
) -> tuple[tuple[Table, ...], tuple[Picture, ...]]:
    """Table and picture of how far each temperature reaches.

    Args:
        metal: Id of the metal.
        plate: The plate under the flame.
        power: Heat that enters the work, W.
        molten: Whether there is a pool to show.
        rules: Rule set, for the units.
    """
    marks = [(plate.melting, "melts")] if molten else []
    marks += [(row.temperature, row.words) for row in table("heat-marks") if row.metal == metal]
    rows, drawn = [], []
    for temperature, meaning in marks:
        if not plate.start + 10.0 < temperature <= plate.melting:
            continue
        isotherm = _line(power, plate, temperature)
        if isotherm is None:
            continue
        label = degrees(temperature, rules)
        side = isotherm.side
        rows.append(
            (
                label,
                meaning,
                *(distance(d, rules) for d in (side[0][0], isotherm.half_width(), -side[-1][0])),
            )
        )
        drawn.append(Isotherm(f"{label}, melts" if meaning == "melts" else label, side, isotherm.through))
    chart = Table(
        "How far each temperature reaches",
        ("Metal at", "What it means", "Ahead of the torch", "To each side", "Behind"),
        tuple(rows),
        "At the middle of the band. Heat lost to the air and the ends of the sheet are left out: far "
        "behind the torch a large sheet is cooler than this, a small one hotter.",
    )
    if not drawn:
        return (chart,), ()
    lead = drawn[0].label.partition(",")[0]
    shown = rows[0]
    sentence = (
        f"The line of {lead} reaches {shown[3]} to each side of the seam and {shown[4]} behind the torch."
    )
    return (chart,), (heat_map.drawing(drawn[:4], plate.thickness, sentence),)
