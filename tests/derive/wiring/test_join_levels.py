"""Sound in the joint: which level goes where, and what turns one into another."""

import pytest

from joining import AMPLIFIED, car, gear, interface, joined, only, reasons, row
from undertrim.derive.wiring.row import State
from undertrim.words import say

PAIR = """
5: {function: front-left-plus, colour: white}
12: {function: amplifier-turn-on, colour: blue/white, draws: 20 mA, when: {sound: amplified}}
"""
SPEAKER_LEAD = "speaker: {function: front-left-plus, colour: white}\n"
LINE_LEAD = "line: {function: front-left-plus, colour: white, level: line}\n"
TURN_ON = "turn-on: {function: amplifier-turn-on, colour: blue/white, limit: 200 mA}\n"


def test_speaker_level_never_goes_into_a_factory_amplifier() -> None:
    """The upper trim sends line level to an amplifier: speaker level is refused, line level and turn-on are joined."""
    about = car(PAIR, AMPLIFIED)
    refused = joined(about, SPEAKER_LEAD, sound="amplified")
    assert row(refused, "speaker").state is State.NEVER
    assert reasons(row(refused, "speaker")) == ["speaker-to-line"]
    assert row(refused, "radio-main/12").state is State.PIN_ALONE
    both = joined(about, SPEAKER_LEAD + LINE_LEAD + TURN_ON, sound="amplified")
    assert [(item.lead.id, item.state) for item in both.rows if item.lead] == [
        ("speaker", State.LEAD_ALONE),
        ("turn-on", State.JOINED),
        ("line", State.JOINED),
    ]
    assert tuple(map(say, both.notes)) == ("factory amplifier (Behind the seat): it is switched on by its own wire",)


def test_line_level_never_drives_a_speaker() -> None:
    about = car(PAIR, AMPLIFIED)
    assert reasons(row(joined(about, LINE_LEAD, sound="plain"), "line")) == ["line-to-speaker"]
    both = joined(about, SPEAKER_LEAD + LINE_LEAD, sound="plain")
    assert row(both, "speaker").state is State.JOINED
    assert row(both, "line").state is State.LEAD_ALONE


def test_a_converter_makes_the_level_right() -> None:
    about = car(PAIR, AMPLIFIED)
    converter = gear("converter", "takes: speaker\ngives: line", "Sluice")
    through = row(joined(about, SPEAKER_LEAD, converter, sound="amplified"), "speaker")
    assert through.state is State.JOINED
    assert "Pellworth Sluice turns its level into line level" in map(say, through.words)
    other_way = gear("converter", "takes: line\ngives: speaker", "Sluice")
    assert row(joined(about, SPEAKER_LEAD, other_way, sound="amplified"), "speaker").state is State.NEVER


@pytest.mark.parametrize(
    "sound", ["", "sound: {a: {output: unknown}}\n", "sound: {a: {output: line}, b: {output: speaker}}\n"]
)
def test_a_sound_level_that_is_not_known_is_metered(sound: str) -> None:
    item = only(car("5: {function: front-left-plus}", sound), "function: front-left-plus")
    assert (item.state, say(item.do)) == (State.UNKNOWN, "unknown: meter it first")
    assert "look for a factory amplifier" in say(item.words[0])


def test_a_digital_ring_needs_an_interface() -> None:
    about = car("5: {function: front-left-plus}", "sound: {a: {output: digital-ring}}\n")
    assert only(about, "function: front-left-plus").state is State.INTERFACE
    ring = interface("provides: [chime]\ngives: digital-ring")
    assert only(about, "function: front-left-plus", ring).state is State.JOINED


def test_one_lead_of_each_level_is_asked_about_while_the_level_is_unknown() -> None:
    wanted = SPEAKER_LEAD + LINE_LEAD + "more: {function: front-left-plus, level: line}\n"
    joint = joined(car("5: {colour: white, function: front-left-plus}"), wanted)
    assert {name: row(joint, name).state for name in ("speaker", "line", "more")} == {
        "speaker": State.UNKNOWN,
        "line": State.UNKNOWN,
        "more": State.LEAD_ALONE,
    }


def test_a_converter_is_named_only_where_it_is_needed_and_can_be_fed() -> None:
    about = car(PAIR, AMPLIFIED)
    converter = gear("converter", "takes: speaker\ngives: line", "Sluice")
    to_any = interface("provides: [chime]\ngives: line")
    for between in (converter, to_any):
        assert row(joined(about, LINE_LEAD, between, sound="amplified"), "line").words == ()
    ring = gear("converter", "takes: digital-ring\ngives: line", "Sluice")
    assert row(joined(about, SPEAKER_LEAD, ring, sound="amplified"), "speaker").state is State.NEVER


def test_level_counts_behind_an_interface_too() -> None:
    about = car("", AMPLIFIED, "functions: {front-left-plus: {by: data}}\n")
    box = interface("provides: [front-left-plus]")
    assert reasons(row(joined(about, SPEAKER_LEAD, box, sound="amplified"), "speaker")) == ["speaker-to-line"]
    assert row(joined(about, LINE_LEAD, box, sound="amplified"), "line").state is State.JOINED
