"""What a sort of fastener is called: by its drive where something turns it, else by its sort."""

from collections.abc import Mapping

from undertrim.record.model import Blank, Fastener
from undertrim.words import Items, Value, message, word

_LONE = ("corners", "centre")
"""Edges that say all by themselves: those that have none of the others beside them need no count."""


def sort(fastener: Fastener) -> Value:
    """The sort by itself: `T20`, `T20 or hex 7 mm`, `push`."""
    if not fastener.turned:
        return message(f"sorts/{fastener.what}")
    if fastener.or_drive:
        return Items((turned_by(fastener.what), turned_by(fastener.or_drive)), "either")
    return turned_by(fastener.what)


def turned_by(what: str) -> Value:
    """A drive as it is typed; one that nobody has recorded in the reader's words."""
    return message("sorts/unknown") if what == str(Blank.UNKNOWN) else what


def one(fastener: Fastener) -> Value:
    """One of a sort: `T20 screw`, `push clip`."""
    return message("fasteners/of-sort", kind=word("fasteners", fastener.kind, "label"), sort=sort(fastener))


def many(fastener: Fastener) -> Value:
    """Several of a sort: `T20 screws`."""
    return message(f"fasteners/many-{fastener.kind}", sort=sort(fastener))


def counted(fastener: Fastener, number: int) -> Value:
    """So many of a sort: `4 × T20 screws`."""
    return message(f"fasteners/counted-{fastener.kind}", count=number, sort=sort(fastener))


def places(at: Mapping[str, int]) -> Value:
    """Where fasteners are: `2 top, 2 left, 2 right`; empty where that is not recorded."""
    edges = {edge: message(f"edges/{edge}") for edge in at}
    if len(at) == 1 and next(iter(at)) in _LONE:
        return next(iter(edges.values()))
    said = tuple(message("edges/at", number=count, edge=edges[edge]) for edge, count in at.items())
    return Items(said, "comma") if said else ""
