"""What readers ask, for making the browser's Python: examples, and all that a page may send.

`example_requests` must be answered by whatever is built. `usual_requests` go
further: every choice, unit and rule set, mistakes of typing, files, practice.
What these never reach is left out of the module that a page starts with.
"""

import json
import re
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Any

from calc.declare import RULE_SETS, Asked, Calculator, Choice, Day, Field, Words, by_rules
from calc.declare.catalogue import calculators

MISTAKES = (
    "", "0", "-3", "1e400", "1e-300", "abc", "<b>9 parsecs", "½", "3 1/2 in", "١٢", "1,5", "1.234,5", "x" * 300,
)  # fmt: skip
"""Texts that a reader may type into any box."""
DAYS = ("2026-11-25", "2024-02-29", "2026-02-30", "25.11.2026", "tomorrow", "1900-01-01")
WORDS = ("Ana", "Ana’s bench № 2, 日本 🙂", "<b>Ana</b>", "a" * 40)
ODD = (
    "9 " * 500_000, "1" * 1_000_000, "\u202e1 psi", "1\u200bpsi", "e\u0301" * 300, "\0", "\ud800", "🙂", "１２ psi", "Ⅻ", "²",
    "__proto__", "constructor", "javascript:alert(1)", "<img src=x onerror=alert(1)>", "1\u00a0430\u202fpsi", "1_000 psi",
)  # fmt: skip
"""Texts that somebody pastes to see what happens."""
FACTORS = (0.5, 0.9, 2, 10)
KINDS = (
    "convert", "square", "calendar", "outfit", "fill", "log", "pack", "file", "practice", "calculator",
)  # fmt: skip
"""Kinds of requests that the bridge takes."""
SITE = "https://host.example/benchbook/"


def _examples(calculator: Calculator, rules: str) -> dict[str, str]:
    return {
        name: by_rules(asked.example, rules)
        for name, asked in calculator.inputs.items()
        if asked.example is not None
    }


def _request(calculator: Calculator, rules: str, **texts: str) -> dict[str, Any]:
    return {"calculator": calculator.id, "texts": _examples(calculator, rules) | {"rules": rules} | texts}


def _whole_request(calculator: Calculator, rules: str) -> dict[str, Any]:
    """The examples, with days and words of the reader's own."""
    empty = {
        name: asked
        for name, asked in calculator.inputs.items()
        if asked.example is None and asked.assumed is None
    }
    own = {name: DAYS[0] for name, asked in empty.items() if isinstance(asked, Day)}
    own |= {name: WORDS[0] for name, asked in empty.items() if isinstance(asked, Words)}
    return _request(calculator, rules, **own)


def _whole_outfit(rules: str) -> tuple[dict[str, str], str]:
    """Texts of an outfit with as much in it as will do, and its file."""
    import calc.bridge  # noqa: PLC0415 - only the build asks for it

    calculator = calculators()["my-outfit"]
    texts = _whole_request(calculator, rules)["texts"]
    for name, asked in calculator.inputs.items():
        if isinstance(asked, Field) and name not in texts:
            texts[name] = by_rules(asked.low or f"5 {asked.units[0]}", rules)
    while True:
        reply = json.loads(calc.bridge.run(json.dumps({"outfit": {"keep": texts}})))
        if "text" in reply:
            return texts, reply["text"]
        for fault in reply["errors"]:
            texts.pop(fault["field"])


def _as_page_sends(request: Any) -> str:
    """JSON as a page writes it: signs as they are, but half a sign escaped."""
    text = json.dumps(request, ensure_ascii=False)
    return re.sub("[\ud800-\udfff]", lambda half: f"\\u{ord(half[0]):x}", text)


def _calculators() -> list[Calculator]:

    return list(calculators().values())


def example_requests() -> list[str]:
    """A request for every calculator on its example values."""
    return [
        json.dumps({"calculator": calculator.id, "texts": _examples(calculator, "us")})
        for calculator in _calculators()
    ]


