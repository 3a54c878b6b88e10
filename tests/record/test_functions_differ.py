"""What a function is by may differ by kind of car: one entry for each, and whoever asks for the function gets that of the car."""

import pytest

from differing import BODY, HEAD, PATH, record, whole
from undertrim.check import one_file
from undertrim.derive.wiring.needs import sources
from undertrim.publish.facts.blockers import blockers
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.record.source import read_text
from undertrim.record.store import entry
from undertrim.words import say

TWO = """functions:
  speed: [absent, e2]
  reverse:
    - {when: {radio: plain}, by: wire, note: At the lamp., source: e2}
    - {when: {radio: map}, is: [data, e2]}
"""
MAP, PLAIN = {"radio": "map", "sound": "bare"}, {"radio": "plain", "sound": "bare"}


def told(text: str) -> list[tuple[int, str]]:
    """Line and code of all that is wrong with the form or the functions of a record."""
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [
        (problem.position.line, code)
        for problem in found
        if (code := problem.said.code).startswith(
            ("spread/", "schema/", "rules/function", "rules/wire", "rules/behaviour")
        )
    ]


def test_each_kind_of_car_has_an_entry_that_says_which_function_it_is_about() -> None:
    made = whole(HEAD + BODY + TWO).data["functions"]
    assert list(made) == ["speed", "reverse-map", "reverse-plain"]
    assert made["reverse-map"] == {"by": "data", "source": "e2", "function": "reverse", "when": {"radio": "map"}}
    assert "function" not in made["speed"]
    assert told(HEAD + BODY + TWO) == []


def test_whoever_asks_gets_that_of_the_car() -> None:
    about = record(HEAD + BODY + TWO)
    assert [sources("reverse", about, car)[0].by for car in (PLAIN, MAP)] == ["wire", "data"]
    assert [fact.by for fact in about.function_facts("reverse")] == ["data", "wire"]
    listed = {one["function"]: one["by"] for one in car_wiring(about, "brindleway/otter", MAP)["functions"]}
    assert (listed["reverse"], listed["speed"]) == ("data", "absent")


def test_what_comes_as_data_is_in_the_way_of_its_own_cars_alone() -> None:
    about = record(HEAD + BODY + TWO)
    needs = [one for one in blockers(about, "brindleway/otter") if "reverse" in say(one.text)]
    assert [say(one.when) for one in needs] == ["Map radio"]


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ("  reverse:\n", "  revers:\n", [(-5, "schema/not-known")]),
        ("  speed: [absent, e2]\n", "  speed: [absent, e2]\n  speed-too: {function: speed, by: unknown}\n", [(0, "rules/function-stated-twice/two-entries")]),
        ("  speed: [absent, e2]\n", "  speed-too: {function: speed, by: unknown}\n", []),
        ("  speed: [absent, e2]\n", "  Speed: {function: speed, by: unknown}\n", [(0, "schema/")]),
    ],
)  # fmt: skip
def test_an_id_is_a_function_or_says_of_which_it_is(old: str, new: str, wanted: list[tuple[int, str]]) -> None:
    found = told((HEAD + BODY + TWO).replace(old, new))
    assert [code.startswith(other) for (_, code), (_, other) in zip(found, wanted, strict=True)] == [True] * len(
        wanted
    ), found
