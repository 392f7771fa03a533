"""`python -m tests.bench`: one table of start-up, visits, answers and Lighthouse, beside stock.

Medians, and nothing is asserted: each goal stands beside its figure. The site must be
built for an address on this machine (`make site`), whose port is free.
"""

import argparse

from site_overrides.build import bundle
from tests.bench import engines, lighthouse, visits
from tests.bench.table import keep, table

PARTS = ("start", "pages", "lighthouse")


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench")
    parser.add_argument("--rounds", type=int, default=5, help="visits of each kind")
    parser.add_argument("--only", default=",".join(PARTS), help=f"some of {','.join(PARTS)}")
    parser.add_argument("--keep", action="store_true", help="write the tables on How this is checked")
    words = parser.parse_args()
    wanted = words.only.split(",")
    if unknown := set(wanted) - set(PARTS):
        parser.error(f"--only takes some of {','.join(PARTS)}, not {', '.join(sorted(unknown))}")
    engine = bundle.build()
    made: dict[str, list[str]] = {}
    if "start" in wanted:
        rows, answers = engines.rows(engine, words.rounds)
        made["start"] = [*table(rows), "", *answers]
    if "pages" in wanted:
        made["pages"] = table(visits.rows(engine, words.rounds))
    if "lighthouse" in wanted:
        made["lighthouse"] = table(lighthouse.rows(words.rounds))
    for part, lines in made.items():
        print("\n".join(["", *lines]))
        if words.keep:
            keep(part, lines)


if __name__ == "__main__":
    main()
