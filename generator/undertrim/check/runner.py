"""Applies the rules: every file, every rule, all problems in one run.

A rule that crashes becomes a problem that names the rule; the others go on.
"""

import os
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from undertrim.check import allowing
from undertrim.check.echoes import Echoes, names_one_of
from undertrim.check.findings import Card, Finding, GearSubject, Subject
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES, RECORD_RULES, rule_ids
from undertrim.record.gear import GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Pointer, Source
from undertrim.record.store import Entry, Workspace

CRASH = "crash"
MANY = 60
"""From this many files on, the work is shared out over the processors."""

Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class Report:
    """What one run found; `records` counts the files that were looked at."""

    records: int
    problems: tuple[Problem, ...]

    @property
    def errors(self) -> int:
        """How many of the problems are errors."""
        return sum(problem.level is Level.ERROR for problem in self.problems)


@dataclass(frozen=True)
class _Looked:
    """What one file yielded; its source text stays behind in the worker unless it holds an allow.

    `rules` are the rules that looked at the whole of it.
    """

    path: Path
    id: str
    problems: tuple[Problem, ...]
    card: Card | None
    source: Source | None
    rules: frozenset[str]


def check(workspace: Workspace, paths: Sequence[Path] = (), progress: Progress | None = None) -> Report:
    """Check the record files among `paths` (all, if none are given).

    With paths, the other records of the same folders are read too, so that overlaps with them are found.
    """
    chosen = workspace.files(paths)
    around = [p for p in workspace.files({path.parent for path in chosen}) if p not in set(chosen)] if paths else []
    looked = list(_look_at_all(workspace, chosen, progress))
    neighbours = [_neighbour(workspace.load(path)) for path in around]
    across = _across([*looked, *neighbours])
    problems = [
        problem
        for item in looked
        for problem in _settled(item, across.get(item.path, []), item.rules | _collection_rules(item))
    ]
    return Report(len(chosen), tuple(sorted(problems, key=lambda problem: problem.sort_key)))


def check_entry(entry: Entry) -> tuple[Problem, ...]:
    """All problems of one file by itself, allows applied."""
    looked = _examine(entry)
    return tuple(sorted(_settled(looked, [], looked.rules), key=lambda problem: problem.sort_key))


def _look_at_all(workspace: Workspace, paths: Sequence[Path], progress: Progress | None) -> Iterator[_Looked]:
    look = partial(_look_at, workspace)
    if len(paths) < MANY:
        results: Iterable[_Looked] = map(look, paths)
        yield from _counted(results, len(paths), progress)
        return
    from concurrent.futures import ProcessPoolExecutor  # slow to import, and few runs need it

    with ProcessPoolExecutor(max_workers=os.cpu_count()) as pool:
        yield from _counted(pool.map(look, paths, chunksize=16), len(paths), progress)


def _counted(results: Iterable[_Looked], total: int, progress: Progress | None) -> Iterator[_Looked]:
    for number, item in enumerate(results, 1):
        if progress:
            progress(number, total)
        yield item


def _look_at(workspace: Workspace, path: Path) -> _Looked:
    return _examine(workspace.load(path))


def _examine(entry: Entry) -> _Looked:
    problems = [*entry.problems, *_single(entry)]
    source = entry.source if allowing.allows(entry.source) else None
    return _Looked(entry.source.path, entry.id, tuple(problems), _card(entry), source, _complete_rules(entry))


def _neighbour(entry: Entry) -> _Looked:
    """A file that is only read for what the collection rules want to know of it."""
    return _Looked(entry.source.path, entry.id, (), _card(entry), None, frozenset())


def _complete_rules(entry: Entry) -> frozenset[str]:
    if entry.record is None or entry.dropped:
        return frozenset()
    return frozenset(RECORD_RULES if isinstance(entry.record, VehicleRecord) else GEAR_RULES)


def _collection_rules(looked: _Looked) -> frozenset[str]:
    return frozenset(COLLECTION_RULES if looked.card and looked.rules else ())


def _settled(looked: _Looked, across: Sequence[Problem], ran: Collection[str]) -> Iterator[Problem]:
    problems = [*looked.problems, *across]
    if looked.source is None:
        return iter(problems)
    return allowing.apply(looked.source, problems, rule_ids(), ran)


def _single(entry: Entry) -> Iterator[Problem]:
    """What the rules for its kind say of one record."""
    echoes = Echoes(entry)
    if isinstance(entry.record, VehicleRecord):
        subject = Subject(entry, entry.record)
        for rule_id, rule in RECORD_RULES.items():
            yield from _said(entry, echoes, rule_id, rule.LEVEL, partial(rule.check, subject))
    elif isinstance(entry.record, GearRecord):
        gear = GearSubject(entry, entry.record)
        for rule_id, gear_rule in GEAR_RULES.items():
            yield from _said(entry, echoes, rule_id, gear_rule.LEVEL, partial(gear_rule.check_gear, gear))


def _said(
    entry: Entry, echoes: Echoes, rule_id: str, level: Level, look: Callable[[], Iterator[Finding]]
) -> Iterator[Problem]:
    """The findings of one rule, placed; what only follows from what the schema refused is left out."""
    try:
        findings = list(look())
    except Exception as error:  # noqa: BLE001 - whatever it is, the run goes on and the rule is named
        yield _crashed(entry.source.path, rule_id, error)
        return
    for finding in findings:
        if not echoes.hold(finding):
            position = entry.source.position(finding.pointer, key=finding.key)
            yield Problem(entry.source.path, position, level, rule_id, finding.message, finding.hint)


def _across(looked: Sequence[_Looked]) -> dict[Path, list[Problem]]:
    """What the collection rules say, by file; what names a record that could not be read in full is left out."""
    cards = [item.card for item in looked if item.card]
    unread = {item.id for item in looked if not item.card}
    found: dict[Path, list[Problem]] = {}
    for rule_id, rule in COLLECTION_RULES.items():
        try:
            for card, finding in rule.check_all(cards):
                if names_one_of(finding.message, unread):
                    continue
                found.setdefault(card.path, []).append(_problem(card, finding, rule.LEVEL, rule_id))
        except Exception as error:  # noqa: BLE001 - whatever it is, the run goes on and the rule is named
            if cards:
                found.setdefault(cards[0].path, []).append(_crashed(cards[0].path, rule_id, error))
    return found


def _problem(card: Card, finding: Finding, level: Level, rule_id: str) -> Problem:
    pointer = finding.pointer
    while pointer and pointer not in card.places:
        pointer = pointer[:-1]
    position = card.places.get(pointer, Position(1, 1))
    return Problem(card.path, position, level, rule_id, finding.message, finding.hint)


def _crashed(path: Path, rule_id: str, error: Exception) -> Problem:
    message = f"the rule '{rule_id}' failed here: {type(error).__name__}: {str(error)[:200]}"
    hint = "this is our fault, not the record's: report it with the record"
    return Problem(path, Position(1, 1), Level.ERROR, CRASH, message, hint)


def _card(entry: Entry) -> Card | None:
    if any(place[:1] in (("vehicle",), ("gear",)) for place in entry.dropped):
        return None
    if isinstance(entry.record, VehicleRecord):
        return Card(entry.source.path, entry.address, entry.record.vehicle, _places(entry.source, "vehicle"))
    if isinstance(entry.record, GearRecord):
        return Card(entry.source.path, entry.address, entry.record.gear, _places(entry.source, "gear"))
    return None


def _places(source: Source, section: str) -> dict[Pointer, Position]:
    return {pointer: place for pointer, place in source.values.items() if pointer[:1] == (section,)}
