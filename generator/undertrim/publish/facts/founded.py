"""What rests on each piece of evidence: the facts that name it as their source, in words."""

from collections.abc import Iterator
from functools import reduce
from operator import getitem
from typing import Any

from undertrim.derive.fact_names import fact_name
from undertrim.record.fields import Node, root
from undertrim.record.source import Data, Pointer
from undertrim.resources import table
from undertrim.words import Value, message, word

_SOURCE = ("common", ("$defs", "source"))
_KEY = "source"
"""What every field of that kind is called (`tests/publish/test_facts_evidence.py`)."""


def named(data: Data) -> dict[str, list[Value]]:
    """For each piece of evidence that is named, what names it, in file order; `data` is the record as typed.

    Claims of a conflict stand with their sources where the conflict is told, and are left out.
    """
    found: dict[str, dict[Value, None]] = {}
    for pointer, value in _sourced((), data):
        if pointer[0] != "conflicts" and _names_evidence(pointer):
            for source in value if isinstance(value, list) else [value]:
                found.setdefault(str(source), {})[_name(data, pointer[:-1])] = None
    return {source: list(names) for source, names in found.items()}


def _sourced(above: Pointer, value: Data) -> Iterator[tuple[Pointer, Data]]:
    """What may be a source, by its key: the schema is asked only of these, which are a twentieth of a record."""
    entries = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in entries:
        if step == _KEY:
            yield (*above, step), inner
        elif isinstance(inner, dict | list):
            yield from _sourced((*above, step), inner)


def _names_evidence(pointer: Pointer) -> bool:
    node: Node | None = root("vehicle")
    for step in pointer:
        node = node.child(step) if node else None
    return node is not None and node.home == _SOURCE


def _name(data: Data, block: Pointer) -> Value:
    """What a block is called; a fastener has only a number, and is called by its sort."""
    if "held_by" not in block:
        return fact_name(data, block)
    *above, _, number = block
    fastener: Any = reduce(getitem, block, data)
    kind = next(kind for kind in table("fasteners") if kind in fastener)
    sort = word("fasteners", kind, "label")
    named: dict[str, Value] = {"block": fact_name(data, tuple(above)), "what": str(fastener[kind]), "sort": sort}
    return message("fact-names/fastener", **named, number=int(number) + 1)
