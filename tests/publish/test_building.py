"""A site is what the engine alone would make of it, and a second build into it is what a first build would make."""

# Long because each way of building is held against one into an empty folder.

import json
import os
import re
import shutil
from collections.abc import Iterator, Mapping
from functools import cached_property
from pathlib import Path

import pytest
from small_site import held, quick, renamed, silent, tell_of_few_rules, workspace

from here import Here
from undertrim.publish.build.building import Builder, build
from undertrim.publish.web import placing, shells, site
from undertrim.publish.web.content import Body, Content
from undertrim.publish.web.sitemap import expanded
from undertrim.record.store import Workspace

HOSTILE = '</title><script>alert(1)</script> & "it\'s" &lt;b&gt;'


@pytest.fixture(scope="module", autouse=True)
def few_rules() -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        tell_of_few_rules(patch)
        yield


@pytest.fixture(scope="module")
def records(few_rules: None) -> Iterator[Path]:
    """A small workspace with a remembered first build."""
    with quick() as root:
        build(workspace(root), root / "warm", sheets=False, progress=silent)
        yield root


@pytest.fixture
def folder() -> Iterator[Path]:
    with quick() as found:
        yield found


@pytest.fixture
def place(records: Path, folder: Path) -> Workspace:
    for name in ("records", ".undertrim"):
        shutil.copytree(records / name, folder / name)
    return Workspace(folder)


def vehicles(place: Workspace) -> list[Path]:
    return place.files()


class Plain(Content):
    """The same content with every body given to the engine, as a page like any other."""

    @cached_property
    def framed(self) -> Mapping[str, Body]:
        return self.bodies

    @cached_property
    def shelled(self) -> Mapping[str, Body]:
        return {}


def fixed(title: str, html: str, *, in_nav: bool = False) -> Body:
    return Body(title, lambda: html, html, in_nav)


def test_shells_give_what_the_engine_gives(place: Workspace, folder: Path) -> None:
    """Oracle: the pages as MkDocs itself renders them one by one."""
    bodies = {
        "index": fixed("Find a vehicle", "home", in_nav=True),
        "makes/one": fixed("One", "<p>of one</p>"),
        "makes/two": fixed("Two & sons", "<p>of two</p>"),
        "vehicles/one/a": fixed("Car A 2014-2018", "<p>undertrim-specimen-title \\1 {{ x }}</p>"),
        "vehicles/two/b": fixed("undertrim-specimen-body", "<p>of b</p>"),
    }
    content = Content(bodies)
    site.render(place.root, Plain(bodies), folder / "plain")
    made = site.render(place.root, content, folder / "shelled")
    placing.place(folder / "shelled", placing.pieces(content, made), {})
    plain, ours = held(folder / "plain"), held(folder / "shelled")
    assert plain.keys() == ours.keys()
    assert [name for name in plain if _unordered(plain[name]) != _unordered(ours[name])] == []


def _unordered(raw: bytes) -> object:
    """A page as it is; the site map without the order of its entries."""
    return sorted(re.findall(rb"<loc>.*?</loc>", raw)) if b"<urlset" in raw[:200] else raw


def test_a_hostile_title_stays_a_title(place: Workspace, folder: Path) -> None:
    content = Content({"makes/one": fixed(HOSTILE, "<p>body</p>")})
    made = site.render(place.root, content, folder / "out")
    placing.place(folder / "out", placing.pieces(content, made), {})
    page = (folder / "out/makes/one.html").read_text(encoding="utf-8")
    assert "<script>alert(1)" not in page
    assert "&lt;/title&gt;&lt;script&gt;" in page


def edits(place: Workspace) -> Iterator[str]:
    """One change after another, each leaving records without errors."""
    first, *others = vehicles(place)
    text = first.read_text(encoding="utf-8")
    first.write_text(f"{text}# changed\n", encoding="utf-8")
    yield "a comment"
    first.write_text(re.sub(r"(?m)^  make: .*$", "  make: Zanderlow", text), encoding="utf-8")
    moved = place.records / "vehicles" / "zanderlow" / first.name
    moved.parent.mkdir()
    first.rename(moved)
    yield "another make"
    others[-1].unlink()
    yield "one less"
    (place.records / "handbook/about.md").write_text("# About us\n", encoding="utf-8")
    yield "the handbook"


def test_building_again_is_building(place: Workspace, folder: Path) -> None:
    """For a preview that builds on, for a build over what the last one left, and for one into an empty folder."""
    preview = Builder(place, folder / "again", sheets=False, crew=Here(), preview=True)
    assert not preview.build(silent).report.problems
    last = place.root / ".undertrim" / "cache" / "site.json"
    build(place, folder / "over", sheets=False, progress=silent)
    for edit in edits(place):
        assert not preview.build(silent).report.problems, edit
        build(place, folder / "over", sheets=False, progress=silent)
        known = last.read_bytes()
        build(place, folder / "anew", sheets=False, progress=silent)
        last.write_bytes(known)
        anew = held(folder / "anew")
        for other in (held(folder / "again"), held(folder / "over")):
            assert [name for name in other.keys() | anew.keys() if other.get(name) != anew.get(name)] == [], edit


