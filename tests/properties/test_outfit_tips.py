"""Which tip of an outfit goes into a calculator of any process."""

import sys
from dataclasses import dataclass
from typing import Annotated, Any

import pytest

from calc.declare import Answer, Choice, Field, Figure, Shown, calculator
from calc.declare.catalogue import calculators
from calc.declare.declaration import DECLARED
from calc.declare.inputs import GAUGE, LENGTH
from calc.outfit.file import fill
from calc.trade.fields import FUEL, TIP_LABEL
from calc.trade.tips.owned import Tip, is_within, nearest_tip

PROCESSES = ("welding", "braze-welding", "brazing", "soldering", "cutting", "heating")
ORIFICE = Field("Hole", LENGTH, low="0.2 mm", high="6 mm", drill=True, optional=True)
PRINTED = Field("Pressure", GAUGE, low="0.1 psi", high="150 psi", optional=True)
OUTFIT = {
    "history": "known", "flashback": "none", "fuel": "propane",
    "tip_1_label": "long one", "tip_1_use": "cutting", "tip_1_orifice": "1.6 mm", "tip_1_oxygen_gauge": "40 psi",
    "tip_1_fuel_gauge": "6 psi",
    "tip_2_use": "cutting", "tip_2_orifice": "0.8 mm",
    "tip_3_use": "brazing", "tip_3_orifice": "#56",
    "tip_4_use": "welding", "tip_4_orifice": "#56",
    "tip_5_use": "heating", "tip_5_orifice": "#56",
    "tip_6_use": "cutting",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Nothing:
    """Nothing is worked out."""

    done: Annotated[Figure, Shown("Done", words=True)]


@pytest.fixture(autouse=True)
def declared() -> object:
    @calculator("any-work", "Any work")
    def any_work(
        process: Annotated[str, Choice("Work", {each: each for each in PROCESSES}, example="welding")],
        thickness: Annotated[
            float | None, Field("Thickness", LENGTH, low="0.1 mm", high="400 mm", optional=True)
        ],
        fuel: Annotated[str, FUEL],
        tip_label: Annotated[str | None, TIP_LABEL],
        maker_orifice: Annotated[float | None, ORIFICE],
        maker_oxygen_gauge: Annotated[float | None, PRINTED],
        maker_fuel_gauge: Annotated[float | None, PRINTED],
    ) -> Answer[Nothing]:
        """A calculator of a test."""
        raise NotImplementedError

    calculators()["any-work"] = getattr(any_work, DECLARED)
    yield
    del calculators()["any-work"]


def taken(process: str, thickness: str, **more: str) -> dict[str, Any]:
    return dict(fill("any-work", {"process": process, "thickness": thickness}, OUTFIT | more)["texts"])


@pytest.mark.parametrize(
    ("process", "thickness", "hole"),
    [
        pytest.param("cutting", "25 mm", "1.6 mm", id="carvill-1993-read-cutting-25-mm"),
        pytest.param("cutting", "6 mm", "0.8 mm", id="carvill-1993-read-cutting-6-mm"),
        pytest.param("brazing", "1/8 in", "#56", id="navy14119-read-brazing-1/8-in"),
        pytest.param("braze-welding", "1/8 in", "#56", id="navy14119-read-braze-welding-1/8-in"),
    ],
)
def test_a_tip_for_the_process_is_taken(process: str, thickness: str, hole: str) -> None:
    assert taken(process, thickness)["maker_orifice"] == hole


def test_the_name_and_the_pressures_come_with_it() -> None:
    assert taken("cutting", "25 mm") == {
        "fuel": "propane", "tip_label": "long one", "maker_orifice": "1.6 mm", "maker_oxygen_gauge": "40 psi",
        "maker_fuel_gauge": "6 psi",
    }  # fmt: skip


def test_a_fuel_pressure_goes_with_its_own_fuel_only() -> None:
    without = {name: text for name, text in OUTFIT.items() if name != "fuel"}
    got = fill("any-work", {"process": "cutting", "thickness": "25 mm", "fuel": "propane"}, without)
    assert "maker_fuel_gauge" not in got["texts"]
    assert got["texts"]["maker_orifice"] == "1.6 mm"


def test_the_hole_of_a_cutting_tip_does_not_ask_how_the_torch_mixes() -> None:
    assert taken("cutting", "25 mm", torch_type="injector")["maker_orifice"] == "1.6 mm"
    assert "maker_orifice" not in taken("brazing", "1/8 in", torch_type="injector")


@pytest.mark.parametrize("process", ["soldering", "heating"])
def test_where_no_table_chooses_a_tip_none_is_taken(process: str) -> None:
    got = fill("any-work", {"process": process, "thickness": "3 mm"}, OUTFIT)
    assert "maker_orifice" not in got["texts"]
    assert any("no table" in said for said in got["said"])


@pytest.mark.parametrize(
    ("process", "thickness"), [("welding", "300 mm"), ("cutting", "1 mm"), ("cutting", "399 mm")]
)
def test_outside_the_tables_none_is_taken(process: str, thickness: str) -> None:
    got = fill("any-work", {"process": process, "thickness": thickness}, OUTFIT)
    assert "maker_orifice" not in got["texts"]
    assert got["said"][-1].startswith("No tip is taken: the ")


def test_a_calculator_may_say_itself_which_hole_it_wants(monkeypatch: pytest.MonkeyPatch) -> None:
    def wanted_tip(given: dict[str, Any]) -> tuple[str, Figure]:
        if "thickness" not in given:
            raise ValueError("say how thick it is")
        return "cutting", Figure(0.8e-3, "", "practice", low=0.7e-3, high=0.9e-3)

    monkeypatch.setattr(sys.modules[__name__], "wanted_tip", wanted_tip, raising=False)
    texts = {"process": "welding", "rules": "iso"}
    assert fill("any-work", texts | {"thickness": "25 mm"}, OUTFIT)["texts"]["maker_orifice"] == "0.8 mm"
    assert "No tip is taken: say how thick it is." in fill("any-work", texts, OUTFIT)["said"]


@pytest.mark.parametrize(
    ("hole", "within"),
    [(0.65e-3, False), (0.75e-3, True), (0.8e-3, True), (0.90e-3, True), (1.2e-3, False)],
)
def test_a_hole_is_held_against_what_the_sources_print(hole: float, within: bool) -> None:
    assert is_within(hole, Figure(0.8e-3, "", "practice", low=0.74e-3, high=0.9e-3)) is within


def test_of_two_as_near_the_smaller_is_taken() -> None:
    wanted = Figure(1.0e-3, "", "practice", low=0.8e-3, high=1.2e-3)
    tips = (Tip(number=1, use="welding", orifice=1.125e-3), Tip(number=2, use="welding", orifice=0.875e-3))
    assert nearest_tip(tips, "welding", wanted) == tips[1]


@pytest.mark.parametrize("number", range(1, 9))
def test_every_field_of_a_tip_begins_with_its_number(number: int) -> None:
    labels = [asked.label for name, asked in calculators()["my-outfit"].inputs.items() if name.startswith(f"tip_{number}_")]
    assert len(labels) == 5
    assert all(label.startswith(f"Tip {number}: ") for label in labels)
