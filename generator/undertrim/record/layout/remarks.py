"""The comments of a record, each with what it speaks of: the entry below it, the entry it ends, or the block it closes."""

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from undertrim.record.migrations.marked import Text


@dataclass(frozen=True, slots=True)
class Remark:
    """One comment: where it stands, its words from `#` on, its column, and whether it has its line for itself."""

    index: int
    text: str
    column: int
    alone: bool


@dataclass(frozen=True)
class Remarks:
    """All comments of a text, in order."""

    marked: Text

    @cached_property
    def all(self) -> list[Remark]:
        """Every comment."""
        return list(self._found())

    @cached_property
    def _places(self) -> list[int]:
        return [remark.index for remark in self.all]

    def within(self, start: int, end: int) -> list[Remark]:
        """Those between two places."""
        return self.all[bisect_left(self._places, start) : bisect_left(self._places, end)]

    def behind(self, index: int) -> list[Remark]:
        """The one that ends the line which a place is in."""
        return [remark for remark in self.within(index, self.marked.line_end(index)) if not remark.alone]

    def _found(self) -> Iterator[Remark]:
        text, edges = self.marked.text, [0]
        for start, end in self.marked.scalars:
            edges += [start, end]
        edges.append(len(text))
        for start, end in zip(edges[::2], edges[1::2], strict=True):
            place = start
            while (place := text.find("#", place, end)) >= 0:
                line, stop = self.marked.line_start(place), self.marked.line_end(place)
                yield Remark(place, text[place:stop].rstrip(), place - line, not text[line:place].strip())
                place = stop
