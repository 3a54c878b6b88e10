"""Positions of contacts in both views. The mirror is worked by hand from the plug: two rows of eight."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.derive.wiring.plugs import Face, faces, layout, mirrored, opposite
from undertrim.record.model import Connector, Pin, Place

PIN = "ground"
NUMBERINGS = ("rows", "columns", "snake")
CORNERS = ("top-left", "top-right", "bottom-left", "bottom-right")


def plug(
    rows: int = 2,
    columns: int = 8,
    pins: tuple[str, ...] = ("1",),
    own: dict[str, tuple[int, int]] | None = None,
    view: str = "wires",
    **more: object,
) -> Connector:
    made = {number: Pin(number, PIN) for number in pins}
    made |= {number: Pin(number, PIN, place=Place(*place)) for number, place in (own or {}).items()}
    return Connector("main", "Main", view, rows, columns, made, **more)  # type: ignore[arg-type]


def grid(face: Face) -> list[list[str]]:
    """The numbers as they are seen, row by row."""
    return [[cell.number for cell in face.cells if cell.place.row == row] for row in range(1, face.rows + 1)]


def both(connector: Connector) -> tuple[Face, Face]:
    found = faces(connector)
    assert found
    return found


# Worked by hand: a plug of two rows by three.
@pytest.mark.parametrize(
    ("numbering", "starts", "expected"),
    [
        ("rows", "top-left", ["123", "456"]),
        ("rows", "top-right", ["321", "654"]),
        ("rows", "bottom-left", ["456", "123"]),
        ("rows", "bottom-right", ["654", "321"]),
        ("columns", "top-left", ["135", "246"]),
        ("columns", "top-right", ["531", "642"]),
        ("columns", "bottom-left", ["246", "135"]),
        ("columns", "bottom-right", ["642", "531"]),
        ("snake", "top-left", ["123", "654"]),
        ("snake", "top-right", ["321", "456"]),
        ("snake", "bottom-left", ["654", "123"]),
        ("snake", "bottom-right", ["456", "321"]),
    ],
)
def test_numbers_run_as_recorded(numbering: str, starts: str, expected: list[str]) -> None:
    wires, contacts = both(plug(2, 3, numbering=numbering, starts=starts))
    assert grid(wires) == [list(row) for row in expected]
    assert grid(contacts) == [list(reversed(row)) for row in expected]


def test_a_snake_of_three_rows_comes_back_and_goes_again() -> None:
    assert grid(both(plug(3, 2, numbering="snake"))[0]) == [["1", "2"], ["4", "3"], ["5", "6"]]


def test_row_1_column_2_from_the_wires_is_row_1_column_7_from_the_contacts() -> None:
    assert opposite(Place(1, 2), 8) == Place(1, 7)
    assert opposite(opposite(Place(1, 2), 8), 8) == Place(1, 2)
    assert opposite(Place(2, 1), 1) == Place(2, 1)
    wires, contacts = both(plug(numbering="rows"))
    assert next(cell.place for cell in wires.cells if cell.number == "2") == Place(1, 2)
    assert next(cell.place for cell in contacts.cells if cell.number == "2") == Place(1, 7)


@pytest.mark.parametrize(
    ("latch", "from_the_other_side"),
    [
        ("top", "top"),
        ("bottom", "bottom"),
        ("left", "right"),
        ("right", "left"),
        ("none", "none"),
        ("unknown", "unknown"),
    ],
)
def test_a_latch_stays_on_top_and_changes_sides(latch: str, from_the_other_side: str) -> None:
    wires, contacts = both(plug(numbering="rows", latch=latch))
    assert (wires.latch, contacts.latch) == (latch, from_the_other_side)


def test_what_is_recorded_from_the_contacts_is_drawn_as_recorded_there() -> None:
    wires, contacts = both(plug(2, 3, view="contacts", numbering="rows", latch="left"))
    assert (wires.view, contacts.view) == ("wires", "contacts")
    assert grid(contacts) == [["1", "2", "3"], ["4", "5", "6"]]
    assert grid(wires) == [["3", "2", "1"], ["6", "5", "4"]]
    assert (contacts.latch, wires.latch) == ("left", "right")


plugs = st.builds(
    plug,
    st.integers(1, 8),
    st.integers(1, 40),
    view=st.sampled_from(("wires", "contacts")),
    numbering=st.sampled_from(NUMBERINGS),
    starts=st.sampled_from(CORNERS),
    latch=st.sampled_from(("top", "bottom", "left", "right", "none", "unknown")),
)


@given(plugs)
def test_mirrored_twice_is_the_plug_itself(connector: Connector) -> None:
    for face in both(connector):
        assert mirrored(mirrored(face)) == face
        assert mirrored(face) != face


@given(plugs)
def test_every_position_has_one_number_and_one_place(connector: Connector) -> None:
    size = connector.rows * connector.columns
    for face in both(connector):
        assert sorted(int(cell.number) for cell in face.cells) == list(range(1, size + 1))
        assert len({cell.place for cell in face.cells}) == size
        assert [(cell.place.row, cell.place.column) for cell in face.cells] == [
            (row, column) for row in range(1, face.rows + 1) for column in range(1, face.columns + 1)
        ]


@given(plugs)
def test_pin_1_is_in_its_corner_and_pin_2_beside_it(connector: Connector) -> None:
    places = layout(connector).places
    top, left = connector.starts.split("-")
    assert places["1"].row == (1 if top == "top" else connector.rows)
    assert places["1"].column == (1 if left == "left" else connector.columns)
    if connector.rows > 1 and connector.columns > 1:
        along = places["2"].row == places["1"].row
        assert along == (connector.numbering != "columns")


def states(face: Face) -> str:
    return "".join(cell.state[0] for cell in face.cells)


def test_a_position_is_a_pin_or_blank_or_not_recorded() -> None:
    wires, contacts = both(plug(1, 4, ("2",), numbering="rows", blanks=("3",)))
    assert states(wires) == "upbu"
    assert states(contacts) == "ubpu"


def test_letters_belong_to_the_numbers() -> None:
    wires, _ = both(plug(2, 4, ("A1", "A8"), numbering="rows"))
    assert grid(wires) == [["A1", "A2", "A3", "A4"], ["A5", "A6", "A7", "A8"]]
    assert states(wires) == "puuuuuup"


def test_without_numbering_nothing_is_guessed() -> None:
    for connector in (plug(), plug(pins=("A1", "A8"), rows=2, columns=4, standard="iso-10487-a")):
        assert faces(connector) is None
        assert layout(connector).lost == tuple(connector.pins)


def test_two_letters_in_one_housing_have_no_common_numbering() -> None:
    assert faces(plug(4, 4, ("A8", "B8"), numbering="rows")) is None


def test_a_recorded_place_stands_without_any_numbering() -> None:
    connector = plug(2, 3, ("5",), {"1": (2, 3)})
    wires, contacts = both(connector)
    assert grid(wires) == [["", "", ""], ["", "", "1"]]
    assert grid(contacts) == [["", "", ""], ["1", "", ""]]
    assert states(wires) == "uuuuup"
    assert layout(connector).lost == ("5",)


def test_a_recorded_place_wins_over_the_numbering() -> None:
    wires, _ = both(plug(1, 3, (), {"1": (1, 3)}, numbering="rows"))
    assert grid(wires) == [["", "2", "1"]]
    assert "3" not in layout(plug(1, 3, (), {"1": (1, 3)}, numbering="rows")).places
    swapped, _ = both(plug(1, 3, (), {"1": (1, 3), "3": (1, 1)}, numbering="rows"))
    assert grid(swapped) == [["3", "2", "1"]]


def test_what_contradicts_is_told_and_not_drawn() -> None:
    taken = plug(1, 3, ("3",), {"1": (1, 3)}, numbering="rows")
    assert layout(taken).shared == ("3", "1")
    assert faces(taken) is None
    blank = plug(1, 3, (), {"1": (1, 3)}, numbering="rows", blanks=("3",))
    assert layout(blank).shared == ("1", "3")
    outside = plug(1, 3, ("4",), {"1": (2, 1), "2": (1, 4)}, numbering="rows")
    assert layout(outside).outside == ("4", "1", "2")
    assert faces(outside) is None
