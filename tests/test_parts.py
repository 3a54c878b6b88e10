"""What others made and we ship stands in PARTS.md with its licence, and nothing stands there that is gone."""

import re

from pages import ROOT
from parts_shipped import FILE, HEAD, INSIDE, listed, packages


def _name(text: str) -> str:
    return re.sub(r"[-_.]+", "-", text).lower()


def test_every_package_is_listed_with_its_licence() -> None:
    """Other machines need a few more or less; those pinned are all there are."""
    known, here = listed(FILE.read_text(encoding="utf-8")), packages()
    assert here.items() <= known.items(), "run: make parts"
    assert "not said" not in known.values()
    pins = {
        _name(line.partition("==")[0]) for line in (ROOT / "constraints.txt").read_text(encoding="utf-8").splitlines()
    }
    assert {_name(name) for name in known} <= pins


def test_what_lies_in_the_package_is_listed() -> None:
    text = FILE.read_text(encoding="utf-8")
    assert text.startswith(HEAD)
    package = FILE.parent
    fonts = {path.parent for path in package.rglob("*.[to]tf")}
    assert {package / where for _, where, _ in INSIDE if (package / where).is_dir()} == fonts
    assert all(any(folder.glob("*OFL*")) or any(folder.glob("*LICEN*")) for folder in fonts)
    assert all(part in text for part, _, _ in INSIDE)
