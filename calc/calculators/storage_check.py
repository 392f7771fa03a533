"""Cylinders put away: limits, distance, wall, caps and signs."""

from dataclasses import dataclass
from typing import Annotated

from calc.answer.hazards import caution
from calc.answer.sentences import distance, duration
from calc.data.tables import HOW_SURE, source_words, table
from calc.declare import Answer, Choice, Field, Figure, Shown, Table, calculator
from calc.declare.inputs import FREE_GAS, MASS, TIME
from calc.formulas.setup.ruled import Ruled, amount, ruled_row
from calc.show.scales import scale
from calc.trade.printed import printed_figures
from calc.trade.safety.surroundings import OWN
from calc.values.quantities import FreeGas, Length, Mass, Time

FAR = ("ft", "m")
STORED_GAS = ("ft^3", "m^3", "L")
PLACES = {
    "indoors": "Indoors",
    "outdoors": "Outdoors",
    "vehicle": "In a vehicle",
    "confined": "In a pit, cellar without air, tank or locker",
}
CARTS = {
    "no": "No",
    "yes": "One oxygen and one fuel cylinder on a cart made for them, secured",
}
HAIR = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class StorageCheck:
    """Cylinders put away."""

    findings: Annotated[Figure, Shown("To put right", words=True)]
    counts_as: Annotated[Figure, Shown("It counts as", words=True)]
    separation: Annotated[
        Figure, Shown("Oxygen from fuel gas, oil, grease", FAR, toward="up", group="Apart")
    ]
    wall_height: Annotated[Figure, Shown("Or a wall this high", FAR, toward="up", group="Apart")]
    wall_rating: Annotated[Figure, Shown("that holds a fire for", ("min",), toward="up", group="Apart")]
    from_combustibles: Annotated[
        Figure, Shown("Indoors, from what burns easily", FAR, toward="up", group="Apart")
    ]
    fuel_limit: Annotated[
        Figure,
        Shown("Fuel gas indoors, at most", STORED_GAS, free_gas=True, toward="down", group="How much"),
    ]
    lpg_limit: Annotated[
        Figure, Shown("Liquefied petroleum gas indoors, at most", MASS, toward="down", group="How much")
    ]
    share_of_limit: Annotated[Figure, Shown("You have, of that", ("%",), toward="up", group="How much")]
    caps: Annotated[Figure, Shown("Caps", words=True, group="Each cylinder")]


def _row(topic: str, rules: str, *, lowest: bool = False) -> Ruled:
    return ruled_row("storage", rules, lambda row: -amount(row) if lowest else amount(row), topic=topic)


def _figure(found: Ruled, basis: str, *, free_gas: bool = False) -> Figure:
    return Figure(
        amount(found.row, free_gas=free_gas), found.row.source, found.row.how_sure, basis=basis,
        words=f"{OWN[found.rules]} figure. {found.note}" if found.note else "",
    )  # fmt: skip


