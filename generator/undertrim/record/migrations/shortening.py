"""Puts the short form in the place of the long one: a list of the usual fields, their one text, an entry without its brackets.

What is short enough for it then goes on one line.
"""

import json
import re
from dataclasses import dataclass

from undertrim.record import shapes
from undertrim.record.migrations.marked import (
    Edit,
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

WIDEST = 160
"""Characters of a line that a short form may make; the long one stays where it would be longer."""

_LIST = 100
"""Characters of a list that goes on one line."""

_SIGNS = re.compile(r"[,\[\]{}]")


def shortened(text: str) -> str:
    """The text with its short forms."""
    marked = Text.of(text)
    return edited(text, _Shortening(marked).edits(marked.root, shapes.whole("vehicle")))


@dataclass(frozen=True, slots=True)
class _Shortening:
    marked: Text

    def edits(self, node: Node, shape: Shape | None) -> list[Edit]:
        """The edits in and below a node; none reaches into another."""
        if shape is None or isinstance(node, ScalarNode):
            return []
        if isinstance(node, SequenceNode):
            return [edit for item in node.value for edit in self._of_value(item, shape.items)]
        found: list[Edit] = []
        for key, value in node.value:
            below = shape.below(str(key.value))
            if isinstance(value, MappingNode) and shape.is_group(
                (str(inner.value) for inner, _ in value.value), "parts"
            ):
                below = shape.of_group("parts")
            commented = "#" in self.marked.gaps(key.end_mark.index, self.marked.end(value))
            short = None if commented else self._short(value, below, flow=in_brackets(node))
            if short is None and node is not self.marked.root and not commented:
                short = self._line(value, below)
            if short is not None and self._fits(key, short):
                found.append(Edit(key.end_mark.index, self.marked.end(value), f": {short}"))
            else:
                found += self.edits(value, below)
        return found

    def _of_value(self, node: Node, shape: Shape | None) -> list[Edit]:
        """The edits of an entry of a list."""
        short = self._short(node, shape, flow=True) if shape and not shape.is_list else None
        if short is not None and in_brackets(node):
            return [Edit(node.start_mark.index, self.marked.end(node), short)]
        return self.edits(node, shape)

    def _fits(self, key: ScalarNode, short: str) -> bool:
        return bool(key.end_mark.column + len(short) + 2 <= WIDEST)

    def _line(self, node: Node, shape: Shape | None) -> str | None:
        """A list of several, or a mapping of one, in brackets on one line; None where it is in brackets, or no line could hold it."""
        if shape is None or isinstance(node, ScalarNode) or in_brackets(node) or self._marked_up(node):
            return None
        if isinstance(node, MappingNode):
            return self._pair(node, shape) if len(node.value) == 1 else None
        if not all(map(self._on_a_line, node.value)):
            return None
        made = "[" + ", ".join(self._inside(value, shape.items, flow=True) for value in node.value) + "]"
        return made if len(made) <= _LIST else None

    def _pair(self, node: MappingNode, shape: Shape) -> str | None:
        """A mapping of one in brackets."""
        [(key, value)] = node.value
        if not self._on_a_line(value):
            return None
        return f"{{{self.marked.raw(key)}: {self._inside(value, shape.below(str(key.value)), flow=True)}}}"

    def _on_a_line(self, node: Node) -> bool:
        """Whether it is a list or mapping that stands in brackets on one line already."""
        return in_brackets(node) and "\n" not in self.marked.raw(node)

    def _marked_up(self, node: Node) -> bool:
        """Whether a comment stands inside."""
        return "#" in self.marked.gaps(node.start_mark.index, self.marked.end(node))

    def _short(self, node: Node, shape: Shape | None, *, flow: bool) -> str | None:
        """The short form of a value; None where it has none. `flow`: it stands in brackets."""
        if shape is None or self._marked_up(node):
            return None
        if isinstance(node, SequenceNode) and shape.is_list and len(node.value) == 1:
            return self._only(node.value[0], shape.items, flow=flow)
        if isinstance(node, MappingNode):
            keyed = shape.items if shape.is_list and shape.items and shape.items.keyed else None
            return self._behind_key(node, keyed) if keyed else self._fields(node, shape, flow=flow)
        return None

    def _only(self, item: Node, shape: Shape | None, *, flow: bool) -> str | None:
        """The one entry of a list, without its brackets; one that is short in brackets of its own would read as the list."""
        keyed = self._behind_key(item, shape) if isinstance(item, MappingNode) and shape else None
        if keyed is not None:
            return keyed
        if isinstance(item, SequenceNode) or (isinstance(item, MappingNode) and not in_brackets(item)):
            return None
        if shape and shape.short_list:
            return None
        if isinstance(item, ScalarNode) and (item.value in ("", BACK) or item.style in ("|", ">")):
            return None
        return self._inside(item, shape, flow=flow)

    def _fields(self, node: MappingNode, shape: Shape, *, flow: bool) -> str | None:
        values = {str(key.value): value for key, value in node.value}
        if any(
            isinstance(value, ScalarNode) and (value.value == "" or value.style in ("|", ">"))
            for value in values.values()
        ):
            return None
        if shape.short_text and set(values) == {shape.short_text} and isinstance(values[shape.short_text], ScalarNode):
            return self._inside(values[shape.short_text], None, flow=flow)
        if shape.keyed:
            return self._behind_key(node, shape)
        names = shape.short_list[: len(values)]
        if len(names) < 2 or set(values) != set(names):
            return None
        if any(isinstance(value, MappingNode) or ("\n" in self.marked.raw(value)) for value in values.values()):
            return None
        return "[" + ", ".join(self._inside(values[name], shape.fields[name], flow=True) for name in names) + "]"

    def _behind_key(self, node: MappingNode, shape: Shape) -> str | None:
        """The usual fields as a list behind the word of one of them."""
        values = {str(key.value): value for key, value in node.value}
        if set(values) != {shape.keyed, *shape.keyed_list} or self._marked_up(node):
            return None
        if any(not isinstance(value, ScalarNode) or value.style in ("|", ">") for value in values.values()):
            return None
        listed = ", ".join(self._inside(values[name], None, flow=True) for name in shape.keyed_list)
        return f"{{{self.marked.raw(values[shape.keyed])}: [{listed}]}}"

    def _inside(self, node: Node, shape: Shape | None, *, flow: bool) -> str:
        """A value with what is short in it; quoted where the brackets around it need that."""
        if isinstance(node, ScalarNode):
            plain = node.style not in ('"', "'")
            return (
                json.dumps(node.value, ensure_ascii=False)
                if flow and plain and _SIGNS.search(node.value)
                else self.marked.raw(node)
            )
        short = self._short(node, shape, flow=flow)
        if short is not None:
            return short
        start = node.start_mark.index
        moved = [Edit(edit.start - start, edit.end - start, edit.text) for edit in self.edits(node, shape)]
        return edited(self.marked.raw(node), moved)