def _near(field: Field, rules: str) -> Iterator[str]:
    """Limits, the example made larger and smaller, and a number in every unit."""
    yield from (by_rules(text, rules) for text in (field.low, field.high) if text)
    yield from (f"7 {unit}" for unit in field.units)
    number, _, unit = by_rules(field.example or field.assumed or "1", rules).partition(" ")
    if number.replace(".", "", 1).isdigit():
        yield from (f"{float(number) * factor:g} {unit}" for factor in FACTORS)


def _other_texts(asked: Asked, rules: str) -> Iterable[str]:
    """What may stand in a box instead of its example."""
    match asked:
        case Choice():
            return asked.options
        case Field():
            return _near(asked, rules)
        case Day():
            return DAYS
        case _:
            return WORDS


def _varied(calculator: Calculator, rules: str) -> Iterator[dict[str, Any]]:
    """One input at a time is another."""
    for shown in ("us", "metric", "both?"):
        yield _request(calculator, rules, shown_in=shown)
    for name, asked in calculator.inputs.items():
        yield from (_request(calculator, rules, **{name: text}) for text in _other_texts(asked, rules))


def _around(calculator: Calculator, rules: str) -> Iterator[dict[str, Any]]:
    """What a page asks beside an answer: units, files, the outfit, a square code."""
    texts = _request(calculator, rules)["texts"]
    for name, asked in calculator.inputs.items():
        if isinstance(asked, Field):
            about = {"calculator": calculator.id, "field": name, "text": texts.get(name, "7")}
            yield from ({"convert": about | {"unit": unit}} for unit in asked.units)
    for name in ("plan.csv", "plan.ics", "no-such"):
        yield {"file": {"calculator": calculator.id, "texts": texts, "name": name}}
    yield {"fill": {"calculator": calculator.id, "texts": texts, "outfit": "no outfit"}}


def _others(rules: str) -> Iterator[dict[str, Any]]:
    """What is asked without a calculator."""
    yield from ({"square": f"{SITE}?v=1&note={'a' * n}"} for n in (1, 60, 200, 5000))
    start = 1_795_800_000
    for watch, monitoring, check_every in (
        (1800, 0, 900),
        (3600, 3600, 1200),
        (1800.5, 7200.25, 899.75),
        (0, 0, 0),
    ):
        asked = {"watch": watch, "monitoring": monitoring, "check_every": check_every}
        yield from (
            {"calendar": asked | {"start": moment}} for moment in (start, start + 0.123, start - 0.5, -5)
        )
    yield {"log": {"lines": [{"day": "2026-11-25", "fuel": "acetylene"}, {}], "rules": rules, "file": True}}
    yield {"pack": {"texts": {"rules": rules}, "site": SITE, "parts": ["plan", "cards", "scores"]}}
    for kind in ("problems", "licence", "flame", "no-such"):
        practice: dict[str, Any] = {"set": kind, "texts": {"rules": rules}}
        yield {"practice": practice}
        yield from ({"practice": practice | {"number": number}} for number in (1, 2, 99))
        yield from (
            {"practice": practice | {"number": 1, "answer": said}}
            for said in ("1", "12 psi", "neutral", "?")
        )
    yield {"practice": {"set": "flame", "texts": {"rules": rules, "flames": "99"}}}
    yield {"calculator": "no-such", "texts": {}}


