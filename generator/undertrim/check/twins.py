"""Whether the collection has a record already that seems to be the same thing: asked before one more is written."""

from collections import Counter
from collections.abc import Sequence

from undertrim.check.across import across
from undertrim.check.cache import Cache
from undertrim.check.one_file import Looked, neighbour
from undertrim.check.runner import neighbours
from undertrim.record.problem import Problem
from undertrim.record.store import Entry, Workspace

RULES = frozenset(
    ("evidence-twice", "gear-twice", "overlapping-records", "phases-alike", "record-copied", "vehicle-twice")
)
"""What finds the same car under another spelling, a copy, gear that is there already, and phases that differ in nothing."""


def twins(workspace: Workspace, *fresh: Entry, new: bool = False) -> list[Problem]:
    """What those rules would say of the collection with these records in it, and do not say without them; nothing is written.

    One may be new, or another version of one that is there: its `path` says which, unless all are `new`, which may be written already. A problem stands
    in the record that is told, which may be another one.
    """
    cache = Cache(workspace)  # whoever was checked is not read again
    ours, kinds = {one.path for one in fresh}, {one.kind for one in fresh}
    others = [path for path in workspace.files() if path not in ours and workspace.kind(path) in kinds]
    there = neighbours(workspace, others, cache)
    versions = [] if new else [path for path in ours if path.is_file()]
    before = [*there, *neighbours(workspace, versions, cache)]
    said = Counter(_said([*there, *map(neighbour, fresh)])) - Counter(_said(before))
    return sorted(said, key=lambda problem: problem.sort_key)


def _said(looked: Sequence[Looked]) -> list[Problem]:
    found = across(sorted(looked, key=lambda item: item.path), rules=RULES).found
    return [problem for problems in found.values() for problem in problems]
