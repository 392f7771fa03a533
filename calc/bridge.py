"""The only door for a page: text in, text out."""

import json
from typing import Any

from calc.answer.answering import answer, file_of, found
from calc.ask.errors import InputError
from calc.ask.inputs import convert_text
from calc.class_plan.kept_lessons_html import log_reply
from calc.class_plan.pack import pack_reply
from calc.outfit.file import fill, outfit_file, outfit_texts, unchecked_texts
from calc.practice.sessions import practice_reply
from calc.show.answer import answer_html
from calc.show.calendar import calendar_text
from calc.show.square_code import square_code_svg

SORRY = "This could not be worked out here. Use the table on this page, and tell us what you typed."


def run(request: str) -> str:
    """Answer one request of a page.

    Args:
        request: JSON, either `{"calculator": id, "texts": {name: text},
            "units": {result: unit}, "drawings": false}` (without maps and curves) or `{"convert": {"calculator": id,
            "field": name, "text": text, "unit": unit}}` or `{"square": address}` or
            `{"calendar": {"start": s, "watch": s, "monitoring": s, "check_every": s}}` or
            `{"outfit": {"keep": {name: text}}}` (the file of an outfit) or `{"outfit": {"open": file, "rules": id}}` or
            `{"fill": {"calculator": id, "texts": {name: text}, "outfit": file}}` or
            `{"file": {"calculator": id, "texts": {name: text}, "name": name}}` (a file that an answer offers) or
            `{"log": {"lines": [{name: text}], "rules": id, "file": true}}` (lessons kept on a device) or
            `{"pack": {"texts": {name: text}, "site": address, "parts": [name]}}` (sheets of an evening) or
            `{"practice": {"set": kind, "texts": {name: text}, "number": n, "answer": text}}` (what is said to an answer;
            without `answer` the question, without `number` what the set is).

    Returns:
        JSON: `{"answer": …, "html": …}`, `{"text": …}`, `{"svg": …}`, `{"texts": …}`,
        `{"texts": …, "said": […]}`, `{"name": …, "type": …, "text": …}`, `{"count": …, "words": …, "end": …}`,
        `{"html": …}`, `{"right": …, "said": …, "slip": …, "page": …}`, or
        `{"errors": [{"field", "message"}]}`. It never raises.

    Examples:
        >>> run('{"calculator": "no-such", "texts": {}}')[:32]
        '{"errors": [{"field": "calculato'
    """
    try:
        reply = _reply(json.loads(request))
    except InputError as error:
        reply = {"errors": error.listed()}
    except Exception as error:  # a reader gets a sentence, never a traceback
        reply = {"errors": [{"field": "", "message": SORRY}], "fault": type(error).__name__}
    return json.dumps(reply, ensure_ascii=False, allow_nan=False)


def _reply(request: dict[str, Any]) -> dict[str, Any]:
    if "convert" in request:
        asked = request["convert"]
        field = found(asked["calculator"]).inputs[asked["field"]]
        return {"text": convert_text(field, asked["field"], asked["text"], asked["unit"])}
    if "square" in request:
        return {"svg": square_code_svg(str(request["square"]))}
    if "calendar" in request:
        return {"text": calendar_text(**request["calendar"])}
    if "outfit" in request:
        asked = request["outfit"]
        if "keep" in asked:
            return {"text": outfit_file(asked["keep"])}
        return {"texts": outfit_texts(asked["open"], str(asked.get("rules", "us")))}
    if "fill" in request:
        asked = request["fill"]
        return fill(str(asked["calculator"]), asked["texts"], unchecked_texts(asked["outfit"]))
    if "log" in request:
        return log_reply(request["log"])
    if "pack" in request:
        return pack_reply(request["pack"])
    if "file" in request:
        asked = request["file"]
        return file_of(str(asked["calculator"]), str(asked["name"]), asked["texts"])
    if "practice" in request:
        return practice_reply(request["practice"])
    texts = {str(name): text for name, text in request.get("texts", {}).items()}
    calculator_id = texts.pop("calculator_id", None) or str(request["calculator"])
    texts.pop("units", None)
    texts.pop("drawings", None)
    got = answer(
        calculator_id,
        units=request.get("units") or {},
        drawings=request.get("drawings") is not False,
        **texts,
    )
    return {"answer": got, "html": answer_html(got)}
