"""A calculator that is declared wrongly says which input and what to change, and takes down itself alone."""

from collections.abc import Iterator
from pathlib import Path

import pytest

import calc.calculators as room
from calc.__main__ import main
from calc.declare import catalogue

HEAD = '''
from dataclasses import dataclass
from typing import Annotated
from calc.declare import Answer, Choice, Field, Figure, Shown, calculator

@dataclass(frozen=True)
class Found:
    sum: Annotated[Figure, Shown("Sum")]

'''
BODY = '''
@calculator("broken-sum", "A sum")
def broken_sum(size: Annotated[float, {asked}]) -> Answer[Found]:
    """A sum."""
    return Answer(Found(Figure(size, "", "practice")))
'''
WRONG = {
    "no units": ('Field("Size", assumed="5")', ("input size", "no units", "NUMBER")),
    "neither example nor assumed": ('Field("Size", ("mm",))', ("input size", "example", "assumed", "optional")),
    "both": ('Field("Size", ("mm",), example="5 mm", assumed="5 mm")', ("input size", "exactly one")),
    "no label": ('Field("", ("mm",), example="5 mm")', ("input size", "no label")),
    "no such option": ('Choice("Size", {"a": "A"}, example="b")', ("input size", "'b'", "give one of a")),
    "asked after what is not there": (
        'Field("Size", ("mm",), example="5 mm", when={"kind": ("a",)})',
        ("input size", "kind", "declare that choice first"),
    ),
    "not declared": ('"a note"', ("input size", "not declared", "Field")),
}


@pytest.fixture
def broken_room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    monkeypatch.setattr(room, "__path__", [*room.__path__, str(tmp_path)])
    yield tmp_path
    for cached in (catalogue._opened, catalogue.calculators):
        cached.cache_clear()


def opened(folder: Path, text: str) -> None:
    (folder / "broken_sum.py").write_text(text, encoding="utf-8")
    for cached in (catalogue._opened, catalogue.calculators):
        cached.cache_clear()


@pytest.mark.parametrize("name", list(WRONG))
def test_the_sentence_names_the_input_and_the_fix(
    name: str, broken_room: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    asked, parts = WRONG[name]
    opened(broken_room, HEAD + BODY.format(asked=asked))
    assert list(catalogue.broken()) == ["broken-sum"]
    said = catalogue.broken()["broken-sum"]
    for part in ("broken-sum", *parts):
        assert part in said, said
    assert main(["run", "broken-sum", "size=5 mm"]) == 2
    assert said in capsys.readouterr().err


@pytest.mark.parametrize("text", [HEAD + "1 / 0\n", "import no_such_thing\n", "def (\n"])
def test_a_file_that_cannot_be_read_takes_down_itself_alone(
    text: str, broken_room: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    opened(broken_room, text)
    assert "calc/calculators/broken_sum.py" in catalogue.broken()["broken-sum"]
    assert "hose-volume" in catalogue.calculators()
    assert main(["list"]) == 0
    listed = capsys.readouterr().out
    assert "hose-volume" in listed
    assert "broken-sum             cannot be used: " in listed
    assert main(["run", "hose-volume", "bore=1/4 in", "length=25 ft"]) == 0


def test_none_is_broken() -> None:
    assert not catalogue.broken()
