"""What is not remembered, or no longer: after changes of files, of the program and of what a record rests on."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from rule_pages import BASE
from three_files import FILES, HOME, TEXTS, fresh, looked_at, three_files

from here import Here
from undertrim.check import one_file, runner
from undertrim.check.cache import Cache
from undertrim.check.one_file import Looked
from undertrim.check.register import RECORD_RULES
from undertrim.record.digests import SETTLED, Digests
from undertrim.record.store import Workspace


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    return three_files(tmp_path)


def test_another_program_forgets(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    runner.check(place, (), None, Cache(place), Here())
    seen = looked_at(monkeypatch)
    other = Cache(place)
    other.program = "another"
    runner.check(place, (), None, other, Here())
    assert len(seen) == len(FILES)


def test_a_moved_file_is_looked_at_again(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    runner.check(place, (), None, Cache(place), Here())
    elsewhere = place.records / "gear" / "kits" / FILES[0].name
    elsewhere.parent.mkdir(parents=True)
    (place.root / FILES[0]).rename(elsewhere)
    seen = looked_at(monkeypatch)
    assert runner.check(place, (), None, Cache(place), Here()) == runner.check(place)
    assert FILES[0].stem in seen


def test_a_link_is_never_remembered(place: Workspace, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside") / "x.yaml"
    outside.write_text(BASE)
    link = place.root / HOME / "linked.yaml"
    link.symlink_to(outside)
    for _ in range(2):
        problems = runner.check(place, (), None, Cache(place), Here()).problems
        assert [problem.message for problem in problems if problem.file.stem == "linked"] == [
            "the file is a link out of the records, or to itself"
        ]
    assert len(fresh(Cache(place))) == len(FILES)


def test_a_crash_is_not_remembered(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    crash = RECORD_RULES["side-word"]
    monkeypatch.setattr(crash, "check", lambda _: 1 / 0)
    assert "crash" in {problem.rule for problem in runner.check(place, (), None, Cache(place), Here()).problems}
    monkeypatch.undo()
    assert runner.check(place, (), None, Cache(place), Here()) == runner.check(place)


def test_a_file_that_changes_under_the_look_is_not_remembered(place: Workspace) -> None:
    path, cache = place.root / FILES[0], Cache(place)

    def slow() -> Looked:
        found = one_file.look(place.load(path))
        path.write_text(TEXTS["empty"], encoding="utf-8")
        return found

    cache.keep(place, path, slow)
    assert not cache.folder.exists()


@pytest.mark.parametrize("change", [lambda p: p.write_text("b"), lambda p: p.unlink()])
def test_a_file_without_settled_times_is_read_again(tmp_path: Path, change: Callable[[Path], object]) -> None:
    """The write keeps size and, by `utime`, the time; the digest must not be the old one."""
    path, digests = tmp_path / "x", Digests()
    path.write_text("a")
    before, times = digests.of(path), path.stat()
    assert digests.ledger.get(str(path)) is None
    change(path)
    if path.exists():
        os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
        assert digests.of(path) != before
    else:
        with pytest.raises(FileNotFoundError):
            digests.of(path)


def test_a_settled_file_is_not_read_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path, digests = tmp_path / "x", Digests()
    path.write_text("a")
    monkeypatch.setattr("time.time", lambda: path.lstat().st_ctime + SETTLED + 1)
    known = digests.of(path)
    monkeypatch.setattr(Path, "read_bytes", lambda _: pytest.fail("read again"))
    assert digests.of(path) == known


def test_a_record_is_looked_at_again_when_one_that_it_takes_from_changes(place: Workspace) -> None:
    """Both what is said of it and what it needs not be told: the fault over there is mended there."""
    other = place.root / FILES[2]
    taking = BASE.partition("parts:")[0].replace("format: 1", "format: 2").replace("Otter", "Vole")
    shares = "shares:\n  wren-2014-2018: {preps: all, parts: all, openings: all}\n"
    (place.root / HOME / "vole-2014-2018.yaml").write_text(taking.partition("preps:")[0] + shares, encoding="utf-8")

    def told() -> set[str]:
        found = runner.check(place, cache=Cache(place)).problems
        assert found == runner.check(place).problems
        return {item.message for item in found if item.file.stem == "vole-2014-2018"}

    before = told()
    other.write_text(other.read_text("utf-8").replace("release: slide", "release: slyde"), encoding="utf-8")
    assert told() != before
    assert any("faults of its own" in said for said in told())
