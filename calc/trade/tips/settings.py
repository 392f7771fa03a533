"""Tip, pressures and flows for any work and fuel: the maker's figures first, else where to start."""

from collections.abc import Callable
from dataclasses import replace

from calc.answer.sentences import distance
from calc.ask.errors import InputError
from calc.data.tables import table
from calc.declare import Step
from calc.formulas.setup.cut_shape import preheat_holes
from calc.formulas.setup.cutting import FUELS as CUTTING_FUELS
from calc.formulas.setup.cutting import (
    LARGER,
    LEAST_THICKNESS,
    cutting_gauges,
    cutting_orifice,
    cutting_oxygen_flow,
    preheat_fuel_flow,
)
from calc.formulas.setup.flows import acetylene_flow, flows_in_print, steel_of_same_flow
from calc.formulas.setup.printed import HAIR
from calc.formulas.setup.tips import welding_orifice
from calc.formulas.setup.travel import backhand_from
from calc.show.scales import Scale
from calc.trade.cut.steel_cut import thin_sheet
from calc.trade.fields import FUEL, FUELS
from calc.trade.gas.acetylene_limit import require_acetylene_gauge
from calc.trade.tips.heating_settings import (
    HEAT_TAKEN,
    Wanted,
    brazing_setting,
    fuel_passed,
    heating_setting,
    oxygen_of,
    same_heat_setting,
)
from calc.trade.tips.welding_torch import (
    Setting,
    as_its_maker_prints,
    equal_pressure_setting,
    insert_setting,
    nearest_drill_said,
    neutral_oxygen,
    sizes_larger,
    widened,
)
from calc.values.figures import Figure
from calc.values.numbers import plain_number
from calc.values.quantities import Length, Power
from calc.values.units import from_si

PROCESSES = {
    "welding": "Gas welding",
    "braze-welding": "Braze welding",
    "brazing": "Torch brazing",
    "soldering": "Torch soldering",
    "cutting": "Oxygen cutting",
    "heating": "Heating, bending, straightening",
}
"""Kinds of work, by id."""
METALS = {
    "low-carbon-steel": "Low-carbon steel",
    "medium-carbon-steel": "Medium-carbon steel",
    "low-alloy-steel": "Low-alloy steel",
    "galvanised-steel": "Galvanised steel",
    "stainless-steel": "Stainless steel",
    "cast-iron": "Cast iron",
    "copper": "Copper",
    "brass": "Brass",
    "aluminium": "Aluminium",
}
"""Metals that a tip is chosen for, by id."""
THICKNESS_LABEL = "Thickness of the metal"
MPS = "methylacetylene-propadiene"
METAL_LABEL = "Metal"
TORCH_LABEL = "Torch"
MAKERS_LABEL = "Fuel gas pressure its maker prints"
LIKE_STEEL = ("low-carbon-steel", "medium-carbon-steel", "low-alloy-steel", "galvanised-steel")
"""Welded with the tip of low-carbon steel; common practice."""
CUT = ("low-carbon-steel", "medium-carbon-steel", "low-alloy-steel", "galvanised-steel")
"""Metals that burn in oxygen below their melting point, with an oxide that runs off."""
NOT_CUT = {row.metal: row.why for row in table("cutting-metals") if row.cuts == "no"}
"""Why oxygen does not cut a metal, by id."""


def _outside(low: Length, high: Length, rules: str, why: str) -> InputError:
    least, most = distance(low, rules, 3, "up"), distance(high, rules, 3, "down")
    return InputError("thickness", THICKNESS_LABEL, f"{why}; give {least} to {most}.")


def _held(thickness: Length, low: Length, high: Length, rules: str, why: str) -> None:
    if not low * (1 - HAIR) <= thickness <= high * (1 + HAIR):
        raise _outside(low, high, rules, why)


def why_no_welding(fuel: str, rules: str) -> str:
    """Why a fuel gas does not weld, in the units of a rule set.

    Args:
        fuel: Id of a fuel gas other than acetylene.
        rules: Rule set.

    Source:
        [chemicals-1-5] for the heat of the cone; the effect on iron by equilibrium.
    """
    unit, said = ("Btu/ft^3", "Btu/ft³") if rules == "us" else ("MJ/m^3", "MJ/m³")
    cone = {
        row.fuel: plain_number(from_si(row.cone, unit), 2) for row in table("fuel-heats-chemicals-2025")
    }
    name = FUELS[fuel].partition(" (")[0].lower()
    return (
        f"{name} sets free about {cone[fuel]} {said} in its inner cone, acetylene {cone['acetylene']} {said}, and with the "
        "oxygen that its torch draws the burnt gas burns molten iron: it does not weld steel, and no setting to weld another metal with it is kept here"
    )


