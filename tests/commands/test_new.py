"""The `new` command: the record that begins for a car or for gear, and what it refuses; and `take` of a car that a claims file describes."""

from collections.abc import Callable, Sequence
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest

from claiming import lay
from undertrim import cli
from undertrim.check import starting
from undertrim.check.runner import check_entry
from undertrim.commands import prompts
from undertrim.derive.evidence import taken
from undertrim.derive.evidence.obstacles import obstacles
from undertrim.derive.evidence.standing import Word, standing
from undertrim.record.beginning import NewCar
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.words import language, speaking

SAID = ("make=Quillmar", "model=Grey Tansy", "from=2019-02", "to=2023-05", "bodies=hatchback", "sides=left")
INSIDE = ("high_voltage=no", "dash=double", "doors=front,rear", "boot=yes", "by=rk")
FILE = Path("records/vehicles/quillmar/grey-tansy-2019-2023.yaml")
SPEAKER = ("--gear", "speaker", "maker=Xylo", "model=Y2", "basket/shape=round", "basket/diameter=130 mm")
MORE = ("flange/shape=round", "flange/diameter=165 mm", "depth=58 mm", "impedance=4 ohm")


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = cli.main(list(words))
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def entry(path: Path = FILE) -> Entry:
    return Workspace(Path.cwd()).load(path.absolute())


def record(path: Path = FILE) -> VehicleRecord:
    found = entry(path).record
    assert isinstance(found, VehicleRecord)
    return found


def unknown(data: Any) -> int:
    """How many values of a record are unknown."""
    if isinstance(data, dict):
        return sum(map(unknown, data.values()))
    return sum(map(unknown, data)) if isinstance(data, list) else data == "unknown"


def test_a_car_begins_whole_and_passes_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "new", *SAID, *INSIDE)
    assert (code, err) == (0, "")
    assert out.startswith(f"{FILE} written. Next: 'undertrim ask grey-tansy-2019-2023' asks")
    assert not check_entry(entry())
    made = record()
    assert (made.vehicle.make, made.vehicle.model, str(made.vehicle.built.to)) == ("Quillmar", "Grey Tansy", "2023-06")
    assert set(made.openings) == {"dash", "front-door", "rear-door", "load-floor"}
    assert unknown(entry().source.data) > 40
    assert run(capsys, "format", "--check", str(FILE))[0] == 0


def test_what_is_usual_is_taken_for_seen_by_nobody(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "new", *SAID, *INSIDE)
    made = record()
    things = {("parts", name) for name in made.parts} | {("preps", "battery")}
    assert set(taken.usual(made)) == things
    assert standing(made, entry().source.data).word is Word.UNVERIFIED
    in_the_way = [one for one in obstacles(made) if one.said.code == "usual/obstacle"]
    assert [one.said.values["count"] for one in in_the_way] == [len(things)]
    code, _, err = run(capsys, "verify", "grey-tansy-2019-2023", "--by", "rk", "--car", "2020, left-hand drive")
    assert code != 0
    assert f"{len(things)} things are as they usually are in such cars" in err
    _, out, _ = run(capsys, "plan", "grey-tansy-2019-2023", "--job", "front-door")
    assert "Usual in such cars, and not seen on this one." in out
    assert "bit set: what turns it is not recorded" in out


@pytest.mark.parametrize("tag", ["en", "es"])
def test_whatever_the_car_is_the_record_has_no_problem(tag: str) -> None:
    place, found = Workspace(Path.cwd()), []
    many = zip(
        ["shaped", "split", "none"],
        cycle([["front"], ["front", "rear"]]),
        cycle(["no", "yes"]),
        ["yes", "unknown", "no"],
    )
    with speaking(language(tag)):
        for dash, doors, boot, voltage in many:
            said = {
                "make": "Quillmar",
                "model": "Tansy",
                "built": {"from": "2019-02", "to": "2023-06"},
                "bodies": ["van", "estate"],
            }
            said |= {
                "drive_side": ["left", "right"],
                "high_voltage": voltage,
                "dash": dash,
                "doors": doors,
                "boot": boot,
            }
            made = starting.fresh(place, NewCar(said, "rk", "2026-11-20"))
            found += [(dash, doors, boot, voltage, problem.message) for problem in made.problems]
    assert found == []


def test_years_alone_will_do_and_are_said_to_be_no_more(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "new", "make=Quillmar", "model=Tansy", "first=2019", "last=6/2023", *SAID[4:], *INSIDE)[0] == 0
    path = FILE.with_name("tansy-2019-2023.yaml")
    assert str(record(path).vehicle.built.from_) == "2019-01"
    assert str(record(path).vehicle.built.to) == "2023-07"
    assert "# Only the years were known" in path.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ((*SAID, *INSIDE[1:]), "these answers are lacking: high_voltage (yes or no)"),
        ((*SAID, *INSIDE, "colour=red"), "nothing called 'colour' is asked here"),
        ((*SAID, *INSIDE, "boot=no"), "boot is answered twice, and not alike"),
        ((*SAID[:2], "from=spring", *SAID[3:], *INSIDE), "first: 'spring' is not a valid month"),
        ((*SAID, *INSIDE[:1], "dash=triple", *INSIDE[2:]), "dash: 'triple' is not a known dash"),
        ((*SAID, "no-answer"), "'no-answer' is no answer"),
        ((*SPEAKER, "depth=58"), "depth: '58' has no unit"),
        (SPEAKER, "these answers are lacking: flange/shape (round, oval or rectangle), depth"),
    ],
)
def test_what_is_no_answer_is_refused(capsys: pytest.CaptureFixture[str], words: Sequence[str], wanted: str) -> None:
    code, out, err = run(capsys, "new", *words)
    assert (code, out) == (2, "")
    assert err.startswith(f"undertrim: {wanted}")
    assert not FILE.exists()


