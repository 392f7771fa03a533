"""What a bead's verdict never says, whatever is given.

The limits are typed here from the standards that tests/published names, as plain
arithmetic in millimetres, and held against the words that a reader sees.
"""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from calc import answer

LEVELS = ("b", "c", "d")
CAPS = {"b": (0.1, 5.0), "c": (0.15, 7.0), "d": (0.25, 10.0)}
FACES = {"b": (0.1, 3.0), "c": (0.15, 4.0), "d": (0.25, 5.0)}
ROOTS = {"b": (0.2, 3.0), "c": (0.6, 4.0), "d": (1.0, 5.0)}
THIN_ROOTS = {"b": 0.1, "c": 0.3, "d": 0.6}
UNDERCUTS = {"b": (0.05, 0.5), "c": (0.1, 0.5), "d": (0.2, 1.0)}
THIN_UNDERCUTS = {"b": 0.0, "c": 0.1, "d": 0.2}
UNDERFILLS = {"b": (0.05, 0.5), "c": (0.1, 1.0), "d": (0.25, 2.0)}
THIN_UNDERFILLS = {"b": 0.0, "c": 0.1, "d": 0.25}
STEPS = {"b": (0.1, 3.0), "c": (0.15, 4.0), "d": (0.25, 5.0)}
NAMES = {
    "undercut": "undercut", "excess": "height of the cap", "convexity": "convexity", "penetration": "bead at the root",
    "underfill": "underfill", "misalignment": "misalignment",
}  # fmt: skip


def limits(level: str, t: float, face: float, root: float, *, short: bool) -> dict[str, float]:
    """Limits of ISO 5817 in millimetres, all widths known."""
    thin = t <= 3.0
    return {
        "undercut": (THIN_UNDERCUTS[level] * t if short else 0.0)
        if thin
        else min(UNDERCUTS[level][0] * t, UNDERCUTS[level][1]),
        "excess": min(1 + CAPS[level][0] * face, CAPS[level][1]),
        "convexity": min(1 + FACES[level][0] * face, FACES[level][1]),
        "penetration": 1 + THIN_ROOTS[level] * root
        if thin
        else min(1 + ROOTS[level][0] * root, ROOTS[level][1]),
        "underfill": 0.0
        if not short
        else THIN_UNDERFILLS[level] * t
        if thin
        else min(UNDERFILLS[level][0] * t, UNDERFILLS[level][1]),
        "misalignment": 0.2 + STEPS[level][0] * t if thin else min(STEPS[level][0] * t, STEPS[level][1]),
    }


def aws_limits(t: float, face: float, *, short: bool) -> dict[str, float]:
    """Limits of AWS D1.1 in inches; the root has none."""
    return {
        "undercut": 1 / 16 if short or t > 1.0 else 1 / 32,
        "excess": 1 / 8,
        "convexity": 1 / 16 if face <= 5 / 16 else 1 / 8 if face <= 1 else 3 / 16,
        "underfill": 0.0,
        "misalignment": min(0.1 * t, 1 / 8),
    }


ITEMS = {
    "butt": ("undercut", "excess", "penetration", "underfill", "misalignment"),
    "fillet": ("undercut", "convexity"),
}
TENTHS = st.integers(0, 120).map(lambda n: n / 10)
SIZES = st.fixed_dictionaries({}, optional=dict.fromkeys(NAMES, TENTHS))
THICKNESSES = st.integers(5, 400).map(lambda n: n / 10)
WIDTHS = st.integers(10, 240).map(lambda n: n / 10)


def verdict(standard: str, joint: str, unit: str, thickness: float, **more: Any) -> str:
    texts = {
        name: text if isinstance(text, str) else f"{text} {unit}"
        for name, text in more.items()
        if text is not None
    }
    rules = "us" if unit == "in" else "iso"
    got = answer(
        "bead-check", standard=standard, joint=joint, thickness=f"{thickness} {unit}", rules=rules, **texts
    )
    return str(got["results"]["verdict"]["text"])


def named(said: str, part: str) -> str:
    """The names in one part of a verdict, or nothing."""
    for sentence in said.replace("D1.1", "D1").split(". "):
        if part in sentence.lower():
            return sentence.rpartition(": ")[2]
    return ""


