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


def twins(workspace: Workspace, fresh: Entry) -> list[Problem]:
    """What those rules would say of the collection with this record in it, and do not say without it; nothing is written.

    It may be new, or another version of one that is there: its `path` says which. A problem stands in the record that is told, which may be another one.
    """
    cache = Cache(workspace)  # whoever was checked is not read again
    others = [path for path in workspace.files() if path != fresh.path and workspace.kind(path) == fresh.kind]
    there = neighbours(workspace, others, cache)
    before = [*there, *(neighbours(workspace, [fresh.path], cache) if fresh.path.is_file() else ())]
    new = Counter(_said([*there, neighbour(fresh)])) - Counter(_said(before))
    return sorted(new, key=lambda problem: problem.sort_key)


def _said(looked: Sequence[Looked]) -> list[Problem]:
    found = across(sorted(looked, key=lambda item: item.path), rules=RULES).found
    return [problem for problems in found.values() for problem in problems]
