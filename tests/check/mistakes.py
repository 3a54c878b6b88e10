"""Counts the mistakes that the checks find: each record spoilt in one place, in many ways, and checked like any other.

The named mutations of the tests and all slips are tried, a few places of each kind in each record, always the same ones. The records
are the shipped ones without their stamps of verification, which would find every edit; allows are kept. All rules look, those for the
whole collection too, which see the other records as they are.
"""

import dataclasses
import random
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

import mutations
from slips import evidence, guards, numbers, parts, plugs_and_texts, times, wiring  # for what they register
from slips.making import SLIPS, Data, Slip, Spoilt

from undertrim.check import one_file, settling
from undertrim.check.across import across
from undertrim.check.one_file import Looked
from undertrim.check.register import COLLECTION_RULES
from undertrim.record.copying import copied
from undertrim.record.identity import slug
from undertrim.record.source import Source
from undertrim.record.store import Workspace, entry

__all__ = [
    "Kind",
    "Spoilt",
    "evidence",
    "found_in",
    "guards",
    "kinds",
    "numbers",
    "parts",
    "plugs_and_texts",
    "spoilt",
    "table",
    "times",
    "unstamped",
    "vehicles",
    "wiring",
]

PLACES = 4
"""Places tried of one kind in one record."""


@dataclass
class Kind:
    """One kind of mistake: how often it was made, how often found, and which rules found it how often."""

    tried: int = 0
    caught: int = 0
    rules: Counter[str] = field(default_factory=Counter)


def kinds() -> dict[str, Slip]:
    """Every kind of mistake by its name in words."""
    named = {name: mutation for name, (mutation, _) in mutations.KINDS.items()}
    return {name.replace("_", " "): made for name, made in {**named, **SLIPS}.items()}


def measure(workspace: Workspace, *, few: bool = False) -> dict[str, Kind]:
    """Every kind, tried in every record of the workspace; both processors are used. A `few` are one in ten, once in one record."""
    paths, names, places = vehicles(workspace), list(kinds()), PLACES
    if few:
        paths, names, places = paths[:1], names[::10], 1
    work = [(workspace.root, path, names, places) for path in paths]
    counted = {name: Kind() for name in names}
    with ProcessPoolExecutor() as pool:
        for name, found in (item for items in pool.map(_of_record, work) for item in items):
            counted[name].tried += 1
            counted[name].caught += bool(found)
            counted[name].rules.update(found)
    return counted


def vehicles(workspace: Workspace) -> list[Path]:
    """The files of the vehicle records."""
    return [path for path in workspace.files() if workspace.kind(path) == "vehicle"]


def _of_record(work: tuple[Path, Path, list[str], int]) -> list[tuple[str, set[str]]]:
    root, path, names, places = work
    source = unstamped(Workspace(root).load(path).source)
    return [
        (name, found_in(Workspace(root), path, spoilt_source))
        for name in names
        for spoilt_source in spoilt(name, kinds()[name], source, places)
    ]


def unstamped(source: Source) -> Source:
    """A record without its stamp of verification."""
    assert isinstance(source.data, dict)
    return dataclasses.replace(source, data={key: value for key, value in source.data.items() if key != "verified"})


def spoilt(name: str, made: Slip, source: Source, places: int) -> Iterator[Source]:
    """The record spoilt in some of the places where this can be done; random, but the same in every run."""
    data: Data = copied(source.data)
    found = _made(made, data)
    for one in random.Random(name).sample(found, min(places, len(found))):  # noqa: S311 - a draw, no secret
        yield dataclasses.replace(source, data=one)


def _made(made: Slip, data: Data) -> list[Any]:
    """All that a kind makes of a record; none where the record lacks what the kind takes for granted."""
    try:
        return [one for _, one in made(data)]
    except KeyError:
        return []


def found_in(workspace: Workspace, path: Path, source: Source) -> set[str]:
    """The ids of the rules that say something of a record among the others."""
    source = dataclasses.replace(source, path=named(source.path, source))
    item = one_file.look(entry(named(path, source), workspace.kind(path), source))
    found = across([item, *(other for other in _shelf(workspace) if other.path != item.path)])
    settled = settling.settled(item, found.of(item), COLLECTION_RULES)
    return {problem.rule for problem in settled}


def named(path: Path, source: Source) -> Path:
    """The file a record belongs in by its model: a copy for another model stands beside the one it came from."""
    model, stem = source.data["vehicle"]["model"], path.stem.rsplit("-", 2)
    return path.with_name(f"{slug(str(model))}-{stem[1]}-{stem[2]}.yaml")


@cache
def _shelf(workspace: Workspace) -> tuple[Looked, ...]:
    return tuple(one_file.neighbour(workspace.load(path)) for path in workspace.files())


def table(counted: dict[str, Kind]) -> str:
    """A line a kind, the least caught first, then the sums."""
    rows = sorted(counted.items(), key=lambda item: (item[1].caught / max(item[1].tried, 1), item[0]))
    lines = [f"{'mistake':52}{'tried':>7}{'caught':>8}{'share':>7}  by"]
    lines += [_row(name, kind) for name, kind in rows if kind.tried]
    tried = [kind for kind in counted.values() if kind.tried]
    total = Kind(sum(kind.tried for kind in tried), sum(kind.caught for kind in tried))
    never = sum(not kind.caught for kind in tried)
    return "\n".join([*lines, _row(f"all {len(tried)} kinds, {never} of them never caught", total)]) + "\n"


def _row(name: str, kind: Kind) -> str:
    by = ", ".join(f"{rule} {count}" for rule, count in kind.rules.most_common(4))
    return f"{name:52}{kind.tried:>7}{kind.caught:>8}{kind.caught / max(kind.tried, 1):>7.0%}  {by}".rstrip()


def main(workspace: Workspace, *, few: bool = False) -> None:
    """Print the table for the records of a workspace."""
    sys.stdout.write(table(measure(workspace, few=few)))
