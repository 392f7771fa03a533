"""The files for course systems, read back by other readers than our own writers.

QTI is held against the content models of the QTI 1.2 DTD for the elements that are
used, written down by hand below; the publication's own file is not kept here.
"""

import io
from functools import cache
from typing import Any
from xml.sax.saxutils import quoteattr

import pytest
from lxml import etree
from pygiftparser import parser as gift_parser

from calc.answer.answering import file_of
from calc.practice.choices import ChoiceQuestion, Part, licence_questions
from calc.practice.gift import escaped, gift_of_choices, gift_of_problems
from calc.practice.qti import qti_of_choices, qti_of_problems
from calc.practice.sets import Numbered, problem_set
from calc.practice.slips import slip_tolerance, wrong_answers
from calc.practice.topics import TOPICS
from tests.properties.questions import ROWS

DTD = """
<!ELEMENT questestinterop (assessment | (section | item)+)>
<!ATTLIST questestinterop xmlns CDATA #FIXED "http://www.imsglobal.org/xsd/ims_qtiasiv1p2">
<!ELEMENT assessment (section+)>
<!ATTLIST assessment ident CDATA #REQUIRED title CDATA #IMPLIED>
<!ELEMENT section (item | section)*>
<!ATTLIST section ident CDATA #REQUIRED title CDATA #IMPLIED>
<!ELEMENT item (itemmetadata?, presentation?, resprocessing*, itemfeedback*)>
<!ATTLIST item ident CDATA #REQUIRED title CDATA #IMPLIED>
<!ELEMENT itemmetadata (qtimetadata*)>
<!ELEMENT qtimetadata (qtimetadatafield+)>
<!ELEMENT qtimetadatafield (fieldlabel, fieldentry)>
<!ELEMENT fieldlabel (#PCDATA)>
<!ELEMENT fieldentry (#PCDATA)>
<!ELEMENT presentation (material | response_lid | response_str)+>
<!ELEMENT material (mattext)+>
<!ELEMENT mattext (#PCDATA)>
<!ATTLIST mattext texttype CDATA "text/plain">
<!ELEMENT response_lid (material?, render_choice, material?)>
<!ATTLIST response_lid ident CDATA #REQUIRED rcardinality (Single | Multiple | Ordered) "Single">
<!ELEMENT response_str (material?, render_fib, material?)>
<!ATTLIST response_str ident CDATA #REQUIRED rcardinality (Single | Multiple | Ordered) "Single">
<!ELEMENT render_choice (material | response_label)*>
<!ATTLIST render_choice shuffle (Yes | No) "No">
<!ELEMENT render_fib (material | response_label)*>
<!ATTLIST render_fib fibtype (String | Integer | Decimal | Scientific) "String">
<!ELEMENT response_label (#PCDATA | material)*>
<!ATTLIST response_label ident CDATA #REQUIRED>
<!ELEMENT resprocessing (outcomes, respcondition+)>
<!ELEMENT outcomes (decvar+)>
<!ELEMENT decvar (#PCDATA)>
<!ATTLIST decvar varname CDATA "SCORE" vartype (Integer | String | Decimal | Scientific | Boolean | Enumerated | Set) "Integer"
  defaultval CDATA #IMPLIED minvalue CDATA #IMPLIED maxvalue CDATA #IMPLIED>
<!ELEMENT respcondition (conditionvar, setvar*, displayfeedback*)>
<!ATTLIST respcondition continue (Yes | No) "No">
<!ELEMENT conditionvar (other | varequal | vargte | varlte)+>
<!ELEMENT other (#PCDATA)>
<!ELEMENT varequal (#PCDATA)>
<!ATTLIST varequal respident CDATA #REQUIRED>
<!ELEMENT vargte (#PCDATA)>
<!ATTLIST vargte respident CDATA #REQUIRED>
<!ELEMENT varlte (#PCDATA)>
<!ATTLIST varlte respident CDATA #REQUIRED>
<!ELEMENT setvar (#PCDATA)>
<!ATTLIST setvar varname CDATA "SCORE" action (Set | Add | Subtract | Multiply | Divide) "Set">
<!ELEMENT displayfeedback (#PCDATA)>
<!ATTLIST displayfeedback feedbacktype (Response | Solution | Hint) "Response" linkrefid CDATA #REQUIRED>
<!ELEMENT itemfeedback (flow_mat | material)+>
<!ATTLIST itemfeedback ident CDATA #REQUIRED view CDATA "All">
<!ELEMENT flow_mat (flow_mat | material)+>
"""
"""Content models as QTI 1.2 declares them, memory for the wording and read for resprocessing and respcondition."""

