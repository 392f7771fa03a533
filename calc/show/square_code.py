"""Square codes that open a page on another phone: the only import of segno."""

from html import escape
from io import BytesIO

from calc.ask.errors import InputError

LONGEST = 600
"""Characters; a longer address makes a code too fine to read from paper."""
SMALL, LARGE = "30mm", "45mm"
"""Printed sizes, up to 160 characters and above."""


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
        raise InputError("square", "Square code", f"an address of 1 to {LONGEST} characters will do.")
    drawn = BytesIO()
    code = segno.make(address, error="m", micro=False)
    code.save(drawn, kind="svg", xmldecl=False, svgns=True, omitsize=True, light="#fff", border=4)
    size = SMALL if len(address) <= 160 else LARGE
    name = escape("Square code that opens this page with these values")
    return (
        drawn.getvalue()
        .decode()
        .replace("<svg ", f'<svg role="img" aria-label="{name}" width="{size}" height="{size}" ', 1)
    )
