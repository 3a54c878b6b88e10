"""Records that claim the same cars, and records that do not join on, against sets of months."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.check.findings import Card
from undertrim.check.rules import gap_after_neighbour, overlapping_records
from undertrim.record.model import Built, Month, Side, VehicleFacts
from undertrim.record.model.kinds.receiver import KitGear

SIDES: list[Side] = ["left", "right"]


def month(text: str) -> Month:
    year, number = text.split("-")
    return Month(int(year), int(number))


def built(first: str, end: str) -> Built:
    return Built(month(first), month(end))


def card(name: str, span: Built, **facts: object) -> Card:
    known = {"make": "Kelbrook", "model": "Finch", "drive_side": ("left",), **facts}
    vehicle = VehicleFacts(built=span, high_voltage="no", **known)  # type: ignore[arg-type]
    return Card(Path("records/vehicles/kelbrook", f"{name}.yaml"), f"kelbrook/{name}", vehicle)


def gaps(*cards: Card) -> list[str]:
    return [finding.message for _, finding in gap_after_neighbour.check_all(cards)]


def overlaps(*cards: Card) -> list[str]:
    return [finding.message for _, finding in overlapping_records.check_all(cards)]


@pytest.mark.parametrize(
    ("end", "begin", "message"),
    [
        ("2016-05", "2016-05", []),  # half open: the car of 2016-05 is the second record's
        ("2016-03", "2016-05", ["gap [2016-03, 2016-05) after 'a'"]),
        ("2016-04", "2016-05", ["gap [2016-04, 2016-05) after 'a'"]),
        ("2016-06", "2016-05", ["overlap in 2016-05 with 'a'"]),
        ("2016-08", "2016-05", ["overlap [2016-05, 2016-08) with 'a'"]),
        ("2016-01", "2015-12", ["overlap in 2015-12 with 'a'"]),
    ],
)
def test_joints(end: str, begin: str, message: list[str]) -> None:
    one = card("a", built("2014-01", end))
    two = card("b", built(begin, "2019-01"), follows="a")
    assert gaps(one, two) == gaps(two, one) == message


def test_a_record_that_follows_a_later_one() -> None:
    later = card("a", built("2019-01", "2021-01"))
    assert gaps(later, card("b", built("2014-01", "2016-01"), follows="a")) == [
        "'a' ends in 2021-01, after this record has ended"
    ]


def test_only_records_of_the_same_make_are_followed() -> None:
    other = card("a", built("2014-01", "2016-05"), make="Orlock")
    two = card("b", built("2016-05", "2019-01"), follows="a")
    assert gaps(other, two) == ["no readable record 'a' of this make"]
    assert gaps(card("a", built("2014-01", "2016-05"), make="KELBROOK "), two) == []


spans = st.builds(
    lambda a, b: Built(Month(2000 + a // 12, a % 12 + 1), Month(2000 + b // 12, b % 12 + 1)),
    *[st.integers(0, 30)] * 2,
)
facts = st.fixed_dictionaries(
    {
        "model": st.sampled_from(["Finch", "finch ", "Fínch", "Wren"]),
        "drive_side": st.lists(st.sampled_from(SIDES), min_size=1, max_size=2, unique=True).map(tuple),
        "bodies": st.lists(st.sampled_from(["van", "estate"]), max_size=2, unique=True).map(tuple),
        "phase": st.sampled_from(["", "early", "late"]),
        "tell": st.sampled_from(["", "Round vents"]),
    }
)


def cars(one: Card) -> set[tuple[object, ...]]:
    """Every car that a record claims: name, month, side and body."""
    vehicle = one.facts
    assert isinstance(vehicle, VehicleFacts)
    name = "wren" if vehicle.model == "Wren" else "finch"
    return {
        (name, index, side, body)
        for index in range(vehicle.built.from_.index, vehicle.built.to.index)
        for side in vehicle.drive_side
        for body in vehicle.bodies or ("van", "estate", "any other")
    }


@given(spans, facts, spans, facts)
def test_two_records_overlap_just_when_some_car_is_in_both(
    a: Built, x: dict[str, object], b: Built, y: dict[str, object]
) -> None:
    one, two = card("one", a, **x), card("two", b, **y)
    shared = cars(one) & cars(two)
    told_apart = x["phase"] != y["phase"] and x["tell"] and y["tell"]
    found = overlaps(one, two)
    assert len(found) == (2 if shared and not told_apart else 0)
    if found and a != b:
        months = sorted(index for _, index, _, _ in shared)  # type: ignore[type-var]
        first, end = (Month(index // 12, index % 12 + 1) for index in (months[0], months[-1] + 1))  # type: ignore[operator]
        assert all(f"[{first}, {end})" in message for message in found)
    elif found:
        assert all(message.startswith("two records for one vehicle: ") for message in found)


@pytest.mark.parametrize(("one", "other", "pairs"), [("early", "late", 0), ("early", "", 1), ("", "late", 1)])
def test_both_of_two_phases_need_a_mark(one: str, other: str, pairs: int) -> None:
    span = built("2014-01", "2018-01")
    a = card("a", span, phase="early", tell=one and "Square vents")
    c = card("c", span, phase="late", tell=other and "Round vents")
    assert len(overlaps(a, c)) == 2 * pairs
    assert len(overlaps(a, card("c", span, phase="early", tell="Round vents"))) == 2


def test_both_files_are_told_of_the_other_and_gear_is_no_vehicle() -> None:
    gear = Card(Path("records/gear/kits/a-b.yaml"), "kits/a-b", KitGear("Kelbrook", "Finch"))
    one, two = card("one", built("2014-01", "2016-07")), card("two", built("2016-05", "2019-01"))
    found = list(overlapping_records.check_all([gear, one, two]))
    assert [(here.path.stem, finding.message) for here, finding in found] == [
        ("one", "the months [2016-05, 2016-07) are also in 'records/vehicles/kelbrook/two.yaml'"),
        ("two", "the months [2016-05, 2016-07) are also in 'records/vehicles/kelbrook/one.yaml'"),
    ]
