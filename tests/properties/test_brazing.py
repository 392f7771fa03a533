"""What a brazed joint keeps, whatever a reader gives."""

import itertools
import re
from contextlib import suppress
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.declare.catalogue import calculators
from calc.trade.braze.choice import METALS, RODS, SERVICES, match_for
from tests.properties.asked import texts_of

MANY = settings(
    max_examples=60, deadline=None, derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)  # fmt: skip
BRAZED = ("low-carbon-steel", "stainless-steel", "cast-iron", "copper", "brass", "bronze", "nickel")
NO_PHOSPHORUS = {"low-carbon-steel", "stainless-steel", "cast-iron", "nickel"}
LICENSED = {"refrigerant", "fuel-gas", "oxygen", "medical-gas", "pressure"}
BEGINS_TO_MELT = {"brass": 1652, "bronze": 1742, "copper": 1981, "aluminium": 1189}
"""°F: 60/40 brass 900 °C, tin bronze 950 °C, copper 1083 °C, 1100 aluminium 643 °C; textbook, from memory."""
SIZES = {"thickness": "1 mm", "diameter": "20 mm", "width": "100 mm"}


def braze(texts: dict[str, str]) -> dict[str, Any]:
    return dict(answer("braze-joint", **texts))


def combinations() -> list[tuple[str, str, str, str]]:
    return list(itertools.product(METALS, METALS, SERVICES, ("sleeve", "flat-lap")))


def answered_or_refused(texts: dict[str, str]) -> tuple[dict[str, Any] | None, InputError | None]:
    try:
        return braze(texts), None
    except InputError as refused:
        return None, refused


def test_no_combination_is_left_unanswered_without_a_reason() -> None:
    answered = set()
    labels = {
        "metal_one": "Outside part, or first sheet",
        "metal_two": "Inside part, or second sheet",
        "service": "Use of the joint",
    }
    for one, two, service, form in combinations():
        texts = SIZES | {"metal_one": one, "metal_two": two, "service": service, "form": form}
        got, refused = answered_or_refused(texts)
        if refused is not None:
            label, _, reason = refused.message.partition(": ")
            assert label == labels[refused.field]
            assert len(reason) > 60
            assert reason.endswith(".")
            continue
        assert got is not None
        answered.add((one, two, service))
        assert "Cd" not in got["results"]["filler"]["text"]
        assert all(result["text"] for result in got["results"].values())
    asked = [service for service in SERVICES if service not in LICENSED]
    for one, two in itertools.product(BRAZED, BRAZED):
        assert {(one, two, service) for service in asked} <= answered, (one, two)
    cool = [service for service in asked if service != "hot"]
    wanted = len(BRAZED) ** 2 * len(asked) + len(cool)
    assert {("aluminium", "aluminium", service) for service in cool} <= answered
    assert len(answered) == wanted  # nothing else is answered


@pytest.mark.parametrize("service", sorted(LICENSED))
def test_licensed_work_is_refused_as_such(service: str) -> None:
    texts = SIZES | {"metal_one": "copper", "metal_two": "copper", "form": "sleeve", "service": service}
    with pytest.raises(InputError, match=r"^Use of the joint: work for a licensed person"):
        braze(texts)


def matches() -> list[tuple[str, str, str, str | None, Any]]:
    """Every filler that any metals, use and filler of the reader lead to."""
    found = []
    for one, two, service in itertools.product(METALS, METALS, SERVICES):
        for rod in (None, *RODS):
            with suppress(InputError):
                found.append((one, two, service, rod, match_for(one, two, service, rod)))
    return found


MATCHES = matches()


def test_cadmium_is_never_chosen() -> None:
    assert {rod for rod in RODS if rod in ("bag-1", "bag-2")} == {"bag-1", "bag-2"}  # they can be asked for
    for *asked, match in MATCHES:
        assert "Cd" not in match.filler.composition, asked
        assert match.filler.filler not in ("BAg-1", "BAg-2")
        assert not any(row.family == "silver-cadmium" for row in match.others)


def test_copper_phosphorus_is_never_put_on_iron_or_nickel() -> None:
    used = [(one, two) for one, two, *_, match in MATCHES if " P " in f" {match.filler.composition} "]
    assert ("copper", "copper") in used
    assert ("copper", "brass") in used
    for pair in used:
        assert not set(pair) & NO_PHOSPHORUS, pair


