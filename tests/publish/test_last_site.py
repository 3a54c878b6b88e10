"""A build takes over what the last one left unchanged, and nothing that anybody touched since."""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from small_site import held, quick, renamed, rendered, silent, tiny

from here import Here
from undertrim.check import one_file, runner
from undertrim.publish.build.building import Builder
from undertrim.publish.web import site
from undertrim.publish.web.content import Content
from undertrim.publish.web.editions import Edition
from undertrim.record.store import Workspace


@pytest.fixture
def place(monkeypatch: pytest.MonkeyPatch) -> Iterator[Workspace]:
    monkeypatch.setattr(site, "render", rendered)
    monkeypatch.setattr(site, "own", lambda _: ("https://undertrim.example/", "Undertrim"))
    monkeypatch.setattr(site, "frame", lambda *_: "frame")
    monkeypatch.setattr(site, "frame_is_ours", lambda _: True)
    monkeypatch.setattr(runner, "look", one_file.neighbour)  # what it finds is not the question here
    with quick() as folder:
        yield tiny(folder / "root")


def build(place: Workspace) -> dict[str, bytes]:
    """Build by a builder that knows nothing but what is on the disk; what the site is then."""
    assert not Builder(place, place.root / "site", sheets=False, crew=Here()).build(silent).report.errors
    return held(place.root / "site")


def inodes(place: Workspace) -> dict[str, int]:
    """The files of the site as the disk knows them."""
    out = place.root / "site"
    return {path.relative_to(out).as_posix(): path.stat().st_ino for path in out.rglob("*") if path.is_file()}


def last(place: Workspace) -> Path:
    return place.root / ".undertrim" / "cache" / "site.json"


def anew(place: Workspace) -> dict[str, bytes]:
    """The site as a build that knows of no other makes it."""
    shutil.rmtree(place.root / "site")
    last(place).unlink()
    return build(place)


def test_what_did_not_change_is_not_written(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    build(place)
    before = inodes(place)
    monkeypatch.setattr(site, "render", lambda *_: pytest.fail("the engine was asked again"))
    build(place)
    assert inodes(place) == before
    renamed(place.files()[0])
    build(place)
    changed = {name for name, inode in inodes(place).items() if before[name] != inode}
    assert "vehicles/brindleway/otter-2014-2018.html" in changed
    assert not [name for name in changed if "wren" in name or "index" in name]


def test_what_was_taken_over_is_the_site_itself(place: Workspace) -> None:
    build(place)
    renamed(place.files()[0])
    over = build(place)
    assert over == anew(place)
    assert {path.stat().st_nlink for path in (place.root / "site").rglob("*") if path.is_file()} == {1}


TOUCHES: dict[str, Callable[[Path], object]] = {
    "another text": lambda path: path.write_text("x"),
    "another text as long": lambda path: path.write_bytes(path.read_bytes()[::-1]),
    "another time": lambda path: os.utime(path, (1, 1)),
    "it is gone": Path.unlink,
    "a link": lambda path: _linked(path),
    "another file as long and as old": lambda path: _swapped(path),
}


def _linked(path: Path) -> None:
    path.unlink()
    path.symlink_to("/etc/hostname")


def _swapped(path: Path) -> None:
    found = path.stat()
    aside = path.with_name("aside")
    aside.write_bytes(path.read_bytes()[::-1])
    os.utime(aside, ns=(found.st_atime_ns, found.st_mtime_ns))
    aside.replace(path)


@pytest.mark.parametrize("name", ["vehicles/brindleway/wren-2014-2018.html", "calculators.html", "finder/start.js"])
@pytest.mark.parametrize("touch", TOUCHES.values(), ids=TOUCHES)
def test_what_somebody_touched_is_made_again(place: Workspace, name: str, touch: Callable[[Path], object]) -> None:
    good = build(place)
    touch(place.root / "site" / name)
    assert build(place) == good
    assert not (place.root / "site" / name).is_symlink()


def test_what_somebody_added_goes(place: Workspace) -> None:
    good = build(place)
    (place.root / "site/vehicles/mine.txt").write_text("x")
    assert build(place) == good


@pytest.mark.parametrize("damage", ["", "x", "{}", '{"a": {"files": 1}}'])
def test_without_what_is_known_all_is_written(place: Workspace, damage: str) -> None:
    good = build(place)
    last(place).write_text(damage)
    assert build(place) == good


def test_a_damaged_cache_does_not_matter_where_nothing_is_taken_from_it(place: Workspace) -> None:
    good = build(place)
    for kept in (place.root / ".undertrim/cache/pages").rglob("body-*"):
        kept.write_text("x")
    assert build(place) == good
    assert anew(place) == good


def test_another_frame_is_made_by_the_engine(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[Path] = []
    build(place)

    def noted(root: Path, held: Content, out: Path, edition: Edition) -> site.Shells:
        asked.append(out)
        return rendered(root, held, out, edition)

    monkeypatch.setattr(site, "render", noted)
    build(place)
    assert asked == []
    monkeypatch.setattr(site, "frame", lambda *_: "another")
    build(place)
    assert len(asked) == 1
    monkeypatch.setattr(site, "frame_is_ours", lambda _: False)
    build(place)
    assert len(asked) == 2


def test_a_disk_without_links_gets_copies(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object) -> None:
        raise OSError("no links here")

    good = build(place)
    monkeypatch.setattr(os, "link", refused)
    assert build(place) == good
    monkeypatch.undo()