def test_only_the_page_that_changed_is_written(place: Workspace, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    builder.build(silent)
    before = {path: path.stat().st_ino for path in (folder / "out").rglob("*") if path.is_file()}
    path = vehicles(place)[0]
    renamed(path)
    monkeypatch.setattr(site, "render", lambda *_: pytest.fail("the whole site was built"))
    builder.build(silent)
    changed = {path.name for path, inode in before.items() if path.stat().st_ino != inode}
    made = ("html", "record.html", "json", "facts.js")  # the others do not say what changed
    lists = ("list.json", f"{path.parent.name}.json")  # what a device keeps of all, and of the make
    assert changed == {*(f"{path.stem}.{ending}" for ending in made), *lists}  # the page of the make says nothing of it


def test_what_is_known_of_files_is_written_down_at_first_and_when_it_is_left(place: Workspace, folder: Path) -> None:
    cache = place.root / ".undertrim" / "cache"
    told = [cache / "check.json", cache / "pages.json"]
    with Builder(place, folder / "out", sheets=False, crew=Here()) as builder:
        builder.build(silent)
        first = [path.read_bytes() for path in told]
        renamed(vehicles(place)[0])
        builder.build(silent)
        assert [path.read_bytes() for path in told] == first
    left = [json.loads(path.read_bytes().partition(b"\n")[2]) for path in told]
    for before, after in zip(first, left, strict=True):
        known = json.loads(before.partition(b"\n")[2])
        assert known.keys() != after.keys()
        assert len(known) == len(after)  # what is no longer so is dropped


def test_after_a_failure_everything_is_built(place: Workspace, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    builder.build(silent)
    path = vehicles(place)[0]
    renamed(path)
    monkeypatch.setattr(placing, "_put", _full)
    with pytest.raises(OSError, match="full"):
        builder.build(silent)
    monkeypatch.undo()
    builder.build(silent)
    build(place, folder / "anew", sheets=False, progress=silent)
    assert held(folder / "out") == held(folder / "anew")


def test_a_cleared_cache_is_filled_again(place: Workspace, folder: Path) -> None:
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    builder.build(silent)
    shutil.rmtree(place.root / ".undertrim")
    (place.records / "handbook/about.md").write_text("# About us\n", encoding="utf-8")
    assert builder.build(silent).vehicles == 3
    assert "About us" in (folder / "out/about.html").read_text(encoding="utf-8")


def _full(*_: object) -> None:
    raise OSError("the disk is full")


def test_errors_leave_the_site_as_it_is(place: Workspace, folder: Path) -> None:
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    builder.build(silent)
    before = held(folder / "out")
    path = vehicles(place)[0]
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("name: ", "nam: ", 1), encoding="utf-8")
    assert builder.build(silent).report.errors
    assert held(folder / "out") == before
    path.write_text(text, encoding="utf-8")
    assert not builder.build(silent).report.errors
    assert held(folder / "out") == before


def test_remembered_pages_are_used(place: Workspace, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("undertrim.publish.facts.vehicle.in_each", lambda *_: pytest.fail("worked out again"))
    assert build(place, folder / "out", sheets=False, progress=silent).vehicles == 3


def test_a_mark_in_what_fills_a_gap_is_text() -> None:
    shell = shells.Shell("a/1", f"{shells.TITLE}|{shells.BODY}|a/{shells.STEP}.html")
    assert shell.page("a/b c", shells.BODY, shells.TITLE) == f"{shells.BODY}|{shells.TITLE}|a/b%20c.html"


@pytest.mark.parametrize("text", ["", "<urlset></urlset>", "<url><loc>https://x/other.html</loc></url>"])
def test_a_site_map_without_the_specimen_stays(text: str) -> None:
    assert expanded(text, "a/s", ["a/1"]) == text


def test_a_site_map_lists_every_page_in_place_of_the_specimen() -> None:
    entry = "<url>\n <loc>https://x/{}.html</loc>\n</url>"
    text = "".join(entry.format(name) for name in ("index", "a/s", "z"))
    assert expanded(text, "a/s", ["a/1", "a/ü&"]) == "".join(
        entry.format(name) for name in ("index", "a/1", "a/%C3%BC%26", "z")
    )


def test_what_is_no_longer_used_goes_after_a_day(place: Workspace, folder: Path) -> None:
    builder = Builder(place, folder / "out", sheets=False, crew=Here())
    builder.build(silent)
    cache = place.root / ".undertrim" / "cache"
    used = set(cache.rglob("*"))
    old, new, stale = cache / "pages" / "old", cache / "pages" / "new", cache / "check" / "stale"
    old.mkdir()
    new.mkdir()
    stale.write_text("")
    for path in [path for path in cache.glob("*/*") if path != new]:
        os.utime(path, (0, 0))
    builder.tidy()
    assert set(cache.rglob("*")) == used | {new}
