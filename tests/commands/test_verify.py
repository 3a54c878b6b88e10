"""The `verify` command: what it writes, what it refuses, how it exits."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.record.source import read_text
from verifying import FILE, HOME, KNOWN, laid, run
from verifying import verify as verify_by

EARLIER = "1 record is of format 1: 'undertrim upgrade' moves it to format 2\n"
WORDS = ("--by", "rk", "--car", "2016, left-hand drive", "--on", "2026-04-02")
REFUSED = "nothing was written: mend what is above, then verify again\n"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    laid(tmp_path, KNOWN)
    monkeypatch.chdir(tmp_path)


def verify(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    return verify_by(capsys, *(words or WORDS))


def test_it_stamps_the_record_and_leaves_the_rest(capsys: pytest.CaptureFixture[str]) -> None:
    assert verify(capsys) == (0, f"{FILE}: verified, 6 blocks of facts\n", "")
    text = FILE.read_text(encoding="utf-8")
    assert text.startswith(f"{KNOWN}\nverified:\n  on: 2026-04-02\n  by: rk\n  car: 2016, left-hand drive\n  facts:\n")
    lines = [line.split(":")[0].strip() for line in text.partition("facts:\n")[2].splitlines()]
    assert lines == ["vehicle", "preps/battery", "restraint", "parts/radio", "openings/dash", "after_battery"]
    assert run(capsys, "check") == (0, f"1 record checked, no problems\n{EARLIER}", "")


def test_an_edit_makes_it_stale_until_it_is_verified_again(capsys: pytest.CaptureFixture[str]) -> None:
    verify(capsys)
    first = FILE.read_text(encoding="utf-8")
    FILE.write_text(first.replace("T20", "T25"), encoding="utf-8")
    code, out, _ = run(capsys, "check")
    assert (code, "changed 'parts/radio' (stale-verification)" in out) == (1, True)
    assert verify(capsys)[0] == 0
    second = FILE.read_text(encoding="utf-8")
    changed = [line for line in second.splitlines() if line not in first.splitlines()]
    assert [line.split(":")[0].strip() for line in changed] == ["held_by", "parts/radio"]
    assert run(capsys, "check")[0] == 0


def test_comments_and_layout_leave_it_fresh(capsys: pytest.CaptureFixture[str]) -> None:
    verify(capsys)
    text = FILE.read_text(encoding="utf-8").replace("release: slide", "release:  'slide'   # towards you")
    FILE.write_text(text, encoding="utf-8")
    assert run(capsys, "check")[0] == 0


def test_what_is_unknown_stands_in_the_way(capsys: pytest.CaptureFixture[str]) -> None:
    text = KNOWN.replace("wait: 2 min", "wait: unknown")
    FILE.write_text(text, encoding="utf-8")
    line = text[: text.index("restraint:")].count("\n") + 1
    before = FILE.read_bytes()
    assert verify(capsys) == (
        1,
        "",
        f"{FILE}:{line}:13: error: the restraint wait is unknown (verified-with-unknowns)\n"
        "    look it up in the maker's information\n1 record checked: 1 error, 0 warnings\n" + REFUSED,
    )
    assert FILE.read_bytes() == before


def test_an_allow_does_not_let_an_unknown_through(capsys: pytest.CaptureFixture[str]) -> None:
    line = "restraint: {wait: unknown, memory_keeper: forbidden, read_faults_first: no}"
    allowed = f"{line}  # allow verified-with-unknowns: nobody knows"
    FILE.write_text(BASE.replace("parts:\n", f"{allowed}\nparts:\n"), encoding="utf-8")
    assert verify(capsys)[0] == 1


@pytest.mark.parametrize(
    ("old", "new", "rule"),
    [
        ("T20, count: 4", "T20", "fastener-without-count"),
        ("release: slide", "release: throw", "schema"),
        ("kit: needed", "kit: needed: x", "yaml"),
        ("model: Otter", "model: Badger", "file-name"),
    ],
)
def test_errors_stand_in_the_way(capsys: pytest.CaptureFixture[str], old: str, new: str, rule: str) -> None:
    FILE.write_text(KNOWN.replace(old, new), encoding="utf-8")
    before = FILE.read_bytes()
    code, out, err = verify(capsys)
    assert (code, out) == (1, "")
    assert f"({rule})" in err
    assert err.endswith(REFUSED)
    assert FILE.read_bytes() == before


def test_a_warning_does_not(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(KNOWN.replace("takes: 3 min", "takes: 9 h"), encoding="utf-8")
    assert run(capsys, "check")[0] == 1
    assert verify(capsys)[0] == 0


def test_an_error_beside_its_neighbour_stands_in_the_way(capsys: pytest.CaptureFixture[str]) -> None:
    other = KNOWN.replace("built: {from: 2014-01, to: 2018-01}", "built: {from: 2016-01, to: 2020-01}")
    (HOME / "otter-2016-2020.yaml").write_text(other, encoding="utf-8")
    code, _, err = verify(capsys)
    assert (code, "(overlapping-records)" in err) == (1, True)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--by", "rk", "--car", "2016", "--on", "2026-02-30"), "'2026-02-30' is not a day"),
        (("--by", "rk", "--car", "2016", "--on", "today"), "'today' is not a valid day"),
        (("--by", "", "--car", "2016"), "by is empty"),
        (("--by", "rk", "--car", "x" * 121), "car has 121 characters, more than 120"),
        (("--by", "rk", "--car", "2016\n2017"), "on one line"),
    ],
)
def test_words_no_record_may_hold_are_refused(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], said: str
) -> None:
    code, out, err = verify(capsys, *words)
    assert (code, out) == (2, "")
    assert said in err
    assert FILE.read_text(encoding="utf-8") == KNOWN


@pytest.mark.parametrize(
    ("car", "on", "rule"),
    [
        ("2011, left-hand drive", "2026-04-02", "evidence-of-another-car"),
        ("2016, right-hand drive", "2026-04-02", "evidence-of-another-car"),
        ("built 2018-01", "2026-04-02", "evidence-of-another-car"),
        ("2016, left-hand drive", "2013-12-31", "evidence-before-the-car"),
        ("2016, left-hand drive", "2014-12-31", "evidence-before-the-car"),
        ("2016, left-hand drive", "2090-04-02", "evidence-after-today"),
    ],
)
def test_a_car_or_day_that_cannot_be_is_refused(
    capsys: pytest.CaptureFixture[str], car: str, on: str, rule: str
) -> None:
    code, out, err = verify(capsys, "--by", "rk", "--car", car, "--on", on)
    assert (code, out) == (1, "")
    assert f"({rule})" in err
    assert FILE.read_text(encoding="utf-8") == KNOWN


def test_a_stamp_says_which_car(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = verify(capsys, "--by", "rk", "--car", "The blue one")
    assert (code, out) == (1, "")
    assert "'verified' does not say of its car: year (car-not-said)" in err
    assert FILE.read_text(encoding="utf-8") == KNOWN


def test_a_vehicle_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "verify", "badger", *WORDS)
    assert (code, "no vehicle 'badger'" in err) == (2, True)


def test_gear_is_no_vehicle(capsys: pytest.CaptureFixture[str]) -> None:
    path = Path("records/gear/kits/a-b.yaml")
    path.parent.mkdir(parents=True)
    path.write_text("format: 1\n")
    assert run(capsys, "verify", str(path), *WORDS) == (2, "", f"undertrim: '{path}' is no vehicle record\n")


def test_a_layout_that_takes_no_stamp_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    FILE.write_text(KNOWN + "...\n", encoding="utf-8")
    code, _, err = verify(capsys)
    assert (code, "no block can be added" in err) == (1, True)
    assert FILE.read_text(encoding="utf-8") == KNOWN + "...\n"


def test_without_a_day_it_is_today_as_the_build_has_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1772500000")  # 2026-03-03 in UTC
    assert verify(capsys, "--by", "rk", "--car", "2016")[0] == 0
    typed = read_text(FILE.read_text(encoding="utf-8"), FILE).data
    assert isinstance(typed, dict)
    assert typed["verified"]["on"] == "2026-03-03"


# What is taken from another record

WREN = HOME / "wren-2014-2018.yaml"
TAKING = """\
format: 2
demo: yes
vehicle: {make: Brindleway, model: Wren, built: {from: 2014-01, to: 2018-01}, drive_side: [left], high_voltage: no}
evidence:
  e1: {how: seen, on: 2026-03-03, by: rk, car: "2016, left-hand drive"}
