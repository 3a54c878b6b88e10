"""Makes a shared vehicle's record with what the layers above it add, and says what came of each answer.

An addition is an answer, so it is taken as any other is (`taking.py`): it fills in, is one more witness, or makes a conflict, and one with which
the check would find something new stays out. What was made is kept in the own collection's cache by the digests of all that it rests on.
"""

import json
import os
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from difflib import SequenceMatcher
from functools import lru_cache
from pathlib import Path

from undertrim import resources
from undertrim.check import taking
from undertrim.check.taking import Taken
from undertrim.derive.claims import Deed, Outcome, sources
from undertrim.record import claims, leftovers
from undertrim.record.claims import Answer, ClaimsFile, writing
from undertrim.record.digests import Digests, joined
from undertrim.record.layers import Layered
from undertrim.record.problem import Position, Problem, printable
from undertrim.record.source import Data, Source, read, read_text
from undertrim.record.store import Entry, Workspace, address
from undertrim.words import Message, message, values
from undertrim.work.refused import Refused

Line = tuple[Path, int]


@dataclass(frozen=True, slots=True)
class Made:
    """A shared vehicle as it is with all that is added; `outcomes` tells for each answer of the own layer, in their order, what came of it."""

    layered: Layered
    outcomes: tuple[Outcome, ...]


def layered(place: Workspace, path: Path) -> Layered:
    """A shared vehicle with what the layers above it add."""
    return made(place, path).layered


def made(place: Workspace, path: Path) -> Made:
    """The same with what came of the own layer's answers. A claims file that cannot be read adds nothing; the check says so."""
    return _remembered(place, path, _key(place, path))


def sweep(place: Workspace) -> None:
    """Remove what was made of records and answers that are others by now."""
    added = (path for path in place.all_of() if place.additions(path)) if place.shared else ()
    leftovers.sweep(_cache(place), {f"{_key(place, path)}.json" for path in added})


def _cache(place: Workspace) -> Path:
    return place.root / ".undertrim" / "cache" / "layers"


def _key(place: Workspace, path: Path) -> str:
    """Changes with all that a layered record rests on."""
    files, digests = place.additions(path), Digests()
    rests_on = (place.bare.beside_state(path, digests), resources.program(), os.fspath(place.shown(path)))
    return joined(*map(digests.of, (path, *files)), *map(str, files), *rests_on)


@lru_cache(maxsize=256)
def _remembered(place: Workspace, path: Path, key: str) -> Made:
    """From this process, from the cache, or made anew."""
    kept = _cache(place) / f"{key}.json"
    try:
        digest, _, text = kept.read_text(encoding="utf-8").partition("\n")
        if digest == joined(text):  # else it is damaged
            return _thawed(json.loads(text))
    except (OSError, ValueError, KeyError, TypeError, AttributeError, ImportError):
        pass
    found = _make(place, path)
    with suppress(OSError):
        kept.parent.mkdir(parents=True, exist_ok=True)
        aside = kept.with_name(f".{key}.{os.getpid()}")
        text = json.dumps(_frozen(found), ensure_ascii=False)
        aside.write_text(f"{joined(text)}\n{text}", encoding="utf-8")
        aside.replace(kept)
    return found


class BadFile(Refused):
    """The own additions to a vehicle cannot be read, so that none can be written beside them."""

    def __init__(self, path: Path) -> None:
        super().__init__(message("layers/broken-file", path=printable(str(path))))


def target(place: Workspace, path: Path) -> Path:
    """Where answers about a vehicle are written: its record, or for a shared one the own additions to it."""
    return path if place.is_own(path) else place.addition(path)


def write(place: Workspace, taken: Taken) -> None:
    """Write what was taken: into the own record, or those answers that changed a shared one beside the own additions. Raises BadFile and OSError."""
    if place.is_own(taken.path):
        place.write(taken.path, taken.text)
        return
    pairs = zip(taken.answers, taken.outcomes, strict=True)
    fresh = [replace(answer, photo=None) for answer, outcome in pairs if outcome.changes]
    writing.put(place.addition(taken.path), about(taken.path), [*own(place, taken.path), *fresh])


def own(place: Workspace, path: Path) -> Sequence[Answer]:
    """The own additions so far. Raises BadFile where there is more in their file than can be written again."""
    file = place.addition(path)
    if not file.exists():
        return ()
    found = claims.read(file, place.shown(file))
    if found.problems or found.bad or found.new or len(answers_of(found, path)) < len(found.answers):
        raise BadFile(place.shown(file))
    return found.answers


def answers_of(file: ClaimsFile, path: Path) -> list[Answer]:
    """The answers of an additions file that are about the record it is called after."""
    if is_gear(path):
        return [answer for answer in file.answers if answer.gear == path.stem]
    return [answer for answer in file.answers if answer.vehicle in (path.stem, address(path))]


