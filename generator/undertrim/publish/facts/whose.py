"""Whose a record is, in words, where a shop's own collection lies on shared ones."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.record.whose import NOBODYS, Whose
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class ShownWhose:
    """Whose a record is: `own`, `added` (shared, with additions of the own layer) or `shared`; in words, and in a few of them for lists (`mark`).

    `evidence` are the ids of what the own layer added. `note` is the private one. All is empty in a collection that lies on no other.
    """

    word: str
    words: Value
    mark: Value
    evidence: Sequence[str]
    note: str


def shown(whose: Whose) -> ShownWhose:
    """Whose a record is, as pages say it."""
    word = "" if whose == NOBODYS else "own" if whose.own else "added" if whose.evidence else "shared"
    said: dict[str, Value] = {"collection": whose.collection, "count": len(whose.evidence)}
    words = message(f"layers/is-{word}", **said) if word else ""
    return ShownWhose(word, words, mark(whose), sorted(whose.evidence), whose.note)


def mark(whose: Whose) -> Value:
    """What lists say of it; nothing of what is shared as it is."""
    if whose.own:
        return message("layers/ours")
    return message("layers/added-to") if whose.evidence else ""
