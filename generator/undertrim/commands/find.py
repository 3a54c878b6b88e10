"""Find a vehicle by whatever is known of it, as the finder of the site does.

TEXT is make, model, other names, year or month of build ("2016", "march 2016", "3/2016", "2014 to 2018"), body, steering side and what to do, in any
order, or a vehicle identification number: "finch 16 radio", "sedge van lhd". One slip of the finger in a word is forgiven. A number is
compared here with the patterns that records hold, and goes nowhere; what the terminal itself remembers is its own affair.
"""

import argparse
import sys

from undertrim.commands.common import add_workspace, progress, workspace
from undertrim.derive.finding.matching import query
from undertrim.derive.finding.rows import Row
from undertrim.publish.build.day import today
from undertrim.publish.encoding import indented
from undertrim.publish.facts import finding
from undertrim.publish.terminal.finding import finding as found
from undertrim.publish.terminal.finding import finding_data, finding_text
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import message


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("text", metavar="TEXT", nargs="+", help="what is known of the vehicle, in any order")
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Print what was found; exit 1 if nothing was."""
    words = finding.vocabulary()
    made = found(query(" ".join(options.text), words), _rows(workspace(options)), words, today().year + 1)
    sys.stdout.write(indented(finding_data(made)) + "\n" if options.format == "json" else finding_text(made))
    return 0 if made.vehicles else 1


def _rows(place: Workspace) -> list[Row]:
    """All vehicles of the workspace; a record that cannot be read is not among them, as `undertrim check` says."""
    paths = place.every("vehicles")
    show = progress(message("commands/reading"))
    rows = []
    for number, path in enumerate(paths, 1):
        entry = place.load(path)
        if isinstance(entry.record, VehicleRecord):
            rows.append(finding.row(entry.record, entry.address))
        if show:
            show(number, len(paths))
    return rows
