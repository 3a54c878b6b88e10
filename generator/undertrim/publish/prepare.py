"""Prepares what each vehicle publishes: page body, data, sheets. Work already done for the same record and program is reused."""

import hashlib
import json
import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import UTC, date, datetime
from functools import cache, partial
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.publish import facts, pages, pdf
from undertrim.publish.sheet import Paper
from undertrim.record.store import Workspace

PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}
FEW = 4
"""With fewer vehicles than this to prepare, starting more processes is not worth it."""

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Prepared:
    """One vehicle's files in the cache and the few facts that other pages need."""

    address: str
    folder: Path
    summary: Mapping[str, Any]

    @property
    def body(self) -> str:
        """The page body."""
        return (self.folder / "body.html").read_text(encoding="utf-8")

    def files(self) -> Iterator[tuple[str, Path]]:
        """Files beside the page by their ending: data and sheets."""
        for path in sorted(self.folder.iterdir()):
            if path.name.startswith("beside-"):
                yield path.name.removeprefix("beside-"), path


_SUMMARY = (
    "address",
    "id",
    "make",
    "model",
    "years",
    "first_year",
    "last_year",
    "phase",
    "built",
    "bodies",
    "also_called",
    "demo",
    "title",
)


def prepare(
    workspace: Workspace, paths: Sequence[Path], site_url: str, *, sheets: bool, progress: Progress | None
) -> list[Prepared]:
    """Prepare the vehicles at `paths`, in parallel when there are several."""
    work = partial(_prepare, workspace, site_url=site_url, sheets=sheets)
    if len(paths) < FEW:
        return list(_counted(map(work, paths), len(paths), progress))
    with ProcessPoolExecutor(max_workers=os.cpu_count()) as pool:
        return list(_counted(pool.map(work, paths, chunksize=max(1, min(16, len(paths) // 8))), len(paths), progress))


def _counted(results: Iterator[Prepared], total: int, progress: Progress | None) -> Iterator[Prepared]:
    for number, item in enumerate(results, 1):
        if progress:
            progress(number, total)
        yield item


def _prepare(workspace: Workspace, path: Path, *, site_url: str, sheets: bool) -> Prepared:
    folder = cache_folder(workspace) / _key(path, site_url)
    done = folder / ("summary-sheets.json" if sheets else "summary.json")
    if not done.exists():
        _make(workspace, path, folder, site_url, sheets=sheets)
    summary = json.loads(done.read_text(encoding="utf-8"))
    return Prepared(summary["address"], folder, summary)


def _make(workspace: Workspace, path: Path, folder: Path, site_url: str, *, sheets: bool) -> None:
    """Write a vehicle's files; the summary comes last, so that a half-made folder is never taken for done."""
    folder.mkdir(parents=True, exist_ok=True)
    made = facts.vehicle(workspace.load(path), today())
    stem = made["id"]
    (folder / "body.html").write_text(pages.vehicle(made), encoding="utf-8")
    (folder / f"beside-{stem}.json").write_text(json.dumps(made, ensure_ascii=False, indent=1), encoding="utf-8")
    if sheets:
        url = f"{site_url.rstrip('/')}/vehicles/{made['address']}.html"
        for name, paper in PAPERS.items():
            (folder / f"beside-{stem}-{name}.pdf").write_bytes(pdf.render(made, url, paper, today()))
    summary = json.dumps({key: made[key] for key in _SUMMARY}, ensure_ascii=False)
    for name in ("summary.json", *(["summary-sheets.json"] if sheets else [])):
        (folder / name).write_text(summary, encoding="utf-8")


def today() -> date:
    """The day of the build; SOURCE_DATE_EPOCH overrides it for reproducible builds."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    return datetime.fromtimestamp(int(epoch), UTC).date() if epoch else date.today()


def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache"


def _key(path: Path, site_url: str) -> str:
    """Changes with the record's place and content, the site's address, the program itself and, for the ages, the month."""
    digest = hashlib.sha256(path.read_bytes())
    for part in ("/".join(path.parts[-2:]), site_url, _program(), today().strftime("%Y-%m")):
        digest.update(b"\0" + part.encode())
    return digest.hexdigest()[:32]


@cache
def _program() -> str:
    """A digest of our own files: code, templates, data tables, schemas."""
    digest = hashlib.sha256()
    for folder in (resources.inside(), resources.top("schema")):
        for path in sorted(folder.rglob("*")):
            if path.is_file() and path.suffix in (".py", ".toml", ".json", ".j2", ".typ"):
                digest.update(path.name.encode() + path.read_bytes())
    return digest.hexdigest()
