"""Which sizes in a text contradict the fields, sentence by sentence."""

import pytest
from rule_pages import Example, compose, load, say

from undertrim.check import mentions
from undertrim.check.findings import Subject
from undertrim.check.rules import size_in_text
from undertrim.record.model import VehicleRecord

PART = """
parts:
  bezel:
    name: Radio bezel
    release: slide
    held_by: [{held}]
    how: >-
      {text}
"""
OPENING = """
openings:
  door:
    name: Door speakers
    kind: speaker
    behind: [radio]
    nominal: 6.5 in
    hole: {{shape: round, diameter: 146 mm}}
    depth: {{clear: 64 mm, datum: skin, over: whole-travel}}
    factory_spacer: 19 mm
    install_how: >-
      {text}
"""
HEX_8 = "{screw: hex 8 mm, count: 4}"
T20 = "{screw: T20, count: 4}"


def said(piece: str) -> list[str]:
    example = Example({"brindleway/otter-2014-2018.yaml": compose(piece)}, ())
    return [text for _, _, text in say(example, size_in_text)]


@pytest.mark.parametrize(
    ("held", "text", "size"),
    [
        (HEX_8, "Take out the four 7 mm screws.", "7 mm"),
        (HEX_8, "Take out the screws with a 7mm socket.", "7mm"),
        (HEX_8, "Take out the screws (7 mm) first.", "7 mm"),
        (HEX_8, "Use a 10-mm spanner on the upper nut.", "10-mm"),
        (HEX_8, "Screws of 7 mm hold it.", "7 mm"),
        (HEX_8, "The hex 7 mm ones come out first.", "hex 7 mm"),
        (HEX_8, "Undo the 7/32 in (5.5 mm) screws.", "7/32 in"),
        (HEX_8, "Undo them with a 9/32 in socket.", "9/32 in"),
        (T20, "Take out the T25 screws.", "T25"),
        (T20, "Take out the T-25 screws.", "T-25"),
        (T20, "Take out the T 25 screws.", "T 25"),
        (T20, "Use a PH2 screwdriver.", "PH2"),
        (T20, "Turn the screws with an E10 socket.", "E10"),
        (T20, "Take out the four 7 mm screws.", "7 mm"),
        ("{screw: T20, count: 4, length: 16 mm}", "The 25 mm long screws go at the top.", "25 mm"),
        ("{bolt: hex 10 mm, count: 2, thread: M6}", "Undo the M8 bolts.", "M8"),
        ("{bolt: hex 10 mm, count: 2, thread: M6x1}", "Undo the M8x1.25 bolts.", "M8x1.25"),
        ("{bolt: T50, count: 2, torque: 45 N.m}", "Tighten to 40 Nm.", "40 Nm"),
        ("{bolt: T50, count: 2, torque: 45 N.m}", "Tighten to 40 N m.", "40 N m"),
        ("{screw: hex 8 mm, count: 2, length: 16 mm}", "The 8 mm long screws go at the top.", "8 mm"),
        ("{screw: hex 14 mm, count: 2}", "Turn both with a 9/16 in socket.", "9/16 in"),
        ("{screw: hex 8 mm, count: 2}", "Turn both with a 4 mm hex key.", "4 mm"),
        ("{screw: hex 5 mm, count: 2}", "Turn both with a 5.5 mm socket.", "5.5 mm"),
    ],
)
def test_a_contradiction_is_named(held: str, text: str, size: str) -> None:
    messages = said(PART.format(held=held, text=text))
    assert len(messages) == 1
    assert messages[0].startswith(f"error: the text says '{size}', the fields beside it '")