SPACE = {"q": "http://www.imsglobal.org/xsd/ims_qtiasiv1p2"}

def sets() -> tuple[tuple[Numbered, ...], ...]:
    return tuple(problem_set(calculators=(), topic=topic, seed=4, problems=12, help_wanted="ladder", rules=rules) for topic in TOPICS if topic != "other" for rules in ("us", "iso"))  # fmt: skip


@cache
def dtd() -> etree.DTD:
    return etree.DTD(io.StringIO(DTD))


def gift(text: str) -> list[Any]:
    return list(gift_parser.parseFile(io.StringIO(text)))


def plain(text: str) -> str:
    for sign in "~=#:":
        text = text.replace(f"\\{sign}", sign)
    return text


def bracketed(text: str) -> str:
    """A text as GIFT carries it: on one line, round brackets for braces, a stroke for a backslash."""
    return " ".join(text.replace("{", "(").replace("}", ")").replace("\\", "/").split())


def test_problems_come_back_from_gift_with_key_and_tolerance() -> None:
    for made in sets():
        read = gift(gift_of_problems("A set", made))
        assert len(read) == len(made)
        for one, question in zip(made, read, strict=True):
            assert question.valid
            assert plain(question.title) == f"Problem {one.number}, {one.problem.title}"
            assert plain(question.text) == one.problem.whole_question
            right, *slips = question.answers.answers
            assert right.fraction == 100
            low, high = one.problem.accepted
            assert right.value - right.tolerance == pytest.approx(low, rel=1e-5)
            assert right.value + right.tolerance == pytest.approx(high, rel=1e-5)
            if not one.problem.limits.any:
                assert right.value == pytest.approx(one.problem.key, rel=1e-6)
                assert right.tolerance == pytest.approx(one.problem.tolerance, rel=1e-5)
            told = wrong_answers(one.problem)
            assert len(slips) == len(told)
            for slip, wrong in zip(slips, told, strict=True):
                assert slip.fraction == 0
                assert slip.value == pytest.approx(wrong.value, rel=1e-6)
                assert slip.tolerance == pytest.approx(slip_tolerance(wrong, one.problem), rel=1e-5)
                assert wrong.words in plain(slip.feedback)


def test_choices_come_back_from_gift_with_the_right_one() -> None:
    asked = licence_questions(5, None, "us", ROWS)
    read = gift(gift_of_choices("Written questions", asked))
    assert len(read) == 3
    for question, got in zip(asked, read, strict=True):
        assert got.valid
        part = question.parts[0]
        assert plain(got.text) == part.asks
        assert [plain(each.answer) for each in got.answers.answers] == [bracketed(option) for option in part.options]
        assert [each.fraction == 100 for each in got.answers.answers] == [
            place == part.right for place in range(len(part.options))
        ]
        assert plain(got.generalFeedback) == question.because


def qti(text: str) -> Any:
    assert not text.lstrip().startswith("<!DOCTYPE")
    root = etree.fromstring(text.encode())
    tree = etree.fromstring(text.encode().replace(b' xmlns="http://www.imsglobal.org/xsd/ims_qtiasiv1p2"', b""))
    assert dtd().validate(tree), dtd().error_log.filter_from_errors()[0]
    idents = [item.get("ident") for item in root.iterfind(".//q:item", SPACE)]
    assert len(set(idents)) == len(idents)
    for item in root.iterfind(".//q:item", SPACE):
        linked = {each.get("linkrefid") for each in item.iterfind(".//q:displayfeedback", SPACE)}
        assert linked == {each.get("ident") for each in item.iterfind("q:itemfeedback", SPACE)}
    return root


def score(item: Any, value: float) -> tuple[float, str]:
    """What a course system makes of a number: the first condition that holds."""
    for condition in item.iterfind(".//q:respcondition", SPACE):
        tests = condition.find("q:conditionvar", SPACE)
        low, high = (tests.find(f"q:{name}", SPACE) for name in ("vargte", "varlte"))
        if tests.find("q:other", SPACE) is not None or (float(low.text) <= value <= float(high.text)):
            told = condition.find("q:displayfeedback", SPACE).get("linkrefid")
            words = item.find(f"q:itemfeedback[@ident={quoteattr(told)}]//q:mattext", SPACE).text
            return float(condition.find("q:setvar", SPACE).text), words
    raise AssertionError("no condition holds")


