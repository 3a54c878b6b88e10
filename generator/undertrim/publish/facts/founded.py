"""What rests on each piece of evidence: the facts that name it as their source, in words."""

from functools import reduce
from operator import getitem
from typing import Any

from undertrim.derive.fact_names import fact_name
from undertrim.record.fields import walk
from undertrim.record.source import Data, Pointer
from undertrim.resources import table
from undertrim.words import Value, message, word

_SOURCE = ("common", ("$defs", "source"))


def named(data: Data) -> dict[str, list[Value]]:
    """For each piece of evidence that is named, what names it, in file order; `data` is the record as typed.

    Claims of a conflict stand with their sources where the conflict is told, and are left out.
    """
    found: dict[str, dict[Value, None]] = {}
    for field in walk(data, "vehicle"):
        if field.node.home == _SOURCE and field.pointer[0] != "conflicts":
            for source in field.value if isinstance(field.value, list) else [field.value]:
                found.setdefault(str(source), {})[_name(data, field.pointer[:-1])] = None
    return {source: list(names) for source, names in found.items()}


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
