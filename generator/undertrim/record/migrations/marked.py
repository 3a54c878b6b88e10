"""A record's text as a tree of nodes that know where they begin and end, and changes of the text between them.

An emitter would lay the whole text out anew; so only the characters that a change is about are replaced, and all others stay.
"""

import re
from bisect import bisect_left
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from undertrim.record.source import Pointer

__all__ = [
    "Edit",
    "Entry",
    "MappingNode",
    "Node",
    "ScalarNode",
    "SequenceNode",
    "Text",
    "comments",
    "edited",
    "in_brackets",
]


@dataclass(frozen=True, slots=True)
class Edit:
    """The characters from `start` to before `end` become `text`."""

    start: int
    end: int
    text: str


@dataclass(frozen=True, slots=True)
class Entry:
    """One key with its value, in the mapping `around`; `pointer` leads to the value."""

    key: ScalarNode
    value: Node
    around: MappingNode
    pointer: Pointer


@dataclass(frozen=True)
class Text:
    """A text with its nodes."""

    text: str
    root: Node

    @classmethod
    def of(cls, text: str) -> "Text":
        """The nodes of a text that reads as YAML and holds a record."""
        return _marked(text)

    def entries(self) -> Iterator[Entry]:
        """Every key with its value, the whole before its parts."""
        yield from _entries(self.root, ())

    def at(self, pointer: Pointer) -> Node | None:
        """The node that keys lead to."""
        node: Node | None = self.root
        for step in pointer:
            node = _below(node, step)
        return node

    def end(self, node: Node) -> int:
        """Behind the last character of a node, without the blanks and comments that follow a block."""
        if isinstance(node, ScalarNode):
            return len(self.text[: node.end_mark.index].rstrip()) if node.style in ("|", ">") else node.end_mark.index
        if in_brackets(node) or not node.value:
            return int(node.end_mark.index)
        last = node.value[-1]
        return self.end(last[1] if isinstance(last, tuple) else last) or int(node.end_mark.index)

    def raw(self, node: Node) -> str:
        """A node as it was typed."""
        return self.text[node.start_mark.index : self.end(node)]

    def gaps(self, start: int, end: int) -> str:
        """What stands between two places beside scalars: signs, blanks and comments."""
        known = self._scalars
        spans = [
            span
            for span in known[bisect_left(known, (start, start)) : bisect_left(known, (end, end))]
            if span[1] <= end
        ]
        edges = [start, *(edge for span in spans for edge in span), end]
        return "\n".join(self.text[a:b] for a, b in zip(edges[::2], edges[1::2], strict=True))

    def comment_places(self) -> Iterator[tuple[int, int]]:
        """Where every comment begins, and where its line ends, in order."""
        edges = [0, *(edge for span in self._scalars for edge in span), len(self.text)]
        heads = [(start, self.line_end(start)) for start, _ in self._scalars if self.text.startswith(("|", ">"), start)]
        for start, end in sorted([*zip(edges[::2], edges[1::2], strict=True), *heads]):
            for found in _COMMENT.finditer(self.text, start, end):
                yield found.start(), self.line_end(found.start())

    @cached_property
    def _scalars(self) -> list[tuple[int, int]]:
        return list(_scalars(self, self.root))

    def line_start(self, index: int) -> int:
        """Where the line begins that a place is in."""
        return self.text.rfind("\n", 0, index) + 1

    def line_end(self, index: int) -> int:
        """Where the line ends that a place is in, before its end of line."""
        found = self.text.find("\n", index)
        return len(self.text) if found < 0 else found - (self.text[found - 1 : found] == "\r")

    @property
    def newline(self) -> str:
        """How lines end here."""
        return "\r\n" if "\r\n" in self.text else "\n"


_BYTE_ORDER_MARK = "\ufeff"
"""The parser in C, which is six times as fast, does not count it."""


@lru_cache(maxsize=4)
def _marked(text: str) -> Text:
    """Kept for a while: of a text that is changed step by step, each step asks for the nodes before and after, and nobody changes those."""
    return Text(text, YAML(typ="safe", pure=text.startswith(_BYTE_ORDER_MARK)).compose(text))


_COMMENT = re.compile("#[^\n]*")


def in_brackets(node: Node) -> bool:
    """Whether a list or mapping stands in brackets; a text never does."""
    return bool(getattr(node, "flow_style", False))


def edited(text: str, edits: Iterable[Edit]) -> str:
    """The text with all edits made; none may reach into another, and those at one place are made in the order given."""
    pieces, place = [], 0
    for edit in sorted(edits, key=lambda edit: edit.start):
        pieces += [text[place : edit.start], edit.text]
        place = edit.end
    return "".join([*pieces, text[place:]])


def comments(text: str) -> list[str]:
    """All comments of a record, in order."""
    marked = Text.of(text)
    outside = marked.gaps(0, len(text))
    return [line[line.index("#") :].rstrip() for line in outside.splitlines() if "#" in line]


def _entries(node: Node, pointer: Pointer) -> Iterator[Entry]:
    if isinstance(node, MappingNode):
        for key, value in node.value:
            place = (*pointer, str(key.value))
            yield Entry(key, value, node, place)
            yield from _entries(value, place)
    elif isinstance(node, SequenceNode):
        for number, item in enumerate(node.value):
            yield from _entries(item, (*pointer, number))


def _below(node: Any, step: str | int) -> Node | None:
    if isinstance(node, MappingNode):
        return next((value for key, value in node.value if key.value == step), None)
    if isinstance(node, SequenceNode) and isinstance(step, int) and step < len(node.value):
        found: Node = node.value[step]
        return found
    return None


def _scalars(text: Text, node: Node) -> Iterator[tuple[int, int]]:
    """Where every key and text begins and ends, in order."""
    if isinstance(node, ScalarNode):
        yield node.start_mark.index, text.end(node)
    for item in () if isinstance(node, ScalarNode) else node.value:
        for inner in item if isinstance(item, tuple) else (item,):
            yield from _scalars(text, inner)
