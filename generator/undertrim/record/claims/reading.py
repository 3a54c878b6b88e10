"""Reads a claims file: an answer that is not as it should be is told with its place, and the others are there."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from undertrim.record.claims import tables
from undertrim.record.claims.answer import Answer, Found, Photo
from undertrim.record.claims.new_vehicle import NewVehicle
from undertrim.record.complaints import as_problem, complaints
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.source import read as read_source
from undertrim.words import Items, Message, message

RULE = "claim"
LAYOUT = "1"
TABLES = (".csv", ".xlsx")
SHARED = ("vehicle", "gear", "by", "on", "how", "with", "car", "side")
"""What may be said once for all answers."""
_ONE_OF = ("schema/none", "schema/several")
"""What the schema has against an answer that says nothing, or two things: said here in words of its own."""

_NEEDED = ("vehicle", "by", "on", "how")
_ABOUT = ("vehicle", "gear")
"""What it is about: one of them."""
_NEW, _NEEDED_OF_NEW = "new_vehicle", ("by", "on")


@dataclass(frozen=True, slots=True)
class Bad:
    """An answer that cannot be used: its number in the file, and what is wrong with it."""

    number: int
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class ClaimsFile:
    """A claims file as read; `problems` are those for which nothing of it can be used.

    `new` is the car that it begins a record for, None where it does not; its answers are then about cars that have one already.
    """

    path: Path
    source: Source
    answers: tuple[Answer, ...] = ()
    bad: tuple[Bad, ...] = ()
    problems: tuple[Problem, ...] = ()
    new: NewVehicle | None = None


def read(path: Path, shown: Path | None = None) -> ClaimsFile:
    """Read one file of at most `source.MAX_BYTES`; whatever is wrong with it is in what is returned, never raised."""
    return of_source(path, _source(path, shown or path))


def of_source(path: Path, source: Source) -> ClaimsFile:
    """The same for what was read of a file, or of one row of it."""
    if source.problems:
        return ClaimsFile(path, source, problems=source.problems)
    data = source.data
    if not _is_claims(data):
        return ClaimsFile(path, source, problems=(_problem(source, (), message("claims/no-claims", layout=LAYOUT)),))
    told = [(complaint.pointer, as_problem(source, complaint)) for complaint in complaints(source, "claim")]
    if whole := tuple(problem for place, problem in told if _is_whole(place)) or tuple(_wrong_of_new(source, told)):
        return ClaimsFile(path, source, problems=whole)
    good, bad = [], []
    for number, answer in enumerate(data.get("answers", ())):
        problems = tuple(_wrong(source, data, number, told))
        if problems:
            bad.append(Bad(number, problems))
        else:
            good.append(_answer(data, answer, number))
    new = NewVehicle(data[_NEW], data["by"], data["on"], data.get("car")) if _NEW in data else None
    return ClaimsFile(path, source, tuple(good), tuple(bad), new=new)


def _is_claims(data: Data) -> bool:
    """Whether it is meant as a claims file: it says so, and has something in it."""
    if not isinstance(data, dict) or data.get("claims") != LAYOUT:
        return False
    return isinstance(data["answers"], list) if "answers" in data else _NEW in data


def _wrong_of_new(source: Source, told: list[tuple[Pointer, Problem]]) -> Iterator[Problem]:
    """What of the top a new car needs and is not as it should be; what is wrong in its own fields is wrong with the file."""
    data = source.data
    if _NEW in data:
        yield from (problem for place, problem in told if place[:1] in [(name,) for name in (*_NEEDED_OF_NEW, "car")])
        lacking = tuple(name for name in _NEEDED_OF_NEW if name not in data)
        if lacking:
            fields = Items(tuple(f"'{name}'" for name in lacking))
            yield _problem(source, (_NEW,), message("claims/new-lacks", fields=fields))


def _source(path: Path, shown: Path) -> Source:
    if path.suffix.lower() not in TABLES:
        return read_source(path, shown)
    from undertrim.record.claims import spreadsheets  # its library takes longer than most commands

    try:
        return tables.source(spreadsheets.rows(path), shown)
    except spreadsheets.Unreadable as error:
        said = error.said
    except OSError:
        said = message("yaml/cannot-read")
    problem = Problem(shown, Position(1, 1), Level.ERROR, RULE, said)
    return Source(shown, "", None, {}, {}, frozenset(), (problem,))


def _is_whole(place: Pointer) -> bool:
    """Whether what is wrong there leaves none of the answers: it is neither in one nor in what one may say itself."""
    return (len(place) < 2 or place[0] == _NEW) and place[:1] not in [(name,) for name in SHARED]


def _wrong(
    source: Source, data: dict[str, Data], number: int, told: list[tuple[Pointer, Problem]]
) -> Iterator[Problem]:
    """What is wrong with one answer, and with what it takes from the top of the file."""
    home: Pointer = ("answers", number)
    answer = data["answers"][number]
    found = [problem for place, problem in told if place[:2] == home and problem.said.code not in _ONE_OF]
    if isinstance(answer, dict) and ("says" in answer) == ("found" in answer):
        found.append(_problem(source, home, message("claims/says-or-found")))
    yield from found
    if found or not isinstance(answer, dict):
        return
    yield from (problem for place, problem in told if place[0] in SHARED and place[0] not in answer)
    said = _said(data, answer)
    if all(name in said for name in _ABOUT):
        yield _problem(source, home, message("claims/vehicle-or-gear"))
    lacking = tuple(name for name in _NEEDED if name not in said and not (name in _ABOUT and "gear" in said))
    if lacking:
        yield _problem(source, home, message("claims/lacks", fields=Items(tuple(f"'{name}'" for name in lacking))))


def _problem(source: Source, place: Pointer, said: Message) -> Problem:
    return Problem(source.path, source.position(place), Level.ERROR, RULE, said)


def _said(data: dict[str, Data], answer: dict[str, Data]) -> dict[str, Data]:
    """An answer with what the top of its file says for all; what it is about itself stands for both."""
    own = any(name in answer for name in _ABOUT)
    return {name: data[name] for name in SHARED if name in data and not (own and name in _ABOUT)} | answer


def _answer(data: dict[str, Data], answer: dict[str, Data], number: int) -> Answer:
    said = _said(data, answer)
    photo = said.get("photo")
    return Answer(
        pointer=("answers", number),
        vehicle=said.get("vehicle", ""),
        about=said["about"],
        by=said["by"],
        on=said["on"],
        how=said["how"],
        says=" ".join(said.get("says", "").split()),
        found=Found(said["found"]) if "found" in said else None,
        was=said.get("was", ""),
        with_=said.get("with", "") if said["how"] == "measured" else "",
        car=said.get("car"),
        side=said.get("side", ""),
        note=said.get("note", "").strip(),
        photo=Photo(photo["file"], photo["shows"]) if photo else None,
        gear=said.get("gear", ""),
        size=said.get("size", ""),
        hit=said.get("hit", ""),
    )
