"""List what this shop's own layer has that the shared collections below it lack, and write it down for those who keep them.

VEHICLE is the id or make/id of a vehicle, or the id of a piece of gear; without one all is listed. What leaves are answers as a claims file, and
whole records; 'undertrim take DIR' in the shared collection takes them. Private notes stay here. What the shared collections have by now is
not listed; --clear removes it from the layer.
"""

import argparse
from collections.abc import Sequence
from pathlib import Path

from undertrim.check import giving
from undertrim.check.giving import Gift
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.publish.encoding import indented
from undertrim.record.nearness import suggestion
from undertrim.record.problem import printable
from undertrim.record.store import Workspace, address
from undertrim.words import WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicles", nargs="*", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("--out", type=Path, metavar="DIR", help="write what is given into this folder")
    parser.add_argument(
        "--clear", action="store_true", help="remove from the layer what the shared collections have by now"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """List it, and write it where that is asked for."""
    place = workspace(options)
    if not place.shared:
        raise Usage(message("layers/on-none", path=str(place.shown(place.root / "undertrim.toml"))))
    if options.out and options.out.exists() and (not options.out.is_dir() or any(options.out.iterdir())):
        raise Usage(message("layers/not-empty", folder=printable(str(options.out))))
    if options.clear:
        _clear(place)
    given = giving.gift(place)
    if options.vehicles:
        given = given.of(_named(given, options.vehicles))
    print(indented(_data(place, given)) if options.format == "json" else "\n".join(_lines(place, given)))
    if options.out and given.paths:
        giving.write(place, given, options.out)
        if options.format == "text":
            said = message("layers/given", folder=printable(str(options.out)))
            print(f"{say(said)}\n    {say(WayOut(said))}")
    return 0


def _named(given: Gift, names: Sequence[str]) -> list[Path]:
    """The records by what is typed. Raises Usage for one of which there is nothing to give."""
    known = {called: path for path in given.paths for called in (path.stem, address(path))}
    for name in names:
        if name not in known:
            near = suggestion(name, sorted(path.stem for path in given.paths), message("nearness/ids"))
            raise Usage(message("layers/nothing-of", name=printable(name), near=near))
    return [known[name] for name in names]


def _clear(place: Workspace) -> None:
    for path, about in giving.clear(place):
        shown = printable(str(place.shown(path)))
        print(say(message("layers/cleared" if about else "layers/cleared-record", path=shown, about=printable(about))))


def _lines(place: Workspace, given: Gift) -> list[str]:
    if not given.paths:
        return [say(message("layers/nothing"))]
    lines = [printable(f"{address(one.path)}/{one.answer.about}: {say(one.outcome.said)}") for one in given.answers]
    lines += [say(message(f"layers/whole-{place.kind(path)}", name=address(path))) for path in given.records]
    return lines


def _data(place: Workspace, given: Gift) -> dict[str, object]:
    return {
        "answers": [
            {
                "vehicle": address(one.path),
                "about": one.answer.about,
                "deed": str(one.outcome.deed),
                "said": say(one.outcome.said),
            }
            for one in given.answers
        ],
        "records": [place.name(path) for path in given.records],
    }
