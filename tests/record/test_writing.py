"""A file is replaced whole or not at all."""

import os
import shutil
from pathlib import Path

import pytest

from undertrim.record.writing import write_text


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "otter.yaml"
    path.write_bytes(b"old\r\n")
    path.chmod(0o640)
    return path


def test_text_mode_and_line_ends(file: Path) -> None:
    write_text(file, "é\r\nnew\n")
    assert file.read_bytes() == "é\r\nnew\n".encode()
    assert file.stat().st_mode & 0o777 == 0o640
    assert list(file.parent.iterdir()) == [file]


def test_a_byte_order_mark_stays(file: Path) -> None:
    file.write_bytes(b"\xef\xbb\xbfold")
    write_text(file, "new")
    assert file.read_bytes() == b"\xef\xbb\xbfnew"


def test_a_link_stays_a_link(file: Path) -> None:
    link = file.with_name("link.yaml")
    link.symlink_to(file)
    write_text(link, "new")
    assert link.is_symlink()
    assert file.read_text() == "new"


@pytest.mark.parametrize("step", ["fsync", "copymode", "replace"])
def test_a_failure_leaves_the_old_file_and_nothing_else(file: Path, step: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object, **__: object) -> None:
        raise OSError(28, "no space left")

    places: dict[str, object] = {"fsync": os, "copymode": shutil, "replace": Path}
    monkeypatch.setattr(places[step], step, fail)
    with pytest.raises(OSError, match="no space"):
        write_text(file, "new")
    assert file.read_bytes() == b"old\r\n"
    assert list(file.parent.iterdir()) == [file]


def test_a_file_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        write_text(tmp_path / "none.yaml", "new")
