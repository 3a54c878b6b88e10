"""Whatever fails, and wherever a build is killed: a whole site stands, the old one or the new one, and nothing is left behind."""

# Long because one build is broken off in every way: by a full disk, a kill, a second build.

import errno
import os
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any
from zlib import crc32

import pytest
from small_site import held, quick, renamed, rendered, silent, tiny

from faults import Fault, Halt, full_disk, killed, striking
from here import Here
from undertrim.check import runner
from undertrim.check.one_file import look
from undertrim.publish.build import last_site, standing
from undertrim.publish.build.building import Builder
from undertrim.publish.encoding import compact
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.web import keeping, pages, site
from undertrim.publish.web.views import VIEWS
from undertrim.record.store import Entry, Workspace

POINTS = 400
"""More than a build of the small site has; each run ends at the first point that is never met."""

State = dict[Path, bytes | None]
"""What stands in a folder: the content of each file, and nothing for a folder."""


class Case:
    """A workspace with a site that stands, and records changed since."""

    def __init__(self, root: Path) -> None:
        self.place, self.out = tiny(root), root / "site"
        self.build()
        self.old = held(self.out)
        renamed(self.place.files()[0])
        self.kept = self.state()
        self.build()
        self.new = held(self.out)
        assert self.new != self.old

    def state(self) -> State:
        paths = sorted(self.place.root.rglob("*"))
        return {path: path.read_bytes() if path.is_file() else None for path in paths}

    def lay(self, wanted: State) -> None:
        """Bring a state about; what is there already stays, since to remove and write is slow on many a disk."""
        there = self.state()
        for path in sorted(there, reverse=True):
            if path not in wanted or (there[path] is None) != (wanted[path] is None):
                path.rmdir() if there.pop(path) is None else path.unlink()
        for path, content in wanted.items():
            if content is None:
                path.mkdir(exist_ok=True)
            elif there.get(path) != content:
                path.write_bytes(content)

    def again(self) -> None:
        """Everything as it was before the second build."""
        self.lay(self.kept)

    def moments(self) -> list[tuple[str, State]]:
        """What stands before each thing that the second build does to the disk."""
        found: list[tuple[str, State]] = []
        self.again()
        with striking(Halt(lambda what: found.append((what, self.state())))):
            self.build()
        return found

    def build(self) -> None:
        builder = Builder(self.place, self.out, sheets=False, crew=Here())
        assert not builder.build(silent).report.errors
        builder.tidy()

    def left(self) -> list[str]:
        return sorted(path.name for path in self.place.root.iterdir() if path.name.endswith("-building"))


@pytest.fixture
def case(monkeypatch: pytest.MonkeyPatch) -> Iterator[Case]:
    monkeypatch.setattr(site, "render", rendered)
    monkeypatch.setattr(site, "own", lambda _: ("https://undertrim.example/", "Undertrim"))
    monkeypatch.setattr(
        keeping, "listed", lambda held, *_: held
    )  # files like others, and half of all that are written here
    monkeypatch.setattr(site, "frame", lambda *_: "frame")
    monkeypatch.setattr(site, "frame_is_ours", lambda _: True)
    monkeypatch.setattr(last_site, "_stamp", by_content)
    monkeypatch.setattr(Workspace, "load", read_once(Workspace.load))
    monkeypatch.setattr(runner, "look", remembered(look))
    monkeypatch.setattr(facts, "in_each", remembered(facts.in_each))
    monkeypatch.setattr(pages, "vehicle", lambda made, *_: {view.name: compact(made) for view in VIEWS})
    with quick() as folder:
        yield Case(folder / "root")


def by_content(path: str) -> list[int]:
    """A file that was laid back is the one that stood there, though its times and its number on the disk are others: so each build does the same."""
    return [crc32(Path(path).read_bytes())] if Path(path).is_file() else []


def read_once(load: Callable[[Workspace, Path], Entry]) -> Callable[[Workspace, Path], Entry]:
    """A record that is read once for each content, so that what follows from it is worked out once too."""
    known: dict[tuple[Path, bytes], Entry] = {}

    def answer(place: Workspace, path: Path) -> Entry:
        key = path, path.read_bytes()
        if key not in known:
            known[key] = load(place, path)
        return known[key]

    return answer


def remembered(work: Callable[..., Any]) -> Callable[..., Any]:
    """Work on a record that is done once for each content: hundreds of builds here differ in what the disk does, not in what is found."""
    known: dict[tuple[Path, str], Any] = {}

    def answer(entry: Entry, *others: Any) -> Any:
        key = entry.path, repr(entry.source.data)
        if key not in known:
            known[key] = work(entry, *others)
        return known[key]

    return answer


def whole(case: Case) -> bool:
    """Whether the old site stands, or the new one."""
    return held(case.out) in (case.old, case.new)


