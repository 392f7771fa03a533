"""An answer as HTML: the same code at build time and in the browser.

Everything that came from a reader is escaped here. Pictures are the package's
own SVG and go in as they are.
"""

from html import escape
from itertools import groupby
from typing import Any

from calc.show.notation import formula_html, symbol_html, unit_text
from calc.values.numbers import plain_number
from calc.values.units import WRITTEN


def _cautions(cautions: list[dict[str, str]]) -> str:
    """One box for each signal word, the gravest first, with every hazard of that word in it."""
    return "".join(
        f'<div class="bb-caution bb-{signal.lower()}" role="note"><strong>{signal}</strong> '
        f"{_hazards(list(told))}</div>"
        for signal, told in groupby(cautions, key=lambda one: one["signal"])
    )


def _hazards(told: list[dict[str, str]]) -> str:
    said = [
        f'<span>{escape(one["text"])}</span> <cite class="bb-source">{escape(grounds(one))}</cite>'
        for one in told
    ]
    if len(said) == 1:
        return said[0]
    return f'<ul class="bb-hazards">{"".join(f"<li>{each}</li>" for each in said)}</ul>'


def grounds(row: dict[str, Any]) -> str:
    """Source and grade of a result or a caution, for a reader.

    Examples:
        >>> grounds({"source": "29 CFR 1910.252 (a)(3)", "how_sure": "read in the source"})
        '29 CFR 1910.252 (a)(3), read in the source'
        >>> grounds({"source": "", "how_sure": "common practice, no source"})
        'common practice, no source'
    """
    return ", ".join(part for part in (row["source"], row["how_sure"]) if part)


def _behind(result: dict[str, Any]) -> str:
    source = result["source"]
    grade = result["how_sure"]
    named = f"{source} ({grade})" if source else grade
    basis = f"{escape(result['basis'])} " if result["basis"] else ""
    exact = ""
    if result["value"] is not None:
        number = plain_number(result["value"], 7)
        exact = f" Exact: {number} {escape(WRITTEN.get(result['unit'], result['unit']))}".rstrip() + "."
    return f"<dt>{escape(result['label'])}</dt><dd>{basis}Source: {escape(named)}.{exact}</dd>"


def _group(heading: str, results: dict[str, dict[str, Any]], folded: bool) -> str:
    rows = []
    for name, result in results.items():
        band = f'<span class="bb-band">band {escape(result["band"])}</span>' if result["band"] else ""
        exact = "" if result["si"] is None else f' data-si="{result["si"]:.12g}"'
        rows.append(
            f'<div class="bb-result" data-result="{escape(name)}"{exact}><dt>{escape(result["label"])}</dt>'
            f'<dd><span class="bb-value">{escape(result["text"])}</span> {band}</dd></div>'
        )
    title = f"<h3>{escape(heading)}</h3>" if heading and not folded else ""
    named = f": {escape(heading.lower())}" if heading else ""
    group = (
        f'<div class="bb-group">{title}<dl class="bb-results">{"".join(rows)}</dl>'
        f'<details class="bb-basis"><summary><span>Basis, sources, exact figures{named}</span></summary>'
        f"<dl>{''.join(map(_behind, results.values()))}</dl></details></div>"
    )
    if not folded:
        return group
    return f'<details class="bb-deep"><summary>{escape(heading)}</summary>{group}</details>'


def _results(results: dict[str, dict[str, Any]], folded: bool) -> str:
    groups: dict[str, dict[str, dict[str, Any]]] = {}
    for name, result in results.items():
        if result["folded"] == folded:
            groups.setdefault(result["group"], {})[name] = result
    return "".join(_group(heading, part, folded) for heading, part in groups.items())


def said(taken: dict[str, Any]) -> str:
    """An input as typed, its unit printed as a reader writes it."""
    text, unit = str(taken["text"]), str(taken["unit"])
    if unit in WRITTEN and text.endswith(unit):
        return text.removesuffix(unit) + WRITTEN[unit]
    return text


