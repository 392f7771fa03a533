"""An answer as plain text, for the command line and for copying."""

from typing import Any

from calc.show.answer import said


def answer_text(answer: dict[str, Any]) -> str:
    """Cautions, results with band and source, inputs, release: line by line.

    Args:
        answer: The one object that `calc.answer` returns.
    """
    lines = [f"{answer['title']} ({answer['rules_name']})", ""]
    lines += [f"{c['signal']}: {c['text']}" for c in answer["cautions"]]
    if answer["cautions"]:
        lines.append("")
    heading = ""
    for result in answer["results"].values():
        if result["group"] != heading:
            heading = result["group"]
            lines += ["", heading]
        band = f" (band {result['band']})" if result["band"] else ""
        source = f"{result['source']}, " if result["source"] else ""
        lines.append(f"{result['label']}: {result['text']}{band}")
        lines.append(f"    {source}{result['how_sure']}")
    lines.append("")
    for name, taken in answer["inputs"].items():
        mark = " (assumed)" if name in answer["assumed"] else ""
        lines.append(f"from {taken['label']}: {said(taken)}{mark}")
    lines += ["", f"Release {answer['release']}. Your outfit's instructions come first."]
    return "\n".join(lines)
