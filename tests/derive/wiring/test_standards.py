"""The contacts of ISO 10487 blocks A and B as three independent texts agree on them; the standard was not seen."""

from undertrim.derive.wiring.standards import block, exchanged, expected, title, unproven
from undertrim.record import schema
from undertrim.record.model import Connector, Pin
from undertrim.words import say

BLOCK_B = {
    "rear-right": ("B1", "B2"),
    "front-right": ("B3", "B4"),
    "front-left": ("B5", "B6"),
    "rear-left": ("B7", "B8"),
}
BLOCK_A = {
    "A1": "speed",
    "A2": "mute",
    "A3": "",
    "A4": "battery-feed",
    "A5": "antenna-feed",
    "A6": "illumination",
    "A7": "switched-feed",
    "A8": "ground",
}


def power(metered: str = "no", **pins: str) -> Connector:
    made = {number: Pin(number, function, metered=metered) for number, function in pins.items()}  # type: ignore[arg-type]
    return Connector("power", "Power", "wires", 2, 4, made, standard="iso-10487-a")


def test_block_a() -> None:
    assert {pin: item.function for pin, item in block("iso-10487-a").items()} == BLOCK_A


def test_block_b() -> None:
    found = {pin: item.function for pin, item in block("iso-10487-b").items()}
    assert found == {
        pin: f"{where}-{sign}"
        for where, pair in BLOCK_B.items()
        for pin, sign in zip(pair, ("plus", "minus"), strict=True)
    }
    for pin, function in found.items():  # odd is plus, even is minus
        assert function.endswith("plus" if int(pin[1:]) % 2 else "minus")


def test_every_function_is_one_of_the_schema() -> None:
    known = schema.load("vehicle")["$defs"]["functionName"]["enum"]
    for standard in ("iso-10487-a", "iso-10487-b"):
        for item in block(standard).values():
            assert {item.function, *item.also} - {""} <= set(known)


def test_the_schema_offers_exactly_these_standards() -> None:
    offered = schema.load("vehicle")["$defs"]["connector"]["properties"]["standard"]["enum"]
    assert [say(title(name)) for name in offered] == ["ISO 10487 block A", "ISO 10487 block B"]
    assert title("") == ""


def test_expected_of_one_pin() -> None:
    front_left, ground = expected("iso-10487-b", "B5"), expected("iso-10487-a", "A8")
    assert front_left
    assert ground
    assert (front_left.function, ground.function) == ("front-left-plus", "ground")
    assert expected("iso-10487-a", "A9") is None
    assert expected("", "A1") is None


def test_what_is_known_to_be_there_too_is_allowed() -> None:
    block_a = block("iso-10487-a")
    assert block_a["A2"].allows("reverse")
    assert block_a["A5"].allows("amplifier-turn-on")
    assert block_a["A3"].allows("data-high")
    assert not block_a["A4"].allows("switched-feed")


def test_exchanged_feeds_are_found_by_either_pin() -> None:
    assert exchanged(power(A4="switched-feed", A7="battery-feed")) == ("A4", "A7")
    assert exchanged(power(A4="switched-feed")) == ("A4",)
    assert exchanged(power(A7="battery-feed")) == ("A7",)
    assert exchanged(power(A4="battery-feed", A7="switched-feed")) == ()
    assert exchanged(power(A4="ground")) == ()
    assert exchanged(Connector("x", "X", "wires", 2, 4, {"A4": Pin("A4", "switched-feed")})) == ()


def test_a_pin_unlike_the_standard_wants_a_meter() -> None:
    pins = {"A2": "reverse", "A4": "switched-feed", "A8": "ground", "A9": "mute"}
    assert unproven(power(**pins)) == ("A4",)
    assert unproven(power("yes", **pins)) == ()
