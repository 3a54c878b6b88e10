"""Builds the whole site: check, prepare, render aside, then swap, so that a failed build leaves the last good site in place.

A vehicle that cannot be prepared keeps the files it was last published with, and stops no other. The preview builds again and again into
one folder; there, only the pages that changed are written anew.
"""

import shutil
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from undertrim.check import layering, runner
from undertrim.check.cache import Cache, remembered
from undertrim.check.runner import Progress, Report
from undertrim.check.shelf import stock
from undertrim.publish.build import in_languages, last_site, published, standing, unfinished
from undertrim.publish.build.day import today
from undertrim.publish.build.failures import Failure
from undertrim.publish.build.gathered import content
from undertrim.publish.build.in_languages import Contents
from undertrim.publish.build.keyed import keys, languages
from undertrim.publish.build.last_site import Framed
from undertrim.publish.build.prepare import prepare
from undertrim.publish.build.prepared import Prepared, cache_folder
from undertrim.publish.build.prepared import remembered as remembered_pages
from undertrim.publish.build.stored import Damaged
from undertrim.publish.web import keeping, placing, site
from undertrim.record.digests import joined
from undertrim.record.ledger import Ledger
from undertrim.record.leftovers import sweep
from undertrim.record.store import Workspace
from undertrim.words import Value, message
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
    """What this builder put into its folder: what the site engine made, and our own files."""

    framed: Framed
    keys: placing.Keys


