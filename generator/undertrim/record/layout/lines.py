"""The lines of a record as it is laid out: what goes on one line, what stands below its key, and in which order."""

# Long because it is one walk: how a thing is written depends on what is in it and where it stands.

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from math import inf

from undertrim.record import shapes
from undertrim.record.layout.remarks import Remark, Remarks
from undertrim.record.migrations.marked import MappingNode, Node, ScalarNode, SequenceNode, Text, in_brackets
from undertrim.record.migrations.shortening import of_a_group
from undertrim.record.shapes import Shape

PLAIN_WIDTH, NESTED_WIDTH = 180, 100
"""Characters of a line that ends in a mapping of texts and what is small; of a list, or of a mapping of what is large, by itself."""

_WORD = 12
"""Characters of a text that is rather a word than a sentence."""

STEP = "  "
_SIGNS = re.compile(r"[,\[\]{}]")

_THINGS = ("parts", "preps", "openings", "connectors", "runs", "variants")
"""Sections of things that have a paragraph each, however short it is."""


@dataclass(frozen=True, slots=True)
class _Entry:
    """A key with its value, or an entry of a list (`key` is None), the comments that go with it, and where the next one begins."""

    key: ScalarNode | None
    value: Node
    above: list[Remark]
    beside: list[Remark]
    after: list[Remark]
    stop: int = 0
    column: int = 0


