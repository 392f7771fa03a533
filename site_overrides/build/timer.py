"""A timer that takes its length from a calculator on the page.

The script makes face and buttons; what must be read without one stands here.
"""

from html import escape

from calc.declare.catalogue import calculators

RESULTS = ("watch", "later", "every")


def timer_html(calculator_id: str, title: str, results: dict[str, str]) -> str:
    """A timer as HTML.

    Args:
        calculator_id: The calculator whose results it counts.
        title: Its heading.
        results: Result for `watch`, and for `later` and `every`.

    Returns:
        HTML with the hook data-timer.

    Raises:
        ValueError: A result is missing, unknown or no time.
    """
    if calculator_id not in calculators():
        raise ValueError(f"there is no calculator {calculator_id}")
    known = calculators()[calculator_id].results
    if set(results) != set(RESULTS):
        raise ValueError(f"name a result for each of {RESULTS}")
    for name in results.values():
        if name not in known or "min" not in known[name].units:
            raise ValueError(f"{calculator_id} has no time {name!r}")
    hooks = "".join(f' data-{part}="{name}"' for part, name in results.items())
    mark = f"{calculator_id}-timer"
    return (
        f'<section class="bb-timer" id="{mark}" data-timer="off" data-of="{calculator_id}"{hooks} '
        f'aria-labelledby="{mark}-title"><h2 id="{mark}-title">{escape(title)}</h2>'
        "<p><b>Set your phone’s own timer too.</b> A page on a locked phone falls asleep, and no page can "
        "promise an alarm.</p>"
        "<p data-by-hand>Without its script this page cannot count. Write the time of the last flame where "
        "all can see it, add the watch of the answer above, and watch until then by a clock.</p></section>"
    )
