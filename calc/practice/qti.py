"""Questions as QTI 1.2, the XML that course systems read.

Written by the XML writer of the standard library from nested parts, never by
joining texts.
"""

import io
from collections.abc import Iterable
from dataclasses import dataclass, field
from xml.sax.saxutils import XMLGenerator
from xml.sax.xmlreader import AttributesImpl

from calc.practice.choices import ChoiceQuestion
from calc.practice.sets import Numbered
from calc.practice.slips import slip_tolerance, wrong_answers
from calc.values.numbers import plain_number

NAMESPACE = "http://www.imsglobal.org/xsd/ims_qtiasiv1p2"
FIGURES = 7
RIGHT, WRONG, RESPONSE = "right", "wrong", "answer"


@dataclass(frozen=True)
class Part:
    """One element: its name, its attributes, what is in it."""

    name: str
    attributes: dict[str, str] = field(default_factory=dict)
    inside: tuple["Part | str", ...] = ()


def _part(name: str, *inside: "Part | str", **attributes: str) -> Part:
    return Part(name, attributes, inside)


def _write(writer: XMLGenerator, part: Part | str) -> None:
    if isinstance(part, str):
        writer.characters(_printable(part))
        return
    writer.startElement(part.name, AttributesImpl(part.attributes))
    for each in part.inside:
        _write(writer, each)
    writer.endElement(part.name)


def _printable(text: str) -> str:
    """A text without the control signs that XML cannot hold."""
    return "".join(sign for sign in text if sign >= " " or sign in "\n\t")


def _material(text: str) -> Part:
    return _part("material", _part("mattext", text, texttype="text/plain"))


def _feedback(ident: str, text: str) -> Part:
    return _part("itemfeedback", _part("flow_mat", _material(text)), ident=ident, view="Candidate")


def _condition(tests: Iterable[Part], ident: str, score: str = "0") -> Part:
    return _part(
        "respcondition",
        _part("conditionvar", *tests),
        _part("setvar", score, action="Set", varname="SCORE"),
        _part("displayfeedback", feedbacktype="Response", linkrefid=ident),
        **{"continue": "No"},
    )


def _processing(conditions: list[Part]) -> Part:
    variable = _part(
        "decvar", varname="SCORE", vartype="Decimal", minvalue="0", maxvalue="100", defaultval="0"
    )
    return _part("resprocessing", _part("outcomes", variable), *conditions)


def _item(*, ident: str, title: str, kind: str, text: str, response: Part, rest: list[Part]) -> Part:
    label = _part("qtimetadatafield", _part("fieldlabel", "question_type"), _part("fieldentry", kind))
    return _part(
        "item",
        _part("itemmetadata", _part("qtimetadata", label)),
        _part("presentation", _material(text), response),
        *rest,
        ident=ident,
        title=title,
    )


def _between(low: float, high: float) -> tuple[Part, Part]:
    least, most = (plain_number(end, FIGURES) for end in (low, high))
    return _part("vargte", least, respident=RESPONSE), _part("varlte", most, respident=RESPONSE)


def _number(one: Numbered) -> Part:
    made = one.problem
    conditions = [_condition(_between(*made.accepted), RIGHT, "100")]
    told = [_feedback(RIGHT, f"Right. {made.shown}")]
    for place, wrong in enumerate(wrong_answers(made), start=1):
        near = slip_tolerance(wrong, made)
        conditions.append(_condition(_between(wrong.value - near, wrong.value + near), f"slip-{place}"))
        told.append(_feedback(f"slip-{place}", f"A known slip: {wrong.words}."))
    conditions.append(_condition([_part("other")], WRONG))
    told.append(_feedback(WRONG, "Not yet: look at each figure and its unit again."))
    response = _part(
        "response_str", _part("render_fib", fibtype="Decimal"), ident=RESPONSE, rcardinality="Single"
    )
    return _item(
        ident=f"problem-{one.number}", title=f"Problem {one.number}, {made.title}", kind="numerical_question", text=made.whole_question, response=response,
        rest=[_processing(conditions), *told],
    )  # fmt: skip


def _choice(number: int, question: ChoiceQuestion) -> Part:
    part = question.parts[0]
    labels = [
        _part("response_label", _material(option), ident=f"option-{place}")
        for place, option in enumerate(part.options, start=1)
    ]
    right = _part("varequal", f"option-{part.right + 1}", respident=RESPONSE)
    response = _part(
        "response_lid", _part("render_choice", *labels, shuffle="No"), ident=RESPONSE, rcardinality="Single"
    )
    return _item(
        ident=f"question-{number}", title=f"Question {number}, {question.title}", kind="multiple_choice_question", text=part.asks, response=response,
        rest=[
            _processing([_condition([right], RIGHT, "100"), _condition([_part("other")], WRONG)]),
            _feedback(RIGHT, f"Right. {question.because}"), _feedback(WRONG, f"Not yet. {question.because}"),
        ],
    )  # fmt: skip


def _file(title: str, items: list[Part]) -> str:
    section = _part("section", *items, ident="section-1", title=title)
    whole = _part(
        "questestinterop", _part("assessment", section, ident="assessment-1", title=title), xmlns=NAMESPACE
    )
    text = io.StringIO()
    writer = XMLGenerator(text, encoding="utf-8", short_empty_elements=True)
    writer.startDocument()
    _write(writer, whole)
    writer.endDocument()
    return text.getvalue() + "\n"


def qti_of_problems(title: str, made: tuple[Numbered, ...]) -> str:
    """A set of problems as QTI 1.2: numbers with a tolerance, and a word for each known slip.

    Args:
        title: What the set is.
        made: The problems.
    """
    return _file(title, [_number(one) for one in made])


def qti_of_choices(title: str, questions: tuple[ChoiceQuestion, ...]) -> str:
    """Choice questions as QTI 1.2.

    Args:
        title: What the set is.
        questions: The questions, one thing to pick in each.
    """
    return _file(title, [_choice(number, each) for number, each in enumerate(questions, start=1)])