def _malformed() -> Iterator[Any]:
    """What no page sends; a reply must come all the same."""
    bodies: tuple[Any, ...] = ([], None, -5, 2.5e300, "x", {}, {"": [1, True]}, [[None], "é", {"a": {}}])
    yield from bodies
    for what in KINDS:
        yield from ({what: body} for body in bodies)
    for calculator, box in (
        ("oxygen-left", "gauge"),
        ("sheet-thickness", "gauge"),
        ("gas-log", "day"),
        ("may-i-heat", "place"),
    ):
        yield from ({"calculator": calculator, "texts": {box: text}} for text in ODD)
        yield from ({"calculator": calculator, "texts": {text[:90]: "1"}} for text in ODD)
    yield from ({"square": f"{SITE}?note={text[:90]}"} for text in ODD if text != "\ud800")
    for calculator in ("oxygen-left", "my-outfit"):
        yield from ({"calculator": calculator, "texts": body} for body in bodies)
        yield from ({"calculator": calculator, "texts": {"gauge": body, "rules": body}} for body in bodies)
        yield from ({"calculator": calculator, "texts": {}, "units": body} for body in bodies)


def _of_outfit(rules: str) -> Iterator[dict[str, Any]]:
    """An outfit kept, opened, damaged, and used by each calculator."""
    outfit, kept = _whole_outfit(rules)
    yield {"outfit": {"keep": _request(calculators()["my-outfit"], rules)["texts"]}}
    yield {"outfit": {"keep": outfit}}
    yield {"outfit": {"open": kept, "rules": rules}}
    yield from (
        {"outfit": {"open": text, "rules": rules}}
        for text in ("", "x", "[]", "PK\3\4", "x" * 200_000, *WORDS)
    )
    yield from (
        {"outfit": {"open": kept.replace(a, b), "rules": rules}}
        for a, b in (("1", "9"), ("{", "["), ('"', "<"))
    )
    for calculator in calculators().values():
        texts = _request(calculator, rules)["texts"]
        yield {"fill": {"calculator": calculator.id, "texts": texts, "outfit": kept}}


def _of_class(rules: str) -> Iterator[dict[str, Any]]:
    """Files that an answer offers, lessons kept and the sheets of an evening, as their pages ask for them."""
    from calc.answer.answering import answer  # noqa: PLC0415 - only the build asks for it

    for calculator in calculators().values():
        texts = _whole_request(calculator, rules)["texts"]
        for offered in answer(calculator.id, drawings=False, **texts).get("files", ()):
            yield {"file": {"calculator": calculator.id, "texts": texts, "name": offered["name"]}}
    lesson = _whole_request(calculators()["gas-log"], rules)["texts"]
    yield {"log": {"lines": [lesson, lesson], "rules": rules, "file": True}}
    wrong = [lesson | {name: text} for name in lesson for text in ("<img src=x>", "-1", "1e400 psi")]
    yield {"log": {"lines": [*wrong, lesson], "rules": rules}}
    yield from ({"log": {"lines": [lesson, line], "rules": rules, "file": True}} for line in wrong)
    plan = _request(calculators()["class-plan"], rules)["texts"]
    exercises = {
        name: text for name, text in plan.items() if name.startswith(("exercise_", "learners", "benches"))
    }
    yield {
        "pack": {"texts": exercises | {"rules": rules}, "site": SITE, "parts": ["plan", "cards", "scores"]}
    }


def usual_requests() -> list[str]:
    """What readers may ask: each request as the page sends it, the examples first.

    Examples:
        >>> len(usual_requests()) > 50 * len(example_requests())
        True
    """
    asked: list[dict[str, Any]] = []
    for calculator in _calculators():
        for turn, rules in enumerate(RULE_SETS):
            # There are many: each rule set takes every third of them, in turn.
            some = islice(_varied(calculator, rules), turn, None, len(RULE_SETS))
            asked += [_request(calculator, rules), _whole_request(calculator, rules), *some]
        asked += [
            _request(calculator, "us", **{name: text}) for name in calculator.inputs for text in MISTAKES
        ]
        asked += _around(calculator, "us")
    for rules in RULE_SETS:
        asked += [*_others(rules), *_of_outfit(rules), *_of_class(rules)]
    asked += _malformed()
    return [*example_requests(), *map(_as_page_sends, asked), "", "{"]
