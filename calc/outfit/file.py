"""A reader's outfit: a file of texts, and what of it goes into the fields of a calculator.

An outfit is what was typed in the calculator `my-outfit`, word for word. Nothing in
it is trusted: every text goes through the same readers as if it had been typed anew.
"""

import json
import sys
from collections.abc import Callable, Mapping
from typing import Any

from calc.answer.answering import computed, found
from calc.answer.sentences import distance
from calc.ask.errors import InputError
from calc.ask.inputs import as_printed, rules_of, taken_input
from calc.ask.reading import LONGEST
from calc.declare import Asked, Calculator, Choice, Day, by_rules
from calc.formulas.setup.drills import nearest_drill
from calc.trade.tips.owned import FITS, USES, Tip, nearest_tip, tips_of, wanted_orifice
from calc.values.figures import Figure

OUTFIT = "my-outfit"
"""The calculator whose texts an outfit is."""
KIND = "oxyfuel-benchbook-outfit"
VERSION = 1
LONGEST_FILE = 20_000
"""Characters; a full outfit has a tenth of it."""
NOT_YET = "By the page My outfit nothing is lit with it yet: see there what comes first."
NO_OUTFIT = "it is no outfit that this site saved; nothing is changed."

TIP_FIELDS = {
    "maker_orifice": "orifice",
    "maker_oxygen_gauge": "oxygen_gauge",
    "maker_acetylene_gauge": "fuel_gauge",
    "maker_fuel_gauge": "fuel_gauge",
    "tip_label": "label",
}
"""Inputs that the chosen tip fills, and what of the tip."""


def takes_outfit(calculator: Calculator) -> bool:
    """Whether an outfit can fill any input of a calculator."""
    keyed = any(asked.outfit for asked in calculator.inputs.values())
    return calculator.id != OUTFIT and (keyed or "maker_orifice" in calculator.inputs)


def outfit_file(texts: Mapping[str, str]) -> str:
    """Text of the file that keeps an outfit; the day of today is not kept.

    Args:
        texts: What was typed in `my-outfit`, `rules` among it.

    Raises:
        InputError: Something in it cannot be used.
    """
    calculator = found(OUTFIT)
    computed(calculator, texts)
    kept = {
        name: texts[name] for name, asked in calculator.inputs.items() if name in texts and _lasts(asked)
    }
    return json.dumps({"kind": KIND, "version": VERSION, "texts": kept}, ensure_ascii=False, indent=1)


def outfit_texts(file: str, rules: str) -> dict[str, str]:
    """What was typed, out of the text of a file, each held against its declaration.

    Args:
        file: Text of the file, from anywhere.
        rules: Rule set to hold it against.

    Raises:
        InputError: It is no such file, or has in it what cannot be used; one sentence.
    """
    texts = unchecked_texts(file)
    try:
        computed(found(OUTFIT), texts | {"rules": rules})
    except InputError as error:
        raise InputError("file", "The file", error.message) from None
    return texts


def unchecked_texts(file: str) -> dict[str, str]:
    """What was typed, out of the text of a file that has the form of an outfit.

    Args:
        file: Text of the file, from anywhere.

    Raises:
        InputError: It has not that form.
    """
    # Brackets inside brackets could exhaust the memory of the one who reads them.
    if not isinstance(file, str) or len(file) > LONGEST_FILE or file.count("[") + file.count("{") > 100:
        raise InputError("file", "The file", NO_OUTFIT)
    try:
        read = json.loads(file)
    except (ValueError, RecursionError):
        raise InputError("file", "The file", NO_OUTFIT) from None
    texts = read.get("texts") if isinstance(read, dict) and read.get("kind") == KIND else None
    if not isinstance(texts, dict):
        raise InputError("file", "The file", NO_OUTFIT)
    if read.get("version") != VERSION:
        version = str(read.get("version"))[:20]
        raise InputError(
            "file",
            "The file",
            f"it has the form “{version}”, which this release does not know; nothing is changed.",
        )
    lasting = {name for name, asked in found(OUTFIT).inputs.items() if _lasts(asked)}
    for name, text in texts.items():
        if name not in lasting:
            raise InputError(
                "file", "The file", f"it names “{name[:40]}”, which is not asked; nothing is changed."
            )
        if not isinstance(text, str):
            raise InputError("file", "The file", NO_OUTFIT)
    return {name: text for name, text in texts.items() if text.strip()}


