"""The command line: `python -m calc list`, `show ID`, `run ID field=text …`."""

import argparse
import json
import sys
from collections.abc import Sequence
from typing import NoReturn

from calc.answer.answering import answer, file_of, found
from calc.ask.errors import InputError
from calc.declare import RULE_SETS, Asked, Choice, Day, Words, by_rules
from calc.declare.catalogue import broken, calculators
from calc.show.plain import answer_text
from calc.values.units import written


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise InputError("command", "Command", f"{message}.")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="python -m calc", description="Answers for oxy-fuel work, with sources.")
    does = parser.add_subparsers(dest="does", required=True, metavar="list|show|run")
    listed = does.add_parser("list", help="name every calculator")
    listed.add_argument("--json", action="store_true", help="as JSON")
    shown = does.add_parser("show", help="say what a calculator asks and answers")
    shown.add_argument("id")
    run = does.add_parser("run", help="answer; give inputs as field=text")
    run.add_argument("id")
    run.add_argument("texts", nargs="*", metavar="field=text")
    run.add_argument("--rules", choices=list(RULE_SETS), help="rule set; us if not given")
    run.add_argument(
        "--in", dest="units", action="append", default=[], metavar="result=unit",
        help="show a result in this unit",
    )  # fmt: skip
    run.add_argument("--json", action="store_true", help="as JSON")
    run.add_argument("--file", metavar="NAME", help="print a file that the answer offers, such as plan.csv")
    return parser


def _pairs(words: Sequence[str], what: str) -> dict[str, str]:
    pairs: dict[str, str] = {}
    for word in words:
        name, mark, text = word.partition("=")
        if not mark:
            raise InputError(what, what, f"“{word[:60]}” has no =; write name=text.")
        pairs[name.strip().replace("-", "_")] = text
    return pairs


def _listed(*, as_json: bool) -> str:

    if as_json:
        return json.dumps([{"id": c.id, "title": c.title} for c in calculators().values()])
    lines = [f"{c.id:22} {c.title}" for c in calculators().values()]
    return "\n".join(lines + [f"{name:22} cannot be used: {said}" for name, said in broken().items()])


def _offered(asked: Asked) -> str:
    if isinstance(asked, Choice):
        return " | ".join(asked.options)
    if isinstance(asked, Words):
        return f"words, {asked.longest} letters at most"
    if isinstance(asked, Day):
        return "day, as 2026-11-25"
    return ", ".join(written(u) for u in asked.units if u) or "number"


def _shown(calculator_id: str) -> str:
    calculator = found(calculator_id)
    lines = [calculator.title, calculator.about, "", "It asks:"]
    for name, asked in calculator.inputs.items():
        state = (
            f"example {by_rules(asked.example, 'us')}"
            if asked.example is not None
            else "may be left out"
            if asked.optional
            else f"assumed {by_rules(asked.assumed or '', 'us')}"
        )
        for choice, options in (asked.when or {}).items():
            state += f", only with {choice} {' or '.join(options)}"
        lines.append(f"  {name:20} {asked.label} [{_offered(asked)}] ({state})")
    lines += ["", "It answers:"]
    for name, result in calculator.results.items():
        units = ", ".join(u for u in result.units if u)
        lines.append(f"  {name:20} {result.label}" + (f" [{units}]" if units else ""))
    return "\n".join(lines)


def _answered(words: argparse.Namespace) -> str:
    texts = _pairs(words.texts, "field")
    if words.rules:
        texts["rules"] = words.rules
    for taken in ("calculator_id", "units", "drawings"):
        if taken in texts:
            raise InputError(taken, "", f"“{taken}” is no input.")
    if words.file:
        return file_of(words.id, words.file, texts)["text"]
    got = answer(words.id, units=_pairs(words.units, "in"), drawings=True, **texts)
    return json.dumps(got, ensure_ascii=False) if words.json else answer_text(got)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command.

    Args:
        arguments: Words of the command; those of the process if not given.

    Returns:
        Exit code: 0, or 2 where an input cannot be used.
    """
    words_given = list(sys.argv[1:] if arguments is None else arguments)
    try:
        words, more = _parser().parse_known_args(words_given)  # a field may stand behind an option
        if strange := [word for word in more if word.startswith("-") or words.does != "run"]:
            raise InputError("command", "Command", f"{strange[0][:60]} is not known here.")
        if words.does == "list":
            said = _listed(as_json=words.json)
        elif words.does == "show":
            said = _shown(words.id)
        else:
            words.texts += more
            said = _answered(words)
    except InputError as error:
        if "--json" in words_given:
            print(json.dumps({"errors": error.listed()}, ensure_ascii=False))
        else:
            print("\n".join(e["message"] for e in error.listed()), file=sys.stderr)
        return 2
    except BrokenPipeError:
        return 0
    print(said)
    return 0


if __name__ == "__main__":
    sys.exit(main())
