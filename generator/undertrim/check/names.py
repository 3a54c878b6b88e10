"""Names of makers and models as they are compared, and which of many are spelt nearly alike."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import combinations

from undertrim.record import identity

_SURE = 5
"""From so many letters on, one stroke more or less is likely a slip; shorter names are too near to each other anyway."""
_LOOK_ALIKE = str.maketrans("авекмнорстухіјѕԁһԛԝ", "abekmhopctyxijsdhqw")
"""Small Cyrillic letters that look like Latin ones (from Unicode's confusables.txt, by eye)."""


@lru_cache(maxsize=1 << 16)
def folded(name: str) -> str:
    """A name in small letters and digits alone; letters that only look like Latin ones count as those."""
    return identity.slug(name).replace("-", "").translate(_LOOK_ALIKE)


def near_pairs(names: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Every two different names, already folded, that one stroke makes the same and whose digits agree, each pair once.

    Only names that share what is left when one letter is taken out are compared, so that many names cost no more than they are long.
    """
    shelves: dict[str, set[str]] = defaultdict(set)
    for name in set(names):
        for shorter in (name, *(name[:place] + name[place + 1 :] for place in range(len(name)))):
            shelves[shorter].add(name)
    found = {pair for shelf in shelves.values() if len(shelf) > 1 for pair in combinations(sorted(shelf), 2)}
    yield from sorted(pair for pair in found if _near(*pair))


def _near(one: str, other: str) -> bool:
    return min(len(one), len(other)) >= _SURE and _digits(one) == _digits(other) and _one_stroke(one, other)


def _one_stroke(one: str, other: str) -> bool:
    """Whether one letter left out, added, exchanged, or swapped with its neighbour, makes two names the same."""
    start = _shared(one, other)
    end = _shared(one[start:][::-1], other[start:][::-1])
    left, right = one[start : len(one) - end], other[start : len(other) - end]
    swapped = len(left) == 2 and left == right[::-1]
    return swapped or max(len(left), len(right)) == 1


def _shared(one: str, other: str) -> int:
    """How many letters two names begin with alike."""
    return next(
        (place for place, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other))
    )


def _digits(name: str) -> str:
    return "".join(char for char in name if char.isdigit())
