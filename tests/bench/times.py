"""How long things take: single records in a warm process, a cold process, and the whole collection."""

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import Any

from herd import Herd

from undertrim.check import runner
from undertrim.publish import facts, pages, pdf, site
from undertrim.publish.building import build, content
from undertrim.publish.prepare import prepare

SAMPLE = 35
"""So many records are measured one by one: five of each kind."""
SHEETS = 7
URL = "https://undertrim.example/"

Values = dict[str, float]


def seconds(work: Callable[[], object]) -> float:
    """How long one call takes."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def each(work: Callable[[Any], object], items: Sequence[Any]) -> float:
    """Milliseconds for each of the items, the better of two rounds."""
    rounds = [seconds(lambda: [work(item) for item in items]) for _ in range(2)]
    return min(rounds) * 1000 / len(items)


def one_by_one(herd: Herd) -> Values:
    """Milliseconds for each single record, in one warm process."""
    chosen = herd.paths[-SAMPLE:]
    entries = [herd.workspace.load(path) for path in chosen]
    made = [facts.vehicle(entry) for entry in entries]
    return {
        "read a record, ms": each(herd.workspace.load, chosen),
        "check it with all rules, ms": each(runner.check_entry, entries),
        "work out its facts, ms": each(facts.vehicle, entries),
        "render its page's body, ms": each(pages.vehicle, made),
        "print its sheet, ms": each(_sheet, made[:SHEETS]),
    }


def _sheet(made: dict[str, Any]) -> bytes:
    return pdf.render(made, URL, "a4", date(2026, 1, 1))


def from_the_shell(herd: Herd) -> Values:
    """Seconds for a cold process that checks one record among its neighbours."""
    command = [sys.executable, "-m", "undertrim.cli", "check", str(herd.paths[0])]
    taken = [seconds(lambda: subprocess.run(command, check=True, capture_output=True)) for _ in range(3)]
    return {"undertrim check ONE-RECORD, s": min(taken)}


def collection(herd: Herd, out: Path) -> Values:
    """What the whole collection costs, sheets left out, with all processors. Leaves the site in `out`."""
    checking = seconds(lambda: runner.check(herd.workspace))
    first = seconds(lambda: _build(herd, out))
    made = prepare(herd.workspace, herd.paths, URL, sheets=False, progress=None)
    held = content(made)
    count = len(held.bodies) + len(held.markdown)
    rendering = seconds(lambda: site.render(herd.workspace.root, held, out))
    _touch(herd.paths[0])
    again = seconds(lambda: _build(herd, out))
    return {
        "check all, ms a record": checking * 1000 / herd.size,
        "check all, s": checking,
        "site pages from bodies, ms a page": rendering * 1000 / count,
        "site pages from bodies, s": rendering,
        "first build, ms a vehicle": first * 1000 / herd.size,
        "first build, s": first,
        "build again, one record changed, s": again,
    }


def _build(herd: Herd, out: Path) -> None:
    made = build(herd.workspace, out, sheets=False, progress=lambda _: None)
    if made.report.errors:
        raise SystemExit(os.linesep.join(f"{problem}" for problem in made.report.problems[:5]))


def _touch(path: Path) -> None:
    path.write_text(path.read_text(encoding="utf-8") + "# changed\n", encoding="utf-8")