def test_aluminium_takes_only_its_own_filler_and_only_itself() -> None:
    for one, two, *_, match in MATCHES:
        own = match.filler.filler.startswith("BAlSi")
        assert own == ("aluminium" in (one, two))
        assert one == two or "aluminium" not in (one, two)


def test_only_copper_with_copper_goes_without_flux() -> None:
    for one, two, *_, match in MATCHES:
        if match.flux is None:
            assert {one, two} == {"copper"}
            assert match.filler.filler.startswith("BCuP")
        else:
            middle = (match.filler.braze_low + match.filler.braze_high) / 2
            assert match.flux.low <= middle <= match.flux.high, (match.filler.filler, match.flux.flux)


def test_no_filler_is_used_where_the_metal_melts() -> None:
    for one, two, *_, match in MATCHES:
        top = (match.filler.braze_high - 273.15) * 1.8 + 32
        for metal in {one, two} & set(BEGINS_TO_MELT):
            assert top < BEGINS_TO_MELT[metal], (match.filler.filler, metal)


@MANY
@given(data=st.data())
def test_the_cold_gap_put_back_gives_the_wanted_one(data: Any) -> None:
    texts = data.draw(texts_of(calculators()["braze-joint"]))
    metals = st.sampled_from(BRAZED)
    texts |= {"metal_one": data.draw(metals), "metal_two": data.draw(metals), "form": "sleeve"}
    texts |= {"service": "general", "diameter": texts.get("diameter", "22 mm"), "shown_in": "metric"}
    for name in ("cold_clearance", "rod"):
        texts.pop(name, None)
    try:
        first = braze(texts)["results"]
    except InputError:
        assume(False)
        return
    make = first["cold_clearance_to_make"]["value"]
    assert make > 0
    again = braze(texts | {"cold_clearance": f"{make!r} mm"})["results"]
    assert again["hot_clearance"]["value"] == pytest.approx(first["clearance_wanted"]["value"], rel=1e-6)
    low, high = first["clearance_wanted"]["low"], first["clearance_wanted"]["high"]
    assert low <= again["hot_clearance"]["value"] <= high
    assert again["filler_volume"]["value"] == pytest.approx(first["filler_volume"]["value"], rel=1e-6)


@MANY
@given(data=st.data())
def test_a_gap_that_is_closed_when_hot_is_refused_and_an_open_one_answered(data: Any) -> None:
    """Copper in steel: at 22 mm the two come 0.041 mm nearer on each side (4.8e-6 x 773 K x 11 mm)."""
    cold = data.draw(st.floats(0.0, 0.2))
    texts = SIZES | {"metal_one": "low-carbon-steel", "metal_two": "copper", "form": "sleeve"}
    texts |= {"service": "general", "diameter": "22 mm", "cold_clearance": f"{cold:.6f} mm", "rules": "iso"}
    if cold < 0.040:
        with pytest.raises(
            InputError, match=r"^Gap you have, cold, on each side: it closes to nothing"
        ) as no:
            braze(texts)
        low, high = (float(n) for n in re.findall(r"([\d.]+) mm", no.value.message))
        for offered in (low * 1.05, high * 0.95):
            assert braze(texts | {"cold_clearance": f"{offered} mm"})
    elif cold > 0.046:
        assert braze(texts)["results"]["hot_clearance"]["value"] > 0


@pytest.mark.parametrize(("outside", "inside", "word"), [("low-carbon-steel", "brass", "closes"), ("brass", "copper", "opens"), ("copper", "cast-iron", "opens")])  # fmt: skip
def test_unlike_metals_are_said_to_close_or_open(outside: str, inside: str, word: str) -> None:
    """Growth by textbooks, from memory: brass 20, copper 16.8, steel 12, cast iron 10.5."""
    texts = SIZES | {"metal_one": outside, "metal_two": inside, "form": "sleeve", "service": "general"}
    got = braze(texts | {"cold_clearance": "0.15 mm"})
    notices = [c["text"] for c in got["cautions"] if c["signal"] == "NOTICE"]
    assert any(text.startswith(f"The gap {word} when hot") for text in notices)
    assert f"The gap {word}" in got["pictures"][0]["sentence"]