def require_welding_fuel(fuel: str, rules: str) -> None:
    """Refuse to plan benches that weld with a gas that does not.

    Args:
        fuel: Id of a fuel gas.
        rules: Rule set.

    Raises:
        InputError: The gas does not weld.
    """
    if fuel != "acetylene":
        raise InputError(
            "fuel", "Fuel gas", f"{why_no_welding(fuel, rules)}; choose acetylene, or give 0 benches welding."
        )


def _weld(wanted: Wanted) -> Setting:
    metal, torch_type = wanted.metal, wanted.torch_type
    if metal not in METALS:
        raise InputError("metal", METAL_LABEL, f"no welding flow is kept for {metal.replace('-', ' ')}; choose another metal or take what the maker of the tip prints.")  # fmt: skip
    alike = "low-carbon-steel" if metal in LIKE_STEEL else metal
    if wanted.fuel == MPS:
        return _weld_with_mps(wanted, alike)
    if wanted.fuel != "acetylene":
        raise InputError(
            "fuel", FUEL.label, f"{why_no_welding(wanted.fuel, wanted.rules)}; choose acetylene."
        )
    _held(
        wanted.thickness,
        *welding_reach(alike, torch_type),
        wanted.rules,
        "no source prints a welding tip for it",
    )
    if torch_type == "injector":
        found = insert_setting(wanted.thickness, "leftward", wanted.oxygen_gauge, wanted.fuel_gauge, alike)
        if wanted.orifice is not None:
            hole = as_its_maker_prints(wanted.orifice)
            found = replace(found, orifice=hole, drill=nearest_drill_said(wanted.orifice))
    else:
        found = equal_pressure_setting(
            thickness=wanted.thickness, technique="leftward", orifice=wanted.orifice, oxygen=wanted.oxygen_gauge, acetylene=wanted.fuel_gauge,
            rules=wanted.rules, metal=alike,
        )  # fmt: skip
    fuel = _with_other_flows(found.fuel_flow, wanted.thickness, alike)
    return replace(found, fuel_flow=fuel, oxygen_flow=neutral_oxygen(fuel))


def _with_other_flows(flow: Figure, thickness: Length, metal: str) -> Figure:
    """The flow with the backhand rule and every printed flow of steel in its band."""
    if metal != "low-carbon-steel":
        return flow
    others = list(flows_in_print(thickness))
    if thickness >= backhand_from() * (1 - HAIR):
        others.append(acetylene_flow(thickness, metal, "rightward"))
    assert flow.value is not None
    return widened(
        flow.value, flow, *(end for other in others for end in (other.value, other.low, other.high))
    )


def welding_reach(metal: str, torch_type: str) -> tuple[Length, Length]:
    """Least and most of a metal that a welding tip or insert is printed for, m."""
    inserts, series = table("injector-inserts"), table("welding-flows-davies")
    times = steel_of_same_flow(1.0, metal)
    low, high = inserts[0].thinnest, series[-1].thickness
    if sizes_larger(metal):
        larger = (
            inserts[-1].thinnest if torch_type == "injector" else table("welding-orifices-faa")[-1].thickest
        )
        high = min(high, larger)
    return low * max(1.0, 1.0 / times), high * min(1.0, 1.0 / times)


