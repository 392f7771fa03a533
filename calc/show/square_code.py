"""Square codes that open a page on another phone: the only import of segno."""

from collections.abc import Sequence
from html import escape
from io import BytesIO
from typing import Any

from calc.errors import InputError
from calc.show.best_mask import best_mask

LONGEST = 600
"""Characters; a longer address makes a code too fine to read from paper."""
SMALL, LARGE = "30mm", "45mm"
"""Printed sizes, up to 160 characters and above."""


def _before_its_marks(matrix: Sequence[bytearray]) -> tuple[list[list[int]], list[list[bool]]]:
    """A code's squares with those of format and version still light, and which squares hold the data."""
    import segno  # noqa: PLC0415

    encoder: Any = segno.encoder
    size = len(matrix)
    fixed = encoder.make_matrix(size, size)
    encoder.add_finder_patterns(fixed, size, size)
    encoder.add_alignment_patterns(fixed, size, size)
    free = [[square > 1 for square in row] for row in fixed]
    squares = [
        [own if is_free else kept for own, is_free, kept in zip(*lines, strict=True)]
        for lines in zip(matrix, free, fixed, strict=True)
    ]
    return squares, free


def square_code_svg(address: str) -> str:
    """A square code of an address as SVG, with its printed size.

    Args:
        address: Link that the code opens.

    Returns:
        An SVG element, dark on white in any colour scheme.

    Raises:
        InputError: The address is empty or too long.

    Examples:
        >>> square_code_svg("https://bench.example/page/?v=1")[:4]
        '<svg'
    """
    import segno  # noqa: PLC0415 - imported when first used

    if not 0 < len(address) <= LONGEST:
        raise InputError("square", f"Square code: an address of 1 to {LONGEST} characters will do.")
    drawn = BytesIO()
    code = segno.make(address, error="m", micro=False, mask=0)
    if mask := best_mask(*_before_its_marks(code.matrix)):
        code = segno.make(address, error="m", micro=False, mask=mask)
    code.save(drawn, kind="svg", xmldecl=False, svgns=True, omitsize=True, light="#fff", border=4)
    size = SMALL if len(address) <= 160 else LARGE
    name = escape("Square code that opens this page with these values")
    return (
        drawn.getvalue()
        .decode()
        .replace("<svg ", f'<svg role="img" aria-label="{name}" width="{size}" height="{size}" ', 1)
    )
