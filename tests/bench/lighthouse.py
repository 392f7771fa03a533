"""Lighthouse on its phone profile, on a page of each type."""

import json
import os
import subprocess
import tempfile
from pathlib import Path
from statistics import median

from site_overrides.build.node import node, node_modules
from tests.bench.browsing import program
from tests.bench.server import served
from tests.bench.table import Row
from tests.bench.visits import host

HERE = Path(__file__).parent
TYPES = {
    "home with its job sheet": "",
    "procedure": "set-up/light/",
    "calculator": "before/oxygen-left/",
    "table": "tables/cylinders/",
    "emergency": "trouble/hot-cylinder/",
    "form": "class/permit/",
    "text": "before/why-acetylene-is-different/",
}
GOALS = {"performance": 95, "accessibility": 100, "best-practices": 100, "seo": 100}
MOST_ROUNDS = 3
FLAGS = "--headless=new --no-sandbox --disable-gpu"


def scores(address: str) -> tuple[dict[str, float], list[str]]:
    """Score of each category from 0 to 100, and the audits that cost points."""
    command = node_modules(HERE) / "lighthouse" / "cli" / "index.js"
    with tempfile.TemporaryDirectory() as folder:
        told = Path(folder) / "told.json"
        subprocess.run(
            node(command, address, "--quiet", "--output=json", f"--output-path={told}",
                 f"--only-categories={','.join(GOALS)}", f"--chrome-flags={FLAGS}"),
            check=True, env={**os.environ, "CHROME_PATH": program()}, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        found = json.loads(told.read_text(encoding="utf-8"))
    lost = [
        f"{name}: {found['audits'][each['id']]['title']} {found['audits'][each['id']].get('displayValue', '')}"
        for name, category in found["categories"].items()
        for each in category["auditRefs"]
        if each["weight"] and (found["audits"][each["id"]]["score"] or 0) < 0.9
        and found["audits"][each["id"]]["score"] is not None
    ]  # fmt: skip
    return {name: 100 * (each["score"] or 0) for name, each in found["categories"].items()}, lost


def rows(_: Path, rounds: int) -> list[Row]:
    """Rows of all types, medians of so many rounds, but no more than three; what costs points is printed."""
    found = []
    site, port = host()
    with served(site, port) as address:
        for kind, path in TYPES.items():
            rounds_of_it = [scores(address + path) for _ in range(min(rounds, MOST_ROUNDS))]
            for category, goal in GOALS.items():
                middle = median(each[category] for each, _ in rounds_of_it)
                found.append(Row(f"Lighthouse, {kind}: {category}", None, middle, goal, at_least=True))
            for lost in rounds_of_it[-1][1]:
                print(f"{kind}: {lost}")
    return found
