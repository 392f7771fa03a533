"""Draw changes, try each, say which no test noticed: `python -m tests.mutants --seed 14 --count 400`."""

import argparse
import datetime
import json
import os
import random
import subprocess
import sys
import time
from typing import Any

from tests.mutants import KEPT, ROOMS, ROOT, SCORE
from tests.mutants.changes import Change, all_changes
from tests.mutants.reach import Reach, kept, others
from tests.mutants.trial import Outcome, ended, start


def _reaches() -> tuple[Reach, Reach]:
    """What was found once; each in a process of its own, as it imports `calc`."""
    for what in ("requests", "tests"):
        subprocess.run([sys.executable, "-m", "tests.mutants.reach", what], cwd=ROOT, check=True, stdout=sys.stderr)

    def missing(*_: str) -> Reach:
        raise RuntimeError("the files changed while this ran")

    return kept("requests", missing), kept("tests", missing)


def drawn(seed: int, count: int, only: str) -> list[Change]:
    """So many changes, the same share of each room."""
    dice = random.Random(seed)
    rooms = {room: changes for room, changes in all_changes(only).items() if room in ROOMS}
    each = -(-count // max(1, len(rooms)))
    some = [change for room in sorted(rooms) for change in dice.sample(rooms[room], min(each, len(rooms[room])))]
    dice.shuffle(some)
    return some[:count]


def left_before(before: list[dict[str, Any]]) -> list[Change]:
    """Changes that were not noticed, found again though lines above them may have come or gone; those gone are left out."""
    rooms = all_changes().values()
    found: list[Change] = []
    for one in before:
        same = [c for room in rooms for c in room if (c.path, c.what) == (one["file"], one["change"])]
        here = int(one["line"])
        found += sorted(same, key=lambda change: abs(change.line - here))[:1]
    return found


def tried(changes: list[Change], workers: int, minutes: float) -> list[Outcome]:
    """The outcome of each change, or of those that were begun within so many minutes."""
    over = time.monotonic() + 60 * minutes
    asked, tests = _reaches()
    others()
    KEPT.mkdir(parents=True, exist_ok=True)
    outcomes: dict[int, Outcome] = {}
    running: dict[int, int] = {}
    waiting = list(enumerate(changes))[::-1]
    while waiting or running:
        if time.monotonic() > over:
            waiting.clear()
            if not running:
                break
        while waiting and len(running) < workers:
            number, change = waiting.pop()
            running[start(number, change, asked, tests)] = number
        child, status = os.wait()
        number = running.pop(child)
        outcomes[number] = outcome = ended(number, status)
        with (KEPT / "tried.jsonl").open("a", encoding="utf-8") as so_far:
            so_far.write(json.dumps([changes[number].path, changes[number].line, changes[number].what, vars(outcome)]) + "\n")
        if outcome.changes_answer and not outcome.noticed_by:
            change = changes[number]
            print(f"{change.path}:{change.line}: {change.what}\n    {outcome.answer}", flush=True)
    return [outcomes[number] for number in sorted(outcomes)]


def score(changes: list[Change], outcomes: list[Outcome]) -> dict[str, dict[str, int]]:
    """Noticed, and all that change an answer, by room."""
    table: dict[str, dict[str, int]] = {}
    for change, outcome in zip(changes, outcomes, strict=True):
        row = table.setdefault(change.room, {"drawn": 0, "changes_an_answer": 0, "noticed": 0})
        row["drawn"] += 1
        row["changes_an_answer"] += outcome.changes_answer
        row["noticed"] += outcome.changes_answer and bool(outcome.noticed_by)
    return {room: table[room] for room in ROOMS if room in table}


def main() -> None:
    """Draw, try, report."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--seed", type=int, default=int(time.time()) % 100_000)
    asked.add_argument("--count", type=int, default=400)
    asked.add_argument("--room", default="", help="only paths that begin so, such as calc/formulas")
    asked.add_argument("--minutes", type=float, default=600.0, help="begin none after so many")
    asked.add_argument("--workers", type=int, default=2)
    asked.add_argument("--again", action="store_true", help="try once more what the last run left unnoticed")
    asked.add_argument("--keep", action="store_true", help="keep the score for the page")
    told = asked.parse_args()
    before = json.loads((KEPT / "last.json").read_text(encoding="utf-8")) if told.again else None
    seed = before["seed"] if before else told.seed
    changes = left_before(before["not_noticed"]) if before else drawn(seed, told.count, told.room)
    outcomes = tried(changes, told.workers, told.minutes)
    changes = changes[: len(outcomes)]  # begun in this order
    table = score(changes, outcomes)
    if before:
        for change, outcome in zip(changes, outcomes, strict=True):
            row = before["rooms"][change.room]
            row["noticed"] += outcome.changes_answer and bool(outcome.noticed_by)
            row["changes_an_answer"] -= not outcome.changes_answer
        table = before["rooms"]
    for room, row in table.items():
        print(f"{room}: {row['noticed']} of {row['changes_an_answer']} noticed ({row['drawn']} drawn)")
    left = [
        {"file": c.path, "line": c.line, "change": c.what, "answer": o.answer}
        for c, o in zip(changes, outcomes, strict=True)
        if o.changes_answer and not o.noticed_by
    ]
    if before:
        tried_now = {(change.path, change.what) for change in changes}
        left += [one for one in before["not_noticed"] if (one["file"], one["change"]) not in tried_now]
    report = {"date": datetime.date.today().isoformat(), "seed": seed, "rooms": table, "not_noticed": left}
    text = json.dumps(report, ensure_ascii=False, indent=1) + "\n"
    (KEPT / "last.json").write_text(text, encoding="utf-8")
    if told.keep:
        SCORE.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
