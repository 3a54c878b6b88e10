"""Check all records, then build the site, the data and the sheets.

A build with errors in the records stops and leaves the last site as it is.
"""

import argparse
import sys
from pathlib import Path

from undertrim.check import reports
from undertrim.commands.common import add_workspace, progress, workspace


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument(
        "--out", type=Path, default=None, metavar="DIR", help="where the site goes (default: site/ in the workspace)"
    )
    parser.add_argument("--no-pdf", action="store_true", help="leave the printed sheets out")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Build and say what was made."""
    from undertrim.publish.building import build  # loaded only when needed: the site engine is slow to import
    from undertrim.publish.facts.vehicle import Unplannable

    place = workspace(options)
    out = (options.out or place.root / "site").resolve()
    try:
        made = build(place, out, sheets=not options.no_pdf, progress=progress)
    except Unplannable as error:
        print(f"undertrim: {error}: nothing was built", file=sys.stderr)
        return 1
    if made.report.problems:
        sys.stderr.write(reports.text(made.report))
    if made.report.errors:
        print("nothing was built: mend the errors above", file=sys.stderr)
        return 1
    print(f"{made.vehicles} vehicles published in {place.shown(out)}: open {place.shown(out / 'index.html')}")
    return 0
