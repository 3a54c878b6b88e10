"""What was found in a file as plain data and back; the file's own name stays out of it, and what is to be said is kept unsaid."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import Any

from undertrim.check.allowing import Allow
from undertrim.check.findings import Card
from undertrim.check.one_file import Looked
from undertrim.record import build
from undertrim.record.model import VehicleFacts
from undertrim.record.problem import Level, Position, Problem
from undertrim.words import Message, values

Plain = dict[str, Any]


def frozen(found: Looked) -> Plain:
    """As data for JSON."""
    return {
        "problems": [[*_at(item.position), item.level, item.rule, values.frozen(item.said)] for item in found.problems],
        "allows": [[*_at(item.position), item.line, item.rule, item.reason] for item in found.allows],
        "complete": found.complete,
        "earlier": found.earlier,
        "card": _card(found.card) if found.card else None,
        "sections": dict(found.card.sections) if found.card else {},
    }


def thawed(plain: Plain, path: Path, shown: Path) -> Looked:
    """Back again, for the file at `path`, which problems call `shown`. Raises KeyError, TypeError, ValueError or AttributeError on other data."""
    return Looked(
        shown,
        path.stem,
        tuple(_problem(shown, *item) for item in plain["problems"]),
        replace(_as_card(plain["card"], path, shown), sections=plain["sections"]) if plain["card"] else None,
        tuple(Allow(Position(line, column), *rest) for line, column, *rest in plain["allows"]),
        plain["complete"],
        plain["earlier"],
    )


def _problem(shown: Path, line: int, column: int, level: str, rule: str, said: Any) -> Problem:
    found = values.thawed(said)
    if not isinstance(found, Message):
        raise TypeError(f"{type(found).__name__} is no message")
    return Problem(shown, Position(line, column), Level(level), rule, found)


def _card(card: Card) -> Plain:
    section = "vehicle" if isinstance(card.facts, VehicleFacts) else "gear"
    places = [[list(pointer), *_at(place)] for pointer, place in card.places.items()]
    return {"section": section, "facts": card.typed, "places": places, "joints": card.joints, "evidence": card.evidence}


def _as_card(plain: Plain, path: Path, shown: Path) -> Card:
    facts = build.section(plain["section"], plain["facts"])
    places = {tuple(pointer): Position(line, column) for pointer, line, column in plain["places"]}
    return Card(
        shown, f"{path.parent.name}/{path.stem}", facts, places, plain["facts"], plain["joints"], plain["evidence"]
    )


def _at(position: Position) -> Iterable[int]:
    return position.line, position.column
