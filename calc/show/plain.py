"""An answer as plain text, for the command line and for copying."""

from typing import Any

from calc.show.answer import grounds, said


def answer_text(answer: dict[str, Any]) -> str:
    """Cautions, results with band and source, inputs, release: line by line.

    Args:
        answer: The one object that `calc.answer` returns.
    """
    lines = [f"{answer['title']} ({answer['rules_name']})", ""]
    for caution in answer["cautions"]:
        lines += [f"{caution['signal']}: {caution['text']}", f"    {grounds(caution)}"]
    if answer["cautions"]:
        lines.append("")
    heading = ""
    for result in answer["results"].values():
        if result["group"] != heading:
            heading = result["group"]
            lines += ["", heading]
        band = f" (band {result['band']})" if result["band"] else ""
        lines.append(f"{result['label']}: {result['text']}{band}")
        lines.append(f"    {grounds(result)}")
    lines.append("")
    for name, taken in answer["inputs"].items():
        mark = " (assumed)" if name in answer["assumed"] else ""
        lines.append(f"from {taken['label']}: {said(taken)}{mark}")
    lines += ["", f"Release {answer['release']}. Your outfit's instructions come first."]
    return "\n".join(lines)
