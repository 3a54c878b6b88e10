"""Lays a record out the one way: the lines of its things, with what is short on one line in brackets."""

# Long because it is one walk: each thing may stand on a line, in brackets or as a block, and hold any of them.

import textwrap
from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record import shapes, stamping
from undertrim.record.examples import is_id
from undertrim.record.layout import texts
from undertrim.record.layout.notes import Notes, Thing
from undertrim.record.layout.ordering import in_order
from undertrim.record.migrations.marked import MappingNode, Node, ScalarNode, SequenceNode, Text
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer
from undertrim.record.spreading import BACK

WIDEST = 160
"""Characters of a line that a list or mapping may fill in brackets, with its margin and key, and without the prose in it."""

SENTENCES = 180
"""The same for a list of sentences, which would be no easier to read below each other."""

LONGEST = 200
"""Characters of a line in which mappings stand in each other, with the prose in them: a longer one is easier to read below its key."""

DEEPEST = 3
"""Mappings that may stand in each other in brackets; of a section it is one."""

STEP = 2


@dataclass(frozen=True, slots=True)
class Laying:
    """One record of a `kind`; `once` where it is of the format that lets brackets of one be left out."""

    kind: str
    marked: Text
    notes: Notes
    once: bool
    data: Data

    def lines(self) -> Iterator[str]:
        """All lines."""
        yield from ([self.notes.line] if self.notes.line else [])
        if self.notes.head:
            yield from (*self.notes.head, "")
        yield from self._children(self.marked.root, (), shapes.whole(self.kind), 0)
        if self.notes.foot:
            yield from ("", *self.notes.foot)

    def _children(self, node: Node, pointer: Pointer, shape: Shape | None, margin: int) -> Iterator[str]:
        """The lines of what stands in a mapping or list."""
        things = [self.notes.things[place] for place in in_order(node, pointer, shape, self.kind)]
        laid = [(thing, list(self._thing(thing, _below(shape, node, thing), margin))) for thing in things]
        for number, (thing, lines) in enumerate(laid):
            yield from lines
            following = laid[number + 1 : number + 2]
            if following and (thing.after or _apart(thing, lines, *following[0], shape)):
                yield ""

    def _thing(self, thing: Thing, shape: Shape | None, margin: int) -> Iterator[str]:
        space = " " * margin
        yield from (space + comment for comment in (*thing.before, *thing.beside[:-1]))
        yield from self._marked(thing, shape, margin)
        yield from (space + comment for comment in thing.after)

    def _marked(self, thing: Thing, shape: Shape | None, margin: int) -> Iterator[str]:
        """The lines of a thing with its key or dash."""
        if thing.pointer == (stamping.KEY,) and self._as_stamped(thing):
            yield from stamping.block({stamping.KEY: self.data[stamping.KEY]})
            return
        mark = f"{texts.on_a_line(self.marked, thing.key, in_brackets=False)}:" if thing.key else "-"
        head = " " * margin + mark
        beside = f"  {thing.beside[-1]}" if thing.beside else ""
        node, pointer, shape = self._bare(thing.node, thing.pointer, shape)
        widest = SENTENCES if shape and shape.prose and isinstance(node, SequenceNode) else WIDEST
        line = self._line(node, pointer, shape, widest - len(head) - 1)
        if line is not None:
            yield f"{head} {line}".rstrip() + beside
        elif not beside and (filled := self._filled(node, pointer, shape, head, margin)):
            yield from filled
        elif isinstance(node, ScalarNode):
            sign, body = self._block(node)
            yield f"{head} {sign}{beside}"
            yield from _indented(body, margin + STEP)
        else:
            below = list(self._children(node, pointer, shape, margin + STEP))
            if thing.key or beside or below[0].lstrip().startswith("#"):
                yield head + beside
            else:
                below[0] = head + " " + below[0].lstrip()
            yield from below

    def _as_stamped(self, thing: Thing) -> bool:
        """Whether a block is what `verify` writes: it is laid out as it does that."""
        block = self.data[stamping.KEY]
        return (
            thing.pointer not in self.notes.around
            and not thing.beside
            and isinstance(block, dict)
            and [name for name in block if name != "taken"] == ["on", "by", "car", "facts"]
            and list(block)[-1] == "facts"
            and isinstance(block["facts"], dict)
            and all(isinstance(text, str) for text in (*list(block.values())[:-1], *block["facts"].values()))
        )

    def _block(self, node: ScalarNode) -> tuple[str, list[str]]:
        return texts.on_lines(self.marked, node) or (texts.quoted(str(node.value)), [])

    def _bare(self, node: Node, pointer: Pointer, shape: Shape | None) -> tuple[Node, Pointer, Shape | None]:
        """The only item of a list without its brackets, where they may be left out; else the same."""
        if not (self.once and shape and shape.is_list and isinstance(node, SequenceNode) and len(node.value) == 1):
            return node, pointer, shape
        item, inner = node.value[0], shape.items
        if self.notes.things[*pointer, 0].commented or (inner and inner.short_list) or isinstance(item, SequenceNode):
            return node, pointer, shape
        if item.value in ("", BACK, []) or (isinstance(item, ScalarNode) and item.value == ""):
            return node, pointer, shape
        return item, (*pointer, 0), inner

    def _filled(self, node: Node, pointer: Pointer, shape: Shape | None, head: str, margin: int) -> list[str]:
        """A list of ids in brackets over as many lines as it needs; nothing for any other."""
        if not isinstance(node, SequenceNode) or not node.value or pointer in self.notes.around:
            return []
        if not all(isinstance(item, ScalarNode) and is_id(item.value) for item in node.value):
            return []
        made = self._in_brackets(node, pointer, shape, DEEPEST)
        if made is None:
            return []
        space = " " * (margin + STEP)
        return textwrap.wrap(
            made.text,
            WIDEST,
            initial_indent=f"{head} ",
            subsequent_indent=space,
            break_long_words=False,
            break_on_hyphens=False,
        )

    # In brackets

    def _line(self, node: Node, pointer: Pointer, shape: Shape | None, room: int) -> str | None:
        """A value on the line of its key; None where it stands below."""
        if isinstance(node, ScalarNode):
            return texts.on_a_line(self.marked, node, in_brackets=False)
        if not node.value:
            return "{}" if isinstance(node, MappingNode) else "[]"
        if _stands_open(pointer, shape, self.kind):
            return None
        made = self._in_brackets(node, pointer, shape, 1 if len(pointer) == 1 else DEEPEST)
        if made is None or made.width > room:
            return None
        return made.text if _is_flat(node) or len(made.text) <= room + LONGEST - WIDEST else None

    def _in_brackets(self, node: Node, pointer: Pointer, shape: Shape | None, deep: int) -> "_Line | None":
        """A value in brackets; None where a comment or a text of several lines is in it, or more than so many mappings."""
        node, pointer, shape = self._bare(node, pointer, shape)
        if isinstance(node, ScalarNode):
            text = texts.on_a_line(self.marked, node, in_brackets=True)
            return None if text is None else _Line(text, 0 if shape and shape.prose else len(text))
        is_mapping = isinstance(node, MappingNode)
        if pointer in self.notes.around or (is_mapping and not deep and node.value):
            return None
        things = [self.notes.things[place] for place in in_order(node, pointer, shape, self.kind)]
        made = [self._item(thing, _below(shape, node, thing), deep - is_mapping) for thing in things]
        items = [item for item in made if item]
        return _joined(items, "{}" if is_mapping else "[]") if len(items) == len(made) else None

    def _item(self, thing: Thing, shape: Shape | None, deep: int) -> "_Line | None":
        value = self._in_brackets(thing.node, thing.pointer, shape, deep)
        if value is None or not thing.key:
            return value
        key = f"{texts.on_a_line(self.marked, thing.key, in_brackets=True)}: "
        return _Line(key + value.text, len(key) + value.width)