def test_problems_come_back_from_qti_and_are_scored() -> None:
    for made in sets():
        items = qti(qti_of_problems("A set & more", made)).findall(".//q:item", SPACE)
        assert len(items) == len(made)
        for one, item in zip(made, items, strict=True):
            key, near = one.problem.key, one.problem.tolerance
            assert item.find("q:presentation/q:material/q:mattext", SPACE).text == one.problem.whole_question
            assert item.find(".//q:render_fib", SPACE).get("fibtype") == "Decimal"
            told = [each.get("ident") for each in item.iterfind("q:itemfeedback", SPACE)]
            assert told == ["right", *(f"slip-{n + 1}" for n in range(len(wrong_answers(one.problem)))), "wrong"]
            assert item.get("ident") == f"problem-{one.number}"
            limits = one.problem.limits
            for value in (float(f"{key:.7g}"), key + 0.99 * near, key - 0.99 * near):  # the file writes seven figures
                past = (limits.least is not None and value < limits.least) or (limits.most is not None and value > limits.most * (1 + 1e-6))
                assert (score(item, value)[0] == 100) == (not past)
            for value in (key + 1.01 * near, key - 1.01 * near):
                assert score(item, value)[0] == 0
            for wrong in wrong_answers(one.problem):
                assert score(item, wrong.value) == (0, f"A known slip: {wrong.words}.")


def test_choices_come_back_from_qti_with_the_right_one() -> None:
    asked = licence_questions(5, None, "us", ROWS)
    items = qti(qti_of_choices("Written questions", asked)).findall(".//q:item", SPACE)
    assert [item.get("ident") for item in items] == [f"question-{n + 1}" for n in range(len(asked))]
    for question, item in zip(asked, items, strict=True):
        part = question.parts[0]
        labels = {
            label.get("ident"): label.find(".//q:mattext", SPACE).text
            for label in item.iterfind(".//q:response_label", SPACE)
        }
        assert list(labels.values()) == list(part.options)
        assert list(labels) == [f"option-{n + 1}" for n in range(len(part.options))]
        right = next(
            condition
            for condition in item.iterfind(".//q:respcondition", SPACE)
            if condition.find("q:setvar", SPACE).text == "100"
        )
        assert labels[right.find(".//q:varequal", SPACE).text] == part.options[part.right]


def test_the_dtd_can_fail() -> None:
    assert not dtd().validate(etree.fromstring("<questestinterop><item/></questestinterop>"))


HOSTILE = "</item><x>&amp;\n\n::t:: {=a ~b} // $CATEGORY: x ]]> \\ # 50 %"


def test_signs_that_mean_something_stay_text() -> None:
    asked = ChoiceQuestion(id="x", title=HOSTILE, parts=(Part(HOSTILE, ("one = {1}", "two ~ #2", "</mattext>"), 1),), because=HOSTILE)
    (got,) = gift(gift_of_choices(HOSTILE, (asked,)))
    assert got.valid
    assert plain(got.text) == bracketed(HOSTILE)
    assert [plain(each.answer) for each in got.answers.answers] == [
        bracketed(option) for option in asked.parts[0].options
    ]
    (item,) = qti(qti_of_choices(HOSTILE, (asked,))).findall(".//q:item", SPACE)
    assert item.find("q:presentation/q:material/q:mattext", SPACE).text == HOSTILE
    assert "\n" not in escaped(HOSTILE)


@pytest.mark.parametrize(
    ("calculator", "name"), [("problem-set", "problem-set.txt"), ("problem-set", "problem-set-qti.xml"),
                             ("licence-questions", "written-questions.txt"),
                             ("licence-questions", "written-questions-qti.xml")],
)  # fmt: skip
def test_the_files_are_offered(calculator: str, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    from calc.practice import choices  # noqa: PLC0415

    monkeypatch.setattr(choices, "_rows", lambda _name: ROWS)
    texts = {"seed": "9"} | ({"topic": "gas", "problems": "5"} if calculator == "problem-set" else {})
    text = file_of(calculator, name, texts)["text"]
    found = len(gift(text)) if name.endswith(".txt") else len(qti(text).findall(".//q:item", SPACE))
    assert found == (5 if calculator == "problem-set" else 3)
