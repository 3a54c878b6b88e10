"""Which drawing shows how a field is measured."""

from functools import cache

from undertrim.resources import table

SCHEME = "drawing:"
"""How the address of such a drawing begins in the handbook."""


@cache
def names() -> frozenset[str]:
    """All drawings by their names."""
    return frozenset(
        name for kinds in table("measuring").values() for fields in kinds.values() for name in fields.values()
    )


def drawing_of(what: str, kind: str, field: str) -> str:
    """The drawing for a field of an `opening`, of a `plug` or of `gear` of a kind; empty where there is none. Of keys (`face/width`) the first decides."""
    found: str = table("measuring")[what].get(kind, {}).get(field.split("/")[0], "")
    return found
