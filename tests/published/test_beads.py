"""Rows on visual acceptance and on the bend test, through the calculators; every figure worked by hand."""

import pytest

from calc import answer
from tests.published.rows import Row, case, shown

EXACT = 1e-9
EN = "EN ISO 5817:2007 table 1, fragment of a copy"
ISO = "ISO 5817:2014 table 1, level C list in a copy"
MEM = "ISO 5817 table 1"
AWS = "AWS D1.1"
TABLE = "AWS D1.1:2000 table 6.1 (7), public copy"


def iso(source: str, sure: str, level: str, result: str, mm: float, thickness: str, **more: str) -> object:
    joint = "fillet" if result == "convexity" else "butt"
    return case(source, sure, "bead-check", f"{result}_limit", mm, "mm", EXACT,
                standard=f"iso-{level}", joint=joint, thickness=thickness, rules="iso", **more)  # fmt: skip


def aws(
    source: str, sure: str, result: str, figure: float, unit: str, thickness: str, **more: str
) -> object:
    joint = "fillet" if result == "convexity" else "butt"
    return case(source, sure, "bead-check", f"{result}_limit", figure, unit, EXACT,
                standard="aws", joint=joint, thickness=thickness, **more)  # fmt: skip


SHORT = {"run": "short"}
C = {"b": (EN, "read-m"), "c": (ISO, "read-m"), "d": (EN, "read-m")}