class Builder:
    """Builds one site again and again: what has not changed since the last time is not done again.

    Whatever changes the frame of the pages (the handbook, the configuration, the list of vehicles) makes a whole new site. Its workers
    stay until it is left (`with`). What it leaves is remembered for the next build into the same folder. A `preview` is not, and it shows records with
    errors too, each with what is wrong with it (`unfinished.py`).

    What was found out of single files is written down after the first build and when it is left: to do so after each saved record was an eighth of
    a preview. One that is killed leaves less to know, and nothing else.
    """

    def __init__(
        self, workspace: Workspace, out: Path, *, sheets: bool, crew: Workers | None = None, preview: bool = False
    ) -> None:
        self._workspace, self._out, self._sheets, self._preview = workspace, out.absolute(), sheets, preview
        self._digests = remembered(workspace)
        self._cache = Cache(workspace, self._digests)
        self._prepared = remembered_pages(workspace)
        self._used: set[str] = set()
        self._unwritten: list[Cache | Ledger] = []
        self._first = True
        self._standing: _Standing | None = None
        self._crew = crew or Crew()
        self._address, self._name = "", ""

    def __enter__(self) -> "Builder":
        return self

    def __exit__(self, *_: object) -> None:
        self._crew.close()
        self._write_down()

    def _write_down(self) -> None:
        for known in self._unwritten:
            known.save()
        self._unwritten, self._first = [], False

    def build(self, progress: ProgressFor) -> Built:
        """Check all records and, if there are no errors, bring the site up to date.

        Raises standing.Taken and standing.NoPlace, site.BadSettings, day.BadDay, and OSError where the machine fails.
        """
        today()
        self._workspace = self._workspace.renewed()
        standing.refuse_elsewhere(self._out, self._workspace.root)
        self._address, self._name = site.own(self._workspace.root)
        with standing.beside(self._out) as aside:
            report = runner.check(self._workspace, (), progress(message("commands/checking")), self._cache, self._crew)
            stopped = report.errors and not self._preview
            made = Built(report, 0, self._out) if stopped else self._built(report, progress, aside)
            self._unwritten = [self._cache] if stopped else [self._cache, self._prepared]
            if self._first:
                self._write_down()
            return made

    def _built(self, report: Report, progress: ProgressFor, aside: Path) -> Built:
        try:
            made, failed, kept = self._publish_all(report, progress, aside)
        except Damaged:  # seen only where it was to be copied, so that a good cache is read once
            made, failed, kept = self._publish_all(report, progress, aside, doubted=True)
        names = frozenset(item.address for item in kept)
        return Built(report, len(made) + len(kept), self._out, tuple(failed), names)

    def _publish_all(
        self, report: Report, progress: ProgressFor, aside: Path, *, doubted: bool = False
    ) -> tuple[Sequence[Prepared], Sequence[Failure], Sequence[Prepared]]:
        """Prepare and publish; what was prepared, what failed, and the last good of that."""
        before = published.read(self._workspace)
        prepared = self._prepare(progress(message("commands/preparing")), doubted=doubted)
        made = [item for item in prepared if isinstance(item, Prepared)]
        failed = [item for item in prepared if isinstance(item, Failure)]
        kept = [] if self._preview else [found for item in failed if (found := self._last_good(before, item))]
        shown = sorted([*made, *kept], key=lambda item: item.address)
        if self._preview:
            shown = unfinished.annotated(self._workspace, prepared, report.problems, languages(self._workspace))
        gear = stock(self._workspace)
        self._publish(in_languages.contents(languages(self._workspace), lambda: content(shown, gear)), aside)
        self._used = {key for item in shown for key in item.keys}
        if not self._preview:
            published.write(self._workspace, {item.address: item.keys for item in shown})
        return made, failed, kept

    def _last_good(self, before: Mapping[str, published.Keys], failed: Failure) -> Prepared | None:
        tags = languages(self._workspace)
        return published.last_good(self._workspace, before, failed.address, tags, sheets=self._sheets)

    def tidy(self) -> None:
        """Remove what earlier runs remembered and this one had no use for."""
        self._cache.sweep()
        sweep(cache_folder(self._workspace), self._used)
        layering.sweep(self._workspace)

    def _prepare(self, progress: Progress | None, *, doubted: bool) -> list[Prepared | Failure]:
        paths = self._workspace.every("vehicles")
        keyed = keys(self._workspace, paths, self._address, self._digests, stock(self._workspace))
        how = {"sheets": self._sheets, "doubted": doubted}
        return prepare(self._workspace, keyed, progress=progress, memory=self._prepared, crew=self._crew, **how)

    def _publish(self, held: Contents, aside: Path) -> None:
        stands, self._standing = self._standing, None  # a failure half way must not be taken for a good state
        frame = self._frame(held)
        if stands and stands.framed.frame == frame and self._out.is_dir():
            pieces = self._pieces(held, stands.framed)
            self._standing = replace(stands, keys=placing.place(self._out, pieces, stands.keys))
        else:
            self._standing = self._afresh(held, frame, aside)

    def _frame(self, held: Contents) -> str:
        day = f"{today():%Y-%m-%d}"  # stands in the site map
        return joined(site.frame(self._workspace.root, self._digests), day, *in_languages.framed(held))

    def _afresh(self, held: Contents, frame: str, aside: Path) -> _Standing:
        """Render aside, or take over what the last build left, then swap."""
        fresh = aside / "fresh"
        if fresh.exists():
            shutil.rmtree(fresh)
        last = last_site.read(self._workspace, self._out)
        framed = last.frame(frame) if site.frame_is_ours(self._workspace.root) else None
        if not framed:
            made = in_languages.rendered(self._workspace.root, held, fresh)
            shells = {edition.place: shells for edition, shells in made.items()}
            framed = Framed(frame, shells, keeping.marked(fresh))
        pieces = self._pieces(held, framed)
        laid = last_site.lay(fresh, framed, pieces, last)
        standing.swap(fresh, self._out, aside)
        if not self._preview:
            last_site.write(self._workspace, laid)
        return _Standing(framed, {name: piece.key for name, piece in pieces.items()})

    def _pieces(self, held: Contents, framed: Framed) -> dict[str, placing.Piece]:
        """Our own files in each language, and the lists of all for those who keep the site on a device."""
        shells = {edition: framed.shells[edition.place] for edition in held}
        return in_languages.pieces(held, shells, framed.marks, self._name)
