"""Hands the English of the catalogue to Babel, which makes a template for translators of it (`make words`)."""

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import PurePath
from typing import Any, BinaryIO

from undertrim.words.catalogue import context, texts
from undertrim.words.language import Text

Extracted = tuple[int, str, tuple[str, ...], list[str]]


def catalogue(file: BinaryIO, _keywords: Any, _tags: Any, options: Any) -> Iterator[Extracted]:
    """The texts of one room of `english/`, each with its line, its code as context, and a remark on what it is."""
    text = file.read().decode("utf-8")
    room = PurePath(file.name).with_suffix("").as_posix().rpartition("/english/")[2]
    lines = text.splitlines()
    for name, entry in tomllib.loads(text).items():
        yield from _entry(lines, f"{room}/{name}", name, entry)


LABELS = ("label", "noun", "plural", "name", "title", "how", "restore", "origin")
"""Keys of the data tables that hold words for people."""


def table(file: BinaryIO, _keywords: Any, _tags: Any, options: Any) -> Iterator[Extracted]:
    """The words of one data table, each with where it stands in it as context."""
    name = PurePath(file.name).stem
    yield from _below((name,), tomllib.loads(file.read().decode("utf-8")))


def _below(place: tuple[str, ...], data: Any) -> Iterator[Extracted]:
    if isinstance(data, dict):
        for key, value in data.items():
            if key in LABELS and isinstance(value, str) and value:
                yield 1, "pgettext", ("/".join((*place, key)), value), []
            yield from _below((*place, key), value)


def _entry(lines: list[str], code: str, name: str, entry: Mapping[str, str]) -> Iterator[Extracted]:
    line = lines.index(f"[{name}]") + 1
    for part, english in texts(entry).items():
        yield _extracted(line, context(code, part), english, ["What to do about it."] if part == "way_out" else [])


def _extracted(line: int, place: str, english: Text, remarks: list[str]) -> Extracted:
    if isinstance(english, str):
        return line, "pgettext", (place, english), remarks
    return line, "npgettext", (place, *english), remarks
