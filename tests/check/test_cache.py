"""What is remembered says the same as a fresh look, whatever happened to the files or to what was remembered."""

import os
import pickle
import re
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rule_pages import BASE

from here import Here
from undertrim.check import one_file, runner
from undertrim.check.cache import UNKEPT, Cache
from undertrim.check.kept import frozen, thawed
from undertrim.check.one_file import Looked
from undertrim.check.register import RECORD_RULES
from undertrim.record.digests import SETTLED, Digests
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
HOME = Path("records/vehicles/brindleway")
TEXTS = {
    "good": BASE,
    "late": BASE.replace("{from: 2014-01, to: 2018-01}", "{from: 2017-01, to: 2020-01}"),
    "no count": BASE.replace("{screw: T20, count: 4}", "{screw: T20}"),
    "allowed": BASE.replace(
        "    held_by: [{screw: T20, count: 4}]", "    held_by: [{screw: T20}] # allow fastener-without-count: unseen"
    ),
    "allowed overlap": BASE.replace("  built:", "  # allow overlapping-records: two plants\n  built:"),
    "useless allow": BASE.replace("format: 1", "format: 1 # allow side-word: none"),
    "misspelt": BASE.replace("takes: 3 min", "taks: 3 min"),
    "no vehicle": BASE.replace("  high_voltage: no", "  high_voltage: maybe"),
    "not yaml": f"{BASE}a: [",
    "empty": "",
}
FILES = [HOME / f"{stem}.yaml" for stem in ("otter-2014-2018", "otter-2016-2020", "wren-2014-2018")]


def workspace(root: Path) -> Workspace:
    (root / HOME).mkdir(parents=True)
    return Workspace(root)


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    """Three files under their right names: one good, one that overlaps with it, one with a fault of its own."""
    made = workspace(tmp_path)
    later = BASE.replace("{from: 2014-01, to: 2018-01}", "{from: 2016-01, to: 2020-01}")
    for path, text in zip(FILES, (BASE, later, TEXTS["no count"].replace("Otter", "Wren")), strict=True):
        (tmp_path / path).write_text(text, encoding="utf-8")
    return made


def fresh(cache: Cache) -> list[Path]:
    return sorted(cache.folder.iterdir())


def looked_at(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Notes the files that are really looked at."""
    seen: list[str] = []

    def note(entry: object) -> Looked:
        seen.append(entry.id)  # type: ignore[attr-defined]
        return one_file.look(entry)  # type: ignore[arg-type]

    monkeypatch.setattr(runner, "look", note)
    return seen


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
        for kept in cache.folder.glob("*"):
            kept.write_text(how)
    elif target.exists():
        target.unlink() if what == "delete" else target.rename(target.with_stem(how))


@settings(max_examples=40, deadline=None)
@given(st.lists(EDITS, min_size=1, max_size=8))
def test_remembering_changes_nothing(edits: list[tuple[str, Path, str]]) -> None:
    """After every edit a check with memory, one from the disk alone and one with neither agree."""
    with tempfile.TemporaryDirectory() as folder:
        place = workspace(Path(folder))
        digests, memory = Digests(), dict[str, Looked]()
        for change in edits:
            edit(place, Cache(place), *change)
            plain = runner.check(place, crew=Here())
            assert runner.check(place, (), None, Cache(place, digests, memory), Here()) == plain
            assert runner.check(place, (), None, Cache(place), Here()) == plain


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


def test_a_folder_that_cannot_be_written_is_no_obstacle(place: Workspace) -> None:
    cache = Cache(place)
    cache.folder.parent.mkdir(parents=True)
    cache.folder.write_text("in the way")
    assert runner.check(place, (), None, cache, Here()) == runner.check(place)


def test_everything_comes_back_as_it_was() -> None:
    place = Workspace(ROOT)
    for path in place.files():
        found = one_file.look(place.load(path))
        assert thawed(frozen(found), path, found.path) == found
        assert found.card


def test_a_worker_gets_none_of_the_memory(place: Workspace) -> None:
    cache = Cache(place)
    runner.check(place, (), None, cache, Here())
    runner.check(place, (), None, cache, Here())
    assert len(cache._memory) == len(FILES)
    assert pickle.loads(pickle.dumps(cache))._memory == {}  # noqa: S301 - made on the line itself


@pytest.mark.parametrize("change", [lambda p: p.write_text("b"), lambda p: p.unlink()])
def test_a_file_without_settled_times_is_read_again(tmp_path: Path, change: Callable[[Path], object]) -> None:
    """The write keeps size and, by `utime`, the time; the digest must not be the old one."""
    path, digests = tmp_path / "x", Digests()
    path.write_text("a")
    before, times = digests.of(path), path.stat()
    assert digests.known == {}
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
