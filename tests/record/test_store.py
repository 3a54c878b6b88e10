"""The store finds records by folder, refuses what leads out of them unread, and loses no file silently."""

import os
import shutil
from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.root import NoWorkspace
from undertrim.record.store import Workspace

HOME = Path("records/vehicles/brindleway")
STEM = "otter-2014-2018"


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Workspace:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / HOME / f"{STEM}.yaml").write_text(BASE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return Workspace.holding(tmp_path)


def names(place: Workspace, *paths: Path) -> list[str]:
    return [path.relative_to(place.root).as_posix() for path in place.files(paths)]


def told(place: Workspace, path: Path) -> list[str]:
    entry = place.load(path)
    assert entry.record is None
    return [f"{p.file}:{p.position.line}: {p.message} ({p.hint})" for p in entry.problems]


def test_a_workspace_is_found_from_anywhere_inside(place: Workspace) -> None:
    for start in (place.root, place.records, place.root / HOME):
        assert Workspace.holding(start).root == place.root


def test_without_one_it_says_where_it_looked(tmp_path: Path) -> None:
    with pytest.raises(NoWorkspace, match=f"^no 'records' folder in {tmp_path} or above it$"):
        Workspace.holding(tmp_path)


def test_a_good_file_is_read(place: Workspace) -> None:
    [path] = place.files()
    entry = place.load(path)
    assert isinstance(entry.record, VehicleRecord)
    assert (entry.id, entry.address, entry.problems) == (STEM, f"brindleway/{STEM}", ())
    assert entry.source.path == HOME / f"{STEM}.yaml"


def test_folders_hidden_files_and_the_handbook_are_passed_over(place: Workspace) -> None:
    for folder in (HOME / "x.yaml", HOME / ".git", Path("records/handbook")):
        (place.root / folder).mkdir()
        shutil.copy(place.files()[0], place.root / folder / "y.yaml")
    (place.root / HOME / ".#otter.yaml").symlink_to("nobody@nowhere")
    (place.root / HOME / "notes.md").write_text("x")
    assert names(place) == [f"{HOME}/{STEM}.yaml", f"{HOME}/x.yaml/y.yaml"]


@pytest.mark.parametrize("where", ["records/x.yaml", "records/vehicle/brindleway/x.yaml", "records/spare/x.yml"])
def test_a_file_in_no_folder_of_records_is_a_problem(place: Workspace, where: str) -> None:
    path = place.root / where
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(BASE, encoding="utf-8")
    assert where in names(place)
    hint = "move it below 'records/vehicles' or 'records/gear'"
    assert told(place, path) == [f"{where}:1: the file is in no folder of records ({hint})"]


def test_a_link_out_of_the_records_is_refused_unread(
    place: Workspace, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    outside = tmp_path_factory.mktemp("outside") / "secret.yaml"
    outside.write_text("password: x\n")
    (place.root / "beside.yaml").write_text("password: y\n")
    links = [place.root / HOME / "out.yaml", place.root / HOME / "up.yaml"]
    links[0].symlink_to(outside)
    links[1].symlink_to("../../../beside.yaml")
    monkeypatch.setattr(Path, "read_bytes", lambda path: pytest.fail(f"{path} was read"))
    for link in links:
        assert link in place.files()
        assert link in place.files([link])
        message = "the file is a link out of the records, or to itself (put the record itself here)"
        assert told(place, link) == [f"{HOME}/{link.name}:1: {message}"]


def test_a_link_inside_the_records_is_followed(place: Workspace) -> None:
    link = place.root / HOME / "same.yaml"
    link.symlink_to(f"{STEM}.yaml")
    assert place.load(link).record is not None


def test_a_folder_that_is_a_link_is_not_walked(place: Workspace, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (outside / "x.yaml").write_text(BASE)
    (place.records / "vehicles" / "linked").symlink_to(outside)
    assert names(place) == [f"{HOME}/{STEM}.yaml"]
    assert place.kind(place.records / "vehicles/linked/x.yaml") == ""


def test_a_dangling_link_is_a_problem(place: Workspace) -> None:
    link = place.root / HOME / "gone.yaml"
    link.symlink_to("nowhere.yaml")
    assert told(place, link) == [
        f"{HOME}/gone.yaml:1: the file cannot be read (see whether it is still there and you may read it)"
    ]


def test_a_pipe_is_not_waited_for(place: Workspace) -> None:
    path = place.root / HOME / "pipe.yaml"
    os.mkfifo(path)
    assert told(place, path) == [f"{HOME}/pipe.yaml:1: this is not a file (put a record here, or rename it)"]


@pytest.mark.parametrize("name", ["a b.yaml", "é中.yaml", "a\nb.yaml", "-x.yaml", "%41.yaml", "a:b,c.yaml", "x.yml"])
def test_odd_names_are_names(place: Workspace, name: str) -> None:
    path = place.root / HOME / name
    path.write_text(BASE, encoding="utf-8")
    assert path in place.files()
    assert place.load(path).record is not None
    assert place.load(path).source.path == HOME / name


def test_a_file_is_one_file_however_it_is_written(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(place.root / HOME)
    name = f"{STEM}.yaml"
    ways = [Path(name), Path(f"./{name}"), Path(f"../brindleway/{name}"), place.root / HOME / name, Path()]
    [found] = place.files(ways)
    assert found == place.root / HOME / name
    assert place.load(found).source.path == Path(name)


def test_from_elsewhere_paths_are_shown_whole(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir("/")
    monkeypatch.setattr(Path, "cwd", lambda: Path("/nowhere"))
    path = place.root / HOME / f"{STEM}.yaml"
    assert place.load(path).source.path == path


def test_what_breaks_off_has_no_record_and_no_follow_ups(place: Workspace) -> None:
    path = place.root / HOME / "half.yaml"
    path.write_text(BASE.replace("held_by: [{screw", "nobody knows this\n    held_by: [{screw"), encoding="utf-8")
    [problem] = place.load(path).problems
    assert (problem.rule, problem.position.line) == ("yaml", 24)


def test_a_duplicate_key_does_not_stop_the_rest(place: Workspace) -> None:
    path = place.root / HOME / "twice.yaml"
    path.write_text(BASE.replace("takes: 3 min", "release: pull\n    takes: 3"), encoding="utf-8")
    entry = place.load(path)
    assert [p.message for p in entry.problems] == ["'release' stands twice", "'3' has no unit"]
    assert isinstance(entry.record, VehicleRecord)
    assert entry.record.parts["radio"].release == "slide"


def test_lookup_by_id_address_and_path(place: Workspace) -> None:
    path = place.root / HOME / f"{STEM}.yaml"
    for name in (STEM, f"brindleway/{STEM}"):
        assert vehicle_file(place, name) == path
    assert vehicle_file(place, str(path)) == path
    with pytest.raises(NotFound, match=f"^no vehicle 'oter-2014-2018'; did you mean '{STEM}'\\?$"):
        vehicle_file(place, "oter-2014-2018")
    with pytest.raises(NotFound, match=r"^'x\.yaml' does not exist$"):
        vehicle_file(place, "x.yaml")
    other = place.root / "records/vehicles/zander"
    other.mkdir()
    shutil.copy(path, other)
    with pytest.raises(NotFound, match=f"^several makes have '{STEM}': say brindleway/{STEM} or zander/{STEM}$"):
        vehicle_file(place, STEM)
