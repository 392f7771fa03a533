"""`python -m tests.bench`: one table of start-up, visits, answers and Lighthouse, beside stock.

Medians, and nothing is asserted: each goal stands beside its figure. The site must be
built for an address on this machine (`make site`), whose port is free. Each part keeps
its figures in `.build/bench/`, so that the parts may run one after the other.
"""

import argparse
from collections.abc import Callable
from pathlib import Path

from site_overrides.build import bundle
from tests.bench import engines, lighthouse, visits
from tests.bench.table import Row, keep, keep_rows, kept_rows, table

PARTS: dict[str, Callable[[Path, int], list[Row]]] = {
    "start": engines.start_rows,
    "pages": visits.rows,
    "lighthouse": lighthouse.rows,
    "answers": engines.answer_rows,
}


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench")
    parser.add_argument("--rounds", type=int, default=7, help="visits of each kind")
    parser.add_argument("--only", default=",".join(PARTS), help=f"some of {','.join(PARTS)}")
    parser.add_argument("--keep", action="store_true", help="write the table on How this is checked")
    words = parser.parse_args()
    wanted = words.only.split(",")
    if unknown := set(wanted) - set(PARTS):
        parser.error(f"--only takes some of {','.join(PARTS)}, not {', '.join(sorted(unknown))}")
    engine = bundle.build()
    for part in wanted:
        keep_rows(part, PARTS[part](engine, words.rounds))
    lines = table([row for part in PARTS for row in kept_rows(part)])
    print("\n".join(["", *lines]))
    if words.keep:
        keep(lines)


if __name__ == "__main__":
    main()
