"""Changes of a record as data: YAML stays right, so that more of them reach the rules, the plans and the pages."""

import copy
import random
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from text_changes import NUMBERS, ODD

Data = Any
Pool = dict[str, list[Data]]
"""What stands under each key."""

VALUES = (
    "",
    " ",
    "unknown",
    "none",
    "yes",
    "no",
    "left",
    "right",
    "~",
    "null",
    "0 mm",
    "-5 mm",
    "1e9 mm",
    "99999 h",
    "x" * 600,
)
"""Values that mean something in some place, and are wrong in most."""
MANY = 30


@dataclass(frozen=True, slots=True)
class Spot:
    """One place in the data: `holder[at]`, which stands under the key `name`."""

    holder: Data
    at: Any
    name: str

    @property
    def value(self) -> Data:
        return self.holder[self.at]

    def put(self, value: Data) -> None:
        self.holder[self.at] = value


Change = Callable[[list[Spot], Pool, random.Random], None]


def changed(data: Data, pool: Pool, draw: random.Random, count: int) -> tuple[Data, list[str]]:
    """The data after some changes, and their names."""
    whole = [copy.deepcopy(data)]
    made = [draw.choice(CHANGES) for _ in range(count)]
    for change in made:
        if spots := list(_spots(whole, "")):
            change(spots, pool, draw)
    return (whole[0] if whole else None), [change.__name__ for change in made]


def pool(all_data: Iterable[Data]) -> Pool:
    """What stands under each key in some data."""
    found: Pool = {}
    for data in all_data:
        for spot in _spots([data], ""):
            found.setdefault(spot.name, []).append(spot.value)
    return found


def _spots(holder: Data, name: str) -> Iterator[Spot]:
    """Every place below; what stands in a list bears the list's name."""
    keyed = isinstance(holder, dict)
    for at in list(holder) if keyed else range(len(holder)) if isinstance(holder, list) else ():
        spot = Spot(holder, at, str(at) if keyed else name)
        yield spot
        yield from _spots(spot.value, spot.name)


def _like(spot: Spot, pool: Pool, draw: random.Random) -> Data:
    return copy.deepcopy(draw.choice(pool.get(spot.name) or [spot.value]))


def removed(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    spot = draw.choice(spots)
    del spot.holder[spot.at]


def as_elsewhere(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """What another record, or another part, has under the same key."""
    spot = draw.choice(spots)
    spot.put(_like(spot, pool, draw))


def grafted(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """A key that its like has elsewhere, and this one has not."""
    spot = draw.choice([spot for spot in spots if isinstance(spot.value, dict)] or spots)
    siblings = [other for other in (spot.holder.values() if isinstance(spot.holder, dict) else spot.holder) if other]
    like = draw.choice([_like(spot, pool, draw), copy.deepcopy(draw.choice(siblings or [{}]))])
    if isinstance(spot.value, dict) and isinstance(like, dict) and like:
        key = draw.choice(list(like))
        spot.value[key] = like[key]


def odd_value(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    draw.choice(spots).put(draw.choice(VALUES))


def other_number(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """Another number before the same unit."""
    numbers = [spot for spot in spots if isinstance(spot.value, str) and spot.value[:1].isdigit()]
    if numbers:
        spot = draw.choice(numbers)
        first, _, rest = spot.value.partition(" ")
        new = draw.choice((*NUMBERS, first + "0", "1", "2", "3", "12", str(draw.randrange(1, 400))))
        spot.put(f"{new} {rest}".strip())


def odd_sign(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    texts = [spot for spot in spots if isinstance(spot.value, str)]
    if texts:
        spot = draw.choice(texts)
        at = draw.randrange(len(spot.value) + 1)
        spot.put(spot.value[:at] + draw.choice(ODD) * draw.choice((1, 1, 200)) + spot.value[at:])


def wrapped(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    spot = draw.choice(spots)
    spot.put(draw.choice(([spot.value], [spot.value, spot.value], {"a": spot.value}, [], {})))


def unwrapped(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    spot = draw.choice([spot for spot in spots if isinstance(spot.value, dict | list) and spot.value] or spots)
    value = spot.value
    spot.put(draw.choice([*(value.values() if isinstance(value, dict) else value)] or [""]))


def repeated(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """Once more, or many times, beside itself."""
    spot = draw.choice(
        [spot for spot in spots if isinstance(spot.holder, list) or isinstance(spot.value, dict)] or spots
    )
    for number in range(draw.choice((1, 1, 2, MANY))):
        again = copy.deepcopy(spot.value)
        if isinstance(spot.holder, dict):
            spot.holder[f"{spot.at}-{number + 2}"] = again
        else:
            spot.holder.append(again)


def renamed(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """Another key for the same value: one known elsewhere, or a new one."""
    spot = draw.choice([spot for spot in spots if isinstance(spot.holder, dict)] or spots)
    if isinstance(spot.holder, dict):
        beside = [*spot.holder, *pool]
        spot.holder[draw.choice((draw.choice(beside), f"{spot.at}-x", "a", "Ä", ""))] = spot.holder.pop(spot.at)


def reordered(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    spot = draw.choice([spot for spot in spots if isinstance(spot.value, dict | list)] or spots)
    if isinstance(spot.value, list):
        draw.shuffle(spot.value)
    elif isinstance(spot.value, dict):
        items = list(spot.value.items())
        draw.shuffle(items)
        spot.put(dict(items))


def exchanged(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """Two values of the same key in each other's place: references that lead elsewhere."""
    texts = [spot for spot in spots if isinstance(spot.value, str)]
    if texts:
        spot = draw.choice(texts)
        other = draw.choice([other for other in texts if other.name == spot.name])
        one, two = spot.value, other.value
        spot.put(two)
        other.put(one)


def word_of_this_record(spots: list[Spot], pool: Pool, draw: random.Random) -> None:
    """A value that is a key elsewhere in the record: an id where none, or another, was meant."""
    keys = sorted({str(spot.at) for spot in spots if isinstance(spot.holder, dict)})
    texts = [spot for spot in spots if isinstance(spot.value, str)]
    if keys and texts:
        draw.choice(texts).put(draw.choice(keys))


CHANGES: tuple[Change, ...] = (
    removed,
    removed,
    as_elsewhere,
    as_elsewhere,
    as_elsewhere,
    grafted,
    grafted,
    grafted,
    odd_value,
    other_number,
    other_number,
    other_number,
    odd_sign,
    wrapped,
    unwrapped,
    repeated,
    renamed,
    reordered,
    reordered,
    exchanged,
    exchanged,
    word_of_this_record,
)
