"""Takes the rows of a spreadsheet with facts about cars: each cell is an answer, taken as 'undertrim take' takes them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.check import layering, names, taking
from undertrim.commands.common import progress
from undertrim.commands.imported_rows import Told, ToldCell
from undertrim.derive.claims import Deed
from undertrim.record import claims
from undertrim.record.claims import Answer
from undertrim.record.claims.tables import SIGNS
from undertrim.record.imported import Mapping, Row, Sheet
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Position
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.store import Workspace, address
from undertrim.words import Message, message, one_of


@dataclass(frozen=True, slots=True)
class _Asked:
    """One cell with the answer that it is."""

    row: Row
    at: Position
    answer: Answer


def take(place: Workspace, file: Path, mapping: Mapping, sheet: Sheet, *, dry: bool) -> Told:
    """Take them; nothing is written if it is `dry`."""
    told, by_path = Told(file), dict[Path, list[_Asked]]()
    shelf = _Shelf(place, {})
    for row in sheet.rows:
        told.rows[row.number] = []
        found = shelf.record_of(row)
        if isinstance(found, Message):
            told.rows[row.number].append(ToldCell(_naming(row), "", Deed.REFUSED, found))
        elif not row.cells:
            told.rows[row.number].append(ToldCell(_naming(row), "", Deed.KEPT, message("import/no-facts")))
        else:
            good, bad = _answers(file, row, mapping, address(found))
            told.rows[row.number] += bad
            by_path.setdefault(found, []).extend(good)
    for path, asked in by_path.items():
        _take(place, path, asked, told, dry=dry)
    return told


def _take(place: Workspace, path: Path, asked: Sequence[_Asked], told: Told, *, dry: bool) -> None:
    show = progress(message("claims/taking", vehicle=address(path)))
    taken = taking.take(place, path, [one.answer for one in asked], show)
    for one, outcome in zip(asked, taken.outcomes, strict=True):
        about = f"{one.answer.vehicle}/{one.answer.about}"
        told.rows[one.row.number].append(ToldCell(one.at, about, outcome.deed, outcome.said))
    if taken.changed:
        if not dry:
            layering.write(place, taken)
        code = "claims/would-change" if dry else "claims/changed"
        told.changed.append(message(code, path=str(place.shown(layering.target(place, path)))))


def _answers(file: Path, row: Row, mapping: Mapping, vehicle: str) -> tuple[list[_Asked], list[ToldCell]]:
    """The answers of a row, and the cells that are none."""
    read = claims.of_source(file, _source(file, row, mapping, vehicle))
    if read.problems:
        return [], [ToldCell(_naming(row), vehicle, Deed.REFUSED, one.said) for one in read.problems]
    good = [_Asked(row, row.cells[int(one.pointer[1])].at, one) for one in read.answers]
    bad = [(row.cells[one.number], problem) for one in read.bad for problem in one.problems[:1]]
    return good, [ToldCell(cell.at, cell.about, Deed.REFUSED, problem.said) for cell, problem in bad]


def _source(file: Path, row: Row, mapping: Mapping, vehicle: str) -> Source:
    """A row as a claims file."""
    data: dict[str, Data] = {"claims": claims.LAYOUT, "vehicle": vehicle, "how": mapping.how}
    data |= {name: said for name in ("by", "on") if (said := row.of_row.get(name) or getattr(mapping, name))}
    data |= {"with": mapping.with_} if mapping.with_ else {}
    car = dict(_car(row))
    data |= {"car": car} if car else {}
    note = {"note": row.of_row["note"]} if "note" in row.of_row else {}
    data["answers"] = [{"about": cell.about, **_said(cell.says), **note} for cell in row.cells]
    values: dict[Pointer, Position] = {("answers", number): cell.at for number, cell in enumerate(row.cells)}
    values |= {(): Position(row.number, 1), ("answers",): Position(row.number, 1)}
    return Source(file, "", data, values, {}, frozenset(), ())


def _said(value: str) -> dict[str, Data]:
    """A value, or what is written in its place."""
    sign = SIGNS.get(value.casefold())
    return {"found": str(sign)} if sign else {"says": value}


def _car(row: Row) -> Iterator[tuple[str, Data]]:
    """The car that was looked at, as evidence says it."""
    if "year" in row.of_row:
        yield "year", row.of_row["year"]
    if side := row.of_row.get("car/side"):
        yield "side", side
    choices = {name.removeprefix("car/is/"): said for name, said in row.of_row.items() if name.startswith("car/is/")}
    if choices:
        yield "is", choices


def _naming(row: Row) -> Position:
    """The cell by which a row names its car."""
    named = (row.places[name] for name in ("id", "model", "make", "year") if name in row.places)
    return next(named, Position(row.number, 1))


@dataclass(frozen=True, slots=True)
class _Shelf:
    """The records by what rows call their cars; each is looked up once."""

    place: Workspace
    found: dict[tuple[str, ...], Path | Message]

    def record_of(self, row: Row) -> Path | Message:
        """The one record that has the car of a row, or why it cannot be told."""
        asked = tuple(row.of_row.get(name, "") for name in ("id", "make", "model", "year"))
        if asked not in self.found:
            self.found[asked] = self._by_id(asked[0]) if asked[0] else self._by_name(*asked[1:])
        return self.found[asked]

    def _by_id(self, name: str) -> Path | Message:
        try:
            return vehicle_file(self.place, name)
        except NotFound as error:
            return error.said

    def _by_name(self, make: str, model: str, year: str) -> Path | Message:
        """By make, model and year, in whatever spelling of case and hyphens; a year that is in two records decides nothing."""
        if not make or not model:
            return message("import/no-car")
        same = [path for path in self._of_make(make) if self._is_of(path, model, year)]
        if not same:
            return message("import/no-record", car=" ".join(filter(None, (make, model, year))))
        if len(same) > 1:
            return message(
                "import/several", car=" ".join(filter(None, (make, model, year))), records=one_of(*map(address, same))
            )
        return same[0]

    def _of_make(self, make: str) -> Iterator[Path]:
        for path in self.place.every("vehicles"):
            if names.folded(path.parent.name.removesuffix("-make")) == names.folded(make):
                yield path

    def _is_of(self, path: Path, model: str, year: str) -> bool:
        record = self.place.load(path).record
        if not isinstance(record, VehicleRecord):
            return False
        facts = record.vehicle
        called = {names.folded(name) for name in (facts.model, *facts.also_called)}
        years = (facts.built.from_.year, facts.built.to.year - (facts.built.to.month == 1))
        covered = not year or (year.isdecimal() and years[0] <= int(year) <= years[1])
        return names.folded(model) in called and covered
