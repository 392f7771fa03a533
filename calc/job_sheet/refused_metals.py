"""The gate before a job: metals and coatings that no flame is put on."""

from calc.ask.errors import InputError
from calc.job_sheet import fields as asked
from calc.trade.safety import gate
from calc.trade.safety import gate_fields as gate_asked
from calc.trade.safety import gate_sentences as gate_said
from calc.values.figures import Figure


def hold_metal(
    *, process: str, metal: str, other: str | None, coating: str, stripped: str | None, rules: str
) -> Figure | None:
    """What must be known before any flame on these metals, in words; None where nothing.

    Args:
        process: Id of the work.
        metal: Id of the metal.
        other: Id of the other metal, `same`, or None.
        coating: Id of the coating.
        stripped: `yes` where the coating is gone as far as the rule asks.
        rules: Rule set whose figures fill the words.

    Raises:
        InputError: The gate refuses the metal or the coating, or asks for something first.
    """
    bare = "low-carbon-steel" if metal == gate_asked.GALVANISED and stripped == "yes" else metal
    verdict = gate.metal_verdict(process, bare, coating, stripped, rules)
    if verdict.outcome != "none":
        _refuse(verdict, "metal")
    if other not in (None, "same"):
        second = gate.metal_verdict(process, other, "none", None, rules)
        if second.outcome != "none":
            _refuse(second, "other_metal")
    return gate_said.still_holds(verdict)


def _refuse(verdict: gate.Verdict, name: str) -> None:
    reason = verdict.reasons[0]
    field = "coating" if reason.asked == "coating" and name == "metal" else name
    label = {"metal": asked.METAL, "other_metal": asked.OTHER_METAL, "coating": asked.COATING}[field].label
    what = reason.words[:1].lower() + reason.words[1:]
    if verdict.outcome == "refused":
        who = reason.who or "whoever is responsible for the work"
        said = f"{what} is refused here: {_clause(reason.reason)}; put no flame on it, ask {who}"
    else:
        order = reason.order.rstrip(". ")
        yes = gate_asked.STRIPPED["yes"]
        said = (
            f"{what}: {_clause(reason.reason)}; first: {order[:1].lower()}{order[1:]}; then pick this coating and, "
            f"below it, “{yes}”"
        )
    raise InputError(field, label, f"{said}.")


def _clause(sentences: str) -> str:
    """Whole sentences as the middle of another one."""
    return "; ".join(part[:1].lower() + part[1:] for part in sentences.rstrip(". ").split(". "))
