"""Drawings over many inputs, for tests of what holds for each."""

from collections.abc import Iterator
from functools import cache
from itertools import product

from calc.class_plan.drawings import cut_run, hold, socket, stand
from calc.declare import Picture
from calc.show.drawings import (
    bars,
    braze,
    cut,
    faults,
    frame,
    gauges,
    heat_map,
    joint,
    outfit,
    pools,
    sparks,
    stock_sheet,
    strip,
    swatches,
    tacks,
    tip_hole,
    tube,
    turns,
    zone,
)  # fmt: skip
from calc.trade.drawings import flame

PSI = 6894.757293168
BAR = 1e5
INCH = 0.0254
HELD = ("puddle", "corner", "bead", "butt", "lap", "tee", "braze-weld")
"""Exercises whose torch is drawn from the side."""


def _still() -> Iterator[tuple[str, Picture]]:
    """Drawings that take no figure."""
    for name, made in {
        "outfit": outfit, "sparks": sparks, "frame": frame,
    }.items():  # fmt: skip
        yield name, made.drawing()
    yield "cut faults", cut.faults()
    yield "smoky flame", flame.smoky_drawing()
    for kind in stand.KINDS:
        yield f"stand {kind}", stand.drawing(kind)
    for kind in pools.KINDS:
        yield f"pools {kind}", pools.drawing(kind)
    for module in (cut_run, socket, strip):
        for step in module.STEPS:
            yield f"{module.__name__.rpartition('.')[2]} {step}", module.drawing(step)
    for exercise in HELD:
        yield f"hold {exercise}", hold.drawing(exercise)
    for fault in faults.FAULTS:
        yield f"fault {fault}", faults.drawing(fault)
    for kind, count in product(tacks.NAMES, (3, 5, 7, 9)):
        yield f"tacks {kind} {count}", tacks.drawing(count, kind)


def _of_joints() -> Iterator[tuple[str, Picture]]:
    mm = 1e-3
    for kind, weld in product(joint.KINDS, joint.WELDS):
        for gap, cap in ((0.0, 0.0), (0.5, 0.25), (1.0, 0.45)):
            yield (
                f"{kind} {weld} {gap} {cap}",
                joint.drawing(kind, 3 * mm, gap * 3 * mm, "iso", cap=cap * 3 * mm, weld=weld),
            )
    for degrees, face, gap in product((40, 60, 90), (0.0, 1.5), (0.0, 3.0)):
        yield (
            f"V {degrees} {face} {gap}",
            joint.drawing(
                "single-v",
                10 * mm,
                gap * mm,
                "iso",
                angle=degrees * 3.141592653589793 / 180,
                root_face=face * mm,
                cap=mm,
                weld="rod",
            ),
        )
    for leg in (0.5, 0.8, 1.0):
        yield (
            f"lap {leg}",
            joint.drawing("lap", 0.125 * INCH, leg=leg * 0.125 * INCH, cap=0.02 * INCH, weld="rod"),
        )
        yield (
            f"tee {leg}",
            joint.drawing("tee", 0.125 * INCH, leg=2 * leg * 0.125 * INCH, cap=0.02 * INCH, weld="rod"),
        )


