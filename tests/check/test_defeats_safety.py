"""Texts that tell how to defeat a safety device, those that forbid it, and those that only name one."""

from pathlib import Path

import pytest
from fragments import findings, messages
from rule_pages import BASE

from undertrim.check import runner
from undertrim.check.defeats import defeats, find
from undertrim.check.rules import defeats_safety, memory_keeper
from undertrim.record.source import read_text
from undertrim.record.store import entry
from undertrim.words.catalogue import english

BRAKE, BAG, CAMERA, BELT, VIDEO = "interlock", "restraint", "camera", "belt-reminder", "moving-pictures"


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("Bypass the parking brake.", BRAKE),
        ("Bypassing the handbrake wire is quick.", BRAKE),
        ("With parking-brake bypass.", BRAKE),
        ("Defeat the lockout.", BRAKE),
        ("Override the motion lock.", BRAKE),
        ("Trick the parking brake input.", BRAKE),
        ("Ground the parking brake wire.", BRAKE),
        ("Ground the\nparking brake wire.", BRAKE),
        ("Earth the hand brake lead permanently.", BRAKE),
        ("Connect the light green parking brake wire to chassis.", BRAKE),
        ("Run the parking brake wire straight to bare metal.", BRAKE),
        ("Loop the brake lead to ground.", BRAKE),
        ("Parking brake lead to ground.", BRAKE),
        ("The parking brake wire can be grounded.", BRAKE),
        ("Use a relay to join the parking brake lead to ground.", BRAKE),
        ("Put a toggle switch between the parking brake lead and ground.", BRAKE),
        ("Join the parking brake lead to the amplifier turn-on.", BRAKE),
        ("This is the handbrake wire. Ground it.", BRAKE),
        ("Parking brake: none, ground the lead.", BRAKE),
        ("There is no switch, so ground the parking brake lead.", BRAKE),
        ("Don’t forget to ground the parking brake wire.", BRAKE),
        ("Do not use the switch, just ground the brake wire.", BRAKE),
        ("If the menu stays grey, ground the brake wire.", BRAKE),
        ("Never pull the plug. Bypass the parking brake.", BRAKE),
        ("This kit allows video in motion.", VIDEO),
        ("Films can be watched while driving.", VIDEO),
        ("Fit a resistor in place of the airbag.", BAG),
        ("Bridge the two contacts of the airbag plug.", BAG),
        ("Short the SRS plug.", BAG),
        ("Pull the airbag fuse so that the lamp stays off.", BAG),
        ("Tape over the airbag warning lamp.", BAG),
        ("Check the yellow plug with a test lamp.", BAG),
        ("Measure the airbag plug.", BAG),
        ("Leave the seat belt plug disconnected.", BAG),
        ("Disable the reversing camera.", CAMERA),
        ("Blank the camera display.", CAMERA),
        ("Turn the camera off.", CAMERA),
        ("Silence the seat-belt chime.", BELT),
        ("The belt chime can be silenced.", BELT),
        ("Clip a dummy buckle into the lock.", BELT),
    ],
)
def test_told(text: str, what: str) -> None:
    assert [told.defeat.what for told in find(text)] == [what]


