"""Finds the known word that another one most likely stands for: words of the trade first, then slips of the finger.

Likeness is no meaning: 'ignition' looks like 'illumination' and is another wire. So a word counts as a slip only where one or two
strokes mend it and no other known word is as near.
"""

import re
from collections.abc import Iterable, Sequence
from functools import cache

from undertrim.record import trade_words
from undertrim.words import Items, Message, Value, message, one_of, quoted, sentence

_SHOWN = 40
_LONGEST = 60
_OFFERED = 4
_FOR_TWO = 8
"""From so many letters on, two slips are likely to be slips."""


def suggestion(word: str, known: Sequence[str], what: Value) -> Message:
    """The hint for an unknown word: what the trade calls so, else the one it is a slip of, else all there are; `what` says what those are."""
    if meant := trade_words.meant(word, known):
        return message("nearness/write", names=one_of(*map(quoted, meant)))
    if several := _several(word, known):
        return (
            message("nearness/several", names=", ".join(several))
            if len(several) > 1
            else message("nearness/write", names=quoted(several[0]))
        )
    if found := slips(word, known):
        return message("nearness/meant", names=one_of(*map(quoted, found)))
    return message("nearness/all", what=what, names=Items(tuple(known[:_SHOWN]), "comma"))


def _several(word: str, known: Sequence[str]) -> list[str]:
    """The known words that a text lists in another way than a record does; empty where there is another word in it."""
    found = [part for part in _BETWEEN.split(word[:_LONGEST]) if part]
    return found if len(found) <= _OFFERED and found != [word] and set(found) <= set(known) else []


_BETWEEN = re.compile(r"[\s,;/&+()]+(?:and\b)?[\s()]*")


def nearest(word: str, known: Sequence[str], what: str) -> str:
    """The same as text, for what still writes its sentences itself."""
    return sentence(suggestion(word, known, what))


def near(word: str, known: Iterable[str]) -> str:
    """The one known word that another stands for; empty where there is none, or more than one."""
    every = list(known)
    meant = trade_words.meant(word, every)
    return slip(word, every) if not meant else meant[0] if len(meant) == 1 else ""


def slip(word: str, known: Iterable[str]) -> str:
    """The known word that this one is mistyped for; empty where none is near, or two are as near."""
    found = slips(word, known)
    return found[0] if len(found) == 1 else ""


def slips(word: str, known: Iterable[str]) -> list[str]:
    """The known words that this one may be mistyped for, all as near; empty where none is near, or so many that it tells nothing."""
    typed = _folded(word)
    names = {_folded(name): name for name in known}
    if typed in names:
        return [names[typed]]
    most = _allowed(typed)
    counted = {name: _strokes(typed, name) for name in names if abs(len(name) - len(typed)) <= most}
    fewest = min(counted.values(), default=most + 1)
    found = [names[name] for name, count in counted.items() if count == fewest]
    return found if fewest <= most and len(found) <= _OFFERED else []


def _folded(word: str) -> str:
    return word[:_LONGEST].casefold().replace("_", "-").replace(" ", "-")


def _allowed(word: str) -> int:
    return 0 if len(word) < 3 else 1 if len(word) < _FOR_TWO else 2


@cache
def _strokes(one: str, other: str) -> int:
    """How many letters were left out, added, exchanged or swapped with their neighbour (optimal string alignment)."""
    before: list[int] = []
    last = list(range(len(other) + 1))
    for i, letter in enumerate(one, 1):
        row = [i]
        for j, meant in enumerate(other, 1):
            best = min(last[j] + 1, row[-1] + 1, last[j - 1] + (letter != meant))
            if i > 1 and j > 1 and letter == other[j - 2] and one[i - 2] == meant:
                best = min(best, before[j - 2] + 1)
            row.append(best)
        before, last = last, row
    return last[-1]
