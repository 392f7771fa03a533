"""What stands in a drawing, read from its SVG: words, arrows, lines, and outlines as rows of points."""

import math
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
LETTER = 0.5
"""Width of a usual letter in font sizes."""
Point = tuple[float, float]


@dataclass(frozen=True)
class Word:
    """A text, its anchor, and about the box that it fills."""

    text: str
    x: float
    y: float
    anchor: str
    size: float

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right, foot."""
        wide = LETTER * self.size * len(self.text)
        left = self.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[self.anchor] * wide
        return left, self.y - 0.75 * self.size, left + wide, self.y + 0.2 * self.size

    def away(self, point: Point) -> float:
        """Distance of a point from the box; 0 inside it."""
        left, top, right, foot = self.box
        return math.hypot(
            max(left - point[0], 0, point[0] - right), max(top - point[1], 0, point[1] - foot)
        )


@dataclass(frozen=True)
class Shape:
    """An outline or a line as points, with what its element says."""

    kind: str
    points: tuple[Point, ...]
    said: dict[str, str] = field(hash=False, compare=False, default_factory=dict)

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right, foot."""
        xs, ys = zip(*self.points, strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def dashed(self) -> bool:
        """Whether it is drawn in dashes."""
        return "stroke-dasharray" in self.said

    @property
    def solid(self) -> bool:
        """Whether it is filled with ink."""
        return self.said.get("fill") == "currentColor"

    def away(self, point: Point) -> float:
        """Distance of a point from the drawn line."""
        return min(
            _from_piece(point, a, b)
            for a, b in zip(self.points, self.points[1:] or self.points, strict=False)
        )


def _from_piece(point: Point, a: Point, b: Point) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = dx * dx + dy * dy
    share = (
        0.0 if long == 0 else min(1.0, max(0.0, ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / long))
    )
    return math.dist(point, (a[0] + share * dx, a[1] + share * dy))


def _bowed(a: Point, by: Point, b: Point) -> list[Point]:
    return [
        tuple((1 - t) ** 2 * p + 2 * t * (1 - t) * q + t * t * r for p, q, r in zip(a, by, b, strict=True))  # type: ignore[misc]
        for t in (n / 8 for n in range(1, 9))
    ]


def _bowed_twice(a: Point, one: Point, two: Point, b: Point) -> list[Point]:
    return [
        tuple(
            (1 - t) ** 3 * p + 3 * t * (1 - t) ** 2 * q + 3 * t * t * (1 - t) * r + t**3 * s
            for p, q, r, s in zip(a, one, two, b, strict=True)
        )  # type: ignore[misc]
        for t in (n / 8 for n in range(1, 9))
    ]


def _arc(a: Point, rx: float, ry: float, large: bool, sweep: bool, b: Point) -> list[Point]:
    """Points of an arc without turned axes, after the notes on implementation of SVG 1.1, F.6."""
    if a == b or rx == 0 or ry == 0:
        return [b]
    hx, hy = (a[0] - b[0]) / 2, (a[1] - b[1]) / 2
    grow = max(1.0, math.sqrt((hx / rx) ** 2 + (hy / ry) ** 2))
    rx, ry = rx * grow, ry * grow
    under = (hx / rx) ** 2 + (hy / ry) ** 2
    root = math.sqrt(max(0.0, 1 / under - 1)) * (-1 if large == sweep else 1)
    cx, cy = root * rx * hy / ry + (a[0] + b[0]) / 2, -root * ry * hx / rx + (a[1] + b[1]) / 2
    start = math.atan2((a[1] - cy) / ry, (a[0] - cx) / rx)
    turn = math.atan2((b[1] - cy) / ry, (b[0] - cx) / rx) - start
    turn += 2 * math.pi * ((turn < 0) if sweep else -(turn > 0))
    return [
        (cx + rx * math.cos(start + turn * n / 24), cy + ry * math.sin(start + turn * n / 24))
        for n in range(1, 25)
    ]


_TAKES = {"m": 2, "l": 2, "h": 1, "v": 1, "q": 4, "t": 2, "c": 6, "a": 7, "z": 0}


def outlines(d: str) -> Iterator[tuple[Point, ...]]:
    """Each piece of a path as points."""
    here, start, bow, run = (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), list[Point]()
    for command, numbers in re.findall(r"([a-zA-Z])([^a-zA-Z]*)", d):
        values = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?(?:e-?\d+)?", numbers)]
        low, takes = command.lower(), _TAKES[command.lower()]
        for at in range(0, len(values), takes) if takes else [0]:
            v = values[at : at + takes]
            ox, oy = here if command.islower() else (0.0, 0.0)
            if low == "z":
                run.append(start)
                here = start
                continue
            if low == "h":
                end = (v[0] + ox, here[1])
            elif low == "v":
                end = (here[0], v[0] + oy)
            else:
                end = (v[-2] + ox, v[-1] + oy)
            if low == "m" and at == 0:
                if len(run) > 1:
                    yield tuple(run)
                run, start = [end], end
            elif low in "qt":
                bow = (v[0] + ox, v[1] + oy) if low == "q" else (2 * here[0] - bow[0], 2 * here[1] - bow[1])
                run += _bowed(here, bow, end)
            elif low == "c":
                run += _bowed_twice(here, (v[0] + ox, v[1] + oy), (v[2] + ox, v[3] + oy), end)
            elif low == "a":
                run += _arc(here, v[0], v[1], bool(v[3]), bool(v[4]), end)
            else:
                run.append(end)
            here = end
            if low not in "qt":
                bow = here
    if len(run) > 1:
        yield tuple(run)


def _numbers(text: str) -> list[float]:
    return [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?(?:e-?\d+)?", text)]


def _moved(group: ElementTree.Element) -> tuple[float, float, float]:
    right, down, grow = [*_numbers(group.get("transform", "0 0 1")), 1.0][:3]
    return right, down, grow


class Seen:
    """A drawing taken to pieces."""

    def __init__(self, svg: str) -> None:
        root = ElementTree.fromstring(svg)
        _, _, self.width, self.height = _numbers(root.get("viewBox", ""))
        usual = float(root.get("font-size", "16"))
        self.words: list[Word] = []
        self.shapes: list[Shape] = []
        self.arrows: list[tuple[Point, Point]] = []
        self.heads: list[tuple[Point, ...]] = []
        moved = {element: _moved(group) for group in root.iter(f"{SVG}g") for element in group.iter()}
        for element in root.iter():
            name = element.tag.removeprefix(SVG)
            if name == "text":
                text = "".join(element.itertext())
                place = float(element.get("x", "0")), float(element.get("y", "0"))
                if "transform" not in element.attrib:
                    size = float(element.get("font-size", usual))
                    self.words.append(Word(text, *place, element.get("text-anchor", "start"), size))
            elif name in _READ:
                self._take(name, dict(element.attrib), moved.get(element, (0.0, 0.0, 1.0)))

    def _take(self, name: str, said: dict[str, str], moved: tuple[float, float, float]) -> None:
        right, down, grow = moved
        for bare in _READ[name](said):
            points = tuple((right + grow * x, down + grow * y) for x, y in bare)
            shape = Shape(name, points, said)
            before = self.shapes[-1] if self.shapes else None
            is_head = (
                name == "polygon" and len(points) == 4 and shape.solid and before and before.kind == "line"
            )
            if is_head and before and before.points[1] == points[0]:
                self.shapes.pop()
                self.arrows.append((before.points[0], before.points[1]))
                self.heads.append(points[:3])
            else:
                self.shapes.append(shape)

    def word(self, text: str) -> Word:
        """The one text that is this, or else the one that begins so."""
        (found,) = [w for w in self.words if w.text == text] or [
            w for w in self.words if w.text.startswith(text)
        ]
        return found

    def of(self, kind: str) -> list[Shape]:
        """Shapes of a kind of element."""
        return [shape for shape in self.shapes if shape.kind == kind]

    def part(self, name: str) -> list[Shape]:
        """Shapes that say which part they are."""
        return [shape for shape in self.shapes if shape.said.get("data-part") == name]

    def points(self, text: str, place: Point, within: float = 6.0) -> bool:
        """Whether an arrow leads from a text, beginning within 24 of it, to a place."""
        word = self.word(text)
        tips = [tip for tail, tip in self.arrows if word.away(tail) <= 24]
        return any(math.dist(tip, place) <= within for tip in tips)

    def tip_near(self, point: Point, within: float = 6.0) -> bool:
        """Whether some arrow ends near a point."""
        return any(math.dist(tip, point) <= within for _, tip in self.arrows)


def _rect(said: dict[str, str]) -> list[tuple[Point, ...]]:
    x, y, w, h = (float(said.get(name, "0")) for name in ("x", "y", "width", "height"))
    return [((x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y))]


def _round(said: dict[str, str]) -> list[tuple[Point, ...]]:
    x, y = float(said["cx"]), float(said["cy"])
    rx, ry = float(said.get("r", said.get("rx", "0"))), float(said.get("r", said.get("ry", "0")))
    turns = [2 * math.pi * n / 32 for n in range(33)]
    return [tuple((x + rx * math.cos(turn), y + ry * math.sin(turn)) for turn in turns)]


def _corners(said: dict[str, str]) -> list[tuple[Point, ...]]:
    numbers = _numbers(said["points"])
    points = list(zip(numbers[::2], numbers[1::2], strict=True))
    return [(*points, points[0])]


def _line(said: dict[str, str]) -> list[tuple[Point, ...]]:
    x1, y1, x2, y2 = (float(said[name]) for name in ("x1", "y1", "x2", "y2"))
    return [((x1, y1), (x2, y2))]


def _path(said: dict[str, str]) -> list[tuple[Point, ...]]:
    return list(outlines(said["d"]))


_READ: dict[str, Callable[[dict[str, str]], list[tuple[Point, ...]]]] = {
    "rect": _rect, "circle": _round, "ellipse": _round, "polygon": _corners, "line": _line, "path": _path,
}  # fmt: skip


def crossed(word: Word, a: Point, b: Point, less: float = 2.0) -> bool:
    """Whether a straight line runs through a text."""
    left, top, right, foot = word.box
    left, top, right, foot = left + less, top + less, right - less, foot - less
    steps = max(2, int(math.dist(a, b) / 2))
    places = (
        (a[0] + (b[0] - a[0]) * n / steps, a[1] + (b[1] - a[1]) * n / steps) for n in range(steps + 1)
    )
    return any(left < x < right and top < y < foot for x, y in places)


def inside(point: Point, outline: Sequence[Point]) -> bool:
    """Whether a point lies within an outline."""
    within = False
    for (x1, y1), (x2, y2) in zip(outline, [*outline[1:], outline[0]], strict=True):
        if (y1 > point[1]) != (y2 > point[1]) and point[0] < x1 + (point[1] - y1) * (x2 - x1) / (y2 - y1):
            within = not within
    return within
