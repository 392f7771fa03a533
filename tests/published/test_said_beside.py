"""Figures that stand in the words under a result: typed from who prints them."""

import pytest

from calc import answer

STORE = {"place": "indoors", "oxygen": "488 ft^3", "fuel_gas": "260 ft^3", "apart": "0 m", "rules": "us"}


@pytest.mark.parametrize(
    ("calculator", "given", "result", "says"),
    [
        pytest.param("storage-check", STORE, "fuel_limit", "allow 2500 ft³ (from memory)", id="NFPA 51 from 2007 on, 2,500 ft³; memory"),
    ],
)  # fmt: skip
def test_the_words_under_a_figure_tell_what_is_in_print(
    calculator: str, given: dict[str, str], result: str, says: str
) -> None:
    assert says in answer(calculator, **given)["results"][result]["basis"]
