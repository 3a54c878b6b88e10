"""Makes any text printable: what the fonts cannot show is named, and a word too long for a line may break."""

import re
import struct
import unicodedata
from collections.abc import Iterator, Set
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from undertrim.publish.encoding import said
from undertrim.resources import inside

FAMILY = "Source Sans Pro"
_WEIGHTS = ("Regular", "Semibold")
"""Bold text is set in the second: a third weight nobody tells apart at 9 pt, and each costs every file 8 KB."""
_MONSTER = re.compile(r"\S{25,}")
_BREAK = "\u200b"


def folder() -> Path:
    """Where the font files are."""
    return inside("publish", "printed", "fonts")


def printable(value: Any) -> Any:
    """Facts as plain data with every text in them made printable; keys and other values stay."""
    kind = type(value)  # a sheet has five thousand values, nearly all of these few types
    if kind is dict:
        return {key: text(item) if type(item) is str else printable(item) for key, item in value.items()}
    if kind is list or isinstance(value, list | tuple):
        return [text(item) if type(item) is str else printable(item) for item in value]
    if isinstance(value, str):
        return text(value)
    if isinstance(value, dict):
        return {key: printable(item) for key, item in value.items()}
    return value if value is None or isinstance(value, int | float) else printable(said(value))


@lru_cache(maxsize=8192)  # a sheet says many a word hundreds of times
def text(value: str) -> str:
    """One text. PDF/UA-1 (ISO 14289-1) allows no character without a glyph: such a one becomes `[U+4E2D]`."""
    return _MONSTER.sub(lambda found: _breakable(found[0]), legible(value))


def legible(value: str) -> str:
    """The same without breaks, for a text into which values are still to be put."""
    if not value.isascii():
        value = unicodedata.normalize("NFC", value)
    return value if value.isascii() and value.isprintable() else "".join(map(_shown, value))


def _breakable(word: str) -> str:
    return _BREAK.join(word[at : at + 6] for at in range(0, len(word), 6))


def _shown(char: str) -> str:
    kind = unicodedata.category(char)
    if kind in ("Cc", "Zl", "Zp"):
        return " "
    if kind == "Cf":  # joiners and changes of direction: a line must read as it was typed
        return ""
    return char if ord(char) in covered() else f"[U+{ord(char):04X}]"


@cache
def covered() -> Set[int]:
    """The characters that every weight in use can show."""
    found = [set(_characters((folder() / f"SourceSansPro-{name}.ttf").read_bytes())) for name in _WEIGHTS]
    return frozenset(set.intersection(*found))


def _characters(font: bytes) -> Iterator[int]:
    """What the `cmap` table holds in format 12 (OpenType, ISO/IEC 14496-22): groups of first, last, glyph."""
    table = next(_table(font))
    for entry in range(_number(font, ">H", table + 2)):
        start = table + _number(font, ">I", table + 8 + 8 * entry)
        if _number(font, ">H", start) == 12:
            groups = font[start + 16 : start + 16 + 12 * _number(font, ">I", start + 12)]
            for first, last, _ in struct.iter_unpack(">III", groups):
                yield from range(first, last + 1)


def _table(font: bytes) -> Iterator[int]:
    for entry in range(12, 12 + 16 * _number(font, ">H", 4), 16):
        if font[entry : entry + 4] == b"cmap":
            yield _number(font, ">I", entry + 8)


def _number(data: bytes, form: str, at: int) -> int:
    return int(struct.unpack_from(form, data, at)[0])