@dataclass(frozen=True)
class Page:
    """A record to be laid out."""

    marked: Text
    kind: str

    @cached_property
    def remarks(self) -> Remarks:
        """Its comments."""
        return Remarks(self.marked)

    def lines(self) -> Iterator[str]:
        """All lines."""
        shape = shapes.whole(self.kind)
        fields = {**shape.fields, **shape.aside}
        entries = self._entries(self.marked.root, 0, len(self.marked.text))
        first, last = entries[0], entries[-1]
        end = [
            remark for remark in last.after if not remark.column
        ]  # what begins and what ends a file speaks of the file
        yield from (remark.text for remark in first.above)
        entries[0] = replace(first, above=[])
        entries[-1] = replace(entries[-1], after=last.after[: len(last.after) - len(end)])
        before: list[str] = []
        for number, entry in enumerate(_in_order(entries, _sections(shape))):
            assert entry.key is not None
            name = str(entry.key.value)
            made = list(self._entry(entry, fields.get(name), "", (name,)))
            if number and (len(before) > 1 or len(made) > 1 or not isinstance(entry.value, ScalarNode)):
                yield ""
            yield from made
            before = made
        yield from (remark.text for remark in end)

    # Entries

    def _entries(self, node: Node, start: int, stop: int) -> list[_Entry]:
        """The entries of a block that stands between two places, each with the comments above, beside and after it."""
        pairs = node.value if isinstance(node, MappingNode) else [(None, item) for item in node.value]
        heads = [(key or value).start_mark for key, value in pairs]
        column = min(self._column(mark.index, key is None) for (key, _), mark in zip(pairs, heads, strict=True))
        found, place = [], start
        for number, (key, value) in enumerate(pairs):
            above = [remark for remark in self.remarks.within(place, heads[number].index) if remark.alone]
            end = self._end(value)
            place = self.marked.line_end(end)
            ahead = heads[number + 1].index if number + 1 < len(pairs) else stop
            below = self._further_in(place, ahead, column, last=number + 1 == len(pairs))
            inner = self._first_column(value)
            beside = self.remarks.behind(key.end_mark.index if key and not _on_its_line(key, value) else end)
            after = [remark for remark in below if remark.column < inner]
            found.append(_Entry(key, value, above, beside, after, ahead, column))
            place = below[-1].index + 1 if below else place
        return found

    def _column(self, index: int, in_list: bool) -> int:
        """In which column an entry begins; that of its dash for one of a list."""
        line = self.marked.line_start(index)
        return index - line - (2 if in_list else 0)

    def _first_column(self, node: Node) -> float:
        """In which column the entries of a block begin, which closes comments that stand as far in; infinite for what is none."""
        if isinstance(node, ScalarNode) or in_brackets(node) or not node.value:
            return inf
        first = node.value[0][0] if isinstance(node, MappingNode) else node.value[0]
        return self._column(first.start_mark.index, isinstance(node, SequenceNode))

    def _further_in(self, start: int, stop: int, column: int, *, last: bool) -> list[Remark]:
        """The comments below an entry that stand further in than it, or as far after the last one of a block: they close what is above."""
        found = []
        for remark in self.remarks.within(start, stop):
            if not remark.alone or not (remark.column > column or (last and remark.column == column)):
                break
            found.append(remark)
        return found

    def _end(self, node: Node) -> int:
        return max(self.marked.end(node), int(node.start_mark.index))

    def _entry(self, entry: _Entry, shape: Shape | None, indent: str, place: tuple[str, ...]) -> Iterator[str]:
        for remark in entry.above:
            yield indent + remark.text
        head = indent + ("-" if entry.key is None else f"{self.marked.raw(entry.key)}:")
        beside = "".join(f"  {remark.text}" for remark in entry.beside)
        value = self._one_line(entry, shape, len(head), place)
        if value is not None:
            yield f"{head} {value}{beside}" if value else f"{head}{beside}"
        elif entry.key is None and isinstance(entry.value, MappingNode) and not self._kept(entry):
            yield from self._item(entry, shape, indent, place, beside)
        elif self._kept(entry):
            yield from self._as_typed(entry, head, beside)
        else:
            yield head + beside
            yield from self._block(entry, shape, indent + STEP, place)
        for remark in entry.after:
            yield indent + (STEP if remark.column > entry.column else "") + remark.text

    def _item(
        self, entry: _Entry, shape: Shape | None, indent: str, place: tuple[str, ...], beside: str
    ) -> Iterator[str]:
        """A mapping in a list: its first line begins with the dash."""
        beside = beside if in_brackets(entry.value) else ""  # else it stands on a line of the block
        first, *others = self._block(entry, shape, indent + STEP, place)
        if first.lstrip().startswith("#"):
            yield f"{indent}-{beside}"
            yield first
        else:
            yield f"{indent}- {first.lstrip()}{beside}"
        yield from others

    # One line

    def _one_line(self, entry: _Entry, shape: Shape | None, used: int, place: tuple[str, ...]) -> str | None:
        """A value that goes behind its key; None for one that stands below it."""
        value = entry.value
        if isinstance(value, ScalarNode):
            return None if value.style in ("|", ">") or "\n" in self.marked.raw(value) else self.marked.raw(value)
        if not value.value:
            return self.marked.raw(value)
        if (_is_paragraph(place) and not _is_flat_list(value)) or self._commented(entry):
            return None
        made = self._flow(value, shape)
        if made is None or (_is_named(shape) and not self._names_one(value, place)):
            return None
        core = value.value[0][1] if _is_named(shape) else value
        if _is_flat(core):
            return made if used + 1 + len(made) <= PLAIN_WIDTH or self._typed_so(value) else None
        return made if len(made) <= NESTED_WIDTH else None

    def _typed_so(self, node: Node) -> bool:
        """Whether it stands on one line in brackets already: long texts are no reason to take it apart."""
        return in_brackets(node) and "\n" not in self.marked.raw(node)

    def _names_one(self, node: Node, place: tuple[str, ...]) -> bool:
        """Whether what has names of its own holds a single thing that may stand on the line of its section's key, or short words only."""
        if len(place) == 1:
            return False
        values = [value for _, value in node.value]
        words = all(isinstance(value, ScalarNode) and len(value.value) <= _WORD for value in values)
        return len(values) == 1 or words

    def _flow(self, node: Node, shape: Shape | None) -> str | None:
        """A value in brackets; None where it cannot stand in them."""
        if isinstance(node, ScalarNode):
            if node.style in ("|", ">") or "\n" in self.marked.raw(node):
                return None
            quoted = node.style not in ('"', "'") and (_SIGNS.search(node.value) or not node.value)
            return json.dumps(node.value, ensure_ascii=False) if quoted and node.value else self.marked.raw(node)
        if isinstance(node, SequenceNode):
            inner = [self._flow(item, shape.items if shape else None) for item in node.value]
            return None if None in inner else "[" + ", ".join(filter(None, inner)) + "]"
        pairs = []
        for entry in _in_order([_Entry(key, value, [], [], []) for key, value in node.value], shape):
            assert entry.key is not None
            below = shape.below(str(entry.key.value)) if shape else None
            value = self._flow(entry.value, below)
            if value is None:
                return None
            pairs.append(f"{self.marked.raw(entry.key)}: {value}" if value else f"{self.marked.raw(entry.key)}:")
        return "{" + ", ".join(pairs) + "}"

    def _commented(self, entry: _Entry) -> bool:
        """Whether a comment stands in a value: inside its brackets, or above or beside a line of its block."""
        value, start, end = entry.value, int(entry.value.start_mark.index), self._end(entry.value)
        if not in_brackets(value):
            start = self._below(entry) if entry.key and not _on_its_line(entry.key, value) else start
            inner, end = self._first_column(value), self.marked.line_end(end)
            if any(remark.column >= inner for remark in self.remarks.within(end, entry.stop)[:1]):
                return True
        return bool(self.remarks.within(start, end))

    # Blocks

    def _block(self, around: _Entry, shape: Shape | None, indent: str, place: tuple[str, ...]) -> Iterator[str]:
        """The lines of a mapping or list below its key."""
        node = around.value
        start = self._below(around) if around.key else int(node.start_mark.index)
        entries = self._entries(node, start, self._end(node) if in_brackets(node) else around.stop)
        if isinstance(node, SequenceNode):
            for entry in entries:
                yield from self._entry(entry, shape.items if shape else None, indent, (*place, "-"))
            return
        set_off = False
        for number, entry in enumerate(_in_order(entries, shape)):
            assert entry.key is not None
            name = str(entry.key.value)
            group = _is_group(entry.value, shape, place)
            if number and (group or set_off) and place == ("parts",):
                yield ""
            set_off = group
            below = of_a_group(shape) if group and shape else shape.below(name) if shape else None
            yield from self._entry(entry, below, indent, (*place, name))

    def _below(self, entry: _Entry) -> int:
        """Where the comments begin that stand above the first entry of what is below a key."""
        return self.marked.line_end((entry.key.end_mark if entry.key else entry.value.start_mark).index)

    # What stays as it was typed

    def _kept(self, entry: _Entry) -> bool:
        """Whether it is a text of several lines, or stands in brackets with comments in them."""
        return isinstance(entry.value, ScalarNode) or (in_brackets(entry.value) and self._commented(entry))

    def _as_typed(self, entry: _Entry, head: str, beside: str) -> Iterator[str]:
        """Its lines, moved as a whole so that they stand one step in from the key."""
        first, *others = self.marked.raw(entry.value).splitlines()
        yield f"{head} {first}{'' if others else beside}"
        inner = [len(line) - len(line.lstrip()) for line in others if line.strip()]
        now = len(head) - len(head.lstrip()) + len(STEP)
        for line in others:
            bare = line.lstrip()
            yield " " * (len(line) - len(bare) + now - min(inner)) + bare if bare else ""


