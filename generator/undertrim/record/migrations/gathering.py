"""Puts fields of a block that may stand together into one mapping on a line: `face: {view: wires, rows: 2, columns: 8}`."""

from collections.abc import Iterator, Sequence

from undertrim.record import shapes
from undertrim.record.migrations.leaving_out import without
from undertrim.record.migrations.marked import Edit, Entry, MappingNode, Node, ScalarNode, Text, edited, in_brackets
from undertrim.record.shapes import Shape
from undertrim.record.yaml_text import may_be_plain

WIDEST = 160
"""Characters of a line that such a mapping may fill with its margin and key."""


def gathered(text: str) -> str:
    """The text with such mappings; fields with comments, texts of several lines and what stands in brackets stay as they are."""
    marked = Text.of(text)
    return edited(text, _edits(marked, marked.root, shapes.whole("vehicle")))


def _edits(marked: Text, node: Node, shape: Shape | None) -> Iterator[Edit]:
    if shape is None or not isinstance(node, MappingNode) or in_brackets(node):
        return
    entries = {str(key.value): Entry(key, value, node, ()) for key, value in node.value}
    moved: set[str] = set()
    for name, mapping in shape.together.items():
        if name not in entries:
            chosen = list(_fitting(marked, [entries[one] for one in mapping.fields if one in entries], name))
            moved |= {str(entry.key.value) for entry in chosen}
            yield from _moved(marked, chosen, name)
    for name, entry in entries.items():
        if name not in moved:
            yield from _edits(marked, entry.value, _below(shape, name, entry.value))


def _below(shape: Shape, name: str, value: Node) -> Shape | None:
    below = shape.below(name)
    names = [str(key.value) for key, _ in value.value] if isinstance(value, MappingNode) else []
    return shape.of_group("parts") if shape.is_group(names, "parts") else below


def _fitting(marked: Text, entries: Sequence[Entry], name: str) -> Iterator[Entry]:
    """Those of the fields that go on one line, in the order of the schema; none where it would be one only."""
    able = [entry for entry in entries if _may_move(marked, entry)]
    room = WIDEST - len(name) - len(": {}") - (able[0].key.start_mark.column if able else 0)
    chosen: list[Entry] = []
    for entry in able:
        taken = len(_said(marked, entry)) + 2
        if taken <= room:
            chosen.append(entry)
            room -= taken
    yield from chosen if len(chosen) > 1 else ()


def _may_move(marked: Text, entry: Entry) -> bool:
    """Whether a field stands on a line of its own, with no comment beside or above it."""
    start, end = entry.key.start_mark.index, marked.end(entry.value)
    line = marked.line_start(start)
    above = marked.text[marked.line_start(line - 1) : line] if line else ""
    one_line = "\n" not in marked.text[start:end] and "#" not in marked.text[end : marked.line_end(end)]
    text = entry.value if isinstance(entry.value, ScalarNode) else None
    return (
        one_line
        and not marked.text[line:start].strip()
        and not above.lstrip().startswith("#")
        and (in_brackets(entry.value) or (text is not None and text.value != "" and text.style not in ("|", ">")))
    )


def _said(marked: Text, entry: Entry) -> str:
    """A field as it stands in brackets."""
    raw, value = marked.raw(entry.value), entry.value
    plain = isinstance(value, ScalarNode) and not value.style
    return f"{marked.raw(entry.key)}: {raw if not plain or may_be_plain(raw, in_brackets=True) else _quoted(raw)}"


def _quoted(raw: str) -> str:
    return '"' + raw.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _moved(marked: Text, chosen: Sequence[Entry], name: str) -> Iterator[Edit]:
    """The first of the fields becomes the mapping, the others go."""
    in_order = sorted(chosen, key=lambda entry: entry.key.start_mark.index)
    for number, entry in enumerate(in_order):
        if number:
            yield from without(marked, entry)
        else:
            start, end = entry.key.start_mark.index, marked.end(entry.value)
            yield Edit(start, end, f"{name}: {{{', '.join(_said(marked, one) for one in chosen)}}}")
