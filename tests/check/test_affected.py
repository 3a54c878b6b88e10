"""How a message picks out the cars it is about."""

from collections.abc import Sequence
from itertools import product

from undertrim.check.affected import which
from undertrim.record.model import Assignment
from undertrim.words import Message, sentence

CARS = [{"radio": radio, "body": body} for radio, body in product(("plain", "map", "disc"), ("van", "bus"))]


def where(hit: Sequence[Assignment], cars: Sequence[Assignment]) -> str:
    found = which(hit, cars)
    return sentence(found) if isinstance(found, Message) else found


def test_all_cars_need_no_words() -> None:
    assert where(CARS, CARS) == ""
    assert where([{}], [{}]) == ""


def test_only_what_sets_them_apart_is_named() -> None:
    assert where([car for car in CARS if car["radio"] == "map"], CARS) == " where radio=map"
    assert where([car for car in CARS if car["radio"] != "map"], CARS) == " where radio=plain or disc"
    assert where([CARS[3]], CARS) == " where radio=map, body=bus"


def test_cars_that_are_no_combination_of_choices_are_given_by_the_first() -> None:
    assert where([CARS[0], CARS[3]], CARS) == " where radio=plain, body=van (and in 1 other car)"
    assert where([CARS[0], CARS[3], CARS[5]], CARS) == " where radio=plain, body=van (and in 2 other cars)"