def _weld_with_mps(wanted: Wanted, metal: str) -> Setting:
    (row,) = table("mps-welding-navy")
    if metal != "low-carbon-steel" or wanted.torch_type == "injector":
        raise InputError(
            "fuel",
            FUEL.label,
            "the one text that prints this gas for welding has steel and an equal-pressure torch only; "
            "choose acetylene.",
        )
    _held(
        wanted.thickness, table("welding-orifices-faa")[0].thinnest, row.thickest, wanted.rules,
        "the one text that prints this gas for welding has thinner steel only",
    )  # fmt: skip
    said = "Historic: as one navy text prints it for a torch made for acetylene. Ask the makers of torch and tip"
    least, most = row.tip_sizes_low, row.tip_sizes_high
    larger = [welding_orifice(wanted.thickness, step).value for step in (least, (least + most) / 2, most)]
    hole = Figure(
        larger[1], row.source, row.how_sure, low=larger[0], high=larger[2],
        basis=f"{said}. One or two tip sizes larger than for acetylene, in the sizes of the tables of welding tips.",
    )  # fmt: skip
    if wanted.orifice is not None:
        hole = as_its_maker_prints(wanted.orifice)

    def gauge(gas: str, makers: float | None) -> Figure:
        low, high = getattr(row, f"{gas}_low"), getattr(row, f"{gas}_high")
        printed = Figure((low + high) / 2, row.source, row.how_sure, low=low, high=high, basis=f"{said}.")
        return printed if makers is None else as_its_maker_prints(makers)

    oxygen, gas = gauge("oxygen", wanted.oxygen_gauge), gauge("fuel", wanted.fuel_gauge)
    assert hole.value is not None
    flow = fuel_passed(MPS, hole.value, 1.0, oxygen, gas)
    return Setting(
        orifice=hole,
        drill=nearest_drill_said(hole.value),
        oxygen_gauge=oxygen,
        fuel_gauge=gas,
        oxygen_flow=oxygen_of(MPS, flow),
        fuel_flow=flow,
    )


def insert_for_heat(process: str, metal: str, thickness: Length) -> Length:
    """Thickness of the steel whose insert a braze, a solder joint or a braze weld takes, m.

    Args:
        process: `brazing`, `braze-welding` or `soldering`.
        metal: Id of the metal; copper takes more heat.
        thickness: Of it, m; what lies beyond the inserts takes the first or the last.
    """
    thinnest, thickest = table("injector-inserts")[0].thinnest, table("welding-flows-davies")[-1].thickness
    more = metal == "copper" and process != "soldering"
    alike = steel_of_same_flow(thickness, "copper") if more else thickness
    return float(min(max(alike, thinnest), thickest))


def _braze_with_injector(wanted: Wanted) -> Setting:
    """The insert of an injector torch for a braze: that for welding steel of the same thickness."""
    held = insert_for_heat(wanted.process, wanted.metal, wanted.thickness)
    found = insert_setting(held, "leftward", wanted.oxygen_gauge, wanted.fuel_gauge)
    said = f"No insert is printed for {PROCESSES[wanted.process].lower()}: that for welding steel as thick, common practice."
    if wanted.orifice is not None:
        hole = as_its_maker_prints(wanted.orifice)
        found = replace(found, orifice=hole, drill=nearest_drill_said(wanted.orifice))
    else:
        insert = replace(found.orifice, how_sure="practice", basis=said)
        found = replace(found, orifice=insert, drill=insert)
    assert found.fuel_flow.value is not None
    flow = replace(
        found.fuel_flow, how_sure="practice", low=found.fuel_flow.value / 2, high=found.fuel_flow.value * 2,
        basis=f"{said} The band is the insert before it and the one after.",
    )  # fmt: skip
    return replace(found, fuel_flow=flow, oxygen_flow=neutral_oxygen(flow))


def _braze(wanted: Wanted) -> Setting:
    thinnest = table("welding-orifices-faa")[0].thinnest
    if wanted.thickness < thinnest * (1 - HAIR):
        least = distance(thinnest, wanted.rules, 3, "up")
        raise InputError(
            "thickness",
            THICKNESS_LABEL,
            f"no source prints a brazing tip for it; give {least} or more.",
        )
    if wanted.process == "braze-welding" and wanted.fuel != "acetylene":
        raise InputError(
            "fuel",
            FUEL.label,
            "no source in our data prints braze welding with this gas, whose soft flame heats widely "
            "and not in one spot; choose acetylene, or braze a close joint.",
        )
    if wanted.torch_type == "injector" and None in (wanted.orifice, wanted.oxygen_gauge, wanted.fuel_gauge):
        if wanted.fuel == "acetylene":
            return _braze_with_injector(wanted)
        raise InputError(
            "torch_type",
            TORCH_LABEL,
            f"no tip of an injector torch is printed for {PROCESSES[wanted.process].lower()} with this gas; "
            "take what its maker prints, or choose equal pressure.",
        )
    return brazing_setting(wanted) if wanted.fuel == "acetylene" else same_heat_setting(wanted)


