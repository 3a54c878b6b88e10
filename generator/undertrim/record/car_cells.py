"""The kinds of car that the facts of one block tell apart, while it is divided (`dividing.py`)."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from math import prod

from undertrim.record.combinations import MOST_CARS
from undertrim.record.dividing import Clauses, Fact


@dataclass(frozen=True, slots=True)
class Cell:
    """Cars that are alike in all facts that differ, with the number of the entry of each; None where none holds."""

    cars: Clauses
    picks: tuple[int | None, ...]


def told_apart(found: tuple[Fact, ...], around: Clauses, known: Clauses) -> list[dict[str, str]] | None:
    """Every car that the facts tell apart, within those of the block around them; None where there are too many."""
    named = [entry.cars for fact in found for entry in fact.entries if entry.cars]
    wide: Clauses = {}
    for variant in (*known, *(name for cars in named for name in cars)):
        said = (choice for cars in named for choice in cars.get(variant, ()))
        if variant not in wide and any(variant in cars for cars in named):
            wide[variant] = list(dict.fromkeys((*known.get(variant, ()), *said)))
    left = {variant: [one for one in said if one in around.get(variant, said)] for variant, said in wide.items()}
    if prod(map(len, left.values())) > MOST_CARS:
        return None
    return [dict(zip(left, combined, strict=True)) for combined in product(*left.values())]


def cells(found: tuple[Fact, ...], cars: list[dict[str, str]]) -> list[Cell]:
    """The kinds of car, each with the same values throughout; of two that hold the first counts."""
    by_picks: dict[tuple[int | None, ...], list[dict[str, str]]] = {}
    for car in cars:
        picks = tuple(fact.pick(car) for fact in found)
        by_picks.setdefault(picks, []).append(car)
    return [Cell(said, picks) for picks, alike in by_picks.items() for said in _as_clauses(alike)]


def _as_clauses(alike: list[dict[str, str]]) -> Iterator[Clauses]:
    """Cars in as few conditions as their first variant allows."""
    said: Clauses = {name: list(dict.fromkeys(car[name] for car in alike)) for name in alike[0]}
    if prod(map(len, said.values())) == len(alike):
        yield said
        return
    by_choice = {
        choice: [car for car in alike if car[name] == choice] for name in list(said)[:1] for choice in said[name]
    }
    rest: dict[str, list[str]] = {}
    first = next(iter(said))
    for choice, having in by_choice.items():
        rest.setdefault(repr([{**car, first: ""} for car in having]), []).append(choice)
    for choices in rest.values():
        for below in _as_clauses(
            [{name: one for name, one in car.items() if name != first} for car in by_choice[choices[0]]]
        ):
            yield {first: choices, **below}


def telling(cell: Cell, cars: list[dict[str, str]]) -> tuple[tuple[str, str], ...]:
    """The choices, each with its variant, that tell the cars of a form from the rest."""
    every = {name: {car[name] for car in cars} for name in cell.cars}
    return tuple((name, choice) for name, said in cell.cars.items() if set(said) != every[name] for choice in said)
