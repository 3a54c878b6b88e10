"""Preview the site in a browser and rebuild it whenever a record is saved."""

import argparse
import sys
from contextlib import ExitStack
from functools import partial
from typing import TYPE_CHECKING

from undertrim.check import reports
from undertrim.commands.common import add_workspace, port, progress, say_failed, workspace
from undertrim.commands.usage import Usage
from undertrim.words import message, say
from undertrim.work.refused import Refused

if TYPE_CHECKING:
    from undertrim.publish.build.building import Builder


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("--port", type=port, default=8080, help="the port on this machine (default: 8080)")
    parser.add_argument("--pdf", action="store_true", help="make the printed sheets too")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Serve until interrupted; a record with errors keeps the last good preview and prints what is wrong."""
    from undertrim.publish.build import standing  # loaded only when needed: the site engine is slow to import
    from undertrim.publish.build.building import Builder
    from undertrim.publish.web import site

    place = workspace(options)
    if not site.port_is_free("127.0.0.1", options.port):
        raise Usage(message("commands/port-taken", port=str(options.port)))
    with ExitStack() as held:
        out = held.enter_context(standing.preview(place.root / ".undertrim")) / "site"
        builder = held.enter_context(Builder(place, out, sheets=options.pdf, lasting=False))
        _build(builder)
        out.mkdir(exist_ok=True)
        address = f"http://127.0.0.1:{options.port}/"
        print(say(message("commands/preview", address=address)), file=sys.stderr)
        site.serve(place.root, out, partial(_rebuild, builder), "127.0.0.1", options.port)
    return 0


def _build(builder: "Builder") -> None:
    made = builder.build(progress)
    sys.stderr.write(reports.text(made.report))
    say_failed(made)


def _rebuild(builder: "Builder") -> None:
    """Build anew; whatever ends it early leaves the preview as it was, and is told."""
    try:
        _build(builder)
    except (Refused, OSError) as error:
        print(f"undertrim: {say(message('commands/preview-stays', fault=str(error)))}", file=sys.stderr)