def _cut(wanted: Wanted) -> Setting:
    metal, thickness, fuel = wanted.metal, wanted.thickness, wanted.fuel
    if metal not in CUT:
        why = NOT_CUT.get(metal, "no cutting table is printed for it")
        raise InputError(
            "metal",
            METAL_LABEL,
            f"oxygen does not cut {metal.replace('-', ' ')}: {why}; choose a carbon steel, or another "
            "way to cut.",
        )
    if fuel not in CUTTING_FUELS:
        raise InputError(
            "fuel",
            FUEL.label,
            f"no cutting table in our data prints {FUELS[fuel].lower()}; take what the maker of the tip "
            "prints, or choose acetylene, propane or methane.",
        )
    thickest = table(LARGER)[-1].thickness
    thin = thickness < LEAST_THICKNESS * (1 - HAIR)
    why = "no cutting table is printed for it" + (f": {thin_sheet(wanted.rules)}" if thin else "")
    _held(thickness, LEAST_THICKNESS, thickest, wanted.rules, why)
    hole = cutting_orifice(thickness)
    hole = replace(hole, basis=f"Of the cutting oxygen. {hole.basis}")
    oxygen, gas = cutting_gauges(thickness, fuel)
    if wanted.orifice is not None:
        hole = as_its_maker_prints(wanted.orifice)
    if wanted.oxygen_gauge is not None:
        oxygen = as_its_maker_prints(wanted.oxygen_gauge)
    if wanted.fuel_gauge is not None:
        gas = as_its_maker_prints(wanted.fuel_gauge)
    assert hole.value is not None
    flow = preheat_fuel_flow(thickness, fuel)
    jet, flames = cutting_oxygen_flow(thickness), oxygen_of(fuel, flow)
    shown = Scale("cfh", 2, free_gas=True) if wanted.rules == "us" else Scale("L/h", 2, free_gas=True)
    both = [
        (a or 0.0) + (b or 0.0)
        for a, b in ((jet.value, flames.value), (jet.low, flames.low), (jet.high, flames.high))
    ]
    said = f"About {shown.said(jet.value or 0.0)} for the cut and {shown.said(flames.value or 0.0)} for the flames."
    return Setting(
        orifice=hole, drill=nearest_drill_said(hole.value), oxygen_gauge=oxygen, fuel_gauge=gas,
        oxygen_flow=Figure(both[0], jet.source, jet.how_sure, low=both[1], high=both[2], basis=said), fuel_flow=flow, holes=preheat_holes(thickness),
    )  # fmt: skip


_WORKS: dict[str, Callable[[Wanted], Setting]] = {
    "welding": _weld,
    "braze-welding": _braze,
    "brazing": _braze,
    "soldering": _braze,
    "cutting": _cut,
    "heating": heating_setting,
}


def setting(
    *,
    process: str,
    metal: str,
    thickness: Length | None,
    fuel: str,
    torch_type: str | None,
    orifice: Length | None,
    oxygen_gauge: float | None,
    fuel_gauge: float | None,
    rules: str,
    heat: Power | None = None,
    steps: list[Step] | None = None,
) -> Setting:
    """Tip, pressures at the torch and flows to start from; what the maker prints comes first.

    Args:
        process: Id of `PROCESSES`.
        metal: Id of the metal; for brazing, soldering and heating any.
        thickness: Of the metal, m; for heating it may be None.
        fuel: Id of the fuel gas.
        torch_type: `injector`, or `equal-pressure`, which None stands for.
        orifice: The tip's hole as its maker prints it, m, or None.
        oxygen_gauge: Oxygen gauge as the maker prints it, Pa, or None.
        fuel_gauge: Fuel gauge likewise.
        rules: Rule set.
        heat: Heat into the work, W, for heating; None takes `HEAT_TAKEN`.
        steps: List that lines of working are added to.

    Returns:
        The setting, each figure with band, source and grade.

    Raises:
        InputError: The fuel does not do that work, the metal or the thickness
            is printed nowhere for it, or acetylene is above its limit.
    """
    require_acetylene_gauge(fuel, fuel_gauge or 0.0, rules, "maker_fuel_gauge", MAKERS_LABEL)
    if thickness is None and process != "heating":
        raise InputError("thickness", THICKNESS_LABEL, "nothing is written here; write how thick it is.")
    wanted = Wanted(
        process=process, metal=metal, thickness=thickness or 0.0, fuel=fuel, torch_type=torch_type or "equal-pressure", orifice=orifice, oxygen_gauge=oxygen_gauge,
        fuel_gauge=fuel_gauge, rules=rules, heat=HEAT_TAKEN if heat is None else heat, steps=[] if steps is None else steps,
    )  # fmt: skip
    return _WORKS[process](wanted)
