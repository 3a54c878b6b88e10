"""Hands the titles, descriptions and hints of the schemas to Babel, each with its place as context (`make words`)."""

from collections.abc import Iterator
from pathlib import PurePath
from typing import Any, BinaryIO

from undertrim.record.schema import NAMES, texts

Extracted = tuple[int, str, tuple[str, str], list[str]]


def schema(file: BinaryIO, _keywords: Any, _tags: Any, options: Any) -> Iterator[Extracted]:
    """The words of one schema as the program holds it, with what the kinds add; nothing of another file."""
    name = PurePath(file.name).name.removesuffix(".schema.json")
    lines = file.read().decode("utf-8").splitlines()
    for text in texts(name) if name in NAMES else ():
        line = next((number for number, line in enumerate(lines, 1) if text.english in line), 1)
        yield line, "pgettext", (text.place, text.english), ["Not a template: braces stay as they are."]
