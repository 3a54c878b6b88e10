"""What the keywords of our schemas refuse about one value: each gives what there is to say of it, or None.

A value of another sort than the keyword is about is left to the keyword `type`.
"""

import datetime
import re
from collections.abc import Callable, Iterator
from typing import Any

from undertrim.record import drives, schema, units
from undertrim.record.numerals import quoted
from undertrim.record.schema import Schema
from undertrim.record.source import Data
from undertrim.words import Message, message

_MORE = re.compile(r"(?:>|>=|≥|min|min\.|minimum|over|more than) ?([0-9.][^+]*)", re.IGNORECASE)
Said = tuple[()] | tuple[Message]
"""What is wrong, where there is more to say than that something is."""


def _quantity(spec: Schema, value: Data) -> Said | None:
    if not isinstance(value, str) or value in schema.blanks(spec):
        return None
    try:
        typed = units.parse(value, spec["kind"])
    except units.UnitError as error:
        return ((spec.get("bound") and _bound(value)) or error.said,)
    return (_unbound(typed),) if typed.least and not spec.get("bound") else None


def _bound(text: str) -> Message | None:
    """How a lower bound is written, where a sign or another word was typed for it."""
    found = _MORE.fullmatch(" ".join(text.split()))
    if found is None:
        return None
    hint = message("units/bound", written=quoted(f"at least {found[1]}"))
    return message("units/unreadable", text=quoted(text), hint=hint)


def _unbound(typed: units.Quantity) -> Message:
    """A lower bound helps where room is meant; what is fitted or torqued has one value."""
    return message("units/no-bound", text=quoted(typed.text), written=quoted(units.unbound(typed.text)))


def _drive(wanted: bool, value: Data) -> Said | None:
    if not wanted or not isinstance(value, str):
        return None
    try:
        drives.parse(value)
    except drives.DriveError as error:
        return (error.said,)
    return None


def _minimum(limit: int, value: Data) -> Said | None:
    return () if schema.whole(value) and int(value) < limit else None


def _maximum(limit: int, value: Data) -> Said | None:
    return () if schema.whole(value) and int(value) > limit else None


def _calendar(wanted: bool, value: Data) -> Said | None:
    try:
        if wanted and isinstance(value, str):
            datetime.date.fromisoformat(value)
    except ValueError:
        return ()
    return None


def repeats(value: Data) -> Iterator[tuple[int, str]]:
    """Each entry of a list that an earlier one repeats, with its place; only words are looked at, ours hold no others."""
    seen: set[str] = set()
    for index, item in enumerate(value) if isinstance(value, list) else ():
        if isinstance(item, str):
            if item in seen:
                yield index, item
            seen.add(item)


def _unique(wanted: bool, value: Data) -> Said | None:
    return next((() for _ in repeats(value)), None) if wanted else None


REFUSED: dict[str, Callable[[Any, Data], Said | None]] = {
    "quantity": _quantity,
    "drive": _drive,
    "minimum": _minimum,
    "maximum": _maximum,
    "calendar": _calendar,
    "uniqueItems": _unique,
}
