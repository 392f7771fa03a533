"""The site as one zip for a folder: `python -m site_overrides.build.zipped [FILE]`.

A second build, without directory addresses, search, instant navigation and
service worker. Opened from a folder it reads and prints; served, its calculators
are live. The same sources give the same bytes.
"""

import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

from site_overrides.build import bundle, licences, offline, styles, theme

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
ZIP = ROOT / "oxyfuel-benchbook.zip"
TOP = "oxyfuel-benchbook"
"""Folder in which all of the zip stands."""
NOT_FOR_A_FOLDER = ("404.html", "sitemap.xml", "sw.js")
FIRST_DAY = (1980, 1, 1, 0, 0, 0)
"""The date of every file, as the day of a build would change the bytes."""
READ_ME = """Oxyfuel Benchbook, a copy to keep.

To read and print: open index.html.

For live answers, on a computer with Python: open a terminal in this folder, type

    python3 -m http.server --bind 127.0.0.1 8000

and open http://127.0.0.1:8000/ in the browser. Nothing leaves the computer.

LICENSE says what you may do with it, LICENCES.txt whose software is in it.
"""


_DIRECTORY = re.compile(r'href="\.\./\.\./([a-z0-9/-]+)/(#[^"]*)?"')


def build(folder: Path) -> None:
    """Build the pages for a folder, and put all beside them that belongs to the copy.

    Args:
        folder: Where they go; replaced as a whole.

    Raises:
        CalledProcessError: A page is not as it should be.
    """
    shutil.rmtree(folder, ignore_errors=True)
    command = ["mkdocs", "build", "--strict", "--quiet", "--config-file", str(HERE / "zipped.yml")]
    subprocess.run([sys.executable, "-m", *command, "--site-dir", folder], cwd=ROOT, check=True)
    _flatten_links(folder)
    bundle.copy(bundle.build(), folder / "assets" / "engine")
    shutil.copy(HERE / "unzipped.js", folder / "assets")
    shutil.copy(ROOT / "LICENSE", folder)
    (folder / "LICENCES.txt").write_text(licences.licences_text(), encoding="utf-8")
    theme.write(folder)
    styles.write(folder)
    (folder / "READ-ME.txt").write_text(READ_ME, encoding="utf-8")
    offline.drop_needless(folder, NOT_FOR_A_FOLDER)
    offline.write_policy(folder)


def _flatten_links(folder: Path) -> None:
    """Lead to files where a block of a page wrote a link as a directory, from a page one folder down."""
    for page in folder.glob("*/*.html"):
        text = page.read_text(encoding="utf-8")
        page.write_text(_DIRECTORY.sub(lambda found: _flat(folder, found), text), encoding="utf-8")


def _flat(folder: Path, found: re.Match[str]) -> str:
    is_file = (folder / f"{found[1]}.html").is_file()
    return (
        f'href="../{found[1]}.html{found[2] or ""}"'
        if is_file
        else f'href="../{found[1]}/index.html{found[2] or ""}"'
    )


def pack(folder: Path, file: Path) -> None:
    """Zip a folder: the same files give the same bytes, whenever they were written.

    Args:
        folder: What goes in.
        file: The zip; replaced.
    """
    with zipfile.ZipFile(file, "w") as archive:
        for path in sorted(path for path in folder.rglob("*") if path.is_file()):
            entry = zipfile.ZipInfo(f"{TOP}/{path.relative_to(folder).as_posix()}", FIRST_DAY)
            entry.create_system = 3  # Unix, on every machine
            entry.external_attr = 0o100644 << 16
            is_packed = path.suffix == ".xz"
            entry.compress_type = zipfile.ZIP_STORED if is_packed else zipfile.ZIP_DEFLATED
            archive.writestr(entry, path.read_bytes(), compresslevel=9)


def main() -> None:
    """Build and pack."""
    licences.stop_where_one_is_missing()
    file = Path(sys.argv[1]) if len(sys.argv) > 1 else ZIP
    with tempfile.TemporaryDirectory() as name:
        build(Path(name) / TOP)
        pack(Path(name) / TOP, file)
    print(f"The zip is {file}, {file.stat().st_size / 1e6:.1f} MB")


if __name__ == "__main__":
    main()
