"""The choice of a cable: worked examples, and that no thinner size would do."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from refusing import lines, refused
from undertrim.derive.electrical.ampacity import Surroundings, ampacity
from undertrim.derive.electrical.cable import Choice, Wishes, choose
from undertrim.derive.electrical.conductors import Size, sizes
from undertrim.derive.electrical.drop import Path, drop
from undertrim.words import say, way_out


def chosen(amps: float, out: float, **wishes: Any) -> Choice:
    return choose(Path(current=amps, out=out), Wishes(**wishes))


def thinnest(choice: Choice) -> dict[str, str | None]:
    return {condition.name: condition.size for condition in choice.conditions}


def test_the_drop_decides() -> None:
    """80 A over 5 + 5 m at 3 % of 13.8 V: 4 AWG loses 4.73 %, 2 AWG 2.97 % (worked by hand)."""
    found = chosen(80, 5, insulation=105)
    assert (found.size, found.binding, found.fuse) == ("2", ("drop",), 100)
    assert thinnest(found) == {"drop": "2", "ampacity": "8", "fuse": "6"}  # 80 A; 120 A, for 8 AWG carries only 80
    assert found.share == pytest.approx(0.0297, abs=5e-5)
    assert say(found.headline) == "2 AWG, fuse 100 A: 0.4101 V lost, 2.972 % of 13.8 V; the drop decides"


# 24 A wants a 30 A fuse, and that 14 AWG of 105 °C (35 A) or 12 AWG of 80 °C (35 A); 33 CFR 183.425, Table 5
@pytest.mark.parametrize(("insulation", "size", "carried"), [(105, "14", 35), (80, "12", 35)])
def test_the_fuse_decides(insulation: int, size: str, carried: float) -> None:
    found = chosen(24, 0.5, insulation=insulation)
    assert (found.size, found.fuse, found.ampacity, found.binding) == (size, 30, carried, ("fuse",))
    assert "the fuse decides" in say(found.headline)


def test_a_hotter_place_asks_for_more() -> None:
    """60 A with a 75 A need, so 80 A fused: 8 AWG of 105 °C carries 80 A in the cabin, 68 A in the engine space."""
    cool, hot = (chosen(60, 0.5, insulation=105, place=place) for place in ("cabin", "engine"))
    assert (cool.size, hot.size) == ("8", "6")
    assert thinnest(hot) == {"drop": "12", "ampacity": "8", "fuse": "6"}  # 14 AWG loses 0.497 V of the 0.414 V allowed


def test_both_decide() -> None:
    found = chosen(24, 1, insulation=105)
    assert (found.size, found.binding) == ("14", ("drop", "fuse"))
    assert say(found.headline).endswith("the drop and the fuse decide")


def test_a_fuse_that_is_there_is_kept() -> None:
    found = chosen(24, 0.5, insulation=105, fuse=60)
    assert (found.size, found.fuse) == ("10", 60)
    tight = chosen(24, 0.5, insulation=105, fuse=25)
    assert any("24 A is more than 80 % of the fuse" in note for note in lines(tight.notes))
    with refused("a fuse of '20 A' does not hold '24 A'") as error:
        chosen(24, 0.5, fuse=20)
    assert way_out(error.value.said) == "take a fuse of at least 30 A, or a smaller load"


def test_the_body_can_lose_too_much_by_itself() -> None:
    """300 A x 2 mohm is 0.6 V, more than 3 % of 13.8 V: no cable mends it."""
    found = choose(Path(current=200, out=5, back="body", body=0.003), Wishes(insulation=105))
    assert (found.size, found.binding) == (None, ("drop",))
    assert (
        say(found.headline) == "no awg cable listed can lose at most 3 % of 13.8 V: shorten the way, or allow more drop"
    )


def test_nothing_thinner_than_the_table_knows_is_chosen() -> None:
    found = chosen(0.5, 1)
    assert (found.size, found.fuse, found.binding) == ("18", 1, ())
    assert say(found.headline).endswith("; the thinnest in the table of currents does")
    assert any("16 AWG at least as a single wire" in note for note in lines(found.notes))


def test_unknown_insulation_takes_the_usual_and_says_so() -> None:
    found = chosen(24, 0.5)
    bears = next(one for one in found.numbers if say(one.label) == "insulation bears")
    assert (bears.value, bears.origin) == (80, "usual")


def test_clad_aluminium_is_chosen_thicker() -> None:
    copper, clad = (
        choose(Path(current=80, out=5, metal=metal), Wishes(insulation=105)) for metal in ("copper", "copper-clad")
    )
    assert (copper.size, clad.size) == ("2", "1/0")  # 2 AWG x 1.6 4.76 %, 1 AWG 3.77 %, 1/0 2.99 % of 13.8 V
    assert any("same heat" in note for note in lines(clad.notes))


paths = st.builds(
    Path,
    current=st.floats(0.1, 300),
    out=st.floats(0.1, 20),
    back=st.one_of(st.none(), st.just("body"), st.floats(0.1, 20)),
    metal=st.sampled_from(["copper", "copper-clad"]),
)
wishes = st.builds(
    Wishes,
    scheme=st.sampled_from(["awg", "sae", "metric"]),
    insulation=st.sampled_from([60, 75, 80, 90, 105, 125, 200]),
    place=st.sampled_from(["cabin", "engine"]),
    limit=st.floats(0.01, 0.2),
)


def meets(size: Size, path: Path, asked: Wishes, fuse: float) -> dict[str, bool]:
    """The three conditions on one size, computed one by one."""
    assert asked.insulation is not None
    assert asked.limit is not None
    times = 1.6 if path.metal == "copper-clad" else 1.0
    allowed = ampacity(size, Surroundings(asked.insulation, asked.place, times)) or 0.0
    return {
        "drop": drop(path, size.scheme, size.name).share <= asked.limit,
        "ampacity": allowed >= path.current,
        "fuse": allowed >= fuse,
    }


@given(paths, wishes)
def test_the_choice_meets_everything_and_the_next_thinner_fails_what_decides(path: Path, asked: Wishes) -> None:
    found, offered = choose(path, asked), [size for size in sizes(asked.scheme) if size.gauge]
    if found.size is None:
        fuse = next((amps for amps in RATINGS if amps >= path.current / 0.8), float("inf"))
        thickest = meets(offered[-1], path, asked, fuse)
        assert tuple(name for name, met in thickest.items() if not met) == found.binding
        return
    assert found.fuse == next(amps for amps in RATINGS if amps >= path.current / 0.8)
    place = [one.name for one in offered].index(found.size)
    assert all(meets(offered[place], path, asked, found.fuse).values())
    if place:
        thinner = meets(offered[place - 1], path, asked, found.fuse)
        assert tuple(name for name, met in thinner.items() if not met) == found.binding
        assert found.binding


# the standard ratings once more, as in test_fuses; from 100 A on from memory
RATINGS = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300]
