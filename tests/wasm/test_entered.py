"""The list of functions that answers enter: of this runtime, and long enough for what pages ask."""

import hashlib
import json
import re

from calc.release import RELEASE, VERSION
from site_overrides.build import bundle
from site_overrides.build.bundle_requests import usual_requests
from site_overrides.build.bundle_runtime import ENTERED, MODULE
from site_overrides.build.node import RUNTIME, node_modules
from tests.wasm.built import engine
from tests.wasm.test_answers_in_browser_python import said_by_engine

EVERY = 60
"""How many of the usual requests stand for one that is asked here; `make engine-lock` asks all."""
HEAD, *NAMES = ENTERED.read_text(encoding="utf-8").splitlines()
RENEW = "run make engine-lock"


def test_the_list_is_of_the_runtime_that_is_installed() -> None:
    locked = json.loads((RUNTIME / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    version = locked["node_modules/pyodide"]["version"]
    module = (node_modules() / "pyodide" / MODULE).read_bytes()
    assert HEAD == f"pyodide {version}, module {hashlib.sha256(module).hexdigest()}", RENEW


def test_each_function_stands_once_in_order_and_by_a_name() -> None:
    assert sorted(set(NAMES)) == NAMES
    assert all(re.fullmatch(r"[A-Za-z_]\w*(?:\+[1-9]\d*)?|\+[1-9]\d*", name) for name in NAMES)
    assert {"PyDict_New", "PyUnicode_FromStringAndSize"} <= set(
        NAMES
    )  # without these no Python does anything


def test_a_sample_of_what_pages_ask_meets_no_function_that_was_left_out() -> None:
    asked = usual_requests()[::EVERY]
    kinds = {kind for request in asked if request[:2] == '{"' for kind in json.loads(request)}
    assert {"calculator", "convert", "fill", "practice"} <= kinds
    # A function that was left out stops Node here, with the request's number lost: renew the list.
    assert len(said_by_engine("answer", "snapshot", about=asked)) == len(asked), RENEW


def test_no_file_of_the_engine_holds_the_day_or_the_version() -> None:
    made = engine()
    for path in made.iterdir():
        if path.suffix != ".xz":
            assert RELEASE.encode() not in path.read_bytes(), path.name
    assert json.loads((made / "manifest.json").read_bytes()).keys() == {"made_from", "files"}
    (reply,) = said_by_engine("answer", "snapshot", about=bundle.example_requests()[:1])
    assert json.loads(reply["reply"])["answer"]["release"] == bundle.RELEASE_MARK
    assert VERSION not in reply["reply"]
