"""What every calculator keeps, whatever it works out."""

import json
import math
import re
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.__main__ import main
from calc.ask.reading import typed
from calc.bridge import run
from calc.data.tables import HOW_SURE
from calc.declare import RULE_SETS, Calculator, Choice, Day, Field, Words, by_rules
from calc.declare.catalogue import calculators
from calc.show.form import block
from calc.values.numbers import plain_number
from calc.values.units import dimension, from_si, to_si
from tests.properties.asked import texts_of

EVERY = pytest.mark.parametrize("calculator", calculators().values(), ids=list(calculators()))
MANY = settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)


def examples(calculator: Calculator, rules: str = "us") -> dict[str, str]:
    return {
        name: by_rules(asked.example, rules)
        for name, asked in calculator.inputs.items()
        if asked.example is not None
    } | {"rules": rules}


def asking(calculator: Calculator, name: str) -> dict[str, str]:
    """Examples with the choices under which an input is asked."""
    conditions = calculator.inputs[name].when or {}
    texts = examples(calculator)
    for choice, options in conditions.items():
        texts |= asking(calculator, choice) | {choice: options[0]}
    return texts


def numbers_in(part: Any) -> Iterator[float]:
    if isinstance(part, dict):
        for value in part.values():
            yield from numbers_in(value)
    elif isinstance(part, list | tuple):
        for value in part:
            yield from numbers_in(value)
    elif isinstance(part, float):
        yield part


@EVERY
@pytest.mark.parametrize("rules", RULE_SETS)
def test_the_examples_answer_in_every_rule_set(calculator: Calculator, rules: str) -> None:
    got = answer(calculator.id, **examples(calculator, rules))
    assert set(got["results"]) <= set(calculator.results)
    json.dumps(got, allow_nan=False)
    for result in got["results"].values():
        assert result["text"], result
        assert result["how_sure"] in HOW_SURE.values()
        assert result["source"] or result["how_sure"] in (
            HOW_SURE["practice"], HOW_SURE["memory"]
        ), result  # fmt: skip


@EVERY
@pytest.mark.parametrize("rules", RULE_SETS)
def test_every_unit_offered_gives_the_same_answer(calculator: Calculator, rules: str) -> None:
    texts = examples(calculator, rules)
    first = answer(calculator.id, **texts)["results"]
    for name, asked in calculator.inputs.items():
        if not isinstance(asked, Field) or name not in texts:
            continue
        got = typed(texts[name])
        if got.unit not in asked.units:
            continue
        for unit in asked.units:
            si = to_si(got.number, got.unit, free_gas=asked.free_gas)
            number = repr(from_si(si, unit, free_gas=asked.free_gas))
            second = answer(calculator.id, **(texts | {name: f"{number} {unit}".strip()}))["results"]
            for key, result in first.items():
                if result["value"] is None:
                    assert second[key]["text"] == result["text"]
                else:
                    assert second[key]["value"] == pytest.approx(result["value"], rel=1e-6, abs=1e-9)


@EVERY
def test_results_are_shown_in_any_of_their_units(calculator: Calculator) -> None:
    answered = answer(calculator.id, **examples(calculator))["results"]
    for name, shown in calculator.results.items():
        for unit in shown.units if name in answered else ():
            if unit and not shown.words:
                assert dimension(unit) == dimension(shown.units[0])
                got = answer(calculator.id, units={name: unit}, **examples(calculator))
                assert got["results"][name]["unit"] in (unit, "")


@EVERY
@MANY
@given(data=st.data())
def test_allowed_inputs_answer_or_say_why_not(calculator: Calculator, data: Any) -> None:
    texts = data.draw(texts_of(calculator))
    try:
        got = answer(calculator.id, **texts)
    except InputError as refused:
        for error in refused.listed():
            asked = calculator.inputs[error["field"]]
            assert error["message"].startswith(asked.label), error
            assert error["message"].endswith(".")
        return
    assert all(math.isfinite(number) for number in numbers_in(got))
    for result in got["results"].values():
        if result["low"] is not None and result["value"] is not None:
            assert result["low"] <= result["value"] * (1 + 1e-9) + 1e-12, result
        if result["high"] is not None and result["value"] is not None:
            assert result["value"] <= result["high"] * (1 + 1e-9) + 1e-12, result


@EVERY
def test_an_input_out_of_range_names_its_field_and_the_range(calculator: Calculator) -> None:
    for name, asked in calculator.inputs.items():
        texts = asking(calculator, name)
        if isinstance(asked, Choice):
            bad = ["no such thing", "", "<b>x</b>"]
        elif isinstance(asked, Words):
            bad = ["", "   ", "x" * (asked.longest + 1), "x" * 10_000, "<b>x</b>", "a\x00b", "two\nlines"]
        elif isinstance(asked, Day):
            bad = [
                "",
                "rhubarb",
                "2026-13-01",
                "2025-02-29",
                "25/11/2026",
                "0001-01-01",
                "9999-12-31",
                "x" * 10_000,
            ]
        else:
            unit = asked.units[0]
            bad = ["", "rhubarb", "nan", "1,234", "x" * 10_000, "<img src=x>"]
            for limit, factor in ((asked.low, -1.0), (asked.high, 1.0)):
                if limit is not None:
                    edge = typed(by_rules(limit, "us"))
                    bad.append(f"{edge.number + factor * (abs(edge.number) + 1)} {edge.unit}".strip())
            if unit and unit != "%" and len(asked.units) > 1:
                bad += ["3", "3 furlong"]
        for text in bad:
            with pytest.raises(InputError) as refused:
                answer(calculator.id, **(texts | {name: text}))
            said = refused.value.listed()
            assert said[0]["field"] == name, (text, said)
            assert said[0]["message"].startswith(asked.label), said
            assert len(said[0]["message"]) < 400
            assert said[0]["message"].endswith((".", "?")), said