@pytest.mark.parametrize(
    ("make", "model", "months", "code", "said"),
    [
        ("QUILLMAR", "grey tansy", ("from=2022-01", "to=2024-12"), 1, "is the record of the Quillmar Grey Tansy, and has cars built from 2022-01 until before 2023-06 too"),
        ("Quillmar", "Gray Tansy", ("from=2020", "to=2021"), 1, "which is spelt nearly alike"),
        ("Quilmar", "Grey Tansy", ("from=2020", "to=2021"), 1, "which is spelt nearly alike"),
        ("Quillmar", "Grey Tansy", ("from=2023-06", "to=2024"), 0, ""),
        ("Quillmar", "Green Tansy", ("from=2020", "to=2021"), 0, ""),
    ],
)  # fmt: skip
def test_a_car_that_is_there_already_is_found(
    capsys: pytest.CaptureFixture[str], make: str, model: str, months: tuple[str, str], code: int, said: str
) -> None:
    run(capsys, "new", *SAID, *INSIDE)
    found, _, err = run(capsys, "new", f"make={make}", f"model={model}", *months, *SAID[4:], *INSIDE)
    assert (found, said in err) == (code, True)
    if "nearly" in said:
        words = (f"make={make}", f"model={model}", *months, *SAID[4:], *INSIDE, "--another")
        assert run(capsys, "new", *words)[0] == 0


def test_like_another_car_nothing_counts_as_seen(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "new", *SAID, *INSIDE, "--like", "otter-2014-2018")
    assert (code, err) == (0, "")
    assert "none of that counts as seen" in out
    made = record()
    assert [problem for problem in check_entry(entry()) if problem.level == "error"] == []
    assert made.vehicle.model == "Grey Tansy"
    assert set(made.parts) == set(record(Path("records/vehicles/brindleway/otter-2014-2018.yaml")).parts)
    assert all(taken.unseen(made, "parts", name) for name in made.parts)


class Person:
    """Answers by what a question begins with."""

    def __init__(self, said: dict[str, str]) -> None:
        self.said = said
        self.asked: list[str] = []
        self.refused: list[str] = []

    def text(self, ask: str, check: Callable[[str], str], hint: str = "") -> str:
        answers = self._said(ask).split("|")
        self.refused += [wrong for answer in answers if (wrong := check(answer))]
        return answers[-1]

    def choose(self, ask: str, choices: Sequence[tuple[str, str]]) -> str:
        return next(value for value, label in choices if label == self._said(ask))

    def several(self, ask: str, choices: Sequence[tuple[str, str]], hint: str, needed: str = "") -> list[str]:
        return [value for value, label in choices if label in self._said(ask).split("|")]

    def _said(self, ask: str) -> str:
        self.asked.append(ask)
        return next(said for start, said in self.said.items() if ask.startswith(start))


def test_it_asks_for_what_is_lacking(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    person = Person(
        {
            "Make": "Quillmar",
            "Model": "Grey Tansy",
            "First month": "soon|2019-02",
            "Last month": "2023-05",
            "Which bodies": "Hatchback|Estate",
            "On which side": "Left-hand drive",
            "Is there a high": "No",
            "What is in": "A radio two slots high",
            "Which side doors": "front door",
            "Is there a boot": "Yes",
            "Is it like": "",
        }
    )
    for name in ("text", "choose", "several"):
        monkeypatch.setattr(prompts, name, getattr(person, name))
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    code, _, err = run(capsys, "new", "by=rk")
    assert (code, err) == (0, "")
    assert len(set(person.asked)) == 11
    assert [wrong[:31] for wrong in person.refused] == ["'soon' is not a valid month; wri"[:31]]
    assert record().vehicle.bodies == ("hatchback", "estate")
    assert "rear-door" not in record().openings


def test_gear_begins_too(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(
        capsys, "new", *SPEAKER, *MORE, "bolts/pattern=circle", "bolts/count=4", "bolts/diameter=156 mm"
    )
    assert (code, out, err) == (0, "records/gear/speakers/xylo-y2.yaml written\n", "")
    assert run(capsys, "check", "records/gear")[0] == 0
    assert (
        "bolts: {pattern: circle, count: 4, diameter: 156 mm}" in Path("records/gear/speakers/xylo-y2.yaml").read_text()
    )
    code, _, err = run(capsys, "new", *SPEAKER, *MORE)
    assert (code, "is there already" in err) == (1, True)
