"""Every field of the schemas says what it is; every quantity has a kind of unit that its examples follow."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from undertrim.publish.web.field_pages import field_page
from undertrim.record import keywords, schema, units
from undertrim.record.examples import typed
from undertrim.record.source import read_text
from undertrim.record.unit_table import kinds
from undertrim.words import say

Field = dict[str, Any]


def _walk(place: str, found: Field) -> Iterator[tuple[str, Field]]:
    """Every field and block below. `if` and `then` have none: they choose among described fields."""
    for group in ("$defs", "properties", "together"):
        for name, inner in found.get(group, {}).items():
            yield f"{place}/{group}/{name}", inner
            yield from _walk(f"{place}/{group}/{name}", inner)
    for group in ("items", "additionalProperties"):
        inner = found.get(group)
        if isinstance(inner, dict) and set(inner) != {"type"}:  # else the list says it all
            yield f"{place}/{group}", inner
            yield from _walk(f"{place}/{group}", inner)


FIELDS = {place: field for name in schema.NAMES for place, field in _walk(name, schema.load(name))}
QUANTITIES = {place: field for place, field in FIELDS.items() if "quantity" in field}


def _known(field: Field) -> Field:
    return {**(_known(schema.resolve(field["$ref"])) if "$ref" in field else {}), **field}


def _titles(found: object) -> int:
    """How often a title is given anywhere below, names of keys and examples left out."""
    if isinstance(found, list):
        return sum(map(_titles, found))
    if not isinstance(found, dict):
        return 0
    inner = (value for key, value in found.items() if key not in ("propertyNames", "examples"))
    return isinstance(found.get("title"), schema.SchemaText) + sum(map(_titles, inner))


def test_the_walk_finds_the_fields() -> None:
    written = sum(_titles(schema.load(name)) - 1 for name in schema.NAMES)  # each has a title of its own
    assert sum("title" in field for field in FIELDS.values()) == written > 200


@pytest.mark.parametrize("place", FIELDS)
def test_a_field_is_described(place: str) -> None:
    field = _known(FIELDS[place])
    assert field["title"].english[:1].isupper()
    assert field["description"].english.endswith((".", "?"))
    assert field.get("examples")


def _text(value: object) -> object:
    """An example as the reader gives it: every scalar is text."""
    if isinstance(value, dict):
        return {key: _text(inner) for key, inner in value.items()}
    return [_text(inner) for inner in value] if isinstance(value, list) else str(value)


@pytest.mark.parametrize("place", FIELDS)
def test_every_example_is_valid_as_it_is_shown(place: str) -> None:
    """Typed behind a field, it is read as it is meant, and the schema takes it."""
    name = place.partition("/")[0]
    validator = keywords.validator(name).evolve(schema=FIELDS[place])
    for example in _known(FIELDS[place])["examples"]:
        found = read_text(f"field: {typed(example)}\n", Path("x.yaml"))
        assert found.problems == ()
        assert found.data == {"field": _text(example)}
        assert [error.message for error in validator.iter_errors(found.data["field"])] == []


@pytest.mark.parametrize("place", QUANTITIES)
def test_a_quantity_has_a_kind_of_unit(place: str) -> None:
    spec = QUANTITIES[place]["quantity"]
    assert spec["kind"] in kinds()
    low, high = (units.parse(text, spec["kind"]).value for text in spec["plausible"])
    assert low < high
    for example in QUANTITIES[place]["examples"]:
        if example not in schema.blanks(spec):
            assert low <= units.parse(example, spec["kind"]).value <= high


@pytest.mark.parametrize("place", FIELDS)
def test_what_looks_like_a_quantity_is_one(place: str) -> None:
    field = _known(FIELDS[place])
    looks = [
        text for text in field.get("examples", []) if re.fullmatch(r"[0-9./ ]+ ?(mm|in|min|s|ohm|N\.m)", str(text))
    ]
    if say(field["title"]) != "Nominal size":  # the size people say is a search word
        assert not looks or "quantity" in field


def test_every_field_stands_in_the_reference() -> None:
    page = field_page()
    names = {place.rsplit("/", 1)[1] for place in FIELDS if place.split("/")[-2] == "properties"}
    assert len(names) > 50
    assert [name for name in sorted(names) if f"| `{name}`" not in page] == []
