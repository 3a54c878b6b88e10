"""Applies the rules: every file, every rule, all problems in one run.

A rule that crashes becomes a problem that names the rule; a file that takes too long, or ends its process, one that names the file.
The others go on.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from contextlib import nullcontext
from dataclasses import dataclass, replace
from functools import partial
from itertools import chain
from operator import itemgetter
from pathlib import Path

from undertrim.check import additions, handbook, layering
from undertrim.check.across import Across, across
from undertrim.check.cache import ALL, CARD, Cache
from undertrim.check.one_file import CRASH, Looked, look, neighbour, unseen
from undertrim.check.part import Part
from undertrim.check.register import COLLECTION_RULES
from undertrim.check.settling import check_entry, settled
from undertrim.check.strays import strays
from undertrim.record.gear import AnyRecord
from undertrim.record.problem import Level, Problem
from undertrim.record.store import Workspace, address
from undertrim.work.crew import Crew, Failed
from undertrim.work.workers import Workers

__all__ = ["CRASH", "Report", "check", "check_entry"]

Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class Report:
    """What one run found; `records` counts the files that were looked at, `earlier` are those of a format before the newest."""

    records: int
    problems: tuple[Problem, ...]
    earlier: tuple[Path, ...] = ()

    @property
    def errors(self) -> int:
        """How many of the problems are errors."""
        return sum(problem.level is Level.ERROR for problem in self.problems)


def check(
    workspace: Workspace,
    paths: Sequence[Path] = (),
    progress: Progress | None = None,
    cache: Cache | None = None,
    crew: Workers | None = None,
    part: Part | None = None,
) -> Report:
    """Check the record files among `paths` (all, if none are given), with what `cache` still knows of them.

    With paths, the rules for one file look at those files only, and the rules for the collection at everything: what they say is
    told wherever it stands, unless it surely rests on other records alone. `crew` are the workers to do it, if there are some already.
    Of a `part` all is told that stands in its own files, and what stands in none by the first: together they say what one check says.
    """
    with nullcontext(crew) if crew else Crew() as workers:
        return _check(_Looking(workspace, cache, workers), paths, progress, part)


def _check(looking: "_Looking", paths: Sequence[Path], progress: Progress | None, part: Part | None) -> Report:
    workspace = looking.workspace
    chosen = workspace.files(paths)
    if part:
        chosen = part.among(workspace.records, chosen)
    others = sorted({*workspace.files()}.difference(chosen)) if paths or part else []
    everything = chain(looking.look(chosen), looking.neighbours(others))
    every = list(_counted(everything, len(chosen) + len(others), progress))
    looked, beside = every[: len(chosen)], every[len(chosen) :]
    in_order = sorted(
        zip([*chosen, *others], every, strict=True), key=itemgetter(0)
    )  # as in a check of all, so as to say the same
    said = across([item for _, item in in_order], looking.cache.meetings if looking.cache else None)
    problems = [
        *(problem for item in looked for problem in settled(item, said.of(item), COLLECTION_RULES)),
        *(() if part else _beyond(said, beside, {address(path) for path in chosen})),
        *(
            (*handbook.problems(workspace, paths), *strays(workspace, paths), *additions.problems(workspace, paths))
            if not part or part.number == 1
            else ()
        ),
    ]
    problems = [*layering.at_origin(workspace, problems)] if workspace.shared else problems
    earlier = tuple(item.path for item in looked if item.earlier)
    return Report(len(chosen), tuple(sorted(problems, key=lambda problem: problem.sort_key)), earlier)


def neighbours(workspace: Workspace, paths: Sequence[Path], cache: Cache) -> list[Looked]:
    """What the rules for the collection want to know of these files."""
    with Crew() as workers:
        return list(_Looking(workspace, cache, workers).neighbours(paths))


@dataclass(frozen=True)
class _Looking:
    """Looks at files: in what is remembered first, then by the workers."""

    workspace: Workspace
    cache: Cache | None
    workers: Workers

    def look(self, paths: Sequence[Path]) -> Iterator[Looked]:
        """What each file yields, in the order of the files."""
        return self._each(paths, ALL, partial(_look_at, self.workspace, self.cache))

    def neighbours(self, paths: Sequence[Path]) -> Iterator[Looked]:
        """The same for files that are not put through the rules for one file."""
        return self._each(paths, CARD, partial(_neighbour, self.workspace, self.cache))

    def _each(self, paths: Sequence[Path], part: str, work: Callable[[Path], Looked]) -> Iterator[Looked]:
        known = {path: found for path in paths if (found := self._known(path, part))}
        unknown = [path for path in paths if path not in known]
        fresh = self.workers.each(work, unknown)
        for path in paths:
            found = known[path] if path in known else self._entered(path, next(fresh))
            card = found.card and replace(found.card, whole=partial(_whole, self.workspace, path))
            yield replace(found, card=card)

    def _entered(self, path: Path, looked: Looked | Failed) -> Looked:
        if isinstance(looked, Failed):
            return unseen(self.workspace.shown(path), path.stem, looked)
        return self.cache.entered(self.workspace, path, looked) if self.cache else looked

    def _known(self, path: Path, part: str) -> Looked | None:
        if self.cache is None:
            return None
        return (
            self.cache.get(self.workspace, path) or (part != ALL and self.cache.get(self.workspace, path, part)) or None
        )


def _whole(workspace: Workspace, path: Path) -> AnyRecord | None:
    """All of a record, for the few rules that hold much of one against another."""
    return workspace.load(path).record


def _look_at(workspace: Workspace, cache: Cache | None, path: Path) -> Looked:
    return _kept(workspace, cache, path, lambda: look(workspace.load(path)), ALL)


def _neighbour(workspace: Workspace, cache: Cache | None, path: Path) -> Looked:
    return _kept(workspace, cache, path, lambda: neighbour(workspace.load(path)), CARD)


def _kept(workspace: Workspace, cache: Cache | None, path: Path, work: Callable[[], Looked], part: str) -> Looked:
    return work() if cache is None else cache.keep(workspace, path, work, part)


def _counted(results: Iterable[Looked], total: int, progress: Progress | None) -> Iterator[Looked]:
    for number, item in enumerate(results, 1):
        if progress:
            progress(number, total)
        yield item


def settled_across(looked: Looked, found: Sequence[Problem]) -> Iterator[Problem]:
    """What is left of what the rules for the collection found in a file after its allows for these."""
    allows = [allow for allow in looked.allows if allow.rule in COLLECTION_RULES and allow.reason]
    only = replace(looked, problems=(), allows=tuple(allows), card=None)
    return settled(only, found, COLLECTION_RULES, ())


def _beyond(across: Across, beside: Sequence[Looked], chosen: Collection[str]) -> Iterator[Problem]:
    """What stands in files that were not asked for and may come from the `chosen` ones, or from what is no longer there.

    An allow of theirs that a chosen file has made useless is told too.
    """
    for item in beside:
        theirs = across.found.get(item.path, {})
        for problem in settled_across(item, list(theirs)):
            records = theirs.get(problem)
            if not records or not records.isdisjoint(chosen):
                yield problem
