"""Results of the plan of a class, each with what stands behind it."""

from collections.abc import Sequence

from calc.class_plan.cost import Item, cost_of
from calc.class_plan.gas import Taken, summed
from calc.class_plan.one_try import Try
from calc.class_plan.passes import Evening, Pass
from calc.class_plan.rota import fire_watchers, last_flame
from calc.class_plan.supplies import Done, Rods, total_of
from calc.class_plan.tables import Stock
from calc.class_plan.times import clock
from calc.trade.gas.banks import Bank
from calc.trade.gas.draws import FRACTIONS, draw_limit_of
from calc.trade.gas.stocks import FIT
from calc.trade.safety.surroundings import watch_row
from calc.values.figures import Figure

OWN_RULE = "Our own rule."


def evening_figures(
    evening: Evening, sessions: Sequence[Sequence[Pass]], begin: int, rules: str
) -> dict[str, Figure]:
    """Results of the group The evening, by their names."""
    every = [one for passes in sessions for one in passes]
    last = last_flame(evening, sessions[0])
    spare = min(evening.length - last_flame(evening, passes) - evening.after for passes in sessions)
    fewer = f"; {evening.benches} are there" if evening.benches > evening.hot else ""
    return {
        "sessions_needed": Figure(
            float(len(sessions)), "", "practice",
            basis="Exercises one after the other; tries that no longer fit go into the next session.",
        ),
        "hot_benches": Figure(
            float(evening.hot), "", "practice", words=f"each watched by another learner{fewer}",
            basis="Never more than half of the learners: one holds the torch, the next one watches.",
        ),
        "rounds": Figure(float(evening.rounds), "definition", "computed", basis="Learners over benches hot at once."),
        "torch_time": Figure(
            60.0 * sum(one.turn for one in every), "", "practice", words="the same for each",
            basis="Tries times the time at the bench for one, flame on and off, from the table of exercises.",
        ),
        "last_flame": Figure(
            None, "definition", "computed", words=clock(begin + last, rules),
            basis="Set-up, demonstration and all turns after the start.",
        ),
        "left_over": Figure(60.0 * spare, "definition", "computed", basis="After the watch is over, until the end."),
    }  # fmt: skip


def safety_figures(
    evening: Evening, tries: Sequence[Try], watch: Figure, rules: str
) -> dict[str, Figure | None]:
    """Results of the group Fire and eyes, by their names."""
    row = watch_row(rules).row
    first = " and ".join(f"learner {one}" for one in fire_watchers(evening, 0))
    return {
        "fire_watch": watch,
        "watchers": Figure(
            None, "", "practice", words=f"{first}, then the next ones every 15 min; the instructor stays",
            basis="The rota names them all. A watcher does nothing else.",
        ),
        "monitoring": Figure(
            row.monitoring, row.source, row.how_sure, words="by the instructor, after the session",
            basis="Later looks of the rule.",
        ) if row.monitoring else None,
        "clear_distance": max((one.clear for one in tries), key=lambda figure: figure.value or 0.0),
        "shade_minimum": max((one.shade for one in tries), key=lambda figure: figure.value or 0.0),
    }  # fmt: skip


