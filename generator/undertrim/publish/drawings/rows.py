"""Where the texts of dimensions stand: over their line, beside it, and in which row."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.publish.drawings import lettering
from undertrim.publish.drawings.lettering import PITCH, SIZE

_ABOVE, _UNDER = 4.0, 5.0  # between text and its line, and between a line and the next row
_TAIL = 14.0  # of an arrow that points at a short length from outside
_SHORT = 21.0  # lengths that have no room for two arrows inside
_GAP = 5.0  # between a line and the text beside it, and between two texts of one row
_NARROWEST = 100.0  # room in which a text may be broken beside its line


@dataclass(frozen=True, slots=True)
class Span:
    """One dimension in drawing units: from `start` to `end`, whose extension lines begin at `start_from` and `end_from`."""

    part: str
    words: str
    start: float
    end: float
    start_from: float
    end_from: float

    @property
    def long(self) -> float:
        """How long it is drawn."""
        return abs(self.end - self.start)

    @property
    def reach(self) -> tuple[float, float]:
        """From where to where its line goes, with arrows that stand outside."""
        tail = _TAIL if self.long < _SHORT else 0
        return min(self.start, self.end) - tail, max(self.start, self.end) + tail


@dataclass(frozen=True, slots=True)
class Placed:
    """A dimension with its text, whose middle stands at `middle`: over the line, or `level` with it."""

    span: Span
    lines: tuple[str, ...]
    middle: float
    level: bool

    @property
    def reach(self) -> tuple[float, float]:
        """From where to where line and text go."""
        half, (low, high) = lettering.widest(self.lines) / 2, self.span.reach
        return min(low, self.middle - half), max(high, self.middle + half)

    @property
    def above(self) -> float:
        """Room it needs before its line."""
        return len(self.lines) * PITCH / 2 + 1 if self.level else len(self.lines) * PITCH + _ABOVE - 1

    @property
    def under(self) -> float:
        """Room it needs behind its line."""
        return len(self.lines) * PITCH / 2 + 1 if self.level else _UNDER

    @property
    def texts(self) -> list[tuple[str, float, float]]:
        """Each line of text with its middle, and its baseline counted from the dimension line."""
        count = len(self.lines)
        last = (count - 1) * PITCH / 2 + 0.3 * SIZE if self.level else -_ABOVE
        return [(words, self.middle, last - (count - 1 - place) * PITCH) for place, words in enumerate(self.lines)]


def placed(span: Span, low: float, high: float) -> Placed:
    """Over the line where the text is no longer than that; else beside it; else over it, broken, moved in from the ends of the room."""
    long = lettering.width(span.words)
    if long <= span.long:
        return Placed(span, (span.words,), (span.start + span.end) / 2, level=False)
    start, end = span.reach
    before, behind = start - _GAP - low, high - end - _GAP
    room = behind if behind >= min(long, before) else before
    if room >= min(long, _NARROWEST):
        lines = lettering.wrapped(span.words, room)
        half = lettering.widest(lines) / 2 + _GAP
        return Placed(span, lines, end + half if room == behind else start - half, level=True)
    lines = lettering.wrapped(span.words, high - low)
    half = lettering.widest(lines) / 2
    return Placed(span, lines, max(low + half, min(high - half, (span.start + span.end) / 2)), level=False)


def rows(every: Sequence[Placed]) -> list[list[Placed]]:
    """The short ones first; each in the first row where nothing is in its way."""
    found: list[list[Placed]] = []
    for one in sorted(every, key=lambda one: one.span.long):
        free = (row for row in found if all(_apart(one.reach, other.reach) for other in row))
        if (row := next(free, None)) is not None:
            row.append(one)
        else:
            found.append([one])
    return found


def _apart(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[1] + _GAP <= other[0] or other[1] + _GAP <= one[0]
