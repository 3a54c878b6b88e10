"""The `ask` command: what it asks at which car, what it keeps, and how it goes on."""

import json
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextvars import copy_context
from pathlib import Path
from typing import Any

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from claiming import ADDRESS, FILE, RECORD, lay
from undertrim import cli
from undertrim.commands import prompts
from undertrim.commands.prompts import Stopped

OUT = Path("otter-2014-2018-answers.json")
PLAIN = ("2015", "plain")
DEPTH = "Clear depth"


class Person:
    """Answers by what a question begins with; what is not foreseen is left for later."""

    def __init__(self, said: dict[str, str]) -> None:
        self.said = {
            "Your initials": "rk",
            "On which day": "2026-11-20",
            "What do you measure": "Calliper 0.05 mm",
            **said,
        }
        self.asked: list[str] = []
        self.refused: dict[str, str] = {}

    def text(self, ask: str, check: Callable[[str], str], hint: str = "") -> str:
        said = self._said(ask, "")
        if wrong := check(said):
            self.refused[said] = wrong
            return ""
        return said

    def choose(self, ask: str, choices: Sequence[tuple[str, str]]) -> str:
        said = self._said(ask, "later")
        values = [value for value, _ in choices]
        return said if said in values else values[0]

    def _said(self, ask: str, otherwise: str) -> str:
        self.asked.append(ask)
        found = next((said for start, said in self.said.items() if ask.startswith(start)), otherwise)
        if found == "STOP":
            raise Stopped
        return found


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)


def asked(monkeypatch: pytest.MonkeyPatch, said: dict[str, str], *words: str) -> Person:
    person = Person({"Which year": "2015", "Which radio": "plain", **said})
    monkeypatch.setattr(prompts, "text", person.text)
    monkeypatch.setattr(prompts, "choose", person.choose)
    assert cli.main(["ask", "otter-2014-2018", *words]) == 0
    return person


def kept(path: Path = OUT) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return data


def by_address(data: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {answer["about"]: answer for answer in data["answers"]}


def test_answers_go_into_the_record(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    said = {
        DEPTH: "2 1/2 in",
        "Crash pressure": "no",
        "How do you know": "maker",
        "Obstruction": "glass",
        "Room to the grille": "?",
    }
    asked(monkeypatch, said)
    out = capsys.readouterr().out
    assert f"answers are in {OUT}\n    put them into the record with 'undertrim take {OUT}'\n" in out
    assert "blocks: what fits 'Front door' cannot be told\n" in out
    data = kept()
    assert data["car"] == {"year": 2015, "is": {"radio": "plain"}}
    found = by_address(data)
    clear = {"about": "openings/front-door/depth/clear", "says": "2 1/2 in", "was": "unknown", "how": "measured"}
    assert found["openings/front-door/depth/clear"] == clear
    assert found["openings/front-door/crash_sensor"]["how"] == "maker"
    assert found["openings/front-door/room_to_grille"]["found"] == "cannot-tell"
    assert cli.main(["take", str(OUT)]) == 0, capsys.readouterr().err
    text = FILE.read_text(encoding="utf-8")
    assert "depth: {clear: 2 1/2 in, datum: skin, over: whole-travel, obstruction: glass}" in text
    assert "crash_sensor: no" in text
    assert cli.main(["check"]) == 0


def test_it_goes_on_where_it_was_left(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    first = asked(monkeypatch, {"Wait": "3 min", "How do you know": "maker", "Memory keeper": "STOP"})
    assert [answer["about"] for answer in kept()["answers"]] == ["restraint/wait"]
    assert first.asked[:4] == [
        "Your initials",
        "On which day?",
        "What do you measure with?",
        "Which year is the car of? (? if you cannot tell)",
    ]
    capsys.readouterr()
    second = asked(monkeypatch, {"Memory keeper": "forbidden", "How do you know": "maker", "Read faults": "stop"})
    assert capsys.readouterr().out.startswith(f"going on with {OUT}, which has 1 answer\n")
    assert second.asked[0] == "Memory keeper"
    assert [answer["about"] for answer in kept()["answers"]] == ["restraint/wait", "restraint/memory_keeper"]


def test_only_what_the_car_can_answer_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    plain = asked(monkeypatch, {DEPTH: "140 mm"})
    assert plain.asked.count(DEPTH) == 2
    assert by_address(kept())["openings/dash/depth/clear"]["says"] == "140 mm"
    OUT.unlink()
    other = asked(monkeypatch, {DEPTH: "140 mm", "Which radio": "unknown", "Which year": "?"})
    assert other.asked.count(DEPTH) == 1
    assert kept()["car"] == {"year": "unknown", "is": {"radio": "unknown"}}


def test_what_cannot_be_an_answer_is_told_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    person = asked(monkeypatch, {DEPTH: "64", "Room to the grille": "-", "Which year": "1999"})
    assert person.refused.keys() == {"64", "-", "1999"}
    assert "64 mm" in person.refused["64"]
    assert person.refused["1999"] == "write a year from 2014 to 2017, or ?"
    assert "openings/front-door/depth/clear" not in by_address(kept())


def test_a_wire_is_asked_where_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    person = asked(monkeypatch, {"By": "wire", "Where the wire is": "At the lamp."})
    assert "Where the wire is" in person.asked
    assert by_address(kept())["functions/reverse/note"]["says"] == "At the lamp."
    OUT.unlink()
    assert "Where the wire is" not in asked(monkeypatch, {"By": "data"}).asked


def test_a_file_about_something_else_is_left_alone(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    Path("mine.json").write_text("{}", encoding="utf-8")
    assert cli.main(["ask", "otter-2014-2018", "--out", "mine.json"]) == 2
    assert f"'mine.json' is no claims file about {ADDRESS}: name another one with --out" in capsys.readouterr().err
    assert Path("mine.json").read_text(encoding="utf-8") == "{}"


def test_without_a_terminal_it_says_what_lists_them(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdin.isatty", lambda: False, raising=False)
    assert cli.main(["ask", "otter-2014-2018"]) == 2
    assert "'undertrim coverage VEHICLE --questions' lists the questions" in capsys.readouterr().err
    FILE.write_text(RECORD.replace("vehicle:\n", "vehicle\n"), encoding="utf-8")
    assert cli.main(["ask", "otter-2014-2018"]) == 2


@pytest.fixture
def keys() -> Iterator[Callable[[str], None]]:
    """What is typed at a terminal, as the library reads it."""
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
        yield pipe.send_text


def test_the_library_asks_as_it_should(keys: Callable[[str], None]) -> None:
    """In a thread of its own: in that of the tests a loop may be running, for the browser."""
    with ThreadPoolExecutor(1) as one:
        one.submit(copy_context().run, _asks, keys).result()


def _asks(keys: Callable[[str], None]) -> None:
    keys("62\x7f\x7f64 mm\r")
    assert prompts.text("Depth", lambda said: "") == "64 mm"
    keys("\x1b[B\r")
    assert prompts.choose("Which?", [("a", "First"), ("b", "Second")]) == "b"
    keys("x\r\x7f7\r")
    assert prompts.text("Number", lambda said: "" if said.isdecimal() else "a number") == "7"
    keys("\x03")
    with pytest.raises(Stopped):
        prompts.choose("Which?", [("a", "First")])
