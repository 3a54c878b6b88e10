"""Check records and say what is wrong, where, and how to mend it.

Without PATHS all records of the workspace are checked. Exit 1 if there are problems, warnings included.
"""

import argparse
import sys
from dataclasses import replace
from pathlib import Path

from undertrim.check import baseline, handbook, reports, runner
from undertrim.check.cache import Cache
from undertrim.check.part import Part
from undertrim.check.runner import Report
from undertrim.check.strays import strays
from undertrim.commands.common import add_paths, add_workspace, existing, progress, workspace
from undertrim.commands.empty import refuse_empty
from undertrim.commands.mended import mend
from undertrim.commands.usage import Usage
from undertrim.record.problem import printable
from undertrim.record.store import Workspace
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_paths(parser)
    parser.add_argument(
        "--format", choices=sorted(reports.FORMATS), default="text", help="how to print (default: text)"
    )
    parser.add_argument(
        "--no-cache", action="store_true", help="look at every file again, whatever is remembered of it"
    )
    parser.add_argument(
        "--part", metavar="K/N", help="one of N parts of the collection, for N machines side by side, such as 2/8"
    )
    parser.add_argument(
        "--mend",
        action="store_true",
        help="first put right what YAML would not read and could mean nothing else, and show the lines that differ",
    )
    parser.add_argument(
        "--baseline",
        type=Path,
        metavar="FILE",
        help="accept what was there when FILE was written; what is new, and what FILE accepts in vain, is told",
    )
    parser.add_argument(
        "--write-baseline", type=Path, metavar="FILE", help="write FILE: it accepts all that the check finds now"
    )
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Check and print."""
    place = workspace(options)
    for path in existing(options):
        if not place.files([path]) and not handbook.names(place, path) and not any(strays(place, [path])):
            records = str(place.shown(place.records))
            raise Usage(message("commands/holds-no-record", path=printable(str(path)), records=records))
    part = _part(options)
    if options.write_baseline and (options.paths or part or options.baseline):
        raise Usage(message("baseline/of-the-whole"))
    accepted = baseline.entries(options.baseline) if options.baseline else []
    refuse_empty(place)
    if options.mend:
        mend(place, options.paths)
    show = progress(message("commands/checking")) if options.format == "text" else None
    cache = None if options.no_cache else Cache(place)
    report = runner.check(place, options.paths, show, cache, part=part)
    if cache:
        cache.save()
    if options.write_baseline:
        report = _accept(place, report, options.write_baseline)
    elif options.baseline:
        looked = part.among(place.records, place.files()) if part else place.files(options.paths)
        whole = not options.paths and not part
        report = baseline.apply(place, report, options.baseline, accepted, None if whole else looked)
    sys.stdout.write(reports.FORMATS[options.format](report))
    return 1 if report.problems else 0


def _accept(place: Workspace, report: Report, file: Path) -> Report:
    """Write what is accepted from now on; the report of what cannot be."""
    file.write_text(baseline.text(place, report.problems), encoding="utf-8", newline="\n")
    left = replace(report, problems=tuple(baseline.refused(report.problems)))
    count = len(report.problems) - len(left.problems)
    print(say(message("baseline/written", path=printable(str(file)), count=count)), file=sys.stderr)
    return left


def _part(options: argparse.Namespace) -> Part | None:
    """The part that was asked for. Raises Usage."""
    if options.part is None:
        return None
    if options.paths:
        raise Usage(message("commands/part-of-paths"))
    part = Part.read(options.part)
    if part is None:
        raise Usage(message("commands/no-part", part=printable(options.part)))
    return part
