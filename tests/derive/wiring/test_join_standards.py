"""The joint against what the trade has outside this project: the usual use of the ISO 10487 blocks, and the usual colours of leads.

The use of the pins of blocks A and B is from secondary texts on ISO 10487-1:1992 (three that agree); the standard itself fixes dimensions.
The colours of leads are a convention of the trade, no source; antenna and turn-on blue, blue/white, brake, reverse and speed are from memory.
The letters are those of IEC 60757:2021, base first, then tracer.
"""

import pytest

from joining import car, gear, joined, leads, reasons, row
from undertrim.derive.wiring.row import State
from undertrim.record.colours import parse

BLOCK_A = {
    "A1": "speed",
    "A4": "battery-feed",
    "A5": "antenna-feed",
    "A6": "illumination",
    "A7": "switched-feed",
    "A8": "ground",
}
BLOCK_B = {
    "B1": "rear-right-plus",
    "B2": "rear-right-minus",
    "B3": "front-right-plus",
    "B4": "front-right-minus",
    "B5": "front-left-plus",
    "B6": "front-left-minus",
    "B7": "rear-left-plus",
    "B8": "rear-left-minus",
}
COLOURS = {
    "battery-feed": ("yellow", "YE"),
    "switched-feed": ("red", "RD"),
    "ground": ("black", "BK"),
    "illumination": ("orange/white", "OG/WH"),
    "antenna-feed": ("blue", "BU"),
    "speed": ("pink", "PK"),
    "front-left-plus": ("white", "WH"),
    "front-left-minus": ("white/black", "WH/BK"),
    "front-right-plus": ("grey", "GY"),
    "front-right-minus": ("grey/black", "GY/BK"),
    "rear-left-plus": ("green", "GN"),
    "rear-left-minus": ("green/black", "GN/BK"),
    "rear-right-plus": ("violet", "VT"),
    "rear-right-minus": ("violet/black", "VT/BK"),
}
MORE = {"speed": ", behaves: pulses", "illumination": ", behaves: dimmed-plus", "antenna-feed": ", draws: 150 mA"}
LIMIT = {"antenna-feed": ", limit: 300 mA"}
SOUND = "sound: {factory: {output: speaker}}\n"
LEADS = "\n".join(
    f"{name}: {{function: {name}, colour: {colour}{LIMIT.get(name, '')}}}" for name, (colour, _) in COLOURS.items()
)
HARNESS = {
    plug: {pin: {"function": name, "colour": COLOURS[name][0]} for pin, name in block.items()}
    for plug, block in {"power": BLOCK_A, "speakers": BLOCK_B}.items()
}


def plug(name: str, block: dict[str, str]) -> str:
    pins = "\n".join(
        f"      {pin}: {{function: {function}{MORE.get(function, '')}}}" for pin, function in block.items()
    )
    return f"  {name}:\n    name: Block\n    view: wires\n    rows: 2\n    columns: 4\n    pins:\n{pins}\n"


def blocks(power: dict[str, str]) -> str:
    return f"connectors:\n{plug('power', power)}{plug('speakers', BLOCK_B)}"


def standard_harness() -> str:
    return f"suits: [{{vehicle: a/b, opening: dash}}]\nplugs: {str(HARNESS).replace(chr(39), '')}"


def test_the_usual_leads_meet_the_usual_blocks() -> None:
    about = car("", blocks(BLOCK_A), SOUND)
    for between in ([], [gear("harness", standard_harness())]):
        joint = joined(about, LEADS, *between)
        assert {item.state for item in joint.rows} == {State.JOINED}
        met = {item.car[0].address: item.lead.id for item in joint.rows if item.lead}
        assert met == {f"power/{pin}": name for pin, name in BLOCK_A.items()} | {
            f"speakers/{pin}": name for pin, name in BLOCK_B.items()
        }


def test_odd_pins_of_block_b_are_plus_and_even_ones_minus() -> None:
    joint = joined(car("", blocks(BLOCK_A), SOUND), LEADS, gear("harness", standard_harness()))
    for item in joint.rows:
        pin = item.car[0].pin
        if pin.startswith("B"):
            assert item.function.endswith("plus" if int(pin[1]) % 2 else "minus")


def test_a4_and_a7_exchanged_are_caught_behind_a_standard_harness() -> None:
    """The known trap: permanent and switched feed are exchanged on a number of vehicles. By hand, by function, it is none."""
    exchanged = BLOCK_A | {"A4": "switched-feed", "A7": "battery-feed"}
    about = car("", blocks(exchanged), SOUND)
    joint = joined(about, LEADS, gear("harness", standard_harness()))
    assert [item.function for item in joint.rows if item.state is State.NEVER] == ["battery-feed", "switched-feed"]
    assert reasons(row(joint, "battery-feed")) == ["permanent-to-switched"]
    assert reasons(row(joint, "switched-feed")) == ["switched-to-permanent"]
    by_hand = joined(about, LEADS)
    assert {item.state for item in by_hand.rows} == {State.JOINED}
    assert row(by_hand, "battery-feed").car[0].address == "power/A7"


@pytest.mark.parametrize("function", COLOURS)
def test_the_usual_colours_in_the_letters_of_the_standard(function: str) -> None:
    colour, letters = COLOURS[function]
    assert parse(leads(LEADS).facts.leads[function].colour).iec == letters
    base = car(f"1: {{function: {function}, colour: {letters}{MORE.get(function, '')}}}", SOUND)
    lead = f"it: {{function: {function}, colour: {colour}{LIMIT.get(function, '')}}}"
    assert row(joined(base, lead), "it").state is State.JOINED
    assert len({letters for _, letters in COLOURS.values()}) == len(COLOURS)
