"""The form of a calculator, made from its declaration, with an answer in it."""

import json
from collections.abc import Mapping
from html import escape

from calc.answer.answering import answer, found
from calc.ask.inputs import RULES, SHOWN_IN, rules_of
from calc.ask.reading import typed
from calc.declare import OUTFIT, RULE_SETS, Asked, ByRules, Calculator, Choice, Day, Field, Words, by_rules
from calc.show.answer import answer_html
from calc.values.units import written

LENGTH_UNITS = ("in", "mm")


def _hint(asked: Asked) -> str:
    parts = [asked.hint] if asked.hint else []
    if asked.assumed is not None:
        if isinstance(asked, Choice):
            words = {r: asked.options[by_rules(asked.assumed, r)] for r in RULE_SETS}
        elif isinstance(asked, Words | Day):
            words = {r: by_rules(asked.assumed, r) for r in RULE_SETS}
        else:
            words = {r: _printed(by_rules(asked.assumed, r), asked) for r in RULE_SETS}
        if len(set(words.values())) == 1:
            parts.append(f"Left empty: {words['us']}.")
        else:
            parts.append("Left empty: " + "; ".join(f"{words[r]} ({RULE_SETS[r]})" for r in words) + ".")
    elif asked.optional and not asked.group:
        parts.append("May stay empty.")
    return " ".join(parts)


def _printed(text: str, field: Field) -> str:
    got = typed(text)
    if got.unit in field.units:
        number = text[: len(text) - len(got.unit)].strip() if got.unit else text
        return f"{number} {written(got.unit)}".strip()
    return text


def _split(text: str, field: Field) -> tuple[str, str]:
    """A text as the entry shows it: what stands in the box, and the unit chosen."""
    if not text:
        return "", field.units[0]
    got = typed(text)
    if got.unit in field.units and text.endswith(got.unit):
        return text[: len(text) - len(got.unit)].strip() if got.unit else text, got.unit
    return text, got.unit if got.unit in field.units else field.units[0]


def _example_hooks(asked: Asked, text: str, own: ByRules | None) -> str:
    """What the page script puts into the box when the examples or the rule set change.

    `own` is the text that the page gives in place of the declared example; by rule set, it follows that.
    """
    if isinstance(own, Mapping):
        example: ByRules = own
    elif asked.example is None:
        return ""
    else:
        example = asked.example if own is None or own == by_rules(asked.example, "us") else own
    hooks = f' data-example="{escape(text)}"'
    if isinstance(example, Mapping) and text == example["us"]:
        hooks += "".join(f' data-example-{r}="{escape(example[r])}"' for r in RULE_SETS)
    return hooks


def _entry(block: str, name: str, asked: Asked, text: str, own: ByRules | None) -> str:
    mark = f"{block}-{name}"
    described = f'aria-describedby="{mark}-hint {mark}-error"'
    may_stay_empty = asked.assumed is not None or asked.optional
    assumed = by_rules(asked.assumed or "", "us") if isinstance(asked, Choice) else ""
    hooks = f' data-assumed="{escape(assumed)}"' if may_stay_empty else ""
    hooks += _example_hooks(asked, text, own)
    if isinstance(asked, Choice):
        left = "(not chosen)" if asked.optional else "(leave to be assumed)"
        empty = f'<option value="">{left}</option>' if asked.example is None else ""
        options = empty + "".join(
            f'<option value="{escape(key)}"{" selected" if key == text else ""}>{escape(words)}</option>'
            for key, words in asked.options.items()
        )
        return f'<select id="{mark}" name="{name}" {described}{hooks}>{options}</select>'
    if isinstance(asked, Words):
        return (
            f'<input id="{mark}" name="{name}" type="text" maxlength="{asked.longest}" autocomplete="off" '
            f'value="{escape(text)}" {described}{hooks}>'
        )
    if isinstance(asked, Day):
        own = " data-today" if asked.today else ""
        return (
            f'<input id="{mark}" name="{name}" type="date" min="{asked.earliest}" max="{asked.latest}" '
            f'value="{escape(text)}"{own} {described}{hooks}>'
        )
    number, unit = _split(text, asked)
    words = asked.sheet_gauge or asked.drill or asked.units == LENGTH_UNITS
    negative = asked.low is not None and by_rules(asked.low, "us").startswith("-")
    mode = "text" if words or negative else "decimal"
    box = (
        f'<input id="{mark}" name="{name}" type="text" inputmode="{mode}" autocomplete="off" '
        f'value="{escape(number)}" {described}{hooks}>'
    )
    if asked.units == ("",):
        return box
    options = "".join(
        f'<option value="{escape(u)}"{" selected" if u == unit else ""}>{escape(written(u))}</option>'
        for u in asked.units
    )
    return (
        f'{box}<select name="{name}-unit" data-unit aria-label="Unit of {escape(asked.label)}">'
        f"{options}</select>"
    )