ROWS = [
    # Undercut above 3 mm: 0.05 t <= 0.5, 0.1 t <= 0.5, 0.2 t <= 1.
    *(
        iso(*C[level], level, "undercut", mm, thickness)
        for level, thickness, mm in (
            ("b", "4 mm", 0.2), ("b", "6 mm", 0.3), ("b", "10 mm", 0.5), ("b", "20 mm", 0.5),
            ("c", "4 mm", 0.4), ("c", "5 mm", 0.5), ("c", "12 mm", 0.5),
            ("d", "4 mm", 0.8), ("d", "5 mm", 1.0), ("d", "6 mm", 1.0),
        )
    ),
    # Undercut from 0.5 to 3 mm: none; short ones 0.1 t; short ones 0.2 t.
    *(
        iso(EN if level != "c" else ISO, "read-m", level, "undercut", mm, thickness, **more)
        for level, thickness, mm, more in (
            ("b", "2 mm", 0, SHORT), ("b", "3 mm", 0, {}), ("c", "2 mm", 0.2, SHORT), ("c", "3 mm", 0.3, SHORT),
            ("c", "2 mm", 0, {}), ("d", "2 mm", 0.4, SHORT), ("d", "3 mm", 0.6, SHORT), ("d", "1 mm", 0, {}),
        )
    ),
    # Cap: 1 + 0.1 b <= 5, 1 + 0.15 b <= 7, 1 + 0.25 b <= 10, at any thickness.
    *(
        iso(*C[level], level, "excess", mm, thickness, bead_width=width)
        for level, thickness, width, mm in (
            ("b", "2 mm", "10 mm", 2.0), ("b", "12 mm", "20 mm", 3.0), ("b", "12 mm", "45 mm", 5.0),
            ("c", "2 mm", "10 mm", 2.5), ("c", "12 mm", "20 mm", 4.0), ("c", "12 mm", "50 mm", 7.0),
            ("d", "2 mm", "10 mm", 3.5), ("d", "12 mm", "20 mm", 6.0), ("d", "12 mm", "40 mm", 10.0),
        )
    ),
    # Fillet: the same lines, ceilings 3, 4, 5.
    *(
        iso(*C[level], level, "convexity", mm, thickness, bead_width=width)
        for level, thickness, width, mm in (
            ("b", "2 mm", "8 mm", 1.8), ("b", "6 mm", "25 mm", 3.0), ("c", "2 mm", "8 mm", 2.2),
            ("c", "6 mm", "25 mm", 4.0), ("d", "2 mm", "8 mm", 3.0), ("d", "6 mm", "25 mm", 5.0),
        )
    ),
    # Root above 3 mm: 1 + 0.2 b <= 3, 1 + 0.6 b <= 4, 1 + 1.0 b <= 5.
    *(
        iso(*C[level], level, "penetration", mm, thickness, root_width=width)
        for level, thickness, width, mm in (
            ("b", "4 mm", "2 mm", 1.4), ("b", "6 mm", "12 mm", 3.0), ("c", "4 mm", "2 mm", 2.2),
            ("c", "6 mm", "8 mm", 4.0), ("d", "4 mm", "2 mm", 3.0), ("d", "6 mm", "8 mm", 5.0),
        )
    ),
    # Root to 3 mm: 1 + 0.1 b, 1 + 0.3 b, 1 + 0.6 b, no ceiling.
    *(
        iso(EN, "read-m", level, "penetration", mm, "2 mm", root_width="2 mm")
        for level, mm in (("b", 1.2), ("c", 1.6), ("d", 2.2))
    ),
    # Underfill above 3 mm, short ones: 0.05 t <= 0.5, 0.1 t <= 1, 0.25 t <= 2; longer ones none.
    *(
        iso(ISO if level == "c" else MEM, "read-m" if level == "c" else "memory", level, "underfill", mm, thickness, **SHORT)
        for level, thickness, mm in (
            ("b", "4 mm", 0.2), ("b", "12 mm", 0.5), ("c", "4 mm", 0.4), ("c", "12 mm", 1.0), ("d", "4 mm", 1.0),
            ("d", "12 mm", 2.0),
        )
    ),
    iso(ISO, "read-m", "c", "underfill", 0, "6 mm"),
    *(iso(MEM, "memory", level, "underfill", mm, "2 mm", **SHORT) for level, mm in (("b", 0), ("c", 0.2), ("d", 0.5))),
    # Misalignment above 3 mm: 0.1 t <= 3, 0.15 t <= 4, 0.25 t <= 5; to 3 mm 0.2 mm more, no ceiling.
    *(
        iso(MEM, "memory", level, "misalignment", mm, thickness)
        for level, thickness, mm in (
            ("b", "4 mm", 0.4), ("b", "40 mm", 3.0), ("c", "4 mm", 0.6), ("c", "40 mm", 4.0), ("d", "4 mm", 1.0),
            ("d", "40 mm", 5.0), ("b", "2 mm", 0.4), ("c", "2 mm", 0.5), ("d", "2 mm", 0.7),
        )
    ),
    # AWS D1.1, static, in inches and in its own millimetres.
    *(
        aws(TABLE, "read-m", "undercut", figure, unit, thickness, **more)
        for thickness, figure, unit, more in (
            ("3/16 in", 1 / 32, "in", {}), ("3/4 in", 1 / 32, "in", {}), ("3/16 in", 1 / 16, "in", SHORT),
            ("1 1/2 in", 1 / 16, "in", {}), ("5 mm", 1, "mm", {"rules": "iso"}), ("5 mm", 2, "mm", SHORT | {"rules": "uk"}),
        )
    ),
    aws(AWS, "memory", "excess", 1 / 8, "in", "1/4 in"),
    aws(AWS, "memory", "excess", 3, "mm", "6 mm", rules="iso"),
    *(
        aws(AWS, "memory", "convexity", figure, unit, "1/4 in", bead_width=face, **more)
        for face, figure, unit, more in (
            ("1/4 in", 1 / 16, "in", {}), ("5/16 in", 1 / 16, "in", {}), ("3/8 in", 1 / 8, "in", {}), ("1 in", 1 / 8, "in", {}),
            ("1 1/4 in", 3 / 16, "in", {}), ("10 mm", 3, "mm", {"rules": "iso"}),
        )
    ),
    aws(AWS, "memory", "underfill", 0, "in", "1/4 in"),
    *(
        aws(AWS, "memory", "misalignment", inches, "in", thickness)
        for thickness, inches in (("1/4 in", 0.025), ("1 in", 0.1), ("1 1/2 in", 0.125))
    ),
    # Bend test.
    case("AWS D1.1: radius 3/4 in for 3/8 in plate", "memory", "bend-test", "radius", 0.75, "in", EXACT, thickness="3/8 in"),
    *(
        case("AWS D1.1: plunger 4 t", "memory", "bend-test", "plunger", figure, unit, EXACT, thickness=thickness)
        for thickness, figure, unit in (("1/8 in", 0.5, "in"), ("3 mm", 12, "mm"), ("0.060 in", 0.24, "in"))
    ),
    case("AWS D1.1: shoulders 2 3/8 in for 3/8 in plate", "memory", "bend-test", "opening", 2.375, "in", EXACT, thickness="3/8 in"),
    *(
        case("t/(4t + t)", "computed", "bend-test", "stretch", 20, "%", EXACT, thickness=thickness)
        for thickness in ("1 mm", "1/8 in", "10 mm")
    ),
    case("t/(20 mm + t)", "computed", "bend-test", "stretch", 100 * 3 / 23, "%", EXACT, thickness="3 mm", plunger_used="20 mm"),
    *(
        case("AWS D1.1 bend acceptance", "memory", "bend-test", f"{topic}_limit", figure, unit, EXACT, thickness="1/8 in", rules=rules)
        for rules, unit, sizes in (("us", "in", (1 / 8, 3 / 8, 1 / 4)), ("iso", "mm", (3, 10, 6)))
        for topic, figure in zip(("longest", "together", "corner"), sizes, strict=True)
    ),
    case("student strip 1 to 1 1/2 in", "memory", "bend-test", "strip", 1, "in", EXACT, thickness="1/8 in"),
]  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_the_published_figure_comes_out(row: Row) -> None:
    assert shown(row) == pytest.approx(row.figure, rel=row.within, abs=1e-12)