def about(path: Path) -> dict[str, str]:
    """How a claims file names a record."""
    return {"gear": path.stem} if is_gear(path) else {"vehicle": address(path)}


def is_gear(path: Path) -> bool:
    """Whether a record is one of gear, by the folder it is in."""
    return path.parts[-3:][0] == "gear"


def _make(place: Workspace, path: Path) -> Made:
    bare, shown = place.bare, place.shown(path)
    source = read(path, shown)
    text, outcomes, evidence = source.text, tuple[Outcome, ...](), frozenset[str]()
    origins = [(path, number) for number, _ in enumerate(text.splitlines(), 1)]
    own = place.addition(path)
    for file in place.additions(path):
        found = claims.read(file)
        answers = answers_of(found, path)
        before = bare.entry(path, read_text(text, shown))
        taken = taking.taken(bare, before, answers)
        after = bare.entry(path, read_text(taken.text, shown))
        origins = _origins(origins, before, after, _Said(found, answers, taken.outcomes))
        text = taken.text
        if file == own:
            outcomes, evidence = taken.outcomes, frozenset(_evidence(after)) - frozenset(_evidence(before))
    return Made(Layered(text, tuple(origins), evidence), outcomes)


def _evidence(entry: Entry) -> Sequence[str]:
    return tuple(entry.record.evidence) if entry.record else ()


# Where each line is from


@dataclass(frozen=True, slots=True)
class _Said:
    """Answers of a file, with what came of each."""

    file: ClaimsFile
    answers: Sequence[Answer]
    outcomes: Sequence[Outcome]

    def line(self, source: Source, places: Sequence[tuple[str, ...]]) -> Line:
        """The line of the answer that has most in common with what stands in a line of the record."""
        changing = [one for one, outcome in zip(self.answers, self.outcomes, strict=True) if outcome.changes]
        best = max(
            changing or self.answers, key=lambda one: max((_alike(source, one, place) for place in places), default=0)
        )
        return self.file.path, self.file.source.position(best.pointer).line


def _alike(source: Source, answer: Answer, place: tuple[str, ...]) -> int:
    """How many keys of an answer's address lead to a place; what names its evidence or its conflict leads there whole."""
    if place[:1] == ("evidence",) and len(place) > 1:
        return len(answer.keys) if sources.evidence_of(source, answer)[0] == place[1] else 0
    same = [one == other for one, other in zip(answer.keys, place, strict=False)]
    return same.index(False) if False in same else len(same)


def _origins(origins: Sequence[Line], before: Entry, after: Entry, said: _Said) -> list[Line]:
    """For each line of the record after some answers where it is from: as the lines before were, or from an answer."""
    typed = after.source.as_typed
    old, new = before.source.as_typed.text.splitlines(), typed.text.splitlines()
    places: dict[int, list[tuple[str, ...]]] = {}
    for pointer, position in (*typed.values.items(), *typed.keys.items()):
        places.setdefault(position.line, []).append(tuple(map(str, pointer)))
    found: list[Line] = []
    for sort, first, _, start, end in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        for number in range(start, end):
            same = sort == "equal"
            found.append(
                origins[first + number - start] if same else said.line(after.source, places.get(number + 1, []))
            )
    return found


def at_origin(place: Workspace, problems: Sequence[Problem]) -> Iterator[Problem]:
    """The problems, those in what was made at the line that each is from: of the shared record, or of the claims file."""
    shown = {place.shown(path): path for path in (place.all_of() if place.shared else ()) if place.additions(path)}
    for problem in problems:
        path = shown.get(problem.file)
        origins = made(place, path).layered.origins if path else ()
        at = problem.position
        if at.line > len(origins):
            yield problem
            continue
        file, line = origins[at.line - 1]
        column = at.column if file == path else 1
        yield replace(problem, file=place.shown(file), position=Position(line, column))


# What is kept


def _frozen(found: Made) -> Mapping[str, Data]:
    layered = found.layered
    files = list(dict.fromkeys(file for file, _ in layered.origins))
    return {
        "text": layered.text,
        "files": [str(file) for file in files],
        "origins": [[files.index(file), line] for file, line in layered.origins],
        "evidence": sorted(layered.evidence),
        "outcomes": [[str(one.deed), values.frozen(one.said)] for one in found.outcomes],
    }


def _thawed(plain: Mapping[str, Data]) -> Made:
    files = [Path(name) for name in plain["files"]]
    origins = tuple((files[file], line) for file, line in plain["origins"])
    outcomes = tuple(Outcome(Deed(deed), _message(said)) for deed, said in plain["outcomes"])
    return Made(Layered(plain["text"], origins, frozenset(plain["evidence"])), outcomes)


def _message(plain: Data) -> Message:
    said = values.thawed(plain)
    if not isinstance(said, Message):
        raise TypeError(f"{type(said).__name__} is no message")
    return said
