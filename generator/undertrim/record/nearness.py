"""Finds the known word that a misspelt one most likely stands for."""

import difflib
from collections.abc import Iterable

_SHOWN = 40


def nearest(word: str, known: list[str], what: str) -> str:
    """The hint for a misspelt word: the nearest known one, or all of them where none is near."""
    found = near(word, known)
    return f"did you mean '{found}'?" if found else f"{what}: {', '.join(known[:_SHOWN])}"


def near(word: str, known: Iterable[str]) -> str:
    """The nearest known word; empty where none is near."""
    folded = {name.lower().replace("_", "-"): name for name in known}
    close = difflib.get_close_matches(word[:80].lower().replace("_", "-"), list(folded), n=1, cutoff=0.6)
    return folded[close[0]] if close else ""
