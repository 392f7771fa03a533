"""Chance that must be the same everywhere, against the published values of its two sums."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from calc.practice.dice import Dice, dice, text_number

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize(
    ("text", "number"),
    [("", 0xCBF29CE484222325), ("a", 0xAF63DC4C8601EC8C), ("foobar", 0x85944171F73967E8)],
)
def test_a_text_gives_the_number_of_fnv_1a(text: str, number: int) -> None:
    """The authors' own test vectors for FNV-1a of 64 bits, read."""
    assert text_number(text) == number


def test_the_numbers_are_those_of_splitmix() -> None:
    """First five of SplitMix64 from 1234567, as printed with many of its implementations, read."""
    rolled = Dice(1234567)
    assert [rolled.number() for _ in range(5)] == [
        6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821,
    ]  # fmt: skip


def test_an_order_holds_each_once() -> None:
    for seed in range(200):
        assert sorted(dice("order", seed).shuffled(range(7))) == list(range(7))
    assert len({tuple(dice("order", seed).shuffled(range(4))) for seed in range(500)}) == 24


SET = (
    "from calc.practice.sets import problem_set; "
    "print([(o.problem.question, round(o.problem.key, 6)) for o in problem_set(calculators=(), topic='all', seed=7, problems=20, help_wanted='bare', rules='us')])"
)


def test_another_process_with_another_hash_seed_makes_the_same_set() -> None:
    made = [
        subprocess.run(
            [sys.executable, "-c", SET], cwd=ROOT, capture_output=True, text=True, check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)},
        ).stdout
        for seed in ("1", "99")
    ]  # fmt: skip
    assert made[0] == made[1]
    assert len(re.findall(r"\?['\"], ", made[0])) == 20
