"""Builds the whole site: check, prepare, render aside, then swap, so that a failed build leaves the last good site in place.

A vehicle that cannot be prepared keeps the files it was last published with, and stops no other. The preview builds again and again into
one folder; there, only the pages that changed are written anew.
"""

import shutil
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Any

from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.one_file import Looked
from undertrim.check.runner import Progress, Report
from undertrim.check.shelf import stock
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.publish import described
from undertrim.publish.build import contents, published, standing
from undertrim.publish.build.contents import SCHEMA, AllShells, Contents
from undertrim.publish.build.day import today
from undertrim.publish.build.failures import Failure
from undertrim.publish.build.keyed import keys, languages
from undertrim.publish.build.prepare import prepare
from undertrim.publish.build.prepared import Prepared, cache_folder
from undertrim.publish.build.stored import Damaged
from undertrim.publish.facts import meter, shelf
from undertrim.publish.web import calculators, finder, keeping, measuring, pages, placing, rule_pages, site
from undertrim.publish.web.content import Body, Content, Copy
from undertrim.publish.web.views import VIEWS, VISIT, View
from undertrim.record.digests import Digests, joined
from undertrim.record.identity import slug
from undertrim.record.leftovers import sweep
from undertrim.record.store import Workspace
from undertrim.words import Value, message, say
from undertrim.work.crew import Crew
from undertrim.work.workers import Workers

ProgressFor = Callable[[Value], Callable[[int, int], None] | None]


@dataclass(frozen=True)
class Built:
    """What a build made; `report` tells why nothing was made when it holds errors.

    `failed` are the vehicles that could not be prepared; those of them in `kept` are in the site with their last good files.
    """

    report: Report
    vehicles: int
    out: Path
    failed: tuple[Failure, ...] = ()
    kept: frozenset[str] = frozenset()


def build(
    workspace: Workspace, out: Path, *, sheets: bool, progress: ProgressFor, crew: Workers | None = None
) -> Built:
    """Check all records and, if there are no errors, build the site into `out`; by `crew`, or by processes of this machine."""
    with Builder(workspace, out, sheets=sheets, crew=crew) as builder:
        built = builder.build(progress)
        if not built.report.errors:
            builder.tidy()
        return built


@dataclass(frozen=True)
class _Standing:
    """What the last build left: the frame of its pages, what the site engine made, the shells, and what we put into the folder."""

    frame: str
    framed: Mapping[str, str]
    shells: AllShells
    keys: placing.Keys


class Builder:
    """Builds one site again and again: what has not changed since the last time is not done again.

    Whatever changes the frame of the pages (the handbook, the configuration, the list of vehicles) makes a whole new site. Its workers
    stay until it is left (`with`).
    """

    def __init__(self, workspace: Workspace, out: Path, *, sheets: bool, crew: Workers | None = None) -> None:
        self._workspace, self._out, self._sheets = workspace, out.absolute(), sheets
        self._digests = Digests()
        self._looked: dict[str, Looked] = {}
        self._prepared: dict[published.Keys, Prepared] = {}
        self._standing: _Standing | None = None
        self._crew = crew or Crew()
        self._address, self._name = "", ""

    def __enter__(self) -> "Builder":
        return self

    def __exit__(self, *_: object) -> None:
        self._crew.close()

    def build(self, progress: ProgressFor) -> Built:
        """Check all records and, if there are no errors, bring the site up to date.

        Raises standing.Taken and standing.NoPlace, site.BadSettings, day.BadDay, and OSError where the machine fails.
        """
        today()
        standing.refuse_elsewhere(self._out, self._workspace.root)
        self._address, self._name = site.own(self._workspace.root)
        with standing.beside(self._out) as aside:
            report = runner.check(
                self._workspace, (), progress(message("commands/checking")), self._cache(), self._crew
            )
            return Built(report, 0, self._out) if report.errors else self._built(report, progress, aside)

    def _built(self, report: Report, progress: ProgressFor, aside: Path) -> Built:
        try:
            made, failed, kept = self._publish_all(progress, aside)
        except Damaged:  # seen only where it was to be copied, so that a good cache is read once
            made, failed, kept = self._publish_all(progress, aside, doubted=True)
        names = frozenset(item.address for item in kept)
        return Built(report, len(made) + len(kept), self._out, tuple(failed), names)

    def _publish_all(
        self, progress: ProgressFor, aside: Path, *, doubted: bool = False
    ) -> tuple[Sequence[Prepared], Sequence[Failure], Sequence[Prepared]]:
        """Prepare and publish; what was prepared, what failed, and the last good of that."""
        before = published.read(self._workspace)
        prepared = self._prepare(progress(message("commands/preparing")), doubted=doubted)
        made = [item for item in prepared if isinstance(item, Prepared)]
        failed = [item for item in prepared if isinstance(item, Failure)]
        kept = [found for item in failed if (found := self._last_good(before, item))]
        shown = sorted([*made, *kept], key=lambda item: item.address)
        gear = stock(self._workspace)
        self._publish(contents.contents(languages(self._workspace), lambda: content(shown, gear)), aside)
        self._prepared = {item.keys: item for item in shown}
        published.write(self._workspace, {item.address: item.keys for item in shown})
        return made, failed, kept

    def _last_good(self, before: Mapping[str, published.Keys], failed: Failure) -> Prepared | None:
        tags = languages(self._workspace)
        return published.last_good(self._workspace, before, failed.address, tags, sheets=self._sheets)

    def tidy(self) -> None:
        """Remove what earlier runs remembered and this one had no use for."""
        self._cache().sweep()
        sweep(cache_folder(self._workspace), {key for keys in self._prepared for key in keys})

    def _cache(self) -> Cache:
        return Cache(self._workspace, self._digests, self._looked)

    def _prepare(self, progress: Progress | None, *, doubted: bool) -> list[Prepared | Failure]:
        paths = self._workspace.files([self._workspace.records / "vehicles"])
        keyed = keys(self._workspace, paths, self._address, self._digests, stock(self._workspace))
        memory, self._prepared = self._prepared, {}  # where something goes wrong, the disk is asked again
        how = {"sheets": self._sheets, "doubted": doubted}
        return prepare(self._workspace, keyed, progress=progress, memory=memory, crew=self._crew, **how)

    def _publish(self, held: Contents, aside: Path) -> None:
        stands, self._standing = self._standing, None  # a failure half way must not be taken for a good state
        frame = self._frame(held)
        if stands and stands.frame == frame and self._out.is_dir():
            pieces = self._pieces(held, stands.shells, stands.framed)
            present = placing.place(self._out, pieces, stands.keys)
            self._standing = replace(stands, keys=present)
        else:
            self._standing = self._afresh(held, frame, aside)

    def _frame(self, held: Contents) -> str:
        return joined(site.frame(self._workspace.root, self._digests), *contents.framed(held))

    def _afresh(self, held: Contents, frame: str, aside: Path) -> _Standing:
        """Render aside, then swap."""
        fresh = aside / "fresh"
        if fresh.exists():
            shutil.rmtree(fresh)
        shells = contents.rendered(self._workspace.root, held, fresh)
        framed = keeping.marked(fresh)
        present = placing.place(fresh, self._pieces(held, shells, framed), {})
        standing.swap(fresh, self._out, aside)
        return _Standing(frame, framed, shells, present)

    def _pieces(self, held: Contents, shells: AllShells, framed: Mapping[str, str]) -> dict[str, placing.Piece]:
        return contents.pieces(held, shells, framed, self._name)


