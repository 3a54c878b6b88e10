"""Who says it, as a record's evidence has it: the piece that is the same, or a new one; and where a fact names its evidence."""

import re
from collections.abc import Iterator

from undertrim.derive.evidence.facts import schema_at
from undertrim.derive.evidence.fingerprint import BY_ID
from undertrim.record.changing import Change
from undertrim.record.claims import Answer
from undertrim.record.source import Data, Pointer, Source

SOURCE = "source"


def evidence_of(source: Source, answer: Answer) -> tuple[str, Change | None]:
    """The id of the answer's evidence, and how it gets into the record if it is not there."""
    said = source.data.get("evidence", {})
    typed = _typed(answer)
    whole = {**typed, "car": car_of(source, typed["car"])} if "car" in typed else typed
    for name, piece in said.items():
        if piece == whole:
            return name, None
    numbers = [int(found[1]) for name in said if (found := re.fullmatch(r"e([0-9]{1,6})", name))]
    name = f"e{max(numbers, default=0) + 1}"
    named = _name_of(source, typed.get("car"))
    typed = {**typed, "car": named} if named else typed
    return name, Change(("evidence", name), typed, whole)


def _typed(answer: Answer) -> dict[str, Data]:
    said: dict[str, Data] = {"how": answer.how, "on": answer.on, "by": answer.by}
    said |= {"car": answer.car} if answer.car else {}
    said |= {"side": answer.side} if answer.side else {}
    said |= {"with": answer.with_} if answer.with_ else {}
    return said | ({"note": answer.note} if answer.note else {})


def _cars(source: Source) -> dict[str, Data]:
    """The cars that the record names."""
    typed = source.as_typed.data
    cars = typed.get("cars") if isinstance(typed, dict) and source.origin else None
    return cars if isinstance(cars, dict) else {}


def car_of(source: Source, car: Data) -> Data:
    """A car as the whole says it: by what it is, not by its name."""
    return _cars(source).get(car, car) if isinstance(car, str) else car


def _name_of(source: Source, car: Data) -> str:
    """The name that the record has for a car; empty where it has none."""
    return next((name for name, known in _cars(source).items() if known == car), "")


def holder(source: Source, place: Pointer) -> Pointer | None:
    """Where the evidence of a fact is named: the nearest block around it that names some, else its thing; None where none can."""
    around = [place[:depth] for depth in range(len(place) - 1, 0, -1)]
    able = [block for block in around if SOURCE in schema_at(block).get("properties", {})]
    naming = next((block for block in able if names_at(source, block)), None)
    thing = place[:2] if place[0] in BY_ID else place[:1]
    return naming or (thing if thing in able else able[-1] if able else None)


def names(source: Source, place: Pointer) -> tuple[str, ...]:
    """The evidence that a fact rests on: that of the nearest block around it that names some."""
    return next((found for depth in range(len(place) - 1, 0, -1) if (found := names_at(source, place[:depth]))), ())


def names_at(source: Source, block: Pointer) -> tuple[str, ...]:
    """The evidence that a block itself names."""
    data: Data = source.data
    for step in block:
        data = data.get(step) if isinstance(data, dict) else data[int(step)] if isinstance(data, list) else None
    said = data.get(SOURCE, ()) if isinstance(data, dict) else ()
    return (said,) if isinstance(said, str) else tuple(said)


def siblings(source: Source, block: Pointer) -> Iterator[Pointer]:
    """The places of the other forms of what a block is in."""
    for home, forms in source.origin.forms.items() if source.origin else ():
        depth = len(home)
        for name in forms:
            if block[:depth] == (*home[:-1], name):
                yield from ((*home[:-1], other, *block[depth:]) for other in forms if other != name)


def naming(source: Source, block: Pointer, evidence: str) -> Change:
    """That a block names one more piece of evidence."""
    place, known = (*block, SOURCE), names_at(source, block)
    follow = tuple((*other, SOURCE) for other in siblings(source, block))
    return Change(place, [*known, evidence] if known else evidence, may_follow=follow)
