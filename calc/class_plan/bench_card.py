"""A card for a bench: one exercise's settings, the first acts in an emergency, and a square code."""

from collections.abc import Mapping
from html import escape
from typing import Any
from urllib.parse import urlencode

from calc.answer.answering import told_alone
from calc.class_plan.exercises import Exercise, exercises
from calc.class_plan.first_acts import Emergency, emergencies
from calc.data.texts import filled_text
from calc.outfit.file import fill
from calc.release import RELEASE
from calc.show.answer import said as as_typed
from calc.show.square_code import square_code_svg

SHEET = "job-sheet"
SETTINGS = (
    "first", "shade_minimum", "shade_usual", "your_tip", "tip_orifice", "nearest_drill", "holes", "oxygen_gauge", "fuel_gauge",
    "purge_fuel_time", "purge_oxygen_time", "flame", "edges", "filler", "melting", "flux", "rod_diameter", "limit_temperature",
    "aim_temperature", "colour", "preheat", "clear_distance", "fire_watch",
)  # fmt: skip
"""Results of the job sheet that a bench needs, in the order of the work."""
OF_RODS = ("filler", "melting", "flux", "rod_diameter")
"""Those that mean nothing where no rod is fed."""
OUTFIT = ("metal", "thickness", "joint", "fuel", "torch_type", "hose_bore", "hose_length", "torch_drop", "maker_orifice",
          "maker_oxygen_gauge", "maker_acetylene_gauge", "diameter",
          "tube_inch", "tube_metric")  # fmt: skip
"""Inputs of the job sheet that say for which outfit and metal the card holds."""


def card_texts(
    exercise: str, rules: str, outfit: Mapping[str, str] | None
) -> tuple[dict[str, str], list[str]]:
    """What the job sheet is asked for a card, and what was taken of the outfit or was not.

    Args:
        exercise: Id of the exercise.
        rules: Rule set.
        outfit: What was typed in `my-outfit`, or None.
    """
    job = exercises(rules)[exercise].job
    if outfit is None:
        return job, []
    got = fill(SHEET, job, outfit)
    return job | got["texts"], [said for said in got["said"] if not said.startswith("From your outfit")]


def job_address(site: str, texts: Mapping[str, str]) -> str:
    """Address of the job sheet with values.

    Args:
        site: Address of the site's first page, where the job sheet stands.
        texts: Texts of the job sheet.

    Examples:
        >>> job_address("https://bench.example/", exercises("us")["tee"].job)[:46]
        'https://bench.example/?v=1&process=welding&met'
    """
    return f"{site}?{urlencode({'v': '1', **texts})}"


def card_html(exercise: str, rules: str, site: str = "", outfit: Mapping[str, str] | None = None) -> str:
    """The card of one exercise, on the two sides of one sheet: settings in front, first acts on the back.

    Args:
        exercise: Id of the exercise.
        rules: Rule set.
        site: Address of the site's first page; without one there is no square code.
        outfit: What was typed in `my-outfit`; without one the job sheet's own assumptions.

    Returns:
        HTML: hazards, settings and outfit, first acts, square code, release.
    """
    one = exercises(rules)[exercise]
    texts, said = card_texts(exercise, rules, outfit)
    got, _ = told_alone(SHEET, texts)
    return (
        f'<section class="bb-pack-page bb-card" data-sheet-page="card" data-card="{exercise}" data-card-rules="{rules}">'
        f"<h2>Bench card: {escape(one.title)}</h2>"
        f'<div class="bb-card-sheet">{_settings(got, one, said, _square(site, texts))}'
        f"{_acts(emergencies(rules), rules)}</div>"
        f'<p class="bb-release">Rule set: {escape(got["rules_name"])}. Release {escape(RELEASE)}. Your outfit’s '
        "instructions and your local rules come first. Figures of the job sheet, with their bands and sources there."
        "</p></section>"
    )


def _settings(got: dict[str, Any], one: Exercise, said: list[str], square: str) -> str:
    shown = [name for name in SETTINGS if name in got["results"] and (one.has_rod or name not in OF_RODS)]
    groups: dict[str, list[str]] = {}
    for name in shown:
        result = got["results"][name]
        band = f' <span class="bb-band">band {escape(result["band"])}</span>' if result["band"] else ""
        groups.setdefault(result["group"], []).append(
            f'<div data-card-figure="{name}"><dt>{escape(result["label"])}</dt>'
            f"<dd><b>{escape(result['text'])}</b>{band}</dd></div>"
        )
    lists = "".join(f"<h4>{escape(title)}</h4><dl>{''.join(rows)}</dl>" for title, rows in groups.items())
    inputs = got["inputs"]
    outfit = "".join(
        f"<li>{escape(inputs[name]['label'])}: {escape(as_typed(inputs[name]))}"
        f"{' (assumed)' if name in got['assumed'] else ''}</li>"
        for name in OUTFIT
        if name in inputs
    )
    outfit += "".join(f"<li>{escape(line)}</li>" for line in said)
    rod = "" if one.has_rod else "<p>No rod in this exercise.</p>"
    cautions = "".join(f"<p><b>{c['signal']}</b> {escape(c['text'])}</p>" for c in got["cautions"])
    return (
        f'<div class="bb-card-settings"><div class="bb-card-hazards">{cautions}</div>'
        f"<h3>Today’s settings</h3>{lists}{rod}<h4>For this outfit and metal</h4><ul>{outfit}</ul>{square}</div>"
    )


def _acts(emergencies_: tuple[Emergency, ...], rules: str) -> str:
    boxes = "".join(_emergency(one) for one in emergencies_)
    call = filled_text("Fire service or ambulance: {emergency-number}.", rules)
    return (
        f'<div class="bb-card-acts"><h3>First acts in an emergency</h3><p><b>{escape(call)}</b> In this order, '
        f"then the rest of the page of that name.</p>{boxes}</div>"
    )


def _emergency(one: Emergency) -> str:
    lines, before = [], ""
    for line in one.lines:
        if line.signal:
            before = f'<p class="bb-card-hazard"><b>{line.signal}</b> {escape(line.text)}</p>'
        else:
            lines.append(f'<li>{before}<p class="bb-card-act">{escape(line.text)}</p></li>')
            before = ""
    seen = "" if one.seen == one.title else f" {escape(one.seen)}"
    return (
        f'<div data-first-acts="{one.page}"><h4>{escape(one.title)}</h4>'
        f'<p class="bb-card-seen">{seen.strip()}</p><ol>{"".join(lines)}</ol></div>'
    )


def _square(site: str, texts: Mapping[str, str]) -> str:
    if not site:
        return "<p data-no-print>The square code of the job sheet stands here when the sheet is made.</p>"
    address = job_address(site, texts)
    return (
        f'<figure class="bb-card-code" data-card-code>{square_code_svg(address)}<figcaption>Opens the job sheet with '
        f'these values: <span class="bb-address">{escape(address)}</span></figcaption></figure>'
    )
