"""What the `take` command refuses, and says of it."""

import json
from pathlib import Path

import pytest

from claiming import FILE, RECORD, claims, lay, lines, run, says
from undertrim import cli


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)


def test_an_answer_that_does_not_say_its_car_is_refused_where_cars_differ(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, claims(says("openings/dash/depth/clear", "140 mm"), car={"year": 2015}))
    assert (code, lines()) == (1, [])
    assert (
        "'openings/dash/depth/clear' differs between cars, and the answer does not say which one it was found at" in err
    )


def test_a_bad_answer_does_not_stop_the_good_ones(capsys: pytest.CaptureFixture[str]) -> None:
    file = claims(
        says("openings/front-door/depth/clear", "620 mm"),
        says("openings/front-door/depth/cleer", "62 mm"),
        says("openings/rear-door/depth/clear", "62 mm"),
        says("evidence/e1/by", "me"),
        {"about": "openings/front-door/hole"},
        {"about": "openings/front-door", "says": "x"},
        {"about": "parts/radio", "found": "not-so", "note": "A fifth screw."},
        says("openings/front-door/room_to_grille", "22 mm"),
    )
    code, out, err = run(capsys, file, "--left", "left.json")
    assert code == 1
    assert "room_to_grille: written down: 22 mm" in out
    assert "room_to_grille: 22 mm" in FILE.read_text(encoding="utf-8")
    assert "did you mean 'clear'?" in err
    assert "the record has no 'openings/rear-door'" in err
    assert "'evidence/e1/by' is no fact about the car" in err
    assert 'an answer has either "says" or "found"' in err
    assert "'openings/front-door' is more than one value" in err
    assert "that 'parts/radio' is not so is for a person to look at" in err
    assert "with it the check would find: " in err
    left = json.loads(Path("left.json").read_text(encoding="utf-8"))
    assert len(left["answers"]) == 7
    assert run(capsys, "left.json")[0] == 1
    assert cli.main(["check"]) == 0


def test_what_goes_together_goes_in_together(capsys: pytest.CaptureFixture[str]) -> None:
    """A wire without its place is refused, and with it taken, in whatever order the answers stand."""
    alone = claims(says("functions/reverse/by", "wire"))
    assert "'reverse' is there by wire, and nothing says where (wire-without-pin)" in run(capsys, alone)[2]
    both = claims(says("functions/reverse/by", "wire"), says("functions/reverse/note", "At the lamp in the boot."))
    assert run(capsys, both)[0] == 0
    assert cli.main(["check"]) == 0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{}", "this is no claims file of layout 1"),
        ("[1, 2]", "this is no claims file of layout 1"),
        ('{"claims": 2, "answers": []}', "this is no claims file of layout 1"),
        ('{"claims": 1, "answers": [', "found.json:1:"),
        ('{"claims": 1, "answers": []}', "found.json:1:26: "),
        ("x" * 1_000_001, "larger than"),
        (
            '{"claims": 1, "vehicle": "../../etc/passwd", "answers": [{"about": "openings/a/b", "says": "1"}]}',
            "refused",
        ),
        (
            '{"claims": 1, "vehicle": "other/car", "by": "a", "on": "2026-01-01", "how": "told", "answers": [{"about": "openings/a/b", "says": "1"}]}',
            "no vehicle 'other/car'",
        ),
        (
            '{"claims": 1, "answers": [{"about": "openings/a/b", "says": "1"}]}',
            "this answer lacks 'vehicle', 'by', 'on' and 'how'",
        ),
    ],
)
def test_what_is_no_claims_file_is_said(capsys: pytest.CaptureFixture[str], text: str, said: str) -> None:
    Path("found.json").write_text(text, encoding="utf-8")
    code, _, err = run(capsys, "found.json")
    assert (code, lines()) == (1, [])
    assert said in err


def test_a_record_with_errors_takes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(RECORD.replace("146 mm", "146"), encoding="utf-8")
    code, _, err = run(capsys, claims(says("openings/front-door/depth/clear", "62 mm")))
    assert code == 1
    assert f"refused: {FILE} has errors, so nobody can say what it knows" in err


STAGE = """
  tail:
    name: Tail speaker
    kind: [speaker, rear, 4 in, 4 ohm]
    behind: radio
    when: {radio: map}
    sizes: {hole: [round, 90 mm], bolts: [circle, 4, 100 mm]}
    depth: {clear: 40 mm, datum: bracket}
    source: e1
"""


def test_an_opening_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(RECORD.replace("\nfunctions:", f"{STAGE.rstrip()}\n\nfunctions:"), encoding="utf-8")
    about = "openings/tail"
    assert cli.main(["coverage", "otter-2014-2018", "--questions"]) == 0
    assert f"{about}: if it is there, take it apart and record it; or none" in capsys.readouterr().out
    none = {"about": about, "found": "none"}
    code, out, _ = run(capsys, claims(none))
    assert code == 0
    assert "written down: it is not there in such a car" in out
    assert "not_in: {radio: plain}" in FILE.read_text(encoding="utf-8")
    assert "already so: it is not there in such a car" in run(capsys, claims(none))[1]
    assert cli.main(["coverage", "otter-2014-2018", "--questions"]) == 0
    assert f"{about}: if it is there" not in capsys.readouterr().out
    other = run(capsys, claims(none, car={"year": 2016, "is": {"radio": "map"}}))
    assert "the record has 'openings/tail' in such a car" in other[2]
    assert "differs between cars" in run(capsys, claims(none, car={"year": 2016}))[2]


def test_a_new_car_that_is_refused_is_kept_too(capsys: pytest.CaptureFixture[str]) -> None:
    new = {"make": "Brindleway", "model": "Otter", "built": {"from": "2014-01", "to": "2019-01"}, "model_years": {"first": 2014, "last": 2018}, "bodies": ["hatchback"], "drive_side": ["left"], "high_voltage": "no", "dash": "double", "doors": ["front"], "boot": "yes"}  # fmt: skip
    for number, by in enumerate(("zz", "yy")):
        told = {"claims": 1, "by": by, "on": "2026-11-20", "car": {"year": 2016}, "new_vehicle": new}
        Path(f"car-{number}.json").write_text(json.dumps(told), encoding="utf-8")
    assert cli.main(["take", "car-0.json", "car-1.json", "--left", "left.json"]) == 1
    assert capsys.readouterr().out.count("has the answer that was refused") == 2
    for file, by in (("left.json", "zz"), ("left-2.json", "yy")):
        left = json.loads(Path(file).read_text(encoding="utf-8"))
        assert left == {"claims": 1, "by": by, "on": "2026-11-20", "car": {"year": 2016}, "new_vehicle": new}
        assert cli.main(["take", file]) == 1, "it can be taken again, and is refused for the same reason"
