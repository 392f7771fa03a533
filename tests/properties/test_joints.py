"""Every process, metal, joint and thickness gives an answer or the reason why not."""

import math
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.trade.weld.joints import JOINTS, METALS, PROCESSES
from calc.values.units import to_si

LABELS = {"metal": "Metal: ", "joint": "Joint: ", "thickness": "Thickness of the sheet or plate: "}
THICK_METALS = ("low-carbon-steel", "cast-iron")


def made(process: str, metal: str, joint: str, thickness: float) -> bool:
    """Whether the joint is made, thickness in mm; what the bench says, written down again."""
    if process == "braze-welding" and (
        metal in ("brass", "aluminium", "stainless-steel") or joint == "edge"
    ):
        return False
    if metal == "cast-iron" and (joint == "edge" or thickness < 3):
        return False
    if metal not in THICK_METALS and thickness > 12.7:
        return False
    least = 3 if joint == "single-v" else 0.5
    most = {"square-butt": 3.2, "outside-corner": 6.35, "edge": 3.2, "lap": 12.7, "tee": 12.7}.get(
        joint, 25
    )
    return least <= thickness <= most


CASES = st.fixed_dictionaries(
    {
        "process": st.sampled_from(sorted(PROCESSES)),
        "metal": st.sampled_from(sorted(METALS)),
        "joint": st.sampled_from(sorted(JOINTS)),
        "thickness": st.one_of(
            st.floats(0.5, 25), st.sampled_from([0.5, 1.5875, 3.0, 3.2, 6.35, 12.7, 25.0])
        ),
        "length": st.floats(10, 100_000),
        "rules": st.sampled_from(["us", "iso", "uk"]),
    }
)
MANY = settings(max_examples=400, deadline=None, derandomize=True)


def texts_of(case: dict[str, Any]) -> dict[str, str]:
    return case | {"thickness": f"{case['thickness']!r} mm", "length": f"{case['length']!r} mm"}


def si(result: dict[str, Any], name: str = "value") -> float:
    return to_si(result[name], result["unit"]) if result["unit"] else result[name]


@MANY
@given(CASES)
def test_a_joint_is_prepared_or_the_reason_is_said(case: dict[str, Any]) -> None:
    wanted = made(case["process"], case["metal"], case["joint"], case["thickness"])
    try:
        got = answer("joint-prep", **texts_of(case))
    except InputError as refused:
        field, said = refused.field, refused.message
        assert not wanted, case
        assert said.startswith(LABELS[field])
        assert said.endswith(".")
        assert "give " in said or "pick " in said
        return
    assert wanted, case
    results = got["results"]
    for name, result in results.items():
        if result["value"] is None:
            assert result["text"]
            continue
        assert math.isfinite(result["value"]), name
        assert result["value"] >= 0, name
    assert results["tacks"]["value"] >= 1
    bare = case["joint"] in ("outside-corner", "edge") and case["process"] == "welding"
    if not (bare and case["thickness"] <= 1.5875):
        assert results["weld_area"]["value"] > 0
    if "tack_spacing" in results:
        spaces = results["tacks"]["value"] - 1
        assert math.isclose(spaces * si(results["tack_spacing"]), case["length"] / 1000, rel_tol=1e-9)
    assert len(got["pictures"]) == 1


@MANY
@given(
    CASES, st.integers(1, 40), st.floats(0, 50), st.floats(0.1, 3), st.one_of(st.none(), st.floats(1, 13))
)
def test_the_rods_hold_the_metal_that_is_needed(
    case: dict[str, Any], seams: int, waste: float, rod_length: float, diameter: float | None
) -> None:
    texts = texts_of(case) | {
        "seams": str(seams),
        "waste": f"{waste!r} %",
        "rod_length": f"{rod_length!r} m",
    }
    if diameter is not None:
        texts["rod_diameter"] = f"{diameter!r} mm"
    try:
        got = answer("rod-need", **texts)["results"]
    except InputError:
        assert not made(case["process"], case["metal"], case["joint"], case["thickness"]), case
        return
    assert made(case["process"], case["metal"], case["joint"], case["thickness"]), case
    for result in got.values():
        assert result["value"] is None or (math.isfinite(result["value"]) and result["value"] >= 0)
    rods = got["rods"]["value"]
    bought, one = si(got["rod_mass"]), si(got["one_rod"])
    assert rods == round(rods)
    assert rods * one >= bought * (1 - 1e-6)
    assert rods == 0 or (rods - 1) * one < bought * (1 + 1e-6)
    assert math.isclose(bought, si(got["weld_mass"]) + si(got["waste"]), rel_tol=1e-9, abs_tol=1e-15)
    area = si(got["weld_area"])
    volume = area * case["length"] / 1000 * seams
    used = math.pi * (si(got["rod_diameter"]) / 2) ** 2 * si(got["rod_length"]) * (1 - waste / 100)
    assert math.isclose(used, volume, rel_tol=1e-9, abs_tol=1e-18)


@MANY
@given(st.sampled_from(sorted(METALS)), st.sampled_from(["lap", "tee"]), st.floats(3, 6), st.floats(3, 6))
def test_a_longer_leg_takes_more_rod(metal: str, joint: str, one: float, other: float) -> None:
    texts = {
        "process": "welding",
        "metal": metal,
        "joint": joint,
        "length": "1 m",
        "thickness": "6 mm",
        "rules": "iso",
    }
    short, long = (
        answer("joint-prep", **texts, leg=f"{leg!r} mm")["results"] for leg in sorted((one, other))
    )
    assert short["weld_area"]["value"] <= long["weld_area"]["value"]
    assert short["throat"]["value"] <= long["throat"]["value"]
