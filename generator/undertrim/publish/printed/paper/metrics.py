"""How wide text is in the face of the sheets, so that lines can be broken before they are printed."""

import re
import struct
from dataclasses import dataclass
from functools import cache, lru_cache

from undertrim.publish.printed.sheet import glyphs

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3
_TAG = 16  # bytes of an entry in the table directory
_PLACES = re.compile("([ \u200b])")


@dataclass(frozen=True)
class Face:
    """A font: for each character its advance in units, and how many units make the size."""

    advances: dict[int, int]
    em: int

    def width(self, text: str, size: float) -> float:
        """The width in mm of a text at a size in pt, without kerning."""
        return self.units(text) / self.em * size * POINT

    def units(self, text: str) -> int:
        """The same in the font's own units."""
        return sum([self.advances.get(ord(char), self.em) for char in text if char != "\u200b"])


@lru_cache(maxsize=1024)
def wrapped(text: str, width: float, size: float, *, bold: bool = False) -> tuple[str, ...]:
    """A printable text broken into lines no wider than `width` mm, at its spaces and where a long word may break.

    A piece that has no such place stays whole. What was broken is kept: the cautions are the same on every sheet.
    """
    lines, line, used = [], "", 0
    font = face("Semibold" if bold else "Regular")
    room = width / (size * POINT) * font.em
    for piece in _pieces(text):
        if line.strip() and used + font.units(piece.rstrip()) > room:
            lines.append(line.rstrip())
            line, used = "", 0
        line += piece
        used += font.units(piece)
    return (*lines, line.rstrip())


def _pieces(text: str) -> list[str]:
    """Words with what ends them: a space, or nothing where a long word may break."""
    parts = [*_PLACES.split(text), ""]
    return [word + (end if end == " " else "") for word, end in zip(parts[::2], parts[1::2], strict=True)]


@cache
def face(weight: str) -> Face:
    """The face of a weight (Regular, Semibold), from its tables `head`, `hhea`, `hmtx` and `cmap` (ISO/IEC 14496-22)."""
    font = (glyphs.folder() / f"SourceSansPro-{weight}.ttf").read_bytes()
    tables = _tables(font)
    count = _number(font, ">H", tables[b"hhea"] + 34)
    widths = [_number(font, ">H", tables[b"hmtx"] + 4 * min(glyph, count - 1)) for glyph in range(65536)]
    advances = {char: widths[glyph] for char, glyph in _glyphs(font, tables[b"cmap"]).items()}
    return Face(advances, _number(font, ">H", tables[b"head"] + 18))


def _tables(font: bytes) -> dict[bytes, int]:
    """Where each table begins."""
    entries = range(12, 12 + _TAG * _number(font, ">H", 4), _TAG)
    return {font[entry : entry + 4]: _number(font, ">I", entry + 8) for entry in entries}


def _glyphs(font: bytes, table: int) -> dict[int, int]:
    """The glyph of each character, from the groups of format 12."""
    found = {}
    for entry in range(_number(font, ">H", table + 2)):
        start = table + _number(font, ">I", table + 8 + 8 * entry)
        if _number(font, ">H", start) == 12:
            groups = font[start + 16 : start + 16 + 12 * _number(font, ">I", start + 12)]
            for first, last, glyph in struct.iter_unpack(">III", groups):
                found.update({char: glyph + char - first for char in range(first, last + 1)})
    return found


def _number(data: bytes, form: str, at: int) -> int:
    return int(struct.unpack_from(form, data, at)[0])
