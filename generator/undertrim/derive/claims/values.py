"""What an answer says, as the field that it is about takes it."""

from dataclasses import replace

from undertrim.derive.claims.outcome import Refused
from undertrim.derive.evidence.facts import Fact, described, schema_at
from undertrim.record.changing.edits import nested
from undertrim.record.claims import Answer, Found
from undertrim.record.fields import document_of
from undertrim.record.gear import AnyRecord
from undertrim.record.model import Blank
from undertrim.record.refusals import refusals
from undertrim.record.schema import Schema
from undertrim.record.sentences import write
from undertrim.record.source import Data, Pointer
from undertrim.words import WayOut, message

_NONE = ("none", "absent", "no")
"""What fields of a few words say where somebody looked and found none."""


def field_at(record: AnyRecord, place: Pointer, about: str) -> Fact:
    """The field at a place, with no value. Raises Refused where one value cannot stand there."""
    schema = schema_at(place)
    one_word = schema.get("type") not in ("object", "array") and "properties" not in schema
    words = schema.get("type") == "array" and "enum" in schema.get("items", {})
    if not one_word and not words and "string" not in schema.get("type", ()):
        raise Refused(message("claims/not-one-fact", about=about))
    return replace(described(record, place, ""), form="list") if words else described(record, place, "")


def meant(answer: Answer, field: Fact) -> Data:
    """The value as it is to be typed; `unknown` for what could not be told. Raises Refused where that cannot stand there."""
    schema = schema_at(field.pointer)
    if answer.found is Found.NONE:
        return _none(schema, answer.about)
    if answer.found:
        return str(Blank.UNKNOWN)
    if field.form == "list":
        return [word.strip() for word in answer.says.strip("[]").split(",") if word.strip()]
    word = answer.says.casefold().replace(" ", "-")
    return allowed(field.pointer, word if word in schema.get("enum", ()) else answer.says)


def allowed(place: Pointer, value: str) -> str:
    """The value, if the schema takes it there. Raises Refused with what it has against it."""
    for refusal in refusals(nested(place, value), document_of(place)):
        if len(refusal.pointer) == len(place):
            complaint = next(write(refusal))
            raise Refused(message("schema/fault", said=complaint.said, hint=WayOut(complaint.said)))
    return value


def _none(schema: Schema, about: str) -> str:
    if schema.get("quantity", {}).get("none"):
        return str(Blank.NONE)
    for word in _NONE:
        if word in schema.get("enum", ()):
            return word
    raise Refused(message("claims/no-none", about=about))
