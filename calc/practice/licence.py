"""Written questions of the licence to light: what is asked under a rule set, and in which order it is offered."""

import zlib
from dataclasses import dataclass
from itertools import permutations
from typing import Any

from calc.data.tables import table

TABLE = "licence-questions-benchbook-2026"
LETTERS = "ABCD"


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question, its texts with `{id}` for figures and words.

    Attributes:
        number: Its number on the paper test, the same under every rule set.
        id: Its id in the table.
        topic: What it is about.
        rules: The one rule set it is for, or empty.
        question: What is asked.
        options: Four options in the order they are offered.
        right: Which of them is right, 0 to 3.
        because: Why, and what the others would do.
        page: Path in the documentation of the page that teaches it.
        source: Source cell of the row that it rests on.
        how_sure: Grade of that row.
    """

    number: int
    id: str
    topic: str
    rules: str
    question: str
    options: tuple[str, ...]
    right: int
    because: str
    page: str
    source: str
    how_sure: str

    @property
    def letter(self) -> str:
        """Letter of the right option."""
        return LETTERS[self.right]

    @property
    def texts(self) -> tuple[str, ...]:
        """Every text that a reader sees."""
        return (self.question, *self.options, self.because)


def questions() -> tuple[Question, ...]:
    """Every question, in the order of the table."""
    return tuple(_question(number, row) for number, row in enumerate(table(TABLE), start=1))


def asked(rules: str) -> tuple[Question, ...]:
    """The questions of one rule set.

    Args:
        rules: Rule set.

    Examples:
        >>> [one.id for one in asked("iso") if one.id.startswith("limit")]
        ['limit-iso', 'limit-why']
    """
    return tuple(one for one in questions() if one.rules in ("", rules))


def by_topic(asked_of: tuple[Question, ...]) -> dict[str, list[Question]]:
    """Questions under their topics, both in the order of the table."""
    topics: dict[str, list[Question]] = {}
    for one in asked_of:
        topics.setdefault(one.topic, []).append(one)
    return topics


def _question(number: int, row: Any) -> Question:
    given = (row.right, row.wrong_1, row.wrong_2, row.wrong_3)
    order = list(permutations(range(4)))[zlib.crc32(row.id.encode()) % 24]
    return Question(
        number=number, id=row.id, topic=row.topic, rules=row.rules, question=row.question, options=tuple(given[place] for place in order),
        right=order.index(0), because=row.because, page=row.page, source=row.source, how_sure=row.how_sure,
    )  # fmt: skip
