"""Settings that all tests share."""

import os

from hypothesis import HealthCheck, settings

collect_ignore = ["wasm/suite.py", "bench"]  # the one runs inside the browser's Python, the other measures

settings.register_profile(
    "same-every-time", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("wide", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same-every-time"))