@calculator("storage-check", "Check how cylinders are stored")
def storage_check(
    *,
    place: Annotated[str, Choice("Where", PLACES, example="indoors")],
    oxygen: Annotated[
        float,
        Field(
            "Oxygen stored",
            FREE_GAS,
            example={"us": "488 ft^3", "iso": "20 m^3", "uk": "20 m^3"},
            low="0 m^3",
            high="5000 m^3",
            free_gas=True,
            hint="What full cylinders hold, all together; 0 if none.",
        ),
    ],
    fuel_gas: Annotated[
        float,
        Field(
            "Acetylene and other fuel gas stored",
            FREE_GAS,
            example={"us": "260 ft^3", "iso": "12 m^3", "uk": "12 m^3"},
            low="0 m^3",
            high="5000 m^3",
            free_gas=True,
            hint="What full cylinders hold; without liquefied petroleum gas.",
        ),
    ],
    lpg: Annotated[
        float,
        Field("Liquefied petroleum gas stored", MASS, assumed="0 lb", low="0 lb", high="20000 lb"),
    ],
    apart: Annotated[
        float,
        Field(
            "Oxygen stands from fuel gas, oil and grease",
            FAR,
            example={"us": "10 ft", "iso": "3 m", "uk": "3 m"},
            low="0 m",
            high="500 m",
        ),
    ],
    wall: Annotated[
        float,
        Field(
            "Wall between them that does not burn, height",
            FAR,
            assumed="0 ft",
            low="0 ft",
            high="100 ft",
            hint="0 if there is none.",
        ),
    ],
    wall_holds: Annotated[
        float, Field("That wall holds a fire for", TIME, assumed="0 min", low="0 min", high="24 h")
    ],
    burnable: Annotated[
        float,
        Field(
            "They stand from wood, paper, oil and other things that burn easily",
            FAR,
            assumed="0 ft",
            low="0 ft",
            high="2000 ft",
        ),
    ],
    water_weight: Annotated[
        float,
        Field(
            "A cylinder's water capacity, by weight",
            MASS,
            assumed={"us": "95 lb", "iso": "50 kg", "uk": "50 kg"},
            low="0.5 lb",
            high="1000 lb",
            hint="A litre of water weighs a kilogram.",
        ),
    ],
    next_draw: Annotated[
        float,
        Field("Gas is drawn again in", ("h", "min", "d"), assumed="48 h", low="0 h", high="3650 d"),
    ],
    cart: Annotated[str, Choice("On a cart", CARTS, assumed="no")],
    rules: str,
) -> Answer[StorageCheck]:
    """Limits, distance, wall, caps and signs for cylinders that are put away.

    Figures of the rule, against what you gave. Local law, the landlord and the insurer
    may ask for more.
    """  # fmt: skip
    rows = {
        topic: _row(topic, rules, lowest=topic.startswith("indoor") or topic == "cap-over")
        for topic in (
            "separation", "barrier-height", "barrier-rating", "from-combustibles", "indoor-fuel-gas", "indoor-lpg",
            "in-storage-after", "cap-over",
        )
    }  # fmt: skip
    fuel_most = amount(rows["indoor-fuel-gas"].row, free_gas=True)
    lpg_most = amount(rows["indoor-lpg"].row)
    share = fuel_gas / fuel_most + lpg / lpg_most
    stored = next_draw >= amount(rows["in-storage-after"].row) * (1 - HAIR)
    found = [
        *_place(place),
        *_apart(
            rows=rows,
            oxygen=oxygen,
            fuel_gas=fuel_gas,
            lpg=lpg,
            apart=apart,
            wall=wall,
            wall_holds=wall_holds,
            cart=cart == "yes",
            stored=stored,
            rules=rules,
        ),
    ]
    if place == "indoors":
        if share > 1 + HAIR:
            found.append(
                "too much fuel gas for indoors: the rest outdoors, in a separate room or building with air and no flame"
            )
        if burnable < amount(rows["from-combustibles"].row) * (1 - HAIR):
            far = distance(amount(rows["from-combustibles"].row), rules, 3, "up")
            found.append(f"things that burn easily stand too near: move them {far} away")
    also = next(
        row for row in table("storage") if row.topic == "indoor-fuel-gas" and row.standing == "also"
    )
    return Answer(
        StorageCheck(
            findings=Figure(
                None, "cfr1910-253 (b)", "read",
                words="; ".join(found)
                or "nothing by the figures you gave; now go through the list below with your own eyes",
                basis="What you gave against the figures below. It does not see caps, chains, leaks, heat or exits.",
            ),
            counts_as=_counts(stored, rows["in-storage-after"], cart == "yes"),
            separation=_figure(rows["separation"], "Or the wall. Nights and weekends count."),
            wall_height=_figure(rows["barrier-height"], "A wall that does not burn, instead of the distance."),
            wall_rating=_figure(rows["barrier-rating"], "Fire rating of that wall; 1 h to an acetylene generator's house."),
            from_combustibles=_figure(rows["from-combustibles"], "Indoors."),
            fuel_limit=_figure(
                rows["indoor-fuel-gas"],
                "Besides those in use or attached ready for use. Later editions of NFPA 51 are said to allow "
                f"{also.number:g} ft³ (from memory); we follow the lower.",
                free_gas=True,
            ),
            lpg_limit=_figure(rows["indoor-lpg"], "Besides those in use or attached ready for use."),
            share_of_limit=Figure(
                share, rows["indoor-fuel-gas"].row.source, "computed",
                basis="Fuel gas over its limit and liquefied gas over its own, added: the careful reading. "
                "It counts indoors.",
            ),
            caps=_caps(water_weight, rows["cap-over"], rules),
        ),
        cautions=CAUTIONS,
        tables=(_list(rules), printed_figures(("storage",), rules)),
    )  # fmt: skip


