"""The mark that a regulator of acetylene is set to: the nearest, and never up to the limit.

29 CFR 1910.253 (a)(2): acetylene is not used above 15 psi. The hose here takes some hundredths of a psi (a quarter
inch bore, 25 ft, 10 ft³/h), so that the wanted figure alone decides the mark, by rounding in the head.
"""

import pytest

from calc import answer

HOSE = {"gas": "acetylene", "bore": "1/4 in", "length": "25 ft", "flow": "10 cfh", "rules": "us"}


@pytest.mark.parametrize(
    ("wanted", "mark"),
    [("5 psi", 5), ("5.4 psi", 5), ("5.6 psi", 6), ("10 psi", 10), ("14 psi", 14), ("14.4 psi", 14), ("14.9 psi", 14)],
)
def test_acetylene_goes_to_the_nearest_mark_and_down_below_its_limit(wanted: str, mark: int) -> None:
    got = answer("regulator-mark", units={"mark": "psi"}, **HOSE, torch_gauge=wanted)["results"]["mark"]
    assert got["value"] == pytest.approx(mark, abs=1e-6)
    assert got["text"] == f"{mark} psi"


def test_other_gases_go_up_to_the_next_mark() -> None:
    got = answer("regulator-mark", **(HOSE | {"gas": "oxygen"}), torch_gauge="10 psi")["results"]["mark"]
    assert got["text"] == "11 psi"


def test_a_pressure_above_the_limit_is_refused_and_not_rounded_down_to_it() -> None:
    """14.9 psi at the torch and 2 psi in its valves are 16.9 psi at the regulator."""
    with pytest.raises(ValueError, match="above 15 psi"):
        answer("regulator-mark", **HOSE, torch_gauge="14.9 psi", torch_drop="2 psi")