def _of_figures() -> Iterator[tuple[str, Picture]]:
    for ratio in (0.85, 0.9, 0.95, 1.0, 1.03, 1.1, 1.14, 1.2, 1.5, 1.7):
        yield f"flame {ratio}", flame.drawing(ratio)
        yield f"flame to be named {ratio}", flame.drawing(ratio, "iso", named=False)
    for rules, gas in product(("us", "iso"), ("oxygen", "acetylene")):
        for cylinder, delivery in (
            (0.0, 0.0),
            (1500 * PSI, 10 * PSI),
            (0.5 * BAR, 0.3 * BAR),
            (150 * BAR, 5 * BAR),
        ):
            given = min(delivery, 1.0 * BAR) if gas == "acetylene" else delivery
            yield f"gauges {rules} {gas} {cylinder:.0f}", gauges.drawing(cylinder, given, rules, gas)
    for clear, reach, height, nearest in product(
        (2.0, 10.7), (4.0, 14.0), (0.0, 1.0, 30.0), (None, 1.5, 40.0)
    ):
        path = [(0.0, height), (reach / 2, height * 0.8), (reach, 0.0)]
        yield (
            f"zone {clear} {reach} {height} {nearest}",
            zone.drawing(clear=clear, reach=reach, height=height, path=path, nearest=nearest, rules="iso"),
        )
    for hole, low, high, own in (
        (0.79, 0.742, 0.813, None), (0.35, 0.34, None, 0.5), (3.3, None, 3.45, 2.9), (1.0, None, None, None), (5.79, 5.6, 6.0, 0.2),
    ):  # fmt: skip
        yield (
            f"tip hole {hole}",
            tip_hole.drawing(
                hole * 1e-3,
                ("#69", low * 1e-3) if low else None,
                ("#1", high * 1e-3) if high else None,
                own and own * 1e-3,
            ),
        )
    for outside, wall, depth, filled in (
        (15.875, 1.016, 12.7, 1.0), (206.4, 4.3, 100.8, 2 / 3), (6.0, 0.8, 12.0, 2 / 3), (22.0, 1.0, 16.0, 0.5),
    ):  # fmt: skip
        yield (
            f"tube {outside}",
            tube.drawing(
                outside=outside * 1e-3,
                wall=wall * 1e-3,
                depth=depth * 1e-3,
                gap=0.1e-3,
                filled=filled,
                rules="iso",
            ),
        )
    for form, cold, hot in product(braze.FORMS, (0.01e-3, 0.09e-3, 0.6e-3), (0.02e-3, 0.1e-3, 0.3e-3)):
        yield (
            f"braze {form} {cold} {hot}",
            braze.drawing(
                form=form,
                outside="steel",
                inside="copper",
                cold=cold,
                hot=hot,
                least=0.05e-3,
                most=0.13e-3,
                rules="iso",
            ),
        )
    for thick, speed, share in product((0.003, 0.0127, 0.15), (0.002, 0.006, 0.0096), (0.0, 0.1, 0.25)):
        yield f"cut {thick} {speed} {share}", cut.drawing(thick, speed, share * thick, "iso")
    for thick, wide in product((0.5e-3, 3e-3, 40e-3), (3e-3, 12e-3)):
        yield (
            f"heat map {thick} {wide}",
            heat_map.drawing(isotherms(wide, thick), thick, "Hot within the line."),
        )


def isotherms(wide: float, thick: float) -> list[heat_map.Isotherm]:
    """Four ovals one in another, the tail of each longer than its front."""
    found = []
    for number, grow in enumerate((1.0, 1.8, 3.0, 5.0)):
        half = wide * grow
        front, tail = half, 3 * half
        side = [
            (front - (front + tail) * n / 60, half * (1 - (2 * n / 60 - 1) ** 2) ** 0.5) for n in range(61)
        ]
        found.append(heat_map.Isotherm(f"{900 - 200 * number} °C", tuple(side), half > thick))
    return found


def _of_rows() -> Iterator[tuple[str, Picture]]:
    for count in (1, 2, 3):
        parts = ("burnt", "left", "lost")[:count]
        shown = [
            bars.Bar(f"bar {n}", f"{n} h", tuple(0.5 * n + part for part in range(count)))
            for n in range(1, 6)
        ]
        yield f"bars {count}", bars.drawing("Bars", "One is longer.", parts, shown)
    for benches in (1, 3, 8):
        boxes = [
            (bench, str(bench), 10 + 20 * turn, 28 + 20 * turn)
            for bench in range(1, benches + 1)
            for turn in range(4)
        ]
        yield (
            f"turns {benches}",
            turns.drawing(
                "T", 180, boxes, (90, 150), [(0, "start"), (2, "b"), (4, "c"), (90, "d"), (180, "end")]
            ),
        )
    for width, height in ((2.4, 1.2), (6.0, 0.1), (1.0, 1.0)):
        strips = [
            stock_sheet.Drawn(
                kind,
                tuple(
                    (0.02 * width + 0.12 * width * kind, 0.3 * height * n, 0.1 * width, 0.25 * height)
                    for n in range(3)
                ),
            )
            for kind in range(8)
        ]
        yield (
            f"stock {width}",
            stock_sheet.drawing(
                title="S",
                sentence="Some is left.",
                width=width,
                height=height,
                strips=strips,
                key=[f"kind {n}" for n in range(8)],
            ),
        )
    rows = [("#aa0000", f"color {n}", f"{600 + 50 * n} °C") for n in range(9)]
    yield "swatches", swatches.drawing(rows, [2, 3], "Swatches", "Go by the name.")


@cache
def pictures() -> dict[str, Picture]:
    """Every drawing over some of what it may be given, by a name."""
    return {name: made for all_of in (_still, _of_joints, _of_figures, _of_rows) for name, made in all_of()}
