"""Builds the whole site: check, prepare, render aside, then swap, so that a failed build leaves the last good site in place.

The preview builds again and again into one folder; there, only the pages that changed are written anew.
"""

import shutil
import tempfile
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.looking import Looked
from undertrim.check.runner import Progress, Report
from undertrim.check.shelf import stock
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.publish import calculators, finder, pages, placing, rule_pages, site
from undertrim.publish.facts import fit_page, meter
from undertrim.publish.prepare import Prepared, cache_folder, keys, prepare
from undertrim.record.digests import Digests, joined
from undertrim.record.identity import slug
from undertrim.record.leftovers import sweep
from undertrim.record.store import Workspace

ProgressFor = Callable[[str], Callable[[int, int], None] | None]


@dataclass(frozen=True)
class Built:
    """What a build made; `report` tells why nothing was made when it holds errors."""

    report: Report
    vehicles: int
    out: Path


def build(workspace: Workspace, out: Path, *, sheets: bool, progress: ProgressFor) -> Built:
    """Check all records and, if there are no errors, build the site into `out`."""
    builder = Builder(workspace, out, sheets=sheets)
    built = builder.build(progress)
    if not built.report.errors:
        builder.tidy()
    return built


@dataclass(frozen=True)
class _Standing:
    """What the last build left: the frame of its pages, their shells, and what we put into the folder."""

    frame: str
    shells: site.Shells
    keys: placing.Keys


class Builder:
    """Builds one site again and again: what has not changed since the last time is not done again.

    Whatever changes the frame of the pages (the handbook, the configuration, the list of vehicles) makes a whole new site.
    """

    def __init__(self, workspace: Workspace, out: Path, *, sheets: bool) -> None:
        self._workspace, self._out, self._sheets = workspace, out, sheets
        self._digests = Digests()
        self._looked: dict[str, Looked] = {}
        self._prepared: dict[str, Prepared] = {}
        self._standing: _Standing | None = None

    def build(self, progress: ProgressFor) -> Built:
        """Check all records and, if there are no errors, bring the site up to date."""
        report = runner.check(self._workspace, (), progress("checking"), self._cache())
        if report.errors:
            return Built(report, 0, self._out)
        made = self._prepare(progress("preparing"))
        self._publish(content(made, stock(self._workspace)))
        self._prepared = {item.folder.name: item for item in made}
        return Built(report, len(made), self._out)

    def tidy(self) -> None:
        """Remove what earlier runs remembered and this one had no use for."""
        self._cache().sweep()
        sweep(cache_folder(self._workspace), self._prepared)

    def _cache(self) -> Cache:
        return Cache(self._workspace, self._digests, self._looked)

    def _prepare(self, progress: Progress | None) -> list[Prepared]:
        paths = self._workspace.files([self._workspace.records / "vehicles"])
        keyed = keys(self._workspace, paths, site.address(self._workspace.root), self._digests)
        memory, self._prepared = self._prepared, {}  # where something goes wrong, the disk is asked again
        return prepare(self._workspace, keyed, sheets=self._sheets, progress=progress, memory=memory)

    def _publish(self, held: site.Content) -> None:
        standing, self._standing = self._standing, None  # a failure half way must not be taken for a good state
        frame = self._frame(held)
        if standing and standing.frame == frame and self._out.is_dir():
            present = placing.place(self._out, placing.pieces(held, standing.shells), standing.keys)
            self._standing = _Standing(frame, standing.shells, present)
        else:
            self._standing = self._afresh(held, frame)

    def _frame(self, held: site.Content) -> str:
        framed = (f"{path} {body.title} {body.key}" for path, body in held.framed.items())
        return joined(site.frame(self._workspace.root, self._digests), *framed, *sorted(held.shelled))

    def _afresh(self, held: site.Content, frame: str) -> _Standing:
        """Render aside, then swap."""
        self._out.parent.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=self._out.parent, prefix=".site-") as aside:
            fresh = Path(aside) / "site"
            shells = site.render(self._workspace.root, held, fresh)
            present = placing.place(fresh, placing.pieces(held, shells), {})
            _swap(fresh, self._out, Path(aside) / "old")
        return _Standing(frame, shells, present)


def _swap(fresh: Path, out: Path, old: Path) -> None:
    """Put `fresh` in the place of `out`."""
    if out.exists():
        out.rename(old)
    fresh.rename(out)
    shutil.rmtree(old, ignore_errors=True)


def content(made: Sequence[Prepared], shelf: Stock) -> site.Content:
    """Everything the site holds besides the handbook."""
    by_make: dict[str, list[Prepared]] = defaultdict(list)
    for item in made:
        by_make[item.summary["make"]].append(item)
    return site.Content(
        bodies={
            "index": _home(by_make),
            "calculators": _calculators(),
            **{f"makes/{slug(name)}": _make_page(name, items) for name, items in by_make.items()},
            **{f"vehicles/{item.address}": _vehicle_page(item) for item in made},
        },
        markdown=rule_pages.pages(),
        files={
            **finder.files([finder.row(item.summary) for item in made]),
            "assets/undertrim/meter-table.js": meter.table_script(),
            "assets/undertrim/stock.js": fit_page.shelf_script(shelf, clearances()),
        },
        copies={f"vehicles/{item.address.split('/')[0]}/{name}": path for item in made for name, path in item.beside},
    )


def _home(by_make: dict[str, list[Prepared]]) -> site.Body:
    makes: list[Mapping[str, Any]] = [
        {"id": slug(name), "name": name, "count": len(items)} for name, items in sorted(by_make.items())
    ]
    demo = all(item.summary["demo"] for items in by_make.values() for item in items)
    body = pages.home(makes, demo=demo)
    return site.Body("Find a vehicle", lambda: body, body, in_nav=True)


def _calculators() -> site.Body:
    body = calculators.page()
    return site.Body(calculators.TITLE, lambda: body, body, in_nav=True)


def _make_page(name: str, items: Sequence[Prepared]) -> site.Body:
    vehicles: list[Any] = [item.summary for item in sorted(items, key=_by_model)]
    return site.Body(name, lambda: pages.make(name, vehicles), " ".join(item.folder.name for item in items))


def _by_model(item: Prepared) -> tuple[str, int, str]:
    return item.summary["model"], item.summary["first_year"], item.address


def _vehicle_page(item: Prepared) -> site.Body:
    title = f"{item.summary['title']} {item.summary['years']}"
    return site.Body(title, lambda: item.body, item.folder.name)
