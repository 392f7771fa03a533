"""Settings that all tests share."""

import os

import pytest
from hypothesis import HealthCheck, settings

collect_ignore = ["wasm/suite.py", "bench"]  # the one runs inside the browser's Python, the other measures

settings.register_profile(
    "same-every-time", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("wide", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same-every-time"))

SLOW = {
    "test_invariants", "test_declarations", "test_hazards", "test_outfit", "test_states", "test_safety_rules", "test_brazing",
    "test_gate", "test_gas_hose_states", "test_evidence_listed", "test_practice_sets", "test_licences", "test_melting",
    "test_emergency_order", "test_heat_flame",
}  # fmt: skip
"""Files that `make test FAST=1` leaves out: together they take as long as all others."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark what is slow, and begin with the longest file, the suite in the browser's Python: no core waits for it at the end."""
    items.sort(key=lambda item: item.path.stem != "test_suite_in_browser_python")
    for item in items:
        if item.path.stem in SLOW:
            item.add_marker("slow")
