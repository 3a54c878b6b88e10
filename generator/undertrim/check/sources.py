"""Where a record names its evidence, and the conditions a fact stands under."""

from collections.abc import Iterable, Iterator

from undertrim.record.fields import Field, Place
from undertrim.record.source import Data, Pointer

SOURCE: Place = ("common", ("$defs", "source"))
WHEN: Place = ("common", ("$defs", "when"))


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


def by_block(fields: Iterable[Field]) -> dict[Pointer, tuple[str, ...]]:
    """The evidence ids that each block with a `source` of its own names."""
    found: dict[Pointer, tuple[str, ...]] = {}
    for field in fields:
        if field.node.home == SOURCE and field.pointer[-1] == "source":
            names = [field.value] if isinstance(field.value, str) else field.value
            found[field.pointer[:-1]] = tuple(name for name in names or () if isinstance(name, str))
    return found


def conditions(fields: Iterable[Field]) -> Iterator[tuple[Pointer, tuple[tuple[str, tuple[str, ...]], ...]]]:
    """The clauses of every block with a `when` of its own."""
    for field in fields:
        if field.node.home == WHEN and field.pointer[-1] == "when" and isinstance(field.value, dict):
            yield field.pointer[:-1], tuple((name, _choices(choice)) for name, choice in field.value.items())


def _choices(value: object) -> tuple[str, ...]:
    return (value,) if isinstance(value, str) else tuple(value) if isinstance(value, list) else ()
