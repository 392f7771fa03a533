"""The square code that is drawn is the standard's matrix for the address, square by square."""

import json
import re

import segno

from calc.bridge import run

ADDRESS = "https://bench.example/class/?v=1&thickness=16+ga&joint=outside-corner&length=4+ft"


def drawn_matrix(svg: str) -> list[list[int]]:
    """Dark squares of a square code that was drawn, without its quiet border."""
    found = re.search(r'viewBox="0 0 (\d+) \1"', svg)
    assert found
    size = int(found[1])
    rows = [[0] * size for _ in range(size)]
    path = re.search(r'stroke="#000" d="([^"]+)"', svg)
    assert path
    x = y = 0.0
    for letter, given in re.findall(r"([Mmhv])([^Mmhv]*)", path[1]):
        numbers = [float(n) for n in re.findall(r"-?\d*\.?\d+", given)]
        if letter == "M":
            x, y = numbers
        elif letter == "m":
            x, y = x + numbers[0], y + numbers[1]
        elif letter == "h":
            for step in range(int(numbers[0])):
                rows[int(y)][int(x) + step] = 1
            x += numbers[0]
    return [[int(bool(dark)) for dark in row[4:-4]] for row in rows[4:-4]]


def test_a_square_code_holds_the_address() -> None:
    """The dark squares of the SVG are those of the standard's matrix for the text (ISO/IEC 18004)."""
    svg = json.loads(run(json.dumps({"square": ADDRESS})))["svg"]
    matrix = [list(map(int, row)) for row in segno.make(ADDRESS, error="m", micro=False).matrix]
    size = len(matrix) + 8
    assert f'viewBox="0 0 {size} {size}"' in svg
    assert 'width="30mm"' in svg
    assert drawn_matrix(svg) == matrix


def test_an_address_too_long_gets_a_sentence() -> None:
    reply = json.loads(run(json.dumps({"square": "x" * 5000})))
    assert reply["errors"][0]["message"].startswith("Square code:")
