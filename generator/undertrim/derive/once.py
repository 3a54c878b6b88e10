"""Works something out once for each record, as long as that record lives."""

import weakref
from collections.abc import Callable
from typing import TypeVar

from undertrim.record.gear import AnyRecord

Record = TypeVar("Record", bound=AnyRecord)
Answer = TypeVar("Answer")


def once(function: Callable[[Record], Answer]) -> Callable[[Record], Answer]:
    """The same function with its answers kept. An answer must not hold the record that it is about, which would then never go."""
    kept: dict[int, Answer] = {}

    def asked(record: Record) -> Answer:
        key = id(record)  # a record is never changed, and holds what cannot be hashed
        if key not in kept:
            kept[key] = function(record)
            weakref.finalize(record, kept.pop, key).atexit = False
        return kept[key]

    return asked
