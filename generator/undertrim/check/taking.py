"""Takes answers into a record, and lets none in with which the check finds what it did not find before."""

import re
from collections import Counter
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from undertrim.check.settling import check_entry
from undertrim.check.tried_places import nowhere
from undertrim.derive.claims import Deed, Outcome, Taking
from undertrim.derive.evidence.fingerprint import fingerprints
from undertrim.record import layout
from undertrim.record.claims import Answer
from undertrim.record.gear import AnyRecord
from undertrim.record.layout import CannotLay, modeline
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Source, read_text
from undertrim.record.stamping import PARTS, unstamped, with_parts
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, WayOut, message

Progress = Callable[[int, int], None]

_OF_A_THING = 3
"""Keys that lead to a field of a thing: one that is deeper is in a block of its own."""

_LINE = re.compile(r"\bline [0-9]+\b")


@dataclass(frozen=True, slots=True)
class Taken:
    """One record after its answers: its text, and what came of each answer, in their order."""

    path: Path
    before: str
    text: str
    outcomes: tuple[Outcome, ...]
    stamp_gone: bool = False
    """Whether the record was stamped as verified, and is no longer."""
    unlaid: bool = False
    """Whether the text could not be laid out the one way."""
    answers: tuple[Answer, ...] = ()

    @property
    def changed(self) -> bool:
        """Whether the record is another one."""
        return self.text != self.before


def take(place: Workspace, path: Path, answers: Sequence[Answer], progress: Progress | None = None) -> Taken:
    """What becomes of one record; nothing is written."""
    return replace(taken(place, place.load(path), answers, progress), answers=tuple(answers))


def taken(
    place: Workspace,
    entry: Entry,
    answers: Sequence[Answer],
    progress: Progress | None = None,
    known: Collection[str] = (),
) -> Taken:
    """The same for a record that was read; stamps of parts vouch for the blocks that are `known`."""
    path = entry.path
    before = entry.source.as_typed.text
    record = entry.record
    if record is None or entry.dropped or entry.source.problems:
        refused = Outcome(Deed.REFUSED, message("claims/broken", path=str(entry.source.path)))
        return Taken(path, before, before, (refused,) * len(answers))
    if isinstance(record, VehicleRecord) and record.verified_parts:
        return _with_parts(place, entry, record, answers, progress)
    stamp = record.verified if isinstance(record, VehicleRecord) else None
    stamped = stamp is not None
    marked = frozenset(stamp.facts if stamp else known)
    guarded = _Guarded(place, entry, _unstamped(place, entry) if stamped else entry, marked, progress)
    outcomes = guarded.take(answers)
    if not guarded.changed:
        return Taken(path, before, before, outcomes)
    if stamped:  # it goes anyway: then one more witness costs nothing
        guarded = _Guarded(place, entry, _unstamped(place, entry), frozenset(), progress)
        outcomes = guarded.take(answers)
    text, is_laid = laid(place, guarded.now)
    return Taken(path, before, text, outcomes, stamped, not is_laid)


def _with_parts(
    place: Workspace, entry: Entry, record: VehicleRecord, answers: Sequence[Answer], progress: Progress | None
) -> Taken:
    """The same for a record of which parts are stamped: those stamps stay whose facts do."""
    before = entry.source.as_typed.text
    bare = place.entry(entry.path, read_text(with_parts(entry.source, {}), entry.source.path))
    known = {block for one in record.verified_parts.values() for block in one.facts}
    made = taken(place, bare, answers, progress, known)
    if made.text == made.before:
        return replace(made, before=before, text=before)
    after = place.entry(entry.path, read_text(made.text, entry.source.path))
    now = fingerprints(after.source.data)
    typed = entry.source.as_typed.data[PARTS]
    kept = {one.id: typed[one.id] for one in record.verified_parts.values() if one.facts.items() <= now.items()}
    text = with_parts(after.source, kept) if kept else made.text
    return replace(made, before=before, text=text, stamp_gone=made.stamp_gone or len(kept) < len(typed))


def _unstamped(place: Workspace, entry: Entry) -> Entry:
    return place.entry(entry.path, read_text(unstamped(entry.source), entry.source.path))


def laid(place: Workspace, entry: Entry) -> tuple[str, bool]:
    """Its text laid out the one way, and whether that could be done."""
    try:
        line = modeline.wanted(entry.path, entry.kind, place.root) if place.is_own(entry.path) else ""
        return layout.laid_out(entry.source, entry.kind, line), True
    except CannotLay:
        return entry.source.as_typed.text, False


