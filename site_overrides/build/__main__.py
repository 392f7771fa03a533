"""`python -m site_overrides.build`: the whole site into `site/`, for SITE_URL."""

import subprocess
import sys
from pathlib import Path

from site_overrides.build import bundle, descriptions, formulas, licences, offline, styles, theme

ROOT = Path(__file__).parents[2]


def main() -> None:
    """Build in order; the first failure stops the build."""
    licences.stop_where_one_is_missing()
    formulas.write()
    engine = bundle.build()
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "--site-dir", "site"],
        cwd=ROOT,
        check=True,
    )
    bundle.copy(engine, ROOT / "site" / "assets" / "engine")
    descriptions.write(ROOT / "site")
    theme.write(ROOT / "site")
    styles.write(ROOT / "site")
    offline.write(ROOT / "site")
    print("The site is in site/")


if __name__ == "__main__":
    main()
