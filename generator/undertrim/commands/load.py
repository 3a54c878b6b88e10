"""Say what several speakers together are to an amplifier, in ohm.

Either list the speakers and say how they are wired, or write the arrangement with + for series and | for parallel: '4+4 | 4+4'.
"""

import argparse

from undertrim.commands.amounts import add_format, ohms, refused, show
from undertrim.commands.usage import Usage
from undertrim.derive.electrical import impedance
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.impedance import Load
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("speakers", nargs="+", metavar="OHM", help="a speaker's nominal ohms, or one arrangement")
    parser.add_argument("--wired", choices=["parallel", "series"], help="how a list of speakers is wired")
    parser.add_argument("--least", metavar="OHM", help="what the output allows (usual: 4 ohm)")
    add_format(parser)


def run(options: argparse.Namespace) -> int:
    """Add up and print."""
    try:
        show({"load": _load(options)}, options.format)
    except Refused as error:
        raise refused(error) from error
    return 0


def _load(options: argparse.Namespace) -> Load:
    least = None if options.least is None else ohms(options.least, "--least")
    if options.wired:
        return impedance.wired(
            [ohms(text, say(message("gear-kinds/a-speaker"))) for text in options.speakers], options.wired, least
        )
    if len(options.speakers) > 1:
        raise Usage(say(message("load/not-said-how")))
    return impedance.arranged(options.speakers[0], least)
