"""What was found in a file as plain data and back; the file's own name stays out of it, and what is to be said is kept unsaid."""

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any

from undertrim.check.allowing import Allow
from undertrim.check.findings import Card, Details, Finding
from undertrim.check.one_file import Looked
from undertrim.record import build
from undertrim.record.model import VehicleFacts
from undertrim.record.problem import Level, Position, Problem
from undertrim.words import Message, values

Plain = dict[str, Any]


def frozen(found: Looked) -> tuple[Plain, Plain]:
    """As data for JSON: what is always asked for, and the details."""
    brief: Plain = {"complete": found.complete, "earlier": found.earlier}
    brief["problems"] = [
        [*_at(item.position), item.level, item.rule, values.frozen(item.said)] for item in found.problems
    ]
    brief["allows"] = [[*_at(item.position), item.line, item.rule, item.reason] for item in found.allows]
    brief["card"] = _card(found.card) if found.card else None
    return brief, _details(found.card.details) if found.card else {}


def thawed(plain: Plain, path: Path, shown: Path, more: Callable[[], Details], key: str = "") -> Looked:
    """Back again, for the file at `path`, which problems call `shown`. Raises KeyError, TypeError, ValueError or AttributeError on other data."""
    return Looked(
        shown,
        path.stem,
        tuple(_problem(shown, *item) for item in plain["problems"]),
        _as_card(plain["card"], path, shown, more) if plain["card"] else None,
        tuple(Allow(Position(line, column), *rest) for line, column, *rest in plain["allows"]),
        plain["complete"],
        plain["earlier"],
        key,
    )


def _problem(shown: Path, line: int, column: int, level: str, rule: str, said: Any) -> Problem:
    return Problem(shown, Position(line, column), Level(level), rule, _message(said))


def _card(card: Card) -> Plain:
    section = "vehicle" if isinstance(card.facts, VehicleFacts) else "gear"
    said = {"section": section, "facts": card.typed, "looks": card.looks, "sections": card.sections}
    return {**said, "marks": card.marks}


def _as_card(plain: Plain, path: Path, shown: Path, more: Callable[[], Details]) -> Card:
    facts = build.section(plain["section"], plain["facts"])
    marks = plain["looks"], plain["sections"], plain["marks"]
    return Card(shown, f"{path.parent.name}/{path.stem}", facts, plain["facts"], *marks, more=more)


def _details(details: Details) -> Plain:
    places = [[list(pointer), *_at(place)] for pointer, place in details.places.items()]
    return {"places": places, "joints": details.joints}


def details(plain: Plain) -> Details:
    """The details back again. Raises what `thawed` raises."""
    places = {tuple(pointer): Position(line, column) for pointer, line, column in plain["places"]}
    return Details(places, plain["joints"])


def finding(found: Finding) -> list[Any]:
    """What a rule says of a card, as data for JSON."""
    return [list(found.pointer), found.key, values.frozen(found.said), found.about, found.beside]


def as_finding(
    pointer: Sequence[str | int], key: bool, said: Any, about: Sequence[str], beside: Sequence[str]
) -> Finding:
    """Back again. Raises what `thawed` raises."""
    return Finding(tuple(pointer), _message(said), key, tuple(about), tuple(beside))


def _message(said: Any) -> Message:
    found = values.thawed(said)
    if not isinstance(found, Message):
        raise TypeError(f"{type(found).__name__} is no message")
    return found


def _at(position: Position) -> Iterable[int]:
    return position.line, position.column
