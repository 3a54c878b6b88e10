"""A ledger gives back what was entered, or nothing: never something else, and never an error."""

import pickle
from pathlib import Path

import pytest

from undertrim import resources
from undertrim.record.digests import Digests
from undertrim.record.ledger import Ledger


def entered(path: Path, **values: object) -> Ledger:
    ledger = Ledger(path)
    for key, value in values.items():
        ledger.put(key, value)
    ledger.save()
    return ledger


def test_what_is_entered_is_there_at_once_and_for_the_next_run(tmp_path: Path) -> None:
    path = tmp_path / "cache" / "x.json"
    ledger = Ledger(path)
    ledger.put("a", [1, "é"])
    assert ledger.get("a") == [1, "é"]
    ledger.save()
    assert ledger.get("a") == Ledger(path).get("a") == [1, "é"]
    assert Ledger(path).get("b") is None


def test_what_nobody_asked_for_between_two_saves_is_dropped(tmp_path: Path) -> None:
    path = tmp_path / "x.json"
    entered(path, a=1, b=2)
    ledger = Ledger(path)
    assert ledger.get("a") == 1
    ledger.save()
    assert (Ledger(path).get("a"), Ledger(path).get("b")) == (1, None)


def test_what_nobody_asked_for_after_a_save_is_dropped_by_the_next(tmp_path: Path) -> None:
    ledger = entered(tmp_path / "x.json", a=1)
    ledger.save()
    assert Ledger(tmp_path / "x.json").get("a") is None


def test_it_is_not_written_where_it_says_the_same(tmp_path: Path) -> None:
    path = tmp_path / "x.json"
    entered(path, a=1)
    inode = path.stat().st_ino
    ledger = Ledger(path)
    ledger.get("a")
    ledger.save()
    assert path.stat().st_ino == inode


@pytest.mark.parametrize("damage", ["", "x", "{}", "\n{}", "[1]", '{"a": 2}', "\x00"])
def test_a_damaged_one_is_empty(tmp_path: Path, damage: str) -> None:
    path = tmp_path / "x.json"
    entered(path, a=1)
    path.write_text(damage)
    assert Ledger(path).get("a") is None
    text = path.with_name("y.json")
    entered(text, a=1)
    text.write_text(text.read_text().replace("1}", "2}"))
    assert Ledger(text).get("a") is None


def test_another_program_does_not_read_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "x.json"
    entered(path, a=1)
    monkeypatch.setattr(resources, "program", lambda: "another")
    assert Ledger(path).get("a") is None


def test_where_it_cannot_be_written_nothing_is_lost_but_time(tmp_path: Path) -> None:
    (tmp_path / "in-the-way").write_text("")
    ledger = entered(tmp_path / "in-the-way" / "x.json", a=1)
    assert ledger.get("a") == 1
    assert list(tmp_path.iterdir()) == [tmp_path / "in-the-way"]


def test_a_worker_gets_none_of_it(tmp_path: Path) -> None:
    ledger = entered(tmp_path / "x.json", a=1)
    assert pickle.loads(pickle.dumps(ledger)).get("a") is None  # noqa: S301 - made on the line itself


def test_a_digest_is_kept_from_one_run_to_the_next_and_names_no_folder_of_this_machine(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file, path = tmp_path / "records" / "x.yaml", tmp_path / "files.json"
    file.parent.mkdir()
    file.write_text("a")
    monkeypatch.setattr("time.time", lambda: file.lstat().st_ctime + 10)
    ledger = Ledger(path)
    known = Digests(ledger, tmp_path).of(file)
    ledger.save()
    assert str(tmp_path) not in path.read_text()
    monkeypatch.setattr("undertrim.record.digests._content", lambda _: pytest.fail("read again"))
    assert Digests(Ledger(path), tmp_path).of(file) == known
