"""Complains of what only holds a place in a record. It has two meanings here, and only who was at the car knows which."""

from collections.abc import Iterator

from undertrim.record import gate, marks_of_nothing
from undertrim.record.complaint import Complaint
from undertrim.record.fields import Node, root, walk
from undertrim.record.numerals import quoted
from undertrim.record.source import Pointer, Source
from undertrim.words import Message, message


def complaints(source: Source, name: str) -> Iterator[Complaint]:
    """Each value of a record that says nothing."""
    if not marks_of_nothing.may_hold(source.text):
        return
    for pointer, value, node in walk(source.data, name):
        in_words = gate.takes(node.schema, "any text at all") if isinstance(value, str) else False
        if isinstance(value, str) and marks_of_nothing.is_one(value, in_words=in_words):
            hint = _in_words(name, pointer) if in_words else _way_out(node, name, pointer)
            yield Complaint(pointer, message("schema/placeholder", value=quoted(value), hint=hint), stays=in_words)


def _in_words(name: str, pointer: Pointer) -> Message:
    return message("schema/placeholder-required" if _required(name, pointer) else "schema/placeholder-text")


def _way_out(node: Node, name: str, pointer: Pointer) -> Message:
    """What to write instead at a field that takes no text of one's own."""
    named = gate.takes(node.schema, "any-id")  # where something is named, 'none' is a name too
    none, unknown = (not named and gate.takes(node.schema, word) for word in ("none", "unknown"))
    if none and unknown:
        return message("schema/none-or-unknown")
    if unknown:
        return message("schema/unknown-or-value")
    if _required(name, pointer):
        return message("schema/placeholder-required")
    return message("schema/none-or-nothing") if none else message("schema/value-or-nothing")


def _required(name: str, pointer: Pointer) -> bool:
    """Whether the field must be there, or it is the entry of a list."""
    node: Node | None = root(name)
    for step in pointer[:-1]:
        node = node.child(step) if node else None
    return isinstance(pointer[-1], int) or (node is not None and pointer[-1] in node.schema.get("required", ()))