@given(
    level=st.sampled_from(LEVELS), joint=st.sampled_from(tuple(ITEMS)), thickness=THICKNESSES, face=WIDTHS, root=WIDTHS,
    sizes=SIZES, short=st.booleans(),
)  # fmt: skip
def test_above_its_limit_is_never_met_by_iso(
    level: str, joint: str, thickness: float, face: float, root: float, sizes: dict[str, float], short: bool
) -> None:
    most = limits(level, thickness, face, root, short=short)
    asked = {item: size for item, size in sizes.items() if item in ITEMS[joint]}
    over = {item for item, size in asked.items() if size > most[item] * (1 + 1e-6) + 1e-9}
    close = {item for item, size in asked.items() if abs(size - most[item]) <= 1e-6}
    said = verdict(f"iso-{level}", joint, "mm", thickness, bead_width=face, root_width=root,
                   run="short" if short else "long", **sizes)  # fmt: skip
    failing = named(said, "does not meet")
    assert said.startswith("does not meet") == bool(over)
    for item, name in NAMES.items():
        if item not in close:
            assert (name in failing.split(", ")) == (item in over), said
    if not asked:
        assert said.startswith("nothing given")


@given(
    joint=st.sampled_from(tuple(ITEMS)), eighths=st.integers(1, 16), face=st.integers(1, 60), short=st.booleans(),
    sizes=st.fixed_dictionaries({}, optional=dict.fromkeys(NAMES, st.integers(0, 32).map(lambda n: n / 64))),
)  # fmt: skip
def test_above_its_limit_is_never_met_by_aws(
    joint: str, eighths: int, face: int, short: bool, sizes: dict[str, float]
) -> None:
    t, width = eighths / 8, face / 32
    most = aws_limits(t, width, short=short)
    asked = {item: size for item, size in sizes.items() if item in ITEMS[joint]}
    over = {item for item, size in asked.items() if item in most and size > most[item] + 1e-9}
    said = verdict("aws", joint, "in", t, bead_width=width, run="short" if short else "long", **sizes)
    assert said.startswith("does not meet") == bool(over)
    if "penetration" in asked and not over:
        assert said.startswith("cannot be told")


@given(
    level=st.sampled_from(LEVELS), thickness=THICKNESSES, sizes=SIZES, joint=st.sampled_from(tuple(ITEMS))
)
def test_without_a_width_only_what_holds_for_every_width_is_met(
    level: str, thickness: float, sizes: dict[str, float], joint: str
) -> None:
    """A bead of no width has the least limit: 1 mm for cap, root and convexity."""
    said = verdict(f"iso-{level}", joint, "mm", thickness, run="long", **sizes)
    for item in ("excess", "convexity", "penetration"):
        if item in sizes and item in ITEMS[joint] and sizes[item] > 1.0:
            assert NAMES[item] not in named(said, "meets what was given")
            assert NAMES[item] not in named(said, "within its limits")
            assert not said.startswith("meets")


@given(
    standard=st.sampled_from(("iso-b", "iso-c", "iso-d", "aws")), joint=st.sampled_from(tuple(ITEMS)), thickness=THICKNESSES,
    sizes=SIZES, seen=st.fixed_dictionaries({}, optional=dict.fromkeys(("crack", "overlap", "hole"), st.sampled_from(("none", "seen", "not-looked")))),
)  # fmt: skip
def test_the_verdict_names_as_met_nothing_that_was_not_given(
    standard: str, joint: str, thickness: float, sizes: dict[str, float], seen: dict[str, str]
) -> None:
    said = verdict(standard, joint, "mm", thickness, **sizes, **seen)
    met = named(said, "meets what was given") + named(said, "within its limits")
    words = NAMES | {"crack": "cracks", "overlap": "overlap", "hole": "holes", "fusion": "fusion"}
    looked = {item for item, found in seen.items() if found != "not-looked"}
    given_items = {item for item in sizes if item in ITEMS[joint]} | looked
    for item, name in words.items():
        if item not in given_items:
            assert name not in met.split(", "), said
    if "seen" in (seen.get("crack"), seen.get("hole")):
        assert said.startswith("does not meet")


@given(
    thickness=st.integers(5, 250).map(lambda n: n / 10),
    found=st.fixed_dictionaries({}, optional=dict.fromkeys(("longest", "corner"), TENTHS)),
    more=st.none() | TENTHS,
)
def test_a_bend_that_opened_too_far_never_meets(
    thickness: float, found: dict[str, float], more: float | None
) -> None:
    """3, 10 and 6 mm: AWS D1.1 in its own millimetres, memory."""
    sizes = found | ({} if more is None else {"together": found.get("longest", 0.0) + more})
    most = {"longest": 3.0, "together": 10.0, "corner": 6.0}
    over = {topic for topic, size in sizes.items() if size > most[topic] + 1e-9}
    texts = {topic: f"{size!r} mm" for topic, size in sizes.items()}
    said = answer("bend-test", thickness=f"{thickness} mm", rules="iso", **texts)["results"]["verdict"][
        "text"
    ]
    assert said.startswith("does not meet") == bool(over)
    assert said.startswith("nothing given") == (not sizes)
