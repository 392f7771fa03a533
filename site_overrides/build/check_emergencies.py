"""What an emergency page must keep on top of the rest: one order, no choice, no figure typed.

Each check returns sentences, none when the page keeps it.
"""

import re

from site_overrides.build.check_pages import DOCS, Page, procedures

TROUBLE = DOCS / "trouble"
NOT_EMERGENCIES = ("index.md", "finder.md", "never.md", "popping-and-starving.md")
"""Pages of the same folder that help to find, teach or prevent."""

EMERGENCIES = tuple(p for p in sorted(TROUBLE.glob("*.md")) if p.name not in NOT_EMERGENCIES)

_CHOICE = re.compile(
    r"\b(?:or|either|alternatively|depending|prefer\w*|rather|instead"
    r"|some (?:say|books|texts)|others? say)\b",
    re.IGNORECASE,
)
_BRACED = re.compile(r"\{[a-z][a-z0-9-]*\}")
_COUNTED = re.compile(
    r"\d|\b(?:half an?|two|three|four|five|six|eight|ten|twelve|fifteen|twenty|thirty|sixty|hundred)\s+"
    r"(?:psi|bar|feet|met(?:er|re)s?|minutes?|seconds?|hours?|days?|turns?|inch(?:es)?|degrees?|percent)\b",
    re.IGNORECASE,
)


def order_problems(page: Page) -> list[str]:
    """One procedure, acted first and confirmed after; no step leaves a choice of order."""
    made = procedures(page)
    if len(made) != 1:
        return [f"{len(made)} procedures; an emergency page has one"]
    said = [] if made[0].kind == "do-then-confirm" else [f"its kind is {made[0].kind}"]
    steps = [step for pause in made[0].pauses for step in pause.steps]
    said += [f"step {s.id} is for some readers only" for s in steps if s.only]
    return said + [f"step {s.id} says “{f[0]}”" for s in steps for f in _CHOICE.finditer(s.do)]


def engine_problems(page: Page) -> list[str]:
    """Nothing on the page waits for the engine."""
    return ["a calculator stands on it" for kind, _ in page.fences if kind == "calculator"]


def counted_problems(page: Page) -> list[str]:
    """No figure is typed in a step, not even in words: each is filled from a table. For every page."""
    said = []
    for made in procedures(page):
        for step in (step for pause in made.pauses for step in pause.steps):
            texts = [step.do, step.want, step.only]
            found = (f for text in texts for f in _COUNTED.finditer(_BRACED.sub("", text)))
            said += [f"step {step.id} types “{f[0]}”" for f in found]
    return said
