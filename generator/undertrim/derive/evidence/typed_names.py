"""By what name a record says what the model holds under another."""

from collections.abc import Mapping
from dataclasses import fields
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from undertrim.record.model import Fastener

if TYPE_CHECKING:
    from _typeshed import DataclassInstance


def typed_names(thing: "DataclassInstance") -> Mapping[str, str]:
    """The fields of a thing of the model by their names in the record; its id is no field.

    A fastener says what it is under its kind: `screw: T20`.
    """
    return _names(type(thing), thing.kind if isinstance(thing, Fastener) else "")


@cache  # asked for each thing of every record, and the same for all things of a type
def _names(kind: "type[DataclassInstance]", fastener: str) -> Mapping[str, str]:
    names = {entry.name.rstrip("_"): entry.name for entry in fields(kind) if entry.name != "id"}
    if fastener:
        del names["kind"], names["what"]
        names[fastener] = "what"
    return MappingProxyType(names)