def _place(place: str) -> list[str]:
    if place == "vehicle":
        return ["a vehicle is no store: take them out, never leave gas shut in it"]
    if place == "confined":
        return ["no store in a pit, a shut cellar, a tank or an unventilated locker: bring them out"]
    return []


def _apart(
    *,
    rows: dict[str, Ruled], oxygen: FreeGas, fuel_gas: FreeGas, lpg: Mass, apart: Length, wall: Length, wall_holds: Time,
    cart: bool, stored: bool, rules: str,
) -> list[str]:  # fmt: skip
    wanted, high = amount(rows["separation"].row), amount(rows["barrier-height"].row)
    holds = amount(rows["barrier-rating"].row)
    if oxygen <= 0 or apart >= wanted * (1 - HAIR):
        return []
    if wall >= high * (1 - HAIR) and wall_holds >= holds * (1 - HAIR):
        return []
    if cart and not stored:
        return []
    told = f"{distance(wanted, rules, 3, 'up')} apart, or a wall {distance(high, rules, 3, 'up')} high that holds a fire {duration(holds)}"
    with_what = "fuel gas" if fuel_gas > 0 or lpg > 0 else "oil, grease and other things that burn"
    return [f"oxygen stands too near {with_what}: {told}"]


def _counts(stored: bool, found: Ruled, cart: bool) -> Figure:
    hours = duration(amount(found.row))
    said = f"in storage: no draw within {hours}" if stored else f"in use: drawn from again within {hours}"
    if cart:
        said += "; on a cart with valves shut and caps or regulators on, the distance is not held against one of each"
    return Figure(
        None, found.row.source, found.row.how_sure, words=said,
        basis=f"Nights and weekends count. {f'{OWN[found.rules]} reading. {found.note}' if found.note else ''}".strip(),
    )  # fmt: skip


def _caps(water_weight: Mass, found: Ruled, rules: str) -> Figure:
    mass = scale("mass", rules)
    over = amount(found.row)
    need = (
        "a cap or collar is required"
        if water_weight > over * (1 + HAIR)
        else "no cap is required by weight; where it has one, it goes on"
    )
    return Figure(
        None, found.row.source, found.row.how_sure,
        words=f"{need}; on hand-tight whenever not in use or connected",
        basis=f"Required above {mass.said(over)} of water. "
        f"{f'{OWN[found.rules]} figure. {found.note}' if found.note else ''}".strip(),
    )  # fmt: skip


_HEADS = {
    "place": "Place", "upright": "Upright", "secure": "Secured", "caps": "Caps", "valves": "Valves", "marking": "Marks",
    "signs": "Signs", "sun": "Heat", "home": "At home", "lifting": "Lifting", "filling": "Filling", "in-use": "In use",
    "generator": "Generator", "manifold": "Manifolds", "safety-devices": "Fuse plugs",
}  # fmt: skip


def _list(rules: str) -> Table:
    order = list(_HEADS)
    rows = sorted(table("storage-rules"), key=lambda row: order.index(row.topic))
    own = {row.topic for row in rows if row.rules in (rules, "any")}
    shown = [row for row in rows if row.rules in (rules, "any") or row.topic not in own]
    return Table(
        "Go through it with your own eyes",
        ("", "Wanted", "Source"),
        tuple(
            (
                _HEADS[row.topic],
                row.words,
                ", ".join(
                    part
                    for part in (
                        "" if row.rules in (rules, "any") else f"{OWN[row.rules]} rule",
                        source_words(row.source),
                        HOW_SURE[row.how_sure],
                    )
                    if part
                ),
            )
            for row in shown
        ),
        ""
        if rules == "us"
        else "Where our data has no rule for this rule set, another's stands under its own name.",
    )


CAUTIONS = (
    caution("cylinder-falls"),
    caution("oxygen-feeds-fire"),
    caution("gas-shut-in"),
)
