"""One event, one sequence of acts: pages, first acts on paper, cards, key, forms and prose are held to it."""

import csv
import re

import pytest

from calc.class_plan.first_acts import TABLE as FIRST_ACTS
from calc.data.emergencies import PREFIX, TABLE, events, told
from calc.data.tables import table
from calc.data.texts import BRACES, filled_text
from calc.declare import RULE_SETS
from site_overrides.build.check_emergencies import EMERGENCIES, TROUBLE
from site_overrides.build.check_pages import DOCS, ROOT, forms, procedures, read

# The order as the publication named beside it prints it; typed from there, not from our table.
PRINTED = {
    # St John New Zealand, Burns, quick help (call first for a large, deep or eye burn, then cool, and rings
    # and tight clothes off while it cools); Dorset and Wiltshire Fire and Rescue (clothes on fire: lie down,
    # roll); North Bristol NHS Trust, first aid for burns (then keep warm, cover).
    "burns": ["fire", "call", "cool", "off", "warm", "cover", "tell"],
    # HealthInfo New Zealand, Chemicals in the eye; pages on welder's flash; grit is from memory.
    "eyes": ["rinse", "stop", "lenses", "cold", "grit", "doctor"],
    # ISHN, How to treat carbon monoxide poisoning (fresh air, call, CPR, hospital);
    # 29 CFR 1910.252 (b)(4)(iv): nobody follows into the space. On the side, who breathes: from memory.
    "fume": ["air", "down", "cpr", "call", "side", "doctor"],
    # NAVEDTRA 14250: oxygen valve of the torch at once, then the fuel valve, then the supply.
    "flashback": ["oxygen", "fuel", "cylinders", "look", "dark", "tag"],
    # NAVEDTRA 14250, backfire: both torch valves, the oxygen first.
    "backfire": ["oxygen", "fuel"],
    # US Army TM 1-1500-204-23: fuel at its cylinder, then oxygen; what follows is common practice, no source.
    "burning-hose": ["fuel", "oxygen", "rest", "out"],
    # US Army OD0017 and TC 9-237: one try at the valve, else let it burn.
    "valve-fire": ["shut", "out", "alarm", "far", "phone"],
    # HSE INDG327 and UK tactical guidance H2.2.0; nothing read tells anyone to reach for a valve.
    "hot-cylinder": ["leave", "alarm", "far", "phone", "stay"],
    # Luther College, hazardous odors and leaks: no switch, no alarm button, no phone; out; call from outside.
    # US Army TM 1-1500-204-23 for the cylinders; flames first is common practice, no source.
    "leak": ["flames", "cylinders", "out", "call"],
    # 29 CFR 1926.350 (d)(5): close, tighten the gland nut; if it goes on: use no more, tag, remove.
    "stem-leak": ["close", "gland", "tag", "outdoors", "supplier"],
    # 29 CFR 1910.253 (b)(5)(iii)(G)-(H), 1926.350 (d)(6).
    "plug-leak": ["flames", "tag", "outdoors", "supplier"],
    # EIGA SL 02/18, and a leaflet for oxygen patients: into the open air, 20 minutes.
    "oxygen-in-clothes": ["away", "loosen", "time"],
}


def acts(event: str) -> list[str]:
    return [row.act for row in events()[event]]


@pytest.mark.parametrize("event", events())
def test_the_order_of_an_event_is_the_printed_one(event: str) -> None:
    assert acts(event)[: len(PRINTED[event])] == PRINTED[event]


def test_orders_run_on_and_no_act_stands_twice() -> None:
    assert set(PRINTED) == set(events())
    for rows in events().values():
        assert [row.order for row in rows] == list(range(1, len(rows) + 1))
        assert len({row.act for row in rows}) == len(rows)
    assert len(table(TABLE)) == sum(len(rows) for rows in events().values())


@pytest.mark.parametrize("path", EMERGENCIES, ids=lambda path: path.stem)
def test_an_emergency_page_walks_the_acts_of_its_event(path: object) -> None:
    (made,) = procedures(read(path))
    steps = [step for pause in made.pauses for step in pause.steps]
    assert [step.id for step in steps] == acts(path.stem)
    for step, row in zip(steps, events()[path.stem], strict=True):
        assert (step.source, step.how_sure) == (row.source, row.how_sure), step.id


