"""What a review finds of several records together is what a check of everything would find on one side and not on the other, though few are read for it."""

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from undertrim.check import reviewing, together
from undertrim.check.across import across
from undertrim.check.one_file import Looked, neighbour
from undertrim.check.runner import settled_across
from undertrim.record.history.base import base
from undertrim.record.problem import Problem
from undertrim.record.store import Workspace
from undertrim.words import sentence

ROOT = Path(__file__).parent.parent.parent
FINCH = "vehicles/kelbrook/finch-2014-2018.yaml"
SEDGE = "vehicles/harrowby/sedge-2011-2016.yaml"
OTTER = "vehicles/brindleway/otter-2014-2018.yaml"
STOAT = "vehicles/brindleway/stoat-2014-2018.yaml"
PLUG = """connectors:
  last-plug:
    name: Last plug
    view: wires
    rows: 1
    columns: 2
    latch: top
    numbering: rows
    starts: top-left
    pins:
      1: {colour: red, function: switched-feed}
    source: e1
"""
PIER = "gear/speakers/skerrowe-pier-65.yaml"
HARNESS = "gear/harnesses/skerrowe-h-f14.yaml"
SHIPPED = ("vehicles/kelbrook", "vehicles/harrowby", "gear/kits")

Told = set[tuple[str, str, str]]


def edit(root: Path, name: str, *changes: tuple[str, str], to: str = "") -> None:
    text = (root / "records" / name).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    target = root / "records" / (to or name)
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(text, encoding="utf-8")


def drop(root: Path, name: str) -> None:
    (root / "records" / name).unlink()


def copied(root: Path, name: str, to: str, *changes: tuple[str, str]) -> None:
    """A copy that somebody else saw, without the stamp."""
    edit(root, name, *changes, to=to)
    path = root / "records" / to
    text = re.split(r"^verified:", path.read_text(encoding="utf-8"), flags=re.MULTILINE)[0]
    path.write_text(re.sub(r"by: \w+", "by: xq9", text), encoding="utf-8")


CHANGES: dict[str, tuple[str, Callable[[Path], object]]] = {
    "a copy under quite another name": (
        "record-copied",
        lambda root: copied(root, FINCH, "vehicles/vantry/moss-2014-2018.yaml", ("make: Kelbrook", "make: Vantry"), ("model: Finch", "model: Moss")),
    ),
    "one look in two records": (
        "evidence-twice",
        lambda root: edit(root, OTTER, ("make: Brindleway", "make: Vantry"), ("model: Otter", "model: Moss"), ("name: Factory radio", "name: The radio"), ("{width: 182 mm", "{width: 183 mm"), to="vehicles/vantry/moss-2014-2018.yaml"),
    ),
    "a make that is a slip": (
        "vehicle-twice",
        lambda root: copied(root, OTTER, OTTER.replace("way", "wey"), ("make: Brindleway", "make: Brindlewey"), ("model: Otter", "model: Lutra")),
    ),
    "phases that are alike": (
        "phases-alike",
        lambda root: edit(
            root, OTTER, ("{from: 2014-01, to: 2018-01}", "{from: 2018-01, to: 2021-01}"), ("on: 2026-03-02", "on: 2026-03-03"), to=OTTER.replace("2014-2018", "2018-2021")
        ),
    ),
    "months that overlap": ("overlapping-records", lambda root: edit(root, SEDGE, ("to: 2016-07", "to: 2016-09"))),
    "what another one follows goes": ("gap-after-neighbour", lambda root: drop(root, SEDGE)),
    "what one of another name follows goes": ("gap-after-neighbour", lambda root: drop(root, OTTER)),
    "called as another one is called too": ("vehicle-twice", lambda root: edit(root, OTTER, ("model: Otter", "model: Lutra"))),
    "the last of two cars with the plug that gear names loses it": (
        "gear-names-absent",
        lambda root: edit(root, STOAT, ("  last-plug:", "  other-plug:")),
    ),
    "gear twice": ("gear-twice", lambda root: edit(root, PIER, ("model: Pier 65", "model: Pier-65"), to=PIER.replace("65", "65-b"))),
    "a vehicle goes that gear names": ("gear-names-absent", lambda root: drop(root, FINCH)),
    "gear names a vehicle that is none": ("gear-names-absent", lambda root: edit(root, HARNESS, ("finch-2014-2018", "finch-2014-2019"))),
    "a plug has another name": ("gear-names-absent", lambda root: edit(root, HARNESS, ("radio-main", "main-radio"))),
    "a pin has another function": ("harness-mismatch", lambda root: edit(root, HARNESS, ("5: {function: antenna-feed", "5: {function: switched-feed"))),
    "a wire of the car has": ("harness-mismatch", lambda root: edit(root, FINCH, ("function: antenna-feed", "function: illumination"))),
    "an allow that hides it": (
        "",
        lambda root: edit(root, PIER, ("model: Pier 65", "model: Pier-65 # undertrim: allow gear-twice (another colour)"), to=PIER.replace("65", "65-b")),
    ),
}  # fmt: skip


