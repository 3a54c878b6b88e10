"""A baseline: what was there when it was written is accepted, what is new is not, and an entry that hides nothing any more is told.

A file of lines, each JSON, so that it merges line by line: first `{"baseline": 1}`, then an entry for each kind of problem. An entry names the file, the
rule, the fact by its address in the record, and what is said of it by its code and values; no line number, so that it holds wherever the fact moves to.
"""

import json
import os
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Any

from undertrim.check.runner import CRASH, Report
from undertrim.record.problem import Level, Position, Problem, printable
from undertrim.record.source import Pointer, read
from undertrim.record.store import SUFFIXES, Workspace
from undertrim.words import ENGLISH, Message, message, say
from undertrim.work.refused import Refused

RULE = "baseline"
HEAD = {"baseline": 1}
NEVER = (CRASH, "limit", "defeats-safety", RULE)
"""What nobody may accept: what hurts, and what says that a file was not looked at."""


class BadBaseline(Refused):
    """The file is no baseline; the text says where, and the way out."""


@dataclass(frozen=True, slots=True, order=True)
class Known:
    """A problem without the line it stands on. `says` are the values of its message, in English, by name."""

    file: str
    about: str
    rule: str
    code: str
    says: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of a baseline: a problem, and how many times it was there."""

    line: int
    known: Known
    times: int


def text(workspace: Workspace, problems: Iterable[Problem]) -> str:
    """The baseline that accepts these problems, but for those that nobody may accept."""
    known = _Knowing(workspace)
    found = Counter(known.problem(one) for one in problems if one.rule not in NEVER)
    lines = ({**asdict(one), "says": dict(one.says), "times": times} for one, times in sorted(found.items()))
    return "".join(f"{json.dumps(line, ensure_ascii=False)}\n" for line in (HEAD, *lines))


def entries(path: Path) -> list[Entry]:
    """The entries of a file. Raises BadBaseline, and OSError."""
    try:
        lines = path.read_text(encoding="utf-8").splitlines()
    except UnicodeDecodeError as error:
        raise BadBaseline(message("baseline/none", path=printable(str(path)), line=1)) from error
    told = [(number, _read(path, number, line)) for number, line in enumerate(lines, 1) if line.strip()]
    if not told or told[0][1] != HEAD:
        raise BadBaseline(message("baseline/none", path=printable(str(path)), line=1))
    return [_entry(path, number, data) for number, data in told[1:]]


def apply(
    workspace: Workspace, report: Report, path: Path, accepted: Sequence[Entry], looked: Collection[Path] | None
) -> Report:
    """The report without what is accepted, and with what the baseline accepts in vain: of the files that were `looked` at, or of all."""
    known = _Knowing(workspace)
    left = Counter[Known]()
    for entry in accepted:
        left[entry.known] += entry.times
    new = [problem for problem in report.problems if problem.rule in NEVER or not _took(left, known.problem(problem))]
    names = None if looked is None else {known.file(one) for one in looked}
    vain = [_in_vain(workspace, path, entry) for entry in accepted if left[entry.known] and _concerns(entry, names)]
    return replace(report, problems=tuple(sorted([*new, *vain], key=lambda problem: problem.sort_key)))


def _concerns(entry: Entry, names: Collection[str] | None) -> bool:
    return names is None or entry.known.file in names


def _took(left: Counter[Known], known: Known) -> bool:
    """Whether one of what is accepted is this; it is used up then."""
    if left[known] <= 0:
        return False
    left[known] -= 1
    return True


def _in_vain(workspace: Workspace, path: Path, entry: Entry) -> Problem:
    said = message("baseline/hides-nothing", rule=entry.known.rule, file=printable(entry.known.file))
    return Problem(workspace.shown(path.absolute()), Position(entry.line, 1), Level.ERROR, RULE, said)


@dataclass(frozen=True)
class _Knowing:
    """Says of problems what does not change when lines move."""

    workspace: Workspace
    addresses: dict[Path, dict[Position, str]] = field(default_factory=dict)

    def problem(self, problem: Problem) -> Known:
        """The problem without its line."""
        file = problem.file.absolute()
        if file not in self.addresses:
            self.addresses[file] = _addresses(file) if file.suffix in SUFFIXES else {}
        about = self.addresses[file].get(problem.position, "")
        return Known(self.file(file), about, problem.rule, problem.said.code, self._values(problem.said))

    def file(self, path: Path) -> str:
        """A file, as seen from the collection."""
        return Path(os.path.relpath(path.absolute(), self.workspace.root)).as_posix()

    def _values(self, said: Message) -> tuple[tuple[str, str], ...]:
        """Its values in English; a file among them as seen from the collection, wherever the check was started."""
        here = f"{self.workspace.root}/", f"{os.path.relpath(self.workspace.root)}/"
        values = {name: say(value, ENGLISH) for name, value in said.values.items()}
        return tuple(sorted((name, value.replace(here[0], "").replace(here[1], "")) for name, value in values.items()))


def _addresses(path: Path) -> dict[Position, str]:
    """The address of what stands at each place of a record; of several that begin at one place the outermost."""
    source = read(path)
    found: dict[Position, Pointer] = {}
    for places in (source.keys, source.values):
        for pointer, at in places.items():
            if at not in found or len(pointer) < len(found[at]):
                found[at] = pointer
    return {at: "/".join(map(str, pointer)) for at, pointer in found.items()}


def _read(path: Path, number: int, line: str) -> Any:
    try:
        return json.loads(line)
    except (ValueError, RecursionError) as error:
        raise BadBaseline(message("baseline/none", path=printable(str(path)), line=number)) from error


def _entry(path: Path, number: int, data: Any) -> Entry:
    try:
        said = tuple(sorted((str(name), str(value)) for name, value in data["says"].items()))
        known = Known(str(data["file"]), str(data["about"]), str(data["rule"]), str(data["code"]), said)
        if int(data["times"]) < 1:
            raise ValueError
        return Entry(number, known, int(data["times"]))
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise BadBaseline(message("baseline/none", path=printable(str(path)), line=number)) from error


def refused(problems: Iterable[Problem]) -> Iterator[Problem]:
    """Those that nobody may accept."""
    return (problem for problem in problems if problem.rule in NEVER)
