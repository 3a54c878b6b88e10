"""Preview the site in a browser and rebuild it whenever a record is saved."""

import argparse
import sys
import tempfile
from pathlib import Path

from undertrim.check import reports
from undertrim.commands.common import add_workspace, progress, workspace


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("--port", type=int, default=8080, help="the port on this machine (default: 8080)")
    parser.add_argument("--pdf", action="store_true", help="make the printed sheets too")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Serve until interrupted; a record with errors keeps the last good preview and prints what is wrong."""
    from undertrim.publish import site  # loaded only when needed: the site engine is slow to import
    from undertrim.publish.building import Builder
    from undertrim.publish.facts.vehicle import Unplannable

    place = workspace(options)
    with tempfile.TemporaryDirectory(prefix="undertrim-") as folder:
        out = Path(folder) / "site"
        builder = Builder(place, out, sheets=options.pdf)

        def rebuild() -> None:
            try:
                made = builder.build(progress)
            except Unplannable as error:
                print(f"undertrim: {error}: the last good preview stays", file=sys.stderr)
                return
            sys.stderr.write(reports.text(made.report))

        rebuild()
        out.mkdir(exist_ok=True)
        print(f"preview at http://127.0.0.1:{options.port}/ (stop with Ctrl-C)", file=sys.stderr)
        site.serve(place.root, out, rebuild, "127.0.0.1", options.port)
    return 0