def test_the_page_on_popping_walks_the_acts_of_a_backfire() -> None:
    (made,) = procedures(read(TROUBLE / "popping-and-starving.md"))
    steps = [step for pause in made.pauses for step in pause.steps]
    assert [{"shut": "oxygen"}.get(step.id, step.id) for step in steps] == [
        act for act in acts("backfire") if act != "fuel"
    ]
    assert re.search(r"oxygen valve.*fuel valve", steps[0].do)


def test_first_acts_on_paper_are_the_first_acts_of_each_event() -> None:
    carried: dict[str, list[str]] = {}
    for row in table(FIRST_ACTS):
        if row.kind == "act":
            carried.setdefault(row.page, []).append(row.step)
    assert set(carried) == {path.stem for path in EMERGENCIES}
    for event, steps in carried.items():
        assert steps == acts(event)[: len(steps)]


# Acts that matter before anything else on the paper: calling, flames out, nobody in after.
@pytest.mark.parametrize(
    ("event", "act"),
    [
        ("hot-cylinder", "phone"), ("valve-fire", "phone"), ("burning-hose", "out"), ("flashback", "dark"), ("leak", "call"),
        ("burns", "fire"), ("burns", "call"), ("burns", "cool"), ("eyes", "rinse"), ("fume", "down"), ("fume", "cpr"),
    ],
)  # fmt: skip
def test_the_paper_carries_what_cannot_wait(event: str, act: str) -> None:
    assert act in [row.step for row in table(FIRST_ACTS) if row.page == event and row.kind == "act"]


# ---- tellings in prose -------------------------------------------------------------------------

# A sign of the event, and words for an act of it. A text that shows the sign and tells acts by
# hand tells them in the order of the table, and none that the table lacks.
SIGNS = {
    "flashback": r"squeal|hiss(?:es)? inside",
    "backfire": r"\bit pops\b|\bat a pop\b|“pop”|\ba pop, and\b|\bpop:",
    "burning-hose": r"\bhose burns\b|\bfire in a hose\b|\bburning hose\b",
    "hot-cylinder": r"\bcylinder is (?:warm|hot)\b|\bhot acetylene cylinder\b|\bwarm acetylene cylinder\b",
    "valve-fire": r"\bburns at the (?:regulator|cylinder valve)\b|\bfire at (?:a|the) (?:\{regulator\}|regulator|cylinder valve)",
    "stem-leak": r"\bvalve stem\b.*\b(?:bubbles?|leaks?)\b|\b(?:bubble|leak)s?\b.*\bvalve stem\b",
}
ACTS = {
    "flashback": {
        "oxygen": r"(?:\boxygen valve of the (?:\{torch\}|torch)|\btorch oxygen\b|\boxygen first, at once\b)",
        "fuel": r"(?:\bfuel valve of the (?:\{torch\}|torch)|\bits fuel valve\b|\btorch fuel\b|\bthen (?:the )?fuel\b)",
        "cylinders": r"\bboth cylinders?(?: valves)?\b",
        "dark": r"\b(?:not|never) (?:be )?(?:light|lit)\b",
    },
    "backfire": {
        "oxygen": r"\boxygen (?:valve|first)",
        "fuel": r"\bfuel valve\b|\bthen (?:the )?fuel\b",
        "purge": r"\bpurge\b",
    },
    "burning-hose": {"fuel": r"\bfuel cylinder\b", "oxygen": r"\boxygen cylinder\b"},
    "hot-cylinder": {"leave": r"\beveryone out\b|\bgo, and take\b|\bgo now\b|\btake everyone\b", "phone": r"\bfire service\b"},
    "valve-fire": {"shut": r"\bone try\b", "out": r"\beveryone out\b|\btake everyone out\b", "phone": r"\bfire service\b"},
    "stem-leak": {"close": r"\bclose\b|\bshut\b", "gland": r"\bgland nut\b", "tag": r"\btag\b", "supplier": r"\bsupplier\b"},
}  # fmt: skip
# What a telling of the event never says.
NEVER = {
    "flashback": r"\bfuel first\b|\bfuel valve first\b",
    "backfire": r"\bfuel first\b|\bfuel valve first\b",
    "burning-hose": r"\bwhat you can reach\b|\boxygen first\b",
    "hot-cylinder": r"\bhand on (?:the|it)\b|\bshut the valve\b|\bclose (?:the|its) valve\b",
    "valve-fire": r"\bfuel first\b",
}
COLD = r"\b[Ii]f (?:both|it|they|that cylinder|both cylinders|the cylinders) (?:is|are) cold\b"
"""From here on a text speaks of another state: what is done with a cold cylinder."""
BOOKS = "disagreements-benchbook-2026"
"""What others print stands there; only what this site follows is held to the order."""


