"""Where a record names its evidence."""

from collections.abc import Iterable, Iterator

from undertrim.record.fields import Field, Place
from undertrim.record.source import Data, Pointer

SOURCE: Place = ("common", ("$defs", "source"))


def named(fields: Iterable[Field]) -> Iterator[tuple[Pointer, str]]:
    """Every evidence id under a `source` field, with its place.

    Known by the schema, not by the key: a part, or a variant in a `when`, may be called 'source' too.
    """
    for field in fields:
        if field.node.home != SOURCE:
            continue
        if isinstance(field.value, str):
            yield field.pointer, field.value
        elif isinstance(field.value, list):
            for index, name in enumerate(field.value):
                if isinstance(name, str):
                    yield (*field.pointer, index), name


def nearest_source(data: Data, pointer: Pointer) -> tuple[str, ...]:
    """The evidence that the smallest block around a value names in its `source`; empty where none does."""
    found: tuple[str, ...] = ()
    around: Data = data
    for step in pointer[:-1]:
        around = around[step]
        said = around.get("source") if isinstance(around, dict) else None
        if isinstance(said, str | list):  # a part may be called 'source' too
            found = tuple(name for name in ([said] if isinstance(said, str) else said) if isinstance(name, str))
    return found
