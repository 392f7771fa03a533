"""What the steps of a procedure do to an outfit: each is possible, and none is left unsaid.

`walked` steps an outfit through a procedure, for one kind of torch, by the acts that
its steps declare. `unsaid` finds steps that turn a valve or a screw, or touch the flame,
in words, and declare no act.
"""

import re
from dataclasses import fields

from calc.outfit import BreachError, GasSide, Outfit, act, named
from site_overrides.build.procedures import Pause, Procedure, Step

FOLLOW = "follow "

_TURNS = re.compile(
    r"\b(?:open|opens|close|closes|shut|crack|turn|turned|undo|put out|take)\b[^.;:]{0,60}?"
    r"(?:\{torch\}|\{regulator\}|\{tip\}|\b(?:valves?|cylinders?|screws?|oxygen|acetylene|fuel|hoses?|gas|flames?|caps?)\b)",
    re.IGNORECASE,
)
_DOES = re.compile(
    r"\{adjusting-screw\}|\bscrews? out\b|\bflames? out\b|\bpurge\b|\bbleed\b|\bdrain\b|\bpressures up\b|\bsolution\b"
    r"|\blet (?:it|each gas|the pressure) (?:run|out)|\blight (?:it|the|and|again|as|a)\b|\bdo the same with\b"
    r"|\bfit (?:the|each)\b|\bset (?:the|its|a) (?:pressures?|flame|neutral|oxygen pressure|preheat)"
    r"|\{regulator\}s? (?:off|with)|\bcaps? on\b|\bshut down\b",
    re.IGNORECASE,
)
_ASIDE = re.compile(r"\b(?:never|do not|whether|you want to)\b[^.]*\.?", re.IGNORECASE)


class StepError(ValueError):
    """A step that the outfit does not allow; the message names procedure, torch and step."""


def _for_torch(step: Step, torch: str) -> bool:
    other = "injector" if torch == "equal-pressure" else "equal-pressure"
    return f"{{{other}}}" not in step.only


def acts_of(step: Step, torch: str) -> tuple[str, ...]:
    """What a step does to an outfit with this kind of torch; `injector: ...` is for that kind alone."""
    found = []
    for name in step.acts or ():
        kind, colon, rest = name.partition(": ")
        if not colon or kind == torch:
            found.append(rest if colon else name)
    return tuple(found)


def _apart(outfit: Outfit, name: str) -> str:
    """Where an outfit is not as a named state."""
    wanted = named(name, outfit.torch)
    pairs: list[tuple[str, Outfit | GasSide, Outfit | GasSide]] = [
        ("", outfit, wanted), ("oxygen ", outfit.oxygen, wanted.oxygen), ("fuel ", outfit.fuel, wanted.fuel),
    ]  # fmt: skip
    return "; ".join(
        f"{mark}{each.name} is {getattr(one, each.name)!r}, not {getattr(other, each.name)!r}"
        for mark, one, other in pairs
        for each in fields(one)
        if each.name not in ("oxygen", "fuel") and getattr(one, each.name) != getattr(other, each.name)
    )


def _followed(outfit: Outfit, made: Procedure, known: dict[str, Procedure]) -> Outfit:
    """Another procedure, from its beginning or from the first pause point that begins as the outfit is."""
    begins = [made.begins, *(pause.begins for pause in made.pauses[1:])]
    for count, name in enumerate(begins):
        if name and named(name, outfit.torch) == outfit:
            return _through(outfit, made, made.pauses[count:], known)
    apart = [f"{name}: {_apart(outfit, name)}" for name in begins if name]
    raise StepError(f"{made.id} does not begin, at any pause point, as the outfit is ({' / '.join(apart)})")


def _through(
    outfit: Outfit, made: Procedure, pauses: tuple[Pause, ...], known: dict[str, Procedure]
) -> Outfit:
    for pause in pauses:
        if pause.begins and named(pause.begins, outfit.torch) != outfit:
            apart = _apart(outfit, pause.begins)
            raise StepError(f"{made.id}, {outfit.torch}: {pause.id} does not begin {pause.begins}: {apart}")
        for step in (step for step in pause.steps if _for_torch(step, outfit.torch)):
            for name in acts_of(step, outfit.torch):
                try:
                    if name.startswith(FOLLOW):
                        outfit = _followed(outfit, known[name.removeprefix(FOLLOW)], known)
                    else:
                        outfit = act(outfit, name)
                except (BreachError, StepError) as error:
                    raise StepError(f"{made.id}, {outfit.torch}, step {step.id}: {error}") from error
    return outfit


def walked(made: Procedure, torch: str, known: dict[str, Procedure]) -> Outfit:
    """The outfit after a procedure.

    Args:
        made: The procedure; it says in which state it begins.
        torch: Kind of torch; steps for the other kind alone are left out.
        known: Every procedure by id, for those that a step says to follow.

    Raises:
        StepError: A step is not possible, or a pause point or the end is not the state that is said.
    """
    outfit = _through(named(made.begins, torch), made, made.pauses, known)
    if made.ends and named(made.ends, torch) != outfit:
        raise StepError(f"{made.id}, {torch}: it does not end {made.ends}: {_apart(outfit, made.ends)}")
    return outfit


def touches(text: str) -> bool:
    """Whether a step's words turn a valve or a screw, or touch the flame.

    Examples:
        >>> touches("Shut the fuel valve of the {torch}."), touches("Never shut the fuel valve.")
        (True, False)
    """
    plain = _ASIDE.sub("", text)
    return bool(_TURNS.search(plain) or _DOES.search(plain))


def unsaid(made: Procedure) -> list[str]:
    """Steps whose words touch the outfit and that declare no act; a procedure with acts that names no state."""
    steps = [step for pause in made.pauses for step in pause.steps]
    said = [
        f"step {step.id} touches the outfit and declares no act: {step.do}"
        for step in steps
        if touches(step.do) and step.acts is None
    ]
    ends = made.ends or made.kind == "do-then-confirm"
    if any(step.acts for step in steps) and not (made.begins and ends):
        said.append("it has acts, and does not say in which states it begins and ends")
    return said
