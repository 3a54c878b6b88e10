"""Tables in files: CSV (RFC 4180) and XLSX (ISO/IEC 29500), read within limits and written so that nothing in them is run.

The one module that knows the library of the second.
"""

import csv
import io
import zipfile
from collections.abc import Iterator, Mapping
from contextlib import suppress
from datetime import date, datetime
from pathlib import Path

from openpyxl import Workbook, load_workbook
from openpyxl.styles import Alignment, Font
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from undertrim.record import plain_files
from undertrim.record.claims import tables
from undertrim.record.claims.tables import Rows
from undertrim.record.source import MAX_BYTES
from undertrim.words import SaidError, message

CSV, XLSX = ".csv", ".xlsx"
MOST_ROWS, MOST_COLUMNS, MOST_SIGNS = 500, 20, 600
"""What is read of a table; a claims file has at most 300 answers."""

OF_A_SHOP, WIDEST = 5_000, 60
"""Rows and columns that a shop's own table may have; one with more is not read at all."""
_LOOKED_AT = 20
"""Rows by which the sign between the cells of a CSV file is told."""

_UNPACKED = 20_000_000
"""Bytes that a workbook may have unpacked."""
_LONGEST_LIST = 250
"""Signs of a list that a cell can offer (ECMA-376, formula1 of dataValidation: 255)."""
_WIDTHS = (44, 60, 22, 10, 12, 30, 50, 22)


class Unreadable(SaidError, ValueError):  # noqa: N818 - it names what happened
    """A file that is no such table, with the reason."""


def rows(path: Path) -> Rows:
    """The cells of a table as text. Raises Unreadable and OSError."""
    try:
        raw = plain_files.read(path, MAX_BYTES)
    except plain_files.NotPlain as error:
        raise Unreadable(message("yaml/no-file")) from error
    if len(raw) > MAX_BYTES:
        raise Unreadable(message("yaml/too-large", most=MAX_BYTES // 1000))
    found = _of_workbook(raw) if path.suffix.lower() == XLSX else _of_csv(raw)
    return [[cell[:MOST_SIGNS] for cell in row[:MOST_COLUMNS]] for row in found[:MOST_ROWS]]


def table(path: Path) -> Rows:
    """The cells of a table in any layout, none left out. Raises Unreadable, also for one that has more than is read, and OSError."""
    try:
        raw = plain_files.read(path, MAX_BYTES)
    except plain_files.NotPlain as error:
        raise Unreadable(message("yaml/no-file")) from error
    if len(raw) > MAX_BYTES:
        raise Unreadable(message("yaml/too-large", most=MAX_BYTES // 1000))
    found = _of_workbook(raw, OF_A_SHOP + 1, WIDEST + 1) if path.suffix.lower() == XLSX else _widest(raw)
    if len(found) > OF_A_SHOP or any(len(row) > WIDEST and any(row[WIDEST:]) for row in found):
        raise Unreadable(message("import/too-many", rows=OF_A_SHOP, columns=WIDEST))
    return found


def _widest(raw: bytes) -> list[list[str]]:
    """The rows by the sign between their cells with which the most rows have more than one."""
    made: list[list[list[str]]] = []
    for sign in (",", ";", "\t"):
        with suppress(csv.Error):
            made.append(list(csv.reader(io.StringIO(_decoded(raw), newline=""), delimiter=sign)))
    if not made:
        raise Unreadable(message("import/no-rows"))
    return max(made, key=lambda rows: sum(len(row) for row in rows[:_LOOKED_AT]))


def _of_csv(raw: bytes) -> list[list[str]]:
    text = _decoded(raw)
    for sign in (",", ";", "\t"):
        with suppress(csv.Error):  # what is no table by one sign may be one by another
            found = list(csv.reader(io.StringIO(text, newline=""), delimiter=sign))
            if any(row and row[0].strip().casefold() == tables.ABOUT and len(row) > 1 for row in found):
                return found
    raise Unreadable(message("claims/no-table", about=tables.ABOUT))


def _decoded(raw: bytes) -> str:
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Unreadable(message("claims/not-utf-8")) from error


def _of_workbook(raw: bytes, rows: int = MOST_ROWS, columns: int = MOST_COLUMNS) -> list[list[str]]:
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as packed:
            _look_inside(packed)
        book = load_workbook(io.BytesIO(raw), read_only=True, data_only=True)
        sheet = book.worksheets[0]
        cells = sheet.iter_rows(max_row=rows, max_col=columns, values_only=True)
        return [[_text(cell) for cell in row] for row in cells]
    except (Unreadable, MemoryError):
        raise
    except Exception as error:  # the library raises whatever its parsers met
        raise Unreadable(message("claims/no-workbook")) from error


def _look_inside(packed: zipfile.ZipFile) -> None:
    """Refuse what would unpack without end: too much, or with entities of its own."""
    if sum(item.file_size for item in packed.infolist()) > _UNPACKED:
        raise Unreadable(message("claims/workbook-too-large", most=_UNPACKED // 1_000_000))
    if any(b"<!DOCTYPE" in packed.read(item) for item in packed.infolist()):
        raise Unreadable(message("claims/no-workbook"))


def _text(cell: object) -> str:
    if cell is None:
        return ""
    if isinstance(cell, datetime):
        return cell.date().isoformat()
    if isinstance(cell, date):
        return cell.isoformat()
    return f"{cell:.10g}" if isinstance(cell, float) else str(cell)


def written(table: Rows, ending: str, offers: Mapping[tuple[int, int], tuple[str, ...]]) -> bytes:
    """The table as a file; `offers` are the words that a cell (row and column from 0) may have, for those who choose rather than type."""
    return _csv(table) if ending == CSV else _workbook(table, offers)


def _csv(table: Rows) -> bytes:
    stream = io.StringIO(newline="")
    csv.writer(stream).writerows([[_inert(cell) for cell in row] for row in table])
    return stream.getvalue().encode("utf-8-sig")


def _inert(cell: str) -> str:
    """A text that no program takes for a formula."""
    return f"'{cell}" if cell[:1] in ("=", "+", "@", "\t", "\r") else cell


def _workbook(table: Rows, offers: Mapping[tuple[int, int], tuple[str, ...]]) -> bytes:
    book = Workbook()
    sheet = book.active
    assert isinstance(sheet, Worksheet)
    for number, row in enumerate(table, 1):
        for column, text in enumerate(row, 1):
            cell = sheet.cell(number, column, text)
            cell.data_type = "s"
            cell.alignment = Alignment(wrap_text=True, vertical="top")
            cell.font = Font(bold=row[0] == tables.ABOUT)
    for letter, width in zip("ABCDEFGH", _WIDTHS, strict=True):
        sheet.column_dimensions[letter].width = width
    for said, cells in _alike(offers):
        rule = DataValidation("list", formula1=f'"{said}"', showErrorMessage=False)
        for place in cells:
            rule.add(sheet.cell(place[0] + 1, place[1] + 1).coordinate)
        sheet.add_data_validation(rule)
    stream = io.BytesIO()
    book.save(stream)
    return stream.getvalue()


def _alike(offers: Mapping[tuple[int, int], tuple[str, ...]]) -> Iterator[tuple[str, list[tuple[int, int]]]]:
    found: dict[str, list[tuple[int, int]]] = {}
    for place, words in offers.items():
        found.setdefault(",".join(words), []).append(place)
    yield from ((said, cells) for said, cells in found.items() if len(said) <= _LONGEST_LIST and '"' not in said)