def content(made: Sequence[Prepared], gear: Stock) -> Content:
    """Everything the site holds besides the handbook."""
    by_make: dict[str, list[Prepared]] = defaultdict(list)
    for item in made:
        by_make[item.summary["make"]].append(item)
    return Content(
        bodies={
            "index": _home(by_make),
            "calculators": _of_all(calculators.title(), calculators.page(), "assets/undertrim/calculators.js"),
            measuring.PAGE: _of_all(measuring.title(), measuring.page()),
            **{f"makes/{slug(name)}": _make_page(name, items) for name, items in by_make.items()},
            **{f"vehicles/{view.path(item.address)}": _vehicle_page(item, view) for item in made for view in VIEWS},
        },
        markdown=rule_pages.pages(),
        files={
            **finder.files([finder.row(item.summary) for item in made]),
            "assets/undertrim/meter-table.js": meter.table_script(),
            **shelf.files(gear, clearances()),
            SCHEMA: described.text(),
        },
        copies={name: copy for item in made for name, copy in _copies(item)},
    )


def _copies(item: Prepared) -> Iterable[tuple[str, Copy]]:
    """The files beside a vehicle's pages, and its own on the shelf."""
    make = item.address.split("/")[0]
    for name, kept in item.beside:
        yield f"vehicles/{make}/{name}", Copy(f"{item.files.folder}/{kept}", partial(item.files.content, kept))
    for view, held in item.with_stock.items():
        name = f"{shelf.FOLDER}/{shelf.own_name(item.address, view)}.js"
        yield name, Copy(item.shelf.digests[held], partial(item.shelf.content, held))


def _home(by_make: dict[str, list[Prepared]]) -> Body:
    makes: list[Mapping[str, Any]] = [
        {"id": slug(name), "name": name, "count": len(items)} for name, items in sorted(by_make.items())
    ]
    demo = all(item.summary["demo"] for items in by_make.values() for item in items)
    body = pages.home(makes, demo=demo)
    scripts = ("assets/undertrim/finder.js", "finder/start.js")
    return Body(say(message("finder/title")), lambda: body, body, in_nav=True, scripts=scripts)


def _of_all(title: str, body: str, *scripts: str) -> Body:
    """A page that is the same whatever the collection holds."""
    return Body(title, lambda: body, body, in_nav=True, scripts=scripts)


def _make_page(name: str, items: Sequence[Prepared]) -> Body:
    order = sorted(items, key=lambda item: (item.summary["model"], item.summary["first_year"], item.address))
    vehicles: list[Any] = [item.summary for item in order]
    return Body(name, lambda: pages.make(name, vehicles), " ".join(item.keys[0] for item in items))


def _vehicle_page(item: Prepared, view: View) -> Body:
    name = f"{item.summary['title']} {item.summary['years']}"
    other = message("vehicle-page/page-title", vehicle=name, page=message(view.title))
    title = name if view is VISIT else say(other)
    return Body(title, partial(item.body, view.name), item.digest(view.name), scripts=view.scripts)
