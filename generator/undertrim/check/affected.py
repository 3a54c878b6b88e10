"""Which cars something is true of, in the words of a message."""

from collections.abc import Mapping, Sequence
from math import prod

from undertrim.record.model import Assignment
from undertrim.words import Items, Message, message, one_of


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