def test_parts_that_open_too_far_are_refused_with_the_largest_diameter() -> None:
    texts = SIZES | {
        "metal_one": "brass",
        "metal_two": "low-carbon-steel",
        "form": "sleeve",
        "rules": "iso",
    }
    texts |= {"service": "general"}
    with pytest.raises(InputError, match=r"^Diameter of the joint: ") as refused:
        braze(texts | {"diameter": "60 mm"})
    largest = float(re.findall(r"less than ([\d.]+) mm", refused.value.message)[0])
    assert braze(texts | {"diameter": f"{largest * 0.98} mm"})
    with pytest.raises(InputError, match=r"^Diameter of the joint: "):
        braze(texts | {"diameter": f"{largest * 1.1} mm"})


def test_a_flat_lap_keeps_its_gap_and_two_touching_sheets_are_refused() -> None:
    texts = SIZES | {"metal_one": "copper", "metal_two": "low-carbon-steel", "form": "flat-lap"}
    texts |= {"service": "general", "rules": "iso"}
    got = braze(texts | {"cold_clearance": "0.08 mm"})["results"]
    assert got["hot_clearance"]["value"] == pytest.approx(0.08)
    assert "hot_clearance" not in braze(texts)["results"]
    with pytest.raises(InputError, match=r"^Gap you have, cold, on each side: "):
        braze(texts | {"cold_clearance": "0 mm"})


@MANY
@given(data=st.data())
def test_the_overlap_is_never_below_three_thicknesses_or_the_strength_sum(data: Any) -> None:
    texts = data.draw(texts_of(calculators()["braze-joint"])) | {"shown_in": "metric"}
    texts.pop("overlap", None)
    try:
        got = braze(texts)
    except InputError:
        assume(False)
        return
    overlap = got["results"]["overlap"]["value"]
    assert overlap >= got["results"]["overlap_for_strength"]["value"] * (1 - 1e-9)
    thickness = got["inputs"]["thickness"]
    millimetres = float(thickness["value"]) * (25.4 if thickness["unit"] == "in" else 1.0)
    assert overlap >= 3 * millimetres * (1 - 1e-9)


def test_a_wall_beyond_half_the_diameter_is_refused() -> None:
    texts = SIZES | {"metal_one": "copper", "metal_two": "copper", "form": "sleeve", "service": "general"}
    assert braze(texts | {"thickness": "10 mm"})
    with pytest.raises(InputError, match=r"^Thickness of the thinner part: "):
        braze(texts | {"thickness": "10.1 mm"})


@MANY
@given(data=st.data())
def test_every_answer_warns_of_what_burns_and_poisons(data: Any) -> None:
    texts = data.draw(texts_of(calculators()["braze-joint"]))
    try:
        got = braze(texts)
    except InputError:
        assume(False)
        return
    said = " ".join(caution["text"] for caution in got["cautions"])
    assert got["cautions"][0]["id"] == "closed-part"
    assert not re.search(r"\bsafe(ly)?\b", said, re.IGNORECASE)
    filler = got["results"]["filler"]["text"]
    told = {caution["id"] for caution in got["cautions"]}
    assert ("cadmium-in-filler" in told) == ("silver filler" in filler)
    assert ("flux-fume" in told) == (not got["results"]["flux"]["text"].startswith("none"))
    assert ("zinc-smoke" in told) >= (" Zn " in filler)
    assert "hot-looks-cold" in told


@pytest.mark.parametrize(
    ("cold", "said"),
    [("0.02 mm", "too tight"), ("0.05 mm", ""), ("0.13 mm", ""), ("0.2 mm", "too wide")],
)
def test_a_gap_outside_the_printed_band_is_said(cold: str, said: str) -> None:
    """Silver filler with flux, 0.05 to 0.13 mm (0.002 to 0.005 in): Machinery's Handbook, read."""
    texts = SIZES | {"metal_one": "brass", "metal_two": "brass", "form": "flat-lap", "service": "general"}
    got = braze(texts | {"cold_clearance": cold})
    notices = [c["text"] for c in got["cautions"] if c["text"].startswith("Your gap is")]
    assert len(notices) == bool(said)
    assert all(said in text for text in notices)
