"""The walk over a record with its schema: complete, in step, references followed."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from undertrim.record import fields, schema, units
from undertrim.record.source import Pointer, read
from undertrim.record.spreading import spread
from undertrim.words import say

RECORDS = Path(__file__).parents[2] / "records"
FILES = [*(RECORDS / "vehicles").rglob("*.yaml"), *(RECORDS / "gear").rglob("*.yaml")]


def everything(data: Any, pointer: Pointer = ()) -> Iterator[Pointer]:
    yield pointer
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for step, inner in entries:
        yield from everything(inner, (*pointer, step))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_value_of_a_good_record_is_walked_once_and_in_order(path: Path) -> None:
    data = spread(read(path)).data
    name = "gear" if "gear" in path.parts else "vehicle"
    assert [field.pointer for field in fields.walk(data, name)] == list(everything(data))


def test_what_the_schema_does_not_know_is_passed_over() -> None:
    data = {
        "format": "1",
        "colour": {"of": "paint"},
        "parts": {"a": {"nmae": "A", "name": "A"}},
        "demo": ["x"],
    }
    walked = [field.pointer for field in fields.walk(data, "vehicle")]
    assert walked == [(), ("format",), ("parts",), ("parts", "a"), ("parts", "a", "name"), ("demo",)]


def test_the_words_beside_a_reference_go_first_and_the_rest_is_the_target() -> None:
    vehicle = fields.root("vehicle").child("vehicle")
    assert vehicle is not None
    follows = vehicle.child("follows")
    assert follows is not None
    assert say(follows.schema["title"]) == "Follows"
    assert follows.schema["pattern"] == schema.load("common")["$defs"]["id"]["pattern"]
    assert follows.home == ("common", ("$defs", "id"))


def test_a_reference_inside_another_document_is_found_there() -> None:
    data = {"parts": {"a": {"cautions": [{"signal": "NOTICE", "when": {"radio": "map"}}]}}}
    titles = {field.pointer[-1:]: say(field.node.schema.get("title", "")) for field in fields.walk(data, "vehicle")}
    assert titles[("signal",)] == "Signal word"
    assert titles[("when",)] == "When"
    gear = {"gear": {"needs": ["ground"]}}
    assert [say(field.node.schema["title"]) for field in fields.walk(gear, "gear")][-1] == "Function"


def quantities(node: fields.Node, seen: set[fields.Place]) -> Iterator[dict[str, Any]]:
    if node.home in seen:
        return
    seen.add(node.home)
    if "quantity" in node.schema:
        yield node.schema
    steps: list[str | int] = [*node.schema.get("properties", ()), 0, "any-id"]
    for step in steps:
        below = node.child(step)
        if below:
            yield from quantities(below, seen)


@pytest.mark.parametrize("name", ["vehicle", "gear"])
def test_every_quantity_has_a_range_and_its_examples_lie_in_it(name: str) -> None:
    found = list(quantities(fields.root(name), set()))
    assert len(found) > 10
    for spec in found:
        kind, ends = spec["quantity"]["kind"], spec["quantity"]["plausible"]
        low, high = (units.parse(end, kind).value for end in ends)
        assert low < high
        for example in spec["examples"]:
            if example not in schema.blanks(spec["quantity"]):
                assert low <= units.parse(example, kind).value <= high, spec["title"]
