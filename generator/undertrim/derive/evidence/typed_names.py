"""By what name a record says what the model holds under another."""

from dataclasses import fields
from typing import TYPE_CHECKING

from undertrim.record.model import Fastener

if TYPE_CHECKING:
    from _typeshed import DataclassInstance


def typed_names(thing: "DataclassInstance") -> dict[str, str]:
    """The fields of a thing of the model by their names in the record; its id is no field.

    A fastener says what it is under its kind: `screw: T20`.
    """
    names = {entry.name.rstrip("_"): entry.name for entry in fields(thing) if entry.name != "id"}
    if isinstance(thing, Fastener):
        del names["kind"], names["what"]
        names[thing.kind] = "what"
    return names
