"""A chart beside an answer says what the answer says: its curves asked anew at their points, its marks, its limits."""

import itertools
from collections.abc import Callable
from typing import Any

import pytest

from calc import answer
from calc.declare import by_rules
from calc.declare.catalogue import calculators
from tests.pages.read_chart import RIGHT, curves, height_at, limits, read, ring
from tests.pages.svg_shapes import Seen, Shape

TOLD = {
    "tip-flow": {"orifice": "1 mm", "gauge": "0.4 bar"},
    "cylinder-weather": {
        "gas": "oxygen",
        "gauge": "120 bar",
        "cylinder_temperature": "10 degC",
        "weather": "35 degC",
    },
    "hose-drop": {
        "gas": "oxygen",
        "gauge": "2 bar",
        "bore": "6.3 mm",
        "length": "20 m",
        "flow": "2000 L/h",
    },
    "oxygen-left": {"water_volume": "40 L", "gauge": "150 bar", "temperature": "20 degC"},
    "purge-time": {"bore": "6.3 mm", "length": "10 m", "oxygen_flow": "300 L/h", "fuel_flow": "250 L/h"},
    "regulator-mark": {
        "gas": "oxygen",
        "torch_gauge": "2 bar",
        "bore": "6.3 mm",
        "length": "20 m",
        "flow": "1500 L/h",
    },
}


def asked(calculator: str, **texts: str) -> dict[str, Any]:
    """An answer by metric rules, of the example values where none are given."""
    rules = texts.get("rules", "iso")
    inputs = calculators()[calculator].inputs
    usual = {
        name: by_rules(each.example, rules) for name, each in inputs.items() if each.example is not None
    }
    return answer(calculator, **(usual | {"rules": rules} | TOLD.get(calculator, {}) | texts))


def chart_of(got: dict[str, Any], place: int = 0) -> Seen:
    """The chart of an answer."""
    return Seen([p["svg"] for p in got["pictures"] if "bb-chart" in p["svg"]][place])


def named(seen: Seen, name: str) -> Shape:
    """The curve that a name stands beside."""
    word = seen.word(name)
    return min(curves(seen), key=lambda curve: curve.away((word.x, word.y)))


