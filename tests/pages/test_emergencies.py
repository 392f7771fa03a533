"""Emergency pages give one order; every sign in the finder leads on; each rule can be broken."""

import re
from pathlib import Path

import pytest

from calc.data.texts import filled_text
from site_overrides.build.check_emergencies import (
    EMERGENCIES,
    TROUBLE,
    counted_problems,
    engine_problems,
    order_problems,
)
from site_overrides.build.check_pages import DOCS, Page, hazard_problems, procedures, read

PAGE = """# A

```procedure
id = "p"
title = "T"
kind = "do-then-confirm"
revised = 2026-11-25
completion = "C"
[[pause]]
id = "a"
title = "A"
[[pause.step]]
id = "s"
hazard = "glare"
do = "Shut the oxygen."
want = "no hiss"
```
"""

emergencies = pytest.mark.parametrize("path", EMERGENCIES, ids=lambda path: path.stem)


def page(tmp_path: Path, text: str) -> Page:
    path = tmp_path / "page.md"
    path.write_text(text, encoding="utf-8")
    return read(path)


def first_acts(name: str, count: int) -> list[str]:
    (made,) = procedures(read(TROUBLE / f"{name}.md"))
    return [step.id for pause in made.pauses for step in pause.steps][:count]


def test_the_emergencies_are_these() -> None:
    assert {path.stem for path in EMERGENCIES} == {
        "hot-cylinder", "valve-fire", "burning-hose", "flashback", "leak", "oxygen-in-clothes",
        "burns", "eyes", "fume",
    }  # fmt: skip


@emergencies
def test_an_emergency_page_gives_one_order_and_no_choice(path: Path) -> None:
    assert order_problems(read(path)) == []


@emergencies
def test_an_emergency_page_needs_no_engine(path: Path) -> None:
    assert engine_problems(read(path)) == []


@emergencies
def test_an_emergency_page_fits_one_pause_point(path: Path) -> None:
    (made,) = procedures(read(path))
    assert len(made.pauses) == 1


@pytest.mark.parametrize("path", sorted(DOCS.rglob("*.md")), ids=lambda path: str(path.relative_to(DOCS)))
def test_no_step_types_a_figure(path: Path) -> None:
    assert counted_problems(read(path)) == []


@pytest.mark.parametrize(
    ("was", "becomes", "said"),
    [
        ("Shut the oxygen.", "Shut the oxygen or the fuel.", "says “or”"),
        ("Shut the oxygen.", "Shut either valve.", "says “either”"),
        ("Shut the oxygen.", "Some say fuel first.", "says “Some say”"),
        ("do-then-confirm", "read-then-do", "its kind is"),
        ("```procedure", "```text", "0 procedures"),
        ('want = "no hiss"', 'want = "no hiss"\nonly = "cold"', "some readers"),
    ],
)
def test_a_choice_of_order_is_found(tmp_path: Path, was: str, becomes: str, said: str) -> None:
    assert order_problems(page(tmp_path, PAGE)) == []
    assert said in " ".join(order_problems(page(tmp_path, PAGE.replace(was, becomes))))


def test_a_second_procedure_is_found(tmp_path: Path) -> None:
    twice = PAGE + PAGE.split("# A\n")[1].replace('id = "p"', 'id = "q"')
    assert "2 procedures" in " ".join(order_problems(page(tmp_path, twice)))


def test_a_calculator_on_an_emergency_page_is_found(tmp_path: Path) -> None:
    text = PAGE + "\n```calculator\nhose-volume\n```\n"
    assert engine_problems(page(tmp_path, text)) != []


@pytest.mark.parametrize("typed", ["Wait 5 of them.", "Go 200 m.", "Wait ten minutes.", "Half an hour."])
def test_a_figure_typed_in_a_step_is_found(tmp_path: Path, typed: str) -> None:
    assert counted_problems(page(tmp_path, PAGE)) == []
    assert counted_problems(page(tmp_path, PAGE.replace("Shut the oxygen.", typed)))


def test_a_figure_filled_from_a_table_is_let_be(tmp_path: Path) -> None:
    text = PAGE.replace("Shut the oxygen.", "Go {hazard-zone} away, to the front door.")
    assert counted_problems(page(tmp_path, text)) == []


@pytest.mark.parametrize("place", ["[hazard]", "[pause.hazard]", "[pause.step.hazard]"])
def test_a_hazard_told_in_the_page_itself_is_found(tmp_path: Path, place: str) -> None:
    told = f'want = "no hiss"\n{place}\nsignal = "DANGER"\n'
    text = PAGE.replace('hazard = "glare"\n', "").replace('want = "no hiss"\n', told)
    assert hazard_problems(page(tmp_path, text)) != []


def test_fire_in_the_torch_is_oxygen_then_fuel_then_cylinders_then_dark() -> None:
    """NAVEDTRA 14250, read: oxygen valve at once, then fuel, then the supply."""
    assert first_acts("flashback", 5) == ["oxygen", "fuel", "cylinders", "look", "dark"]


def test_nobody_is_told_to_blow_oxygen_through() -> None:
    for path in DOCS.rglob("*.md"):
        assert not re.search(r"\bblow(?:ing)? oxygen\b", path.read_text(encoding="utf-8")), path


def test_a_leak_puts_flames_out_before_anything_is_opened_or_touched() -> None:
    assert first_acts("leak", 3) == ["flames", "cylinders", "out"]


def test_only_one_try_at_a_burning_valve_then_out() -> None:
    """US Army TC 9-237, read: let it burn rather than leak."""
    assert first_acts("valve-fire", 2) == ["shut", "out"]


@emergencies
def test_no_page_tells_anyone_to_move_or_cool_a_hot_cylinder(path: Path) -> None:
    (made,) = procedures(read(path))
    for step in (step for pause in made.pauses for step in pause.steps):
        assert not re.search(r"\b(?:move|wheel|carry|roll|cool|spray) (?:it|the cylinder)\b", step.do), (
            step.do
        )


def test_the_way_in_leads_to_every_emergency_and_first_to_the_hot_cylinder() -> None:
    links = read(TROUBLE / "index.md").links
    assert links[0] == "hot-cylinder.md"
    assert {path.name for path in EMERGENCIES} <= set(links)


def test_every_sign_in_the_finder_has_act_cause_cure_and_a_way_on() -> None:
    text = (TROUBLE / "finder.md").read_text(encoding="utf-8")
    entries = re.split(r"^### ", text, flags=re.MULTILINE)[1:]
    assert len(entries) >= 10
    for entry in entries:
        body = entry.split("\n## ")[0]
        marks = [body.index(mark) for mark in ("**Now**", "**Cause**", "**Cure**")]
        assert marks == sorted(marks), entry
        assert re.search(r"\]\([\w./-]+\.md(?:#[\w-]+)?\)", body), entry
        (name,) = re.findall(r"\{#([a-z-]+)\}", body)
        assert f"(#{name})" in text, name


def test_the_finder_squeal_gives_the_order_of_the_flashback_page() -> None:
    text = (TROUBLE / "finder.md").read_text(encoding="utf-8")
    entry = text.split("{#squeals}")[1].split("###")[0]
    entry = filled_text(entry, "us")
    order = [entry.index(part) for part in ("oxygen valve", "fuel valve", "both cylinder", "do not light")]
    assert order == sorted(order)