shares: {otter-2014-2018: {preps: all, parts: all, openings: all}}
preps: {battery: {wait: {time: 2 min, why: Restraint reserve power, source: e1}}}
restraint: {wait: 2 min, memory_keeper: forbidden, read_faults_first: no, source: e1}
after_battery: {checked_none: [before, after]}
"""


def verify_wren(capsys: pytest.CaptureFixture[str], *more: str) -> tuple[int, str, str]:
    WREN.write_text(TAKING, encoding="utf-8")
    return run(capsys, "verify", "wren-2014-2018", *WORDS, *more)


def test_what_was_not_seen_on_this_car_is_not_stamped_as_if_it_were(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = verify_wren(capsys)
    assert (code, out) == (1, "")
    assert "3 things are taken from the Brindleway Otter 2014–2018 and were not seen on this car" in err
    assert f"{WREN}:6:" in err
    assert WREN.read_text(encoding="utf-8") == TAKING


def test_a_safety_fact_of_the_other_car_is_unknown_even_then(capsys: pytest.CaptureFixture[str]) -> None:
    WREN.write_text(
        "".join(line for line in TAKING.splitlines(keepends=True) if "preps: {" not in line or "shares" in line)
    )
    code, _, err = run(capsys, "verify", "wren-2014-2018", *WORDS, "--taken", "seen")
    assert (code, "the wait after 'Battery off' is unknown" in err) == (1, True)


def test_who_looked_at_all_of_it_says_so_and_a_change_over_there_makes_it_stale(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, _, err = verify_wren(capsys, "--taken", "seen")
    assert (code, err) == (0, "")
    assert "  car: 2016, left-hand drive\n  taken: seen\n  facts:\n" in WREN.read_text(encoding="utf-8")
    assert run(capsys, "check", str(WREN))[0] == 0
    FILE.write_text(KNOWN.replace("T20", "T25"), encoding="utf-8")
    code, out, _ = run(capsys, "check", str(WREN))
    assert (code, "changed 'parts/radio' (stale-verification)" in out) == (1, True)
