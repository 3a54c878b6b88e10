"""Which thing of a record each comment speaks of: the entry or item that it stands above, beside or below.

A round trip of the YAML library was tried first. It keeps a comment with the text before it, so that a key that is moved takes the
comment above the next key along, and it drops comments inside brackets; so places are reckoned here, from the nodes of the text.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from undertrim.record.layout import modeline
from undertrim.record.migrations.marked import MappingNode, Node, ScalarNode, SequenceNode, Text, in_brackets
from undertrim.record.source import Pointer


@dataclass(slots=True, eq=False)
class Thing:
    """A key with its value, or an item of a list, with its comments. `inside` are the brackets that it stands in, if any."""

    pointer: Pointer
    start: int
    column: int
    node: Node
    above: "Thing | None"
    inside: Node | None
    key: ScalarNode | None = None
    before: list[str] = field(default_factory=list)
    beside: list[str] = field(default_factory=list)
    after: list[str] = field(default_factory=list)

    @property
    def commented(self) -> bool:
        """Whether a comment speaks of it."""
        return bool(self.before or self.beside or self.after)

    def up(self) -> Iterator["Thing"]:
        """Itself, and all that it stands in, from the inside."""
        thing: Thing | None = self
        while thing:
            yield thing
            thing = thing.above


@dataclass(slots=True)
class Notes:
    """The things of a record by place; comments at its `head` and `foot` speak of the whole."""

    things: dict[Pointer, Thing]
    line: str = ""
    head: list[str] = field(default_factory=list)
    foot: list[str] = field(default_factory=list)
    around: set[Pointer] = field(default_factory=set)
    """The places with a comment somewhere below them."""


@dataclass(frozen=True, slots=True)
class _Block:
    """Comments on lines of their own that follow each other; where they begin, and whether a blank line is above and below."""

    start: int
    column: int
    lines: tuple[str, ...]
    free: bool
    apart: bool


def notes(marked: Text) -> Notes:
    """The things of a text with their comments."""
    found = list(_things(marked, marked.root, (), None, None))
    made = Notes({thing.pointer: thing for thing in found})
    own: list[tuple[int, int]] = []
    for start, end in marked.comment_places():
        line = marked.line_start(start)
        if marked.text[line:start].strip() not in ("", "---"):
            _beside(marked, found, start, marked.text[start:end].rstrip())
        elif not made.line and modeline.is_one(marked.text[start:end]):
            made.line = marked.text[start:end].rstrip()
        else:
            own.append((start, end))
    for block in _blocks(marked.text, own):
        _own_lines(found, made, block)
    for thing in found:
        if thing.commented:
            made.around.update(outer.pointer for outer in thing.up() if outer is not thing)
            made.around.add(())
    return made


def _things(marked: Text, node: Node, pointer: Pointer, above: Thing | None, inside: Node | None) -> Iterator[Thing]:
    """All things in the order in which they begin."""
    inner = inside or (node if in_brackets(node) else None)
    if isinstance(node, MappingNode):
        for key, value in node.value:
            mark = key.start_mark
            made = Thing((*pointer, str(key.value)), mark.index, mark.column, value, above, inner, key)
            yield made
            yield from _things(marked, value, made.pointer, made, inner)
    elif isinstance(node, SequenceNode):
        end = node.start_mark.index
        for number, item in enumerate(node.value):
            start = item.start_mark.index if inner else _dash(marked.text, end)
            column = start - marked.line_start(start)
            made = Thing((*pointer, number), start, column, item, above, inner)
            yield made
            yield from _things(marked, item, made.pointer, made, inner)
            end = max(marked.end(item), start + 1)


def _dash(text: str, start: int) -> int:
    """Where the dash of the next item stands, comments left out."""
    place = start
    while text[place] != "-":
        place = text.index("\n", place) if text[place] == "#" else place + 1
    return place


def _beside(marked: Text, things: list[Thing], start: int, comment: str) -> None:
    """A comment behind something on its line speaks of the last thing that begins before it, or of the brackets that close there."""
    last = next((thing for thing in reversed(things) if thing.start < start), things[0])
    closed = [thing for thing in last.up() if thing.inside and marked.end(thing.inside) <= start]
    owner = closed[-1].above if closed and closed[-1].above else last
    owner.beside.append(comment)


def _blocks(text: str, own: list[tuple[int, int]]) -> Iterator[_Block]:
    """Comments on lines that follow each other, from one column, belong together."""
    lines: list[tuple[int, int]] = []
    for place in own:
        if lines and text[lines[-1][1] : place[0]] != "\n" + " " * _column(text, lines[0][0]):
            yield _block(text, lines)
            lines = []
        lines.append(place)
    if lines:
        yield _block(text, lines)


def _column(text: str, place: int) -> int:
    return place - (text.rfind("\n", 0, place) + 1)


def _block(text: str, places: list[tuple[int, int]]) -> _Block:
    start, end = places[0][0], places[-1][1]
    lines = tuple(text[one:other].rstrip() for one, other in places)
    free = re.search(r"(?:\A|\n)[ \t]*\n[ \t]*\Z", text[:start]) is not None
    return _Block(start, _column(text, start), lines, free, re.match(r"\n[ \t]*\n|\s*\Z", text[end:]) is not None)


def _own_lines(things: list[Thing], made: Notes, block: _Block) -> None:
    """Comments on lines of their own speak of what is next, unless they stand at the end of what is above."""
    after = next((thing for thing in things if thing.start > block.start), None)
    before = next((thing for thing in reversed(things) if thing.start < block.start), None)
    if before is None:
        (made.head if block.apart or after is None else after.before).extend(block.lines)
    elif isinstance(before.node, ScalarNode) and before.node.start_mark.index > block.start:
        before.before.extend(block.lines)
    elif owner := _ended(before, after, block):
        owner.after.extend(block.lines)
    elif after:
        after.before.extend(block.lines)
    else:
        made.foot.extend(block.lines)


def _ended(before: Thing, after: Thing | None, block: _Block) -> Thing | None:
    """The thing at whose end comments stand; None where they speak of what is next."""
    open_yet = set(after.up()) if after else set()
    closed = [thing for thing in before.up() if thing not in open_yet]
    within = [thing for thing in closed if thing.inside and thing.inside.end_mark.index > block.start]
    if within:  # inside brackets the columns say nothing
        return None if after and after.inside is within[-1].inside else within[-1]
    if not closed:
        return None
    fitting = next((thing for thing in closed if thing.column <= block.column), closed[-1])
    if after is None:
        return None if block.free and block.column == 0 else fitting
    if block.column > after.column:
        return fitting
    return fitting if block.apart and not block.free and block.column == fitting.column else None
