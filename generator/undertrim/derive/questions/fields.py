"""The single values that a question about a place of the record comes to."""

from collections.abc import Iterator
from dataclasses import replace

from undertrim.derive.claims.addresses import NOT_ANSWERED, address_of
from undertrim.derive.evidence.facts import schema_at
from undertrim.derive.questions.forms import UNKNOWN, form
from undertrim.derive.questions.question import AnswerForm, Field
from undertrim.record.changing.edits import at
from undertrim.record.schema import Schema, asked_by
from undertrim.record.source import Data, Pointer, Source
from undertrim.words import message

_PROSE = ("note", "name", "to", "how", "what", "function", "at")
"""What says something in words beside the value: it may be left out."""

_FIRST = {"functions": ("by",), "duties": ("kept_by",)}
"""Sections of things of which one field is what is asked."""

_PLACE_OF_A_WIRE = ("by", ("wire",))
"""Where a wire is found must be said beside it: in words, since a car of which no plug is recorded has no pin to name."""
_WIRE, _WIRE_MEANS = message("questions/wire"), message("questions/wire-means")


def fields(source: Source, place: Pointer) -> Iterator[Field]:
    """The value at a place, or all that a block there lacks; nothing where a thing of many parts is asked for."""
    schema = schema_at(place)
    if not schema:
        return
    if "properties" not in schema:
        yield from [_field(source, place, schema)] if _is_one_fact(schema) else []
        return
    conditions = dict(_conditions(schema))
    needed = set(schema.get("required", ()))
    for name, below in _below(place, schema):
        if _is_known(at(source.data, (*place, name))) or not _is_one_fact(below):
            continue
        if place[0] in _FIRST and len(place) == 2 and name not in (*_FIRST[str(place[0])], "note"):
            continue
        only_if = _PLACE_OF_A_WIRE if place[0] == "functions" and name == "note" else conditions.get(name)
        optional = only_if is None and (name in _PROSE or name not in needed)
        made = _field(source, (*place, name), below, optional=optional, only_if=only_if)
        yield replace(made, title=_WIRE, means=_WIRE_MEANS) if only_if is _PLACE_OF_A_WIRE else made


def there(source: Source, place: Pointer) -> Field:
    """Whether a thing is there at all."""
    schema = schema_at(place)
    return Field(address_of(source, place), schema["title"], schema["description"], AnswerForm("there", none=True))


def _below(place: Pointer, schema: Schema) -> Iterator[tuple[str, Schema]]:
    for name in schema["properties"]:
        if name not in NOT_ANSWERED and (found := schema_at((*place, name))):
            yield name, found


def _is_one_fact(schema: Schema) -> bool:
    """Whether it is one value, or a list of words of the schema's own."""
    if schema.get("type") == "array":
        return "enum" in schema.get("items", {})
    can_be_known = schema.get("enum") != [UNKNOWN]
    return can_be_known and "properties" not in schema and "additionalProperties" not in schema


def _field(
    source: Source,
    place: Pointer,
    schema: Schema,
    *,
    optional: bool = False,
    only_if: tuple[str, tuple[str, ...]] | None = None,
) -> Field:
    stands = at(source.data, place)
    other = (address_of(source, (*place[:-1], only_if[0])), only_if[1]) if only_if else None
    return Field(
        about=address_of(source, place),
        title=schema.get("title", str(place[-1])),
        means=schema.get("description", ""),
        form=form(schema, place),
        stands=", ".join(stands) if isinstance(stands, list) else str(stands or ""),
        optional=optional,
        only_if=other,
    )


def _is_known(value: Data) -> bool:
    return value not in (None, UNKNOWN)


def _conditions(schema: Schema) -> Iterator[tuple[str, tuple[str, tuple[str, ...]]]]:
    """The fields that are needed only beside another one's word."""
    for branch in schema.get("allOf", ()):
        asked, words = asked_by(branch["if"])
        for name in branch["then"].get("required", ()):
            yield name, (asked, tuple(words))
