"""Choose cable and fuse for a load: by the voltage lost out and back, by what the cable may carry, and by its fuse.

Say the current, or the power of an amplifier and its efficiency. The way back is a wire as long as the way out, a wire of another
length, or the body of the car. What is not said is usual practice; the answer lists every number it used and where it comes from.
Exit 1 if no cable listed will do.
"""

import argparse

from undertrim.commands.amounts import add_format, amount, maybe, part_of_one, plain, refused, show
from undertrim.commands.usage import Usage
from undertrim.derive.electrical import ampacity, cable, drop, metals
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.cable import Wishes
from undertrim.derive.electrical.conductors import SCHEMES
from undertrim.derive.electrical.drop import Back, Path
from undertrim.derive.electrical.supply import Supply, supply
from undertrim.publish.terminal.electrical import Answer
from undertrim.resources import table
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    load = parser.add_mutually_exclusive_group(required=True)
    load.add_argument("--current", metavar="A", help="the current, such as '60 A'")
    load.add_argument("--power", metavar="W", help="the output power of an amplifier, such as '1000 W'")
    parser.add_argument("--efficiency", metavar="SHARE", help="of the amplifier, such as 0.8 or '80 %%' (usual: 0.5)")
    parser.add_argument("--length", required=True, help="of the cable out, such as '5 m' or '16 ft'")
    parser.add_argument("--return", dest="back", metavar="LENGTH|body", help="of the wire back (usual: as long as out)")
    parser.add_argument("--body", metavar="OHM", help="resistance of the way through the body (usual: '1 mohm')")
    parser.add_argument("--voltage", metavar="V", help="at the source (usual: '13.8 V')")
    parser.add_argument("--limit", metavar="SHARE", help="of the voltage that may be lost (usual: '3 %%')")
    parser.add_argument("--cable", choices=SCHEMES, default="awg", help="the scheme of sizes (default: awg)")
    parser.add_argument("--size", help="also say what is lost with this size, such as 4, 1/0 or 2.5")
    parser.add_argument("--metal", choices=list(table("electrical-cable")["metals"]), default=metals.COPPER)
    parser.add_argument("--times", help="resistance of the metal against copper (usual: 1.6 for copper-clad)")
    parser.add_argument(
        "--insulation",
        type=int,
        choices=table("electrical-ampacity")["insulation"],
        help="°C it bears (usual: 80)",
    )
    parser.add_argument("--where", choices=ampacity.PLACES, default="cabin", help="hottest place it lies in")
    parser.add_argument("--conductor", metavar="TEMPERATURE", help="of the conductor (usual: '20 °C')")
    parser.add_argument("--fuse", metavar="A", help="the fuse, where it is not to be chosen")
    parser.add_argument("--share", help="of its rating that a fuse is loaded with for long (usual: '80 %%')")
    add_format(parser)


def run(options: argparse.Namespace) -> int:
    """Choose and print; exit 1 if no cable will do."""
    try:
        source = _supply(options)
        path = _path(options, source.current if source else amount(options.current, "current", "--current"))
        choice = cable.choose(path, _wishes(options))
        one = drop.drop(path, options.cable, options.size) if options.size else None
    except Refused as error:
        raise refused(error) from error
    answers: dict[str, Answer | None] = {"supply": source, "drop": one, "cable": choice}
    show({name: answer for name, answer in answers.items() if answer}, options.format, options.cable)
    return 0 if choice.size else 1


def _supply(options: argparse.Namespace) -> Supply | None:
    if options.power is None:
        if options.efficiency:
            raise Usage(say(message("cable/efficiency-without-power")))
        return None
    return supply(amount(options.power, "power", "--power"), _efficiency(options), _volts(options))


def _efficiency(options: argparse.Namespace) -> float | None:
    if options.efficiency is None:
        return None
    return part_of_one(options.efficiency, "--efficiency")


def _volts(options: argparse.Namespace) -> float | None:
    return maybe(options.voltage, "voltage", "--voltage")


def _path(options: argparse.Namespace, current: float) -> Path:
    return Path(
        current=current,
        out=amount(options.length, "length", "--length"),
        back=_back(options),
        metal=options.metal,
        times=None if options.times is None else plain(options.times, "--times"),
        body=maybe(options.body, "resistance", "--body"),
        voltage=_volts(options),
        conductor=maybe(options.conductor, "temperature", "--conductor"),
    )


def _back(options: argparse.Namespace) -> Back:
    if options.body and options.back != "body":
        raise Usage(say(message("cable/body-without-return")))
    return "body" if options.back == "body" else maybe(options.back, "length", "--return")


def _wishes(options: argparse.Namespace) -> Wishes:
    return Wishes(
        scheme=options.cable,
        insulation=options.insulation,
        place=options.where,
        limit=maybe(options.limit, "share", "--limit"),
        share=maybe(options.share, "share", "--share"),
        fuse=maybe(options.fuse, "current", "--fuse"),
    )