def _lasts(asked: Asked) -> bool:
    return not (isinstance(asked, Day) and asked.today)


def fill(calculator_id: str, texts: Mapping[str, Any], outfit: Mapping[str, Any]) -> dict[str, Any]:
    """What of an outfit goes into the fields of a calculator.

    Args:
        calculator_id: Id of the calculator.
        texts: What stands in its form now.
        outfit: What was typed in `my-outfit`.

    Returns:
        `texts`, by input, as typed in the outfit; `said`, sentences on what was
        taken and what was not. Texts that the calculator will refuse are given
        all the same, so that the reader sees them beside their field.

    Raises:
        InputError: There is no such calculator, or no such rule set.
    """
    calculator = found(calculator_id)
    present = {str(name): text for name, text in texts.items() if isinstance(text, str)}
    rules = rules_of(present)
    known = found(OUTFIT).inputs
    mine = {
        name: outfit[name].strip()
        for name in known
        if isinstance(outfit.get(name), str) and 0 < len(outfit[name].strip()) <= LONGEST
    }
    read = _readable(found(OUTFIT), mine, rules)
    said: list[str] = []
    taken = _keyed(calculator, present, mine, rules, said)
    names = [
        f"{calculator.inputs[name].label}: {_printed(calculator.inputs[name], text)}"
        for name, text in taken.items()
    ]
    given = _readable(calculator, present | taken, rules)
    if "maker_orifice" in calculator.inputs and calculator.asks("maker_orifice", given):
        tip = _chosen_tip(
            calculator=calculator,
            given=given,
            tips=tips_of(read),
            torch_type=read.get("torch_type", ""),
            rules=rules,
            said=said,
        )
        if tip is not None:
            own = read.get("fuel", "acetylene")
            taken |= _of_tip(calculator=calculator, tip=tip, given=given, mine=mine, own=own, said=said)
            names.append(f"Tip: {tip.name}, hole {mine[f'tip_{tip.number}_orifice']}")
    if names:
        said.insert(0, f"From your outfit: {'; '.join(names)}.")
        if read.get("flashback") not in ("none", "checked") or read.get("history") != "known":
            said.insert(0, NOT_YET)
    elif not said:
        said.append("Your outfit has nothing that is asked here.")
    return {"texts": taken, "said": said}


def _printed(asked: Asked, text: str) -> str:
    return asked.options.get(text, text) if isinstance(asked, Choice) else as_printed(text)


def _keyed(
    calculator: Calculator, present: Mapping[str, str], mine: Mapping[str, str], rules: str, said: list[str]
) -> dict[str, str]:
    """Texts for the inputs that name one of the outfit, choices first."""
    taken: dict[str, str] = {}
    order = sorted(calculator.inputs, key=lambda name: not isinstance(calculator.inputs[name], Choice))
    for name in order:
        asked = calculator.inputs[name]
        if asked.outfit not in mine:
            continue
        given = _readable(calculator, dict(present) | taken, rules)
        if not calculator.asks(name, given):
            continue
        if asked.outfit.startswith("acetylene_") and given.get("fuel", "acetylene") != "acetylene":
            continue
        text = mine[asked.outfit]
        if isinstance(asked, Choice) and text not in asked.options:
            said.append(f"{asked.label}: that of your outfit is not among those asked here.")
            continue
        taken[name] = text
    return {name: taken[name] for name in calculator.inputs if name in taken}


