"""The coverage command: one vehicle's matrix, the collection worst first, and how it exits."""

import json
from pathlib import Path
from typing import Any

import pytest
from rule_pages import BASE as MEAGRE

from undertrim import cli

FRONT = "clear_front: {width: 232 mm, height: 140 mm}\n    depth: {clear: 170 mm, datum: face,"
SOUND = "sound: {only: {output: speaker, least_load: 4 ohm, source: e1}}\n"
BASE = MEAGRE.replace("depth: {clear: 170 mm,", FRONT) + SOUND
HOME = Path("records/vehicles/brindleway")
VARIANTS = """variants:
  sound:
    ask: Which sound?
    choices:
      plain: {label: Plain sound, tell: No badge}
      full: {label: Full sound, tell: A badge}
      grand: {label: Grand sound, tell: A gold badge}
"""
SHELF = """  shelf:
    name: Shelf speakers
    kind: speaker
    area: boot
    when: {sound: full}
    not_in: [{sound: plain}]
    behind: [radio]
    hole: {shape: round, diameter: 120 mm}
    depth: {clear: unknown}
"""
HALF = BASE.replace("after_battery:", f"{SHELF}{VARIANTS}after_battery:")
WHOLE = BASE + "restraint: {wait: 2 min, memory_keeper: allowed, read_faults_first: no, source: e1}\n"

VEHICLE = """brindleway/half

             Radio opening  Shelf speakers
Plain sound  value          none
Full sound   value          value
Grand sound  value          MISSING
facts        5/5            1/9
value: recorded; none: looked into, not there; MISSING: nobody has said; facts: how many of the
facts that its kind wants are known

Openings recorded or looked into: 5/6 = 83 %
  MISSING: Shelf speakers in Grand sound

To find out next, the most useful first:
   1. look up the maker's wait between battery off and touching restraint wiring
   2. look up whether the maker forbids a memory keeper
   3. look up whether stored restraint faults must be read before the battery goes off
   4. look for 'Shelf speakers' in a car with Grand sound: record it, or write 'not_in'
   5. count and measure the bolt holes of 'Shelf speakers'
   6. measure the flat panel round the hole of 'Shelf speakers'
   7. measure the depth of 'Shelf speakers' from the face the speaker sits on
   8. measure how far what is behind 'Shelf speakers' leans against the mounting face, or write
      'none' where it stands square
   9. measure the room from the mounting face of 'Shelf speakers' to the inside of its grille
  10. measure the height of the factory spacer of 'Shelf speakers', or write 'none'
  11. read or measure the impedance of the factory speaker of 'Shelf speakers'
  12. find out which channel feeds 'Shelf speakers'
"""


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / HOME).mkdir(parents=True)
    for name, text in (("bare", BASE), ("half", HALF), ("whole", WHOLE)):
        (tmp_path / HOME / f"{name}.yaml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = cli.main(["coverage", *words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def loaded(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(run(capsys, "--format", "json", *words)[1])
    return data


def test_one_vehicle(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "half") == (0, VEHICLE, "")


def test_several_are_told_apart(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "whole", "brindleway/half")
    assert out.endswith(f"Nothing is known to be unknown.\n\n{VEHICLE}")


def test_the_collection_worst_first(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys) == (
        0,
        "brindleway/half   5/6 = 83 %   12 to find out, 3 of them for safety\n"
        "brindleway/bare   1/1 = 100 %  3 to find out, 3 of them for safety\n"
        "brindleway/whole  1/1 = 100 %  nothing to find out\n"
        "all vehicles      7/8 = 88 %\n",
        "",
    )


def test_json_says_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    data = loaded(capsys)
    assert data["total"] == {"answered": 7, "cells": 8, "percent": 88, "share": "7/8 = 88 %"}
    assert [item["vehicle"] for item in data["vehicles"]] == [
        f"brindleway/{name}" for name in ("half", "bare", "whole")
    ]
    (half,) = loaded(capsys, "half")["vehicles"]
    assert half == data["vehicles"][0]
    assert half["openings"][1]["facts_lacking"] == [
        "bolts",
        "panel",
        "depth",
        "depth leans",
        "room to grille",
        "factory spacer",
        "impedance",
        "channel",
    ]
    assert half["cars"][2] == {
        "car": {"sound": "grand"},
        "label": "Grand sound",
        "cells": {"dash": "value", "shelf": "missing"},
    }
    assert half["missing"] == [{"opening": "shelf", "name": "Shelf speakers", "cars": ["Grand sound"]}]
    assert half["next"][6]["kind"] == "dimension"
    assert half["next"][6]["place"] == "openings/shelf/depth"


def test_a_record_that_cannot_be_read_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    (HOME / "broken.yaml").write_text("parts: [", encoding="utf-8")
    code, out, err = run(capsys)
    assert code == 1
    assert out.endswith("all vehicles      7/8 = 88 %\n")
    assert err == f"undertrim: {HOME}/broken.yaml cannot be read as a record: run 'undertrim check' for the details\n"


def test_a_vehicle_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "hlaf")
    assert (code, out) == (2, "")
    assert "no vehicle 'hlaf'; did you mean 'half'?" in err


def test_an_empty_collection(capsys: pytest.CaptureFixture[str]) -> None:
    for path in HOME.iterdir():
        path.unlink()
    assert run(capsys) == (0, "all vehicles  0/0 = 0 %\n", "")


def test_what_a_record_holds_cannot_steer_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    nasty = HALF.replace("label: Grand sound", 'label: "Gr\\e[31m\\nand"').replace("  shelf:", '  "sh\\eelf":')
    (HOME / "half.yaml").write_text(nasty, encoding="utf-8")
    for words in (["half"], [], ["half", "--format", "json"]):
        _, out, err = run(capsys, *words)
        assert all(char.isprintable() or char == "\n" for char in out + err)
