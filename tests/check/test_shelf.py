"""Gear whose record has an error is on no shelf, and is named wherever it is missed."""

import json
import shutil
from pathlib import Path

import pytest

from undertrim.check.shelf import stock
from undertrim.cli import main
from undertrim.derive.fit.clearances import clearances
from undertrim.publish.facts import shelf as shelf_facts
from undertrim.record.store import Entry, Workspace

ROOT = Path(__file__).parents[2]
FINCH = "finch-2014-2018"


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    """The shipped records, in which one speaker's bolts lie inside its basket: an error by a rule, not by the schema."""
    for folder in ("vehicles", "gear"):
        shutil.copytree(ROOT / "records" / folder, tmp_path / "records" / folder)
    file = tmp_path / "records/gear/speakers/tidewrack-haven-65.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("count: 4, diameter: 160 mm", "count: 4, diameter: 120 mm"), encoding="utf-8")
    return Workspace(tmp_path)


def test_it_is_left_out_and_named(place: Workspace) -> None:
    shelf = stock(place)
    assert shelf.left_out == ("speakers/tidewrack-haven-65",)
    assert shelf.refused("tidewrack-haven-65")
    assert "tidewrack-haven-65" not in {item.id for item in shelf.items}
    assert stock(Workspace(ROOT)).left_out == ()


def test_a_reasoned_allow_keeps_it(place: Workspace) -> None:
    file = place.records / "gear/speakers/tidewrack-haven-65.yaml"
    text = file.read_text(encoding="utf-8")
    said = "diameter: 120 mm}  # allow gear-contradicts-itself: the holes are in lugs below the rim"
    file.write_text(text.replace("diameter: 120 mm}", said), encoding="utf-8")
    assert stock(place).left_out == ()


def test_what_was_edited_is_read_again_and_nothing_else(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    before, read, load = stock(place), list[Path](), Workspace.load

    def counted(self: Workspace, path: Path) -> Entry:
        read.append(path)
        return load(self, path)

    monkeypatch.setattr(Workspace, "load", counted)
    assert stock(place) == before
    assert read == []
    file = place.records / "gear/speakers/tidewrack-haven-65.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("diameter: 120 mm", "diameter: 160 mm"), encoding="utf-8")
    assert stock(place).left_out == ()
    file.unlink()
    file.symlink_to("nowhere")
    assert stock(place).left_out == stock(place).left_out == before.left_out
    assert read == [file] * 3


@pytest.mark.parametrize(
    "words",
    [
        ["fit", FINCH, "front-door", "tidewrack-haven-65"],
        ["shop", FINCH, "--job", "front-door", "--gear", "tidewrack-haven-65"],
        ["template", FINCH, "front-door", "tidewrack-haven-65"],
    ],
)
def test_who_asks_for_it_is_told_why(place: Workspace, words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main([*words, "--in", str(place.root)]) == 2
    assert "the record of 'tidewrack-haven-65' has problems and is not offered" in capsys.readouterr().err


def test_commands_and_page_name_it(place: Workspace, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["fit", FINCH, "front-door", "--in", str(place.root)]) == 0
    assert "Left out, its record has problems: speakers/tidewrack-haven-65" in capsys.readouterr().out
    assert main(["shop", FINCH, "--job", "front-door", "--format", "json", "--in", str(place.root)]) == 0
    assert json.loads(capsys.readouterr().out)["left_out"] == ["speakers/tidewrack-haven-65"]
    shelf = stock(place)
    (file,) = shelf_facts.files(shelf, clearances()).values()
    assert file.count("tidewrack-haven-65") == 1  # among those that are left out
