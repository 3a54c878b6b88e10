"""Where the texts of dimensions stand: over their line, beside it, and in which row."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import lettering
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE

Side: TypeAlias = Literal["over", "before", "behind"]

_ABOVE, _UNDER = 4.0, 5.0  # between text and its line, and between a line and the next row
_TAIL = 14.0  # of an arrow that points at a short length from outside
_SHORT = 21.0  # lengths that have no room for two arrows inside
_GAP = 5.0  # between a line and the text beside it, and between two texts of one row
_OVERHANG = 2.0  # how many times as long as its line a text over it may be
_NARROWEST = 110.0  # room in which a text may be broken beside its line


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
    """A dimension with its text: `at` is its middle over the line, or its nearer end `before` or `behind` the line, level with it."""

    span: Span
    lines: tuple[str, ...]
    at: float
    side: Side = "over"

    @property
    def reach(self) -> tuple[float, float]:
        """From where to where line and text go."""
        long, (low, high) = lettering.widest(self.lines), self.span.reach
        start = self.at - {"over": long / 2, "before": long, "behind": 0.0}[self.side]
        return min(low, start), max(high, start + long)

    @property
    def above(self) -> float:
        """Room it needs before its line."""
        return len(self.lines) * PITCH + _ABOVE - 1 if self.side == "over" else len(self.lines) * PITCH / 2 + 1

    @property
    def under(self) -> float:
        """Room it needs behind its line."""
        return _UNDER if self.side == "over" else len(self.lines) * PITCH / 2 + 1

    @property
    def texts(self) -> list[tuple[str, float]]:
        """Each line of text with its baseline, counted from the dimension line."""
        count = len(self.lines)
        last = -_ABOVE if self.side == "over" else (count - 1) * PITCH / 2 + 0.3 * SIZE
        return [(words, last - (count - 1 - place) * PITCH) for place, words in enumerate(self.lines)]


def placed(span: Span, low: float, high: float) -> Placed:
    """Over the line where the text is not much longer than that, else beside it; moved in from the ends of the room."""
    long = lettering.width(span.words)
    if _OVERHANG * span.long < long < high - low:
        start, end = span.reach
        before, behind = start - _GAP - low, high - end - _GAP
        side: Side = "behind" if behind >= min(long, before) else "before"
        room = behind if side == "behind" else before
        if room >= min(long, _NARROWEST):
            return Placed(
                span, lettering.wrapped(span.words, room), start - _GAP if side == "before" else end + _GAP, side
            )
    lines = lettering.wrapped(span.words, high - low)
    half = lettering.widest(lines) / 2
    return Placed(span, lines, max(low + half, min(high - half, (span.start + span.end) / 2)))


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
