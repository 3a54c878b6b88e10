"""Reckon the small numbers of an installation: gain, level, filter, delay, rest, fuse.

Each has its own arguments: `undertrim reckon gain --help`. The answer lists every number it used and where it comes from.
"""

import argparse
from collections.abc import Callable

from undertrim.commands.amounts import add_format, amount, maybe, ohms, plain, refused, show
from undertrim.commands.common import helped
from undertrim.derive.electrical import delay, filters, fuses, levels, rest
from undertrim.derive.electrical.bounds import Refused
from undertrim.publish.electrical_text import Answer
from undertrim.record.units import UnitError, parse
from undertrim.words import message

Reckon = Callable[[argparse.Namespace], Answer]


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the sub-verbs."""
    verbs = parser.add_subparsers(dest="what", metavar="WHAT", required=True)
    gain = _verb(verbs, "gain", _gain)
    gain.add_argument("power", metavar="POWER", help=helped("reckon/gain-power"))
    gain.add_argument("load", metavar="LOAD", help=helped("reckon/gain-load"))
    level = _verb(verbs, "level", _level)
    level.add_argument("level", metavar="DB", help=helped("reckon/level-level"))
    level.add_argument("against", metavar="VOLTAGE", nargs="?", help=helped("reckon/level-against"))
    corner = _verb(verbs, "filter", _filter)
    corner.add_argument("value", metavar="VALUE", help=helped("reckon/filter-value"))
    corner.add_argument("load", metavar="LOAD", help=helped("reckon/filter-load"))
    wait = _verb(verbs, "delay", _delay)
    wait.add_argument("distances", metavar="DISTANCE", nargs="+", help=helped("reckon/delay-distances"))
    wait.add_argument("--air", metavar="TEMPERATURE", help=helped("reckon/delay-air"))
    sleep = _verb(verbs, "rest", _rest)
    sleep.add_argument("capacity", metavar="CAPACITY", help=helped("reckon/rest-capacity"))
    sleep.add_argument("current", metavar="CURRENT", help=helped("reckon/rest-current"))
    sleep.add_argument("--share", help=helped("reckon/rest-share"))
    colour = _verb(verbs, "fuse", _fuse)
    colour.add_argument("colour", metavar="COLOUR", help=helped("reckon/fuse-colour"))


def run(options: argparse.Namespace) -> int:
    """Reckon and print."""
    try:
        show({options.what: options.reckon(options)}, options.format)
    except Refused as error:
        raise refused(error) from error
    return 0


def _verb(
    verbs: "argparse._SubParsersAction[argparse.ArgumentParser]", name: str, reckon: Reckon
) -> argparse.ArgumentParser:
    description = helped("reckon/what", what=message(f"reckon/{name}")) + "."
    parser = verbs.add_parser(name, help=helped(f"reckon/{name}"), description=description)
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


def _delay(options: argparse.Namespace) -> Answer:
    distances = [amount(text, "length", "DISTANCE") for text in options.distances]
    return delay.delays(distances, maybe(options.air, "temperature", "--air"))


def _rest(options: argparse.Namespace) -> Answer:
    capacity, current = amount(options.capacity, "charge", "CAPACITY"), amount(options.current, "current", "CURRENT")
    return rest.rest(capacity, current, maybe(options.share, "share", "--share"))


def _fuse(options: argparse.Namespace) -> Answer:
    return fuses.readings(options.colour)
