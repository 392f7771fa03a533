"""Chance that is the same in every Python: a set is made from its seed and from nothing else.

FNV-1a turns the seed's text into a number, SplitMix64 goes on from there. Both are
whole-number sums of a few lines, so a class gets one set on every device.
"""

from collections.abc import Sequence

_MASK = (1 << 64) - 1


def text_number(text: str) -> int:
    """A number of 64 bits for a text: FNV-1a.

    Examples:
        >>> hex(text_number("foobar"))
        '0x85944171f73967e8'
    """
    number = 0xCBF29CE484222325
    for byte in text.encode():
        number = (number ^ byte) * 0x100000001B3 & _MASK
    return number


class Dice:
    """Numbers that look like chance and follow from a seed: SplitMix64.

    Args:
        seed: The number to begin with.

    Examples:
        >>> Dice(1234567).number()
        6457827717110365317
    """

    def __init__(self, seed: int) -> None:
        self._state = seed & _MASK

    def number(self) -> int:
        """The next number, of 64 bits."""
        self._state = (self._state + 0x9E3779B97F4A7C15) & _MASK
        mixed = self._state
        mixed = (mixed ^ mixed >> 30) * 0xBF58476D1CE4E5B9 & _MASK
        mixed = (mixed ^ mixed >> 27) * 0x94D049BB133111EB & _MASK
        return mixed ^ mixed >> 31

    def below(self, end: int) -> int:
        """A whole number from 0 to below `end`."""
        return self.number() % end

    def pick[T](self, options: Sequence[T]) -> T:
        """One of some things, each as likely as the others."""
        return options[self.below(len(options))]

    def shuffled[T](self, options: Sequence[T]) -> list[T]:
        """The same things in another order."""
        mixed = list(options)
        for last in range(len(mixed) - 1, 0, -1):
            other = self.below(last + 1)
            mixed[last], mixed[other] = mixed[other], mixed[last]
        return mixed


def dice(*words: object) -> Dice:
    """Dice that belong to these words, and to no others.

    Examples:
        >>> dice("problem", 7).below(100) == dice("problem", 7).below(100)
        True
    """
    return Dice(text_number("|".join(map(str, words))))
