"""What a plan asks alike of every kind of work and of every gas."""

from calc.declare import Field
from calc.declare.inputs import FREE_GAS_FLOW


def benches(work: str, number: str, *, asked: bool) -> Field:
    """How many torches do a kind of work."""
    shown = {"example": number} if asked else {"assumed": number}
    return Field(f"Benches {work}", ("",), low="0", high="60", whole=True, **shown)  # type: ignore[arg-type]


def flow(work: str, us: str, metric: str, what: str = "Fuel gas") -> Field:
    """Gas of one torch at a kind of work."""
    return Field(
        f"{what} of one torch {work}", FREE_GAS_FLOW, assumed={"us": us, "iso": metric, "uk": metric},
        low="5 L/h", high="20000 L/h", free_gas=True, hint="Our assumption; the tip-flow page works it out.",
    )  # fmt: skip


def burning(work: str, share: str) -> Field:
    """Share of the time that the flame burns at it."""
    return Field(f"Flame burns {work}, share of the time", ("%",), assumed=share, low="1 %", high="100 %")


def hours(work: str, hours: str, *, asked: bool) -> Field:
    """Time at it in a week."""
    shown = {"example": hours} if asked else {"assumed": hours}
    return Field(f"Time {work} in a week", ("h", "min"), low="0 h", high="100 h", **shown)  # type: ignore[arg-type]


def count(label: str, hint: str) -> Field:
    """Cylinders, where the reader has them."""
    return Field(label, ("",), low="1", high="200", whole=True, optional=True, hint=hint)


def price(label: str, hint: str = "In your money; any currency.") -> Field:
    """A price in the reader's own money."""
    return Field(label, ("",), low="0", high="1000000", optional=True, hint=hint)
