"""One vehicle under two spellings, and one record under two vehicles; many of them cost little more than few."""

from pathlib import Path
from typing import Any

import pytest

from undertrim.check import names
from undertrim.check.findings import Card
from undertrim.check.rules import overlapping_records, record_copied, vehicle_twice
from undertrim.record import build
from undertrim.record.model import VehicleFacts


def card(make: str, model: str, sections: dict[str, str] | None = None, **other: Any) -> Card:
    facts = {
        "make": make,
        "model": model,
        "built": {"from": "2014-01", "to": "2018-01"},
        "drive_side": ["left"],
        "high_voltage": "no",
    }
    known = build.section("vehicle", {**facts, **other})
    assert isinstance(known, VehicleFacts)
    path = Path("records/vehicles") / make / f"{model}.yaml"
    return Card(path, f"{make}/{model}", known, sections=sections or {})


def twins(*cards: Card) -> list[str]:
    return [f"{found.path.parent.name}/{found.path.stem}" for found, _ in vehicle_twice.check_all(cards)]


@pytest.mark.parametrize("make", ["Kelbrok", "Kelbroook", "Kelbrokk", "Keblrook"])
def test_a_make_with_a_slip_in_it(make: str) -> None:
    two = [card("Kelbrook", "Finch"), card("Kelbrook", "Wren")]
    assert twins(*two, card(make, "Finch")) == [f"{make}/Finch"]
    assert twins(*two, card(make, "Siskin")) == [f"{make}/Siskin"]
    assert twins(card(make, "Finch"), *two) == [f"{make}/Finch"]


@pytest.mark.parametrize("make", ["Kel-Brook", "KELBROOK", "K\u0435lbrook", "Kelbroök"])
def test_a_make_in_another_spelling_is_the_same_make(make: str) -> None:
    pair = [card("Kelbrook", "Finch"), card(make, "Finch")]
    assert len(list(overlapping_records.check_all(pair))) == 2


@pytest.mark.parametrize("make", ["Harrowby", "Tolverne"])
def test_other_makes_are_left_alone(make: str) -> None:
    assert twins(card("Kelbrook", "Finch"), card(make, "Finch")) == []


@pytest.mark.parametrize(
    ("model", "other", "found"),
    [
        ("Finch", "Fich", False),  # four letters are near to too much
        ("Siskin", "Sisken", True),
        ("Siskin 3", "Sisken 3", True),
        ("Siskin 3", "Siskin 5", False),
        ("Siskin", "Siskin 5", False),
        ("Siskin", "Siksin", True),
        ("Siskin", "Linnet", False),
    ],
)
def test_models_nearly_alike(model: str, other: str, found: bool) -> None:
    assert bool(twins(card("Kelbrook", model), card("Kelbrook", other))) is found


@pytest.mark.parametrize(
    "other",
    [
        {"built": {"from": "2018-01", "to": "2020-01"}},
        {"drive_side": ["right"]},
        {"bodies": ["van"]},
        {"tell": "Round vents"},
    ],
)
def test_two_that_no_car_is_both_of(other: dict[str, Any]) -> None:
    one = card("Kelbrook", "Siskin", bodies=["estate"], tell="Square vents")
    assert twins(one, card("Kelbrook", "Sisken", **{"bodies": ["estate"], **other})) == []


def test_a_model_by_its_other_name() -> None:
    assert twins(card("Kelbrook", "Finch"), card("Kelbrook", "Wren", also_called=["FINCH"])) == ["Kelbrook/Wren"]
    assert twins(card("Kelbrook", "Finch", also_called=["Finch"])) == []


def copies(*held: dict[str, str]) -> list[tuple[int, str]]:
    cards = [card("Kelbrook", f"Model {number}", sections) for number, sections in enumerate(held)]
    return [(cards.index(found), finding.message) for found, finding in record_copied.check_all(cards)]


def test_two_sections_alike_are_a_copy() -> None:
    whole = {"parts": "p", "openings": "o", "connectors": "c"}
    assert copies(whole, {**whole, "openings": "x"}) == [
        (1, "'parts' and 'connectors' are word for word those of 'records/vehicles/Kelbrook/Model 0.yaml'")
    ]
    assert copies(whole, {**whole, "openings": "x", "parts": "x"}) == []
    assert [place for place, _ in copies(whole, whole, whole)] == [1, 2]


@pytest.mark.parametrize("turned", [True, False])
def test_the_order_in_which_records_are_looked_at_does_not_matter(turned: bool) -> None:
    """Where one file alone is checked, it comes before its neighbours."""
    held = {"parts": "p", "openings": "o"}
    pair = [card("Kelbrook", "Siskin", held), card("Kelbrook", "Siskon", held)]
    cards = pair[::-1] if turned else pair
    assert twins(*cards) == ["Kelbrook/Siskon"]
    assert [found for found, _ in record_copied.check_all(cards)] == pair[1:]


def test_many_near_names_are_found_without_comparing_each_with_each(monkeypatch: pytest.MonkeyPatch) -> None:
    compared = 0
    near = names._near

    def counted(one: str, other: str) -> bool:
        nonlocal compared
        compared += 1
        return near(one, other)

    monkeypatch.setattr(names, "_near", counted)
    every = [
        f"{chr(97 + number % 26)}{number * 7919 % 100003:05}{chr(97 + number // 26 % 26)}" for number in range(5000)
    ]
    assert list(names.near_pairs([*every, "siskin", "sisken"])) == [("sisken", "siskin")]
    assert compared < 100 * len(every)
