"""The `take` command with a claims file that describes a car without a record, and answers beside it."""

import json
from pathlib import Path

import pytest

from claiming import lay
from undertrim import cli
from undertrim.check.runner import check_entry
from undertrim.record import units
from undertrim.record.model import Hole, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.store import Entry, Workspace

FILE = Path("records/vehicles/quillmar/grey-tansy-2019-2023.yaml")
NEW = {
    "make": "Quillmar", "model": "Grey Tansy", "built": {"from": "2019-02", "to": "2023-06"}, "bodies": ["hatchback"],
    "drive_side": ["left"], "high_voltage": "no", "dash": "double", "doors": ["front", "rear"], "boot": "yes",
}  # fmt: skip
CLAIMS = {
    "claims": 1, "by": "rk", "on": "2026-11-20", "how": "measured", "with": "Calliper 0.05 mm", "new_vehicle": NEW,
    "vehicle": "quillmar/grey-tansy-2019-2023", "car": {"year": 2020, "side": "left"},
    "answers": [
        {"about": "openings/front-door/hole/shape", "says": "round"},
        {"about": "openings/front-door/hole/diameter", "says": "142 mm"},
        {"about": "openings/front-door/bolts/count", "says": "4"},
        {"about": "openings/front-door/room_to_grille", "says": "22 mm"},
        {"about": "parts/front-door-panel/held_by/0/screw", "says": "T30", "how": "seen"},
        {"about": "parts/factory-radio/release", "says": "unscrew", "how": "seen"},
    ],
}  # fmt: skip


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = cli.main(list(words))
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def entry() -> Entry:
    return Workspace(Path.cwd()).load(FILE.absolute())


def test_a_claims_file_begins_a_car_and_what_is_usual_gives_way(capsys: pytest.CaptureFixture[str]) -> None:
    file = Path("found.json")
    file.write_text(json.dumps(CLAIMS), encoding="utf-8")
    code, out, _ = run(capsys, "take", str(file), "--dry-run")
    assert f"{FILE} would be begun" in out
    assert not FILE.exists()
    code, out, err = run(capsys, "take", str(file))
    assert (code, f"{FILE} begun" in out) == (1, True)
    assert "6 answers: 5 written down, 1 refused" in out
    assert "'pattern' is missing from 'bolts'" in err
    assert "written down: unscrew; what stood there (slide) was only usual" in out
    made = entry().record
    assert isinstance(made, VehicleRecord)
    opening = made.openings["front-door"]
    assert isinstance(opening, SpeakerOpening)
    assert opening.hole == Hole("round", diameter=units.parse("142 mm", "length"))
    assert made.parts["front-door-panel"].held_by[0].what == "T30"
    assert made.conflicts == {}
    before = FILE.read_text(encoding="utf-8")
    code, out, _ = run(capsys, "take", str(file))
    assert f"{FILE} is there already" in out
    assert "6 answers: 5 already so, 1 refused" in out
    assert FILE.read_text(encoding="utf-8") == before


def test_a_file_may_say_the_car_to_new_and_other_files_do_not(capsys: pytest.CaptureFixture[str]) -> None:
    file = Path("car.json")
    file.write_text(json.dumps({"claims": 1, "by": "rk", "on": "2026-11-20", "new_vehicle": NEW}), encoding="utf-8")
    assert run(capsys, "new", str(file))[0] == 0
    assert not check_entry(entry())
    file.write_text(json.dumps({**CLAIMS, "new_vehicle": {**NEW, "make": "Quillmer"}}), encoding="utf-8")
    code, _, err = run(capsys, "take", str(file))
    assert (code, "spelt nearly alike" in err) == (1, True)
    file.write_text(json.dumps({key: said for key, said in CLAIMS.items() if key != "new_vehicle"}), encoding="utf-8")
    code, _, err = run(capsys, "new", str(file))
    assert (code, "describes no new car" in err) == (2, True)


def test_what_a_new_car_is_like_is_said_and_it_begins(capsys: pytest.CaptureFixture[str]) -> None:
    file = Path("car.json")
    file.write_text(json.dumps({"claims": 1, "by": "rk", "on": "2026-11-20", "new_vehicle": NEW}), encoding="utf-8")
    code, out, _ = run(capsys, "take", str(file))
    assert (code, "phases-alike" in out) == (0, False)
    other = {**NEW, "make": "Orlock", "model": "Bramble"}  # all that is usual is the same, and nobody copied it
    file.write_text(json.dumps({"claims": 1, "by": "rk", "on": "2026-11-20", "new_vehicle": other}), encoding="utf-8")
    code, out, _ = run(capsys, "take", str(file))
    assert (code, out.count("\n")) == (0, 1)
    later = {**NEW, "built": {"from": "2023-06", "to": "2026-01"}}
    file.write_text(json.dumps({"claims": 1, "by": "rk", "on": "2026-11-20", "new_vehicle": later}), encoding="utf-8")
    code, out, _ = run(capsys, "take", str(file), "--format", "json", "--dry-run")
    [begun] = json.loads(out)["begun"]
    assert {problem["rule"] for problem in begun["like"]} >= {"phases-alike"}
    code, out, _ = run(capsys, "take", str(file))
    assert (code, "(phases-alike)" in out) == (0, True)
    assert Path("records/vehicles/quillmar/grey-tansy-2023-2026.yaml").is_file()
