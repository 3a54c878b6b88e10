"""How long things take: single records in a warm process, a cold process, and the whole collection.

Costs of one record or page are processor time, worker processes included, so that a busy machine disturbs
them less; what a person waits for is time on the clock.
"""

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from herd import Herd

from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.runner import Report
from undertrim.check.shelf import stock
from undertrim.derive.fit.stock import NOTHING
from undertrim.publish.build import beside
from undertrim.publish.build.building import Builder
from undertrim.publish.build.gathered import content
from undertrim.publish.build.keyed import keys
from undertrim.publish.build.prepare import prepare
from undertrim.publish.build.prepared import Prepared
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.web import pages, placing, site
from undertrim.publish.web.content import Content
from undertrim.record.digests import Digests
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry

SAMPLE = 35
"""So many records are measured one by one: five of each kind."""
SHEETS = 7
PRINTED = "all that is printed of it, bytes"
URL = "https://undertrim.example/"

Values = dict[str, float]


@dataclass(frozen=True)
class Taken:
    """Seconds on the clock, and of processor time by this process and the workers it waited for."""

    clock: float
    processor: float

    def each(self, count: int) -> float:
        """Milliseconds of processor time for each of `count` things."""
        return self.processor * 1000 / count


def taken(work: Callable[[], object]) -> Taken:
    """What one call takes."""
    clock, before = time.perf_counter(), os.times()
    work()
    return Taken(time.perf_counter() - clock, sum(os.times()[:4]) - sum(before[:4]))


def each(work: Callable[[Any], object], items: Sequence[Any], fresh: Callable[[Any], Any] = lambda item: item) -> float:
    """Milliseconds of processor time for each of the items, the better of two rounds, both with what `fresh` makes of them beforehand.

    What is worked out once for a record would otherwise be had for nothing in the second round.
    """
    rounds = ([fresh(item) for item in items] for _ in range(2))
    return min(taken(partial(list, map(work, made))).each(len(made)) for made in rounds)


def one_by_one(herd: Herd) -> Values:
    """Processor time for each single record, in one warm process."""
    chosen, load = herd.paths[-SAMPLE:], herd.workspace.load
    printed = [_Printed(load(path)) for path in chosen[:SHEETS]]
    return {
        "read a record, cpu ms": each(load, chosen),
        "check it with all rules, cpu ms": each(runner.check_entry, chosen, load),
        "work out its facts, cpu ms": each(facts.vehicle, chosen, load),
        "render its pages' bodies, cpu ms": each(pages.vehicle, [item.made for item in printed]),
        "its pages and data, cpu ms": each(_pages_and_data, chosen, load),
        "all that is printed of it, cpu ms": each(_Printed.all, printed),
        PRINTED: sum(item.bytes for item in printed) / len(printed),
    }


def _pages_and_data(entry: Entry) -> int:
    """Everything but what is printed, from the record on; how many bytes that is."""
    made = facts.vehicle(entry)
    return sum(len(body.encode()) for body in pages.vehicle(made).values()) + len(beside.data(made)[1])


class _Printed:
    """All that is printed of a vehicle in one paper, from its facts on."""

    def __init__(self, entry: Entry) -> None:
        self.entry = entry
        self.made: Any = facts.vehicle(entry)
        self.bytes = 0

    def all(self) -> None:
        """Print it, and note how many bytes it is."""
        assert isinstance(self.entry.record, VehicleRecord)
        printing = beside.printing(self.entry.record, self.made, ("a4",))
        self.bytes = sum(len(content) for _, content in beside.sheets(printing, self.made, URL, date(2026, 1, 1)))


def from_the_shell(herd: Herd) -> Values:
    """A cold process that checks one record, first among neighbours never seen, then with their cards remembered."""
    command = [sys.executable, "-m", "undertrim.cli", "check", str(herd.paths[0])]
    first, *others = [taken(lambda: subprocess.run(command, check=True, capture_output=True)) for _ in range(3)]
    return {
        "undertrim check RECORD, first, s": first.clock,
        "undertrim check RECORD, s": min(item.clock for item in others),
    }


def collection(herd: Herd, out: Path) -> Values:
    """What the whole collection costs, sheets left out, with all processors. Leaves the site in `out`."""
    return {**_checking(herd), **_building(herd, out)}


def _checking(herd: Herd) -> Values:
    first = taken(lambda: _check(herd))
    _touch(herd.paths[0])
    again = taken(lambda: _check(herd))
    return {
        "check all, cpu ms a record": first.each(herd.size),
        "check all, s": first.clock,
        "check after one change, s": again.clock,
    }


def _building(herd: Herd, out: Path) -> Values:
    """With all checks remembered: the first build, the same once more in a new process's place, and a preview's next one."""
    first = taken(lambda: _build(Builder(herd.workspace, out, sheets=False)))
    builder = Builder(herd.workspace, out, sheets=False)
    again = taken(lambda: _build(builder))
    keyed = keys(herd.workspace, herd.paths, URL, Digests(), stock(herd.workspace))
    made = prepare(herd.workspace, keyed, sheets=False, progress=None)
    held = content([item for item in made if isinstance(item, Prepared)], NOTHING)
    rendering = taken(lambda: _render(herd, held, out.with_name("rendered")))
    _touch(herd.paths[0])
    preview = taken(lambda: _build(builder))
    _touch(next((herd.workspace.records / "gear").rglob("*.yaml")))
    restocked = taken(lambda: _build(builder))
    _touch(herd.paths[-1])
    changed = taken(lambda: _build(Builder(herd.workspace, out, sheets=False)))
    return {
        "prepare and build, cpu ms a vehicle": first.each(herd.size),
        "prepare and build, s": first.clock,
        "pages from bodies, cpu ms a page": rendering.each(len(held.bodies) + len(held.markdown)),
        "pages from bodies, s": rendering.clock,
        "build with all prepared, s": again.clock,
        "preview after one change, s": preview.clock,
        "preview after changed gear, s": restocked.clock,
        "build after one change, s": changed.clock,
    }


def _render(herd: Herd, held: Content, apart: Path) -> None:
    """In a folder of its own: what a builder has put into its folder is not to be taken from under it."""
    placing.place(apart, placing.pieces(held, site.render(herd.workspace.root, held, apart)), {})


def _check(herd: Herd) -> None:
    _stop_at_errors(runner.check(herd.workspace, (), None, Cache(herd.workspace)))


def _build(builder: Builder) -> None:
    _stop_at_errors(builder.build(lambda _: None).report)


def _stop_at_errors(report: Report) -> None:
    if report.errors:
        raise SystemExit(os.linesep.join(f"{problem}" for problem in report.problems[:5]))


def _touch(path: Path) -> None:
    path.write_text(path.read_text(encoding="utf-8") + "# changed\n", encoding="utf-8")
