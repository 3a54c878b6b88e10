"""Puts functions of which the same is said, and that follow each other, into a group that says it once."""

from collections.abc import Iterator
from itertools import groupby

from undertrim.record import shapes
from undertrim.record.examples import typed
from undertrim.record.migrations.marked import Edit, Entry, MappingNode, Node, ScalarNode, Text, edited, in_brackets
from undertrim.record.source import Data

SECTION = "functions"

FEWEST = 2


def grouped(text: str) -> str:
    """The text with such groups; what stands in brackets or beside a comment stays as it is."""
    marked = Text.of(text)
    section = marked.at((SECTION,))
    if not isinstance(section, MappingNode) or in_brackets(section):
        return text
    return edited(text, list(_edits(marked, section)))


def _edits(marked: Text, section: MappingNode) -> Iterator[Edit]:
    entries = [Entry(key, value, section, ()) for key, value in section.value]
    known = shapes.whole("vehicle").fields[SECTION]
    assert known.group
    used = {str(entry.key.value) for entry in entries}
    for _, found in groupby(entries, key=lambda entry: repr(_said(marked, entry))):
        run = list(found)
        facts = _said(marked, run[0])
        if len(run) < FEWEST or not facts or not facts.keys() <= known.group.fields.keys():
            continue
        name = next(one for one in _names(str(facts.get("by", "group"))) if one not in used)
        used.add(name)
        shared = {key: value for key, value in facts.items() if key != "by" or name != value}
        yield from _one(marked, run, name, {**shared, SECTION: [str(entry.key.value) for entry in run]})


def _names(base: str) -> Iterator[str]:
    yield base
    yield from (f"{base}-{number}" for number in range(2, 1000))


def _one(marked: Text, run: list[Entry], name: str, group: Data) -> Iterator[Edit]:
    """The first of some functions becomes their group, the others go."""
    start, end = run[0].key.start_mark.index, marked.end(run[-1].value)
    yield Edit(start, end, f"{name}: {typed(group)}")


def _said(marked: Text, entry: Entry) -> Data:
    """What is said of a function, in its long form; None where it stays by itself: for a comment, or a text of several lines."""
    start, end = entry.key.start_mark.index, marked.line_end(marked.end(entry.value))
    line = marked.line_start(start)
    above = marked.text[marked.line_start(line - 1) : line] if line else ""
    if "#" in marked.gaps(start, end) or above.lstrip().startswith("#") or "\n" in marked.text[start:end]:
        return None
    shape, said = shapes.whole("vehicle").fields[SECTION].other, _plain(entry.value)
    assert shape
    if isinstance(said, list):
        return dict(zip(shape.short_list, said, strict=False))
    if isinstance(said, str):
        return {shape.short_text: said}
    return None if SECTION in said else said


def _plain(node: Node) -> Data:
    if isinstance(node, ScalarNode):
        return node.value
    if isinstance(node, MappingNode):
        return {key.value: _plain(value) for key, value in node.value}
    return [_plain(item) for item in node.value]
