"""The parts of a sheet round its drawing: heading, cautions, scale, key, notes, index, foot. All in mm from their upper left corner."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.publish.printed.paper import metrics
from undertrim.publish.printed.paper.layout import FINE, FRAME, THIN, Circle, Line, Rectangle, Shape, Text, bounds
from undertrim.publish.printed.paper.pieces import Key, sentences
from undertrim.publish.printed.paper.tiling import Grid, Tile
from undertrim.publish.printed.paper.words import Words
from undertrim.publish.printed.sheet import glyphs
from undertrim.words import message, say

SQUARE = 50.0
BAR = 100.0
TICK = 10.0
LEAST_WIDTH = 160.0
"""The width that square, bar and index need."""

_GAP = 5.0
_BAR_ROOM = 13.0
_INDEX = 28.0  # with the room of the bar below it, lower than the square
_LABEL_ROOM = 50.0
_SIZES = {12.0: 5.0, 10.0: 4.4, 9.0: 3.9, 8.0: 3.4}  # pt -> mm from line to line


@dataclass(frozen=True, slots=True)
class Block:
    """Shapes that stand together, and how high they are."""

    shapes: tuple[Shape, ...]
    height: float

    def at(self, x: float, y: float) -> tuple[Shape, ...]:
        """The shapes with their upper left corner at a point."""
        return tuple(shape.moved(x, y) for shape in self.shapes)


def stacked(blocks: Sequence[Block], gap: float = 0) -> Block:
    """Blocks one below the other."""
    shapes: list[Shape] = []
    y = 0.0
    for block in blocks:
        shapes.extend(block.at(0, y))
        y += block.height + gap
    return Block(tuple(shapes), max(0.0, y - gap))


def paragraph(text: str, width: float, size: float = 8, *, bold: bool = False, heading: bool = False) -> Block:
    """A text in as many lines as it needs."""
    pitch = _SIZES[size]
    lines = metrics.wrapped(glyphs.text(text), width, size, bold=bold)
    return Block((Text(0, pitch * 0.75, lines, size, pitch, bold, heading),), pitch * len(lines))


def head(words: Words, width: float, label: str) -> Block:
    """What the sheet belongs to, which sheet it is (`label`), and the cautions."""
    room = width - _LABEL_ROOM
    what = say(message("paper/true-scale", what=words.shows))
    titles = stacked([paragraph(words.title, room, 12, bold=True, heading=True), paragraph(what, room, 10)], 0.6)
    corner = [label, say(message("paper/invented"))] if words.demo else [label]
    right = stacked([_at_right(paragraph(line, _LABEL_ROOM), width) for line in corner], 0.6)
    top = Block((*titles.shapes, *right.shapes), max(titles.height, right.height))
    return stacked([top, *(_alert(text, width) for text in words.alerts)], 1.5)


def _at_right(block: Block, width: float) -> Block:
    """One line of text ending at `width`."""
    (text,) = block.shapes
    assert isinstance(text, Text)
    length = metrics.face("Regular").width(text.lines[0], text.size)
    return Block((replace(text, x=width - length),), block.height)


def _alert(text: str, width: float) -> Block:
    pad = 1.5
    said = paragraph(text, width - 2 * pad, 9, bold=True)
    height = said.height + 2 * pad
    return Block((Rectangle(width / 2, height / 2, width, height, FRAME), *said.at(pad, pad)), height)


def foot(words: Words, width: float) -> Block:
    """Whose word comes first, and how old the data is."""
    rule = Block((Line(0, 0, width, 0, FINE),), 0.8)
    return stacked(
        [rule, paragraph(sentences(message("safety/maker-first")), width, bold=True), paragraph(_dated(words), width)]
    )


def _dated(words: Words) -> str:
    dated = message("paper/dated", day=words.data_date, record=words.address)
    return sentences(dated, message("paper/scale-right"))


def strip(words: Words, keys: Sequence[Key], width: float, index: Block | None) -> Block:
    """The square and the bar that prove the scale, beside them the key and the notes."""
    left = SQUARE + _GAP
    room = width - left - (_INDEX + _GAP if index else 0)
    texts = stacked([*(_key(key, room) for key in keys), *(paragraph(note, room) for note in words.notes)], 0.4)
    height = max(SQUARE, texts.height + _BAR_ROOM)
    shapes = (*square().shapes, *texts.at(left, 0), *bar().at(left, height - _BAR_ROOM))
    return Block((*shapes, *(index.at(width - _INDEX, 0) if index else ())), height)


def _key(key: Key, width: float) -> Block:
    said = paragraph(key.words, width - 12)
    sample = (shape.moved(5, 1.7) for shape in key.sample)
    return Block((*sample, *said.at(12, 0)), max(said.height, 3.6))


def square() -> Block:
    """The square, with the words on how to use it inside."""
    inside = paragraph(sentences(*map(message, _SCALE)), SQUARE - 8, 9)
    frame = Rectangle(SQUARE / 2, SQUARE / 2, SQUARE, SQUARE, FINE)
    name = paragraph(say(message("paper/square", side=SQUARE)), SQUARE - 8, 9, bold=True)
    return Block((frame, *name.at(4, 4), *inside.at(4, 9)), SQUARE)


_SCALE = ("paper/print-at-100", "paper/measure-square", "paper/do-not-use")


def bar() -> Block:
    """The bar with a tick every 10 mm, the first and last of which are its ends."""
    y = _BAR_ROOM - 4.5
    ticks = (Line(x, y, x, y - (4 if x % (BAR / 2) == 0 else 2.5), FINE) for x in _steps())
    numbers = (_centred(x, y + 3.4, _tick(x)) for x in _steps())
    return Block((Line(0, y, BAR, y, FINE), *ticks, *numbers), _BAR_ROOM)


def _tick(x: float) -> str:
    return say(x) if x < BAR else glyphs.text(say(message("paper/bar-end", length=x)))


def _centred(x: float, y: float, word: str, *, bold: bool = False) -> Text:
    width = metrics.face("Semibold" if bold else "Regular").width(word, 8)
    return Text(x - width / 2, y, (word,), 8, 3.4, bold, label=True)


def _steps() -> list[float]:
    return [number * TICK for number in range(round(BAR / TICK) + 1)]


def index(grid: Grid, outline: Shape, here: Tile) -> Block:
    """A small picture of all sheets with the opening on them; the one in hand has a thick edge."""
    whole = bounds(_frame(tile) for tile in grid.tiles)
    scale = _INDEX / max(whole.width, whole.height)
    shapes = [_shrunk(outline, scale), *(part for tile in grid.tiles for part in _place(tile, scale, tile == here))]
    return Block(tuple(shape.moved(-whole.left * scale, -whole.top * scale) for shape in shapes), _INDEX)


def _frame(tile: Tile) -> Rectangle:
    return Rectangle(*tile.window.middle, tile.window.width, tile.window.height, THIN)


def _place(tile: Tile, scale: float, here: bool) -> Iterator[Shape]:
    frame = _frame(tile)
    x, y = frame.x * scale, frame.y * scale
    inset = 0.5 if here else 0.0
    pen = FRAME if here else THIN
    yield Rectangle(x, y, frame.width * scale - inset, frame.height * scale - inset, pen)
    yield _centred(x, y + 1, tile.name, bold=here)


def _shrunk(shape: Shape, scale: float) -> Shape:
    """An outline about (0, 0) in another scale."""
    if isinstance(shape, Circle):
        return replace(shape, radius=shape.radius * scale, pen=FINE)
    assert not isinstance(shape, Line | Text)
    return replace(shape, width=shape.width * scale, height=shape.height * scale, pen=FINE)
