"""Flames to name: a drawing of a hidden ratio, what it is called, and which valve brings it to neutral."""

from dataclasses import dataclass

from calc.data.tables import HOW_SURE, source_words, table
from calc.practice.choices import ChoiceQuestion, Part
from calc.practice.dice import Dice, dice
from calc.trade.drawings.flame import drawing, smoky_drawing
from calc.trade.flame.bands import colours, flame_kind, flame_name
from calc.values.numbers import plain_number

MOST = 40
PAGE = "flame/set-the-flame.md"

MORE_OXYGEN = "Open the torch’s oxygen valve a little"
LESS_OXYGEN = "Shut the torch’s oxygen valve a little"
NOTHING = "Turn nothing"
MORE_FUEL = "Open the torch’s acetylene valve until the soot stops"
TURNS = (MORE_OXYGEN, LESS_OXYGEN, NOTHING, MORE_FUEL)
"""What may be turned to come to a neutral flame."""

ALONE = "Acetylene alone, and too little of it"


@dataclass(frozen=True, slots=True)
class Hidden:
    """A band that a flame is drawn from.

    Attributes:
        low: Least ratio drawn.
        high: Largest.
        turn: What brings it to neutral.
    """

    low: float
    high: float
    turn: str


KINDS = {
    "acetylene-alone": Hidden(0.0, 0.0, MORE_FUEL),
    "carburising": Hidden(0.85, 0.93, MORE_OXYGEN),
    "slightly-reducing": Hidden(0.96, 1.0, MORE_OXYGEN),
    "neutral": Hidden(1.06, 1.12, NOTHING),
    "oxidising": Hidden(1.2, 1.6, LESS_OXYGEN),
}
"""Bands by the ids of the tables; the edges between two are left out, where nobody could tell."""


def _name(kind: str, rules: str) -> str:
    if kind == "acetylene-alone":
        return ALONE
    hidden = KINDS[kind]
    return flame_name(flame_kind("acetylene", hidden.low), rules).capitalize()


def _dealt(seed: int, flames: int) -> list[str]:
    """Kinds in turn, each round in another order, so that none is missing."""
    shuffles = dice("flames", seed)
    kinds: list[str] = []
    while len(kinds) < flames:
        kinds += shuffles.shuffled(tuple(KINDS))
    return kinds[:flames]


def _ratio(kind: str, chance: Dice) -> float:
    hidden = KINDS[kind]
    return round(hidden.low + (hidden.high - hidden.low) * chance.below(101) / 100, 2)


def _because(kind: str, ratio: float, rules: str) -> str:
    if kind == "acetylene-alone":
        return (
            "No oxygen flows yet: acetylene burns in the air alone and sheds soot. Open it until the soot stops, with "
            "the flame still on the tip; then open the oxygen slowly."
        )
    seen = colours(flame_kind("acetylene", ratio))
    told = f"It was {plain_number(ratio, 3)} of oxygen to 1 of acetylene: {_name(kind, rules).lower()}. "
    if KINDS[kind].turn == MORE_OXYGEN:
        return f"{told}A feather stands beyond the cone: oxygen is missing. Open it slowly until the feather just goes into the inner cone."
    if KINDS[kind].turn == LESS_OXYGEN:
        return f"{told}The cone is short and pointed, and you would hear {seen.sound}: too much oxygen."
    return f"{told}The feather has just gone into the inner cone, and that is round: leave it."


def _behind(kind: str) -> str:
    if kind == "acetylene-alone":
        row = next(row for row in table("flame-looks") if row.flame == kind)
    else:
        row = flame_kind("acetylene", KINDS[kind].low)
    return ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part)


def _flame(place: int, kind: str, seed: int, rules: str) -> ChoiceQuestion:
    ratio = _ratio(kind, dice("ratio", seed, place, kind))
    picture = smoky_drawing() if kind == "acetylene-alone" else drawing(ratio, rules, named=False)
    order = tuple(KINDS)
    return ChoiceQuestion(
        id=f"flame-{place}", title="Name the flame",
        parts=(
            Part("Which flame is it?", tuple(_name(each, rules) for each in order), order.index(kind)),
            Part("What do you turn for a neutral flame?", TURNS, TURNS.index(KINDS[kind].turn)),
        ),
        because=_because(kind, ratio, rules), page=PAGE, behind=_behind(kind), picture=picture.svg, seen=picture.sentence,
    )  # fmt: skip


def flames(seed: int, number: int, rules: str) -> tuple[ChoiceQuestion, ...]:
    """Flames to name.

    Args:
        seed: Number of the set.
        number: How many.
        rules: Rule set, for the names.
    """
    return tuple(
        _flame(place, kind, seed, rules) for place, kind in enumerate(_dealt(seed, number), start=1)
    )
