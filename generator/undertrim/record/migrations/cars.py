"""Names each car once that several pieces of evidence describe in the same words."""

import re
from collections.abc import Iterator
from pathlib import Path

from undertrim.record.examples import is_id
from undertrim.record.migrations.marked import Edit, Entry, MappingNode, Node, ScalarNode, Text, edited, in_brackets
from undertrim.record.source import Data, read_text

_YEAR = re.compile(r"\b(?:19|20)[0-9]{2}\b")


def named(text: str) -> str:
    """The text with a section of cars above its evidence."""
    marked = Text.of(text)
    evidence = next((entry for entry in marked.entries() if entry.pointer == ("evidence",)), None)
    if evidence is None or in_brackets(marked.root):
        return text
    by_words = _by_words(marked)
    chosen = {words: found for words, found in by_words.items() if len(found) > 1 or _would_be_an_id(found[0].value)}
    names = dict(zip(chosen, _names([marked.raw(found[0].value) for found in chosen.values()]), strict=True))
    edits = [
        Edit(entry.value.start_mark.index, marked.end(entry.value), names[words])
        for words, found in chosen.items()
        for entry in found
    ]
    return edited(
        text, [*edits, *_section(marked, evidence, {names[words]: found[0].value for words, found in chosen.items()})]
    )


def _by_words(marked: Text) -> dict[str, list[Entry]]:
    """Every car on one line, by what is said of it."""
    data = read_text(marked.text, Path()).data
    found: dict[str, list[Entry]] = {}
    for entry in marked.entries():
        if (
            entry.pointer[-1] == "car"
            and entry.pointer[0] in ("evidence", "verified", "verified_parts")
            and "\n" not in marked.raw(entry.value)
        ):
            found.setdefault(repr(_at(data, entry.pointer)), []).append(entry)
    return found


def _at(data: Data, pointer: tuple[str | int, ...]) -> Data:
    for step in pointer:
        data = data[step]
    return data


def _would_be_an_id(node: Node) -> bool:
    return isinstance(node, ScalarNode) and is_id(node.value) and not str(node.value).isdecimal()


def _names(cars: list[str]) -> Iterator[str]:
    """An id for each car: by its year, with a letter where several have one."""
    used: set[str] = set()
    for car in cars:
        year = _YEAR.search(car)
        name = f"car-{year[0]}" if year else "car"
        free = next(
            one
            for one in (
                name,
                *(f"{name}-{chr(letter)}" for letter in range(ord("b"), ord("z") + 1)),
                f"{name}-{len(used)}",
            )
            if one not in used
        )
        used.add(free)
        yield free


def _section(marked: Text, evidence: Entry, cars: dict[str, Node]) -> Iterator[Edit]:
    if cars and isinstance(evidence.value, MappingNode):
        start = marked.line_start(evidence.key.start_mark.index)
        margin = marked.text[start : evidence.key.start_mark.index]
        lines = [f"{margin}cars:", *(f"{margin}  {name}: {marked.raw(node)}" for name, node in cars.items()), ""]
        yield Edit(start, start, "".join(line + marked.newline for line in lines))
