"""What is wrong with a list of values for different cars, each told where it was typed."""

from collections.abc import Iterator
from typing import Protocol

from undertrim.record import dividing
from undertrim.record.dividing import BY_SIDE, IS, SIDE, WHEN, Clauses, Entry, Fact
from undertrim.record.nearness import suggestion
from undertrim.record.numerals import quoted
from undertrim.record.refusals import refusals
from undertrim.record.sentences import write
from undertrim.record.source import Data, Pointer, Source
from undertrim.words import Items, Message, message


class Tell(Protocol):
    """Takes what is wrong at a place as typed; `key` points at its key."""

    def __call__(self, typed: Pointer, said: Message, *, key: bool = False) -> None:
        """Take one."""


def blame(tell: Tell, source: Source, fact: Fact, cars: list[dict[str, str]], known: Clauses) -> None:
    """Tell all that is wrong with a fact; `cars` are those that could have the block around it, `known` all choices."""
    for entry in fact.entries:
        _entry(tell, source.data, entry, known)
    if len(fact.entries) == 1 and fact.steps:
        tell(fact.entries[0].stands, message("spread/one-value", field=field(fact)))
    if any(entry.cars is None for entry in fact.entries):
        return
    here = [car for car in cars if dividing.holds(fact.within, car)]
    _overlap(tell, source, fact, here)
    for i, entry in enumerate(fact.entries):
        if not any(i in fact.holding(car) for car in here):
            tell(_typed_for(source, entry), message("spread/no-such-car", field=field(fact)))
    bare = next((car for car in here if not fact.holding(car)), None)
    if bare is not None and fact.steps and len(fact.entries) > 1 and not fact.shape.may_be_unknown:
        tell(fact.typed, message("spread/no-value", field=field(fact), cars=_said(fact, bare)), key=True)


def _entry(tell: Tell, data: Data, entry: Entry, known: Clauses) -> None:
    if entry.beside:
        tell((*entry.stands, entry.beside), message("spread/beside-is", field=quoted(entry.beside)), key=True)
    if entry.cars is not None:
        return
    typed = _at(data, entry.stands)
    if typed.get(SIDE) not in (None, *known.get(BY_SIDE, ())):
        code = "spread/side-no-word" if BY_SIDE in known else "spread/cannot-differ-by-side"
        tell((*entry.stands, SIDE), message(code))
        return
    when = typed.get(WHEN)
    if when is None:
        tell(entry.stands, message("spread/value-without-when"))
        return
    for refusal in refusals(when, "common/when"):
        for complaint in write(refusal):
            tell((*entry.stands, WHEN, *complaint.pointer), complaint.said)
    for variant, said, of_key in _undeclared(dividing.clauses(when) or {}, known):
        tell((*entry.stands, WHEN, variant), said, key=of_key)


def _at(data: Data, place: Pointer) -> dict[str, Data]:
    for step in place:
        data = data[step]
    return data if isinstance(data, dict) else {}


def _typed_for(source: Source, entry: Entry) -> Pointer:
    """Where it was typed for whom an entry is."""
    return next((spot for key in (WHEN, SIDE) if (spot := (*entry.stands, key)) in source.values), entry.stands)


def _undeclared(cars: Clauses, known: Clauses) -> Iterator[tuple[str, Message, bool]]:
    """The questions and choices that the record does not have; with each whether the question is meant."""
    for variant, choices in cars.items():
        if variant not in known:
            near = (
                suggestion(variant, list(known), message("jobs/variants")) if known else message("spread/no-variants")
            )
            yield variant, message("spread/no-variant", variant=quoted(variant), hint=near), True
        elif other := [one for one in choices if one not in known[variant]]:
            near = suggestion(other[0], known[variant], message("jobs/choices"))
            said = message("spread/no-choice", variant=quoted(variant), choice=quoted(other[0]), hint=near)
            yield variant, said, False


def _overlap(tell: Tell, source: Source, fact: Fact, cars: list[dict[str, str]]) -> None:
    told: set[int] = set()
    for car in cars:
        first, *others = fact.holding(car) or [-1]
        for i in others:
            if i not in told:
                line = source.values[fact.entries[first].stands].line
                said = message("spread/two-values", field=field(fact), cars=_said(fact, car), line=line)
                tell(_typed_for(source, fact.entries[i]), said, key=True)
            told.add(i)


def field(fact: Fact) -> Message:
    """The name of a fact's field."""
    names = [str(step) for step in fact.typed if isinstance(step, str) and step != IS]
    return quoted(names[-1])


def _said(fact: Fact, car: dict[str, str]) -> Items:
    """A car by the questions that a fact asks."""
    asked = {name for entry in fact.entries for name in entry.cars or ()}
    named = ((SIDE if name == BY_SIDE else name, choice) for name, choice in car.items() if name in asked)
    return Items(tuple(f"{name}: {choice}" for name, choice in named), "comma")
