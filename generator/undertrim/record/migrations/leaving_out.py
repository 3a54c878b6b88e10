"""Leaves out what follows anyway, and takes back what would follow and is not so."""

from collections.abc import Iterator
from pathlib import Path

from undertrim.record.migrations.marked import Edit, Entry, Text, edited
from undertrim.record.source import Pointer, Source, read_text
from undertrim.record.spreading import BACK, SAYS_ONCE, spread


def taken_back(text: str) -> str:
    """The text where an opening that has not the area or the sides of the part in front of it says so."""
    source = read_text(text, Path())
    said = source.data.get("openings", {})
    whole = spread(source).data.get("openings", {})
    marked = Text.of(text)
    edits = []
    for entry in marked.entries():
        if len(entry.pointer) == 3 and entry.pointer[0] == "openings" and entry.pointer[2] == "behind":
            name = entry.pointer[1]
            extra = [field for field in ("area", "each") if field in whole[name] and field not in said[name]]
            edits += [_inserted(marked, entry, f"{field}: {BACK}") for field in extra]
    return edited(text, edits)


def _inserted(marked: Text, entry: Entry, field: str) -> Edit:
    """A field right before another one."""
    start = entry.key.start_mark.index
    gap = ", " if entry.around.flow_style else marked.newline + " " * entry.key.start_mark.column
    return Edit(start, start, f"{field}{gap}")


def left_out(text: str) -> str:
    """The text without what is said twice."""
    source = spread(read_text(text, Path()))
    marked = Text.of(text)
    twice = set(_typed(source))
    return edited(
        text, [edit for entry in marked.entries() if entry.pointer in twice for edit in without(marked, entry)]
    )


def _typed(source: Source) -> Iterator[Pointer]:
    """Where what is said twice was typed."""
    assert source.origin
    typed = source.as_typed
    assert typed.data["format"] == SAYS_ONCE
    by_position = {position: pointer for pointer, position in typed.keys.items()}
    for item in source.origin.twice:
        yield by_position[source.position(item.pointer, key=True)]


def without(marked: Text, entry: Entry) -> Iterator[Edit]:
    """An entry taken out; one that comments stand in, or that something stands before on its line, is left."""
    start, end = entry.key.start_mark.index, marked.end(entry.value)
    if "#" in marked.gaps(start, end):
        return
    if entry.around.flow_style:
        yield from _out_of_brackets(marked, entry)
        return
    line, rest = marked.line_start(start), marked.text[end : marked.line_end(end)]
    if marked.text[line:start].strip() or len(entry.around.value) == 1:
        return
    after = marked.text.find("\n", end) + 1 or len(marked.text)
    kept = f"{marked.text[line:start]}{rest.strip()}{marked.newline}" if rest.strip() else ""
    yield Edit(line, after, kept)


def _out_of_brackets(marked: Text, entry: Entry) -> Iterator[Edit]:
    entries = entry.around.value
    number = next(i for i, (key, _) in enumerate(entries) if key is entry.key)
    start, end = entry.key.start_mark.index, marked.end(entry.value)
    if number + 1 < len(entries):
        end = entries[number + 1][0].start_mark.index
    elif number:
        start = marked.end(entries[number - 1][1])
    if "#" not in marked.gaps(start, end):
        yield Edit(start, end, "")