def _inputs(answer: dict[str, Any]) -> str:
    lines: list[str] = []
    for name, taken in answer["inputs"].items():
        mark = " <em>(assumed)</em>" if name in answer["assumed"] else ""
        lines.append(f"<li>{escape(taken['label'])}: {escape(said(taken))}{mark}</li>")
    return (
        f'<details class="bb-inputs"><summary>Worked from these values</summary>'
        f"<ul><li>Rule set: {escape(answer['rules_name'])}</li>{''.join(lines)}</ul></details>"
    )


def _tables(tables: list[dict[str, Any]], beside: str) -> str:
    """Tables of an answer; their regions are told apart by what they stand beside."""
    out = []
    for table in tables:
        head = "".join(f'<th scope="col">{escape(c)}</th>' if c else "<td></td>" for c in table["columns"])
        body = "".join(
            "<tr>"
            + "".join(
                f'<th scope="row">{escape(cell)}</th>' if i == 0 else f"<td>{escape(cell)}</td>"
                for i, cell in enumerate(row)
            )
            + "</tr>"
            for row in table["rows"]
        )
        note = f"<p>{escape(table['note'])}</p>" if table["note"] else ""
        title = escape(table["title"])
        out.append(
            f'<div class="bb-table" tabindex="0" role="region" aria-label="{title}: {escape(beside)}"><table>'
            f"<caption>{title}</caption><thead><tr>{head}</tr></thead>"
            f"<tbody>{body}</tbody></table></div>{note}"
        )
    return "".join(out)


def _pictures(pictures: list[dict[str, str]]) -> str:
    return "".join(
        f'<figure class="bb-picture">{p["svg"]}<figcaption><strong>{escape(p["title"])}.</strong> '
        f"{escape(p['sentence'])}</figcaption></figure>"
        for p in pictures
    )


def _steps(steps: list[dict[str, Any]]) -> str:
    if not steps:
        return ""
    lines = []
    for step in steps:
        numbers = ", ".join(
            f"{symbol_html(n['name'])} = {plain_number(n['value'], 6)} {escape(unit_text(n['unit']))}".rstrip()
            for n in step["numbers"]
        )
        unit = escape(unit_text(step["result"]["unit"]))
        result = f"{plain_number(step['result']['value'], 6)} {unit}".rstrip()
        lines.append(
            f"<li><p>{escape(step['says'])}</p>{formula_html(step['formula'])}"
            f'<p class="bb-numbers">with {numbers}</p><p>= <strong>{result}</strong></p></li>'
        )
    return (
        '<details class="bb-steps"><summary>The working, step by step</summary>'
        f"<ol>{''.join(lines)}</ol></details>"
    )


def _sources(answer: dict[str, Any]) -> str:
    titles = "".join(
        f"<li><b>{escape(s['short'])}</b>: {escape(s['title'])}</li>" for s in answer["sources"]
    )
    listed = f"<ul>{titles}</ul>" if titles else "<p>Common practice, no source.</p>"
    return f'<details class="bb-sources"><summary>Sources of this answer</summary>{listed}</details>'


def _files(files: list[dict[str, str]]) -> str:
    """Places for the buttons of the files; a page puts them there."""
    places = "".join(
        f'<span data-file="{escape(f["name"])}">{escape(f["words"])}</span>' for f in files
    )
    return f'<div class="bb-files" data-files hidden>{places}</div>' if files else ""


def answer_html(answer: dict[str, Any]) -> str:
    """The answer part of a calculator's block.

    Args:
        answer: The one object that `calc.answer` returns.

    Returns:
        HTML: cautions first, then results, pictures, tables, folded results, working, sources.
    """
    return "".join(
        [
            _cautions(answer["cautions"]),
            _results(answer["results"], folded=False),
            _pictures(answer["pictures"]),
            _tables(answer["tables"], answer["title"]),
            _results(answer["results"], folded=True),
            _inputs(answer),
            _steps(answer["steps"]),
            _sources(answer),
            _files(answer["files"]),
            f'<p class="bb-release">Rule set: {escape(answer["rules_name"])}. '
            f"Release {escape(answer['release'])}. "
            "Your outfit's instructions and your local rules come first.</p>",
        ]
    )
