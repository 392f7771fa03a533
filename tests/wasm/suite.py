"""Runs inside the browser's Python: pytest on the files that were put there."""

import json
import os
import sys
import zipfile

zipfile.ZipFile("/tree.zip").extractall("/tree")
os.chdir("/tree/project")
sys.path[:0] = ["/tree/project", "/tree/packages"]
os.environ["BENCHBOOK_RELEASE"] = "in the browser"

import hypothesis  # noqa: E402
import pytest  # noqa: E402

# A browser is some four times slower; the full number of examples runs natively.
hypothesis.settings.register_profile("wasm", deadline=None, max_examples=2, database=None)
hypothesis.settings.load_profile("wasm")


passed: set[str] = set()


class Seen:
    """Notes which files had a test pass."""

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note a pass."""
        if report.when == "call" and report.passed:
            passed.add(report.nodeid.split("::")[0])


with open("files.json", encoding="utf-8") as listed:
    files = json.load(listed)
code = pytest.main(
    [
        "-q",
        "-p",
        "no:cacheprovider",
        "-p",
        "no:faulthandler",
        "--color=no",
        *files,
    ],
    plugins=[Seen()],
)
print(json.dumps({"passed": sorted(passed)}))
int(code)