@pytest.mark.parametrize(
    "text",
    [
        "Do not bypass the parking brake.",
        "Never ground the parking brake wire.",
        "The parking brake wire must never be grounded.",
        "Grounding the parking brake wire is forbidden.",
        "It is illegal to bypass the parking brake.",
        "Remove the radio without bypassing the parking brake.",
        "Nobody may defeat the interlock.",
        "The switch at the parking brake lever closes to ground.",
        "Not in the radio plug: a switch to ground at the brake lever.",
        "Join the parking brake lead to the switch, which closes to ground.",
        "The parking brake wire is grounded when the brake is set.",
        "Join the ground lead to bare metal, the parking brake lead to the switch.",
        "Bypass the factory amplifier and join the parking brake lead to the switch.",
        "Set the parking brake. Ground the amplifier.",
        "Override the shift interlock with the small lever.",
        "Set the parking brake and chock a wheel.",
        "Video stops while driving.",
        "No video in motion.",
        "The receiver locks video while driving.",
        "Unplug the passenger airbag lamp plug.",
        "Leave the airbag plug joined and lay the trim on the dash.",
        "Take out the short screws beside the airbag plug.",
        "No test lamp and no meter on airbag wiring.",
        "Leave the airbag plug joined. Meter the speaker leads.",
        "Read and note the stored restraint faults.",
        "Remove the airbag fuse and wait.",
        "Never put a resistor in place of an airbag.",
        "The picture of the reversing camera must be kept.",
        "Switch off the ignition before you unplug the camera.",
        "A blank plug above the rear number plate, no camera.",
        "The radio sounds the chimes for belt, lamps and key.",
        "Switch off the ignition and listen for the belt chime.",
    ],
)
def test_forbidden_or_only_named(text: str) -> None:
    assert list(find(text)) == []


@pytest.mark.parametrize(
    ("place", "text", "count"),
    [
        ("functions:\n  parking-brake: {{by: wire, note: {}}}\n", "Just ground it.", 1),
        ("functions:\n  speed: {{by: wire, note: {}}}\n", "Just ground it.", 0),
        ("functions:\n  parking-brake: {{by: wire, note: {}}}\n", "Never ground it.", 0),
        (
            "connectors:\n  main:\n    name: Main plug\n    view: wires\n    rows: 2\n    columns: 4\n"
            "    pins:\n      2: {{function: parking-brake, note: {}}}\n",
            "Join it to ground.",
            1,
        ),
        (
            "connectors:\n  main:\n    name: Main plug\n    view: wires\n    rows: 2\n    columns: 4\n"
            "    pins:\n      2: {{function: mute, note: {}}}\n",
            "Join it to ground.",
            0,
        ),
        (
            "parts:\n  trim:\n    name: Trim\n    release: pull\n    tethers:\n"
            "      lamp: {{name: Lamp plug, kind: plug, circuit: restraint, then: leave, how: {}}}\n",
            "Short it.",
            1,
        ),
        (
            "parts:\n  trim:\n    name: Trim\n    release: pull\n    tethers:\n      lamp: {{name: Lamp plug, kind: plug, how: {}}}\n",
            "Short it.",
            0,
        ),
    ],
)
def test_what_a_text_stands_at_is_what_it_is_about(place: str, text: str, count: int) -> None:
    assert len(findings(defeats_safety, place.format(text))) == count


def test_every_device_and_way_out_has_its_words_and_no_words_are_left() -> None:
    assert {name for defeat in defeats() for name in (defeat.what, defeat.hint)} == set(english("defeats"))


def test_it_cannot_be_allowed() -> None:
    text = BASE.replace("takes: 3 min", "how: Bypass the parking brake.    # allow defeats-safety: the owner wants it")
    source = read_text(text, Path("records/vehicles/brindleway/otter-2014-2018.yaml"))
    said = [problem.rule for problem in runner.check_entry(entry(source.path, "vehicle", source))]
    assert sorted(said) == ["allow", "defeats-safety"]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("Plug in a memory keeper.", 1),
        ("Use a memory-saver at the socket.", 1),
        ("Connect a 9 V memory supply.", 1),
        ("Never use a memory keeper.", 0),
        ("No memory keeper here.", 0),
        ("The maker forbids a memory keeper.", 0),
        ("Set the clock from memory.", 0),
    ],
)
def test_memory_keepers(text: str, count: int) -> None:
    piece = "restraint: {{wait: 2 min, memory_keeper: {}}}\nduties:\n  clock: {{kept_by: stays, note: {}}}\n"
    assert len(messages(memory_keeper, piece.format("forbidden", text))) == count
    assert messages(memory_keeper, piece.format("allowed", text)) == []
    assert messages(memory_keeper, piece.format("unknown", text)) == []
