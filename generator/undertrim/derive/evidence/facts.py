"""Finds the one fact that a chain of keys leads to: `openings/front-door/depth/clear`."""

from collections.abc import Mapping
from dataclasses import dataclass, field, is_dataclass

from undertrim.derive.evidence.fingerprint import NO_FACTS
from undertrim.derive.evidence.typed_names import typed_names
from undertrim.record.fields import node_of
from undertrim.record.gear import AnyRecord
from undertrim.record.model import Month, VehicleRecord, When
from undertrim.record.schema import Schema
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity

_ABSENT = (None, "")
_DIGITS = 4


@dataclass(frozen=True, slots=True)
class Fact:
    """One value of a record: where it stands, as typed, and its kind of quantity (empty for a word).

    `form` says how anything else is read: word (one of a closed list), colour (in the letters of `scheme`), drive, number, list, gauge,
    or empty for free text. `says_unknown` where the field may hold that it is not known.
    """

    pointer: Pointer
    text: str
    kind: str = ""
    form: str = field(default="", compare=False)
    scheme: str = field(default="", compare=False)
    says_unknown: bool = field(default=False, compare=False)


def fact_at(record: AnyRecord, about: str) -> Fact | None:
    """The fact that keys joined with `/` lead to; None where there is none, or more than a single value or a list of words.

    A value that the record leaves out has the one that is then meant, if there is one.
    """
    value: object = record
    pointer: list[str | int] = []
    keys = about.split("/")
    for key in keys if keys[0] not in NO_FACTS else ():
        step, value = _below(value, key)
        if value in _ABSENT:
            return None
        pointer.append(step)
    text = text_of(value)
    return described(record, tuple(pointer), text) if text else None


def described(record: AnyRecord, pointer: Pointer, text: str) -> Fact:
    """A fact at a place with what the schema says of its field."""
    schema = schema_at(pointer)
    kind: str = schema["quantity"]["kind"] if "quantity" in schema else ""
    plugs = record.connectors if isinstance(record, VehicleRecord) and pointer[0] == "connectors" else {}
    plug = plugs.get(str(pointer[1])) if plugs else None
    blank = (
        schema.get("mayBeUnknown") or "unknown" in schema.get("enum", ()) or schema.get("quantity", {}).get("unknown")
    )
    return Fact(pointer, text, kind, _form(schema, pointer), plug.scheme if plug else "", bool(blank))


def sized(schema: Schema, pointer: Pointer) -> bool:
    """Whether a field has a unit, a number or a word of a list."""
    return "quantity" in schema or bool(_form(schema, pointer))


def _form(schema: Schema, pointer: Pointer) -> str:
    """How the field is read, by what its schema says of it."""
    by_field = {"colour": "colour", "gauge": "gauge"}.get(str(pointer[-1]), "") if pointer[0] == "connectors" else ""
    asked = (("enum", "word"), ("drive", "drive"), ("items", "list"))
    by_schema = next((form for keyword, form in asked if keyword in schema), "")
    return by_field or by_schema or ("number" if schema.get("type") == "integer" else "")


def _below(value: object, key: str) -> tuple[str | int, object]:
    """What a key leads to, None for nothing; the entries of a list are numbered from 0."""
    if isinstance(value, Mapping):
        return key, value.get(key)
    if isinstance(value, tuple):
        number = int(key) if key.isdecimal() and len(key) < _DIGITS else len(value)
        return number, value[number] if number < len(value) else None
    if is_dataclass(value) and not isinstance(value, type | When | Quantity | Month):
        names = typed_names(value)
        return key, getattr(value, names[key]) if key in names else None
    return key, None


def text_of(value: object) -> str:
    """A single value or a list of words as typed; empty for anything else."""
    if isinstance(value, Quantity):
        return value.text
    if isinstance(value, tuple) and all(isinstance(item, str) for item in value):
        return ", ".join(value)
    return str(value) if isinstance(value, str | int | Month) else ""


def schema_at(pointer: Pointer) -> Schema:
    """What the schema says of the field that an address leads to; nothing for one it does not know."""
    node = node_of(pointer)
    return node.schema if node else {}
