"""What is remembered says the same as a fresh look, whatever happened to the files or to what was remembered."""

import pickle
import re
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rule_pages import BASE
from three_files import FILES, TEXTS, fresh, looked_at, three_files, workspace

from here import Here
from undertrim.check import one_file, runner
from undertrim.check.cache import UNKEPT, Cache
from undertrim.check.findings import Details
from undertrim.check.kept import details, frozen, thawed
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    return three_files(tmp_path)


EDITS = st.one_of(
    st.tuples(st.just("write"), st.sampled_from(FILES), st.sampled_from(list(TEXTS))),
    st.tuples(st.just("delete"), st.sampled_from(FILES), st.just("")),
    st.tuples(st.just("rename"), st.sampled_from(FILES), st.sampled_from([path.stem for path in FILES])),
    st.tuples(st.just("damage"), st.just(FILES[0]), st.sampled_from(["", "{}", "[1]", "x"])),
)


def edit(place: Workspace, cache: Cache, what: str, path: Path, how: str) -> None:
    target = place.root / path
    if what == "write":
        target.write_text(TEXTS[how], encoding="utf-8")
    elif what == "damage":
        for kept in (*cache.folder.glob("*"), *cache.folder.parent.glob("*.json")):
            kept.write_text(how)
    elif target.exists():
        target.unlink() if what == "delete" else target.rename(target.with_stem(how))


@settings(max_examples=40, deadline=None)
@given(st.lists(EDITS, min_size=1, max_size=8))
def test_remembering_changes_nothing(edits: list[tuple[str, Path, str]]) -> None:
    """After every edit a check with memory, one from the disk alone and one with neither agree."""
    with tempfile.TemporaryDirectory() as folder:
        place = workspace(Path(folder))
        living = Cache(place)
        for change in edits:
            edit(place, living, *change)
            plain = runner.check(place, crew=Here())
            for cache in (living, Cache(place)):
                assert runner.check(place, (), None, cache, Here()) == plain
                cache.save()


def test_only_what_changed_is_looked_at_again(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    seen = looked_at(monkeypatch)
    runner.check(place, (), None, Cache(place), Here())
    assert seen == [path.stem for path in FILES]
    seen.clear()
    runner.check(place, (), None, Cache(place), Here())
    assert seen == []
    later = (place.root / FILES[1]).read_text(encoding="utf-8")
    (place.root / FILES[1]).write_text(f"{later}# changed\n", encoding="utf-8")
    runner.check(place, (), None, Cache(place), Here())
    assert seen == [FILES[1].stem]


def test_one_file_uses_what_is_known_of_its_neighbours(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    runner.check(place, (), None, Cache(place), Here())
    seen = looked_at(monkeypatch)
    monkeypatch.setattr(runner, "neighbour", lambda entry: pytest.fail(f"{entry.id} was read again"))
    one = [place.root / FILES[1]]
    assert runner.check(place, one, None, Cache(place), Here()).problems
    assert seen == []


def test_a_neighbour_is_read_once_and_never_taken_for_checked(
    place: Workspace, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = [place.root / FILES[0]]
    assert runner.check(place, one, None, Cache(place), Here()) == runner.check(place, one)
    with monkeypatch.context() as patch:
        patch.setattr(runner, "neighbour", lambda entry: pytest.fail(f"{entry.id} was read again"))
        assert runner.check(place, one, None, Cache(place), Here()).problems
    assert runner.check(place, (), None, Cache(place), Here()) == runner.check(place)


def test_a_folder_that_cannot_be_written_is_no_obstacle(place: Workspace) -> None:
    cache = Cache(place)
    cache.folder.parent.mkdir(parents=True)
    cache.folder.write_text("in the way")
    assert runner.check(place, (), None, cache, Here()) == runner.check(place)


def test_everything_comes_back_as_it_was() -> None:
    place = Workspace(ROOT)
    for path in place.files():
        found = one_file.look(place.load(path))
        brief, more = frozen(found)
        assert found.card
        assert thawed(brief, path, found.path, Details) == found
        assert details(more) == found.card.details


def test_a_worker_gets_none_of_the_memory(place: Workspace) -> None:
    cache = Cache(place)
    runner.check(place, (), None, cache, Here())
    assert len(cache._memory) == len(FILES)
    assert pickle.loads(pickle.dumps(cache))._memory == {}  # noqa: S301 - made on the line itself


def test_the_rules_do_not_ask_for_the_day() -> None:
    """What is remembered would be wrong the next day: below `publish` only a rule whose word is not kept looks at the calendar."""
    package = ROOT / "generator" / "undertrim"
    for layer in ("check", "derive", "record"):
        for path in (package / layer).rglob("*.py"):
            text = path.read_text(encoding="utf-8")
            asks = re.search(r"today\(\)|\.now\(", text) is not None
            assert not asks or path.stem.replace("_", "-") in UNKEPT, path


def test_the_cache_is_not_for_others_to_read(place: Workspace) -> None:
    """It holds no path of this machine."""
    runner.check(place, (), None, Cache(place), Here())
    assert all(str(place.root) not in kept.read_text(encoding="utf-8") for kept in fresh(Cache(place)))


def test_it_serves_from_any_folder(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    """Files are named relative to where one stands, and so is the command that renames one."""
    found = []
    (place.root / FILES[2]).write_text(BASE, encoding="utf-8")
    for folder in (place.root, place.records):
        monkeypatch.chdir(folder)
        report = runner.check(place, (), None, Cache(place), Here())
        assert report == runner.check(place)
        found.append(report)
    assert found[0] != found[1]
    assert "file-name" in {problem.rule for problem in found[0].problems}
