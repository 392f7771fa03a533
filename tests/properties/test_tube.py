"""Lead never comes near drinking water, whatever is asked; nor does a refused line get an answer."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import InputError, answer
from calc.declare import RULE_SETS
from calc.declare.catalogue import calculators
from tests.properties.asked import texts_of

TUBE = calculators()["solder-tube"]
WATER = ("drinking-water", "heating-water", "unknown")
LEAD = ("sn63pb37", "sn60pb40", "sn50pb50", "pb60sn40")
SOLDERS = tuple(TUBE.inputs["solder"].options)
MANY = settings(max_examples=300, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))


def answered(texts: dict[str, str]) -> dict[str, Any] | None:
    try:
        return answer("solder-tube", **texts)
    except InputError:
        return None


@MANY
@given(texts=texts_of(TUBE), service=st.sampled_from(list(TUBE.inputs["service"].options)))
def test_lead_is_never_in_what_people_may_drink(texts: dict[str, str], service: str) -> None:
    got = answered(texts | {"service": service})
    if service not in WATER:
        assert got is None
        return
    picked = texts["method"] == "soldering" and texts.get("solder") in LEAD
    if picked and service != "heating-water":
        assert got is None
    if got is None:
        return
    filler = got["results"]["filler"]["text"]
    assert picked == ("lead solder" in filler) == ("Pb" in filler)
    if picked:
        assert service == "heating-water"
        assert any("holds lead" in c["text"] and c["signal"] == "WARNING" for c in got["cautions"])
    elif texts["method"] == "soldering":
        assert "lead-free" in filler


@pytest.mark.parametrize("rules", RULE_SETS)
@pytest.mark.parametrize("service", WATER)
@pytest.mark.parametrize("solder", [None, *SOLDERS])
def test_every_solder_on_every_line(rules: str, service: str, solder: str | None) -> None:
    texts = {
        "method": "soldering", "service": service, "system": "inch", "size_inch": "3/4 in", "joints": "4", "rules": rules,
    } | ({"solder": solder} if solder else {})  # fmt: skip
    if service == "unknown":
        with pytest.raises(InputError, match=r"^What runs in the tube: .*hollow part with something unknown"):
            answer("solder-tube", **texts)
        return
    if solder in LEAD and service != "heating-water":
        with pytest.raises(InputError, match=r"^Solder you have: .*lead-free.*\.$"):
            answer("solder-tube", **texts)
        return
    got = answer("solder-tube", **texts)["results"]
    assert ("lead-free" in got["filler"]["text"]) == (solder not in LEAD)
    assert got["pipe_heat"]["low"] < got["pipe_heat"]["high"]


@MANY
@given(texts=texts_of(TUBE))
def test_fire_and_water_in_the_line_are_named_every_time(texts: dict[str, str]) -> None:
    got = answered(texts)
    if got is None:
        return
    told = {c["id"] for c in got["cautions"]}
    assert {"heat-behind", "water-in-tube"} <= told
    low, high = got["results"]["filler_mass"]["low"], got["results"]["filler_mass"]["high"]
    assert 0 < low < high
