"""Which numbers in a text contradict the counts, sentence by sentence."""

import pytest
from rule_pages import Example, compose, say

from undertrim.check.rules import count_in_text

PIECE = """
parts:
  bezel:
    name: Radio bezel
    release: slide
    held_by: [{held}]
    how: >-
      {text}
"""
SIX = "{screw: T20, count: 6}"
EDGES = "{clip: push, count: 6, at: {top: 2, left: 1, right: 3}}"


def said(held: str, text: str) -> list[str]:
    found = say(Example({"a/b.yaml": compose(PIECE.format(held=held, text=text))}, ()), count_in_text)
    return [message.split("'")[1] for _, _, message in found]


@pytest.mark.parametrize(
    ("held", "text", "phrase"),
    [
        (SIX, "Take out the four screws.", "four screws"),
        (SIX, "Take out the 4 screws and slide it out.", "4 screws"),
        (SIX, "Take out all four screws, then slide.", "four screws"),
        (SIX, "Take out all the four screws.", "four screws"),
        (SIX, "Take out eight screws at the top.", "eight screws"),
        (SIX, "Take out the seven long T20 screws.", "seven long T20 screws"),
        (SIX, "Take out both screws.", "both screws"),
        (EDGES, "Free the seven clips.", "seven clips"),
        ("{clip: push, count: 7}, {scrivet: push-pin, count: 2}", "Free the eight clips.", "eight clips"),
        ("{hook: tab, count: 2}", "Lift it off its three tabs.", "three tabs"),
        ("{nut: hex 10 mm, count: 2}, {screw: T20, count: 6}", "Undo the six nuts.", "six nuts"),
        ("{screw: T20, count: 4, at: {corners: 4}}", "Take out the three screws, then pull.", "three screws"),
    ],
)
def test_a_contradiction_is_named(held: str, text: str, phrase: str) -> None:
    assert said(held, text) == [phrase]


@pytest.mark.parametrize(
    ("held", "text"),
    [
        (SIX, "Take out all six screws. Take out the 6 screws."),
        (SIX, "Take out the four screws at the top. Take out the two upper screws, then four screws."),
        (SIX, "Leave one screw in. Take out one or two screws. Another eight screws hold the frame."),
        (SIX, "Take out the 7 mm screws, the 16 mm ones, and use 8 clips elsewhere."),
        (SIX, "Ten screws are under it. The eight screws of the speaker stay in."),
        (SIX, "Wait ten seconds. Turn it two turns. In 2016 screws were added."),
        (SIX, "Take out three of the six screws."),
        (EDGES, "Free the two clips, the three clips and the one at the left. Free the four clips."),
        ("{screw: T20, count: unknown}", "Take out the four screws."),
        ("{screw: T20, count: 2}, {screw: T20, count: 2, leave: yes}", "Take out the two screws only."),
        (
            "{screw: T20, count: 2}, {bolt: T30, count: 1}",
            "Take out the three screws. Take out all three bolts.",
        ),
        ("{screw: T20, count: 4, at: {corners: 4}}", "Take out the two screws, then the other two screws."),
    ],
)
def test_what_may_be_right_passes(held: str, text: str) -> None:
    assert said(held, text) == []