def texts() -> list[tuple[str, str]]:
    """Every text of the site by where it stands: lines of pages, steps, forms, cells of tables."""
    found = []
    for path in sorted(DOCS.rglob("*.md")):
        page, where = read(path), str(path.relative_to(DOCS))
        bare = re.sub(r"^```.*?^```$", "", path.read_text(encoding="utf-8"), flags=re.DOTALL | re.MULTILINE)
        found += [(where, line) for line in bare.splitlines()]
        for made in procedures(page):
            found += [(f"{where} {step.id}", step.do) for pause in made.pauses for step in pause.steps]
        found += [(where, text) for made in forms(page) for text in made.texts]
    for path in sorted((ROOT / "calc" / "data").glob("*.csv")):
        if path.stem in (TABLE, "outfit-acts"):
            continue
        rows = csv.DictReader(path.read_text(encoding="utf-8").splitlines())
        for row in rows:
            if path.stem == BOOKS and row["kind"] != "follows":
                continue
            found.append((path.name, " | ".join(text or "" for text in row.values())))
    return found


def problems(event: str, text: str) -> list[str]:
    """What a text that tells an event by hand tells otherwise than the table."""
    plain = BRACES.sub(lambda found: (told(found[0][1:-1]) and " ") or found[0], text)
    sign = re.search(SIGNS[event], plain, re.IGNORECASE)
    if not sign:
        return []
    # From the sign to the next event that the text tells.
    after = plain[sign.start() :]
    others = [re.search(SIGNS[name], after[len(sign[0]) :], re.IGNORECASE) for name in SIGNS if name != event]
    ends = [other.start() + len(sign[0]) for other in others if other]
    ends += [found.start() for found in re.finditer(COLD, after) if event == "hot-cylinder"]
    after = after[: min(ends)] if ends else after
    places = [
        (found.start(), act)
        for act, words in ACTS[event].items()
        if (found := re.search(words, after, re.IGNORECASE))
    ]
    said = [act for _, act in sorted(places)]
    wanted = [act for act in acts(event) if act in said]
    found = [f"{said} for {wanted}"] if said != wanted else []
    return found + [f"says “{hit[0]}”" for hit in re.finditer(NEVER.get(event, r"(?!)"), after, re.IGNORECASE)]


@pytest.mark.parametrize("event", SIGNS)
def test_no_text_of_the_site_tells_it_otherwise(event: str) -> None:
    told_here = [(where, text) for where, text in texts() if re.search(SIGNS[event], text, re.IGNORECASE)]
    assert told_here, "the event is told somewhere"
    said = [(where, text, problems(event, text)) for where, text in told_here]
    assert [each for each in said if each[2]] == []


@pytest.mark.parametrize(
    ("event", "text"),
    [
        ("flashback", "At a squeal close the fuel valve of the torch, then the oxygen valve of the torch."),
        ("flashback", "Squeal: both cylinders, then the oxygen valve of the {torch}."),
        ("flashback", "It squeals: fuel first."),
        ("backfire", "It pops: close the fuel valve, then the oxygen valve."),
        ("burning-hose", "A hose burns: shut what you can reach in one move and leave."),
        ("burning-hose", "Fire in a hose: the oxygen cylinder, then the fuel cylinder."),
        ("hot-cylinder", "The cylinder is warm: shut the valve with the hand on it."),
        ("hot-cylinder", "The cylinder is warm: close its valve. If it is cold, close its valve too."),
        ("stem-leak", "A bubble at the valve stem: tag it, then close it."),
        ("valve-fire", "Fire at the cylinder valve: everyone out, then one try."),
    ],
)
def test_another_order_is_found(event: str, text: str) -> None:
    assert problems(event, text)


