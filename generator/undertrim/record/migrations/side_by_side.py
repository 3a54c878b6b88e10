"""Puts fields into one list with the field that they may stand behind: `release: [pull, rearward, 3 min]`."""

from collections.abc import Iterator

from undertrim.record import along, shapes
from undertrim.record.migrations.leaving_out import without
from undertrim.record.migrations.marked import (
    Edit,
    Entry,
    MappingNode,
    Node,
    ScalarNode,
    SequenceNode,
    Text,
    edited,
    in_brackets,
)
from undertrim.record.shapes import Shape
from undertrim.record.spreading import BACK


def listed(text: str) -> str:
    """The text with such lists; fields in brackets, with comments or quoted stay as they are."""
    marked = Text.of(text)
    return edited(text, _edits(marked, marked.root, shapes.whole("vehicle")))


def _edits(marked: Text, node: Node, shape: Shape | None) -> Iterator[Edit]:
    if shape is None or not isinstance(node, MappingNode) or in_brackets(node):
        return
    values = {str(key.value): Entry(key, value, node, ()) for key, value in node.value}
    for name, entry in values.items():
        below = shape.below(name)
        if below and below.also:
            yield from _list(marked, values, name, shape)
        elif isinstance(entry.value, MappingNode) and shape.is_group(
            (str(inner.value) for inner, _ in entry.value.value), "parts"
        ):
            yield from _edits(marked, entry.value, shape.of_group("parts"))
        else:
            yield from _edits(marked, entry.value, below)


def _list(marked: Text, values: dict[str, Entry], name: str, shape: Shape) -> Iterator[Edit]:
    """One such list, begun or not; nothing where it would be read as other fields."""
    value = values[name].value
    begun = value.value if isinstance(value, SequenceNode) and in_brackets(value) else [value]
    said = along.fields_of([node.value for node in begun], name, shape.fields) if all(map(_plain, begun)) else None
    plain = [other for other in shape.fields[name].also if other in values and _plain(values[other].value)]
    gone = {other: list(without(marked, values[other])) for other in plain}
    more = [other for other, edits in gone.items() if edits and other not in (said or ())]
    words = [
        *(str(node.value) for node in begun),
        *(_word(shape.fields[other], str(values[other].value.value)) for other in more),
    ]
    if said is None or not more or along.fields_of(words, name, shape.fields) != [*said, *more]:
        return
    yield Edit(value.start_mark.index, marked.end(value), f"[{', '.join(words)}]")
    yield from (edit for other in more for edit in gone[other])


def _word(field: Shape, value: str) -> str:
    """How a list says a value of a field: by its word for it, if it has one."""
    return next((word for word, meant in field.listed.items() if meant == value), value)


def _plain(node: Node) -> bool:
    """A text that may stand in brackets as it is."""
    return (
        isinstance(node, ScalarNode)
        and not node.style
        and not set(",[]{}") & set(node.value)
        and node.value not in ("", BACK)
    )
