"""Blocks of the class pages that a script fills: kept lessons, and the pack of an evening."""

from html import escape

from calc.class_plan.bench_card import card_html
from calc.class_plan.exercises import titles
from calc.class_plan.pack import MOST_LEARNERS, PARTS
from calc.declare import RULE_SETS
from calc.declare.catalogue import calculators


def log_html(calculator_id: str, title: str) -> str:
    """A place for lessons that are kept on the reader's device.

    Args:
        calculator_id: The calculator whose values are kept.
        title: Its heading.

    Returns:
        HTML with the hook data-log.

    Raises:
        ValueError: There is no such calculator.
    """
    if calculator_id not in calculators():
        raise ValueError(f"there is no calculator {calculator_id}")
    mark = f"{calculator_id}-log"
    return (
        f'<section class="bb-log" id="{mark}" data-log="{calculator_id}" aria-labelledby="{mark}-title">'
        f'<h2 id="{mark}-title">{escape(title)}</h2>'
        "<p data-no-print>What you keep stays in this browser, on this device. It is sent to nobody. Whoever uses "
        "this browser can read it.</p>"
        "<p data-by-hand>Without its script this page keeps nothing: write the figures on paper.</p></section>"
    )


def _tick(name: str, value: str, words: str, hook: str, *, ticked: bool) -> str:
    return (
        f'<label class="bb-pick"><input type="checkbox" name="{name}" value="{value}" autocomplete="off" {hook}'
        f"{' checked' if ticked else ''}><span>{escape(words)}</span></label>"
    )


def _box(mark: str, name: str, label: str, hint: str, *, value: str = "", mode: str = "text") -> str:
    return (
        f'<div class="bb-field"><label for="{mark}-{name}">{escape(label)}</label>'
        f'<p class="bb-hint" id="{mark}-{name}-hint">{escape(hint)}</p><div class="bb-entry">'
        f'<input id="{mark}-{name}" name="{name}" type="text" inputmode="{mode}" autocomplete="off" value="{value}" '
        f'aria-describedby="{mark}-{name}-hint" data-{name}></div></div>'
    )


def pack_form_html(exercise: str, title: str) -> str:
    """The choice of sheets for an evening, and the card of one exercise as example.

    Args:
        exercise: Exercise of the example.
        title: Its heading.

    Returns:
        HTML with the hooks data-pack, data-pack-form, data-pack-sheets and those of the choices.

    Raises:
        ValueError: There is no such exercise.
    """
    if exercise not in titles():
        raise ValueError(f"there is no exercise {exercise}")
    mark = "pack"
    rules = "".join(f'<option value="{key}">{escape(words)}</option>' for key, words in RULE_SETS.items())
    exercises = "".join(
        _tick("exercise", key, words, "data-exercise", ticked=key == exercise)
        for key, words in titles().items()
    )
    parts = "".join(_tick("part", key, words, "data-part", ticked=True) for key, words in PARTS.items())
    return (
        f'<section class="bb-pack" data-pack aria-labelledby="{mark}-title"><div data-no-print>'
        f'<h2 id="{mark}-title">{escape(title)}</h2>'
        "<p data-by-hand>Without its script this page shows the card of one exercise alone.</p>"
        f'<form data-pack-form novalidate autocomplete="off" hidden>'
        f'<div class="bb-field"><label for="{mark}-rules">Rule set</label><div class="bb-entry">'
        f'<select id="{mark}-rules" name="rules" data-rules-choice>{rules}</select></div></div>'
        f"{_box(mark, 'plan-link', 'Link of your class plan', 'Paste it, and its values fill what follows. May stay empty.')}"
        f'<fieldset class="bb-picks"><legend>Exercises</legend>{exercises}</fieldset>'
        f"{_box(mark, 'learners', 'Learners', f'A line for each on the score sheets: 1 to {MOST_LEARNERS}.', value='12', mode='numeric')}"
        f"{_box(mark, 'benches', 'Benches', 'For the cover. May stay empty.', value='6', mode='numeric')}"
        f'<fieldset class="bb-picks"><legend>Sheets</legend>{parts}</fieldset>'
        '<div data-own-outfit hidden>'
        f'{_tick("own-outfit", "yes", "Cards for the outfit kept on this phone", "data-own", ticked=True)}</div>'
        '<fieldset class="bb-picks"><legend>Pages handed out</legend>'
        f'<div class="bb-field"><label for="{mark}-page">A page of this site</label><div class="bb-entry">'
        f'<select id="{mark}-page" data-page-choice></select></div></div><div data-add-page></div>'
        f"{_box(mark, 'page-link', 'A link with values', 'As Copy link gives it. Its answer is worked out anew for the paper.')}"
        "<div data-add-link></div><ol data-handouts></ol></fieldset>"
        '<button type="submit" class="bb-primary">Make the sheets</button>'
        '<p class="bb-engine" data-pack-said role="status"></p><div class="bb-tools" data-pack-tools></div></form></div>'
        f'<div class="bb-pack-sheets" data-pack-sheets>{card_html(exercise, "us")}</div></section>'
    )