def test_the_strip_is_an_inch_to_an_inch_and_a_half() -> None:
    """Common for student strips, from memory."""
    got = answer("bend-test", thickness="1/8 in")["results"]["strip"]
    assert (got["low"], got["high"]) == pytest.approx((1.0, 1.5))


BUTT = {"joint": "butt", "thickness": "6 mm", "rules": "iso"}


@pytest.mark.parametrize("standard", ["iso-b", "iso-c", "iso-d", "aws"])
@pytest.mark.parametrize(
    ("found", "name"),
    [
        pytest.param({"crack": "seen"}, "cracks", id="cracks never: ISO 5817:2014 and D1.1:2000 table 6.1, read-m"),
        pytest.param({"fusion": "lacking"}, "fusion", id="lack of fusion never: the same, read-m"),
        pytest.param({"hole": "seen"}, "holes", id="burn-through never: ISO 5817, memory"),
    ],
)  # fmt: skip
def test_what_no_level_allows(standard: str, found: dict[str, str], name: str) -> None:
    said = answer("bead-check", standard=standard, **BUTT, **found)["results"]["verdict"]["text"]
    assert said.startswith("does not meet")
    assert name in said.split(".")[0 if standard != "aws" else 1]


@pytest.mark.parametrize(
    ("standard", "starts"),
    [
        ("iso-b", "does not meet"),
        ("iso-c", "does not meet"),
        ("iso-d", "cannot be told"),
        ("aws", "does not meet"),
    ],
    ids=lambda text: f"{text} [overlap; ISO 5817 and D1.1; memory]",
)
def test_overlap_is_left_to_level_d(standard: str, starts: str) -> None:
    got = answer("bead-check", standard=standard, **BUTT, overlap="seen")["results"]["verdict"]["text"]
    assert got.startswith(starts)


def test_micro_lack_of_fusion_is_permitted_at_c_and_d_not_at_b() -> None:
    """BS EN ISO 5817:2014, fragment of a copy, read-m; ordinary lack of fusion never."""
    got = answer("bead-check", standard="iso-c", **BUTT)["results"]["fusion_verdict"]
    assert "permitted at C and D, not at B" in got["basis"]


def test_d1_1_has_no_figure_for_the_root_and_none_for_thin_sheet() -> None:
    """AWS D1.1 begins at 1/8 in (3 mm), from memory."""
    plate = answer("bead-check", standard="aws", joint="butt", thickness="1/4 in", penetration="1/16 in")
    assert plate["results"]["penetration_limit"]["value"] is None
    assert plate["results"]["verdict"]["text"].startswith("cannot be told")
    sheet = answer("bead-check", standard="aws", joint="butt", thickness="16 ga", undercut="0 in")
    assert "begins at 1/8 in" in sheet["results"]["undercut_limit"]["text"]
    assert not sheet["results"]["verdict"]["text"].startswith("meets")


@pytest.mark.parametrize(
    ("given", "starts"),
    [
        ({}, "nothing given"),
        ({"longest": "1/8 in"}, "meets what was given: the longest opening. Not measured: all openings"),
        ({"longest": "5/32 in"}, "does not meet: the longest opening"),
        ({"together": "7/16 in"}, "does not meet: all openings"),
        ({"corner": "9/32 in"}, "does not meet: the corner crack"),
        ({"longest": "1/16 in", "plunger_used": "1 in"}, "cannot be told"),
        ({"longest": "1/4 in", "plunger_used": "1 in"}, "does not meet"),
    ],
    ids=str,
)
def test_the_bend_is_judged_by_what_was_given(given: dict[str, str], starts: str) -> None:
    """1/8, 3/8 and 1/4 in: AWS D1.1, memory."""
    assert answer("bend-test", thickness="1/8 in", **given)["results"]["verdict"]["text"].startswith(starts)
