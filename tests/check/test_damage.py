"""Whatever a record holds, a problem and never an exception: junk in every place, damage at random, any text."""

import json
import re
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from rich_record import GEAR, PATH, RICH, ROOT, check, said

from undertrim.check import runner
from undertrim.record.build import KEYED
from undertrim.record.copying import copied
from undertrim.record.problem import Problem
from undertrim.record.source import Pointer, read, read_bytes, read_text
from undertrim.record.spreading import spread
from undertrim.record.store import entry


def places(data: Any, pointer: Pointer = ()) -> Iterator[Pointer]:
    if pointer:
        yield pointer
    steps = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for step, inner in steps:
        yield from places(inner, (*pointer, step))


def put(data: Any, pointer: Pointer, value: Any) -> Any:
    changed = copied(data)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    inner[pointer[-1]] = value
    return changed


def remove(data: Any, pointer: Pointer) -> Any:
    changed = copied(data)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    del inner[pointer[-1]]
    return changed


def rename(data: Any, pointer: Pointer, name: str) -> Any:
    changed = copied(data)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    entries = [(name if key == pointer[-1] else key, value) for key, value in inner.items()]
    inner.clear()
    inner.update(entries)
    return changed


def written(data: Any) -> str:
    """The data as YAML: JSON is YAML, each value on its own line and quoted."""
    return json.dumps(data, indent=1, ensure_ascii=False)


RICH_DATA = read_text(RICH, PATH).data


@pytest.mark.parametrize("junk", [None, ["x"], {"x": "y"}, "???"], ids=str)
def test_what_the_schema_refuses_is_told_by_the_schema_alone(junk: Any) -> None:
    for place in places(RICH_DATA):
        if len(place) == 1 or place == ("variants", "sound") or (place[-1] in KEYED and isinstance(junk, dict)):
            continue  # what is named is truly gone then, or nothing rests on 'e2' any more
        problems = check(written(put(RICH_DATA, place, junk)))
        if any(problem.rule == "schema" for problem in problems):
            assert {problem.rule for problem in problems} == {"schema"}, (place, said(problems))


# Random damage

RAW = re.compile(
    r"\{'\w|\['\w|\[\{'|\bNone\b|<class|is not of type|is a required property|Additional propert|does not match|is not one of"
    r"|is too long$|is too short$|non-empty|is not valid under|has non-unique|\$defs|\$ref|urn:|while scanning|while parsing"
    r"|did not find|unexpected end of stream|Traceback"
)
JUNK: list[Any] = [
    None, "", " ", "x", "???", "é\u0301", "-1", "0", "9" * 400, "unknown", "none", "yes", "62 mm", "12 min", "1/0 in", "T20", "a: b", "# x",
    "\x1b[31m", "\n", "a\nb", "\u202e", "x" * 3000, "'", '"', "{}", "..", "a/b", "2016-13", "2026-02-30", [], {}, [None], [[]], {"": None},
    ["x"], ["x", "x"], {"x": "y"}, {"part": "radio"}, {"when": {}}, [{"screw": "T20"}], {"screw": {"screw": []}},
]  # fmt: skip
SEEDS: list[tuple[str, Any]] = [
    ("vehicle", RICH_DATA),
    ("vehicle", spread(read(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml")).data),
    ("gear", read(GEAR / "sandmartin-bank-65.yaml").data),
    ("gear", read(next(iter((ROOT / "records/gear/harnesses").glob("*.yaml")))).data),
]


@st.composite
def damaged(draw: st.DrawFn) -> tuple[str, Any, Any]:
    number = draw(st.sampled_from([0, 0, 0, 1, 2, 3]))
    kind, good = SEEDS[number]
    data = good
    for _ in range(draw(st.integers(1, 3))):
        there = list(places(data))
        if not there:
            break
        data = draw(damage(data, draw(st.sampled_from(there)), there))
    return kind, good, data


@st.composite
def damage(draw: st.DrawFn, data: Any, place: Pointer, there: list[Pointer]) -> Any:
    match draw(st.sampled_from(["junk", "text", "remove", "rename", "nest", "swap", "add"])):
        case "junk":
            return put(data, place, draw(st.sampled_from(JUNK)))
        case "text":
            return put(data, place, draw(st.text(max_size=50).filter(lambda text: not RAW.search(text))))
        case "remove":
            return remove(data, place)
        case "rename" if isinstance(place[-1], str):
            return rename(data, place, draw(st.sampled_from([place[-1] + "s", place[-1][1:], "x y", "", "minutes"])))
        case "nest":
            return put(data, place, {str(place[-1]): at(data, place)})
        case "swap":
            return put(data, place, copied(at(data, draw(st.sampled_from(there)))))
    holder = at(data, place)
    return put(data, (*place, "colour-of-it"), "red") if isinstance(holder, dict) else data


def at(data: Any, place: Pointer) -> Any:
    for step in place:
        data = data[step]
    return data


def sound(problem: Problem, text: str) -> bool:
    lines = text.split("\n")
    line, column = problem.position.line, problem.position.column
    return (
        1 <= line <= len(lines)
        and 1 <= column <= len(lines[line - 1]) + 1  # something empty may stand behind the last character
        and bool(problem.message)
        and problem.message.isprintable()
        and problem.hint.isprintable()
        and not problem.message[0].isupper()
        and not problem.message.endswith(".")
        and not RAW.search(problem.message)
        and not RAW.search(problem.hint)
        and problem.rule != runner.CRASH
    )


@settings(max_examples=250, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(damaged())
def test_damage_gives_problems_and_no_exception(case: tuple[str, Any, Any]) -> None:
    kind, _, data = case
    text = written(data)
    problems = check(text, kind)
    assert [problem for problem in problems if not sound(problem, text)] == []
    assert len(problems) < 200


@settings(max_examples=100, deadline=None)
@given(st.text(alphabet=st.sampled_from("ab:-?[]{}#&*!|>'\"%@`, \n\t\\~.<=\r\x1b\u2028é"), max_size=60))
def test_any_text_gives_problems_and_no_exception(text: str) -> None:
    lines = re.sub("\r\n?", "\n", text)
    assert [problem for problem in check(text) if not sound(problem, lines)] == []


@settings(max_examples=60, deadline=None)
@given(st.binary(max_size=80))
def test_any_bytes_give_problems_and_no_exception(raw: bytes) -> None:
    found = runner.check_entry(entry(PATH, "vehicle", read_bytes(raw, PATH)))
    assert found
    assert all(problem.rule in ("yaml", "schema") for problem in found)


def test_no_field_vanishes_under_another_name() -> None:
    for number, (kind, good) in enumerate(SEEDS[:1] + SEEDS[2:]):
        for place in places(good):
            if isinstance(place[-1], str):
                problems = check(written(rename(good, place, f"{place[-1]}_q")), kind)
                assert any(problem.rule == "schema" for problem in problems), (number, place)
