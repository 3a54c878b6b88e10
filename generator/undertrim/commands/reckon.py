"""Reckon the small numbers of an installation: gain, level, filter, crossover, pad, delay, rest, fuse.

Each has its own arguments: `undertrim reckon gain --help`. The answer lists every number it used and where it comes from.
"""

import argparse
from collections.abc import Callable

from undertrim.commands.amounts import add_format, amount, maybe, ohms, plain, refused, show
from undertrim.derive.electrical import delay, filters, fuses, levels, rest, tweeter_parts
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.crossovers import QUALITY
from undertrim.publish.terminal.electrical import Answer
from undertrim.record.units import UnitError, parse
from undertrim.words import docs, message, say

Reckon = Callable[[argparse.Namespace], Answer]


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the sub-verbs."""
    verbs = parser.add_subparsers(dest="what", metavar="WHAT", required=True)
    gain = _verb(verbs, "gain", _gain, help="the voltage at which an output gives its power")
    gain.add_argument("power", metavar="POWER", help="such as '100 W'")
    gain.add_argument("load", metavar="LOAD", help="such as '4 ohm'")
    level = _verb(verbs, "level", _level, help="what decibels are as factors, or two voltages in decibels")
    level.add_argument("level", metavar="DB", help="such as -5, or a voltage such as '2 V'")
    level.add_argument("against", metavar="VOLTAGE", nargs="?", help="the voltage to compare with")
    corner = _verb(
        verbs, "filter", _filter, help="capacitor and coil for a corner frequency, or the corner that one makes"
    )
    corner.add_argument("value", metavar="VALUE", help="a corner '100 Hz', a capacitor '220 uF' or a coil '0.5 mH'")
    corner.add_argument("load", metavar="LOAD", help="such as '4 ohm'")
    _add_crossover(verbs)
    wait = _verb(verbs, "delay", _delay, help="delays for speakers at different distances")
    wait.add_argument("distances", metavar="DISTANCE", nargs="+", help="from each speaker to the head, such as '1.4 m'")
    wait.add_argument("--air", metavar="TEMPERATURE", help="of the air (usual: '20 °C')")
    sleep = _verb(verbs, "rest", _rest, help="how long a battery bears a current at rest")
    sleep.add_argument("capacity", metavar="CAPACITY", help="such as '60 Ah'")
    sleep.add_argument("current", metavar="CURRENT", help="such as '50 mA'")
    sleep.add_argument("--share", help="of the capacity that may go (usual: '50 %%')")
    colour = _verb(verbs, "fuse", _fuse, help="what the colour of a fuse stands for in each family")
    colour.add_argument("colour", metavar="COLOUR", help="such as red")


def _add_crossover(verbs: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    ways = _verb(verbs, "crossover", _crossover, help="capacitor and coil of a second-order crossover")
    ways.add_argument("corner", metavar="CORNER", help="such as '3 kHz'")
    ways.add_argument("load", metavar="LOAD", help="such as '4 ohm'")
    ways.add_argument(
        "--kind", choices=list(QUALITY), default="butterworth", help="how it bends (default: butterworth)"
    )
    pad = _verb(verbs, "pad", _pad, help="the two resistors that take a level off a speaker and keep its load")
    pad.add_argument("level", metavar="DB", help="the level to take off, such as 3")
    pad.add_argument("load", metavar="LOAD", help="such as '4 ohm'")
    pad.add_argument("--power", metavar="POWER", help="into pad and speaker, such as '50 W'")


def run(options: argparse.Namespace) -> int:
    """Reckon and print."""
    try:
        show({options.what: options.reckon(options)}, options.format)
    except Refused as error:
        raise refused(error) from error
    return 0


def _verb(
    verbs: "argparse._SubParsersAction[argparse.ArgumentParser]", name: str, reckon: Reckon, *, help: str
) -> argparse.ArgumentParser:
    description = say(message("help/reckon", what=docs.argument(help)))
    parser = verbs.add_parser(name, help=help, description=f"{description}.")
    add_format(parser)
    parser.set_defaults(reckon=reckon)
    return parser


def _gain(options: argparse.Namespace) -> Answer:
    return levels.gain(amount(options.power, "power", "POWER"), ohms(options.load, "LOAD"))


def _level(options: argparse.Namespace) -> Answer:
    if options.against is None:
        return levels.change(plain(options.level.removesuffix("dB").strip(), "DB"))
    return levels.ratio(amount(options.level, "voltage", "DB"), amount(options.against, "voltage", "VOLTAGE"))


_CORNERS: tuple[tuple[str, Callable[[float, float], Answer]], ...] = (
    ("capacitance", filters.of_capacitor),
    ("inductance", filters.of_coil),
)


def _filter(options: argparse.Namespace) -> Answer:
    load = ohms(options.load, "LOAD")
    for kind, reckon in _CORNERS:
        try:
            value = parse(options.value, kind).value
        except UnitError:
            continue
        return reckon(value, load)
    return filters.at(amount(options.value, "frequency", "VALUE"), load)


def _crossover(options: argparse.Namespace) -> Answer:
    corner = amount(options.corner, "frequency", "CORNER")
    return tweeter_parts.crossover(corner, ohms(options.load, "LOAD"), options.kind)


def _pad(options: argparse.Namespace) -> Answer:
    level = plain(options.level.removesuffix("dB").strip(), "DB")
    return tweeter_parts.pad(level, ohms(options.load, "LOAD"), maybe(options.power, "power", "--power"))


def _delay(options: argparse.Namespace) -> Answer:
    distances = [amount(text, "length", "DISTANCE") for text in options.distances]
    return delay.delays(distances, maybe(options.air, "temperature", "--air"))


def _rest(options: argparse.Namespace) -> Answer:
    capacity, current = amount(options.capacity, "charge", "CAPACITY"), amount(options.current, "current", "CURRENT")
    return rest.rest(capacity, current, maybe(options.share, "share", "--share"))


def _fuse(options: argparse.Namespace) -> Answer:
    return fuses.readings(options.colour)
