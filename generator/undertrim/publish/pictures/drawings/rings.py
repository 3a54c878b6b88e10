"""Round outlines about one middle, from the front, to scale: a tweeter's place, and over it what the gear is."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from undertrim.publish.pictures.drawings import dimensions, legends, pens, svg
from undertrim.publish.pictures.drawings.dimensions import Measure, Span
from undertrim.publish.pictures.drawings.legends import Key
from undertrim.publish.pictures.drawings.pens import Pen
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.words import Value, message, say

Part = Literal["cut-out", "cup", "flat", "body", "rim"]

_ACROSS, _PAD = 130.0, 12.0
_PENS: Mapping[Part, Pen] = {"cut-out": "bold", "cup": "outline", "flat": "adjacent", "body": "hidden", "rim": "thin"}


@dataclass(frozen=True, slots=True)
class Ring:
    """One outline: what it is of, in words too, and how large."""

    part: Part
    words: Value
    across: Measure


@dataclass(frozen=True, slots=True)
class Rings:
    """The outlines that are measured, those of the car first; `more` are sentences to stand below."""

    title: Value
    rings: tuple[Ring, ...]
    more: tuple[Value, ...] = ()

    @property
    def sized(self) -> list[tuple[Ring, float]]:
        """Each ring with its diameter in mm, where that is known."""
        return [(ring, ring.across.mm) for ring in self.rings if ring.across.mm]


def opening(rings: Rings, width: int = 320, size: str = "20em") -> str:
    """The rings as SVG; `width` in drawing units, in which lettering is 12 high, `size` its width on the page."""
    sheet, keys = Sheet(say(rings.title), width, size), [_key(ring) for ring in rings.rings]
    lower = EDGE + 2 * _PAD + _ACROSS
    below = dimensions.below(list(_spans(rings, sheet)), lower, EDGE, sheet.right)
    key = legends.legend(keys, below.end + 6, sheet.right)
    notes = [f"{say(message('drawings/to-scale'))}.", *map(say, rings.more)]
    pieces = [Piece(tuple(_drawn(rings, sheet)), (), lower), below, key, sheet.paragraph(notes, key.end + 2)]
    return sheet.finished(pieces, [say(message("drawings/from-cabin")), *(one.words for one in keys), *notes])


def _middle(sheet: Sheet) -> tuple[float, float]:
    return sheet.width / 2, EDGE + _PAD + _ACROSS / 2


def _unit(rings: Rings) -> float:
    """Drawing units for a mm."""
    return _ACROSS / max([across for _, across in rings.sized], default=1)


def _drawn(rings: Rings, sheet: Sheet) -> Iterator[str]:
    (x, y), arm, unit = _middle(sheet), _ACROSS / 2 + 6, _unit(rings)
    yield pens.stroke("centre", pens.line(x - arm, y, x + arm, y), pens.line(x, y - arm, x, y + arm), part="axis")
    for ring, across in rings.sized:
        yield pens.stroke(_PENS[ring.part], svg.circle(x, y, across / 2 * unit), part=ring.part)


def _spans(rings: Rings, sheet: Sheet) -> Sequence[Span]:
    """The outline of the car that counts, across: the first."""
    (x, y), unit = _middle(sheet), _unit(rings)
    return [
        Span(ring.part, say(ring.across.text), x - across / 2 * unit, x + across / 2 * unit, y, y)
        for ring, across in rings.sized[:1]
    ]


def _key(ring: Ring) -> Key:
    return Key(_PENS[ring.part], say(message("drawings/ring", what=ring.words, size=ring.across.text)))
