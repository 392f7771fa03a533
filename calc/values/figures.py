"""One figure with what stands behind it: band, basis, source, how sure."""

from dataclasses import KW_ONLY, dataclass


@dataclass(frozen=True)
class Figure:
    """One result with what stands behind it.

    Args:
        value: The number in SI, or None where the result is words.
        source: Key in `sources.toml` and place, as in a table; empty for
            common practice.
        how_sure: Grade, one of `tables.HOW_SURE`.
        low: Lower end of the band, SI.
        high: Upper end of the band, SI.
        basis: What the figure rests on, one sentence.
        words: The result in words; shown instead of, or behind, the number.
    """

    value: float | None
    source: str
    how_sure: str
    _: KW_ONLY
    low: float | None = None
    high: float | None = None
    basis: str = ""
    words: str = ""
