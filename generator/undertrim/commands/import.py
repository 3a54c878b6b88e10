"""Take a shop's own spreadsheet in: rows of facts about cars, or rows of gear.

FILE is CSV or XLSX, in whatever layout. The first run writes MAP, which says what each column is: proposed from the headings (English and Spanish).
On a terminal it asks column by column, with some of the cells, and then takes the rows; else MAP is to be corrected and confirmed, and the second run takes the rows by it. Every row is accounted for: taken, already so, in conflict, or refused with
the cell named; nothing is guessed. Facts about cars go in as 'undertrim take' takes answers; gear that has a record is not changed.
Exit 1 if something was refused.
"""

import argparse
import sys
from dataclasses import replace
from pathlib import Path

from undertrim.commands import cars_imported, gear_imported
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.publish.build.day import today
from undertrim.record import imported
from undertrim.record.imported import BadMapping
from undertrim.record.problem import printable
from undertrim.words import Message, WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("file", type=Path, metavar="FILE", help="the spreadsheet")
    parser.add_argument(
        "--as", dest="map", type=Path, required=True, metavar="MAP", help="the mapping; written if it is not there"
    )
    parser.add_argument("--dry-run", action="store_true", help="tell what would be done, and write nothing")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Write the mapping, or take the rows; exit 1 if something was refused."""
    from undertrim.record.claims import spreadsheets  # its library takes longer than most commands

    place = workspace(options)
    if not options.file.exists():
        raise Usage(message("files/does-not-exist", name=printable(str(options.file))))
    try:
        table = spreadsheets.table(options.file)
    except spreadsheets.Unreadable as error:
        raise Usage(error.said) from error
    if not options.map.exists() and not _propose(options, table):
        return 0
    try:
        mapping = imported.read_mapping(options.map)
        sheet = imported.sheet(table, mapping)
    except BadMapping as error:
        print(f"undertrim: {say(error.said)}\n    {say(WayOut(error.said))}", file=sys.stderr)
        return 2
    take = gear_imported.take if mapping.gear else cars_imported.take
    told = take(place, options.file, mapping, sheet, dry=options.dry_run)
    told.tell(sheet.empty)
    return 1 if told.refused else 0


def _propose(options: argparse.Namespace, table: imported.Table) -> bool:
    """Write the mapping: as proposed, or on a terminal as somebody confirms it column by column. Whether the rows may be taken by it."""
    row, columns, gear = imported.proposed(table)
    said = imported.Said(gear, row, imported.decimal_of(table), today())
    open_ = sum(one.about == imported.UNDECIDED for one in columns)
    told = message("import/proposed", path=_path(options), count=len(columns), undecided=open_)
    if sys.stdin.isatty():
        said, told = _asked(options, table, said, columns)
    with options.map.open("x", encoding="utf-8", newline="\n") as file:
        file.write(imported.written(said, columns))
    print(say(told))
    return said.confirmed


def _asked(
    options: argparse.Namespace, table: imported.Table, said: imported.Said, columns: list[imported.Column]
) -> tuple[imported.Said, Message]:
    """What is said of the whole sheet, and what is told; `columns` are then as far as somebody confirmed them."""
    from undertrim.commands import mapping_asked, prompts  # its library takes longer than most commands

    try:
        found = mapping_asked.confirm(table, said.headings, columns, gear=said.gear)
    except prompts.Stopped:
        return said, message("import-asked/stopped", path=_path(options))
    whole = replace(said, by=found.get("by", ""), how=found.get("how", said.how), with_=found.get("with", ""))
    told = message("import-asked/confirmed", path=_path(options), count=len(columns))
    return replace(whole, kind=found.get("kind", ""), confirmed=True), told


def _path(options: argparse.Namespace) -> str:
    return printable(str(options.map))
