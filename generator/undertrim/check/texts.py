"""The texts of a record that people read."""

from collections.abc import Iterable, Iterator

from undertrim.record.fields import Field
from undertrim.record.source import Pointer

NOMINAL = "nominal"
"""A nominal size is a search word and says nothing."""


def texts(fields: Iterable[Field]) -> Iterator[tuple[Pointer, str]]:
    """Every text that people read, wherever it stands."""
    for item in fields:
        if isinstance(item.value, str) and is_prose(item):
            yield item.pointer, item.value


def is_prose(item: Field) -> bool:
    """Whether it is free text."""
    return "maxLength" in item.node.schema and "pattern" not in item.node.schema and item.pointer[-1] != NOMINAL
