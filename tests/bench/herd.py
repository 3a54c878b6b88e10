"""Makes large collections for the benchmark: this repository's records again and again, renamed."""

import re
import shutil
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.record.identity import slug
from undertrim.record.store import Workspace

ROOT = Path(__file__).parent.parent.parent
OF_ONE_MAKE = 50
"""So many vehicles are given to one make before the next begins."""
SUITED = 250
"""Gear suits so many of the copies of the vehicle it is made for: a list in a record holds 300 entries."""

_NAMED = re.compile(r"^  (make|model): (.+)$", re.MULTILINE)
_FIRST_NAME = re.compile(
    r"^((?:openings|connectors):\n(?:.*\n)*?    name: (?:[^\[\n].*|\[\{when: \{[^}]*\}, is: [^}]+))", re.MULTILINE
)
_BY = re.compile(r"\bby: (\w+)(?=(?:,|\n) *car:)")
_SUITS = re.compile(r"(\{vehicle: )([^,}]+)((?:[^{}]|\{[^{}]*\})*\})(, )?")
_SEEN = re.compile(r"^  (?:tried|source): .+\n|^(?:evidence|conflicts):\n(?:.+\n?)*", re.MULTILINE)
"""What of gear speaks of looks at cars of which there are only copies."""
_FOLLOWS = re.compile(r"^  follows: .+\n", re.MULTILINE)


@dataclass(frozen=True)
class Herd:
    """A workspace and its vehicle records in the order they were made."""

    workspace: Workspace
    paths: tuple[Path, ...]

    @property
    def size(self) -> int:
        """How many vehicles there are."""
        return len(self.paths)


def herd(root: Path, size: int) -> Herd:
    """Make `size` vehicle records below `root`, and put the gear of this repository beside them, made for them.

    The checker passes them all. A large herd begins with the same vehicles as a small one, and has the same gear.
    """
    every = sorted((ROOT / "records" / "vehicles").rglob("*.yaml"))
    originals = [
        path for path in every if "\nshares:" not in path.read_text(encoding="utf-8")
    ]  # its copy has no sister
    folder = root / "records" / "vehicles"
    paths = [_another(folder, originals[number % len(originals)], number) for number in range(size)]
    _gear(root, [(_address(originals[number % len(originals)]), _address(path)) for number, path in enumerate(paths)])
    return Herd(Workspace(root), tuple(paths))


def _gear(root: Path, copies: Sequence[tuple[str, str]]) -> None:
    """The gear of this repository, each piece for the copies of its vehicles; what is made for a vehicle of which there is none stays out."""
    for original in sorted((ROOT / "records" / "gear").rglob("*.yaml")):
        text = _SEEN.sub("", original.read_text(encoding="utf-8")).rstrip("\n") + "\n"
        suits = _SUITS.findall(text)
        if suits and not {address for _, address, _, _ in suits} & {address for address, _ in copies}:
            continue
        path = root / original.relative_to(ROOT)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(_SUITS.sub(lambda line: _suits(line, copies), text), encoding="utf-8")


def _suits(line: re.Match[str], copies: Sequence[tuple[str, str]]) -> str:
    """The entry of a vehicle, once for each of its copies."""
    made = [copy for original, copy in copies if original == line[2]][:SUITED]
    return ", ".join(f"{line[1]}{copy}{line[3]}" for copy in made) + ((line[4] or "") if made else "")


def _address(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


def _another(folder: Path, original: Path, number: int) -> Path:
    """Write a record again under a make and a model that nothing else has."""
    text = original.read_text(encoding="utf-8").partition("\nverified:")[0] + "\n"  # a stamp speaks of the old name
    named = dict(_NAMED.findall(text))
    new = {"make": f"Make {number // OF_ONE_MAKE + 1:03}", "model": f"{named['model']} {number + 1:04}"}
    years = original.stem.removeprefix(slug(named["model"]))
    path = folder / slug(new["make"]) / f"{slug(new['model'])}{years}.yaml"
    path.parent.mkdir(parents=True, exist_ok=True)
    text = _BY.sub(rf"by: \g<1>{number}", text)  # no two records hold the same look at a car
    text = _FIRST_NAME.sub(rf"\g<1> {number}", text)  # nor the same openings and plugs, word for word
    path.write_text(_renamed(text, new), encoding="utf-8")
    if (photos := original.parent / "photos" / original.stem).is_dir():
        shutil.copytree(photos, path.parent / "photos" / path.stem)
    return path


def _renamed(text: str, new: dict[str, str]) -> str:
    """The text with another make and model, no longer following a record that is not there."""
    left = dict(new)
    renamed = _NAMED.sub(lambda found: f"  {found[1]}: {left.pop(found[1], found[2])}", text)
    return _FOLLOWS.sub("", renamed)
