"""Choice questions, and the written questions that come before anyone lights a torch."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.ask.errors import InputError
from calc.data.tables import HOW_SURE, source_words, table
from calc.data.texts import filled_text
from calc.practice.dice import dice

TABLE = "licence-questions-benchbook-2026"
MOST = 100


@dataclass(frozen=True, slots=True)
class Part:
    """One thing to pick.

    Attributes:
        asks: What is asked.
        options: What may be picked, in the order shown.
        right: Place of the right one.
    """

    asks: str
    options: tuple[str, ...]
    right: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceQuestion:
    """One question with options.

    Attributes:
        id: Its id.
        title: Its topic, a few words.
        parts: What is picked, one or more.
        because: Why the right one is right.
        page: Source file of the page that teaches it, or empty.
        behind: Source and grade, in words.
        picture: Its drawing as SVG, or empty.
        seen: What the drawing shows, in words.
    """

    id: str
    title: str
    parts: tuple[Part, ...]
    because: str
    page: str = ""
    behind: str = ""
    picture: str = ""
    seen: str = ""


@cache
def _rows(name: str) -> tuple[Any, ...]:
    return table(name)


def _behind(row: Any) -> str:
    return ", ".join(part for part in (source_words(row.source), HOW_SURE[row.how_sure]) if part)


def _question(row: Any, seed: int, rules: str) -> ChoiceQuestion:
    texts = (row.right, row.wrong_1, row.wrong_2, row.wrong_3)
    filled = [filled_text(text, rules) for text in texts if text]
    order = dice("options", row.id, seed).shuffled(range(len(filled)))
    part = Part(
        filled_text(row.question, rules), tuple(filled[place] for place in order), order.index(0)
    )  # fmt: skip
    return ChoiceQuestion(
        id=row.id,
        title=row.topic,
        parts=(part,),
        because=filled_text(row.because, rules),
        page=row.page,
        behind=_behind(row),
    )


def licence_questions(
    seed: int, questions: int | None, rules: str, rows: tuple[Any, ...] | None = None
) -> tuple[ChoiceQuestion, ...]:
    """The written questions, in an order that follows from the seed.

    Args:
        seed: Number of the set.
        questions: How many; None for all.
        rules: Rule set; questions that hold under another one only are left out.
        rows: Rows of the table, where they are others than those kept.

    Raises:
        InputError: There are not so many.
    """
    kept = _rows(TABLE) if rows is None else rows
    fit = [row for row in kept if not row.rules or rules in row.rules.split()]
    if questions is not None and questions > len(fit):
        raise InputError(
            "questions",
            "Questions",
            f"there are {len(fit)} under this rule set; give 1 to {max(len(fit), 1)}.",
        )
    order = dice("questions", seed, rules).shuffled(fit)
    return tuple(_question(row, seed, rules) for row in order[: questions or len(order)])
