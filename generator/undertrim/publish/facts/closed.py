"""Openings that are inside the high-voltage system, in words: why there are no steps for them, and whose work it is."""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.derive import cars
from undertrim.derive.procedure.closed import closed_in
from undertrim.record.model import Opening, VehicleRecord, When
from undertrim.words import Items, Message, message, quoted


def said(opening: Opening, names: Sequence[str]) -> Message:
    """Why nothing is told of an opening; `names` are what is inside on the way to it."""
    by = tuple(quoted(name) for name in names if name != opening.name)
    if not by:
        return message("closed/inside", opening=opening.name)
    return message("closed/behind", opening=opening.name, parts=Items(by, "comma"))


def closings(record: VehicleRecord) -> Iterator[tuple[Opening, When, Message]]:
    """Every opening that is closed, in which cars, and the words for it."""
    for opening in record.openings.values():
        found = closed_in(record, opening)
        if found:
            names = dict.fromkeys(thing.name for _, by in found for thing in by)
            yield opening, _cars(record, opening, [car for car, _ in found]), said(opening, list(names))


def _cars(record: VehicleRecord, opening: Opening, closed: Sequence[Mapping[str, str]]) -> When:
    """The cars in which it is closed, as far as single variants tell; never fewer than it is."""
    every = [car for car in cars.assignments(record) if opening.when.holds(car)]
    clauses = []
    for name in every[0]:
        chosen = tuple(dict.fromkeys(car[name] for car in closed))
        if len(chosen) < len({car[name] for car in every}):
            clauses.append((name, chosen))
    narrowed = When(tuple(clauses))
    named = {name for name, _ in clauses}
    return When((*narrowed.clauses, *(clause for clause in opening.when.clauses if clause[0] not in named)))
