"""Each arrow of a joint in section ends at what its word names; metal and words are those of the figures given.

The places come from the figures and the plates as drawn, by hand: a sheet stands 32 high for its thickness, a plate
with a V at most 60, and at most 190 wide across the V.
"""

import itertools
import math

import pytest

from calc.show.drawings import joint
from tests.pages.svg_shapes import Point, Seen, Shape, outlines

MM = 1e-3
SHEET = 32.0


def near(tip: Point, place: Point, within: float = 6.5) -> bool:
    """Whether a tip stands close to a place."""
    return math.dist(tip, place) <= within


def thick(seen: Seen, flat: Shape, *, upright: bool = False) -> None:
    """Two arrows on one line that meet the two faces of a plate from outside, 2 away, each 22 to 24 long."""
    left, top, right, foot = flat.box
    one, other = (left, right) if upright else (top, foot)
    across, along = (0, 1) if upright else (1, 0)
    ends = [
        (tail, tip) for tail, tip in seen.arrows
        if abs(tail[along] - tip[along]) < 0.1 and (top if upright else left) <= tip[along] <= (foot if upright else right)
    ]  # fmt: skip
    before = [
        e for e in ends if e[1][across] == pytest.approx(one - 2, abs=0.2) and e[0][across] < e[1][across]
    ]
    after = [
        e for e in ends if e[1][across] == pytest.approx(other + 2, abs=0.2) and e[0][across] > e[1][across]
    ]
    assert len(before) == len(after) == 1
    assert before[0][1][along] == pytest.approx(after[0][1][along], abs=0.2)
    for tail, tip in (*before, *after):
        assert 20 <= math.dist(tail, tip) <= 26


def on_circle(points: tuple[Point, ...], height: float) -> None:
    """A row of points lies on the circle over its chord that is so high in the middle, evenly apart."""
    (x1, y1), (x2, y2) = points[0], points[-1]
    chord = math.dist(points[0], points[-1])
    radius = (chord**2 / 4 + height**2) / (2 * height)
    nx, ny = (y2 - y1) / chord, -(x2 - x1) / chord
    middle = ((x1 + x2) / 2 - nx * (radius - height), (y1 + y2) / 2 - ny * (radius - height))
    for point in points:
        assert math.dist(point, middle) == pytest.approx(radius, rel=1e-3)
    crown = ((x1 + x2) / 2 + nx * height, (y1 + y2) / 2 + ny * height)
    assert min(math.dist(point, crown) for point in points) < 0.01 * radius + 0.05


@pytest.mark.parametrize(("gap", "cap"), [(0.0, 0.6), (1.5, 1.2), (3.0, 0.3)])
def test_a_square_butt_with_its_bead_of_three_thicknesses(gap: float, cap: float) -> None:
    seen = Seen(joint.drawing("square-butt", 3 * MM, gap * MM, "iso", cap=cap * MM, weld="rod").svg)
    scale = SHEET / 3
    left, right = seen.part("plate")
    middle = (left.box[2] + right.box[0]) / 2
    assert left.box[3] - left.box[1] == pytest.approx(SHEET, abs=0.1)
    assert right.box[1::2] == left.box[1::2]
    assert right.box[0] - left.box[2] == pytest.approx(gap * scale, abs=0.1)
    assert middle - left.box[0] == pytest.approx(right.box[2] - middle, abs=0.1)
    (weld,) = seen.part("weld")
    assert weld.box[2] - weld.box[0] == pytest.approx(3 * SHEET, abs=0.1)
    assert (weld.box[0] + weld.box[2]) / 2 == pytest.approx(middle, abs=0.1)
    assert left.box[1] - weld.box[1] == pytest.approx(cap * scale, abs=0.1)
    assert weld.box[3] == pytest.approx(left.box[3], abs=0.1)
    on_circle(weld.points[2:-3], cap * scale)
    thick(seen, left)
    assert min(abs(tip[0] - left.box[0]) for _, tip in seen.arrows) < 20
    assert seen.points("cap", (middle + 6, weld.box[1] - 2), 1)
    assert seen.points("gap" if gap else "edges touching", (middle, left.box[3] + 3), 1)
    assert seen.word("gap" if gap else "edges touching").x == pytest.approx(middle, abs=0.1)
    assert {"thickness 3 mm", f"cap {cap:g} mm", f"gap {gap:g} mm" if gap else "edges touching"} == {
        w.text for w in seen.words
    }


