"""Where a record names its evidence."""

from collections.abc import Iterable, Iterator

from undertrim.record.fields import Field, Place
from undertrim.record.source import Pointer

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
