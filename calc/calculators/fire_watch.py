"""How long to watch after the last flame, and when to look again."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import duration
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Answer, Choice, Field, Figure, Shown, Table, calculator
from calc.declare.inputs import TIME
from calc.trade.safety.surroundings import OWN, legal_words, watch_row
from calc.trade.safety.surroundings import fire_watch as watch_figure

PLACES = {
    "workshop": "Workshop, school, home, general industry",
    "construction": "Construction site",
    "shipyard": "Shipyard",
    "roof": "Torch on a roof covering",
}
MINUTES = ("min",)
ROOFING = "roof"


@dataclass(frozen=True, slots=True, kw_only=True)
class FireWatch:
    """Watching after the flame."""

    fire_watch: Annotated[
        Figure, Shown("Watch without a break, after the last flame", MINUTES, toward="up")
    ]
    monitoring: Annotated[Figure, Shown("Then look in again for", MINUTES, toward="up")]
    check_every: Annotated[Figure, Shown("At most this long between looks", MINUTES, toward="down")]
    until: Annotated[Figure, Shown("From the last flame to the last look", MINUTES, toward="up")]
    legal_minimum: Annotated[Figure, Shown("Least that the law asks", words=True)]
    watcher: Annotated[Figure, Shown("The watcher", words=True)]


def _legal(place: str, rules: str) -> Figure:
    if rules != "us":
        return Figure(
            None,
            "",
            "practice",
            words="our data has no legal figure for this rule set; ask the local authority",
        )
    if place == "construction":
        return Figure(
            None, "cfr1926-352 (e)", "read", words="no number: for long enough that no fire can start",
            basis="OSHA names no time for construction.",
        )  # fmt: skip
    if place == "shipyard":
        return Figure(
            None, "cfr1915-504 (c)(2)(iv)", "read", words="30 min, unless a survey finds no further hazard",
            basis="OSHA, shipyards.",
        )  # fmt: skip
    return Figure(
        None, "cfr1910-252 (a)(2)(iii)(B)", "read", words="30 min (OSHA, general industry)",
        basis="Fires have been found an hour and more later, so this page follows the longer watch.",
    )  # fmt: skip


@calculator("fire-watch", "Fire watch after the last flame")
def fire_watch(
    place: Annotated[str, Choice("Where", PLACES, example="workshop")],
    permit_monitoring: Annotated[
        float,
        Field(
            "Looking in again that the permit or the insurer asks for",
            TIME,
            assumed="0 min",
            low="0 min",
            high="24 h",
            hint="NFPA 51B-2019 names up to 3 h after the watch.",
        ),
    ],
    rules: str,
) -> Answer[FireWatch]:
    """How long to watch after the last flame, by rule set, and what the law asks at least.

    Set a timer of your own too: a page on a locked phone may fall asleep.
    """  # fmt: skip
    found = watch_row(rules)
    watch = watch_figure(rules, roof=place == ROOFING)
    assert watch.value is not None
    monitoring = max(found.row.monitoring, permit_monitoring)
    foreign = f"{OWN[found.rules]} figure. {found.note}" if found.note else ""
    longest = f"up to {duration(found.row.longest_monitoring)} where the permit asks for it"
    every = found.row.check_every
    return Answer(
        FireWatch(
            fire_watch=watch,
            monitoring=Figure(
                monitoring, found.row.source, found.row.how_sure,
                basis=f"{found.row.words}; {longest}.", words=foreign or longest,
            ),
            check_every=Figure(
                every, found.row.source, found.row.how_sure, basis="Both sides of walls within 10 m (33 ft).", words=foreign
            )
            if every is not None
            else Figure(
                None, found.row.source, found.row.how_sure, words="no figure in this rule; the permit says",
                basis="UK code: no more than 20 min apart.",
            ),
            until=Figure(
                watch.value + monitoring, watch.source, watch.how_sure,
                basis="The watch, and the later looks. A flame in between starts it again.",
            ),
            legal_minimum=_legal(place, rules),
            watcher=Figure(
                None, "cfr1910-252 (a)(2)(iii)(B)", "read",
                words="has an extinguisher at hand and is trained with it, knows how to raise the alarm, does nothing else, "
                "fights only a fire within those means",
                basis=f"{legal_words(rules)}Look on both sides of walls, below, above and along pipes.",
            ),
        ),
        cautions=CAUTIONS,
        tables=(_printed(),),
    )  # fmt: skip


def _printed() -> Table:
    rows = []
    for row in table("fire-watches"):
        later = duration(row.monitoring) if row.monitoring else ""
        if row.longest_monitoring:
            later = f"{later}, up to {duration(row.longest_monitoring)}".removeprefix(", ")
        every = f"every {duration(row.check_every)}" if row.check_every else ""
        rows.append(
            (
                OWN[row.rules],
                duration(row.watch),
                ", ".join(part for part in (later, every) if part),
                row.words,
                f"{source_words(row.source)}, {HOW_SURE[row.how_sure]}".removeprefix(", "),
            )
        )
    return Table(
        "What is in print",
        ("Where", "Watch", "Then", "", "Source"),
        tuple(rows),
        "They disagree. The longer ones are younger: fires from hot work have been found an hour and more later.",
    )


CAUTIONS = (
    caution("fire-later"),
    caution("fire-too-large"),
)
