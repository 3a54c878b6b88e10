"""Cases: which shipped record is spoilt, and how. A case follows from its seed and number, so that it can be made again."""

import json
import random
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import cuttings
import text_changes
import tree_changes
from tree_changes import Pool

from undertrim.check import one_file
from undertrim.record.problem import Level
from undertrim.record.source import Data, read_text
from undertrim.record.store import Workspace, entry

ROOT = Path(__file__).parent.parent.parent
CHANGES = (1, 1, 1, 1, 2, 2, 3)
"""How many changes a mutant has: with many, hardly one would pass."""
WHOLE = 32
"""One case in so many spoils a whole record; the others a cutting of one, which takes a fraction of the time."""


@dataclass(frozen=True, slots=True)
class Case:
    """One mutant by its seed and number."""

    seed: int
    number: int

    @property
    def whole(self) -> bool:
        """Whether it spoils a whole record and meets the whole collection."""
        return self.number % WHOLE == 0


@dataclass(frozen=True, slots=True)
class Mutant:
    """A record spoilt: what is in its file, in whose place it stands, and how it was made, in words."""

    path: Path
    content: bytes
    made: str


@dataclass(frozen=True, slots=True)
class Original:
    """A shipped record as written and as data."""

    path: Path
    kind: str
    text: str
    data: Data


@cache
def originals() -> tuple[Original, ...]:
    """All shipped vehicles and gear, in the order of their files."""
    workspace = Workspace(ROOT)
    sources = ((path, workspace.kind(path), workspace.load(path).source) for path in workspace.files())
    return tuple(Original(path, kind, source.text, source.data) for path, kind, source in sources)


@cache
def cut() -> tuple[Original, ...]:
    """Two records for each opening of the shipped vehicles that passes by itself, one of each format, and the gear, which is small as it is."""
    return tuple(small for item in originals() for small in (_cut(item) if item.kind == "vehicle" else [item]))


def _cut(item: Original) -> Iterator[Original]:
    for data in (form for one in cuttings.cuttings(item.data) for form in (one, cuttings.said_once(one))):
        text = as_file(data).decode()
        looked = one_file.look(entry(item.path, item.kind, read_text(text, item.path)))
        if not any(problem.level is Level.ERROR for problem in looked.problems):
            yield Original(item.path, item.kind, text, data)


@cache
def pool(kind: str) -> Pool:
    """What stands under which key in the shipped records of one kind."""
    return tree_changes.pool(item.data for item in originals() if item.kind == kind)


def mutant(case: Case) -> Mutant:
    """The record of a case: as many vehicles as gear, and as many changed as text as as data."""
    draw = random.Random(f"{case.seed}/{case.number}")  # noqa: S311 - a draw, no secret
    kind = draw.choice(("vehicle", "gear"))
    original = draw.choice([item for item in (originals() if case.whole else cut()) if item.kind == kind])
    count = draw.choice(CHANGES)
    changed = _as_text(original, draw, count) if draw.random() < 0.5 else _as_tree(original, draw, count)
    return Mutant(original.path, *changed)


def _as_text(original: Original, draw: random.Random, count: int) -> tuple[bytes, str]:
    other = draw.choice(originals()).text
    text, names = text_changes.changed(original.text, other, draw, count)
    raw = text.encode(errors="surrogatepass")
    if draw.random() < 0.03:
        at = draw.randrange(len(raw) + 1)
        raw, names = raw[:at] + draw.choice(text_changes.BYTES) + raw[at:], [*names, "bytes"]
    return raw, ", ".join(names)


def _as_tree(original: Original, draw: random.Random, count: int) -> tuple[bytes, str]:
    data, names = tree_changes.changed(original.data, pool(original.kind), draw, count)
    if isinstance(data, dict) and draw.random() < 0.9:
        data.pop("verified", None)  # a stamp finds every change, and nothing that carries one would pass
    return as_file(data), ", ".join(names)


def as_file(data: Data) -> bytes:
    """Data as the text of a record: JSON is YAML, and every value is text there too."""
    return json.dumps(data, ensure_ascii=False, indent=1).encode(errors="surrogatepass")
