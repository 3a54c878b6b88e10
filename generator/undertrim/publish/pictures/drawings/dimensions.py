"""Dimensions: extension lines, a line with arrows, and a text that stands clear of every other text."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import pens, svg
from undertrim.publish.pictures.drawings.lettering import Anchor, Box, Line
from undertrim.publish.pictures.drawings.pieces import Piece
from undertrim.publish.pictures.drawings.rows import Placed, Side, Span, placed, rows
from undertrim.words import Value, message

__all__ = ["NOT_RECORDED", "UNKNOWN", "Measure", "Span", "below", "beside", "broken", "deep"]

_ARROW, _HALF = 7.0, 2.2
_OVER = 2.5  # of an extension line beyond the dimension line


NOT_RECORDED = message("facts/not-recorded")


@dataclass(frozen=True, slots=True)
class Measure:
    """A length in mm and how it is written, mm first; `mm` is None where it is not known, and `text` then says how."""

    mm: float | None = None
    text: Value = NOT_RECORDED

    @property
    def half(self) -> float | None:
        """Half of it in mm, such as the radius of a diameter."""
        return None if self.mm is None else self.mm / 2


UNKNOWN = Measure()
"""A length that is not recorded."""


@dataclass(frozen=True, slots=True)
class _Turn:
    """From along and across a dimension to x and y."""

    upright: bool

    def line(self, start: tuple[float, float], end: tuple[float, float]) -> str:
        return pens.line(*self.point(*start), *self.point(*end))

    def point(self, along: float, out: float) -> svg.Point:
        return (out, along) if self.upright else (along, out)

    def box(self, line: Line) -> Box:
        """The room of a line of text, in along and across."""
        box = line.box
        return Box(box.top, box.left, box.bottom, box.right) if self.upright else box


def below(spans: Sequence[Span], top: float, left: float, right: float) -> Piece:
    """Horizontal dimensions in rows under each other from `top` on; texts stay between `left` and `right`."""
    return _piece(spans, top, (left, right), _Turn(upright=False))


def beside(spans: Sequence[Span], left: float, top: float, bottom: float) -> Piece:
    """Vertical dimensions in columns from `left` on, read from the right; texts stay between `top` and `bottom`."""
    return _piece(spans, left, (top, bottom), _Turn(upright=True))


def deep(words: Sequence[str], room: float) -> float:
    """How far texts reach away from the picture at most, each in a row of its own of `room` units."""
    spans = [Span("", text, 0, room, 0, 0) for text in words]
    return beside(spans, 0, 0, room).end


def _piece(spans: Sequence[Span], first: float, room: tuple[float, float], turn: _Turn) -> Piece:
    outs: list[tuple[Span, float]] = []
    lines: list[Line] = []
    out = first
    for row in rows([placed(span, *room) for span in spans]):
        out += max(one.above for one in row)
        outs += [(one.span, out) for one in row]
        for one in row:
            lines += _lettered(one, out, turn)
        out += max(one.under for one in row)
    marks = (_extensions(outs, lines, turn), *(_line(span, at, turn) for span, at in outs))
    return Piece(marks, tuple(lines), out)


def _lettered(one: Placed, out: float, turn: _Turn) -> Iterator[Line]:
    """What stands behind the line begins there; what is read upwards ends there."""
    towards: dict[Side, Anchor] = {"over": "middle", "before": "end", "behind": "start"}
    upwards: dict[Side, Anchor] = {"over": "middle", "before": "start", "behind": "end"}
    for words, offset in one.texts:
        x, y = turn.point(one.at, out + offset)
        yield Line(x, y, words, (upwards if turn.upright else towards)[one.side], turn.upright)


def _line(span: Span, out: float, turn: _Turn) -> str:
    """The dimension line with its arrows, which stand outside where it is short."""
    exact = pens.stroke("thin", turn.line((span.start, out), (span.end, out)), part=f"dimension {span.part}")
    low, high = sorted((span.start, span.end))
    least, most = span.reach
    tails = "".join(
        pens.stroke("thin", turn.line((a, out), (b, out))) for a, b in ((least, low), (high, most)) if b > a
    )
    way = -1 if tails else 1
    return exact + tails + svg.solid(_arrow(low, way, out, turn), _arrow(high, -way, out, turn))


def _arrow(at: float, way: int, out: float, turn: _Turn) -> str:
    """An arrowhead with its tip at `at`; its back lies on the side that `way` points to."""
    back = at + way * _ARROW
    return svg.polygon([turn.point(at, out), turn.point(back, out - _HALF), turn.point(back, out + _HALF)])


def _extensions(outs: Sequence[tuple[Span, float]], lines: Sequence[Line], turn: _Turn) -> str:
    """The extension lines, broken where they would run through a text; those at the same place are one."""
    boxes = [turn.box(line) for line in lines]
    wanted: dict[float, tuple[float, float]] = {}
    for span, out in outs:
        for along, start in ((span.start, span.start_from), (span.end, span.end_from)):
            first, last = wanted.get(along, (start, out))
            wanted[along] = min(first, start), max(last, out)
    pieces = [
        turn.line((along, start), (along, end))
        for along, (first, last) in wanted.items()
        for start, end in broken(along, first, last + _OVER, boxes)
    ]
    return pens.stroke("thin", *pieces, part="extension") if pieces else ""


def broken(along: float, first: float, last: float, boxes: Sequence[Box]) -> Iterator[tuple[float, float]]:
    """The parts of a vertical line at `along` that lie in no box."""
    at = first
    for box in sorted((box for box in boxes if box.left - 1 < along < box.right + 1), key=lambda box: box.top):
        if min(box.top - 1, last) > at:
            yield at, min(box.top - 1, last)
        at = max(at, box.bottom + 1)
    if last > at:
        yield at, last