@pytest.mark.parametrize(
    ("held", "text"),
    [
        (HEX_8, "Take out the four 8 mm screws with an 8 mm socket."),
        (HEX_8, "Take out the screws with a 5/16 in (8 mm) socket."),
        (HEX_8, "Slide it 20 mm rearward off the screws."),
        (HEX_8, "Take out the screws and draw the bezel 20 mm out."),
        (HEX_8, "Past the screw, 7 mm behind the edge, is a tab."),
        (HEX_8, "Leave a gap of 3 mm. Work for 5 seconds at 12 V and 30 A, 2 min a side."),
        (HEX_8, "Drill no hole with a 7 mm drill bit."),
        (HEX_8, "Move it a bit 7 mm lower."),
        (HEX_8, "Mark the bolt 7 mm below the edge. Turn the nut 7 mm rearward."),
        (T20, "The 25 mm long screws go at the top."),
        ("{screw: hex 10 mm, count: 4}", "Take out the 3/8 in (10 mm) screws."),
        (HEX_8, "Put all 4 in the tray. Put 2 in, then the other 2 in."),
        (HEX_8, 'Press the key marked "4" and turn the screws.'),
        (HEX_8, "It came in 2014-03 as version 3.2."),
        (T20, "Take out the T20 screws with a T 20 bit."),
        (T20, "Unplug plug T10 and the T10 bulb. E10 fuel. Pin A4, pin T16."),
        (T20, "Take out the screws, 25 mm long."),
        ("{screw: T20, count: 4, length: 16 mm}", "The 16 mm long screws go at the top, 16.2 mm screws fit."),
        ("{screw: T30 pin, count: 4}", "Use a T30 bit."),
        ("{screw: hex 7/32 in, count: 4}", "Undo the 7/32 in (5.5 mm) screws with a 5.5 mm socket."),
        ("{screw: hex 5/16 in, count: 4}", "Undo the screws with an 8 mm socket."),
        ("{screw: hex key 4 mm, count: 4}", "Undo the screws with a 4 mm hex key."),
        ("{bolt: hex 10 mm, count: 2, thread: M6x1}", "Undo the M6 bolts, then those of plug M8."),
        ("{bolt: T50, count: 2, torque: 110 N.m}", "Tighten to 110 N.m (81 lb-ft)."),
        ("{bolt: T50, count: 2, torque: unknown}", "Tighten to 40 N.m."),
        (
            "{clip: push, count: 2}",
            "Turn the release with a 5 mm socket. Take out the T25 screw of the lamp.",
        ),
        (
            "{screw: T20, count: 2}, {bolt: T50, count: 1, leave: yes}",
            "Take out the T20 screws, not the T50 one.",
        ),
    ],
)
def test_what_only_looks_like_one_passes(held: str, text: str) -> None:
    assert said(PART.format(held=held, text=text)) == []


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("The glass comes as close as 46 mm.", "46 mm"),
        ("It is 62 mm deep.", "62 mm"),
        ("Keep the bracket of 3/4 in (19.05 mm). Behind it are 71 mm of room.", "71 mm"),
        ("The hole is 152 x 221 mm.", "152 x 221 mm"),
        ("It is 2 in deep.", "2 in"),
        ("A 5.25 in speaker fits.", "5.25 in"),
    ],
)
def test_a_strange_length_in_an_opening(text: str, size: str) -> None:
    assert [message[: len(size) + 24] for message in said(OPENING.format(text=text))] == [
        f"error: the text says '{size}',"[: len(size) + 24]
    ]


@pytest.mark.parametrize(
    "text",
    [
        "A 6.5 in speaker up to 60 mm deep, at least 140 mm wide.",
        "It is 64 mm (2.52 in) deep behind the 19 mm bracket.",
        "Screw it down with 12 mm screws. Leave 200 mm of cable.",
        "Lay 10 mm foam tape round the rim. Slide it 5 mm forward.",
        "Use 4 ohm speakers of 50 W.",
        'Press the key marked "4" and the one marked “5”.',
    ],
)
def test_what_an_opening_may_say(text: str) -> None:
    assert said(OPENING.format(text=text)) == []


def test_nothing_is_said_of_a_part_in_which_a_value_was_refused() -> None:
    text = compose(PART.format(held="{screw: T2O, count: 2}, {screw: T30, count: 1}", text="Take out the T20 screws."))
    entry = load("brindleway/otter-2014-2018.yaml", text)
    assert isinstance(entry.record, VehicleRecord)
    assert list(size_in_text.check(Subject(entry, entry.record))) == []


def test_a_contradiction_is_found_in_every_text_of_the_part() -> None:
    piece = """
parts:
  bezel:
    name: Bezel on T25 screws
    release: slide
    held_by: [{screw: T20, count: 1, note: A T25 one.}]
    tethers: {main: {name: Plug, kind: plug, how: Take out its T25 screw., test: Turn the T25 one.}}
    seal: Under T25
    how: T25
    refit_how: T25
    cautions: [{signal: NOTICE, hazard: A T25 screw., consequence: A T25 falls., avoid: Hold the T25.}]
preps:
  lever:
    name: Lever
    sets: {gear: neutral}
    held_by: [{screw: T20, count: 1}]
    how: T25
    restore: T25
"""
    assert len(said(piece)) == 12


def test_places_and_words_of_mentions() -> None:
    text = "Two T20 screws, M6 x 16 mm and 182 x 53 mm."
    found = mentions.find(text)
    assert [mention.text for mention in found] == ["T20", "M6", "16 mm", "182 x 53 mm"]
    assert [text[mention.start : mention.end] for mention in found] == [mention.text for mention in found]
    assert [quantity.value for quantity in found[3].quantities] == [182, 53]
