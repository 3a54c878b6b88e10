"""Take a shop's own spreadsheet in: rows of facts about cars, or rows of gear.

FILE is CSV or XLSX, in whatever layout. The first run writes MAP, which says what each column is: proposed from the headings (English and Spanish),
to be corrected and confirmed. The second run takes the rows by it. Every row is accounted for: taken, already so, in conflict, or refused with
the cell named; nothing is guessed. Facts about cars go in as 'undertrim take' takes answers; gear that has a record is not changed.
Exit 1 if something was refused.
"""

import argparse
import sys
from pathlib import Path

from undertrim.commands import cars_imported, gear_imported
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.publish.build.day import today
from undertrim.record import imported
from undertrim.record.imported import BadMapping
from undertrim.record.problem import printable
from undertrim.words import WayOut, message, say


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
    if not options.map.exists():
        return _propose(options, table)
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


def _propose(options: argparse.Namespace, table: imported.Table) -> int:
    row, columns, gear = imported.proposed(table)
    text = imported.written(row, columns, today(), gear=gear, decimal=imported.decimal_of(table))
    with options.map.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
    path = printable(str(options.map))
    open_ = sum(one.about == imported.UNDECIDED for one in columns)
    print(say(message("import/proposed", path=path, count=len(columns), undecided=open_)))
    return 0
