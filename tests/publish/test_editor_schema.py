"""The schemas for editors: what is committed is what is made, and it describes records as they are typed."""

import re
from typing import Any

import pytest
from jsonschema import Draft7Validator
from ruamel.yaml import YAML

from pages import ROOT
from undertrim.publish import editor_scalars, editor_schema
from undertrim.record import schema, units
from undertrim.record.fields import root
from undertrim.record.store import Workspace
from undertrim.record.unit_table import kinds

PLACE = Workspace(ROOT)
MADE = {kind: editor_schema.bundled(kind) for kind in editor_schema.KINDS}


@pytest.mark.parametrize("kind", editor_schema.KINDS)
def test_what_is_committed_is_what_is_made(kind: str) -> None:
    """`make schema` writes it anew."""
    assert editor_schema.place(kind).read_text(encoding="utf-8") == editor_schema.text(kind)


@pytest.mark.parametrize("kind", editor_schema.KINDS)
def test_it_stands_by_itself_in_words_of_the_standard(kind: str) -> None:
    Draft7Validator.check_schema(MADE[kind])
    words = {word for block in blocks(MADE[kind]) for word in block}
    assert words - OUR_OWN == words
    for block in blocks(MADE[kind]):
        if "$ref" in block:
            assert list(block) == ["$ref"], "in draft 7 nothing counts beside a reference"
            assert block["$ref"].removeprefix("#/definitions/") in MADE[kind]["definitions"]


OUR_OWN = {"quantity", "drive", "calendar", "paragraphs", "mayBeUnknown", "order", "short", "follows", "unless", "group", "named", "aside", "misnamed", "hint", "also"}  # fmt: skip


def blocks(made: Any) -> Any:
    """Every schema inside one."""
    yield made
    for word in ("properties", "definitions"):
        for inner in made.get(word, {}).values():
            yield from blocks(inner)
    for word in ("items", "additionalProperties", "then", "else"):
        for inner in made[word] if isinstance(made.get(word), list) else [made.get(word)]:
            if isinstance(inner, dict):
                yield from blocks(inner)
    for word in ("anyOf", "allOf"):
        for inner in made.get(word, ()):
            yield from blocks(inner)


def as_json(data: Any) -> Any:
    """Data of YAML 1.2 as an editor checks it: names are text."""
    if isinstance(data, dict):
        return {str(key): as_json(value) for key, value in data.items()}
    if isinstance(data, list):
        return [as_json(item) for item in data]
    return data if data is None or isinstance(data, str | int | float) else str(data)


def wrong(kind: str, data: Any) -> list[str]:
    return [f"{error.json_path}: {error.message}" for error in Draft7Validator(MADE[kind]).iter_errors(as_json(data))]


def read(text: str) -> Any:
    return YAML(typ="safe", pure=True).load(text)


def test_no_false_alarm_in_anything_shipped() -> None:
    files = PLACE.files()
    assert {PLACE.kind(path) for path in files} == set(editor_schema.KINDS)
    for path in files:
        assert wrong(PLACE.kind(path), read(path.read_text(encoding="utf-8"))) == [], path


def test_every_field_of_the_schemas_is_in_it_with_its_words() -> None:
    for kind in editor_schema.KINDS:
        texts = {said for block in blocks(MADE[kind]) for said in (block.get("description"),) if said}
        wanted = {node["description"].english for node in described(kind)}
        assert len(wanted) > 30
        assert wanted - texts == set()


def described(kind: str) -> list[schema.Schema]:
    found, open_, seen = [], [root(kind)], set()
    while open_:
        node = open_.pop()
        key = node.home, str(node.schema.get("description"))
        if key in seen:
            continue
        seen.add(key)
        if "description" in node.schema:
            found.append(node.schema)
        steps = (*node.schema.get("properties", ()), "*", 0)
        open_ += [child for step in steps if (child := node.child(step))]
    return found


@pytest.mark.parametrize("kind", list(kinds()))
def test_every_unit_is_let_through_and_no_other(kind: str) -> None:
    pattern = re.compile(editor_scalars.quantity({"kind": kind, "unknown": True}))
    for unit in kinds()[kind].units.values():
        for spelling in unit.spellings:
            for typed in (f"12 {spelling}", f"1.5{spelling}", f".5 {spelling.replace('.', ' ')}"):
                assert pattern.search(typed.strip()), typed
                assert kinds()[kind].whole or units.parse(typed, kind).kind == kind
    assert pattern.search("unknown")
    assert not pattern.search("none")
    for typed in ("12 parsec", "mm", "1,5 mm", "12 mm or so", ""):
        assert not pattern.search(typed), typed


PART = "format: 2\nvehicle: {make: A, model: B, built: {from: 2014-03, to: 2018-09}, drive_side: left, high_voltage: no}\nopenings: {dash: {kind: receiver, behind: a, face: {width: 1 mm, height: 1 mm}, depth: {clear: 1 mm}, kit: needed}}\nparts:\n"


@pytest.mark.parametrize(
    ("parts", "place"),
    [
        ("  a: {release: pull}\n", ""),
        ("  dash: {each: left, parts: {a: {release: pull, each: none, source: none}}}\n", ""),
        ("  a: {release: pull, count: 2}\n", "$.parts.a"),
        ("  dash: {eech: left, parts: {a: {release: pull}}}\n", "$.parts.dash"),
        ("  dash: {parts: {a: {release: pul}}}\n", "$.parts.dash.parts.a.release"),
        ("  a: {release: pull, held_by: {screw: T20, clip: push, count: 2}}\n", "$.parts.a.held_by"),
        ("  A: {release: pull}\n", "$.parts"),
        ("  a: {release: [pull, 3 min, rearward]}\n", ""),
        ("  a: {release: [pull, rearwrd]}\n", "$.parts.a.release"),
    ],
)
def test_groups_and_what_takes_back_are_described(parts: str, place: str) -> None:
    assert [said.split(":")[0] for said in wrong("vehicle", read(PART + parts))] == ([place] if place else [])


def test_it_stands_where_records_name_it() -> None:
    for kind in editor_schema.KINDS:
        assert editor_schema.place(kind) == ROOT / "schema" / "editor" / f"{kind}.schema.json"
        assert editor_schema.place(kind).stat().st_size < 400_000