def test_a_bead_is_never_narrower_than_its_gap_and_there_is_none_without_rod() -> None:
    wide = Seen(joint.drawing("square-butt", 1 * MM, 3 * MM, cap=0.2 * MM, weld="rod").svg)
    (weld,) = wide.part("weld")
    assert weld.box[2] - weld.box[0] == pytest.approx(3 * SHEET, abs=0.1)
    for said in ("", "fused"):
        bare = Seen(joint.drawing("square-butt", 1 * MM, 1 * MM, cap=0.2 * MM, weld=said).svg)
        assert not bare.part("weld")
        assert not [word for word in bare.words if word.text.startswith("cap")]


@pytest.mark.parametrize(
    ("thickness", "degrees", "face", "gap"),
    [(6.0, 60.0, 1.5, 2.0), (10.0, 90.0, 0.0, 3.0), (12.0, 60.0, 2.0, 0.0)],
)
def test_a_single_v(thickness: float, degrees: float, face: float, gap: float) -> None:
    seen = Seen(joint.drawing(
        "single-v", thickness * MM, gap * MM, "iso", angle=math.radians(degrees), root_face=face * MM, cap=1 * MM, weld="rod"
    ).svg)  # fmt: skip
    slope = math.tan(math.radians(degrees / 2))
    wide = gap + 2 * (thickness - face) * slope
    scale = min(60 / thickness, 190 / wide)
    left, right = seen.part("plate")
    middle = 165.0
    top, foot = left.box[1], left.box[3]
    assert foot - top == pytest.approx(thickness * scale, abs=0.1)
    corners = [(20, top), (middle - wide * scale / 2, top), (middle - gap * scale / 2, foot - face * scale), (middle - gap * scale / 2, foot), (20, foot)]  # fmt: skip
    for point, corner in zip(left.points, corners, strict=False):
        assert point == pytest.approx(corner, abs=0.1)
    for point, corner in zip(right.points, corners, strict=False):
        assert point == pytest.approx(
            (2 * middle - corner[0] if corner[0] > 20 else 310, corner[1]), abs=0.1
        )
    (weld,) = seen.part("weld")
    assert top - weld.box[1] == pytest.approx(scale, abs=0.1)
    assert weld.box[0] == pytest.approx(middle - wide * scale / 2, abs=0.1)
    assert weld.box[2] == pytest.approx(middle + wide * scale / 2, abs=0.1)
    assert near(weld.points[0], (middle - gap * scale / 2, foot), 0.1)
    assert near(weld.points[1], (middle - gap * scale / 2, foot - face * scale), 0.1)
    assert near(weld.points[-2], (middle + gap * scale / 2, foot), 0.1)
    on_circle(weld.points[2:-3], scale)
    thick(seen, Shape("plate", tuple(corners)))
    half = (middle - (wide + gap) * scale / 4, top + (thickness - face) * scale / 2)
    assert seen.points(f"bevel {degrees / 2:g}° each side", half, 1)
    named = f"face {face:g} mm" if face else "no root face"
    assert seen.points(named, (middle + gap * scale / 2, foot - face * scale / 2), 4)
    assert seen.points(f"gap {gap:g} mm" if gap else "edges touching", (middle, foot), 5)
    assert seen.points("cap 1 mm", (middle + 6, weld.box[1] - 2), 1)
    for word in (named, f"gap {gap:g} mm" if gap else "edges touching"):
        assert 20 <= seen.word(word).box[1] - foot <= 40
    assert seen.word("thickness").box[3] < seen.word("bevel").box[1] < top - 30


@pytest.mark.parametrize(
    ("weld", "said"), [("", "corner to fill"), ("rod", "filled round"), ("fused", "fused, no rod")]
)
@pytest.mark.parametrize("gap", [0.0, 0.5])
def test_an_outside_corner(weld: str, said: str, gap: float) -> None:
    """The metal fills a quarter of a circle of one thickness over the inner corner."""
    seen = Seen(joint.drawing("outside-corner", 2 * MM, gap * MM, "iso", weld=weld).svg)
    lying, standing = seen.part("plate")
    inner = (standing.box[0], standing.box[1])
    assert lying.box[3] - lying.box[1] == pytest.approx(SHEET, abs=0.1)
    assert standing.box[2] - standing.box[0] == pytest.approx(SHEET, abs=0.1)
    assert lying.box[3] == pytest.approx(inner[1], abs=0.1)
    assert standing.box[3] - standing.box[1] > 3 * SHEET
    assert inner[0] - lying.box[2] == pytest.approx(gap * 16, abs=0.1)
    round_about = (
        seen.part("weld")[0].points[3:-1]
        if weld == "rod"
        else [p for s in seen.of("line") for p in s.points]
    )
    assert len(round_about) >= 12
    for point in round_about:
        assert math.dist(point, inner) == pytest.approx(SHEET, abs=0.2)
        assert point[0] >= inner[0] - 0.1
        assert point[1] <= inner[1] + 0.1
    if weld != "rod":
        assert {min(round_about), max(round_about)} == {
            (inner[0], inner[1] - SHEET),
            (inner[0] + SHEET, inner[1]),
        }
    face = (inner[0] + SHEET * math.sqrt(0.5), inner[1] - SHEET * math.sqrt(0.5))
    assert seen.points(said, face, 5)
    thick(seen, lying)
    assert {w.text for w in seen.words} == {
        "thickness 2 mm",
        said,
        "gap 0.5 mm" if gap else "edges touching",
    }
    assert seen.word("gap" if gap else "edges").box[1] > lying.box[3] + 30