@dataclass(frozen=True, slots=True)
class _Line:
    """What goes on a line, and how wide it counts: prose counts nothing, since it is one line however long it is."""

    text: str
    width: int


def _apart(one: Thing, lines: list[str], other: Thing, following: list[str], shape: Shape | None) -> bool:
    """Whether a blank line stands between two things: sections of several lines, and groups from what is beside them."""
    if len(one.pointer) == 1:
        return len(lines) > 1 or len(following) > 1
    return any(_is_group(thing, shape) and not _is_of_names(thing) for thing in (one, other))


def _is_flat(node: Node) -> bool:
    """Whether no mapping stands in what a mapping or list holds."""
    inner = [value for _, value in node.value] if isinstance(node, MappingNode) else node.value
    return not any(isinstance(value, MappingNode) for value in inner)


def _joined(items: list[_Line], brackets: str) -> _Line:
    text = ", ".join(item.text for item in items)
    return _Line(f"{brackets[0]}{text}{brackets[1]}", sum(item.width + 2 for item in items))


def _below(shape: Shape | None, around: Node, thing: Thing) -> Shape | None:
    """The shape of a thing."""
    if shape is None:
        return None
    step = thing.pointer[-1]
    if isinstance(step, int):
        named = shape.short_list[step : step + 1] if not shape.is_list else ()
        return shape.fields[named[0]] if named else shape.items
    if _is_group(thing, shape):
        return shape.of_group(str(thing.pointer[-2]))
    return shape.aside.get(step) or shape.below(step)


def _is_group(thing: Thing, shape: Shape | None) -> bool:
    """Whether a thing is a group of others: it holds the name of the section that it stands in."""
    if shape is None or shape.group is None or not isinstance(thing.node, MappingNode):
        return False
    return shape.is_group((str(key.value) for key, _ in thing.node.value), str(thing.pointer[-2]))


def _indented(lines: list[str], margin: int) -> Iterator[str]:
    return (" " * margin + line if line.strip() else "" for line in lines)


def _is_of_names(thing: Thing) -> bool:
    """Whether a group only names its things: it is one line among others."""
    values = {str(key.value): value for key, value in thing.node.value}
    return not isinstance(values.get(str(thing.pointer[-2])), MappingNode)


def _stands_open(pointer: Pointer, shape: Shape | None, kind: str) -> bool:
    """Whether a mapping never goes on a line: what the record is about, things with a name of their own, and what holds such."""
    return pointer == (kind,) or (
        shape is not None and (_is_named(shape) or any(map(_holds_named, (shape, *shape.fields.values()))))
    )


def _holds_named(shape: Shape) -> bool:
    return shape.other is not None and _is_named(shape.other)


def _is_named(shape: Shape) -> bool:
    return any(item.field == "name" and item.source == "id" for item in shape.follows)
