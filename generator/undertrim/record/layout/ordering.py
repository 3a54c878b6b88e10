"""The order of what stands in a mapping: that of the schema where the order means nothing, else as typed."""

from functools import cache

from undertrim.record import shapes
from undertrim.record.migrations.marked import MappingNode, Node
from undertrim.record.shapes import Shape
from undertrim.record.source import Pointer

AS_TYPED = ("needs", "sets", "at")
"""Fields with names of the schema whose order is kept: it is the order in which the states are brought about and the places shown."""


def in_order(node: Node, pointer: Pointer, shape: Shape | None, kind: str) -> list[Pointer]:
    """The places of what stands in a mapping or list, in the order in which they are laid out."""
    if not isinstance(node, MappingNode):
        return [(*pointer, number) for number in range(len(node.value))]
    keys = [str(key.value) for key, _ in node.value]
    known = _sections(kind) if not pointer else () if shape is None else shape.order
    if set(keys) <= set(known) and not (pointer and pointer[-1] in AS_TYPED):
        keys.sort(key=known.index)
    return [(*pointer, key) for key in keys]


@cache
def _sections(kind: str) -> tuple[str, ...]:
    """The sections of a record; one that is only named from others stands before the first that names it, one that nothing names behind the head."""
    shape, order = shapes.whole(kind), []
    for name, section in shape.fields.items():
        order += [aside for aside in shape.aside if aside not in order and _names(section, aside)]
        order.append(name)
    behind = order.index(kind) + 1  # what nothing names is said of the whole
    return (*order[:behind], *(name for name in shape.aside if name not in order), *order[behind:])


def _names(shape: Shape, section: str) -> bool:
    below = (*shape.fields.values(), *(one for one in (shape.other, shape.items) if one))
    return shape.named == section or any(_names(one, section) for one in below)
