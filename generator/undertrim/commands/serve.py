"""Preview the site in a browser and rebuild it whenever a record is saved, unfinished records too, with what is wrong on their pages."""

import argparse
import ipaddress
import socket
import sys
from contextlib import ExitStack
from functools import partial
from typing import TYPE_CHECKING

from undertrim.check import reports
from undertrim.commands.common import add_workspace, port, progress, say_failed, workspace
from undertrim.commands.usage import Usage
from undertrim.publish.terminal.code import code
from undertrim.words import message, say
from undertrim.work.refused import Refused

if TYPE_CHECKING:
    from undertrim.publish.build.building import Builder


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("--port", type=port, default=8080, help="the port on this machine (default: 8080)")
    parser.add_argument(
        "--host",
        nargs="?",
        const="",
        default=_HERE,
        metavar="ADDRESS",
        help="show it in the network too, for the phone at the car, at this address of this machine (without one: the address it has there)",
    )
    parser.add_argument("--pdf", action="store_true", help="make the printed sheets too")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Serve until interrupted; what is wrong with a record is printed and shown on its pages."""
    from undertrim.publish.build import standing  # loaded only when needed: the site engine is slow to import
    from undertrim.publish.build.building import Builder
    from undertrim.publish.web import site

    place, host = workspace(options), options.host or _in_the_network()
    if not site.port_is_free(host, options.port):
        raise Usage(message("commands/port-taken", port=str(options.port)))
    with ExitStack() as held:
        out = held.enter_context(standing.preview(place.root / ".undertrim")) / "site"
        builder = held.enter_context(Builder(place, out, sheets=options.pdf, preview=True))
        _build(builder)
        out.mkdir(exist_ok=True)
        _tell(host, f"http://{host}:{options.port}/")
        site.serve(
            place.root, [one.records for one in place.shared], out, partial(_rebuild, builder), host, options.port
        )
    return 0


_HERE = "127.0.0.1"


def _in_the_network() -> str:
    """The address of this machine as others reach it: the one from which it would speak to another. Nothing is sent (RFC 5737: the address is nobody's)."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as trial:
        try:
            trial.connect(("192.0.2.1", 9))
        except OSError as error:
            raise Usage(message("commands/no-network")) from error
        return str(trial.getsockname()[0])


def _tell(host: str, address: str) -> None:
    """Where the preview is; if others can read it, that, and a code for the phone."""
    print(say(message("commands/preview", address=address)), file=sys.stderr)
    if not _is_ours_alone(host):
        print(say(message("commands/seen-by-all", host=host)), file=sys.stderr)
        print(code(address), file=sys.stderr)


def _is_ours_alone(host: str) -> bool:
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"


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
