"""Whether a record's statements of what waits for what, and in which cars, were read in full.

The schema says with `order` which fields state that; the word counts for what is inside a field too, until it says otherwise.
"""

from undertrim.check.findings import Subject
from undertrim.record.fields import Node, root
from undertrim.record.source import Pointer


def read_in_full(subject: Subject) -> bool:
    """Whether the schema refused nothing that may have said what waits for what.

    Where it did, a rule about order would only find what follows from the gap.
    """
    return not any(says_order(pointer) for pointer in subject.entry.dropped)


def says_order(pointer: Pointer) -> bool:
    """Whether what stands at a place of a vehicle record may say something of order.

    A field that the schema does not know may be a misspelt one that does, where it stands among such.
    """
    node, inside = root("vehicle"), False
    for step in pointer:
        below = node.child(step)
        if below is None:
            break
        node, inside = below, below.schema.get("order", inside)
    return inside or _holds_order(node)


def _holds_order(node: Node) -> bool:
    """Whether a field inside says something of order."""
    steps = [*node.schema.get("properties", ()), *(["*"] if "additionalProperties" in node.schema else []), 0]
    inner = [below for step in steps if (below := node.child(step))]
    return any(below.schema.get("order") or _holds_order(below) for below in inner)
