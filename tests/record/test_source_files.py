"""Files as they lie on a disk: too large, very long, gone, of another sort or not to be read."""

import os
from pathlib import Path

import pytest

from said_at import PATH, said
from undertrim.record.problem import Position
from undertrim.record.source import MAX_BYTES, read, read_bytes, read_text


def test_a_large_file_is_refused_unparsed() -> None:
    found = read_bytes(b"a: 1\n" * 400_000, PATH)
    assert said(found) == [
        f"1:1: the file is larger than {MAX_BYTES // 1000} kB "
        "(a record is a few hundred lines: split it or remove what does not belong)"
    ]
    assert found.text == ""


def test_a_hundred_thousand_lines_are_read() -> None:
    found = read_text("- a\n" * 100_000, PATH)
    assert len(found.data) == 100_000
    assert found.position((99_999,)) == Position(100_000, 3)


def test_what_is_no_file_or_gone_is_a_problem_and_no_exception(tmp_path: Path) -> None:
    (tmp_path / "folder.yaml").mkdir()
    (tmp_path / "dangling.yaml").symlink_to(tmp_path / "nowhere")
    assert said(read(tmp_path / "folder.yaml")) == ["1:1: this is not a file (put a record here, or rename it)"]
    for name in ("dangling.yaml", "absent.yaml"):
        assert said(read(tmp_path / name)) == [
            "1:1: the file cannot be read (see whether it is still there and you may read it)"
        ]


def test_a_file_without_rights_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> int:
        raise PermissionError(13, "EACCES")

    path = tmp_path / "x.yaml"
    path.write_text("a: 1")
    monkeypatch.setattr(os, "open", refuse)
    assert said(read(path)) == ["1:1: the file cannot be read (see whether it is still there and you may read it)"]
