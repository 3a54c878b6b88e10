"""Nothing in a record can be so large, or so many, that it runs away: it is refused before anything goes through it."""

import os
import socket
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from rule_pages import BASE

from here import Here
from undertrim.check import runner
from undertrim.derive import cars
from undertrim.derive.procedure import choices as visits
from undertrim.record import schema
from undertrim.record.combinations import MOST_CARS, TooMany
from undertrim.record.problem import Problem
from undertrim.record.reader import MAX_TEXT
from undertrim.record.source import read_text
from undertrim.record.store import Workspace, entry

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")


def checked(text: str) -> tuple[Problem, ...]:
    return runner.check_entry(entry(PATH, "vehicle", read_text(text, PATH)))


def variants(number: int, choices: int = 2) -> str:
    each = ", ".join(f"c{n}: {{label: L{n}, tell: T{n}}}" for n in range(choices))
    lines = "".join(f"  v{n}: {{ask: Which, choices: {{{each}}}}}\n" for n in range(number))
    return BASE + "variants:\n" + lines


@pytest.mark.parametrize(("number", "choices"), [(10, 2), (12, 2), (5, 4), (20, 20), (40, 2), (300, 2)])
def test_too_many_cars_are_counted_and_not_made(number: int, choices: int) -> None:
    began = time.process_time()
    problems = checked(variants(number, choices))
    assert time.process_time() - began < 20
    place = BASE.count("\n") + 1
    said = [problem for problem in problems if "different cars, and a record may have 512" in problem.message]
    assert [(problem.rule, problem.position.line) for problem in said] == [("schema", place)]
    assert {problem.rule for problem in problems} == {"schema"}


def test_as_many_cars_as_are_allowed_are_gone_through() -> None:
    assert not any(problem.rule == "schema" for problem in checked(variants(9)))
    assert MOST_CARS == 2**9


def test_cars_told_apart_by_gear_too_are_counted(monkeypatch: pytest.MonkeyPatch) -> None:
    item = entry(PATH, "vehicle", read_text(variants(9), PATH))
    monkeypatch.setattr(cars, "MOST_CARS", 100)
    with pytest.raises(TooMany, match="9 questions make 512 different cars, and more than 100 are not gone through"):
        cars.told_apart(item.record, [f"v{n}" for n in range(9)])  # type: ignore[arg-type]


def test_openings_are_counted_before_every_two_are_planned_together() -> None:
    opening = "{name: N, kind: receiver, behind: [radio], face: {width: 182 mm, height: 111 mm}, depth: {clear: 165 mm, datum: face}, kit: needed}"
    problems = checked(BASE.replace("openings:\n", "openings:\n" + "".join(f"  o{n}: {opening}\n" for n in range(25))))
    said = [problem.message for problem in problems if "more than 24" in problem.message]
    assert said == ["openings has 26 entries, more than 24"]
    assert {problem.rule for problem in problems} == {"schema"}


def test_visits_are_counted_before_they_are_planned() -> None:
    with pytest.raises(TooMany, match="512 different cars with 10 places to work at make 524,288 different visits"):
        visits._refuse_too_many(512, 10)
    with pytest.raises(TooMany):
        visits._refuse_too_many(2, 600)
    visits._refuse_too_many(512, 8)


def open_ended(block: Any, path: str = "") -> Iterator[str]:
    """Lists, and mappings with names of their own, that the schema lets grow without end."""
    if isinstance(block, dict):
        types = block.get("type", ())
        if "array" in types and "maxItems" not in block:
            yield path
        if "object" in types and isinstance(block.get("additionalProperties"), dict) and "maxProperties" not in block:
            yield path
        for word, inner in block.items():
            if word not in ("examples", "misnamed"):
                yield from open_ended(inner, f"{path}/{word}")
    elif isinstance(block, list):
        for number, inner in enumerate(block):
            yield from open_ended(inner, f"{path}/{number}")


@pytest.mark.parametrize("name", schema.NAMES)
def test_every_list_and_mapping_has_an_end(name: str) -> None:
    assert list(open_ended(schema.load(name))) == []