def _readable(calculator: Calculator, texts: Mapping[str, str], rules: str) -> dict[str, Any]:
    """Inputs in SI as far as they can be read; what is assumed stands for what is left out."""
    given: dict[str, Any] = {}
    order = sorted(calculator.inputs, key=lambda name: not isinstance(calculator.inputs[name], Choice))
    for name in order:
        asked = calculator.inputs[name]
        text = texts.get(name) or (None if asked.assumed is None else by_rules(asked.assumed, rules))
        if text is None or not calculator.asks(name, given):
            continue
        try:
            given[name] = taken_input(name, asked, text, rules, str(given.get("metal", ""))).si
        except InputError:
            continue
    return given


def _wanted(calculator: Calculator, given: Mapping[str, Any]) -> tuple[str, Figure]:
    """The process whose tips fit, and the hole wanted, by the calculator's own word if it has one.

    A calculator whose tip does not follow from `process` and `thickness` has in its
    module a function `wanted_tip(given)`: the inputs in SI as far as they can
    be read, to the id of the process and the hole as a Figure. It raises ValueError
    with a clause for the reader where there is none.
    """
    own: Callable[..., tuple[str, Figure]] | None = getattr(
        sys.modules[calculator.function.__module__], "wanted_tip", None
    )
    if own is not None:
        return own(given)
    if "thickness" not in given:
        raise ValueError("give the thickness first")
    process = str(given.get("process", "welding"))
    return process, wanted_orifice(process, given["thickness"])


def _chosen_tip(
    *,
    calculator: Calculator,
    given: Mapping[str, Any],
    tips: tuple[Tip, ...],
    torch_type: str,
    rules: str,
    said: list[str],
) -> Tip | None:
    if not tips:
        said.append("No tip is taken: your outfit names none.")
        return None
    try:
        process, wanted = _wanted(calculator, given)
    except ValueError as error:
        said.append(f"No tip is taken: {error}.".replace("..", "."))
        return None
    if process != "cutting" and "injector" in (torch_type, given.get("torch_type")):
        said.append("No tip is taken: an injector torch is set by its insert, as its maker prints.")
        return None
    tip = nearest_tip(tips, process, wanted)
    if tip is None:
        said.append(_lacking(tips, process, wanted, rules))
    return tip


def _lacking(tips: tuple[Tip, ...], process: str, wanted: Figure, rules: str) -> str:
    value = wanted.value or 0.0
    size = f"{distance(value, rules, 3)}, number drill {nearest_drill(value).drill}"
    low, high = wanted.low or value, wanted.high or value
    band = "" if low == high else f", in print {distance(low, rules, 3)} to {distance(high, rules, 3)}"
    kinds = " or ".join(USES[use].lower() for use in FITS.get(process, ()))
    fit = [tip for tip in tips if tip.use in FITS.get(process, ()) and tip.orifice is not None]
    nearest = min(fit, key=lambda tip: abs((tip.orifice or 0.0) - value), default=None)
    yours = (
        ""
        if nearest is None
        else f"; the nearest you have is {nearest.name}, {distance(nearest.orifice or 0.0, rules, 3)}"
    )
    return f"No tip is taken: you have none for {kinds} with the hole wanted here ({size}{band}){yours}."


def _of_tip(
    *,
    calculator: Calculator,
    tip: Tip,
    given: Mapping[str, Any],
    mine: Mapping[str, str],
    own: str,
    said: list[str],
) -> dict[str, str]:
    """Texts of the chosen tip; a fuel pressure only where it is of the fuel that is used."""
    taken = {}
    fuel = given.get("fuel", "acetylene")
    for name, part in TIP_FIELDS.items():
        text = mine.get(f"tip_{tip.number}_{part}")
        if text is None or name not in calculator.inputs or not calculator.asks(name, given):
            continue
        if part == "fuel_gauge" and own != ("acetylene" if name == "maker_acetylene_gauge" else fuel):
            said.append(f"The fuel pressure of {tip.name} is of another gas and is left out.")
            continue
        taken[name] = text
    return taken
