"""Which heads pass on a thread."""

import pytest
from rule_pages import Example, compose, say

from undertrim.check.rules import thread_and_head

PIECE = """
parts:
  amplifier:
    name: Amplifier
    release: unscrew
    held_by: [{{bolt: {head}, count: 2, thread: {thread}}}]
"""

# ISO 4014 and DIN 931 across flats; ISO 14583 hexalobular sockets; ISO 7046 cross recesses.
STANDARD = """
    M4 hex 7 mm | M5 hex 8 mm | M6 hex 10 mm | M8 hex 13 mm | M10 hex 16 mm | M10 hex 17 mm | M12 hex 18 mm
    M12 hex 19 mm | M5 T25 | M6 T30 | M8 T45 | M4 PH2 | M6 PH3
"""
# Flange bolts with small heads, small hexagons of other countries and heads that no table has; from memory.
COMMON = """
    M5 hex 7 mm | M6 hex 8 mm | M8 hex 10 mm | M8 hex 12 mm | M10 hex 13 mm | M10 hex 14 mm | M12 hex 17 mm
    M6x1 T25 | M8x1.25 T40 | ST4.2 T20 | M11 hex 6 mm | M6 hex key 5 mm | M1.6 hex 4 mm | M22 hex 22 mm
"""
TWO_SIZES_OFF = """
    M6 hex 7 mm | M6 hex 14 mm | M8 hex 8 mm | M4 hex 10 mm | M10 hex 21 mm | M8 T25 | M4 PH3 | ST4.2 PH1
    ST3.5 PH3 | M1.6 hex 3 mm | M22 hex 36 mm | M1.6 hex 8 mm
"""


def pairs(rows: str) -> list[str]:
    return [pair.strip() for line in rows.strip().splitlines() for pair in line.split("|")]


def passes(pair: str) -> bool:
    thread, _, head = pair.partition(" ")
    piece = compose(PIECE.format(head=head, thread=thread))
    return not say(Example({"brindleway/otter-2014-2018.yaml": piece}, ()), thread_and_head)


@pytest.mark.parametrize("pair", [*pairs(STANDARD), *pairs(COMMON)])
def test_usual_heads_pass(pair: str) -> None:
    assert passes(pair)


@pytest.mark.parametrize("pair", pairs(TWO_SIZES_OFF))
def test_a_head_two_sizes_off_is_noted(pair: str) -> None:
    assert not passes(pair)
