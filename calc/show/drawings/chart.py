"""A line chart as SVG: lines told apart by dash and label, never by colour alone."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from zlib import crc32

from calc.values.numbers import plain_number

WIDTH, HEIGHT = 340.0, 240.0
LEFT, RIGHT, TOP, BOTTOM = 52.0, 12.0, 14.0, 42.0
DASHES = ("", "6 3", "2 3", "8 3 2 3")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a chart.

    Attributes:
        label: What it is.
        points: In the units of the axes.
        at: Share of the points at which the label stands; chosen where None.
        below: Whether the label stands below the line, to its right.
    """

    label: str
    points: tuple[tuple[float, float], ...]
    at: float | None = None
    below: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """The reader's own point, or a limit drawn across the chart."""

    label: str
    x: float | None
    y: float | None


def ticks(low: float, high: float, wanted: int = 5) -> list[float]:
    """Round values from `low` to `high` for an axis.

    Args:
        low: Least value on the axis.
        high: Largest value, above `low`.
        wanted: About how many.

    Examples:
        >>> ticks(0, 100)
        [0.0, 20.0, 40.0, 60.0, 80.0, 100.0]
    """
    raw = (high - low) / wanted
    size = 10.0 ** math.floor(math.log10(raw))
    step = next(size * m for m in (1, 2, 5, 10) if size * m >= raw * (1 - 1e-9))
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return [round(n * step, 12) for n in range(first, last + 1)]


@dataclass(frozen=True, slots=True)
class _Plane:
    low_x: float
    high_x: float
    low_y: float
    high_y: float

    def x(self, value: float) -> float:
        share = (value - self.low_x) / (self.high_x - self.low_x)
        return LEFT + share * (WIDTH - LEFT - RIGHT)

    def y(self, value: float) -> float:
        share = (value - self.low_y) / (self.high_y - self.low_y)
        return HEIGHT - BOTTOM - share * (HEIGHT - TOP - BOTTOM)


def _axes(plane: _Plane, x_label: str, y_label: str) -> list[str]:
    floor, left = HEIGHT - BOTTOM, LEFT
    parts = [f'<path d="M{left} {TOP}V{floor}H{WIDTH - RIGHT}" fill="none" stroke="currentColor"/>']
    for value in ticks(plane.low_x, plane.high_x):
        x = plane.x(value)
        parts.append(
            f'<path d="M{x:.1f} {floor}v4" stroke="currentColor"/>'
            f'<text x="{x:.1f}" y="{floor + 16}" text-anchor="middle">{plain_number(value)}</text>'
        )
    for value in ticks(plane.low_y, plane.high_y):
        y = plane.y(value)
        parts.append(
            f'<path d="M{left} {y:.1f}H{WIDTH - RIGHT}" stroke="currentColor" opacity=".25"/>'
            f'<text x="{left - 5}" y="{y + 4:.1f}" text-anchor="end">{plain_number(value)}</text>'
        )
    middle = (LEFT + WIDTH - RIGHT) / 2
    parts.append(
        f'<text x="{middle}" y="{HEIGHT - 6}" text-anchor="middle">{escape(x_label)}</text>'
        f'<text x="12" y="{(TOP + floor) / 2}" text-anchor="middle" '
        f'transform="rotate(-90 12 {(TOP + floor) / 2})">{escape(y_label)}</text>'
    )
    return parts


def _line(plane: _Plane, line: Line, dash: str, at: float) -> str:
    path = "".join(
        f"{'M' if i == 0 else 'L'}{plane.x(x):.1f} {plane.y(y):.1f}" for i, (x, y) in enumerate(line.points)
    )
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    x, y = line.points[min(int(at * len(line.points)), len(line.points) - 1)]
    anchor = "end" if plane.x(x) > WIDTH * 0.55 and not line.below else "start"
    shift = (8.0, 14.0) if line.below else (0.0, -6.0)
    return (
        f'<path d="{path}" fill="none" stroke="currentColor" stroke-width="2"{dashed}/>'
        f'<text class="bb-halo" x="{plane.x(x) + shift[0]:.1f}" y="{plane.y(y) + shift[1]:.1f}" '
        f'text-anchor="{anchor}">{escape(line.label)}</text>'
    )


def _mark(plane: _Plane, mark: Mark) -> str:
    label = escape(mark.label)
    if mark.y is None and mark.x is not None:
        x = plane.x(mark.x)
        return (
            f'<path d="M{x:.1f} {TOP}V{HEIGHT - BOTTOM}" stroke="currentColor" '
            f'stroke-dasharray="1 3" stroke-width="2"/><text class="bb-halo" x="{x - 4:.1f}" '
            f'y="{TOP + 8}" text-anchor="end">{label}</text>'
        )
    if mark.x is None and mark.y is not None:
        y = plane.y(mark.y)
        return (
            f'<path d="M{LEFT} {y:.1f}H{WIDTH - RIGHT}" stroke="currentColor" '
            f'stroke-dasharray="1 3" stroke-width="2"/><text class="bb-halo" x="{LEFT + 4}" '
            f'y="{y - 4:.1f}">{label}</text>'
        )
    x, y = plane.x(mark.x or 0.0), plane.y(mark.y or 0.0)
    anchor = "end" if x > WIDTH * 0.6 else "start"
    shift = -8 if anchor == "end" else 8
    return (
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="5" fill="none" stroke="currentColor" '
        f'stroke-width="2"/><circle cx="{x:.1f}" cy="{y:.1f}" r="1.5" fill="currentColor"/>'
        f'<text class="bb-halo" x="{x + shift:.1f}" y="{y + 14:.1f}" '
        f'text-anchor="{anchor}"><tspan font-weight="bold">{label}</tspan></text>'
    )


def line_chart(
    *,
    title: str,
    sentence: str,
    x_label: str,
    y_label: str,
    lines: Sequence[Line],
    marks: Sequence[Mark] = (),
) -> str:
    """A chart with axes, lines and marks.

    Args:
        title: What it shows.
        sentence: What to take from it; becomes the description.
        x_label: Name and unit of the axis across.
        y_label: Name and unit of the axis upward.
        lines: One to four lines, each with at least two points.
        marks: The reader's point, or limits (`x` or `y` is None).

    Returns:
        An SVG element that takes its colour from the page.
    """
    xs = [x for line in lines for x, _ in line.points] + [m.x for m in marks if m.x is not None]
    ys = [y for line in lines for _, y in line.points] + [m.y for m in marks if m.y is not None]
    low_y = min(0.0, *ys) if min(ys) < 0.35 * max(ys) else min(ys)
    room = (max(ys) - low_y) * 0.08 or 1.0
    plane = _Plane(min(xs), max(xs), low_y - (0 if low_y == 0 else room), max(ys) + room)
    drawn = _axes(plane, x_label, y_label)
    for index, line in enumerate(lines):
        chosen = 0.95 - 0.25 * index if len(lines) > 1 else 0.6
        at = chosen if line.at is None else line.at
        drawn.append(_line(plane, line, DASHES[index % len(DASHES)], at))
    drawn += [_mark(plane, mark) for mark in marks]
    body = "".join(drawn)
    name = f"chart-{crc32((title + body).encode()):08x}"  # the same at every build and in every Python
    return (
        f'<svg class="bb-chart" viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" role="img" '
        f'aria-labelledby="{name}-t {name}-d" font-size="12" fill="currentColor">'
        f'<title id="{name}-t">{escape(title)}</title><desc id="{name}-d">{escape(sentence)}</desc>'
        f"{body}</svg>"
    )
