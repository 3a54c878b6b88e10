"""What a room of the page says of its gear stands in the register too. The type checker asks for the room of an opening, and cannot for these."""

from importlib import import_module
from pkgutil import iter_modules
from typing import Any

import pytest

from undertrim.publish.facts import kinds

ROOMS = [import_module(f"{kinds.__name__}.{found.name}") for found in iter_modules(kinds.__path__)]


@pytest.mark.parametrize("room", ROOMS, ids=lambda room: room.__name__.rpartition(".")[2])
@pytest.mark.parametrize("name", ["CARDS", "SIZES"])
def test_what_a_room_says_of_gear_is_entered(room: Any, name: str) -> None:
    assert getattr(room, name).items() <= getattr(kinds, name).items()


def test_there_are_rooms() -> None:
    assert {"receiver", "speaker"} <= {room.__name__.rpartition(".")[2] for room in ROOMS}
