"""The records around those that were asked for, without which nothing true can be said of them beside the others."""

from collections.abc import Collection, Iterator, Sequence
from pathlib import Path

from undertrim.check.findings import Card
from undertrim.record.gear import GearFacts
from undertrim.record.store import SUFFIXES, Workspace

_MEETS_CARS = ("interfaces", "receivers")
"""Gear that rules for the collection hold against every vehicle."""


def around(workspace: Workspace, chosen: Collection[Path], cards: Sequence[Card]) -> list[Path]:
    """The other files of the same folders, the vehicles that chosen gear suits, and for chosen vehicles the gear they are held against."""
    folders = {path.parent for path in chosen}
    if any(workspace.kind(path) == "vehicle" for path in chosen):
        folders |= {workspace.records / "gear" / name for name in _MEETS_CARS}
    found = workspace.files([*folders, *_suited(workspace, cards)]) if folders else []
    return [path for path in found if path not in set(chosen)]


def _suited(workspace: Workspace, cards: Sequence[Card]) -> Iterator[Path]:
    """The files of the vehicles that gear is made for, as far as they exist."""
    addresses = {place.vehicle for card in cards if isinstance(card.facts, GearFacts) for place in card.facts.suits}
    for address in sorted(addresses):
        named = (workspace.records / "vehicles" / f"{address}{suffix}" for suffix in SUFFIXES)
        yield from (path for path in named if path.is_file())
