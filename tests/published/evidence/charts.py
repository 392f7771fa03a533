"""What can be read off a drawn chart: its scales, its marks, its points and its curves."""

import itertools
import re
from dataclasses import dataclass, field
from xml.etree import ElementTree

NUMBER = r"(-?[\d.]+)"
Place = tuple[float, float]


@dataclass
class Chart:
    """One chart, in the numbers of its scales.

    Attributes:
        across: Numbers along the foot, in order.
        up: Numbers along the side, in order.
        marks: Where a dotted line or a ring with that label stands; None along the line.
        curves: Points of each labelled curve.
    """

    across: list[float] = field(default_factory=list)
    up: list[float] = field(default_factory=list)
    marks: dict[str, tuple[float | None, float | None]] = field(default_factory=dict)
    curves: dict[str, list[Place]] = field(default_factory=dict)

    def height(self, label: str, at: float) -> float:
        """What a curve shows at a number of the foot, between its points on a straight line."""
        points = self.curves[label]
        for (left, low), (right, high) in itertools.pairwise(points):
            if left <= at <= right:
                return low + (high - low) * (at - left) / (right - left) if right > left else low
        raise ValueError(f"{label} goes from {points[0][0]} to {points[-1][0]}")


def _number(text: str) -> float:
    return float(text.replace("−", "-").replace(",", "").replace("k", "e3"))


def _scale(ticks: list[Place]) -> tuple[float, float]:
    """Slope and start of the numbers of a scale over the places of its ticks."""
    (place, number), (last, end) = ticks[0], ticks[-1]
    slope = (end - number) / (last - place)
    return slope, number - slope * place


def chart(svg: str) -> Chart:
    """The chart that is drawn; places are read to a tenth of a pixel."""
    parts = [(each.tag.rpartition("}")[2], dict(each.attrib), "".join(each.itertext())) for each in ElementTree.fromstring(svg).iter()]
    pairs = list(itertools.pairwise(parts))
    foot, side = [], []
    for (tag, now, _), (after, _, text) in pairs:
        if tag == "path" and after == "text":
            if found := re.fullmatch(rf"M{NUMBER} {NUMBER}v4", now["d"]):
                foot.append((float(found[1]), _number(text)))
            elif now.get("opacity") and (found := re.match(rf"M{NUMBER} {NUMBER}H", now["d"])):
                side.append((float(found[2]), _number(text)))
    (wide, first), (high, least) = _scale(foot), _scale(side)
    made = Chart([number for _, number in foot], [number for _, number in side])
    labels = [text if tag == "text" else "" for tag, _, text in parts]
    for place, (tag, now, _) in enumerate(parts):
        label = next((text for text in labels[place + 1 :] if text), "")
        if tag == "circle" and label not in made.marks:
            made.marks[label] = (wide * float(now["cx"]) + first, high * float(now["cy"]) + least)
        if tag != "path":
            continue
        if now.get("stroke-dasharray") == "1 3":
            found = re.match(rf"M{NUMBER} {NUMBER}([VH])", now["d"])
            assert found
            upright = found[3] == "V"
            made.marks[label] = (wide * float(found[1]) + first, None) if upright else (None, high * float(found[2]) + least)
        elif "L" in now["d"]:
            points = [tuple(map(float, each.split())) for each in re.split("[ML]", now["d"])[1:]]
            made.curves[label] = [(wide * x + first, high * y + least) for x, y in points]
    return made
