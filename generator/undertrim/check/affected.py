"""Which cars something is true of, and that in the words of a message."""

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from math import prod
from typing import TypeVar

from undertrim.record.model import Assignment
from undertrim.words import Items, Message, message, one_of

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


def found_in(
    cars: Sequence[Assignment], find: Callable[[Assignment], Iterable[tuple[K, V]]]
) -> dict[K, tuple[V, list[Assignment]]]:
    """What `find` finds in the cars, each once by its key: as it is in the first of them, and all cars that have it."""
    found: dict[K, tuple[V, list[Assignment]]] = {}
    for car in cars:
        for key, item in find(car):
            _, hit = found.setdefault(key, (item, []))
            if car not in hit:  # at both sides of one car it counts once
                hit.append(car)
    return found


def which(hit: Sequence[Assignment], cars: Sequence[Assignment]) -> Message | str:
    """What sets the cars of `hit` apart among all `cars`, as ` where radio=map`; empty if it is all.

    Cars that no choice of variants picks out exactly are given by the first of them and how many others.
    """
    if len(hit) == len(cars):
        return ""
    of_hit, of_all = _choices(hit), _choices(cars)
    if prod(len(some) for some in of_hit.values()) == len(hit):
        narrow = {name: some for name, some in of_hit.items() if len(some) < len(of_all[name])}
        return message("cars/where", car=choices(narrow))
    return message("cars/where-first", car=one(hit[0]), count=len(hit) - 1)


def one(car: Assignment) -> Items:
    """The choices of one car, as `radio=map, lock=button`."""
    return choices({name: [choice] for name, choice in car.items()})


def choices(some: Mapping[str, Sequence[str]], joined: str = "comma") -> Items:
    """What cars have one of, as `radio=map or plain, lock=button`."""
    return Items(
        tuple(message("cars/choice", variant=name, choice=one_of(*each)) for name, each in some.items()), joined
    )


def _choices(cars: Sequence[Assignment]) -> dict[str, list[str]]:
    return {name: list(dict.fromkeys(car[name] for car in cars)) for name in cars[0]}
