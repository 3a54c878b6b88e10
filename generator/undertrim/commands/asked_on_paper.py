"""The questions of a car as a table or a sheet to fill in: `ask --out`."""

from pathlib import Path

from undertrim.commands.usage import Usage
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.place import Vehicle
from undertrim.derive.fit.stock import Stock
from undertrim.record.claims import tables
from undertrim.record.collection import settings
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import printable
from undertrim.record.store import Entry, Workspace
from undertrim.words import message, say


def table(entry: Entry, path: Path) -> int:
    """Write the questions as a table; a file that is there is never overwritten."""
    from undertrim.publish.facts.question_table import question_table
    from undertrim.record.claims import spreadsheets  # its library takes longer than most commands

    assert isinstance(entry.record, VehicleRecord)
    if path.exists():
        raise Usage(message("copy/there", path=printable(str(path))))
    table = question_table(entry.record, entry.source, entry.address)
    with path.open("xb") as file:
        file.write(spreadsheets.written(table.rows, path.suffix.lower(), table.offers))
    fields = len(table.rows) - [row[0] for row in table.rows].index(tables.ABOUT) - 1
    take = f"undertrim take {printable(str(path))}"
    print(say(message("ask/written", file=printable(str(path)), count=fields, take=take)))
    return 0


def sheet(place: Workspace, entry: Entry, path: Path) -> int:
    """Print the questions as a measuring sheet; a file that is there is never overwritten."""
    assert isinstance(entry.record, VehicleRecord)
    if path.exists():
        raise Usage(message("copy/there", path=printable(str(path))))
    from undertrim.publish.build.beside import PAPERS, page
    from undertrim.publish.build.day import today
    from undertrim.publish.printed import pdf  # what prints takes longer than most commands
    from undertrim.publish.web import site

    vehicle = Vehicle(entry.record, entry.address, Stock(()), clearances())
    url = page(site.written_address(place.root), entry.address)
    printed = pdf.render_questions(vehicle, entry.source, url, PAPERS[settings(place.root).paper[0]], today())
    with path.open("xb") as file:
        file.write(printed)
    print(say(message("measuring-sheet/written", file=printable(str(path)), vehicle=entry.address)))
    return 0
