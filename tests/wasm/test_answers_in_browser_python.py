import json
import math
import re
import subprocess
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import calc.bridge
from calc.data.tables import table
from calc.declare import RULE_SETS, by_rules
from calc.declare.catalogue import calculators
from calc.release import RELEASE
from site_overrides.build.bundle import RELEASE_MARK
from site_overrides.build.node import node
from tests.wasm.built import engine

HERE = Path(__file__).parent


def requests_of(calculator_id: str) -> list[str]:
    """The example under each rule set, and one request that must be refused."""
    inputs = calculators()[calculator_id].inputs
    asked = [
        {
            "calculator": calculator_id,
            "texts": {"rules": rules}
            | {n: by_rules(f.example, rules) for n, f in inputs.items() if f.example is not None},
        }
        for rules in RULE_SETS
    ]
    refused = {"calculator": calculator_id, "texts": {next(iter(inputs)): "−1e999 furlongs"}}
    return [json.dumps(request) for request in [*asked, refused]]


REQUESTS = {calculator_id: requests_of(calculator_id) for calculator_id in calculators()}


def said_by_engine(*words: str, about: object) -> Any:
    """What the shipped engine says, run under Node."""
    said = subprocess.run(
        node(HERE / "engine.mjs", words[0], engine(), *words[1:]),
        input=json.dumps(about), capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert said.returncode == 0, said.stderr
    return json.loads(said.stdout)


@cache
def browser_replies(image: str) -> dict[str, str]:
    """Reply of the shipped engine to each request."""
    asked = [request for requests in REQUESTS.values() for request in requests]
    replies = [each["reply"] for each in said_by_engine("answer", image, about=asked)]
    return dict(zip(asked, replies, strict=True))


ATTRIBUTE = re.compile(r'="([^"]*)"')
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
CHART_ID = re.compile(r"\bchart-[0-9a-f]{8}\b")  # a checksum of points to the last bit
DRAWING_STEP = 0.1  # drawings are written to a tenth of their unit


def drawn_alike(ours: str, theirs: str) -> bool:
    """Whether two drawings differ by no more than a last digit of where a line goes.

    Every word and number that is read must be the same; a coordinate that lies
    on the edge between two tenths may fall either way.
    """
    ours, theirs = (CHART_ID.sub("chart", text) for text in (ours, theirs))
    if "<svg" not in ours or ATTRIBUTE.sub("", ours) != ATTRIBUTE.sub("", theirs):
        return False
    pairs = list(zip(ATTRIBUTE.findall(ours), ATTRIBUTE.findall(theirs), strict=True))
    if any(NUMBER.sub("", a) != NUMBER.sub("", b) for a, b in pairs):
        return False
    numbers = [(NUMBER.findall(a), NUMBER.findall(b)) for a, b in pairs]
    steps = [abs(float(a) - float(b)) for x, y in numbers for a, b in zip(x, y, strict=True)]
    return max(steps) <= DRAWING_STEP + 1e-9 and sum(step > 0 for step in steps) <= 4


def differences(ours: Any, theirs: Any, at: str = "") -> list[str]:
    """Places where two replies differ: texts exactly, numbers by more than rounding."""
    if isinstance(ours, dict) and isinstance(theirs, dict) and ours.keys() == theirs.keys():
        return [d for key in ours for d in differences(ours[key], theirs[key], f"{at}.{key}")]
    if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        pairs = enumerate(zip(ours, theirs, strict=True))
        return [d for n, (a, b) in pairs for d in differences(a, b, f"{at}[{n}]")]
    if isinstance(ours, float) and isinstance(theirs, float | int):
        # The two C libraries may differ in the last bit of a logarithm or a power.
        return [] if math.isclose(ours, theirs, rel_tol=1e-12, abs_tol=1e-300) else [at]
    if isinstance(ours, str) and isinstance(theirs, str) and drawn_alike(ours, theirs):
        return []
    return [] if ours == theirs else [f"{at}: {ours!r} is {theirs!r} in the browser"]


@pytest.mark.parametrize("image", ["snapshot", "library"])
@pytest.mark.parametrize("calculator_id", REQUESTS)
def test_an_answer_is_the_same_in_the_browser_to_the_last_digit(calculator_id: str, image: str) -> None:
    there = browser_replies(image)
    for request in REQUESTS[calculator_id]:
        here = calc.bridge.run(request).replace(RELEASE, RELEASE_MARK)
        assert not differences(json.loads(here), json.loads(there[request]))


@pytest.mark.parametrize("calculator_id", REQUESTS)
def test_the_example_is_answered_and_nonsense_is_refused(calculator_id: str) -> None:
    there = browser_replies("snapshot")
    example, *_, nonsense = (json.loads(there[request]) for request in REQUESTS[calculator_id])
    assert "answer" in example
    assert "errors" in nonsense
    assert "fault" not in nonsense


def test_every_table_is_in_the_snapshot_whole() -> None:
    names = sorted(path.stem for path in Path(calc.__file__).parent.glob("data/*.csv"))
    assert names
    assert said_by_engine("tables", about=names) == {name: len(table(name)) for name in names}


def varied(calculator_id: str) -> list[str]:
    """Examples under each rule set, in the units of each system, so that no two answers are alike."""
    asked = [json.loads(request) for request in REQUESTS[calculator_id][: len(RULE_SETS)]]
    return [
        json.dumps(each | {"texts": each["texts"] | {"shown_in": shown_in}})
        for each in asked
        for shown_in in ("us", "metric")
    ]


def test_two_hundred_answers_do_not_make_the_memory_grow() -> None:
    seen = said_by_engine("heap", about=[request for name in REQUESTS for request in varied(name)])
    assert seen["answers"] >= 200
    assert seen["after"] == seen["before"]
