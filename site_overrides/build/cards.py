"""Rows of a data file as cards: a heading, the hazards that go before, then lines under their own names.

A table with six columns of sentences cannot be read on a phone; cards can.
"""

from collections.abc import Callable
from html import escape

from calc.answer.hazards import hazards
from calc.data.tables import HOW_SURE, source_words
from calc.declare import RULE_SETS
from site_overrides.build.hazards import hazard_html, parts
from site_overrides.build.questions import link

Fill = Callable[[str], str]


def _hazard(name: str, met: set[str], fill: Fill) -> str:
    """A hazard, whole where it stands for the first time and short after that."""
    if name in met:
        hazard, _, avoidance = parts(name, fill)
        return f'<p class="bb-again" data-hazard="{name}"><strong>{hazards()[name].signal}</strong> {hazard} {avoidance}</p>'
    met.add(name)
    return hazard_html(name, fill)


def _heading(line: dict[str, str], settings: dict[str, str]) -> str:
    title = escape(line[settings["title"]])
    if "minutes" not in settings:
        return title
    begin, length = (line[name.strip()] for name in settings["minutes"].split(","))
    return f"{begin} to {int(begin) + int(length)} min: {title}"


def _card(
    line: dict[str, str], settings: dict[str, str], shown: dict[str, str], met: set[str], fill: Fill
) -> str:
    hazards = "".join(
        _hazard(name, met, fill) for name in line.get(settings.get("hazards", ""), "").split()
    )
    said = "".join(
        f"<p><b>{escape(heading)}:</b> {fill(escape(line[name]))}</p>"
        for name, heading in shown.items()
        if line[name]
    )
    pages = line.get(settings.get("pages", ""), "").split()
    links = ", ".join(link(page, fill) for page in pages)
    read = f"<p><b>Page:</b> {links}</p>" if links else ""
    behind = ", ".join(part for part in (source_words(line["source"]), HOW_SURE[line["how_sure"]]) if part)
    rules = line.get("rules", "").split() or list(RULE_SETS)
    looks = " ".join(f"bb-for-{each}" for each in rules)
    only = "" if len(rules) == len(RULE_SETS) else ", ".join(RULE_SETS[each] for each in rules)
    for_whom = f'<p class="bb-for-none">{escape(only)} only.</p>' if only else ""
    return (
        f'<section class="bb-card {looks}"><h3>{_heading(line, settings)}</h3>{for_whom}{hazards}{said}{read}'
        f'<p><cite class="bb-source">{escape(behind)}</cite></p></section>'
    )


def cards_html(lines: list[dict[str, str]], settings: dict[str, str], fill: Fill) -> str:
    """Cards for rows of a data file.

    Args:
        lines: The rows, as they stand in the file.
        settings: `title`, a column; `lines`, as `column: Heading, column: Heading`;
            and if wanted `hazards`, a column of ids of the table of hazards; `pages`, a column
            of paths of documentation pages; `minutes`, the columns of begin and length.
            A column `rules` says for which rule sets alone a card is.
        fill: Fills `{id}` in escaped text with figures and words.
    """
    pairs = (pair.partition(":") for pair in settings["lines"].split(","))
    shown = {name.strip(): heading.strip() for name, _, heading in pairs}
    met: set[str] = set()
    cards = "".join(_card(line, settings, shown, met, fill) for line in lines)
    return f'<div class="bb-cards bb-word">{cards}</div>'