def _sections(shape: Shape) -> Shape:
    """The shape by which the sections of a record are ordered: what is named elsewhere stands before that."""
    fields: dict[str, Shape] = {}
    for name, below in shape.fields.items():
        if name == "evidence":
            fields |= shape.aside
        fields[name] = below
    return Shape(fields={**fields, **{name: below for name, below in shape.aside.items() if name not in fields}})


def _in_order(entries: list[_Entry], shape: Shape | None) -> list[_Entry]:
    """By the order of the schema; what has names of its own stays as it was typed."""
    order = {name: number for number, name in enumerate(shape.fields)} if shape else {}
    return sorted(entries, key=lambda entry: order.get(str(entry.key.value) if entry.key else "", len(order)))


def _is_paragraph(place: tuple[str, ...]) -> bool:
    """Whether what stands at a place has lines of its own however short it is: a section, and a thing in one."""
    if len(place) == 1:
        return place[0] in ("vehicle", "gear", *_THINGS)
    return place[0] in _THINGS and (
        len(place) == 2 or (place[0] == "parts" and len(place) in (3, 4) and place[2] == "parts")
    )


def _is_group(node: Node, shape: Shape | None, place: tuple[str, ...]) -> bool:
    return (
        bool(shape and shape.group)
        and isinstance(node, MappingNode)
        and any(str(key.value) == place[-1] for key, _ in node.value)
    )


def _is_named(shape: Shape | None) -> bool:
    """Whether it is a mapping of things by names of their own."""
    return bool(shape and shape.other and not shape.fields)


def _is_flat_list(node: Node) -> bool:
    return isinstance(node, SequenceNode) and all(isinstance(item, ScalarNode) for item in node.value)


def _is_flat(node: Node, depth: int = 2) -> bool:
    """Whether it holds texts, lists of texts, and at most one level of mappings of such."""
    if isinstance(node, ScalarNode):
        return True
    if isinstance(node, SequenceNode):
        return all(isinstance(item, ScalarNode) for item in node.value)
    return depth > 0 and all(_is_flat(value, depth - 1) for _, value in node.value)


def _on_its_line(key: ScalarNode, value: Node) -> bool:
    """Whether a value begins on the line of its key, and a comment behind it is not one behind the key alone."""
    return bool(isinstance(value, ScalarNode) or in_brackets(value) or key.start_mark.line == value.start_mark.line)
