"""Puts parts of one area that follow each other into a group that says once what they share."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path

from undertrim.record import shapes
from undertrim.record.examples import typed
from undertrim.record.migrations.marked import Edit, Entry, MappingNode, Node, ScalarNode, Text, edited, in_brackets
from undertrim.record.source import Data, read_text

STEP = 2
"""Spaces by which what is inside stands further in."""


@dataclass(frozen=True, slots=True)
class _Group:
    """Parts that follow each other, with the id of their group and the node of each field that they share."""

    name: str
    parts: Sequence[Entry]
    shared: dict[str, Node]


def grouped(text: str) -> str:
    """The text with its parts in groups; as it is where the parts stand in brackets."""
    marked = Text.of(text)
    parts = marked.at(("parts",))
    if not isinstance(parts, MappingNode) or parts.flow_style:
        return text
    data = read_text(text, Path()).data["parts"]
    groups = _groups(marked, data)
    return edited(text, [edit for group in groups for edit in _edits(marked, group)])


def _groups(marked: Text, data: Data) -> Iterator[_Group]:
    entries = [entry for entry in marked.entries() if len(entry.pointer) == 2 and entry.pointer[0] == "parts"]
    words = shapes.whole("vehicle").fields["parts"].group
    assert words
    used: set[str] = set()
    for area, run in groupby(entries, key=lambda entry: data[entry.key.value].get("area")):
        parts = list(run)
        if area is None or any(not _by_lines(marked, entry) for entry in parts):
            continue
        name = next(name for number in range(1, len(entries) + 2) if (name := _numbered(area, number)) not in used)
        shared = _shared(marked, {str(entry.key.value): data[entry.key.value] for entry in parts}, list(words.fields))
        if name == area:
            shared.pop("area", None)
        if _saves(len(parts), len(shared), named_by_area=name == area):
            used.add(name)
            yield _Group(name, parts, shared)


def _numbered(area: str, number: int) -> str:
    return area if number == 1 else f"{area}-{number}"


def _by_lines(marked: Text, entry: Entry) -> bool:
    """Whether a part stands on lines of its own."""
    start = entry.key.start_mark.index
    return not marked.text[marked.line_start(start) : start].strip()


def _saves(parts: int, fields: int, *, named_by_area: bool) -> bool:
    """Whether the group has fewer lines than its parts would lose."""
    return parts * (fields + named_by_area) > fields + 2


def _shared(marked: Text, parts: dict[str, Data], names: Sequence[str]) -> dict[str, Node]:
    """The node of each field that all parts share: the same in all, or one that each says, most of them alike."""
    found: dict[str, Node] = {}
    for name in names:
        values = [part.get(name) for part in parts.values()]
        usual, often = (
            Counter(map(repr, (value for value in values if value is not None))).most_common(1)[0]
            if any(values)
            else ("", 0)
        )
        excused = [part for part in parts.values() if name == "each" and name not in part and "on_side" in part]
        same = often + len(excused) == len(values)
        if often > 1 and (same or (name == "source" and None not in values)):
            part = next(key for key, value in parts.items() if repr(value.get(name)) == usual)
            node = marked.at(("parts", part, name))
            assert node is not None
            found[name] = node
    return found


def _edits(marked: Text, group: _Group) -> Iterator[Edit]:
    first, last = group.parts[0], group.parts[-1]
    margin = " " * first.key.start_mark.column
    inner = margin + " " * STEP
    start = _above(marked, marked.line_start(first.key.start_mark.index))
    lines = [
        f"{margin}{group.name}:",
        *(f"{inner}{name}: {_one_line(marked, node)}" for name, node in group.shared.items()),
        f"{inner}parts:",
    ]
    yield Edit(start, start, "".join(line + marked.newline for line in lines))
    place = start
    end = marked.end(last.value)
    while place < end:
        if marked.text[place : marked.line_end(place)].strip():
            yield Edit(place, place, " " * 2 * STEP)
        place = marked.text.find("\n", place) + 1 or end


def _one_line(marked: Text, node: Node) -> str:
    """A value on the line of its key, as typed where it stands in brackets or is a text."""
    if isinstance(node, ScalarNode) or in_brackets(node):
        return " ".join(marked.raw(node).split())
    return typed(_plain(node))


def _plain(node: Node) -> Data:
    if isinstance(node, ScalarNode):
        return node.value
    if isinstance(node, MappingNode):
        return {key.value: _plain(value) for key, value in node.value}
    return [_plain(item) for item in node.value]


def _above(marked: Text, start: int) -> int:
    """Where the comments begin that stand right above a line."""
    while start:
        above = marked.line_start(start - 1)
        if not marked.text[above:start].lstrip().startswith("#"):
            break
        start = above
    return start
