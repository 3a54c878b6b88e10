"""The ways in which a value may be typed at a place of a record, as changes of its text, the plainest first."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record.changing.typed_places import TypedPlaces, shape_at
from undertrim.record.changing.writing_values import typed
from undertrim.record.fields import Node as SchemaNode
from undertrim.record.fields import node_of
from undertrim.record.migrations.marked import (
    Edit,
    Entry,
    MappingNode,
    Node,
    ScalarNode,
    SequenceNode,
    Text,
    in_brackets,
)
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.yaml_text import may_be_plain

Edits = list[Edit]
Way = Iterator[Edits]
"""One way to type a value, at each place in its block where it may stand: the record says the same for all, but comments may speak of something else."""


@dataclass(frozen=True, slots=True)
class Editing:
    """One text in which a value is to stand at a place of the whole."""

    source: Source
    marked: Text
    places: TypedPlaces

    @classmethod
    def of(cls, source: Source) -> "Editing":
        """The text of a source that was read without problems."""
        return cls(source, Text.of(source.as_typed.text), TypedPlaces(source))

    def ways(self, place: Pointer, value: Data) -> Iterator[Way]:
        """Every way that may come to it; whether one does is for the proof to say."""
        spot = self.places.value(place)
        node = self.marked.at(spot) if spot is not None else None
        if node is not None and (isinstance(value, list | dict) or not isinstance(node, MappingNode)):
            yield from self._replaced(node, place, value)
        for depth in range(len(place) - 1, -1, -1):
            if at(self.source.data, place[:depth]) is not None:
                yield from self._inserted(place, depth, value)
        if len(place) > 2:
            yield from self._out_of_names(place, value)

    def _replaced(self, node: Node, place: Pointer, value: Data) -> Iterator[Way]:
        start, end = node.start_mark.index, self.marked.end(node)
        if "#" in self.marked.gaps(start, end):
            return
        inside = in_brackets(node) or self._stands_in_brackets(start)
        said = self._as_listed(node, place, value) or typed(value, _schema_of(place), in_brackets=inside)
        yield iter([[Edit(start, end, said)]])

    def _as_listed(self, node: Node, place: Pointer, value: Data) -> str:
        """The word by which a list says the value, where one says it now: `kit needed`; empty for any other place."""
        field = _schema_of(place)
        listed = field.schema.get("listed", {}) if field else {}
        if not isinstance(node, ScalarNode) or str(node.value) not in listed:
            return ""
        return next((word for word, meant in listed.items() if meant == value), "")

    def _stands_in_brackets(self, start: int) -> bool:
        """Whether something begins inside brackets."""
        return any(
            in_brackets(entry.around) and entry.value.start_mark.index == start for entry in self.marked.entries()
        ) or any(
            in_brackets(entry.value) and entry.value.start_mark.index < start < self.marked.end(entry.value)
            for entry in self.marked.entries()
        )

    # What is not typed yet

    def _inserted(self, place: Pointer, depth: int, value: Data) -> Iterator[Way]:
        """The key below what stands there, with all that it lacks between itself and the value."""
        key, shape, inner = place[depth], shape_at(place[:depth]), nested(place[depth + 1 :], value)
        for spot in self.places.blocks(place[:depth]):
            node = self.marked.at(spot)
            if node is not None and not isinstance(key, int):
                for said in (inner, *self._for_its_cars(place, depth, value)):
                    yield from self._below(node, shape, place[: depth + 1], said)

    def _for_its_cars(self, place: Pointer, depth: int, value: Data) -> Iterator[Data]:
        """A value for the cars of its form, beside `unknown` for the others, in all that leads to it."""
        field = shape_at(place)
        cars = self.places.form_and_others(place[:depth])
        if cars and field and field.may_be_unknown:
            each = [{"when": cars[0], "is": value}, *({"when": other, "is": "unknown"} for other in cars[1:])]
            yield nested(place[depth + 1 :], each)

    def _below(self, node: Node, shape: Shape | None, place: Pointer, value: Data) -> Iterator[Way]:
        key, says = str(place[-1]), _schema_of(place)
        said = f"{key}: {typed(value, says, in_brackets=True)}"
        if isinstance(node, MappingNode) and key not in _keys(node):
            for name, around in node.value:
                if shape and str(name.value) in shape.together and key in shape.together[str(name.value)].fields:
                    yield self._among(around, said, said)
            yield self._among(node, f"{key}: {typed(value, says, in_brackets=False)}", said)
        elif isinstance(node, SequenceNode) and shape and shape.short_list and in_brackets(node):
            yield iter([self._by_name(node, shape, said)])
        elif isinstance(node, ScalarNode) and shape and shape.short_text:
            yield iter([self._opened(node, shape, said)])

    def _among(self, node: Node, plain: str, inside: str) -> Way:
        """Behind each of the entries of a mapping, the last first."""
        if not isinstance(node, MappingNode):
            return
        if in_brackets(node):
            end = self.marked.end(node) - 1
            last = self.marked.end(node.value[-1][1]) if node.value else end
            yield [Edit(last, last, f", {inside}" if node.value else inside)]
            return
        for key, value in reversed(node.value):
            end = self.marked.line_end(max(self.marked.end(value), key.end_mark.index))
            yield [Edit(end, end, f"{self.marked.newline}{' ' * key.start_mark.column}{plain}")]

    def _by_name(self, node: SequenceNode, shape: Shape, said: str) -> Edits:
        """A short list as the mapping that it stands for, with one more field."""
        start, end = node.start_mark.index, self.marked.end(node)
        named = [
            Edit(item.start_mark.index, item.start_mark.index, f"{name}: ")
            for name, item in zip(shape.short_list, node.value, strict=False)
        ]
        return [Edit(start, start + 1, "{"), *named, Edit(end - 1, end, f", {said}}}")]

    def _opened(self, node: ScalarNode, shape: Shape, said: str) -> Edits:
        """A text as the mapping that it stands for, with one more field."""
        start, end = node.start_mark.index, self.marked.end(node)
        raw = self.marked.text[start:end]
        inside = raw if node.style else typed(str(node.value), None, in_brackets=True)
        if not node.style and may_be_plain(raw, in_brackets=True):
            inside = raw
        return [Edit(start, end, f"{{{shape.short_text}: {inside}, {said}}}")]

    # What a group only names

    def _out_of_names(self, place: Pointer, value: Data) -> Iterator[Way]:
        """A thing that stands in a list of names of a group, by itself with all that the group says of it."""
        position, section = self.source.keys.get(place[:2]), self.marked.at(place[:1])
        if not isinstance(section, MappingNode) or in_brackets(section):
            return
        for group in (entry for entry in self.marked.entries() if entry.pointer[:1] == place[:1]):
            names = group.value
            if len(group.pointer) != 3 or group.pointer[-1] != place[0] or not isinstance(names, SequenceNode):
                continue
            for number in range(len(names.value)):
                if position == self.source.as_typed.values.get((*group.pointer, number)):
                    thing = _with(at(self.source.data, place[:2]), place[2:], value)
                    said = f"{place[1]}: {typed(thing, _schema_of(place[:2]), in_brackets=False)}"
                    yield self._instead(group, number, section, said)

    def _instead(self, group: Entry, number: int, section: MappingNode, said: str) -> Way:
        """A thing by itself, and the list of the group without its name; in place of the group, where it has no other."""
        items = group.value.value
        if len(items) == 1:
            around = next(entry for entry in self.marked.entries() if entry.pointer == group.pointer[:-1])
            gone = self._cut(around.key.start_mark.index, self.marked.end(around.value), said)
            yield from [gone] if gone else []
        elif in_brackets(group.value):
            start = items[number].start_mark.index if number == 0 else self.marked.end(items[number - 1])
            end = items[1].start_mark.index if number == 0 else self.marked.end(items[number])
            gone = self._cut(start, end, "")
            yield from ([*gone, *added] for added in self._among(section, said, said) if gone)

    def _cut(self, start: int, end: int, text: str) -> Edits:
        """Something else in place of what stands there; nothing where a comment is in it."""
        return [] if "#" in self.marked.gaps(start, end) else [Edit(start, end, text)]


def _with(thing: Data, keys: Pointer, value: Data) -> Data:
    """A copy of a mapping in which the keys lead to a value."""
    key, *rest = keys
    return {**thing, key: _with(thing.get(key, {}), tuple(rest), value) if rest else value}


def _keys(node: MappingNode) -> set[str]:
    return {str(key.value) for key, _ in node.value}


def nested(keys: Pointer, value: Data) -> Data:
    """The value in all that leads to it: mappings by their keys, and lists of one."""
    for key in reversed(keys):
        value = [value] if isinstance(key, int) else {key: value}
    return value


def at(data: Data, place: Pointer) -> Data:
    """What stands at a place; None for nothing."""
    for step in place:
        if isinstance(data, dict):
            data = data.get(step)
        elif isinstance(data, list) and isinstance(step, int):
            data = data[step] if step < len(data) else None
        else:
            return None
    return data


def _schema_of(place: Pointer) -> SchemaNode | None:
    return node_of(place)
