"""Whose a record is, where a shop's own collection lies on shared ones."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Whose:
    """Whose a record is: `own`, or of the shared `collection` of that name; of a shared one the ids of the own `evidence`. `note` is the shop's private one.

    All of it is empty in a collection that lies on no other.
    """

    collection: str = ""
    own: bool = False
    evidence: frozenset[str] = frozenset()
    note: str = ""


NOBODYS = Whose()
