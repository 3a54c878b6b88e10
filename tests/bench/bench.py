"""Measures speed and size over collections of different sizes, and how a cost grows with the collection.

Run it with `make bench`. It prints a table and judges nothing; a budget is for people to hold it against. With
`make bench ARGS=--mistakes` it counts instead which mistakes the checks find, with `--taps` it walks through the pages on a slow phone, with `--entry` it enters a new car on one.
"""

import argparse
import math
import sys
import tempfile
from pathlib import Path

from budgets import BUDGETS
from entry import entry
from finding import finding_figures
from herd import ROOT, Herd, herd
from markdown_site import by_mkdocs
from profiles import profiles
from sizes import OTHERS, sizes
from taps import taps
from times import PRINTED, Values, collection, from_the_shell, one_by_one
from weighing import weighing

from undertrim.cli import collect_seldom
from undertrim.record.store import Workspace

TINY = 10
SMALL = 100
LARGE = 400
LARGEST = 5000
FEW = (1, 2)
"""Enough to see that all of it runs."""


def main() -> int:
    """Measure collections of 10, of 100 and of as many vehicles as asked for, or of a few, and print the table."""
    collect_seldom()  # as the commands do
    options = arguments()
    if options.mistakes:
        return mistakes(few=options.few)
    if options.taps:
        return taps()
    if options.entry:
        return entry()
    if options.finder:
        return finding_figures()
    if options.bytes:
        return weighing()
    sizes = FEW if options.few else (TINY, SMALL, options.size)
    measured = {size: measure(size, profile=options.profile and size == sizes[1]) for size in sizes}
    sys.stdout.write(table(measured))
    return 0


def arguments() -> argparse.Namespace:
    """The command line's options."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument(
        "--size", type=_size, default=LARGE, help=f"vehicles in the largest collection (default: {LARGE})"
    )
    parser.add_argument("--profile", action="store_true", help="show where the time goes for one record, too")
    parser.add_argument(
        "--mistakes", action="store_true", help="instead, spoil the shipped records and count what the checks find"
    )
    parser.add_argument(
        "--taps", action="store_true", help="instead, walk through each shipped vehicle on a slow phone"
    )
    parser.add_argument(
        "--entry", action="store_true", help="instead, enter a new car by a phone's pages and count what that takes"
    )
    parser.add_argument(
        "--finder", action="store_true", help="instead, type into the finder of large collections on a slow phone"
    )
    parser.add_argument(
        "--bytes", action="store_true", help="instead, weigh what is on the disk for a vehicle and what a device keeps"
    )
    parser.add_argument(
        "--few", action="store_true", help="a few vehicles, or mistakes, only: to see that it runs, not to measure"
    )
    return parser.parse_args()


def mistakes(*, few: bool) -> int:
    """The table of mistakes, or of a few; what it needs stands beside the tests of the rules."""
    sys.path.insert(0, str(ROOT / "tests" / "check"))
    from mistakes import main as count

    count(Workspace(ROOT), few=few)
    return 0


def _size(text: str) -> int:
    size = int(text)
    if not SMALL < size <= LARGEST:
        raise argparse.ArgumentTypeError(f"must be more than {SMALL} and at most {LARGEST}")
    return size


def measure(size: int, *, profile: bool) -> Values:
    """All figures of a collection of `size` vehicles, made for this and removed afterwards."""
    sys.stderr.write(f"measuring {size} vehicles\n")
    with tempfile.TemporaryDirectory(prefix="undertrim-bench-") as folder:
        made = herd(Path(folder), size)
        if profile:
            profiles(made)
        return figures(made, Path(folder) / "site")


def figures(made: Herd, out: Path) -> Values:
    """Times first: `collection` leaves the site whose sizes are taken."""
    found = {**one_by_one(made), **from_the_shell(made), **collection(made, out), **sizes(made, out)}
    return {**found, "all its files, bytes": found[PRINTED] + found[OTHERS], **by_mkdocs(made)}


def table(measured: dict[int, Values]) -> str:
    """One line a figure; `growth` is the last size's over the one before (1.00: the same), `wanted` what it should be at most."""
    heads = "".join(f"{size:>10}" for size in measured)
    lines = [f"{'vehicles':38}{heads}    growth    wanted"]
    values = list(measured.values())
    for name in values[0]:
        row = "".join(f"{_short(value[name]):>10}" for value in values)
        wanted = _short(BUDGETS[name]) if name in BUDGETS else ""
        lines.append(f"{name:38}{row}{_growth(values[-1][name], values[-2][name]):>10}{wanted:>10}".rstrip())
    return "\n".join(lines) + "\n"


def _growth(last: float, before: float) -> str:
    return "" if math.isnan(last) else f"{last / before:.2f}"


def _short(value: float) -> str:
    if math.isnan(value):
        return "-"
    return f"{value:,.0f}" if value >= 1000 else f"{value:.3g}"


if __name__ == "__main__":
    sys.exit(main())
