"""What a set is made from: asked alike by the set and by its key."""

from calc.declare import Choice, Field
from calc.practice.choices import MOST as MOST_QUESTIONS
from calc.practice.sets import HELP, LABELS, MOST
from calc.practice.topics import TOPICS, offered

ONLY = "Only these calculators"

SEED = Field(
    "Number of the set",
    ("",),
    example="1",
    low="1",
    high="999999",
    whole=True,
    hint="The same number gives the same set, on every device of this release.",
)
PROBLEMS = Field("Problems", ("",), example="10", low="1", high=str(MOST), whole=True)
TOPIC = Choice("Topic", TOPICS, example="gas")
LEVEL = Choice("Help", HELP, assumed="ladder")
FLAMES = Field("Flames", ("",), example="10", low="1", high="40", whole=True)
QUESTIONS = Field("Questions", ("",), low="1", high=str(MOST_QUESTIONS), whole=True, optional=True, hint="Empty: all of them.")  # fmt: skip


def calculator_choice(name: str) -> Choice:
    """The choice of one calculator, whatever the topic; asked once all others are declared."""
    return Choice(LABELS[name], offered(), optional=True, group=ONLY)
