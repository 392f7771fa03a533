"""What a job sheet says of its own flow and travel is what “How fast, how hot” says of them."""

import pytest

from calc import InputError, answer
from calc.trade.weld.joints import METALS

THROUGH = ("it penetrates", "it burns through")
STEPS = {
    "square-butt": [number / 10 for number in range(5, 33, 2)],
    "single-v": [3.0 + number / 2 for number in range(45)],
}


@pytest.mark.parametrize("torch", ["equal-pressure", "injector"])
@pytest.mark.parametrize("joint", STEPS)
@pytest.mark.parametrize("metal", METALS)
def test_a_butt_melts_through_or_the_sheet_says_which_is_doubtful(
    metal: str, joint: str, torch: str
) -> None:
    for millimetres in STEPS[joint]:
        texts = {
            "process": "welding", "metal": metal, "coating": "none", "fuel": "acetylene", "joint": joint,
            "thickness": f"{millimetres} mm", "length": "300 mm", "torch_type": torch, "rules": "iso",
        }  # fmt: skip
        try:
            got = answer("job-sheet", **texts)["results"]
        except InputError:
            continue
        said = got["melts"]["text"]
        heat = answer(
            "weld-heat", metal=metal, thickness=f"{millimetres} mm",
            acetylene_flow=f"{got['fuel_flow']['value']!r} L/h", travel_speed=f"{got['travel_speed']['value']!r} mm/min",
            start_temperature="20 degC", rules="iso",
        )["results"]["verdict"]["text"]  # fmt: skip
        where = f"{millimetres} mm: {said} | {heat}"
        middle, *parts = heat.partition(". Run a trial")[0].split("; at the ")
        at = {part.split(" end")[0]: part for part in parts}
        strong = at.get("strong", middle)
        weak = at.get("weak", middle)
        if any(each in strong for each in THROUGH) and "burns through" not in weak:
            assert said.startswith("yes"), where
            assert ("strong end" in said) == (not any(each in middle for each in THROUGH)), where
        else:
            assert said.startswith("in doubt"), where
            assert "flow is doubtful" in said or "travel is doubtful" in said, where
        if metal == "low-carbon-steel" and millimetres >= 1.0:
            assert said.startswith("yes"), where


def test_only_a_butt_that_is_welded_with_acetylene_is_asked_whether_it_melts_through() -> None:
    texts = {
        "metal": "low-carbon-steel",
        "coating": "none",
        "thickness": "3 mm",
        "length": "300 mm",
        "fuel": "acetylene",
    }
    assert "melts" in answer("job-sheet", process="welding", joint="square-butt", **texts)["results"]
    assert "melts" not in answer("job-sheet", process="welding", joint="lap", **texts)["results"]
    assert (
        "melts" not in answer("job-sheet", process="braze-welding", joint="square-butt", **texts)["results"]
    )
