"""Fuses against their families. Colours: DIN 72581 and ISO 8820-3 (secondary texts), that of 35 A from memory."""

import pytest

from refusing import lines, refused
from undertrim.derive.electrical import fuses
from undertrim.derive.electrical.bounds import Refused
from undertrim.words import say, way_out

MEDIUM = {
    "black": 1, "grey": 2, "violet": 3, "pink": 4, "tan": 5, "brown": 7.5, "red": 10, "blue": 15, "yellow": 20,
    "clear": 25, "green": 30, "orange": 40,
}  # fmt: skip
HIGH_CURRENT = {"yellow": 20, "green": 30, "orange": 40, "red": 50, "blue": 60, "tan": 70, "clear": 80}


MINI = [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30]  # ten ratings from 2 to 30 A: two public secondary texts


@pytest.mark.parametrize(("colour", "amps"), MEDIUM.items())
def test_small_blades(colour: str, amps: float) -> None:
    assert fuses.rating("medium", colour) == amps
    if amps in MINI:
        assert fuses.rating("mini", colour) == amps


@pytest.mark.parametrize(
    ("family", "ratings"),
    [("medium", sorted([*MEDIUM.values(), 35])), ("mini", MINI), ("high-current", [*HIGH_CURRENT.values()])],
)
def test_a_family_has_these_ratings_and_no_others(family: str, ratings: list[float]) -> None:
    assert [fuse.amps for fuse in fuses.fuses() if fuse.family == family] == ratings


@pytest.mark.parametrize("colour", ["black", "blue-green", "orange"])
def test_the_small_blade_has_no_1_35_or_40_a(colour: str) -> None:
    with refused(f"no '{colour}' fuse in the family 'mini'"):
        fuses.rating("mini", colour)
    assert "miniature" not in say(fuses.readings(colour).headline)
    assert "miniature" not in say(fuses.described(fuses.rating("medium", colour)))


@pytest.mark.parametrize(("colour", "amps"), HIGH_CURRENT.items())
def test_high_current_blades(colour: str, amps: float) -> None:
    assert fuses.rating("high-current", colour) == amps


@pytest.mark.parametrize("colour", ["red", "blue", "tan", "clear"])
def test_a_colour_alone_is_two_ratings(colour: str) -> None:
    found = {fuse.amps for fuse in fuses.readings(colour).fuses}
    assert found == {MEDIUM[colour], HIGH_CURRENT[colour]}


def test_says_what_a_colour_is_in_each_family() -> None:
    assert (
        say(fuses.readings("red").headline) == "red: medium blade 10 A; miniature blade 10 A; high-current blade 50 A"
    )


def test_refuses_what_no_fuse_is() -> None:
    with refused("no fuse is 'mauve'") as error:
        fuses.readings("mauve")
    assert way_out(error.value.said).startswith("colours: black, grey,")
    with refused("no 'pink' fuse in the family 'high-current'"):
        fuses.rating("high-current", "pink")
    with pytest.raises(Refused):
        fuses.readings("")


# the next standard rating at or above load/0.8, by hand
@pytest.mark.parametrize(
    ("load", "amps"), [(24, 30), (24.1, 35), (8, 10), (8.01, 15), (80, 100), (240, 300), (240.1, None), (0.1, 1)]
)
def test_next_rating(load: float, amps: float | None) -> None:
    assert fuses.least(load, 0.8) == amps


def test_the_share_is_a_default_that_can_be_changed() -> None:
    assert (fuses.load_share().value, fuses.load_share().origin) == (0.8, "usual")
    assert fuses.least(24, fuses.load_share(0.7).value) == 35
    with refused("the load of the fuse at most '120 %' cannot be right"):
        fuses.load_share(1.2)


def test_says_where_a_rating_comes_from_memory() -> None:
    assert any("from memory" in note for note in lines(fuses.notes(125)))
    assert not any("from memory" in note for note in lines(fuses.notes(30)))
    assert "within 0.45 m (17.72 in)" in say(fuses.notes(30)[0])
