"""What is wrong with a layer as such, told wherever all records are checked: additions that add nothing or lead nowhere, records that a shared collection has too, notes on no vehicle."""

from collections.abc import Iterator, Sequence
from pathlib import Path

from undertrim.check import layering
from undertrim.derive.claims import Deed
from undertrim.record import claims
from undertrim.record.claims import ClaimsFile
from undertrim.record.layers import ADDITIONS, NOTES
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level, Position, Problem, printable
from undertrim.record.store import Workspace
from undertrim.words import Message, WayOut, message

RULE = "layer"
_START = Position(1, 1)


def problems(place: Workspace, paths: Sequence[Path]) -> Iterator[Problem]:
    """Every such problem among and below `paths`, or all if none are given."""
    asked = [path.resolve() for path in paths] or [place.records.resolve()]
    for file in _below(place.records / ADDITIONS):
        if any(file.resolve().is_relative_to(one) for one in asked):
            yield from _addition(place, file)
    for file in _below(place.records / NOTES):
        if any(file.resolve().is_relative_to(one) for one in asked):
            yield from _note(place, file)
    if place.shared:
        for path in place.own_files(paths):
            yield from _covered(place, path)


def _below(folder: Path) -> list[Path]:
    """The files of a folder of the layer; what hides is an editor's."""
    return sorted(file for file in folder.glob("**/*") if file.is_file() and not file.name.startswith("."))


def _addition(place: Workspace, file: Path) -> Iterator[Problem]:
    path = _vehicle(place, file)
    if file.suffix != ".json" or file.parent.parent.name != ADDITIONS:
        yield _problem(place, file, _START, message("layers/misplaced", folder=f"records/{ADDITIONS}"))
    elif path is None:
        yield _problem(place, file, _START, message("layers/no-vehicle", name=_name(file), near=_near(place, file)))
    elif place.is_own(path):
        yield _problem(place, file, _START, message("layers/own-vehicle", path=printable(str(place.shown(path)))))
    else:
        yield from _answers(place, path, claims.read(file, place.shown(file)))


def _answers(place: Workspace, path: Path, file: ClaimsFile) -> Iterator[Problem]:
    """What came of each answer, where nothing did."""
    yield from file.problems
    yield from (problem for bad in file.bad for problem in bad.problems)
    ours = layering.answers_of(file, path)
    for answer in file.answers:
        if answer not in ours:
            said = message("layers/other-vehicle", vehicle=answer.record, name=_name(path))
            yield _problem(place, file.path, file.source.position(answer.pointer), said)
    outcomes = layering.made(place, path).outcomes if ours else ()
    for answer, outcome in zip(ours, outcomes, strict=True):
        at, about = file.source.position(answer.pointer), answer.about
        if outcome.deed is Deed.REFUSED:
            said = message("layers/refused", about=about, said=outcome.said, way=WayOut(outcome.said))
            yield _problem(place, file.path, at, said)
        elif not outcome.changes:
            yield _problem(
                place, file.path, at, message("layers/adds-nothing", about=about, said=outcome.said), Level.WARNING
            )


def _note(place: Workspace, file: Path) -> Iterator[Problem]:
    if file.suffix != ".txt" or file.parent.parent.name != NOTES:
        yield _problem(place, file, _START, message("layers/misplaced-note", folder=f"records/{NOTES}"))
    elif _vehicle(place, file) is None:
        yield _problem(place, file, _START, message("layers/no-vehicle", name=_name(file), near=_near(place, file)))


def _covered(place: Workspace, path: Path) -> Iterator[Problem]:
    """A record that a shared collection has too: the same in both is one too many, another one hides what others found."""
    for other in place.covered(path):
        same = place.is_same(other, path)
        names = {"collection": place.whose(other).collection, "path": printable(str(place.shown(path)))}
        code = "twice" if same else "hides" if place.kind(path) == "vehicle" else "hides-gear"
        yield _problem(place, path, _START, message(f"layers/{code}", **names), Level.WARNING if same else Level.ERROR)


def _vehicle(place: Workspace, file: Path) -> Path | None:
    """The vehicle that a file of the layer is called after."""
    name = f"{file.parent.name}/{file.stem}"
    return next((path for path in place.all_of() if _name(path) == name), None)


def _name(file: Path) -> str:
    return f"{file.parent.name}/{file.stem}"


def _near(place: Workspace, file: Path) -> Message:
    return suggestion(_name(file), [_name(path) for path in place.all_of()], message("nearness/vehicles"))


def _problem(place: Workspace, file: Path, at: Position, said: Message, level: Level = Level.ERROR) -> Problem:
    return Problem(place.shown(file), at, level, RULE, said)