def test_a_number_out_of_range_reaches_no_rule() -> None:
    plug = "connectors:\n  main:\n    {name: Plug, at: radio/main, view: wires, rows: 2000000, columns: 40, pins: {1: {function: ground}}}\n"
    began = time.process_time()
    [problem] = [problem for problem in checked(BASE + plug) if "2000000" in problem.message]
    assert time.process_time() - began < 10
    assert problem.message == "rows '2000000' is more than 8"
    item = entry(PATH, "vehicle", read_text(BASE + plug, PATH))
    assert ("connectors", "main") in item.dropped or ("connectors", "main", "rows") in item.dropped


def test_a_text_without_end_is_cut() -> None:
    text = BASE.replace("name: ", f"name: {'x' * 500_000}", 1)
    source = read_text(text, PATH)
    assert [problem.message for problem in source.problems] == [
        f"a text of {500_000 + len(first_name()):,} characters begins here"
    ]
    assert max(len(name) for name in map(str, source.data.values())) < len(BASE) + 2 * MAX_TEXT


def first_name() -> str:
    return BASE.partition("name: ")[2].partition("\n")[0].strip()


def test_letters_are_whole_and_places_stay() -> None:
    source = read_text("a: Prise e\u0301cran  # e\u0301\nb: [x, e\u0301, y]\n", PATH)
    assert source.data == {"a": "Prise \u00e9cran", "b": ["x", "\u00e9", "y"]}
    assert source.values[("b", 2)].column == 12  # as typed, in characters


def test_thirty_thousand_allows_take_no_time() -> None:
    began = time.process_time()
    problems = checked(BASE + "# allow side-word: x\n" * 30_000)
    assert len(problems) == 30_000
    assert time.process_time() - began < 15


def test_allows_between_many_texts_take_no_time() -> None:
    texts = "".join(f"  e{n}: {{how: 'seen', on: '2026-03-09', by: 'tw'}} # allow side-word: x\n" for n in range(5_000))
    began = time.process_time()
    found = checked(BASE.replace("evidence:\n", f"evidence:\n{texts}"))
    assert sum(problem.rule == "allow" for problem in found) in (0, 5_000)
    assert time.process_time() - began < 30


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    home = tmp_path / PATH.parent
    home.mkdir(parents=True)
    (tmp_path / PATH).write_text(BASE, encoding="utf-8")
    return home


def odd_files(home: Path) -> None:
    os.mkfifo(home / "pipe.yaml")
    (home / "loop.yaml").symlink_to("loop.yaml")
    (home / "endless.yaml").symlink_to("/dev/zero")
    (home / "itself").symlink_to(".")
    (home / "folder.yaml").mkdir()
    with socket.socket(socket.AF_UNIX) as made:
        made.bind(os.path.relpath(home / "socket.yaml"))


def test_only_files_are_read(folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    odd_files(folder)
    from undertrim.check.cache import Cache

    place = Workspace(tmp_path)
    report = runner.check(place, (), None, Cache(place), Here())
    assert sorted((problem.file.name, problem.message) for problem in report.problems) == [
        ("endless.yaml", "the file is a link out of the records, or to itself"),
        ("loop.yaml", "the file is a link out of the records, or to itself"),
        ("pipe.yaml", "this is not a file"),
        ("socket.yaml", "the file cannot be read"),
    ]


def test_a_large_file_is_not_read_whole(folder: Path, tmp_path: Path) -> None:
    with (folder / "large.yaml").open("wb") as file:
        file.truncate(1 << 40)  # a hole of a terabyte
    report = runner.check(Workspace(tmp_path), crew=Here())
    assert [problem.message for problem in report.problems] == ["the file is larger than 1000 kB"]


def test_a_folder_that_cannot_be_looked_into_is_told(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain = os.scandir

    def refuse(path: Any) -> Any:
        if Path(path) == folder:
            raise PermissionError(13, "Permission denied", str(path))
        return plain(path)

    monkeypatch.setattr(os, "scandir", refuse)
    with pytest.raises(PermissionError):
        Workspace(tmp_path).files()