@EVERY
def test_declarations_can_be_used(calculator: Calculator) -> None:
    assert calculator.about.endswith(".")
    for name, asked in calculator.inputs.items():
        assert re.fullmatch(r"[a-z][a-z_0-9]*", name)
        if isinstance(asked, Field):
            assert len({dimension(u) for u in asked.units}) == 1, name
            assert not asked.units[0] or (asked.low is not None and asked.high is not None), (
                f"{name} has no range"
            )


@EVERY
def test_page_command_line_and_python_say_the_same(
    calculator: Calculator, capsys: pytest.CaptureFixture[str]
) -> None:
    texts = examples(calculator)
    from_python = answer(calculator.id, **texts)
    words = [f"{name}={text}" for name, text in texts.items() if name != "rules"]
    assert main(["run", calculator.id, *words, "--rules", "us", "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == json.loads(json.dumps(from_python))
    reply = json.loads(run(json.dumps({"calculator": calculator.id, "texts": texts})))
    assert reply["answer"] == json.loads(json.dumps(from_python))
    assert reply["html"] in block(calculator.id)
    assert main(["run", calculator.id, *words]) == 0
    assert from_python["title"] in capsys.readouterr().out
    assert main(["show", calculator.id]) == 0
    assert calculator.title in capsys.readouterr().out


@EVERY
def test_what_a_reader_types_never_becomes_markup(calculator: Calculator) -> None:
    for name in calculator.inputs:
        texts = asking(calculator, name) | {name: "<script>alert(1)</script>"}
        reply = run(json.dumps({"calculator": calculator.id, "texts": texts}))
        assert "errors" in json.loads(reply)


def test_the_command_line_lists_every_calculator(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["list", "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)
    assert [set(entry) for entry in listed] == [{"id", "title"}] * len(calculators())


@pytest.mark.parametrize(
    "words",
    [[], ["run"], ["run", "no-such"], ["show", "no-such"], ["run", "oxygen-left", "gauge"],
     ["run", "oxygen-left", "no_field=3"], ["run", "oxygen-left", "--rules", "moon"],
     ["run", "oxygen-left", "water_volume=43 L", "gauge=1500 psi", "--in", "gas_left=psi"]],
)  # fmt: skip
def test_a_wrong_command_gets_a_sentence_and_no_traceback(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(words) == 2
    said = capsys.readouterr()
    assert said.err.strip()
    assert "Traceback" not in said.err


def test_a_broken_request_of_a_page_gets_a_sentence() -> None:
    for request in ("", "[]", "{}", '{"calculator": 3}', '{"calculator": "oxygen-left", "texts": 5}',
                    '{"convert": {}}', '{"calculator":"oxygen-left","texts":{"__proto__":"x"}}'):  # fmt: skip
        assert json.loads(run(request))["errors"][0]["message"]


@given(st.floats(-1e9, 1e9, allow_nan=False))
def test_a_plain_number_has_no_exponent_and_keeps_its_figures(value: float) -> None:
    text = plain_number(value, 4)
    assert "e" not in text
    assert float(text) == pytest.approx(value, rel=6e-4, abs=1e-11)


@EVERY
def test_maps_and_curves_follow_the_answer_and_change_nothing_in_it(calculator: Calculator) -> None:
    texts = examples(calculator)
    asked = {"calculator": calculator.id, "texts": texts}
    whole = json.loads(run(json.dumps(asked)))["answer"]
    quick = json.loads(run(json.dumps(asked | {"drawings": False})))["answer"]
    assert whole["more"] is False
    if quick["more"]:
        assert len(quick["pictures"]) + len(quick["tables"]) < len(whole["pictures"]) + len(whole["tables"])
    else:
        assert quick == whole
    for part in ("results", "cautions", "steps", "inputs"):
        assert quick[part] == whole[part]


@EVERY
def test_the_units_of_the_results_can_be_chosen_apart_from_the_rules(calculator: Calculator) -> None:
    texts = examples(calculator, "us")
    ours = answer(calculator.id, **texts)["results"]
    metric = answer(calculator.id, shown_in="metric", **texts)["results"]
    for name, shown in calculator.results.items():
        if name in ours and ours[name]["value"] is not None:
            assert metric[name]["unit"] == shown.units[min(1, len(shown.units) - 1)]
            assert metric[name]["si"] == ours[name]["si"]
    with pytest.raises(InputError, match=r"^Units of the results: "):
        answer(calculator.id, shown_in="furlongs", **texts)