@pytest.fixture(params=["in one step", "in two"])
def steps(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """Where the disk cannot exchange two folders, one is moved away first."""
    if request.param == "in two":
        monkeypatch.setattr(standing, "_exchanged", lambda *_: False)
    return str(request.param)


def test_a_full_disk_at_any_point_leaves_a_whole_site(case: Case, steps: str) -> None:
    met = 0
    for at in range(1, POINTS):
        case.again()
        with striking(Fault(at, full_disk)) as fault:
            try:
                case.build()
            except OSError as error:
                said = error.errno
            else:
                said = errno.ENOSPC  # what is only remembered may fail in silence
            assert said == errno.ENOSPC
        if not fault.struck:
            break
        met += 1
        assert whole(case), fault.met[at - 1]
        case.build()
        assert held(case.out) == case.new
        assert case.left() == [], fault.met[at - 1]
    assert 30 < met < POINTS - 1


def test_a_kill_at_any_point_leaves_a_whole_site(case: Case, steps: str) -> None:
    moments = case.moments()
    assert len(moments) > 30
    for what, left in moments:
        case.lay(left)
        if steps == "in two":
            with standing.beside(case.out):  # the next build begins so
                pass
        assert whole(case), what
        case.build()
        assert held(case.out) == case.new
        assert case.left() == []


def test_a_kill_leaves_what_is_there_at_that_moment(case: Case, steps: str) -> None:
    """So the test above needs to kill nobody: a process costs more than the build."""
    moments = [left for _, left in case.moments()]
    for at in range(3, len(moments), 16):
        case.again()
        assert ended_by_kill(case.build, at)
        assert unnumbered(case.state()) == unnumbered(moments[at - 1])


def unnumbered(state: State) -> dict[str, bytes | None]:
    """The names without the number of the process that wrote aside, and without what is being thrown away: the disk says in which order.

    What is remembered of files holds their times, which no two runs share.
    """
    names = {path: re.sub(r"\.\d+$", "", str(path)) for path in state}
    timed = ("/cache/files.json", "/cache/.files.json", "/cache/site.json", "/cache/.site.json")
    return {
        name: b"" if name.endswith(timed) else state[path]
        for path, name in names.items()
        if "/.site-building/old/" not in name
    }


def ended_by_kill(work: Callable[[], None], at: int) -> bool:
    """Whether a copy of this process was killed at that point of the work; False where it never came to it."""
    child = os.fork()
    if not child:
        code = 1
        try:
            with striking(Fault(at, killed)):
                work()
            code = 0
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    assert os.WIFSIGNALED(status) or os.WEXITSTATUS(status) == 0
    return os.WIFSIGNALED(status)


def test_two_builds_at_once_are_told(case: Case) -> None:
    before = held(case.out)
    with standing.beside(case.out), pytest.raises(standing.Taken, match="another build is at work on"):
        case.build()
    assert held(case.out) == before
    case.build()


def test_git_does_not_see_what_a_killed_build_leaves(tmp_path: Path) -> None:
    subprocess.run(["git", "init", "-q", tmp_path], check=True)
    with standing.beside(tmp_path / "public") as aside:
        (aside / "fresh").mkdir()
        (aside / "fresh/index.html").write_text("x")
        seen = subprocess.run(["git", "-C", tmp_path, "status", "--porcelain"], check=True, capture_output=True)
    assert seen.stdout == b""


@pytest.mark.parametrize("where", [".", "records", "records/vehicles", ".."])
def test_a_site_never_replaces_the_records(case: Case, where: str) -> None:
    out = (case.place.root / where).resolve()
    with pytest.raises(standing.NoPlace, match="holds the records"):
        Builder(case.place, out, sheets=False, crew=Here()).build(silent)
    assert len(case.place.files()) == 2


def test_a_site_never_replaces_something_else(case: Case, tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.mkdir()
    (other / "letters.txt").write_text("mine")
    with pytest.raises(standing.NoPlace, match="holds something other than a site"):
        Builder(case.place, other, sheets=False, crew=Here()).build(silent)
    assert (other / "letters.txt").read_text() == "mine"


def test_a_killed_preview_is_swept_by_the_next(tmp_path: Path) -> None:
    code = "import os, sys; from pathlib import Path; from undertrim.publish.build.standing import preview\n"
    code += "with preview(Path(sys.argv[1])) as folder: (folder / 'site').mkdir(); os.kill(os.getpid(), 9)"
    subprocess.run([sys.executable, "-c", code, tmp_path], check=False)
    assert len(list(tmp_path.iterdir())) == 1
    with standing.preview(tmp_path) as folder:
        assert [path.name for path in tmp_path.iterdir()] == [folder.name]
    assert list(tmp_path.iterdir()) == []


def test_workers_end_with_whoever_started_them(tmp_path: Path) -> None:
    """Also where that was killed outright, in the middle of their work."""
    code = (
        "import os, sys, time\nfrom undertrim.work.crew import Crew\n"
        "def work(n):\n    if n == 0: return os.getpid()\n    open(sys.argv[1], 'a').write(f'{os.getpid()}\\n'); time.sleep(60)\n"
        "for found in Crew(size=3).each(work, range(4)):\n"
        "    while len(open(sys.argv[1]).readlines()) < 3: time.sleep(0.01)\n"
        "    os.kill(os.getpid(), 9)\n"
    )
    pids = tmp_path / "pids"
    pids.touch()
    subprocess.run([sys.executable, "-c", code, pids], check=False, timeout=30)
    workers = [int(line) for line in pids.read_text().split()]
    assert len(workers) == 3
    assert _gone(workers)


def _gone(workers: list[int]) -> bool:
    import time

    for _ in range(500):
        if not any(Path(f"/proc/{pid}").exists() and not _zombie(pid) for pid in workers):
            return True
        time.sleep(0.01)
    return False


def _zombie(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except OSError:
        return True


def test_a_place_is_free_again(tmp_path: Path) -> None:
    """A lock that was removed under us is not taken for held."""
    for _ in range(3):
        with standing.beside(tmp_path / "site") as aside:
            assert aside.is_dir()
        assert not aside.exists()
    assert isinstance(Workspace(tmp_path), Workspace)
