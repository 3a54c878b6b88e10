"""Check all records, then build the site, the data and the sheets.

A build with errors in the records stops and leaves the last site as it is. A vehicle whose page or sheet cannot be made is named and
keeps its last good files; the others are published, and the exit code is 1.
"""

import argparse
import sys
from pathlib import Path

from undertrim.check import reports
from undertrim.commands.common import add_workspace, progress, say_failed, workspace
from undertrim.commands.empty import refuse_empty
from undertrim.record.store import Workspace
from undertrim.words import message, say
from undertrim.work.workers import Workers


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument(
        "--out", type=Path, default=None, metavar="DIR", help="where the site goes (default: site/ in the workspace)"
    )
    parser.add_argument(
        "--bundle", type=Path, metavar="FILE", help="also write the whole site as one HTML file, for a stick"
    )
    parser.add_argument("--no-pdf", action="store_true", help="leave the printed sheets out")
    parser.add_argument(
        "--workers", metavar="ADDRESS", help="let the workers of a Dask cluster do it: the address of its scheduler"
    )
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Build and say what was made."""
    from undertrim.publish.build.building import build  # loaded only when needed: the site engine is slow to import

    place = workspace(options)
    refuse_empty(place)
    out = (options.out or place.root / "site").resolve()
    crew = _cluster(options.workers, place) if options.workers else None
    made = build(place, out, sheets=not options.no_pdf, progress=progress, crew=crew)
    if made.report.problems:
        sys.stderr.write(reports.text(made.report))
    if made.report.errors:
        print(say(message("commands/nothing-built")), file=sys.stderr)
        return 1
    say_failed(made)
    if options.bundle:
        _bundle(place, out, options.bundle)
    folder, page = str(place.shown(out)), str(place.shown(out / "index.html"))
    print(say(message("commands/built", count=made.vehicles, folder=folder, page=page)))
    return 1 if made.failed else 0


def _bundle(place: Workspace, out: Path, file: Path) -> None:
    """Write the site in `out` as one file: aside first, so that a file that is there is replaced as a whole."""
    from undertrim.publish.build import stick
    from undertrim.publish.web import site

    aside = file.with_name(f".{file.name}")
    try:
        aside.write_text(stick.whole(out, site.own(place.root)[1]), encoding="utf-8")
        aside.replace(file)
    finally:
        aside.unlink(missing_ok=True)
    size = f"{file.stat().st_size / 1e6:.1f}"
    print(say(message("commands/bundled", file=str(place.shown(file)), size=size)))


def _cluster(address: str, place: Workspace) -> Workers:
    """The workers of a cluster. Raises NoCluster."""
    from undertrim.publish.build import day
    from undertrim.work.cluster import Cluster

    return Cluster(address, place.records, {day.EPOCH: day.epoch()})
