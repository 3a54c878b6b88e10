"""Cases: which shipped record is spoilt, and how. A case follows from its seed and number, so that it can be made again."""

import json
import random
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import text_changes
import tree_changes
from tree_changes import Pool

from undertrim.record.source import Data
from undertrim.record.store import Workspace

ROOT = Path(__file__).parent.parent.parent
CHANGES = (1, 1, 1, 1, 2, 2, 3)
"""How many changes a mutant has: with many, hardly one would pass."""


@dataclass(frozen=True, slots=True)
class Case:
    """One mutant by its seed and number."""

    seed: int
    number: int


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
def pool(kind: str) -> Pool:
    """What stands under which key in the shipped records of one kind."""
    return tree_changes.pool(item.data for item in originals() if item.kind == kind)


def mutant(case: Case) -> Mutant:
    """The record of a case: as many vehicles as gear, and as many changed as text as as data."""
    draw = random.Random(f"{case.seed}/{case.number}")  # noqa: S311 - a draw, no secret
    kind = draw.choice(("vehicle", "gear"))
    original = draw.choice([item for item in originals() if item.kind == kind])
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
