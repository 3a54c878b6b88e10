"""A workspace of three vehicles, a folder for it that is quick, and a stand-in for the site engine that makes three files in no time."""

import os
import re
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from rule_pages import BASE

from undertrim.publish.web import rule_pages, shells, site
from undertrim.publish.web.content import Content
from undertrim.publish.web.editions import FIRST, Edition
from undertrim.record import photo_files
from undertrim.record.store import Workspace
from undertrim.words import Value

ROOT = Path(__file__).parents[2]


_MEMORY = Path("/dev/shm")  # noqa: S108 - the folder made there is ours alone


@contextmanager
def quick() -> Iterator[Path]:
    """A folder in memory where Linux has room for it: to remove a folder from a disk can take longer than a build of a small site."""
    usable = os.access(_MEMORY, os.W_OK) and shutil.disk_usage(_MEMORY).free > 50_000_000
    with TemporaryDirectory(dir=_MEMORY if usable else None) as folder:
        yield Path(folder).resolve()


def tell_of_few_rules(patch: pytest.MonkeyPatch) -> None:
    """The engine makes pages of two rules, where it would spend nine tenths of its time on a hundred more of the same sort."""
    chosen = ("rules/file-name", "rules/order-cycle", "reference/index")
    told = rule_pages.pages()
    patch.setattr(rule_pages, "pages", lambda: {"rules/index": "# Rules\n"} | {path: told[path] for path in chosen})


def silent(_: Value) -> None:
    return None


def held(folder: Path) -> dict[str, bytes]:
    """Everything in a folder by its name; the site map's compressed copy holds its own time."""
    files = (path for path in folder.rglob("*") if path.is_file() and path.name != "sitemap.xml.gz")
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}


def workspace(root: Path, number: int = 3) -> Workspace:
    """The smallest vehicle records of this repository that neither follow another nor take from one, with a handbook of one page."""
    vehicles = sorted((ROOT / "records/vehicles").rglob("*.yaml"), key=lambda path: path.stat().st_size)
    chosen = [path for path in vehicles if not re.search(r"\n(  follows|shares):", path.read_text(encoding="utf-8"))]
    for path in chosen[:number]:
        target = root / path.relative_to(ROOT)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(path, target)
        if (photos := photo_files.folder(path)).is_dir():
            shutil.copytree(photos, photo_files.folder(target))
    (root / "records/handbook").mkdir(parents=True)
    (root / "records/handbook/about.md").write_text("# About\n", encoding="utf-8")
    return Workspace(root)


def tiny(root: Path) -> Workspace:
    """Two records as short as they can be."""
    folder = root / "records/vehicles/brindleway"
    folder.mkdir(parents=True)
    for model in ("Otter", "Wren"):
        text = BASE.replace("model: Otter", f"model: {model}")
        (folder / f"{model.lower()}-2014-2018.yaml").write_text(text, encoding="utf-8")
    return Workspace(root)


def renamed(path: Path, old: str = "name: ", new: str = "name: New ") -> None:
    """Change a record so that its page says something else."""
    path.write_text(path.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")


def rendered(root: Path, content: Content, out: Path, edition: Edition = FIRST) -> Mapping[str, shells.Shell]:
    """What `site.render` leaves, without the engine: a page of each body in the navigation, and shells."""
    for path, body in content.framed.items():
        target = out / f"{edition.place}{path}.html"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(body.html(), encoding="utf-8")
    groups = set(map(shells.group, content.shelled))
    return {group: shells.Shell(group, f"<title>{shells.TITLE}</title>{shells.BODY}") for group in groups}


assert rendered.__annotations__.keys() == site.render.__annotations__.keys()