@pytest.mark.parametrize("leg", [1.5, 3.0])
def test_a_lap_and_its_fillet(leg: float) -> None:
    seen = Seen(joint.drawing("lap", 3 * MM, rules="iso", leg=leg * MM, cap=0.4 * MM, weld="rod").svg)
    upper, lower = seen.part("plate")
    scale = SHEET / 3
    root = (upper.box[2], upper.box[3])
    assert upper.box[3] - upper.box[1] == lower.box[3] - lower.box[1] == pytest.approx(SHEET, abs=0.1)
    assert lower.box[1] == upper.box[3]
    assert upper.box[0] < lower.box[0] < root[0] - SHEET < root[0] + SHEET < lower.box[2]
    _fillet(seen, root, leg * scale, 0.4 * scale)
    assert seen.points(f"leg {leg:g} mm", _face(root, leg * scale), 6)
    assert seen.points("throat", root, 4)
    thick(seen, upper)
    assert seen.word("thickness 3 mm").box[3] < upper.box[1] - 20
    assert (
        seen.word("throat").text == {1.5: "throat 1.06 mm", 3.0: "throat 2.12 mm"}[leg]
    )  # leg over the root of 2


@pytest.mark.parametrize("leg", [2.0, 5.0])
def test_a_tee_and_its_fillet(leg: float) -> None:
    seen = Seen(joint.drawing("tee", 3 * MM, rules="iso", leg=leg * MM, cap=0.4 * MM, weld="rod").svg)
    standing, flat = seen.part("plate")
    scale = SHEET / 3
    root = (standing.box[2], standing.box[3])
    assert standing.box[2] - standing.box[0] == flat.box[3] - flat.box[1] == pytest.approx(SHEET, abs=0.1)
    assert flat.box[1] == standing.box[3]
    assert flat.box[0] < standing.box[0] - SHEET
    assert standing.box[3] - standing.box[1] > 3 * SHEET
    _fillet(seen, root, leg * scale, 0.4 * scale)
    assert seen.points(f"leg {leg:g} mm", _face(root, leg * scale), 6)
    assert seen.points("throat", root, 4)
    thick(seen, standing, upright=True)
    assert near(
        (seen.word("thickness").box[0], seen.word("thickness").y),
        (standing.box[2] + 34, standing.box[1] + 22),
        8,
    )
    assert seen.word("throat").text == {2.0: "throat 1.41 mm", 5.0: "throat 3.54 mm"}[leg]
    assert seen.word("one side drawn").x == flat.box[0]


def _face(root: Point, leg: float) -> Point:
    return root[0] + leg / 2, root[1] - leg / 2


def _fillet(seen: Seen, root: Point, leg: float, cap: float) -> None:
    """A triangle of two equal legs with its throat in dashes, and the full face over it."""
    (weld,) = seen.part("weld")
    assert near(weld.points[0], root, 0.1)
    assert near(weld.points[1], (root[0], root[1] - leg), 0.1)
    assert near(weld.points[-2], (root[0] + leg, root[1]), 0.1)
    on_circle(weld.points[1:-1], cap)
    (throat,) = [line for line in seen.of("line") if line.dashed]
    assert near(throat.points[0], root, 0.2)
    assert near(throat.points[1], _face(root, leg), 0.2)