def otter_and_stoat(root: Path) -> None:
    (root / "records" / OTTER).parent.mkdir()
    text = (Path(__file__).parent / "base.yaml").read_text(encoding="utf-8")
    (root / "records" / OTTER).write_text(text, encoding="utf-8")
    edit(
        root,
        OTTER,
        ("model: Otter", "model: Stoat\n  follows: otter-2014-2018\n  also_called: [Lutra]"),
        to=STOAT,
    )
    (root / "records" / STOAT).write_text(
        (root / "records" / STOAT).read_text(encoding="utf-8").replace("by: rk", "by: tw") + PLUG, encoding="utf-8"
    )
    places = ", ".join(f"{{vehicle: brindleway/{name}-2014-2018, opening: dash}}" for name in ("otter", "stoat"))
    edit(
        root,
        HARNESS,
        ("model: H-F14", "model: H-O14"),
        ("radio-main", "last-plug"),
        ("[{vehicle: kelbrook/finch-2014-2018, opening: dash}]", f"[{places}]"),
        to=HARNESS.replace("f14", "o14"),
    )


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Some shipped records, and two invented cars of one make with gear for both."""
    root = tmp_path_factory.mktemp("together") / "before"
    for folder in SHIPPED:
        shutil.copytree(ROOT / "records" / folder, root / "records" / folder)
    for name in (PIER, HARNESS):
        (root / "records" / name).parent.mkdir()
        shutil.copy(ROOT / "records" / name, root / "records" / name)
    otter_and_stoat(root)
    return root


def whole(root: Path, monkeypatch: pytest.MonkeyPatch) -> Told:
    """What a check of everything says, from within its folder."""
    monkeypatch.chdir(root)
    place = Workspace(root)
    looked = [neighbour(place.load(path)) for path in place.files()]
    said = across(looked)
    return told(tuple(problem for one in looked for problem in settled_across(one, said.of(one))))


def told(problems: tuple[Problem, ...]) -> Told:
    return {(one.file.as_posix(), one.rule, sentence(one.said)) for one in problems}


@pytest.mark.parametrize("name", CHANGES)
def test_a_review_finds_what_a_check_of_everything_finds_on_one_side_alone(
    shop: Path, tmp_path: Path, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    rule, change = CHANGES[name]
    after = tmp_path / "after"
    shutil.copytree(shop, after)
    change(after)
    was, is_ = whole(shop, monkeypatch), whole(after, monkeypatch)
    assert {one for _, one, _ in is_ - was} >= ({rule} - {""})
    for here, other, new, gone in ((after, shop, is_ - was, was - is_), (shop, after, was - is_, is_ - was)):
        monkeypatch.chdir(here)
        held = tmp_path / f"held-{here.name}"
        held.mkdir()
        found = reviewing.review(Workspace(here), base(Workspace(here), str(other), held))
        assert (told(found.found), told(found.mended)) == (new, gone)


def test_what_no_changed_record_can_meet_is_not_read(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    after = tmp_path / "after"
    shutil.copytree(shop, after)
    edit(after, FINCH, ("name: Upper vent trim", "name: Top vent trim"))
    asked: list[Path] = []

    def reading(here: Workspace, path: Path) -> Looked:
        asked.append(path)
        return neighbour(here.load(path))

    monkeypatch.setattr(together, "_neighbour", reading)
    reviewing.review(Workspace(after), base(Workspace(after), str(shop), tmp_path))
    assert asked == []