def _field(
    block: str,
    name: str,
    asked: Asked,
    text: str,
    own: ByRules | None = None,
    *,
    is_asked: bool = True,
) -> str:
    mark = f"{block}-{name}"
    waits = "" if asked.when is None else f' data-when="{escape(json.dumps(asked.when))}"'
    waits += "" if is_asked else " hidden"
    counted = ""
    if isinstance(asked, Field) and asked.free_gas:
        counted = " (ft³ counted at 70 °F, litres and m³ at 15 °C)"
    units = ""
    if isinstance(asked, Field) and asked.units != ("",):
        units = f' <span class="bb-units">({escape(", ".join(written(u) for u in asked.units))})</span>'
    return (
        f'<div class="bb-field" data-field="{name}"{waits}><label for="{mark}">{escape(asked.label)}'
        f"{units}{counted}</label>"
        f'<p class="bb-hint" id="{mark}-hint">{escape(_hint(asked))}</p>'
        f'<div class="bb-entry">{_entry(block, name, asked, text, own)}</div>'
        f'<p class="bb-error" id="{mark}-error" data-error hidden></p></div>'
    )


def _fields(
    calculator: Calculator, block: str, texts: Mapping[str, ByRules], rules: str
) -> tuple[str, str]:
    """What is asked first, and the folds: one for each group, and one for what is assumed."""
    asked_first: list[str] = []
    folds: dict[str, list[str]] = {}
    chosen: dict[str, object] = {}
    has_examples = any(asked.example is not None for asked in calculator.inputs.values())
    for name, asked in calculator.inputs.items():
        example = by_rules(asked.example, "us") if asked.example is not None else ""
        text = by_rules(texts.get(name, example), rules)
        is_asked = calculator.asks(name, chosen)
        if isinstance(asked, Choice) and is_asked:
            chosen[name] = text or by_rules(asked.assumed or "", "us")
        line = _field(block, name, asked, text, texts.get(name), is_asked=is_asked)
        stands_first = asked.example is not None or name in texts or not has_examples
        lines = asked_first if stands_first and not asked.group else folds.setdefault(asked.group, [])
        lines.append(line)
    assumed = folds.pop("", [])
    if assumed:
        folds["What is assumed: give yours"] = assumed
    return "".join(asked_first), "".join(
        f'<details class="bb-assumed"><summary>{escape(heading)}</summary>{"".join(lines)}</details>'
        for heading, lines in folds.items()
    )


def block(calculator_id: str, texts: Mapping[str, ByRules] | None = None) -> str:
    """Form and example answer of a calculator, whole and readable without a script.

    Args:
        calculator_id: Id of the calculator.
        texts: Example texts that replace the declared ones, by input name; each one text,
            or one for each rule set, which the box then follows.

    Returns:
        HTML of the whole block.

    Raises:
        InputError: The example texts cannot be used; the build must stop.
    """
    calculator = found(calculator_id)
    own = dict(texts or {})
    rules = rules_of({"rules": by_rules(own.get("rules", "us"), "us")})
    given = {name: by_rules(text, rules) for name, text in own.items()}
    examples = {
        name: by_rules(asked.example, rules)
        for name, asked in calculator.inputs.items()
        if asked.example is not None
    }
    got = answer(calculator_id, units=None, drawings=True, **(examples | given))
    mark = f"{calculator_id}-form"
    asked_first, folds = _fields(calculator, mark, own, rules)
    note = (
        '<p class="bb-example" data-example-note>The values below are examples, not advice.</p>'
        if examples or given
        else ""
    )
    rule_options = "".join(
        f'<option value="{key}"{" selected" if key == rules else ""}>{escape(words)}</option>'
        for key, words in RULE_SETS.items()
    )
    title = escape(calculator.title)
    part = "keep" if calculator_id == OUTFIT else "use" if calculator.takes_outfit else ""
    outfit = f' data-outfit="{part}"' if part else ""
    return (
        f'<section class="bb-calculator" id="{calculator_id}" data-calculator="{calculator_id}"{outfit} '
        f'aria-label="{title}"><h2 class="bb-title">{title}</h2>'
        f'<p class="bb-about">{escape(calculator.about)}</p>'
        f'<form data-form novalidate method="get" autocomplete="off">'
        f'{note}<div class="bb-field" data-field="rules"><label for="{mark}-rules">{RULES.label}</label>'
        f'<div class="bb-entry"><select id="{mark}-rules" name="rules" data-rules-choice '
        f'aria-describedby="{mark}-rules-error">{rule_options}</select></div>'
        f'<p class="bb-error" id="{mark}-rules-error" data-error hidden></p></div>'
        f"{_field(mark, 'shown_in', SHOWN_IN, given.get('shown_in', ''))}{asked_first}{folds}"
        f'<button type="submit" class="bb-primary">Calculate</button>'
        f'<p class="bb-engine" data-engine role="status"></p></form>'
        f'<div class="bb-answer" data-answer>{answer_html(got)}</div>'
        f'<div class="bb-tools" data-tools></div></section>'
    )