@pytest.mark.parametrize(
    ("weld", "said"), [("", "edges to fuse"), ("rod", "cap 0.5 mm"), ("fused", "fused, no rod")]
)
def test_an_edge_joint(weld: str, said: str) -> None:
    seen = Seen(joint.drawing("edge", 1 * MM, rules="iso", cap=0.5 * MM, weld=weld).svg)
    one, other = seen.part("plate")
    both = Shape("both", (*one.points, *other.points))
    assert one.box[2] == other.box[0]
    assert one.box[2] - one.box[0] == other.box[2] - other.box[0] == pytest.approx(SHEET, abs=0.1)
    assert one.box[1::2] == other.box[1::2]
    high = SHEET / 2 if weld == "rod" else 0.0
    assert seen.points(said, (one.box[2], one.box[1] - high), 7)
    thick(seen, both, upright=True)
    if weld == "rod":
        (crown,) = seen.part("weld")
        assert crown.box[::2] == (one.box[0], other.box[2])
        assert one.box[1] - crown.box[1] == pytest.approx(high, abs=0.1)
        on_circle(crown.points[:-1], high)
    level = max(tip[1] for _, tip in seen.arrows)
    for text in ("two of", "1 mm"):
        assert abs(seen.word(text).y - level) < 20
        assert 20 < seen.word(text).x - both.box[2] < 50


@pytest.mark.parametrize("kind", joint.KINDS)
def test_lines_of_a_plate_stand_wider_apart_than_those_of_metal_from_the_rod(kind: str) -> None:
    """12 and 5: so that even where both are small their looks differ by more than double, and no plate looks gray."""
    svg = joint.drawing(kind, 3 * MM, cap=0.9 * MM, weld="rod").svg
    for piece in [part.split('"')[1] for part in svg.split("<path d=")[1:]]:
        lines = list(outlines('"' + piece))
        rising = all((b[1] - a[1]) * (b[0] - a[0]) < 0 for a, b in lines)
        levels = sorted({round(a[0] + (a[1] if rising else -a[1]), 1) for a, _ in lines})
        steps = {round(b - a) for a, b in itertools.pairwise(levels)}
        assert steps == ({12} if rising else {5})


def test_inches_are_told_to_a_ten_thousandth_and_millimeters_to_a_thousandth() -> None:
    assert (
        joint.drawing("square-butt", 0.0015).sentence
        == "A square butt of 0.0591 in sheet, the edges touching."
    )
    assert (
        joint.drawing("square-butt", 0.00012344, rules="iso").sentence
        == "A square butt of 0.123 mm sheet, the edges touching."
    )
    assert (
        joint.drawing("edge", 0.00012344).sentence == "An edge joint of 0.0049 in sheet, the edges flush."
    )
    assert joint.drawing("edge", 0.003, rules="iso", weld="fused").sentence == (
        "An edge joint of 3 mm sheet, the edges flush; the edges are melted together without rod."
    )
    assert joint.drawing("lap", 0.003, rules="iso", weld="rod", cap=0.0005).sentence == (
        "A lap of 3 mm sheet, one fillet, leg 3 mm, throat 2.12 mm; the close hatching is metal from the rod."
    )
    assert joint.drawing("single-v", 0.01, 0.002, "iso", root_face=0.0015).sentence == (
        "A single V of 10 mm sheet, 60° between the bevels, root face 1.5 mm, the edges 2 mm apart."
    )
    assert joint.drawing("single-v", 0.01, 0.0, "iso").sentence == (
        "A single V of 10 mm sheet, 60° between the bevels, no root face, the edges touching."
    )


@pytest.mark.parametrize(
    ("kind", "at_its_end", "beyond"),
    [
        ("square-butt", {"gap": 3.0}, {"gap": 3.01}),
        ("lap", {"leg": 1.0}, {"leg": 1.01}),
        ("tee", {"leg": 2.0}, {"leg": 2.01}),
        ("edge", {"cap": 0.5}, {"cap": 0.51}),
        ("tee", {"leg": 2.0, "cap": 1.0}, {"leg": 2.0, "cap": 1.01}),
        ("single-v", {"root_face": 0.99}, {"root_face": 1.0}),
    ],
)
def test_the_largest_that_is_drawn_and_the_least_that_is_not(
    kind: str, at_its_end: dict[str, float], beyond: dict[str, float]
) -> None:
    """In thicknesses: a gap of three, a leg of one on a lap and two on a tee, a cap of half a thickness or leg."""
    joint.drawing(kind, 2 * MM, weld="rod", **{name: value * 2 * MM for name, value in at_its_end.items()})
    with pytest.raises(ValueError, match=r"."):
        joint.drawing(kind, 2 * MM, weld="rod", **{name: value * 2 * MM for name, value in beyond.items()})


@pytest.mark.parametrize(("degrees", "drawn"), [(15.0, True), (14.9, False), (126.0, True), (126.1, False)])
def test_the_narrowest_and_the_widest_v(degrees: float, drawn: bool) -> None:
    """2.2 rad is 126.05 degrees."""
    made = None
    try:
        made = joint.drawing("single-v", 10 * MM, angle=math.radians(degrees) + 1e-9)
    except ValueError as error:
        assert "the V is too" in str(error)  # noqa: PT017
    assert (made is not None) == drawn
