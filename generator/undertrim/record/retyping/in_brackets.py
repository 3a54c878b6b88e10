"""Slips inside brackets on one line: commas and closers that are missing, too many or of the other sort, and texts that need quotes there."""

import re
from collections.abc import Iterator, Sequence

from undertrim.record.retyping.in_texts import said_of
from undertrim.record.retyping.typed_lines import CLOSERS, Slip, brackets, fields
from undertrim.record.yaml_text import LONGEST, as_typed
from undertrim.words import message

_NEXT = re.compile(r"(?<=[^\s,{\[:])(?P<gap>\s+)(?P<name>[\w-]+):(?=\s)")
_OTHER = re.compile(r"\s*;\s*(?=(?P<name>[\w-]+)\s*:)")
_EQUALS = re.compile(r"(?<=[{,])(?P<gap>\s*)(?P<name>[\w-]+)\s*=\s*")
_TIGHT = re.compile(r"(?<=[{,])(?P<gap>\s*)(?P<name>[\w-]+):(?=[^\s:])")


def commas_missing(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """`{clip: push count: 6}`: a comma before the name of a field."""
    line = lines[at]
    for piece in brackets(line).pieces:
        for found in _NEXT.finditer(line, piece.start, piece.wide):
            if found["name"] in fields() and not piece.unclosed:
                yield Slip(message("yaml/comma-missing"), ((at, line[: found.start()] + "," + line[found.start() :]),))


def other_signs(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """Semicolons for commas, an equals sign for a colon, no space behind a colon: all of a line at once."""
    line = lines[at]
    if not brackets(line).pieces:
        return
    changed = _OTHER.sub(lambda found: ", " if found["name"] in fields() else found[0], line)
    for pattern in (_EQUALS, _TIGHT):
        changed = pattern.sub(_with_colon, changed)
    if changed != line:
        yield Slip(message("yaml/other-signs"), ((at, changed),))


def _with_colon(found: re.Match[str]) -> str:
    return f"{found['gap']}{found['name']}: " if found["name"] in fields() else found[0]


def texts(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """A text that YAML would not read in brackets goes into quotes, with the commas in it that no field follows."""
    line = lines[at]
    for piece in brackets(line).pieces:
        for end in dict.fromkeys((piece.wide, piece.end) if piece.bracket == "{" else (piece.end,)):
            text = line[piece.start : end]
            if text and text[0] not in "\"'" and len(text) <= LONGEST:
                changed = line[: piece.start] + as_typed(text, in_brackets=True) + line[end:]
                yield Slip(said_of(text), ((at, changed),), piece.start)


def closers(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """A bracket that is not closed, closed twice, or closed by one of the other sort."""
    line = lines[at]
    found = brackets(line)
    end = len(line.rstrip())
    if found.open:
        sign = "curly-bracket" if found.open[0] == "{" else "square-bracket"
        rest = "".join(CLOSERS[bracket] for bracket in reversed(found.open))
        for cut in range(len(rest), 0, -1):
            yield Slip(message(f"yaml/{sign}"), ((at, line[:end] + rest[len(rest) - cut :]),))
    for place in found.wrong:
        other = {"}": "]", "]": "}"}[line[place]]
        sign = "curly-bracket" if other == "}" else "square-bracket"
        yield Slip(message(f"yaml/{sign}"), ((at, line[:place] + other + line[place:]),), place)
        yield Slip(message("yaml/other-closer"), ((at, line[:place] + other + line[place + 1 :]),), place)
        yield Slip(message("yaml/closer-too-many"), ((at, line[:place] + line[place + 1 :]),), place)
