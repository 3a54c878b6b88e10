"""What facts rest on, counted: people, cars, corrections, words that stand alone, and what is old."""

import json
import os
import subprocess
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.cli import main
from undertrim.derive.evidence.account import Account, Shares, account, people, total
from undertrim.derive.fact_names import fact_name
from undertrim.publish.facts.account import plain, report, restored, shares
from undertrim.record.model import VehicleRecord
from undertrim.record.source import read_text
from undertrim.record.store import entry
from undertrim.words import say

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
LOOK = '  e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}\n'
MORE = """  e2: {how: told, on: 2022-05-01, by: lm, car: "2015"}
  e3: {how: measured, on: 2026-04-01, by: tw, car: "2017", with: Calliper 0.05 mm}
"""
CONFLICT = """
conflicts:
  depth:
    about: openings/dash/depth/clear
    claims:
      - {says: 170 mm, source: e3}
      - {says: 150 mm, source: e2}
    settled_by: e3
"""


def made(text: str) -> Account:
    read = entry(PATH, "vehicle", read_text(text, PATH))
    assert isinstance(read.record, VehicleRecord), [problem.message for problem in read.problems]
    return account(read.record, read.source, "brindleway/otter-2014-2018", fact_name)


@pytest.fixture(scope="module")
def disputed() -> Account:
    text = BASE.replace(LOOK, LOOK + MORE).replace(
        "to: Cross-beam}\n    source: e1", "to: Cross-beam}\n    source: [e2, e3]"
    )
    assert text.count("[e2, e3]") == 1
    return made(text + CONFLICT)


def test_who_says_so(disputed: Account) -> None:
    by = {person.by: person for person in people([disputed, made(BASE)])}
    assert set(by) == {"rk", "lm", "tw"}
    assert (by["rk"].cars, by["rk"].vehicles, by["rk"].corrected) == (1, 1, 0)
    assert (by["lm"].cars, by["lm"].measured, by["lm"].corrected) == (0, 0, 1), (
        "who told looked at no car, and was wrong"
    )
    assert (by["tw"].corrected, by["tw"].first, by["tw"].last) == (0, "2026-04-01", "2026-04-01")
    assert by["tw"].facts == by["tw"].measured == by["lm"].facts > 0


def test_a_second_witness_is_no_lonely_word(disputed: Account) -> None:
    alone = made(BASE).shares
    assert (alone.one, alone.measured, alone.told) == (8, 8, 0)
    assert disputed.shares.one < alone.one
    assert (disputed.shares.known, disputed.shares.measured) == (alone.known, alone.measured)
    assert disputed.told == []


def test_what_somebody_told_alone_is_named_and_an_unknown_rests_on_nothing() -> None:
    text = BASE.replace("how: measured", "how: told").replace(", with: Calliper 0.05 mm", "")
    found = made(text.replace("clear: 170 mm", "clear: unknown"))
    told = {fact.about: say(fact.name) for fact in found.told}
    assert "openings/dash/depth/clear" not in told
    assert told["openings/dash/face/width"] == "Radio opening: face, width"
    assert found.shares.measured == 0
    assert found.shares.told == len(found.told) == found.shares.one == made(BASE).shares.one - 1
    assert found.shares.known == found.shares.facts - 1 == made(BASE).shares.known - 1


def test_old_is_what_still_holds_facts_up(disputed: Account) -> None:
    def old(day: date) -> list[str]:
        return [one.id for one in report([disputed], day).old]

    assert old(date(2025, 5, 1)) == []
    assert old(date(2025, 5, 2)) == ["e2"]
    assert old(date(2028, 2, 29)) == ["e2"]
    assert old(date(2029, 4, 1)) == ["e2", "e1"]


def test_shares_add_up_and_are_rounded_down() -> None:
    both = total([Account("a", Shares(3, 2, 1)), Account("b", Shares(197, 197, 1))])
    assert (both.facts, both.known, both.measured) == (200, 199, 2)
    assert {share.key: share.percent for share in shares(both)} == {
        "known": 99,
        "measured": 1,
        "verified": 0,
        "one": 0,
        "told": 0,
    }
    assert all(share.percent == 0 for share in shares(Shares()))


def test_over_time_is_the_last_commit_of_each_month(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    def git(*words: str, day: str = "2026-01-01") -> None:
        env = {**os.environ, "GIT_AUTHOR_DATE": f"{day}T12:00:00Z", "GIT_COMMITTER_DATE": f"{day}T12:00:00Z"}
        named = ("-c", "user.name=x", "-c", "user.email=x@x.invalid")
        subprocess.run(["git", *named, *words], cwd=tmp_path, env=env, check=True, capture_output=True)

    file = tmp_path / PATH
    file.parent.mkdir(parents=True)
    git("init", "--quiet")
    unknown = BASE.replace("clear: 170 mm", "clear: unknown")
    for day, text in (("2026-01-05", "x"), ("2026-01-30", unknown), ("2026-03-01", BASE)):
        file.write_text(text, encoding="utf-8")
        git("add", "--all")
        git("commit", "--quiet", "--message", day, day=day)
    assert main(["evidence", "--over-time", "--format", "json", "--in", str(tmp_path)]) == 0
    months = json.loads(capsys.readouterr().out)["months"]
    parts = [(one["month"], one["vehicles"], one["shares"][0]["part"]) for one in months]
    known = made(BASE).shares.known
    assert parts == [("2026-01", 1, known - 1), ("2026-03", 1, known)]
    assert main(["evidence", "--over-time", "--in", str(tmp_path)]) == 0
    assert "OVER TIME" in capsys.readouterr().out


def test_it_can_be_kept_as_plain_data(disputed: Account) -> None:
    told = replace(
        disputed, told=made(BASE.replace("how: measured", "how: told").replace(", with: Calliper 0.05 mm", "")).told
    )
    assert told.told
    assert restored(json.loads(json.dumps(plain(told)))) == told
