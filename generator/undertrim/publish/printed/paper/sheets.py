"""Puts a drawing and its words on sheets of paper: as many as its true size needs."""

from dataclasses import dataclass, replace
from functools import cached_property

from undertrim.publish.printed.paper import blocks
from undertrim.publish.printed.paper.blocks import Block
from undertrim.publish.printed.paper.layout import Box, Page, bounds
from undertrim.publish.printed.paper.pieces import Drawing, sentences
from undertrim.publish.printed.paper.tiling import OVERLAP, Grid, Tile, split
from undertrim.publish.printed.paper.words import Words
from undertrim.words import message, say

_GAP = 2.5
_PAD = 1.0  # mm of paper round the drawing, for the width of its lines
_LEAST = 40.0
_JOIN = (
    message("paper/overlap", by=OVERLAP),
    message("paper/cut-one"),
    message("paper/lay-crosses"),
    message("paper/measure-across"),
)


class NoRoom(Exception):  # noqa: N818 - it names what was found
    """What must be said leaves too little of the sheet for the drawing; the text says what to do."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper size in mm, upright."""

    name: str
    width: float
    height: float


A4 = Paper("a4", 210, 297)  # ISO 216
LETTER = Paper("letter", 215.9, 279.4)  # ANSI/ASME Y14.1, size A
PAPERS = {paper.name: paper for paper in (A4, LETTER)}


@dataclass(frozen=True)
class _Sheet:
    """All that is the same on every sheet; what is reckoned of it is kept, for each sheet asks again."""

    words: Words
    drawn: Drawing
    area: Box
    indexed: bool = False

    @cached_property
    def window(self) -> Box:
        """What is left for the drawing. Raises NoRoom."""
        above = self.head("").height + _GAP
        below = self.strip(Block((), 0)).height + self.foot.height + 2 * _GAP
        if self.area.height - above - below < _LEAST:
            raise NoRoom(say(message("paper/no-room")))
        return Box(self.area.left, self.area.top + above, self.area.right, self.area.bottom - below)

    @cached_property
    def grid(self) -> Grid:
        """The tiles that the drawing needs. Raises NoRoom."""
        return split(bounds(self.drawn.shapes).grown(_PAD), self.window.width, self.window.height)

    def head(self, label: str) -> Block:
        """The heading of one sheet; as high on each."""
        return blocks.head(self.words, self.area.width, label)

    def strip(self, index: Block) -> Block:
        """Scale, key and notes; as high on each."""
        return blocks.strip(self.words, self.drawn.keys, self.area.width, index if self.indexed else None)

    @cached_property
    def foot(self) -> Block:
        """The foot."""
        return blocks.foot(self.words, self.area.width)


def pages(words: Words, drawn: Drawing, paper: Paper, margin: float) -> tuple[Page, ...]:
    """The sheets in the order of their tiles. Raises NoRoom, and ValueError for a margin (mm) that leaves too little width."""
    area = Box(margin, margin, paper.width - margin, paper.height - margin)
    if margin < 0 or area.width < blocks.LEAST_WIDTH:
        raise ValueError(f"margin {margin} mm")
    sheet = _Sheet(words, drawn, area)
    if len(sheet.grid.tiles) > 1:
        sheet = replace(sheet, words=replace(words, notes=(sentences(*_JOIN), *words.notes)), indexed=True)
    grid = sheet.grid
    return tuple(_page(sheet, grid, tile) for tile in grid.tiles)


def _page(sheet: _Sheet, grid: Grid, tile: Tile) -> Page:
    area, window = sheet.area, sheet.window
    index = blocks.index(grid, sheet.drawn.shapes[0], tile)
    shapes = (
        *sheet.head(_label(grid, tile)).at(area.left, area.top),
        *sheet.strip(index).at(area.left, window.bottom + _GAP),
        *sheet.foot.at(area.left, area.bottom - sheet.foot.height),
    )
    every = (*sheet.drawn.shapes, *grid.marks)
    seen = (shape for shape in every if shape.bounds.grown(_PAD).meets(tile.window))
    drawn = tuple(shape.moved(window.left - tile.window.left, window.top - tile.window.top) for shape in seen)
    return Page(shapes, window, drawn, _says(sheet.drawn, grid, tile))


def _label(grid: Grid, tile: Tile) -> str:
    page, pages = grid.tiles.index(tile) + 1, len(grid.tiles)
    if pages == 1:
        return say(message("paper/page", page=page, pages=pages))
    return say(message("paper/page-of-tile", tile=tile.name, page=page, pages=pages))


def _says(drawn: Drawing, grid: Grid, tile: Tile) -> str:
    whole = message("paper/drawing")
    if len(grid.tiles) > 1:
        whole = message("paper/drawing-part", tile=tile.name, tiles=len(grid.tiles))
    return sentences(whole, *(key.words for key in drawn.keys))
