"""What hypothesis has in machine code, in plain Python, for a browser's Python."""

import math
import struct

_FORMATS = {16: ("<H", "<e"), 32: ("<I", "<f"), 64: ("<Q", "<d")}
_SMALLEST_NORMAL = {16: 2.0**-14, 32: 2.0**-126, 64: 2.0**-1022}


def float_to_int(value: float, width: int = 64) -> int:
    """Bits of a float as a whole number."""
    whole, real = _FORMATS[width]
    return int(struct.unpack(whole, struct.pack(real, value))[0])


def int_to_float(value: int, width: int = 64) -> float:
    """Float that has these bits."""
    whole, real = _FORMATS[width]
    return float(struct.unpack(real, struct.pack(whole, value))[0])


def float_of(x: float, width: int) -> float:
    """Nearest float of that width."""
    return float(x) if width == 64 else int_to_float(float_to_int(float(x), width), width)


def is_negative(x: float) -> bool:
    """Whether the sign bit is set, as on -0.0."""
    return math.copysign(1.0, x) < 0


def next_up(value: float, width: int = 64) -> float:
    """Smallest float above."""
    if math.isnan(value) or value == math.inf:
        return value
    if value == 0.0:
        return int_to_float(1, width) if not is_negative(value) else 0.0
    return int_to_float(float_to_int(value, width) + (1 if value > 0 else -1), width)


def next_down(value: float, width: int = 64) -> float:
    """Largest float below."""
    return -next_up(-value, width)


def next_up_normal(value: float, width: int, *, allow_subnormal: bool) -> float:
    """Smallest float above, passing over those below normal size."""
    above = next_up(value, width)
    if not allow_subnormal and 0 < abs(above) < width_smallest_normals(width):
        return width_smallest_normals(width) if above > 0 else -0.0
    return above


def next_down_normal(value: float, width: int, *, allow_subnormal: bool) -> float:
    """Largest float below, passing over those below normal size."""
    return -next_up_normal(-value, width, allow_subnormal=allow_subnormal)


def count_between_floats(x: float, y: float, width: int = 64) -> int:
    """How many floats lie from x to y, both counted, -0.0 and 0.0 as two."""
    if is_negative(x) == is_negative(y):
        return abs(float_to_int(y, width) - float_to_int(x, width)) + 1
    return count_between_floats(x, -0.0, width) + count_between_floats(0.0, y, width)


def width_smallest_normals(width: int) -> float:
    """Smallest positive float of normal size."""
    return _SMALLEST_NORMAL[width]


def cathetus(h: float, a: float) -> float:
    """Third side of a right triangle."""
    return math.sqrt((h - a) * (h + a))
