"""Builds the whole site: check, prepare, render aside, then swap, so that a failed build leaves the last good site in place."""

import shutil
import tempfile
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from undertrim.check import runner
from undertrim.check.runner import Report
from undertrim.publish import finder, pages, rule_pages, site
from undertrim.publish.prepare import Prepared, prepare
from undertrim.record.identity import slug
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
    report = runner.check(workspace, (), progress("checking"))
    if report.errors:
        return Built(report, 0, out)
    paths = [path for path in workspace.files() if workspace.kind(path) == "vehicle"]
    made = prepare(workspace, paths, site.address(workspace.root), sheets=sheets, progress=progress("preparing"))
    out.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=out.parent, prefix=".site-") as aside:
        fresh = Path(aside) / "site"
        site.render(workspace.root, content(made), fresh)
        _swap(fresh, out, Path(aside) / "old")
    return Built(report, len(made), out)


def _swap(fresh: Path, out: Path, old: Path) -> None:
    """Put `fresh` in the place of `out`."""
    if out.exists():
        out.rename(old)
    fresh.rename(out)
    shutil.rmtree(old, ignore_errors=True)


def content(made: Sequence[Prepared]) -> site.Content:
    """Everything the site holds besides the handbook."""
    by_make: dict[str, list[Prepared]] = defaultdict(list)
    for item in made:
        by_make[item.summary["make"]].append(item)
    return site.Content(
        bodies={
            "index": _home(by_make),
            **{f"makes/{slug(name)}": _make_page(name, items) for name, items in by_make.items()},
            **{f"vehicles/{item.address}": _vehicle_page(item) for item in made},
        },
        markdown=rule_pages.pages(),
        files=finder.files([finder.row(item.summary) for item in made]),
        copies={f"vehicles/{item.address.split('/')[0]}/{name}": path for item in made for name, path in item.files()},
    )


def _home(by_make: dict[str, list[Prepared]]) -> site.Body:
    makes: list[Mapping[str, Any]] = [
        {"id": slug(name), "name": name, "count": len(items)} for name, items in sorted(by_make.items())
    ]
    demo = all(item.summary["demo"] for items in by_make.values() for item in items)
    return site.Body("Find a vehicle", lambda: pages.home(makes, demo=demo), in_nav=True)


def _make_page(name: str, items: Sequence[Prepared]) -> site.Body:
    vehicles: list[Any] = [item.summary for item in sorted(items, key=_by_model)]
    return site.Body(name, lambda: pages.make(name, vehicles))


def _by_model(item: Prepared) -> tuple[str, int, str]:
    return item.summary["model"], item.summary["first_year"], item.address


def _vehicle_page(item: Prepared) -> site.Body:
    title = f"{item.summary['title']} {item.summary['years']}"
    return site.Body(title, lambda: item.body)
