"""How many cars a record tells apart: its choices are multiplied before anything goes through them one by one."""

from collections.abc import Iterable, Iterator
from math import prod

from undertrim.record.complaint import Complaint
from undertrim.record.implied import LISTS
from undertrim.record.source import Data
from undertrim.words import Message, SaidError, message

MOST_CARS = 512
"""So many combinations of choices a record may have: nine yes-or-no questions. Nobody answers more at a car."""


class TooMany(SaidError):  # noqa: N818 - it names what happened
    """The choices of a record combine to more cars than can be gone through."""


def complaint(data: Data) -> Iterator[Complaint]:
    """What to say of a vehicle record, as read, whose choices combine to too many cars; of other data nothing."""
    sizes = [*_variants(data), *_of_the_vehicle(data)]
    if prod(sizes) > MOST_CARS:
        combined = message("cars/too-many-in-record", combine=said(sizes), most=MOST_CARS)
        yield Complaint(("variants",), combined, key=True)


def said(sizes: Iterable[int]) -> Message:
    """The sum, by the number of choices of each question."""
    asked = [size for size in sizes if size > 1]
    cars = prod(asked)
    return message("cars/combine", questions=len(asked), cars=cars if cars < 10**9 else message("cars/billions"))


def _variants(data: Data) -> Iterator[int]:
    variants = data.get("variants") if isinstance(data, dict) else None
    for variant in variants.values() if isinstance(variants, dict) else ():
        choices = variant.get("choices") if isinstance(variant, dict) else None
        if isinstance(choices, dict) and choices:
            yield len(choices)


def _of_the_vehicle(data: Data) -> Iterator[int]:
    """Steering side, body and their like are questions too, where there are several."""
    vehicle = data.get("vehicle") if isinstance(data, dict) else None
    if isinstance(vehicle, dict):
        several = map(vehicle.get, LISTS.values())
        yield from (len(set(map(str, found))) for found in several if isinstance(found, list) and found)
