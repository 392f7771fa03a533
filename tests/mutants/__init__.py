"""Small changes of the code and of the tables, to see whether a test notices: `python -m tests.mutants`.

`changes` makes them, `reach` knows which requests and which tests come by each
line, `trial` tries one in a process of its own, `figures` turns shown figures
wrong one at a time, `__main__` draws, reports and keeps the score.

Kept libraries change one file and run a whole suite, or copy the tree for each
change: with 9,000 tests that is minutes a change. Here a child process takes
under five seconds: third-party packages are imported already, and only what
comes by the changed line is asked.
"""

from pathlib import Path

ROOT = Path(__file__).parents[2]
KEPT = ROOT / ".build" / "mutants"
"""What was found out once: what reaches which line."""
SCORE = Path(__file__).parent / "score.json"
"""The last score, with its date and seed; *How this is checked* prints it."""
ROOMS = ("formulas", "trade", "calculators", "job_sheet", "class_plan", "data", "show", "practice", "calc")
TESTS = ("tests/published", "tests/reference", "tests/properties", "tests/pages", "calc")


def room(path: str) -> str:
    """Room of a file, by its path from the root; `calc` for what stands in none.

    Examples:
        >>> room("calc/formulas/gas/leak.py"), room("calc/ask/inputs.py")
        ('formulas', 'calc')
    """
    second = path.split("/")[1]
    return second if second in ROOMS else "calc"
