"""Photographs of answers: saved beside the record as it may hold them, named where the answer stands, and never another file."""

from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from claiming import FILE, HOME, claims, lay, lines, run, says
from undertrim import cli

FOLDER = HOME / "photos" / "otter-2014-2018"
HOLE = "openings/front-door/hole/diameter"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)
    camera("hole.jpg", "red")


def camera(name: str, colour: str) -> None:
    Image.new("RGB", (3000, 2000), colour).save(name)


def pictured(about: str, value: str, file: str = "hole.jpg", **more: Any) -> dict[str, Any]:
    return says(about, value, photo={"file": file, "shows": "The hole, gasket off."}, **more)


def test_it_is_saved_small_and_named_with_its_evidence(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, claims(pictured(HOLE, "146 mm")))
    assert (code, err) == (0, "")
    assert f"photograph: {FOLDER / 'hole.jpg'}\n" in out
    with Image.open(FOLDER / "hole.jpg") as saved:
        assert saved.size == (2000, 1333)
    assert 'photos: [{file: hole.jpg, shows: "The hole, gasket off.", source: e3}]' in lines()
    assert cli.main(["check"]) == 0
    assert cli.main(["format", "--check"]) == 0


def test_taken_again_nothing_changes(capsys: pytest.CaptureFixture[str]) -> None:
    file = claims(pictured(HOLE, "146 mm"))
    run(capsys, file)
    before = FILE.read_text(encoding="utf-8")
    code, out, _ = run(capsys, file)
    assert (code, FILE.read_text(encoding="utf-8")) == (0, before)
    assert "photograph already there: hole.jpg\n" in out
    assert [path.name for path in FOLDER.iterdir()] == ["hole.jpg"]


def test_another_picture_of_that_name_gets_a_number(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, claims(pictured(HOLE, "146 mm")))
    camera("hole.jpg", "blue")
    assert run(capsys, claims(pictured(HOLE, "146 mm", by="yy")))[0] == 0
    assert sorted(path.name for path in FOLDER.iterdir()) == ["hole-2.jpg", "hole.jpg"]
    assert FILE.read_text(encoding="utf-8").count("file: hole") == 2
    assert cli.main(["check"]) == 0


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        (pictured(HOLE, "146 mm", "none.jpg"), "'none.jpg' does not exist"),
        (pictured(HOLE, "146 mm", "broken.jpg"), "'broken.jpg' is no picture that can be read"),
        (pictured(HOLE, "146 mm", "link.jpg"), "'link.jpg' does not exist"),
        (pictured("restraint/wait", "3 min", how="maker"), "nothing around 'restraint/wait' has photographs"),
    ],
)
def test_what_is_no_picture_is_refused_and_the_answer_is_taken(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, answer: dict[str, Any], said: str
) -> None:
    Path("broken.jpg").write_bytes(b"no picture")
    (tmp_path / "elsewhere").mkdir()
    camera("elsewhere/secret.jpg", "green")
    Path("link.jpg").symlink_to("elsewhere/secret.jpg")
    code, out, err = run(capsys, claims(answer))
    assert code == 1
    assert f"photograph refused: {said}" in err
    assert "1 answer: 1 " in out
    assert not FOLDER.exists()


def test_a_dry_run_and_a_refused_answer_save_none(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, claims(pictured(HOLE, "146 mm")), "--dry-run")
    run(capsys, claims(pictured(HOLE, "146")))
    assert not FOLDER.exists()
    bad = claims(says(HOLE, "146 mm", photo={"file": "../x.jpg", "shows": "x"}))
    assert "write the plain name of a file" in run(capsys, bad)[2]
