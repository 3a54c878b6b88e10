"""The mapping of a spreadsheet: a small TOML file that says which column is which fact, written by the first run and confirmed by a person."""

import json
import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Any

from undertrim.record import plain_files
from undertrim.record.imported import headings
from undertrim.record.problem import printable
from undertrim.record.source import MAX_BYTES
from undertrim.words import Items, SaidError, message, say

UNDECIDED, SKIP = "?", "skip"
OF_ROW = ("id", "make", "model", "year", "note", "by", "on")
"""What a column may say of its row, beside the address of a fact."""

OF_CAR = "car/"
"""What a column begins with that says which car was looked at, by the names of evidence: `car/side`, `car/is/radio`."""

_TOP = {
    "sheet": str,
    "confirmed": bool,
    "headings": int,
    "by": str,
    "on": str,
    "how": str,
    "with": str,
    "decimal": str,
    "kind": str,
    "columns": dict,
}
_HOW = ("measured", "seen", "maker", "told")


Table = Sequence[Sequence[str]]
"""The cells of a spreadsheet as text, row by row."""


class BadMapping(SaidError, ValueError):  # noqa: N818 - it names what happened
    """A mapping that cannot be used, with the reason."""


@dataclass(frozen=True, slots=True)
class Column:
    """What a column is: `about` a fact (its address), of the row (`OF_ROW`), or SKIP; the unit of bare numbers, and what goes without saying."""

    heading: str
    about: str
    unit: str = ""
    also: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Mapping:
    """What a spreadsheet is read by. `headings` is the number of the row with the headings, from 1; `kind` is that of all gear without a column for it."""

    gear: bool
    headings: int
    by: str
    on: str
    how: str
    with_: str
    decimal: str
    kind: str
    columns: tuple[Column, ...]


def proposed(rows: Table) -> tuple[int, list[Column], bool]:
    """The row of the headings, what each column probably is, and whether the sheet is of gear."""
    row = next((number for number, cells in enumerate(rows, 1) if sum(map(bool, map(str.strip, cells))) > 2), 1)
    named = [cell.strip() for cell in rows[row - 1] if cell.strip()] if rows else []
    gear = headings.is_gear(named)
    return row, [_proposed(heading, gear=gear) for heading in dict.fromkeys(named)], gear


def decimal_of(rows: Table) -> str:
    """The sign before the decimals, as the cells have it: a comma where some have one between digits and none has a point."""
    said = [cell for cells in rows for cell in cells]
    commas, points = (sum(bool(re.search(rf"[0-9]{sign}[0-9]", cell)) for cell in said) for sign in (",", r"\."))
    return "," if commas and not points else "."


def _proposed(heading: str, *, gear: bool) -> Column:
    about = (
        headings.of_row(heading, gear=gear) if gear else headings.fact(heading) or headings.of_row(heading, gear=gear)
    )
    also = headings.also(heading, about, gear=gear)
    return Column(heading, about or UNDECIDED, headings.unit(heading) if about else "", also)


@dataclass(frozen=True, slots=True)
class Said:
    """What a mapping says of the whole sheet. `on` is the day of the look, until somebody says another; it is not `confirmed` before somebody has looked at every line."""

    gear: bool
    headings: int
    decimal: str
    on: date
    by: str = ""
    how: str = "told"
    with_: str = ""
    kind: str = ""
    confirmed: bool = False


def written(said: Said, columns: Sequence[Column]) -> str:
    """The text of a mapping, with comments."""
    return "".join(f"{line}\n" for line in _lines(said, columns))


def _lines(said: Said, columns: Sequence[Column]) -> Iterator[str]:
    gear = said.gear
    yield from (f"# {say(message(f'import/map-{name}'))}" for name in ("head", "confirm"))
    yield from (f"confirmed = {str(said.confirmed).lower()}", "")
    yield from (f"sheet = {_quoted('gear' if gear else 'cars')}", f"headings = {said.headings}")
    if gear:
        yield from (f"# {say(message('import/map-kind'))}", f"kind = {_quoted(said.kind)}")
    else:
        yield f"# {say(message('import/map-who'))}"
        named = {"by": said.by, "on": said.on.isoformat(), "how": said.how, "with": said.with_}
        yield from (f"{name} = {_quoted(value)}" for name, value in named.items())
    yield from (f"# {say(message('import/map-decimal'))}", f"decimal = {_quoted(said.decimal)}", "")
    yield from (f"# {say(message('import/map-columns-gear' if gear else 'import/map-columns'))}", "[columns]")
    for one in columns:
        more = f", unit = {_quoted(one.unit)}" if one.unit else ""
        if one.also:
            held = ", ".join(f"{_quoted(name)} = {_quoted(value)}" for name, value in one.also.items())
            more += f", also = {{ {held} }}"
        yield f"{_quoted(one.heading)} = " + (
            f"{{ about = {_quoted(one.about)}{more} }}" if more else _quoted(one.about)
        )


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)  # a basic string of TOML 1.0


def read_mapping(path: Path) -> Mapping:
    """The mapping in a file. Raises BadMapping for one that is none, that nobody has confirmed, or with columns that are not decided."""
    try:
        data = tomllib.loads(plain_files.read(path, MAX_BYTES)[:MAX_BYTES].decode("utf-8-sig"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, plain_files.NotPlain) as error:
        raise BadMapping(message("import/no-map", path=printable(str(path)), why=printable(str(error)))) from error
    for name, said in data.items():
        if name not in _TOP or not isinstance(said, _TOP[name]):
            raise BadMapping(message("import/no-such-field", name=printable(name), names=Items(tuple(_TOP), "comma")))
    columns = tuple(_column(heading, said) for heading, said in data.get("columns", {}).items())
    open_ = [one.heading for one in columns if one.about == UNDECIDED]
    if open_:
        raise BadMapping(message("import/undecided", columns=Items(tuple(map(printable, open_)), "comma")))
    if not data.get("confirmed"):
        raise BadMapping(message("import/not-confirmed", path=printable(str(path))))
    return _mapping(data, columns)


def _mapping(data: dict[str, Any], columns: tuple[Column, ...]) -> Mapping:
    gear = data.get("sheet") == "gear"
    how = data.get("how", "told")
    if not gear and how not in _HOW:
        raise BadMapping(message("import/no-how", how=printable(how), words=Items(_HOW, "or")))
    twice = [one.about for one in columns if one.about != SKIP]
    for about in twice:
        if twice.count(about) > 1:
            raise BadMapping(message("import/twice", about=printable(about)))
    texts = {name: str(data.get(name, "")) for name in ("by", "on", "with", "decimal", "kind")}
    return Mapping(
        gear,
        data.get("headings", 1),
        texts["by"],
        texts["on"],
        how,
        texts["with"],
        texts["decimal"],
        texts["kind"],
        columns,
    )


def _column(heading: str, said: object) -> Column:
    if isinstance(said, str):
        return Column(heading, said)
    if isinstance(said, dict) and isinstance(said.get("about"), str) and set(said) <= {"about", "unit", "also"}:
        also = said.get("also", {})
        if isinstance(also, dict) and all(isinstance(value, str) for value in also.values()):
            return Column(heading, said["about"], str(said.get("unit", "")), dict(also))
    raise BadMapping(message("import/no-column", column=printable(heading)))
