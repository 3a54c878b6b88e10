"""A lower bound ("at least 60 mm") is enough where less is needed, and never a no: what lies behind it nobody has seen.

Worked examples, derived by hand: a bound b with its step s is enough for a need n where b - n is at least s, else nothing can be told.
"""

import pytest

from amplified import amplifier, car, fitted
from undertrim.derive.evidence.cautious import Order, choose
from undertrim.derive.evidence.readings import read
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds import room
from undertrim.derive.fit.margins import compare, known, typed
from undertrim.record.model import Depth
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.units import parse
from undertrim.words import say


@pytest.mark.parametrize(
    ("need", "verdict"), [(40.0, "fits"), (59.5, "fits"), (59.6, "unknown"), (60.4, "unknown"), (900.0, "unknown")]
)
def test_a_bound_is_a_yes_or_nothing(need: float, verdict: str) -> None:
    found = compare("depth", "Depth", [typed("clear depth", parse("at least 60 mm", "length"))], [known("need", need)])
    assert found.verdict == verdict
    if verdict == "unknown":
        assert say(found.words) == "Depth: cannot be told without clear depth (at least 60 mm (2.36 in))"


def test_what_fails_for_another_reason_still_fails() -> None:
    """A bound on one of two rooms: the sum has no end, a room of its own has."""
    short, bound = known("room", 10), typed("clear depth", parse("at least 60 mm", "length"))
    assert compare("a", "A", [short], [known("need", 20)]).verdict == "fails"
    assert compare("b", "B", [short, bound], [known("need", 90)]).verdict == "unknown"


def test_what_an_opening_takes_is_so_much_or_more() -> None:
    depth = Depth(parse("at least 92 mm", "length"), "skin", "no-glass", obstruction="metal")
    opening = SpeakerOpening("a", "A", (), depth=depth, room_to_grille=parse("20 mm", "length"))
    said = [say(one) for one in room(opening).limits(clearances())]
    assert said[0] == "mounting depth up to 89 mm (3.5 in) or more"
    assert not said[1].endswith("or more")


@pytest.mark.parametrize(
    ("way", "kind"),
    [
        ("{width: at least 400 mm, height: at least 200 mm}", "fits"),
        ("{width: at least 80 mm, height: 300 mm}", "fits"),
        ("{width: at least 80 mm, height: 100 mm}", "unknown"),  # as wide as 210 mm it would pass
        ("{width: at least 80 mm, height: 40 mm}", "does-not-fit"),  # too low, however wide
        ("{width: at least 40 mm, height: at least 30 mm}", "unknown"),
    ],
)
def test_a_way_in_of_which_a_side_is_a_bound(way: str, kind: str) -> None:
    """The amplifier is 290 × 60 × 210 mm: it passes where one side is 60 mm and the other 210 mm."""
    found = fitted(
        car("way_in: {width: 400 mm, height: 200 mm}", f"way_in: {way}"), amplifier(size=SIZE, cooling="5 mm")
    )
    assert found.kind == kind


SIZE = {"width": "290 mm", "height": "60 mm", "depth": "210 mm"}


def test_air_that_a_bound_does_not_show_is_a_caution() -> None:
    """A height of at least 66 mm holds 60 mm, and may lack the 8 mm of air above."""
    low = car("height: 90 mm, depth: 220 mm", "height: at least 66 mm, depth: 220 mm")
    found = fitted(low, amplifier(size=SIZE, cooling="8 mm"))
    assert (found.kind, found.checks[0].name) == ("marginal", "air-above")


def test_the_cautious_side_of_a_bound() -> None:
    claims = [read(says, "length") for says in ("at least 60 mm", "64 mm")]
    assert choose(Order(extreme="smallest"), claims) == "at least 60 mm"
    assert choose(Order(extreme="largest"), claims) == "unknown"
