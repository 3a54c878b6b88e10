"""The steps of all visits to all cars of a record, and which of them each visit to each car has."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from undertrim.derive.procedure import running
from undertrim.derive.procedure.choices import Choices
from undertrim.derive.procedure.steps import Step
from undertrim.publish.encoding import Spread
from undertrim.publish.facts import steps as step_facts
from undertrim.publish.facts import words
from undertrim.publish.facts.photos import Shown, ShownPhoto
from undertrim.publish.facts.shown_steps import ToldStep
from undertrim.record.model import VehicleRecord, When
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class ShownStep:
    """A step with the targets and, in words, the cars it belongs to; `when` is empty for all cars. One that `builds` is where a kit is built up, by steps of its own."""

    step: Spread[ToldStep]
    targets: Sequence[str]
    builds: bool
    when: Value
    photos: Sequence[ShownPhoto] = ()


@dataclass(frozen=True, slots=True)
class Plan:
    """Which steps each visit to one kind of car has: step numbers (places in `steps`) by target, and of every set that is not simply their sum."""

    car: Mapping[str, str]
    singles: Mapping[str, Sequence[int]]
    sets: Mapping[str, Sequence[int]]


def steps(record: VehicleRecord, made: Choices, photos: Shown) -> Iterator[ShownStep]:
    """Every step with the cars and targets it belongs to, and its photographs."""
    with_it: dict[str, tuple[set[str], set[int]]] = {step.id: (set(), set()) for step in made.steps}
    for number, of_car in enumerate(made.cars):
        visits: dict[tuple[str, ...], tuple[str, ...]] = {(target,): ids for target, ids in of_car.singles.items()}
        visits |= {wanted: ids for wanted, ids in of_car.sets.items() if len(wanted) > 1}
        alone = {target: frozenset(ids) for target, ids in of_car.singles.items()}
        for wanted, ids in visits.items():
            for name in ids:
                if len(wanted) == 1 or not any(name in alone[target] for target in wanted):
                    with_it[name][0].update(wanted)
                    with_it[name][1].add(number)
    running_states = _states(made)
    for step in made.steps:
        yield ShownStep(
            step=step_facts.step(record, step, running_states[step.id]),
            targets=[target for target in made.cars[0].singles if target in with_it[step.id][0]],
            builds=step.builds,
            when=_condition(record, made, with_it[step.id][1], step),
            photos=photos.of_step(step.kind, step.part),
        )


def _states(made: Choices) -> dict[str, Mapping[str, str]]:
    """Battery and ignition beside each step, over every visit: one visit may have the battery off where another has it on."""
    by_id = {step.id: step for step in made.steps}
    found: dict[str, dict[tuple[tuple[str, str], ...], None]] = {name: {} for name in by_id}
    for of_car in made.cars:
        for ids in (*of_car.singles.values(), *of_car.sets.values()):
            for name, now in zip(ids, running.states_of([by_id[name] for name in ids]), strict=True):
                found[name][tuple(now.items())] = None
    return {name: running.agreed(map(dict, states)) for name, states in found.items()}


def _condition(record: VehicleRecord, made: Choices, numbers: set[int], step: Step) -> Value:
    """In words, the cars in which a step can occur, as far as its title does not tell them; empty for all."""
    if len(numbers) == len(made.cars):
        return ""
    in_cars = [of_car.car for number, of_car in enumerate(made.cars) if number in numbers]
    return words.beside(record, When(tuple(_narrowed(made, in_cars))), step)


def _narrowed(made: Choices, in_cars: list[Any]) -> Iterator[tuple[str, tuple[str, ...]]]:
    for name in made.cars[0].car:
        chosen = list(dict.fromkeys(car[name] for car in in_cars))
        if len(chosen) < len({of_car.car[name] for of_car in made.cars}):
            yield name, tuple(chosen)


def plans(made: Choices) -> list[Plan]:
    """For each car: step numbers (places in `steps`) by target, and of every set that is not simply their sum."""
    place = {step.id: i for i, step in enumerate(made.steps)}
    return [
        Plan(
            car=dict(of_car.car),
            singles={target: [place[step] for step in ids] for target, ids in of_car.singles.items()},
            sets={"+".join(ids): [place[step] for step in listed] for ids, listed in of_car.sets.items()},
        )
        for of_car in made.cars
    ]
