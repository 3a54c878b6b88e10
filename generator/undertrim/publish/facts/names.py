"""Names for what has an id: the openings of a visit, kinds of car. What is typed in a command keeps its id beside the name."""

import math
from collections.abc import Mapping, Sequence

from undertrim.derive import cars
from undertrim.derive.procedure import states
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.naming import sided
from undertrim.derive.procedure.node import OPENING
from undertrim.derive.procedure.planning import Target
from undertrim.publish.facts import words
from undertrim.record.model import Job, Part, Prep, Reached, VehicleRecord
from undertrim.words import Message, Value, message

Car = Mapping[str, str]


def job(record: VehicleRecord, target: Target) -> Value:
    """A job by the name of what is worked at, with its side: `Front door speaker, left`; `Load lining, right (reached for: Camera cable)`."""
    worked = record.jobs[target.job]
    name = sided(worked.name, target.side)
    return message("jobs/reached", name=name, what=worked.for_) if isinstance(worked, Reached) else name


def car(record: VehicleRecord, choices: Car) -> Value:
    """A car by the labels of its choices: `Map radio, Left-hand drive`; empty where nothing is chosen. What the record does not tell apart has no label."""
    known = cars.variants(record)
    return words.listed(*(cars.label(known, name, choice) for name, choice in choices.items() if name in known))


def kinds_of_car(record: VehicleRecord, kinds: Sequence[Car]) -> Value:
    """Kinds of car without the variants that make no difference: `Map radio or Plain radio, No amplifier`; empty for all."""
    if not kinds:
        return ""
    known = cars.variants(record)
    chosen = {name: list(dict.fromkeys(kind[name] for kind in kinds)) for name in (kinds[0] if kinds else ())}
    if len(kinds) != math.prod(map(len, chosen.values())):
        return words.either(car(record, kind) for kind in kinds)
    return words.listed(
        *(
            words.either(cars.label(known, name, choice) for choice in choices)
            for name, choices in chosen.items()
            if len(choices) < len(known[name].choices)
        )
    )


def refusal(record: VehicleRecord, error: Unreachable | TooTangled) -> Message:
    """Why there is no plan, with parts and openings by their names."""
    return error.said(lambda node: _node(record, node))


def _node(record: VehicleRecord, node: str) -> Value:
    """A node of the graph by the name of its thing, with its side: `Door panel, left`."""
    usual = {prep.id: prep for prep in states.usual().values()}
    whole, _, side = node.partition("@")
    things: Mapping[str, Part | Prep | Job] = (
        record.jobs if whole.startswith(OPENING) else {**usual, **record.preps, **record.parts}
    )
    return sided(states.called(things[whole.removeprefix(OPENING)]), side)
