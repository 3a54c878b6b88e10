"""Names and texts by which a plug is known to be no ordinary one, and those that only look like it."""

import pytest
from fragments import messages

from undertrim.check.rules import plug_without_circuit

PART = "parts:\n  seat: {{name: Seat, release: lift, tethers: {{{id}: {{name: {name}, kind: plug{more}}}}}}}\n"


def found(name: str = "Plug", tether: str = "lead", more: str = "") -> list[str]:
    return messages(plug_without_circuit, PART.format(id=tether, name=name, more=more))


@pytest.mark.parametrize(
    "name",
    [
        "Airbag plug", "Side air-bag plug", "SRS connector", "Curtain plug", "Belt buckle plug", "Seat-belt plug", "Pretensioner plug",
        "Pre-tensioner plug", "Belt tensioner", "Occupancy sensor plug", "Seat mat", "Side impact sensor plug", "Passenger detection plug",
        "Yellow plug", "Rollover sensor", "Knee bag plug", "Weight sensor",
    ],
)  # fmt: skip
def test_restraint(name: str) -> None:
    assert ["restraint wiring" in message for message in found(name)] == [True]


@pytest.mark.parametrize(
    "name",
    ["High-voltage plug", "Orange cable", "Orange connector", "HV interlock", "Service plug", "Traction battery lead"],
)
def test_high_voltage(name: str) -> None:
    assert ["high voltage" in message for message in found(name)] == [True]


@pytest.mark.parametrize("name", ["48 V starter", "48V cable", "Belt starter plug", "Starter-generator plug"])
def test_forty_eight_volt(name: str) -> None:
    assert ["48 V net" in message for message in found(name)] == [True]


def test_an_id_and_a_text_tell_it_too() -> None:
    assert len(found(tether="side-airbag")) == 1
    assert len(found(more=", how: Slide the lock of the airbag plug and pull.")) == 1
    assert len(found(more=", test: See that the belt tensioner is joined.")) == 1


@pytest.mark.parametrize(
    "name",
    [
        "Window switch plug",
        "Seat heater plug",
        "Hazard switch plug",
        "Baggage lamp",
        "Speaker plug",
        "Orange juice holder lamp",
    ],
)
def test_ordinary(name: str) -> None:
    assert found(name) == []


def test_what_is_only_beside_it_is_not_it() -> None:
    assert found(more=", how: Do not touch the airbag plug beside it.") == []


def test_a_circuit_settles_it_unless_the_words_leave_no_doubt() -> None:
    assert found("Belt lamp plug", more=", circuit: ordinary") == []
    assert found("Airbag plug", more=", circuit: restraint, then: leave") == []
    assert len(found("Airbag plug", more=", circuit: ordinary")) == 1
