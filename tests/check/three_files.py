"""Three records in a folder of their own, what may be typed in their place, and which of them are looked at."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.check import one_file, runner
from undertrim.check.cache import Cache
from undertrim.check.one_file import Looked
from undertrim.record.store import Workspace

HOME = Path("records/vehicles/brindleway")
TEXTS = {
    "good": BASE,
    "late": BASE.replace("{from: 2014-01, to: 2018-01}", "{from: 2017-01, to: 2020-01}"),
    "no count": BASE.replace("{screw: T20, count: 4}", "{screw: T20}"),
    "allowed": BASE.replace(
        "    held_by: [{screw: T20, count: 4}]", "    held_by: [{screw: T20}] # allow fastener-without-count: unseen"
    ),
    "allowed overlap": BASE.replace("  built:", "  # allow overlapping-records: two plants\n  built:"),
    "useless allow": BASE.replace("format: 1", "format: 1 # allow side-word: none"),
    "misspelt": BASE.replace("takes: 3 min", "taks: 3 min"),
    "no vehicle": BASE.replace("  high_voltage: no", "  high_voltage: maybe"),
    "not yaml": f"{BASE}a: [",
    "empty": "",
}
FILES = [HOME / f"{stem}.yaml" for stem in ("otter-2014-2018", "otter-2016-2020", "wren-2014-2018")]


def workspace(root: Path) -> Workspace:
    (root / HOME).mkdir(parents=True)
    return Workspace(root)


def three_files(root: Path) -> Workspace:
    """Three files under their right names: one good, one that overlaps with it, one with a fault of its own."""
    made = workspace(root)
    later = BASE.replace("{from: 2014-01, to: 2018-01}", "{from: 2016-01, to: 2020-01}")
    for path, text in zip(FILES, (BASE, later, TEXTS["no count"].replace("Otter", "Wren")), strict=True):
        (root / path).write_text(text, encoding="utf-8")
    return made


def fresh(cache: Cache) -> list[Path]:
    return sorted(cache.folder.iterdir())


def looked_at(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Notes the files that are really looked at."""
    seen: list[str] = []

    def note(entry: object) -> Looked:
        seen.append(entry.id)  # type: ignore[attr-defined]
        return one_file.look(entry)  # type: ignore[arg-type]

    monkeypatch.setattr(runner, "look", note)
    return seen
