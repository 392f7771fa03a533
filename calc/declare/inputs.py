"""What a reader may be asked: numbers with units, choices, words and days, by place."""

from collections.abc import Mapping
from dataclasses import KW_ONLY, dataclass

ByRules = str | Mapping[str, str]
"""One text for all rule sets, or one for each."""

RULE_SETS = {
    "us": "United States",
    "iso": "Europe (ISO and EN)",
    "uk": "United Kingdom",
}
"""The rule sets, by the id that links and the command line use."""

LENGTH = ("in", "mm")
GAUGE = ("psi", "bar", "kPa")
TEMPERATURE = ("degF", "degC")
VOLUME = ("ft^3", "L")
WATER_VOLUME = ("L", "ft^3")
MASS = ("lb", "kg")
FREE_GAS = ("ft^3", "L", "m^3")
FREE_GAS_FLOW = ("cfh", "L/h", "L/min")
TIME = ("min", "h", "s")
POWER = ("Btu/h", "kW")
ENERGY = ("Btu", "MJ")
NUMBER = ("",)
"""Units of a bare number."""


def by_rules(text: ByRules, rules: str) -> str:
    """The text that holds under one rule set."""
    return text if isinstance(text, str) else text[rules]


@dataclass(frozen=True)
class Field:
    """A number that the reader gives.

    Args:
        label: What is asked, in the trade's words. Messages begin with it.
        units: Units offered, most used first; `("",)` for a bare number.
        example: Text that fills the form at build time; never a recommendation.
        assumed: Text taken when the reader gives nothing; the answer says so.
        low: Least value allowed, as text with unit.
        high: Largest value allowed.
        hint: One line under the label.
        too_low: Sentence that replaces the usual one below `low`.
        too_high: Sentence that replaces the usual one above `high`.
        free_gas: Whether the number counts gas.
        sheet_gauge: Whether `16 ga` may be typed; needs a `metal` input, or
            `metal` named here.
        metal: The metal that a gauge number belongs to where none is asked.
        drill: Whether a twist drill, `#68`, may be typed.
        whole: Whether only whole numbers will do.
        optional: Whether the reader may leave it out with nothing assumed; an
            example then fills the form all the same.
        when: Ids of other choices and the options with which this is asked at
            all; else the calculator gets None.
        group: Name of the fold of the form it stands in; none for no fold of its own.
        outfit: Input of the reader's outfit that may fill this; none for no such.
    """

    label: str
    units: tuple[str, ...] = ()
    _: KW_ONLY
    example: ByRules | None = None
    assumed: ByRules | None = None
    low: ByRules | None = None
    high: ByRules | None = None
    hint: str = ""
    too_low: str = ""
    too_high: str = ""
    free_gas: bool = False
    sheet_gauge: bool = False
    metal: str = ""
    drill: bool = False
    whole: bool = False
    optional: bool = False
    when: Mapping[str, tuple[str, ...]] | None = None
    group: str = ""
    outfit: str = ""


@dataclass(frozen=True)
class Choice:
    """One of a few things that the reader picks.

    Args:
        label: What is asked.
        options: Id of each option and the words a reader sees.
        example: Id that fills the form at build time.
        assumed: Id taken when the reader picks nothing.
        hint: One line under the label.
        optional: Whether it may be left out with nothing assumed.
        when: As of a Field, likewise `group` and `outfit`.
    """

    label: str
    options: Mapping[str, str]
    _: KW_ONLY
    example: str | None = None
    assumed: ByRules | None = None
    hint: str = ""
    optional: bool = False
    when: Mapping[str, tuple[str, ...]] | None = None
    group: str = ""
    outfit: str = ""


@dataclass(frozen=True)
class Words:
    """A few words of the reader's own; the calculator gets them as text, without markup.

    Args:
        label: What is asked.
        longest: Letters, signs and spaces at most.
        example: Text that fills the form at build time.
        assumed: Text taken when the reader writes nothing.
        hint: One line under the label.
        optional: Whether it may be left out with nothing assumed.
        when: As of a Field, likewise `group` and `outfit`.
    """

    label: str
    _: KW_ONLY
    longest: int = 40
    example: ByRules | None = None
    assumed: ByRules | None = None
    hint: str = ""
    optional: bool = False
    when: Mapping[str, tuple[str, ...]] | None = None
    group: str = ""
    outfit: str = ""


@dataclass(frozen=True)
class Day:
    """A day of the calendar, written `2026-11-25`; the calculator gets a `datetime.date`.

    Args:
        label: What is asked.
        earliest: First day that will do.
        latest: Last day that will do.
        today: Whether a page puts the day of its own clock into an empty box; in
            Python and on the command line nothing is put there.
        example: Text that fills the form at build time.
        assumed: Text taken when the reader gives nothing.
        hint: One line under the label.
        optional: Whether it may be left out with nothing assumed.
        when: As of a Field, likewise `group` and `outfit`.
    """

    label: str
    _: KW_ONLY
    earliest: str = "1950-01-01"
    latest: str = "2099-12-31"
    today: bool = False
    example: ByRules | None = None
    assumed: ByRules | None = None
    hint: str = ""
    optional: bool = False
    when: Mapping[str, tuple[str, ...]] | None = None
    group: str = ""
    outfit: str = ""


Asked = Field | Choice | Words | Day
"""What a parameter of a calculator may be declared as."""
