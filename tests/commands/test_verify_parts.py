"""Parts of a record, stamped at cars that show no more than these."""

from pathlib import Path
from typing import Any

import pytest

from undertrim.record.source import read_text
from verifying import FILE, KNOWN, laid, run, verify


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    laid(tmp_path, PARTLY)
    monkeypatch.chdir(tmp_path)


PARTLY = (
    KNOWN.replace(
        "openings:\n",
        """  door-panel:
    name: Door panel
    area: front-door
    each: [left, right]
    release: lift
    held_by: [{clip: fir-tree, count: 7}]
    takes: 5 min
  map-brace:
    name: Brace
    area: dash
    when: {radio: map}
    release: unscrew
    held_by: [{screw: T25, count: 2}]
    takes: 2 min
openings:
  front-door:
    name: Door speakers
    kind: speaker
    area: front-door
    each: [left, right]
    behind: [door-panel]
    hole: {shape: round, diameter: 138 mm}
    depth: {clear: 58 mm, datum: skin, over: whole-travel}
    crash_sensor: unknown
    source: e1
""",
    )
    .replace("    release: slide\n", "    after: [map-brace]\n    release: slide\n")
    .replace(
        "evidence:\n",
        """variants:
  radio:
    ask: Which radio is in the dash?
    choices:
      plain: {label: Plain radio, tell: Six number keys}
      map: {label: Map radio, tell: A key marked MAP}
evidence:
""",
    )
)
DASH = ("--only", "dash", "--by", "rk", "--on", "2026-04-02", "--car", "2016, left-hand drive")


def stamps() -> dict[str, Any]:
    typed = read_text(FILE.read_text(encoding="utf-8"), FILE).data
    assert isinstance(typed, dict)
    return typed.get("verified_parts", {})  # type: ignore[no-any-return] # a part of what was read


def test_a_part_is_stamped_with_what_it_rests_on_in_that_car(capsys: pytest.CaptureFixture[str]) -> None:
    assert verify(capsys, *DASH[2:])[0] == 1, "the sensor in the door is unknown"
    assert verify(capsys, *DASH, "--variant", "radio=plain") == (0, f"{FILE}: verified, 7 blocks of facts\n", "")
    assert FILE.read_text(encoding="utf-8").startswith(f"{PARTLY}\nverified_parts:\n  dash:\n    on: 2026-04-02\n")
    (stamp,) = stamps().values()
    assert stamp["car"] == "2016, left-hand drive, Plain radio"
    assert list(stamp["facts"]) == [
        "vehicle",
        "variants/radio",
        "preps/battery",
        "restraint",
        "parts/radio",
        "openings/dash",
        "after_battery",
    ]
    assert verify(capsys, *DASH, "--variant", "radio=map")[0] == 0
    assert [*stamps()] == ["dash", "dash-2"]
    assert "parts/map-brace" in stamps()["dash-2"]["facts"]
    assert run(capsys, "check")[1].count(" error: ") == 0


def test_an_edit_clears_only_what_rests_on_it(capsys: pytest.CaptureFixture[str]) -> None:
    # Long because each edit is of the same stamped record.
    FILE.write_text(PARTLY.replace("crash_sensor: unknown", "crash_sensor: no"), encoding="utf-8")
    door = (
        "--only",
        "front-door",
        "--by",
        "ew",
        "--on",
        "2026-04-03",
        "--car",
        "2015, left-hand drive, plain radio",
        "--side",
        "left",
    )
    assert verify(capsys, *DASH, "--variant", "radio=plain")[0] == verify(capsys, *door)[0] == 0
    assert stamps()["front-door-left"]["side"] == "left"
    text = FILE.read_text(encoding="utf-8")
    for old, new, stale in [
        ("fir-tree, count: 7", "fir-tree, count: 8", ["front-door-left"]),
        ("screw: T25, count: 2", "screw: T25, count: 3", []),  # a part that neither car has
        ("screw: T20, count: 4", "screw: T20, count: 5", ["dash"]),
        ("high_voltage: no", "high_voltage: yes", ["dash", "front-door-left"]),
    ]:
        assert old in text
        FILE.write_text(text.replace(old, new), encoding="utf-8")
        out = run(capsys, "check")[1]
        assert [name for name in ("dash", "front-door-left") if f"facts of '{name}' edited" in out] == stale, old
    # what the door needs off now, and did not when it was stamped, is told too; to verify it again mends that stamp alone
    FILE.write_text(
        text.replace("name: Door panel\n", "name: Door panel\n    after: [map-brace]\n").replace(
            "    when: {radio: map}\n", ""
        ),
        encoding="utf-8",
    )
    assert "added 'parts/map-brace'" in run(capsys, "check")[1]
    assert verify(capsys, *door)[0] == 0
    assert "facts of 'front-door-left'" not in (out := run(capsys, "check")[1])
    assert "facts of 'dash' edited" in out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--only", "dahs"), "'dash'"),
        (("--only", "dash", "--variant", "radio=maps"), "'map'"),
        (("--only", "dash", "--car", "2016, map radio", "--variant", "radio=plain"), "disagree"),
        (("--side", "left"), "they go with '--only OPENING'"),
    ],
)
def test_a_part_or_car_that_is_not_there_is_refused(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], said: str
) -> None:
    code, _, err = verify(capsys, "--by", "rk", "--car", "2016, left-hand drive", *words)
    assert (code, said in err) == (2, True), err
    assert FILE.read_text(encoding="utf-8") == PARTLY


def test_what_is_unknown_elsewhere_is_not_in_the_way(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = verify(capsys, "--only", "front-door", *DASH[2:], "--variant", "radio=plain")
    assert (code, "crash pressure sensor" in err) == (1, True)
    assert verify(capsys, *DASH, "--variant", "radio=plain")[0] == 0
