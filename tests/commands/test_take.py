"""The `take` command: what it writes, what it leaves, how it exits."""

import json
from pathlib import Path

import pytest

from claiming import ADDRESS, FILE, RECORD, claims, lay, lines, run, says
from undertrim import cli


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)


def test_the_record_of_these_tests_passes(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["check"]) == 0, capsys.readouterr().out
    assert cli.main(["format", "--check"]) == 0


def test_what_was_unknown_is_written_with_its_evidence(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, claims(says("openings/front-door/depth/clear", "62 mm", side="left")))
    assert (code, err) == (0, "")
    assert out == (
        f"found.json:1:196: {ADDRESS}/openings/front-door/depth/clear: written down: 62 mm, which was unknown\n"
        f"{FILE}: changed\n"
        "1 answer: 1 written down\n"
    )
    assert lines() == [
        "e3: {how: measured, on: 2026-11-20, by: zz, car: {year: 2015, is: {radio: plain}}, side: left, with: Calliper 0.05 mm}",
        "depth: {clear: 62 mm, datum: skin, over: whole-travel}",
        "source: [e1, e3]",
    ]
    assert cli.main(["check"]) == 0
    assert cli.main(["format", "--check"]) == 0


def test_taken_again_nothing_changes(capsys: pytest.CaptureFixture[str]) -> None:
    file = claims(says("openings/front-door/depth/clear", "62 mm"), {"about": "restraint/wait", "found": "cannot-tell"})
    run(capsys, file)
    before = FILE.read_text(encoding="utf-8")
    code, out, _ = run(capsys, file)
    assert (code, FILE.read_text(encoding="utf-8")) == (0, before)
    assert out.endswith("2 answers: 2 already so\n")
    assert "depth/clear: already so: 62 mm\n" in out


def test_what_differs_becomes_a_conflict(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, claims(says("openings/front-door/hole/diameter", "144 mm")))
    assert code == 0
    assert "the record says '146 mm' and the answer '144 mm': both stand in a conflict now" in out
    assert (
        "front-door-hole-diameter: {about: openings/front-door/hole/diameter, claims: [[146 mm, e1], [144 mm, e3]]}"
        in lines()
    )
    assert "sizes: {hole: [round, 146 mm], bolts: [circle, 4, 160 mm]}" in FILE.read_text(encoding="utf-8")
    again = claims(says("openings/front-door/hole/diameter", "5.7 in", by="yy"))
    assert "'5.7 in' stands in the conflict 'front-door-hole-diameter' now" in run(capsys, again)[1]
    assert "[144 mm, e3], [5.7 in, e4]]}" in FILE.read_text(encoding="utf-8")


def test_the_same_from_somebody_else_is_one_more_witness(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, claims(says("openings/front-door/hole/diameter", "14.6 cm")))
    assert "14.6 cm stands there; named as found by one more" in out
    assert "source: [e1, e3]" in lines()


def test_a_coarser_look_makes_nothing_less_sure(capsys: pytest.CaptureFixture[str]) -> None:
    answer = says("openings/front-door/hole/diameter", "146 mm", **{"with": "Tape 1 cm"})
    assert "already so: 146 mm, measured at least as finely" in run(capsys, claims(answer))[1]
    assert lines() == []


def test_where_people_can_be_hurt_the_cautious_value_stands(capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, claims(says("openings/front-door/crash_sensor", "no", how="maker")))
    assert "crash_sensor: no" in lines()
    run(capsys, claims(says("openings/front-door/crash_sensor", "yes", by="yy")))
    assert "crash_sensor: yes" in lines()
    assert cli.main(["check"]) == 0


