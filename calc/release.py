"""Which release this is: the version, and the date of its last commit, which the build hands in."""

import os

VERSION = "0.1.0"
"""The version; it stands here and nowhere else."""

RELEASE: str = os.environ.get("BENCHBOOK_RELEASE", f"{VERSION} (working copy)")
"""Release as every answer names it."""
