"""Finds the one fact that a chain of keys leads to: `openings/front-door/depth/clear`."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass

from undertrim.derive.evidence.fingerprint import NO_FACTS
from undertrim.record.fields import Node, root
from undertrim.record.model import Month, VehicleRecord, When
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity

_ABSENT = (None, "")
_DIGITS = 4


@dataclass(frozen=True, slots=True)
class Fact:
    """One value of a record: where it stands, as typed, and its kind of quantity (empty for a word)."""

    pointer: Pointer
    text: str
    kind: str = ""


def fact_at(record: VehicleRecord, about: str) -> Fact | None:
    """The fact that keys joined with `/` lead to; None where there is none, or more than a single value.

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
    text = _text(value)
    return Fact(tuple(pointer), text, _kind(tuple(pointer))) if text else None


def _below(value: object, key: str) -> tuple[str | int, object]:
    """What a key leads to, None for nothing; the entries of a list are numbered from 0."""
    if isinstance(value, Mapping):
        return key, value.get(key)
    if isinstance(value, tuple):
        number = int(key) if key.isdecimal() and len(key) < _DIGITS else len(value)
        return number, value[number] if number < len(value) else None
    if is_dataclass(value) and not isinstance(value, type | When | Quantity | Month):
        names = {entry.name.rstrip("_"): entry.name for entry in fields(value) if entry.name != "id"}
        return key, getattr(value, names[key]) if key in names else None
    return key, None


def _text(value: object) -> str:
    if isinstance(value, Quantity):
        return value.text
    return str(value) if isinstance(value, str | int | Month) else ""


def _kind(pointer: Pointer) -> str:
    node: Node | None = root("vehicle")
    for step in pointer:
        node = node.child(step) if node else None
    kind: str = node.schema["quantity"]["kind"] if node and "quantity" in node.schema else ""
    return kind
