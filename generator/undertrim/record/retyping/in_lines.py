"""Slips in how lines stand: indents, tabs, a space that is missing, a list that begins behind its field."""

import re
from collections.abc import Iterator, Sequence

from undertrim.record.numerals import quoted
from undertrim.record.retyping.typed_lines import Slip, fields
from undertrim.record.yaml_text import as_typed
from undertrim.words import message

_TIGHT = re.compile(r"(?P<head>\s*(?:- +)*)(?P<name>[\w-]+)(?P<sign>\s*(?::|=|：)\s*|\s+)(?P<rest>\S.*)")
_HYPHEN = re.compile(r"(?P<indent>\s*)(?P<sign>[-–—•*])(?P<gap>\s*)(?P<rest>[^\s-].*)")
_BEHIND = re.compile(r"(?P<head>\s*(?:- +)*[\w-]+:)\s+- +(?P<first>\S.*)")
_STANDS = re.compile(r"- |[^\s:]+ *:(?:\s|$)|[\w-]+: ")
_BARE = re.compile(r"\s*(?P<name>[\w-]+):\s*(?:#.*)?")
_ENTRY = re.compile(r"(?P<indent>\s*)- +(?P<text>\S.*?)\s*")


def spaces(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """`name:Upper`, `name = Upper`, `name Upper`, `-text`, `– text`: sign and space as YAML wants them."""
    line = lines[at]
    found = _TIGHT.fullmatch(line)
    if found and found["name"] in fields():
        changed = f"{found['head']}{found['name']}: {found['rest']}"
        yield Slip(message("yaml/colon-and-space"), ((at, changed),), sure=bool(found["sign"].strip()))
    found = _HYPHEN.fullmatch(line)
    if found:
        yield Slip(message("yaml/hyphen-and-space"), ((at, f"{found['indent']}- {found['rest']}"),))


def lists(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """`after: - a` with `- b` below: the list in brackets behind its field."""
    found = _BEHIND.fullmatch(lines[at])
    if not found:
        return
    entries, last = [found["first"].rstrip()], at
    for number in range(at + 1, len(lines)):
        entry = _ENTRY.fullmatch(lines[number])
        if not entry:
            break
        entries.append(entry["text"])
        last = number
    if all(":" not in entry and not entry.startswith(("{", "[", '"', "'")) for entry in entries):
        written = f"{found['head']} [{', '.join(as_typed(entry, in_brackets=True) for entry in entries)}]"
        yield Slip(message("yaml/list-here"), ((at, written), *((number, "") for number in range(at + 1, last + 1))))


def comma_behind(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """A comma behind what stands on a line of its own, as other notations want it."""
    line = lines[at].rstrip()
    if line.endswith(("},", "],", '",', "',")):
        yield Slip(message("yaml/comma-behind"), ((at, line[:-1]),))


def below_field(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """What stands as far left as the field that it belongs below, while what follows it is indented."""
    width = _width(lines[at])
    above = next(
        (number for number in range(at - 1, -1, -1) if lines[number].strip() and _width(lines[number]) < width), 0
    )
    field = next((number for number in range(above - 1, -1, -1) if lines[number].strip()), above)
    found = _BARE.fullmatch(lines[field])
    if (
        found
        and found["name"] in fields()
        and _BARE.fullmatch(lines[above])
        and _width(lines[field]) == _width(lines[above])
    ):
        said = message("yaml/below-field", field=quoted(found["name"]))
        yield Slip(said, ((above, " " * width + lines[above].lstrip()),), _width(lines[above]))


def _width(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def indents(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """A field or an entry that stands where none of those above does, or is indented by tabs."""
    line = lines[at]
    text = line.lstrip()
    if not _STANDS.match(text):
        return
    blank = line[: len(line) - len(text)]
    said = message("yaml/tab") if "\t" in blank else message("yaml/indent")
    for width in _widths(lines, at, len(blank.expandtabs(2))):
        yield Slip(said, ((at, " " * width + text),), blank.find("\t") if "\t" in blank else len(blank))


def _widths(lines: Sequence[str], at: int, now: int) -> list[int]:
    """The indents of lines near by, and one step more; the nearest first."""
    near = [lines[number] for number in range(max(at - 40, 0), min(at + 3, len(lines))) if number != at]
    found = {len(line) - len(line.lstrip()) for line in near if line.strip() and not line.startswith("\t")}
    return sorted(found | {width + 2 for width in found}, key=lambda width: (abs(width - now), -width))
