"""`ask --part`: parts as they came off in somebody's hands, written into the record one by one."""

import json
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import pytest

from claiming import lay
from undertrim import cli
from undertrim.check.runner import check_entry
from undertrim.commands import prompts
from undertrim.commands.prompts import Stopped
from undertrim.derive.evidence import taken
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace

Said = list[tuple[str, str | list[str]]]

NAME = "tansy-2019-2023"
FILE = Path(f"records/vehicles/quillmar/{NAME}.yaml")
KEPT = Path(f"{NAME}-parts.json")
NEW = (
    *(
        "make=Quillmar",
        "model=Tansy",
        "from=2019-02",
        "to=2023-05",
        "bodies=hatchback",
        "sides=left",
        "high_voltage=no",
    ),
    *("dash=double", "doors=front", "boot=no", "by=rk"),
)
WHO: Said = [("Your initials", "rk"), ("On which day", "2026-11-20"), ("Which year", "2020")]
VENT: Said = [
    ("Which part came off", "another part"),
    ("What do you call it", "Upper vent trim"),
    ("Where is it", "dash"),
    ("On which side", "in the middle, or across"),
    ("What had to be off", []),
    ("How does it come off", "pull"),
    ("What held it", "clips"),
    ("Of which sort", "push"),
    ("How many", "6"),
    ("What held it", "nothing else"),
    ("What still hung", "Plug"),
    ("What do you call that", "Passenger airbag lamp plug"),
    ("What works through it", ["airbag lamp or switch-off lamp"]),
    ("What became of it", "leave"),
    ("What still hung", "nothing else"),
    ("Does new gear", "No"),
    ("What else must", "Start at the top corners."),
    ("What was right behind", ["Radio surround"]),
]
SURROUND: Said = [
    ("Which part came off", "Radio surround (usual, nobody has seen it)"),
    ("Off before it: Upper vent trim. Is that so", "yes"),
    ("Comes off by: pull", "yes"),
    ("Held by: unknown × push (clip)", "no, otherwise"),
    ("What held it", "screws"),
    ("What turns it", "T 20|T20"),
    ("How many", "4"),
    ("What held it", "nothing else"),
    ("Still hangs on it: nothing", "yes"),
    ("What was right behind", []),
]
PANEL: Said = [
    ("Which part came off", "Front door panel (usual, nobody has seen it)"),
    ("Off before it: Front inner handle cup", "yes"),
    ("Comes off by: lift", "yes"),
    ("Held by: unknown × unknown (screw)", "did not look"),
    ("Still hangs on it: Inner handle cable, Window switch plug", "yes"),
    ("What was right behind", []),
]
END: Said = [("Which part came off", "no more parts")]


class Person:
    """Answers one question after the other, each by how it begins."""

    def __init__(self, said: Said) -> None:
        self.said: Iterator[tuple[str, str | list[str]]] = iter(said)
        self.refused: list[str] = []

    def text(self, ask: str, check: Callable[[str], str], hint: str = "") -> str:
        answers = str(self._said(ask)).split("|")
        self.refused += filter(None, map(check, answers))
        return answers[-1]

    def choose(self, ask: str, choices: Sequence[tuple[str, str]]) -> str:
        said = self._said(ask)
        return next(value for value, label in choices if said in (label, value))

    def several(self, ask: str, choices: Sequence[tuple[str, str]], hint: str, needed: str = "") -> list[str]:
        said = self._said(ask)
        labels = [label for _, label in choices]
        assert set(said) <= set(labels), labels
        return [value for value, label in choices if label in said]

    def _said(self, ask: str) -> str | list[str]:
        start, said = next(self.said)
        assert ask.startswith(start), (ask, start)
        if said == "STOP":
            raise Stopped
        return said


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert cli.main(["new", *NEW]) == 0
    capsys.readouterr()
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)


def asked(monkeypatch: pytest.MonkeyPatch, said: Said) -> Person:
    person = Person(said)
    for name in ("text", "choose", "several"):
        monkeypatch.setattr(prompts, name, getattr(person, name))
    assert cli.main(["ask", NAME, "--part"]) == 0
    assert next(person.said, None) is None
    return person


def entry() -> Entry:
    return Workspace(Path.cwd()).load(FILE.absolute())


def record() -> VehicleRecord:
    found = entry().record
    assert isinstance(found, VehicleRecord)
    return found


def test_parts_go_into_the_record_in_the_order_they_came_off(monkeypatch: pytest.MonkeyPatch) -> None:
    person = asked(monkeypatch, [*WHO, *VENT, *SURROUND, *PANEL, *END])
    assert len(person.refused) == 1
    assert "T20" in person.refused[0]
    made = record()
    vent, surround, panel = (made.parts[name] for name in ("upper-vent-trim", "radio-surround", "front-door-panel"))
    assert (vent.release, vent.held_by[0].count, vent.area) == ("pull", 6, "dash")
    [plug] = vent.tethers.values()
    assert (plug.kind, plug.circuit, plug.serves) == ("plug", "restraint", ("airbag-lamp",))
    assert [one.part for one in surround.after] == ["upper-vent-trim"]
    assert [(one.what, one.count) for one in surround.held_by] == [("T20", 4)]
    evidence = made.evidence[surround.source[0]]
    assert (evidence.how, evidence.by, evidence.on, len(surround.source)) == ("seen", "rk", "2026-11-20", 1)
    assert panel.source == ("usual", surround.source[0])
    unseen = taken.usual(made)
    assert ("parts", "radio-surround") not in unseen
    assert {("parts", "front-door-panel"), ("parts", "factory-radio")} <= set(unseen)
    assert [problem.rule for problem in check_entry(entry())] == ["restraint-area-not-said"]
    assert not KEPT.exists()
    assert "# Name the airbags" in FILE.read_text(encoding="utf-8")


def test_it_goes_on_in_the_middle_of_a_part(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    before = FILE.read_text(encoding="utf-8")
    asked(monkeypatch, [*WHO, *VENT[:9], ("What held it", "STOP")])
    assert f"is in {KEPT}: the same command goes on" in capsys.readouterr().out
    assert FILE.read_text(encoding="utf-8") == before
    asked(monkeypatch, [*VENT[9:], *END])
    assert record().parts["upper-vent-trim"].held_by[0].count == 6
    assert "1 part is in" in capsys.readouterr().out


def test_what_the_check_refuses_is_not_written(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    before = FILE.read_text(encoding="utf-8")
    circle: Said = [SURROUND[0], ("Off before it", "no, otherwise"), ("What had to be off", ["Factory radio"])]
    rest: Said = [("Comes off by", "yes"), ("Held by", "yes"), ("Still hangs", "yes"), SURROUND[-1]]
    asked(monkeypatch, [*WHO, *circle, *rest, *END])
    assert "not written, since the check would refuse it" in capsys.readouterr().out
    assert FILE.read_text(encoding="utf-8") == before


def test_another_cars_answers_are_left_alone(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    KEPT.write_text(json.dumps({"vehicle": "other/car", "shared": {}, "said": {}, "done": []}), encoding="utf-8")
    assert cli.main(["ask", NAME, "--part"]) == 2
    assert "name another one" in capsys.readouterr().err