def same_when_asked(seen: Seen, curve: Shape, ask: Callable[[float], float | None], points: int) -> None:
    """Each drawn point of a curve, its number across asked anew, gives its number upward."""
    (_, low), (_, high) = read(seen, (0.0, 198.0)), read(seen, (0.0, 14.0))
    assert len(curve.points) == points
    for place in curve.points[:: max(1, points // 6)]:
        x, y = read(seen, place)
        assert ask(x) == pytest.approx(y, abs=0.012 * (high - low), rel=0.012)


@pytest.mark.parametrize(
    ("rules", "fuel", "gauge", "marks"),
    [
        ("us", "acetylene", "5 psi", [1, 2, 3, 5, 8, 12, 15]), ("iso", "acetylene", "0.4 bar", [0.1, 0.2, 0.35, 0.5, 0.8, 1]),
        ("us", "propane", "2 psi", [1, 2, 3, 5, 8]), ("us", "propane", "1 psi", [1, 2, 3, 5]), ("us", "propane", "7 psi", [1, 2, 3, 5, 8, 12, 15, 20]),
    ],
)  # fmt: skip
def test_flows_of_a_tip_at_other_gauges(rules: str, fuel: str, gauge: str, marks: list[float]) -> None:
    """Marks up to the limit of acetylene of the place, or up to four times the own gauge and no less than the fourth."""
    unit = "psi" if rules == "us" else "bar"
    given = {"orifice": "0.04 in", "fuel": fuel, "rules": rules}
    got = asked("tip-flow", gauge=gauge, **given)
    if fuel == "acetylene" and rules == "iso":
        marks = [mark for mark in marks if mark <= 1.5]
    seen = chart_of(got)
    for name, result in (("Oxygen", "oxygen_flow"), (fuel.capitalize(), "fuel_flow")):
        curve = named(seen, name)
        assert [read(seen, place)[0] for place in curve.points][: len(marks)] == pytest.approx(
            marks, abs=0.01 * marks[-1]
        )
        same_when_asked(
            seen,
            curve,
            lambda x, result=result: asked("tip-flow", gauge=f"{x:.4f} {unit}", **given)["results"][result][
                "value"
            ],
            len(curve.points),
        )
    assert limits(seen)[0] == pytest.approx([float(gauge.split(maxsplit=1)[0])], abs=0.01 * marks[-1])
    assert [row[0] for row in got["tables"][0]["rows"]][: len(marks)] == [f"{mark:g}" for mark in marks]


def test_weather_and_gauge_of_a_cylinder() -> None:
    seen = chart_of(got := asked("cylinder-weather"))
    (curve,) = curves(seen)
    assert read(seen, ring(seen)) == pytest.approx((10, 120), abs=1)
    assert curve.away(ring(seen)) < 0.5
    then = got["results"]["gauge_then"]["value"]
    across = ring(seen)[0] + (35 - 10) * (limits_place(seen) - ring(seen)[0]) / (limits(seen)[0][0] - 10)
    assert read(seen, (across, height_at(curve, across)))[1] == pytest.approx(then, abs=1.5)
    at_limit = read(seen, (limits_place(seen), height_at(curve, limits_place(seen))))[1]
    assert at_limit == pytest.approx(got["results"]["gauge_at_limit"]["value"], abs=1.5)


def limits_place(seen: Seen) -> float:
    """Where the first standing limit is drawn."""
    return next(
        p.points[0][0]
        for p in seen.of("path")
        if p.said.get("stroke-dasharray") == "1 3" and p.points[0][0] == p.points[1][0]
    )


def test_drop_of_a_hose_at_a_tenth_to_one_and_a_half_of_the_flow() -> None:
    seen = chart_of(asked("hose-drop"))
    (curve,) = curves(seen)
    assert [read(seen, place)[0] for place in curve.points] == pytest.approx(
        [200, 500, 1000, 1500, 2000, 2500, 3000], abs=15
    )
    same_when_asked(
        seen, curve, lambda x: asked("hose-drop", flow=f"{x:.0f} L/h")["results"]["drop"]["value"], 7
    )
    assert limits(seen)[0] == pytest.approx([2000], abs=15)


@pytest.mark.parametrize(("rules", "first", "last", "limit"), [("us", -20, 140, 125), ("iso", -30, 65, 50)])
def test_the_same_oxygen_warmer_and_colder(rules: str, first: int, last: int, limit: int) -> None:
    """In tens of °F or fives of °C, as far as the gas is kept: to 65 °C, which 150 °F is above."""
    given = {
        "us": {"gauge": "1500 psi", "temperature": "70 degF"},
        "iso": {"gauge": "150 bar", "temperature": "20 degC"},
    }[rules]
    seen = chart_of(asked("oxygen-left", rules=rules, **given))
    (curve,) = curves(seen)
    assert (read(seen, curve.points[0])[0], read(seen, curve.points[-1])[0]) == pytest.approx(
        (first, last), abs=1
    )
    assert len(curve.points) == (17 if rules == "us" else 20)
    own = tuple(float(text.split()[0]) for text in (given["temperature"], given["gauge"]))
    assert read(seen, ring(seen)) == pytest.approx(own, rel=0.01, abs=0.5)
    assert curve.away(ring(seen)) < 0.6
    assert limits(seen)[0] == pytest.approx([limit], abs=0.6)


def test_purges_at_a_quarter_to_four_times_the_flow() -> None:
    seen = chart_of(got := asked("purge-time"))
    (curve,) = curves(seen)
    assert [read(seen, place)[0] for place in curve.points] == pytest.approx(
        [62.5, 125, 187.5, 250, 375, 500, 750, 1000], abs=6
    )
    same_when_asked(
        seen,
        curve,
        lambda x: asked("purge-time", fuel_flow=f"{x:.1f} L/h")["results"]["purge_fuel_time"]["value"],
        8,
    )
    assert read(seen, ring(seen)) == pytest.approx(
        (250, got["results"]["purge_fuel_time"]["value"]), rel=0.01, abs=1
    )


@pytest.mark.parametrize(
    ("rules", "first", "last", "limit", "unit"),
    [("us", -40, 140, 125, "degF"), ("iso", -40, 60, 50, "degC")],
)
def test_vapor_of_propane_and_propylene_by_temperature(
    rules: str, first: int, last: int, limit: int, unit: str
) -> None:
    seen = chart_of(asked("liquid-fuel-left", rules=rules))
    for fuel in ("propane", "propylene"):
        curve = named(seen, fuel.capitalize())
        assert (read(seen, curve.points[0])[0], read(seen, curve.points[-1])[0]) == pytest.approx(
            (first, last), abs=1
        )
        for place in curve.points[4:8]:
            x, y = read(seen, place)
            got = asked("liquid-fuel-left", rules=rules, fuel=fuel, temperature=f"{x:.2f} {unit}")[
                "results"
            ]["vapour_gauge"]["value"]
            assert got == pytest.approx(y, rel=0.02, abs=0.02 * read(seen, (0, 14))[1])
    assert limits(seen)[0] == pytest.approx([limit], abs=0.6)


def test_regulators_on_longer_hoses() -> None:
    seen = chart_of(got := asked("regulator-mark"))
    (curve,) = curves(seen)
    assert [read(seen, place)[0] for place in curve.points] == pytest.approx([5, 10, 20, 30, 40], abs=0.3)

    def wanted(x: float) -> float:
        results = asked("regulator-mark", length=f"{x:.2f} m")["results"]
        return results["torch_gauge"]["value"] + results["drop"]["value"]

    for place in curve.points:
        x, y = read(seen, place)
        drop = asked("regulator-mark", length=f"{x:.2f} m")["results"]["drop"]["value"]
        assert 2 + drop == pytest.approx(y, abs=0.02)
    assert read(seen, ring(seen)) == pytest.approx((20, got["results"]["mark"]["value"]), abs=0.3)


@pytest.mark.parametrize(("rules", "handle"), [("us", 122.0), ("iso", 50.0)])
def test_a_part_cools_from_its_heat_to_fifty_degrees(rules: str, handle: float) -> None:
    seen = chart_of(got := asked("cool-down", rules=rules))
    (curve,) = curves(seen)
    assert len(curve.points) == 17
    assert read(seen, curve.points[0])[0] == pytest.approx(0, abs=0.3)
    last = read(seen, curve.points[-1])
    assert last[0] == pytest.approx(got["results"]["air_time"]["value"], rel=0.01)
    assert last[1] == pytest.approx(handle, abs=6)
    assert limits(seen)[1] == pytest.approx([handle], abs=6)
    heights = [read(seen, place)[1] for place in curve.points]
    steps = [a - b for a, b in itertools.pairwise(heights)]
    assert steps == pytest.approx([(heights[0] - heights[-1]) / 16] * 16, rel=0.1)


@pytest.mark.parametrize(
    ("first", "last"), [("20 degC", "5 degC"), ("10 degC", "12 degC"), ("20 degC", "20 degC")]
)
def test_cooling_alone_and_the_own_reading_of_a_leak_test(first: str, last: str) -> None:
    """The line reaches 1.3 times as far as it grew colder, at least 5 K, to both sides where it grew warmer."""
    got = asked(
        "leak-test",
        gas="oxygen",
        first_gauge="3 bar",
        last_gauge="2.7 bar",
        first_temperature=first,
        last_temperature=last,
    )
    seen = chart_of(got)
    (curve,) = curves(seen)
    colder = float(first.split(maxsplit=1)[0]) - float(last.split(maxsplit=1)[0])
    assert read(seen, ring(seen)) == pytest.approx((colder, 0.3), abs=0.25)
    reach = max(1.3 * abs(colder), 5)
    ends = (0 if colder >= 0 else -reach, reach)
    assert (read(seen, curve.points[0])[0], read(seen, curve.points[-1])[0]) == pytest.approx(
        ends, abs=0.25
    )
    at = height_at(curve, ring(seen)[0])
    assert read(seen, (0, at))[1] == pytest.approx(got["results"]["cooling_drop"]["value"], abs=0.004)
    assert len(curve.points) == 9


def test_gauges_of_an_acetylene_cylinder_by_contents() -> None:
    seen = chart_of(asked("acetylene-left", gauge="12 bar", temperature="15 degC"))
    assert read(seen, ring(seen)) == pytest.approx((15, 12), abs=0.4)
    assert limits(seen)[0] == pytest.approx([50], abs=0.6)
    for share in (25, 50, 75, 100):
        curve = named(seen, f"{share} % full")
        place = curve.points[len(curve.points) // 2]
        x, y = read(seen, place)
        got = asked("acetylene-left", gauge=f"{y:.3f} bar", temperature=f"{x:.2f} degC")["results"][
            "share_by_gauge"
        ]["value"]
        assert got == pytest.approx(share, abs=1.5)


@pytest.mark.parametrize(
    ("time", "last", "per"), [("30 s", 60, 1), ("3 min", 270, 1), ("4 min", 6, 60), ("2.5 h", 3.75, 3600)]
)
def test_the_far_side_while_the_flame_is_held(time: str, last: float, per: float) -> None:
    """Half as long again, at least a minute: in seconds below 300, minutes below three hours, then hours."""
    got = asked("far-side", time=time)
    seen = chart_of(got)
    (curve,) = curves(seen)
    assert len(curve.points) == 25
    assert read(seen, curve.points[-1])[0] == pytest.approx(last, rel=0.01)
    x, y = read(seen, ring(seen))
    number, unit = time.split()
    assert x * per == pytest.approx(float(number) * {"s": 1, "min": 60, "h": 3600}[unit], rel=0.02)
    assert y == pytest.approx(got["results"]["far_temperature"]["value"], rel=0.02, abs=1)
    assert curve.away(ring(seen)) < 4
    assert limits(seen)[1] == pytest.approx([100], rel=0.02)


def test_the_most_that_a_cylinder_gives_by_what_is_in_it() -> None:
    given = {"acetylene_contents": "2 m^3", "full_contents": "5 m^3", "flow": "300 L/h"}
    seen = chart_of(got := asked("draw-limit", **given))
    assert read(seen, ring(seen)) == pytest.approx((2, 300), rel=0.02)
    limit, full = (got["results"][name]["value"] for name in ("draw_limit", "full_draw_limit"))
    fitting = []
    for curve in curves(seen):
        assert read(seen, curve.points[0]) == pytest.approx((0, 0), abs=3)
        assert read(seen, curve.points[-1])[0] == pytest.approx(5, rel=0.01)
        assert len(curve.points) == 13
        fitting.append(read(seen, curve.points[-1])[1] == pytest.approx(full, rel=0.01) and read(seen, (0, height_at(curve, ring(seen)[0])))[1] == pytest.approx(limit, rel=0.02, abs=2))  # fmt: skip
    assert sum(fitting) == 1
    larger = chart_of(asked("draw-limit", **(given | {"acetylene_contents": "5 m^3"})))
    assert ring(larger)[0] == pytest.approx(RIGHT, abs=0.2)


def test_oxygen_in_a_room_crosses_its_limits_when_the_answer_says() -> None:
    got = asked("oxygen-rich", room="50 m^3", leak="2000 L/h", fresh_air="0 m^3/h")
    seen = chart_of(got)
    (curve,) = curves(seen)
    assert limits(seen)[1] == pytest.approx([22, 23.5], abs=0.03)
    assert len(curve.points) == 25
    for limit, name in ((22, "time_to_22"), (23.5, "time_to_23_5")):
        minutes = got["results"][name]["value"]
        xs = [read(seen, place) for place in curve.points]
        before = max(x for x, y in xs if y <= limit + 0.01)
        after = min(x for x, y in xs if y >= limit - 0.01)
        hours = 60 if xs[-1][0] * 60 > 2 * 1.2 * minutes and xs[-1][0] < minutes else 1
        assert before * hours - 0.02 * minutes <= minutes <= after * hours + 0.02 * minutes


def test_hoses_let_down_from_their_gauge_until_the_answer_says() -> None:
    got = asked("bleed-down", fuel_gauge="0.5 bar", oxygen_gauge="3 bar")
    seen = chart_of(got)
    for name, gauge, result in (
        ("Oxygen", 3.0, "bleed_oxygen_time"),
        ("Acetylene", 0.5, "bleed_fuel_time"),
    ):
        curve = next(
            c for c in curves(seen) if read(seen, c.points[0])[1] == pytest.approx(gauge, abs=0.03)
        )
        assert named(seen, name) is curve
        assert read(seen, curve.points[0])[0] == pytest.approx(0, abs=0.2)
        last = read(seen, curve.points[-1])
        assert 0 <= last[1] + 0.02 < 0.2 * gauge + 0.04
        assert last[0] <= got["results"][result]["value"] * 1.01 + 0.1
        heights = [y for _, y in curve.points]
        assert heights == sorted(heights)


def test_both_cylinders_run_down_in_straight_lines_to_their_stops() -> None:
    got = asked("hours-left")
    seen = chart_of(got)
    results = got["results"]
    for name, result in (("Oxygen", "oxygen_hours"), ("Fuel gas", "fuel_hours")):
        curve = next(
            c
            for c in curves(seen)
            if read(seen, c.points[-1])[0] == pytest.approx(results[result]["value"], rel=0.01)
        )
        assert curve.away((seen.word(name).x, seen.word(name).y)) < 10
        start, half, end = (read(seen, place) for place in curve.points)
        assert start == pytest.approx((0, 100), abs=1)
        assert half == pytest.approx((end[0] / 2, 50 + end[1] / 2), abs=0.7)
        assert 0 <= end[1] + 0.5 < 60
    assert limits(seen)[0] == pytest.approx([results["stop_hours"]["value"]], rel=0.02, abs=0.05)
