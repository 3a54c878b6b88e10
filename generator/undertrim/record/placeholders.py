"""What people type where they have nothing to say, such as `n/a` or `?`. Here that has two meanings, and only who was at the car knows which."""

import re
from collections.abc import Iterator

from undertrim.record import gate
from undertrim.record.complaint import Complaint
from undertrim.record.fields import Node, walk
from undertrim.record.numerals import quoted
from undertrim.record.source import Source
from undertrim.words import Message, message

_SIGNS = (
    r"n/?a|n\.a\.?|[?]+|-{1,3}|–|—|\.{2,}|…|tb[acd]|todo|x{2,5}|unclear|not known|dunno|none yet|no idea|not applicable"
)
_PLACEHOLDER = re.compile(rf"(?:{_SIGNS})", re.IGNORECASE)
_SOMEWHERE = re.compile(rf"[:,\[{{-]\s*[\"']?(?:{_SIGNS})[\"']?\s*(?:[,}}\]#]|$)", re.IGNORECASE | re.MULTILINE)


def complaints(source: Source, name: str) -> Iterator[Complaint]:
    """Each value of a record that only holds a place."""
    if not _SOMEWHERE.search(source.text):
        return
    for pointer, value, node in walk(source.data, name):
        if isinstance(value, str) and is_one(value):
            said = message("schema/placeholder", value=quoted(value), hint=_way_out(node))
            yield Complaint(pointer, said, stays=_takes_any_text(node))


def is_one(text: str) -> bool:
    """Whether a text only holds a place."""
    return bool(_PLACEHOLDER.fullmatch(text.strip()))


def _takes_any_text(node: Node) -> bool:
    return gate.takes(node.schema, "any text at all")


def _way_out(node: Node) -> Message:
    """What to write instead at a field."""
    if _takes_any_text(node):
        return message("schema/placeholder-text")
    none, unknown = gate.takes(node.schema, "none"), gate.takes(node.schema, "unknown")
    if none and unknown:
        return message("schema/none-or-unknown")
    if unknown:
        return message("schema/unknown-or-nothing")
    return message("schema/none-or-nothing") if none else message("schema/value-or-nothing")