@pytest.mark.parametrize("name", [name for name in events() if any(row.told for row in events()[name])])
@pytest.mark.parametrize("rules", RULE_SETS)
def test_the_acts_of_an_event_fill_a_text(name: str, rules: str) -> None:
    text = filled_text(f"{{{PREFIX}{name}}}", rules)
    assert "{" not in text
    places = [text.index(filled_text(row.told, rules)) for row in events()[name] if row.told]
    assert places == sorted(places)
    assert not re.search(r"\b(?:or|either|alternatively)\b", text)


def test_where_gas_leaks_no_alarm_button_is_pressed_and_on_fires_it_is() -> None:
    """Luther College, hazardous odors and leaks: pull stations can make the spark."""
    (leak,) = procedures(read(TROUBLE / "leak.md"))
    said = " ".join(step.do for pause in leak.pauses for step in pause.steps)
    assert "no alarm button" in said
    assert not re.search(r"set off the fire alarm", said, re.IGNORECASE)
    for name in ("hot-cylinder", "valve-fire"):
        (made,) = procedures(read(TROUBLE / f"{name}.md"))
        assert any("Set off the fire alarm" in step.do for pause in made.pauses for step in pause.steps)


def test_breathed_gas_names_carbon_monoxide_nitrogen_dioxide_and_resuscitation() -> None:
    text = (TROUBLE / "fume.md").read_text(encoding="utf-8")
    for words in ("Carbon monoxide", "Nitrogen dioxide", "CPR", "lungs can fill hours later"):
        assert words in text


def test_air_for_clothes_and_water_for_eyes_are_no_shorter_than_in_print() -> None:
    """20 minutes for clothes (leaflet for oxygen patients, 2013); 20 minutes for an eye (NHS), 15 elsewhere."""
    figures = {row.id: row for row in table("figures-benchbook-2026")}
    for name in ("oxygen-clothes", "eye-rinse", "burn-cooling"):
        assert int(figures[name].us.split()[0]) >= 20


# NFCC and HSE INDG327, read in a copy: a heated cylinder is left, not touched; nothing says to close its valve.
STATE = r"\bcold\b|nothing is warm"


@pytest.mark.parametrize("path", EMERGENCIES, ids=lambda path: path.stem)
def test_a_step_that_closes_a_cylinder_says_for_which_state_of_it(path: object) -> None:
    """Beside “do not touch” the step says itself when a valve is closed and when you go."""
    (made,) = procedures(read(path))
    for step in (step for pause in made.pauses for step in pause.steps):
        closes = any(act.startswith("close ") and act.endswith("-cylinder") for act in step.acts or ())
        if closes and path != TROUBLE / "oxygen-in-clothes.md":  # nothing burns there
            assert re.search(STATE, step.do), step.do
            assert "Hot cylinder" in step.do, step.do


def test_the_told_acts_close_only_cold_cylinders() -> None:
    for event, act in (("flashback", "cylinders"), ("burning-hose", "fuel"), ("leak", "cylinders"), ("valve-fire", "shut"),
                       ("stem-leak", "close")):  # fmt: skip
        row = next(row for row in events()[event] if row.act == act)
        assert re.search(STATE, row.told), row.told


# 29 CFR 1910.252 (a)(2)(vi)(C), read in a copy, and the page Gas leak: gas in the air is no thing to wait for.
SMELT = r"\b[Ss]mell(?:s)?(?: of gas)?\b[^.]*\bor (?:a )?hiss|\bsmells (?:of gas )?or hiss|\bsmell or hear gas"


def test_a_smell_of_gas_leads_to_the_page_on_leaks_everywhere() -> None:
    found = [
        (where, text)
        for where, text in texts()
        if re.search(SMELT, text) and not where.startswith("trouble/leak") and "(#smell)" not in text and text[:1] != "#"
    ]
    assert len(found) >= 6
    for where, text in found:
        assert re.search(r"[Gg]as leak", text), (where, text)


def test_waiting_for_a_smell_to_go_says_what_follows_when_it_stays() -> None:
    found = [(where, text) for where, text in texts() if re.search(r"[Ww]ait until (?:the|there is no) smell|until the smell", text)]
    assert len(found) >= 9
    for where, text in found:
        assert re.search(r"[Ii]f it does not go.*[Gg]as leak", text), (where, text)