def material_figures(
    all_done: Sequence[Done], stocks: Sequence[Stock], rods: Sequence[Rods],
    ready: Sequence[tuple[str, str, int]],
) -> dict[str, Figure | None]:  # fmt: skip
    """Results of the cut list and the rods, by their names; what is not there is left out."""
    found: dict[str, Figure | None] = {
        "coupons": Figure(
            float(sum(one.wanted.tries * one.learners for one in all_done)), "definition", "computed",
            basis="Tries times learners, without what is demonstrated.",
        ),
        "pieces": Figure(
            float(sum(kind.count for one in stocks for kind in one.cuts.kinds)), "definition", "computed",
            basis="For all tries, the demonstration, and spare.",
        ) if stocks else None,
        "bought": Figure(
            None, "", "practice", words="; ".join(f"{sets} × {what}" for _, what, sets in ready),
            basis="Sets for all tries, the demonstration, and spare.",
        ) if ready else None,
    }  # fmt: skip
    for name in ("sheet", "plate"):
        own = [one.cuts for one in stocks if one.stock == name]
        if not own:
            continue
        count = sum(cuts.sheets for cuts in own)
        found[f"{name}s"] = Figure(
            float(count),
            "definition",
            "computed",
            basis="Packed in strips by straight cuts; a better packing may exist.",
        )
        waste = sum(cuts.waste * cuts.sheets for cuts in own) / count
        found[f"{name}_waste"] = Figure(
            max(waste, 0.0), "definition", "computed", basis="One less the area of all pieces."
        )
    if not rods:
        return found
    whole = [one.count for one in rods if one.count is not None]
    source = rods[0].length
    if whole:
        found["rods"] = Figure(
            float(sum(whole)),
            source.source,
            source.how_sure,
            basis="Each class and diameter rounded up to whole rods.",
        )
    return found | {
        "rod_length": total_of([one.length for one in rods]),
        "rod_mass": total_of([one.mass for one in rods]),
    }


def gas_figures(
    *,
    gas: Sequence[Taken], peaks: dict[str, Figure], banks: dict[str, Bank], used: dict[str, float],
    reserve: dict[str, int], hot: int, duty: str,
) -> dict[str, Figure]:  # fmt: skip
    """Results of the gas and its cylinders, by their names."""
    bank, oxygen, most = banks["fuel"], banks["oxygen"], peaks["fuel"].value or 0.0
    found = {}
    for name, words in (("fuel", "Acetylene"), ("oxygen", "Oxygen")):
        low, value, high = summed(gas, name)
        found[f"{name}_plan"] = Figure(
            value,
            "",
            "practice",
            low=low,
            high=high,
            basis=f"{words} flow of the job sheet for a learner's flame time, purge and bleed, times the factor of the log.",
        )
        found[f"{name}_peak"] = peaks[name]
        found[f"{name}_reserve"] = Figure(
            float(reserve[name]), "", "practice", basis=f"A session's gas again, at least one. {OWN_RULE}"
        )
        found[f"{name}_cylinders"] = Figure(
            used[name], "", "practice", low=low / banks[name].usable, high=high / banks[name].usable,
            basis="Gas of the plan over what one gives before it is changed.",
        )  # fmt: skip
    return found | {
        "draw_share": Figure(most / (bank.count * bank.full), "definition", "computed", basis="Peak over a full bank."),
        "one_torch_share": Figure(
            most / hot / bank.full, "definition", "computed",
            basis="The thirstiest exercise: what a bench with its own cylinder would draw.",
        ),
        "draw_limit": draw_limit_of(bank.count * bank.full, duty),
        "fuel_in_use": Figure(
            float(bank.count), "cga-g1", "memory",
            basis=f"So many that the draw of {FRACTIONS[duty]} holds until half is used, and a session needs no change; "
            "or as you gave.",
        ),
        "oxygen_in_use": Figure(
            float(oxygen.count), FIT, "computed", basis="So many that a session needs no change."
        ),
    }  # fmt: skip


def cost_figures(
    items: Sequence[Item],
    all_done: Sequence[Done],
    sessions: int,
    term: float,
    ready: Sequence[tuple[str, str, int]],
) -> dict[str, Figure | None]:
    """Results of the group Cost, by their names; one sentence where no price was given."""
    learners = all_done[0].learners
    tries = sum(one.wanted.tries for one in all_done) * learners
    also = ", ".join(what for _, what, _ in ready)
    if all(item.cost is None for item in items):
        return {"coupon_cost": cost_of(items, 1.0, "", also)}
    return {
        "coupon_cost": cost_of(items, 1 / tries, "over the tries of all learners", also),
        "learner_cost": cost_of(items, 1 / learners, "over the learners", also),
        "session_cost": cost_of(items, 1 / sessions, "over its sessions", also),
        "term_cost": cost_of(items, term / sessions, "over its sessions, times those of a term", also),
    }
