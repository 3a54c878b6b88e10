"""Phrases that give a side, and names of things that do not."""

import pytest
from fragments import messages

from undertrim.check.rules import side_word


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("Begin on the driver side.", "driver side"),
        ("Begin on the Driver's side.", "Driver's side"),
        ("On the drivers' side, lift.", "drivers' side"),
        ("On the co-driver side.", "driver side"),
        ("The passenger-side panel", "passenger-side"),
        ("Both passenger sides", "passenger sides"),
        ("The passenger-side airbag plug", "passenger-side"),
        ("driver side door", "driver side"),
        ("The nearside lamp", "nearside"),
        ("Off-side only", "Off-side"),
        ("N/S front", "N/S"),
        ("The o/sf door", "o/sf"),
        ("Towards the kerb side", "kerb side"),
        ("Curbside", "Curbside"),
        ("At the side of the passenger", "side of the passenger"),
    ],
)
def test_phrases_that_give_a_side(text: str, phrase: str) -> None:
    piece = f'parts:\n  lid: {{name: Lid, release: lift, how: "{text}"}}\n'
    assert messages(side_word, piece) == [f"'{phrase}' does not say left or right"]


@pytest.mark.parametrize(
    "text",
    [
        "Driver airbag in the steering wheel",
        "Passenger airbag lamp plug",
        "Driver side airbag plug",
        "Passenger side air bag",
        "Passenger side impact sensor",
        "Driver seat, left side",
        "The left side of the driver's seat",
        "At the side of the driver seat",
        "Slide it off sideways",
        "Lift it off side by side",
        "See the near side-rail",
        "Use a screwdriver, sideways",
        "Inside, outside, beside, upside",
        "in/service",
    ],
)
def test_names_of_things_and_other_words(text: str) -> None:
    assert messages(side_word, f'parts:\n  lid: {{name: Lid, release: lift, how: "{text}"}}\n') == []


def test_an_id_is_reported_where_it_is_given_and_not_where_it_is_used() -> None:
    piece = (
        "variants:\n  nearside-box:\n    ask: Where?\n    choices:\n"
        "      driver-side: {label: Left, tell: A flap}\n      other: {label: Right, tell: No flap}\n"
        "parts:\n"
        "  offside-lid: {name: Lid, release: lift, when: {nearside-box: driver-side}}\n"
        "  box: {name: Box, release: lift, after: [offside-lid],"
        " held_by: [{screw: T20, under: offside-lid}]}\n"
    )
    said = [f"'{phrase}' does not say left or right" for phrase in ("offside", "nearside", "driver-side")]
    assert messages(side_word, piece) == said  # parts stand before variants in the record this makes


def test_every_phrase_of_a_text_is_quoted_once() -> None:
    how = "Driver side first, then passenger side, then the Driver side."
    piece = f"parts:\n  lid: {{name: Lid, release: lift, how: '{how}'}}\n"
    assert len(messages(side_word, piece)) == 2
