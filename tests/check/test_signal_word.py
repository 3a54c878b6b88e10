"""Signal words against consequences, with the meanings of ANSI Z535.6 (secondary text)."""

import pytest
from fragments import messages

from undertrim.check.rules import signal_word, signal_word_overstated
from undertrim.check.severity import Severity, judge
from undertrim.resources import table

PIECE = """parts:
  lid:
    name: Lid
    release: lift
    cautions:
      - {{signal: {}, hazard: One thing., consequence: "{}", avoid: Another.}}
"""
SERIOUS = [
    "It can kill.",
    "Touching it kills.",
    "People can die.",
    "Death.",
    "A fatal shock.",
    "It may maim.",
    "It can crush your hand.",
    "Crushed fingers.",
    "You go blind.",
    "It blinds you.",
    "Serious injury.",
    "It moves off and can kill or injure people.",
]
INJURY = [
    "Cut hands.",
    "Cut fingers and torn cables.",
    "Burns and molten metal.",
    "Burns.",
    "Eye injury.",
    "Bruises.",
    "It pinches fingers.",
    "It hits you in the face.",
    "The spring strikes somebody.",
    "Hurt hands and chafed wires.",
]
PROPERTY = [
    "It breaks.",
    "The trim cracks.",
    "A lever scratches the dash.",
    "It blows a fuse.",
    "The cable tears.",
    "Cut wires rattle.",
    "The fuse burns out.",
    "Turned by hand it breaks.",
    "It damages the radio and the battery dies.",
    "A short kills the receiver and drains the battery.",
    "Crushed clips break.",
    "Nobody is hurt, but the trim breaks.",
    "The roller blind tears.",
]
UNSAID = [
    "A bag could fire while you work beside it.",
    "A torn seal can keep the airbag from firing.",
    "It locks the battery in.",
]
LEVELS = {Severity.SERIOUS: SERIOUS, Severity.INJURY: INJURY, Severity.PROPERTY: PROPERTY, Severity.UNSAID: UNSAID}


@pytest.mark.parametrize(("level", "text"), [(level, text) for level, texts in LEVELS.items() for text in texts])
def test_how_bad_it_is(level: Severity, text: str) -> None:
    assert judge(text)[0] is level


@pytest.mark.parametrize(
    ("signal", "text", "weak", "loud"),
    [
        ("NOTICE", "It can kill.", 1, 0),
        ("CAUTION", "It can kill.", 1, 0),
        ("WARNING", "It can kill.", 0, 0),
        ("DANGER", "It kills.", 0, 0),
        ("NOTICE", "Cut hands.", 1, 0),
        ("CAUTION", "Cut hands.", 0, 0),
        ("WARNING", "Cut hands.", 0, 0),
        ("DANGER", "Cut hands.", 0, 1),
        ("NOTICE", "It breaks.", 0, 0),
        ("CAUTION", "It breaks.", 0, 1),
        ("WARNING", "It breaks.", 0, 1),
        ("DANGER", "It breaks.", 0, 1),
        ("NOTICE", "It locks the battery in.", 0, 0),
        ("WARNING", "It locks the battery in.", 0, 0),
    ],
)
def test_the_word_against_the_consequence(signal: str, text: str, weak: int, loud: int) -> None:
    piece = PIECE.format(signal, text)
    assert len(messages(signal_word, piece)) == weak
    assert len(messages(signal_word_overstated, piece)) == loud


@pytest.mark.parametrize("name", table("cautions")["caution"])
def test_the_usual_cautions_keep_to_it(name: str) -> None:
    entry = {"hazard": "Beside this work: what is named.", **table("cautions")["caution"][name]}
    texts = "hazard: {hazard}\n        consequence: {consequence}\n        avoid: {avoid}".format(
        **{key: f"'{entry[key].replace(chr(39), chr(39) * 2)}'" for key in ("hazard", "consequence", "avoid")}
    )
    piece = f"parts:\n  lid:\n    name: Lid\n    release: lift\n    cautions:\n      - signal: {entry['signal']}\n        {texts}\n"
    assert messages(signal_word, piece) == []
    assert messages(signal_word_overstated, piece) == []


@pytest.mark.parametrize("section", ["preps", "parts", "openings"])
def test_cautions_of_everything_are_read(section: str) -> None:
    caution = "{signal: NOTICE, hazard: One., consequence: It kills., avoid: Two.}"
    things = {
        "preps": "  x: {name: X, sets: {gear: neutral}, how: Do.,",
        "parts": "  x: {name: X, release: lift,",
        "openings": "  x: {name: X, kind: speaker, behind: [radio], hole: {shape: round, diameter: 146 mm}, depth: {clear: 62 mm},",
    }
    assert len(messages(signal_word, f"{section}:\n{things[section]} cautions: [{caution}]}}\n")) == 1
