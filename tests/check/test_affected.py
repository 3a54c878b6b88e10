"""How a message picks out the cars it is about."""

from collections.abc import Sequence
from itertools import product

from fragments import messages

from undertrim.check.affected import found_in, which
from undertrim.check.rules import refit_contradiction
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


def test_what_is_found_twice_in_a_car_counts_once_and_stays_as_first_found() -> None:
    found = found_in(CARS[:2], lambda car: [("sill", f"{car['body']} left"), ("sill", f"{car['body']} right")])
    assert found == {"sill": ("van left", CARS[:2])}


VARIANTS = """
variants:
  sound:
    ask: How does it sound?
    choices:
      plain: {label: Plain, tell: No badge}
      grand: {label: Grand, tell: A badge}
"""

ROUND = """
parts:
  sill:
    name: Sill trim
    release: pull
    each: [left, right]
    refit_after: [{part: post, when: {sound: grand}}]
  post:
    name: Post trim
    release: pull
    each: [left, right]
    refit_after: [sill]
"""


def test_a_circle_at_both_sides_of_some_cars_is_not_said_of_all() -> None:
    assert messages(refit_contradiction, VARIANTS + ROUND) == [
        "'sill' goes back before and after 'post' where sound=grand: sill -> post -> sill"
    ]
