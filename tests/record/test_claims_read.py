"""Claims files from strangers: whatever stands in one is an answer or a problem with its place, and never an exception."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from claiming import SHARED
from undertrim.record import claims
from undertrim.words import sentence

GOOD = {"about": "openings/front-door/depth/clear", "says": "62 mm"}
NEW: dict[str, Any] = {
    "make": "Kelbrook",
    "model": "Plover",
    "built": {"from": "2015-02", "to": "2019-06"},
    "bodies": ["hatchback"],
    "drive_side": ["left", "right"],
    "high_voltage": "no",
    "dash": "double",
    "doors": ["front", "rear"],
    "boot": "yes",
}
PIECES: list[Any] = [
    None, True, 1, -1.5, "", "x", "62 mm", "../../etc/passwd", "\u0000", "\ud83d\ude00", "a" * 500, [], {}, [[]], {"about": "a/b"}, GOOD, NEW,
]  # fmt: skip
KEYS = [
    "claims",
    "vehicle",
    "by",
    "on",
    "how",
    "with",
    "car",
    "side",
    "answers",
    "new_vehicle",
    "about",
    "says",
    "found",
    "was",
    "note",
    "photo",
    "file",
    "x",
]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("read")


def read(folder: Path, text: str, name: str = "c.json") -> claims.ClaimsFile:
    (folder / name).write_text(text, encoding="utf-8", errors="surrogatepass")
    return claims.read(folder / name)


BLOCKS = st.dictionaries(st.sampled_from(KEYS), st.sampled_from(PIECES), max_size=6)
FILES = st.builds(
    lambda top, answers: {**SHARED, **top, "answers": answers},
    BLOCKS,
    st.lists(
        st.one_of(st.just(GOOD), st.builds(lambda more: {**GOOD, **more}, BLOCKS), st.sampled_from(PIECES)), max_size=5
    ),
)


@given(data=FILES)
def test_anything_is_answered_or_told(folder: Path, data: dict[str, Any]) -> None:
    found = read(folder, json.dumps(data, ensure_ascii=False))
    if found.problems:
        assert not found.answers
        return
    assert len(found.answers) + len(found.bad) == len(data["answers"])
    for bad in found.bad:
        assert all(sentence(problem.said) for problem in bad.problems)
    for one in found.answers:
        assert one.vehicle
        assert one.about
        assert bool(one.says) != bool(one.found)


@given(text=st.text(max_size=200))
def test_any_text_is_read(folder: Path, text: str) -> None:
    assert read(folder, text.encode("utf-8", "replace").decode(), "c.yaml").problems
    read(folder, text.encode("utf-8", "replace").decode(), "c.csv")


def test_what_the_top_says_holds_where_an_answer_does_not(folder: Path) -> None:
    other = {**GOOD, "by": "yy", "how": "seen", "car": "2015"}
    found = read(folder, json.dumps({**SHARED, "answers": [GOOD, other]}))
    one, two = found.answers
    assert (one.by, one.how, one.with_, one.car) == (
        "zz",
        "measured",
        "Calliper 0.05 mm",
        {"year": "2015", "is": {"radio": "plain"}},
    )
    assert (two.by, two.how, two.with_, two.car) == ("yy", "seen", "", "2015")
    assert one.keys == ("openings", "front-door", "depth", "clear")


def test_a_bad_top_spoils_only_what_rests_on_it(folder: Path) -> None:
    found = read(folder, json.dumps({**SHARED, "on": "yesterday", "answers": [GOOD, {**GOOD, "on": "2026-11-01"}]}))
    assert [bad.number for bad in found.bad] == [0]
    assert [one.on for one in found.answers] == ["2026-11-01"]


def test_more_than_enough_is_refused(folder: Path) -> None:
    found = read(folder, json.dumps({**SHARED, "answers": [GOOD] * 301}))
    assert "300" in sentence(found.problems[0].said)


def test_a_new_car_needs_no_answers(folder: Path) -> None:
    top = {"claims": 1, "by": "rk", "on": "2026-11-01", "car": {"year": 2016}}
    found = read(folder, json.dumps({**top, "new_vehicle": {**NEW, "model_years": {"first": 2015, "last": 2019}}}))
    assert (found.answers, found.bad, found.problems) == ((), (), ())
    assert found.new
    assert (found.new.by, found.new.on, found.new.car) == ("rk", "2026-11-01", {"year": "2016"})
    assert found.new.said == {**NEW, "model_years": {"first": "2015", "last": "2019"}}


@pytest.mark.parametrize(
    ("top", "spoilt", "says"),
    [
        ({"by": "rk"}, {}, "this new car lacks 'on'"),
        ({"by": "rk", "on": "yesterday"}, {}, "yesterday"),
        ({"by": "rk", "on": "2026-11-01"}, {"dash": "huge"}, "huge"),
        ({"by": "rk", "on": "2026-11-01"}, {"built": {"from": "2015-02"}}, "'to'"),
        ({"by": "rk", "on": "2026-11-01"}, {"wheels": "4"}, "wheels"),
    ],
)
def test_a_new_car_is_as_it_should_be_or_told(
    folder: Path, top: dict[str, Any], spoilt: dict[str, Any], says: str
) -> None:
    found = read(folder, json.dumps({"claims": 1, **top, "new_vehicle": {**NEW, **spoilt}}, indent=1))
    assert found.new is None
    assert [says in sentence(problem.said) for problem in found.problems] == [True]
    assert found.problems[0].position.line > 1


def test_a_file_with_neither_is_none(folder: Path) -> None:
    (problem,) = read(folder, json.dumps({"claims": 1, "by": "rk", "on": "2026-11-01"})).problems
    assert sentence(problem.said) == "this is no claims file of layout 1"
