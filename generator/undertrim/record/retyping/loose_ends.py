"""A text without quotes that ends with a sign which belongs to no text: a comma, as other notations want one, or a quote that nothing opens."""

import re
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from undertrim.record.problem import Position
from undertrim.record.retyping.shown import shown
from undertrim.record.retyping.typed_lines import Mend
from undertrim.words import message

if TYPE_CHECKING:
    from undertrim.record.reader import Pointer, Reader

_QUOTE = re.compile(r'[^\W\d_][.!?]?"')
"""A quote behind a letter; behind a number it is the sign of an inch."""


def trimmed(reader: "Reader", lines: Sequence[str]) -> list[Mend]:
    """Takes such signs from the data that was read, and says so of each."""
    return [mend for pointer in reader.loose for mend in _trimmed(reader, pointer, lines)]


def _trimmed(reader: "Reader", pointer: "Pointer", lines: Sequence[str]) -> Iterator[Mend]:
    text, start = reader.at(pointer), reader.values[pointer]
    if not isinstance(text, str) or pointer in reader.quoted:
        return
    line = lines[start.line - 1]
    end = line.rstrip().rfind(text) + len(text)
    is_loose = text.endswith(",") or (text.count('"') == 1 and _QUOTE.fullmatch(text[-2:]) is not None)
    if not is_loose or line[start.column - 1 : end] != text:  # over several lines nobody can tell
        return
    holder = reader.at(pointer[:-1])
    holder[pointer[-1]] = text[:-1]
    said = message("yaml/comma-behind" if text.endswith(",") else "yaml/quote-not-opened")
    changed = line[: end - 1] + line[end:]
    told = message("yaml/mended", what=said, line=shown(line, changed))
    yield Mend(Position(start.line, end), told, ((start.line - 1, changed),), certain=False)