def test_the_form_of_the_car_gets_its_value_alone(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, _ = run(capsys, claims(says("openings/dash/depth/clear", "140 mm")))
    assert code == 0
    assert "- {when: {radio: plain}, clear: 140 mm}" in lines()
    assert "- {when: {radio: map}, clear: 165 mm}  # to the beam" not in lines()


def test_a_function_leaves_the_group_that_named_it(capsys: pytest.CaptureFixture[str]) -> None:
    file = claims(says("functions/speed/by", "data"), {"about": "functions/reverse/by", "found": "none"})
    code, out, _ = run(capsys, file)
    assert (code, out.count("written down")) == (0, 3)
    text = FILE.read_text(encoding="utf-8")
    assert "functions:\n  reverse: {by: absent, source: e3}\n  speed: {by: data, source: e3}\n" in text
    assert "unknown: {functions" not in text


def test_a_field_that_nobody_typed_opens_the_short_form(capsys: pytest.CaptureFixture[str]) -> None:
    run(
        capsys,
        claims(
            says("openings/front-door/bolts/angle", "45 deg"),
            says("openings/dash/depth/datum", "face", car={"year": 2016, "is": {"radio": "map"}}),
        ),
    )
    text = FILE.read_text(encoding="utf-8")
    assert "bolts: {pattern: circle, count: 4, diameter: 160 mm, angle: 45 deg}" in text
    assert "clear: 165 mm, datum: face" in text


def test_doubt_makes_the_fact_unknown_until_somebody_looks(capsys: pytest.CaptureFixture[str]) -> None:
    answer = {"about": "openings/front-door/impedance", "found": "not-so", "was": "4 ohm"}
    _, out, _ = run(capsys, claims(answer))
    assert "the record says '4 ohm' and the answer 'unknown': both stand in a conflict now" in out
    other = {"about": "openings/front-door/hole/diameter", "found": "not-so", "was": "143 mm"}
    assert (
        "nothing to write: it was about '143 mm', and the record says '146 mm' by now" in run(capsys, claims(other))[1]
    )


def test_a_dry_run_shows_and_writes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, claims(says("openings/front-door/depth/clear", "62 mm")), "--dry-run")
    assert (code, lines()) == (0, [])
    assert "\n+    depth: {clear: 62 mm, datum: skin, over: whole-travel}\n" in out
    assert f"{FILE}: would change\n" in out


def verified() -> str:
    """The record with a stamp."""
    sure = RECORD.replace(
        "unknown, memory_keeper: unknown, read_faults_first: unknown",
        "2 min, memory_keeper: forbidden, read_faults_first: no, source: e1",
    )
    sure = sure.replace("crash_sensor: unknown", "crash_sensor: no").replace(
        "after_battery: unknown", "after_battery: {checked_none: [before, after], source: e1}"
    )
    FILE.write_text(sure, encoding="utf-8")
    stamp = ["verify", "otter-2014-2018", "--by", "rk", "--car", "2016, Map radio", "--on", "2026-04-02"]
    assert cli.main(stamp) == 0
    return FILE.read_text(encoding="utf-8")


def test_a_witness_alone_leaves_a_stamp(capsys: pytest.CaptureFixture[str]) -> None:
    stamped = verified()
    said = "already so: 146 mm; the record is verified, and stays as it is"
    assert said in run(capsys, claims(says("openings/front-door/hole/diameter", "146 mm")))[1]
    assert FILE.read_text(encoding="utf-8") == stamped


def test_a_stamp_goes_with_the_fact_it_vouched_for(capsys: pytest.CaptureFixture[str]) -> None:
    verified()
    both = claims(says("openings/front-door/hole/diameter", "146 mm"), says("openings/front-door/depth/clear", "62 mm"))
    _, out, _ = run(capsys, both)
    assert "2 answers: 1 written down, 1 seen once more" in out
    assert f"{FILE}: was verified; its stamp is taken off, since a fact in it is another\n" in out
    after = FILE.read_text(encoding="utf-8")
    assert "verified:" not in after
    assert run(capsys, both)[1].endswith("2 answers: 2 already so\n")
    assert FILE.read_text(encoding="utf-8") == after
    assert cli.main(["check"]) == 0


def test_yaml_is_read_too(capsys: pytest.CaptureFixture[str]) -> None:
    Path("found.yaml").write_text(
        f"claims: 1\nvehicle: {ADDRESS}\nby: zz\non: 2026-11-20\nhow: told\nanswers:\n  - {{about: openings/front-door/depth/clear, says: 62 mm}}\n",
        encoding="utf-8",
    )
    assert run(capsys, "found.yaml")[0] == 0
    assert "e3: {how: told, on: 2026-11-20, by: zz}" in lines()


def test_the_answers_come_as_data(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, claims(says("openings/front-door/depth/clear", "62 mm")), "--format", "json")
    data = json.loads(out)
    assert (code, [item["deed"] for item in data["answers"]]) == (0, ["filled"])
    assert data["records"] == [{"path": str(FILE), "changed": True, "stamp_gone": False}]
