"""A number with a decimal point has three figures at most: more would pretend to know what no rule of thumb knows.

Whole numbers of a unit may be longer. What is asked are the examples of each place.
"""

import re
from collections.abc import Iterator

import pytest

from calc import answer
from calc.declare.catalogue import calculators

NUMBER = re.compile(r"(?:[-−] ?)?(\d[\d,]*(?:\.\d+)?)(?: ?[^\d\s]\S*)?")
MOST = 3
LONGER = {
    "Figures in print": "a rule's figure in feet, in meters",
    "tube_outside": "a tube's size is printed to a thousandth",
    "share_h2": "what burnt gas holds is worked out to a hundredth of a per cent",
    "share_co": "the same",
    "share_h": "the same",
}
DRAWN = {"problem-key", "problem-set"}
"""A problem's numbers are drawn, and its key must tell slips apart."""


def figures(number: str) -> int:
    """Figures that count in a number with a decimal point; none is counted of a whole one."""
    return len(number.replace(".", "").replace(",", "").lstrip("0")) if "." in number else 0


def example(calculator: str, rules: str) -> dict[str, str]:
    """The texts that the page has in its form at first."""
    texts = {"rules": rules}
    for name, field in calculators()[calculator].inputs.items():
        given = getattr(field, "example", None)
        text = given.get(rules) if isinstance(given, dict) else given
        if text:
            texts[name] = text
    return texts


def numbers(calculator: str, rules: str) -> Iterator[tuple[str, str]]:
    """Every number that an example shows by itself, with its result or the title of its table."""
    got = answer(calculator, **example(calculator, rules))
    for name, result in got["results"].items():
        if result["value"] is not None and (found := NUMBER.match(result["text"])):
            yield name, found[1]
    for table in got["tables"]:
        for line in table["rows"]:
            for cell in line:
                if found := NUMBER.fullmatch(cell):
                    yield table["title"], found[1]


@pytest.mark.parametrize("rules", ["us", "iso", "uk"])
@pytest.mark.parametrize("calculator", sorted(calculators().keys() - DRAWN))
def test_no_number_has_more_figures_than_are_known(calculator: str, rules: str) -> None:
    for where, number in numbers(calculator, rules):
        assert figures(number) <= MOST or where in LONGER, f"{where}: {number}"
