"""A text in curly brackets that holds a comma: YAML takes what stands behind the comma for a field without a value."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from undertrim.record.problem import Position
from undertrim.record.retyping.shown import shown
from undertrim.record.retyping.typed_lines import Mend, is_field_beside
from undertrim.record.yaml_text import LONGEST, in_quotes
from undertrim.words import message

if TYPE_CHECKING:
    from undertrim.record.reader import Pointer, Reader


def rejoin(reader: "Reader", lines: Sequence[str]) -> list[Mend]:
    """Puts what a comma cut off back to the text before it, in the data that was read, and says so of each."""
    cut: dict[Pointer, list[str]] = {}
    for *above, name in reader.blanks:
        pointer = (*above, str(name))
        before = _before(reader, pointer, cut)
        if before is not None:
            cut.setdefault(before, []).append(str(name))
    return [mend for before, names in cut.items() for mend in _joined(reader, before, names, lines)]


def _before(reader: "Reader", pointer: "Pointer", cut: "dict[Pointer, list[str]]") -> "Pointer | None":
    """The text to which a name without a value belongs: the last one before it that is not cut off itself."""
    held = reader.at(pointer[:-1])
    if not isinstance(held, dict) or is_field_beside(
        str(pointer[-1]), (name for name in held if held[name] is not None)
    ):
        return None
    gone = {name for (*above, _), names in cut.items() if tuple(above) == pointer[:-1] for name in names}
    names = [name for name in held if name not in gone]
    place = names.index(str(pointer[-1])) - 1
    before = (*pointer[:-1], names[place]) if place >= 0 else None
    return before if before and isinstance(held[names[place]], str) and before not in reader.quoted else None


def _joined(reader: "Reader", before: "Pointer", names: Sequence[str], lines: Sequence[str]) -> Iterator[Mend]:
    first, last = reader.values[before], reader.keys[(*before[:-1], names[-1])]
    line = lines[first.line - 1]
    end = last.column - 1 + len(names[-1])
    text = line[first.column - 1 : end]
    opened = text.removesuffix('"') if text.count('"') == 1 else text
    if last.line != first.line or line[end:].lstrip().startswith(":") or not text.endswith(names[-1]):
        return
    held = reader.at(before[:-1])
    held[before[-1]] = _number(text) or opened
    for name in names:
        del held[name]
    written = _number(text) or in_quotes(opened)
    changed = line[: first.column - 1] + written + line[end:]
    code = "comma-in-number" if _number(text) else "comma-in-text" if opened == text else "quote-not-opened"
    said = message(f"yaml/{code}")
    place = Position(first.line, reader.keys[(*before[:-1], names[0])].column)
    yield Mend(
        place,
        message("yaml/mended", what=said, line=shown(line, changed)),
        ((first.line - 1, changed),),
        len(text) <= LONGEST and opened == text,
    )


def _number(text: str) -> str:
    """A number with a decimal comma, with a point instead; empty for any other text."""
    whole, _, rest = text.partition(",")
    return f"{whole}.{rest}" if whole.isdigit() and rest[:1].isdigit() and "," not in rest else ""