@dataclass(slots=True)
class _Guarded:
    """A record on its way; `was` is how it was, `now` how it is with all that was let in."""

    place: Workspace
    was: Entry
    now: Entry
    stamped: frozenset[str]
    """The blocks of facts that a stamp vouches for."""
    progress: Progress | None = None
    changed: bool = False
    known: Counter[tuple[str, str]] = field(init=False)

    def __post_init__(self) -> None:
        self.known = Counter(map(_key, check_entry(self.was)))

    def take(self, answers: Sequence[Answer]) -> tuple[Outcome, ...]:
        """What belongs together goes in together: a depth without its datum would be refused, both are not."""
        outcomes: dict[int, Outcome] = {}
        groups: dict[tuple[str, ...], list[int]] = {}
        for number, answer in enumerate(answers):
            groups.setdefault(answer.keys[:2], []).append(number)
        for numbers in groups.values():
            outcomes |= self._group({number: answers[number] for number in numbers})
            if self.progress:
                self.progress(len(outcomes), len(answers))
        return tuple(outcomes[number] for number in range(len(answers)))

    def _group(self, answers: dict[int, Answer]) -> dict[int, Outcome]:
        outcomes, problem = self._unit(answers)
        return self._in_turn(answers) if problem else outcomes

    def _in_turn(self, answers: dict[int, Answer]) -> dict[int, Outcome]:
        """Block by block, since a hole without its shape is none, and then each by itself; those that are refused again after the others are in, as long as one more gets in."""
        outcomes: dict[int, Outcome] = {}
        blocks: dict[tuple[str, ...], list[int]] = {}
        for number, answer in answers.items():
            blocks.setdefault(answer.keys[:-1] if len(answer.keys) > _OF_A_THING else answer.keys, []).append(number)
        for units in (list(blocks.values()), [[number] for number in answers]):
            while self._one_more(units, answers, outcomes):
                pass
        return outcomes

    def _one_more(self, units: list[list[int]], answers: dict[int, Answer], outcomes: dict[int, Outcome]) -> bool:
        """Whether one of the units that are not in got in now."""
        got_in = False
        for unit in units:
            waiting = {number: answers[number] for number in unit if not _is_in(outcomes.get(number))}
            if waiting:
                found, problem = self._unit(waiting)
                # alone it only lacks the others: what is wrong with all of them together says more
                outcomes |= {number: one for number, one in found.items() if _is_in(one) or number not in outcomes}
                got_in = got_in or (not problem and any(one.changes for one in found.values()))
        return got_in

    def _unit(self, answers: dict[int, Answer]) -> tuple[dict[int, Outcome], Problem | None]:
        """Answers that go in together or not at all; with the problem for which they do not."""
        before, outcomes = self.now, {}
        for number, answer in answers.items():
            self.now, outcomes[number] = self._one(answer, alone=len(answers) == 1)
        problem = self._spoilt(self.now) if self.now is not before else None
        if problem:
            self.now, refused = before, Outcome(Deed.REFUSED, spoils(problem))
            return {number: refused if one.changes else one for number, one in outcomes.items()}, problem
        self.changed = self.changed or self.now is not before
        return outcomes, None

    def _one(self, answer: Answer, *, alone: bool) -> tuple[Entry, Outcome]:
        """The record with one answer; what lacks another one yet is no fault where it is not `alone`."""
        assert self.now.record
        if said := nowhere(self.place, answer):
            return self.now, Outcome(Deed.REFUSED, said)
        taking = Taking(self.now.source, self.now.record, self._read, self._build, self.was.source, self.stamped)
        source, outcome = taking.take(answer)
        if source is self.now.source:
            return self.now, outcome
        after = self.place.entry(self.now.path, source.as_typed)
        if after.record is None or (alone and after.dropped):
            problem = next((one for one in after.problems if self._is_new(one)), None)
            said = spoils(problem) if problem else message("claims/broken", path=str(after.source.path))
            return self.now, Outcome(Deed.REFUSED, said)
        return after, outcome

    def _read(self, text: str) -> Source:
        typed = read_text(text, self.now.source.path)
        return self.place.whole(self.now.path, typed) if self.now.kind == "vehicle" else typed

    def _build(self, source: Source) -> AnyRecord | None:
        return self.place.entry(self.now.path, source.as_typed).record

    def _spoilt(self, entry: Entry) -> Problem | None:
        """The first problem that the record did not have before, the worst first."""
        found = sorted(check_entry(entry), key=lambda problem: problem.level is not Level.ERROR)
        counted: Counter[tuple[str, str]] = Counter()
        for problem in found:
            counted[_key(problem)] += 1
            if counted[_key(problem)] > self.known[_key(problem)]:
                return problem
        return None

    def _is_new(self, problem: Problem) -> bool:
        return _key(problem) not in self.known


def _is_in(outcome: Outcome | None) -> bool:
    return outcome is not None and outcome.deed is not Deed.REFUSED


def _key(problem: Problem) -> tuple[str, str]:
    """What a problem is, wherever it stands."""
    return problem.rule, _LINE.sub("line", problem.message)


def spoils(problem: Problem) -> Message:
    """Why something is refused with which the check finds a problem."""
    return message("claims/spoils", problem=problem.said, rule=problem.rule, hint=WayOut(problem.said))
