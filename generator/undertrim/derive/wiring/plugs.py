"""Where every contact of a plug is, seen from the wires and from the contacts."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from undertrim.record.model import Connector, Pin, Place

View: TypeAlias = Literal["wires", "contacts"]
State: TypeAlias = Literal["pin", "blank", "unknown"]
VIEWS: tuple[View, View] = ("wires", "contacts")

_ACROSS = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class Cell:
    """One position: row and column from the top left of its view, counted from 1.

    `number` is empty where it is not known which number the position has. `blank` was looked at and is empty,
    `unknown` was not recorded.
    """

    place: Place
    number: str
    state: State
    pin: Pin | None = None


@dataclass(frozen=True, slots=True)
class Face:
    """A plug from one side: its cells row by row, and the edge of its latch (or `none`, `unknown`) in that view."""

    view: View
    rows: int
    columns: int
    latch: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """Where the numbers of a plug are in the view it is recorded in.

    `lost` are pins and blanks whose place is not known, `outside` those whose place or number the plug does not have,
    `shared` those that stand at one place with another.
    """

    places: Mapping[str, Place]
    lost: tuple[str, ...] = ()
    outside: tuple[str, ...] = ()
    shared: tuple[str, ...] = ()

    @property
    def sound(self) -> bool:
        """Whether it can be drawn: some place is known and nothing contradicts."""
        return bool(self.places) and not self.outside and not self.shared


def layout(connector: Connector) -> Layout:
    """The place of each number of a plug; a pin's own `place` wins over the numbering. Nothing is guessed."""
    numbered, own = _numbered(connector), _own(connector)
    held = [*connector.pins, *(number for number in connector.blanks if number not in connector.pins)]
    kept = (item for item in numbered.items() if item[1] not in own.values() or item[0] in held)
    places = dict(kept) | own
    taken = Counter(places[number] for number in held if number in places)
    return Layout(
        places,
        lost=tuple(number for number in held if number not in places and not _beyond(connector, number)),
        outside=tuple(number for number in held if _beyond(connector, number)),
        shared=tuple(number for number in held if number in places and taken[places[number]] > 1),
    )


def faces(connector: Connector) -> tuple[Face, Face] | None:
    """A plug from its wires and from its contacts; None where no position is known or the positions contradict."""
    found = layout(connector)
    if not found.sound:
        return None
    recorded: View = "wires" if connector.view == "wires" else "contacts"
    face = Face(recorded, connector.rows, connector.columns, connector.latch, _cells(connector, found))
    pair = {face.view: face, _other(face.view): mirrored(face)}
    return pair["wires"], pair["contacts"]


def mirrored(face: Face) -> Face:
    """The same plug from its other side: column c becomes columns + 1 - c, what was left is right, top stays top."""
    turned = (replace(cell, place=opposite(cell.place, face.columns)) for cell in face.cells)
    cells = tuple(sorted(turned, key=lambda cell: (cell.place.row, cell.place.column)))
    return replace(face, view=_other(face.view), latch=_ACROSS.get(face.latch, face.latch), cells=cells)


def opposite(place: Place, columns: int) -> Place:
    """A place as seen from the other side of a plug of so many columns."""
    return Place(place.row, columns + 1 - place.column)


def _other(view: View) -> View:
    return "contacts" if view == "wires" else "wires"


def _cells(connector: Connector, found: Layout) -> tuple[Cell, ...]:
    at = {place: number for number, place in found.places.items()}
    grid = (Place(row, column) for row in range(1, connector.rows + 1) for column in range(1, connector.columns + 1))
    return tuple(_cell(connector, place, at.get(place, "")) for place in grid)


def _cell(connector: Connector, place: Place, number: str) -> Cell:
    if number in connector.pins:
        return Cell(place, number, "pin", connector.pins[number])
    return Cell(place, number, "blank" if number in connector.blanks else "unknown")


def _own(connector: Connector) -> dict[str, Place]:
    """Places that are recorded pin by pin, as far as the plug has them."""
    own = {pin.id: pin.place for pin in connector.pins.values() if pin.place}
    return {number: place for number, place in own.items() if _inside(connector, place)}


def _inside(connector: Connector, place: Place) -> bool:
    return place.row <= connector.rows and place.column <= connector.columns


def _beyond(connector: Connector, number: str) -> bool:
    """Whether the plug cannot have it: a place outside, or a number above all its positions."""
    place = connector.pins[number].place if number in connector.pins else None
    if place:
        return not _inside(connector, place)
    return connector.numbering != "unknown" and _count(number) > connector.rows * connector.columns


def _count(number: str) -> int:
    return int(number.lstrip("ABCD"))


def _numbered(connector: Connector) -> dict[str, Place]:
    """Every number of the plug by its numbering; nothing where that is unknown or its numbers bear several letters."""
    letters = {number.rstrip("0123456789") for number in (*connector.pins, *connector.blanks)}
    if connector.numbering == "unknown" or len(letters) > 1:
        return {}
    letter = next(iter(letters), "")
    return {f"{letter}{count}": _nth(connector, count) for count in range(1, connector.rows * connector.columns + 1)}


def _nth(connector: Connector, count: int) -> Place:
    """The place of the n-th number, counted along the numbering from its corner, then as seen from the top left."""
    if connector.numbering == "columns":
        column, row = divmod(count - 1, connector.rows)
    else:
        row, column = divmod(count - 1, connector.columns)
        if connector.numbering == "snake" and row % 2:
            column = connector.columns - 1 - column
    if connector.starts.startswith("bottom"):
        row = connector.rows - 1 - row
    if connector.starts.endswith("right"):
        column = connector.columns - 1 - column
    return Place(row + 1, column + 1)
