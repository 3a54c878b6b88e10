"""Boundaries against sets of months: a record crosses one just when it holds cars from both sides."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.check.findings import Card
from undertrim.check.rules import boundary_crossed, confirmed_across_nothing
from undertrim.record.model import Built, Month, VehicleFacts
from undertrim.record.model.kinds.receiver import KitGear


def month(text: str) -> Month:
    year, number = text.split("-")
    return Month(int(year), int(number))


def card(name: str, first: Month, end: Month, *, model: str = "Finch", **facts: tuple[Month, ...]) -> Card:
    vehicle = VehicleFacts("Kelbrook", model, Built(first, end), ("left",), "no", **facts)  # type: ignore[arg-type]
    return Card(Path("records/vehicles/kelbrook", f"{name}.yaml"), f"kelbrook/{name}", vehicle)


def test_a_span_over_a_facelift_must_be_split() -> None:
    one = card("one", month("2014-01"), month("2019-01"))
    two = card("two", month("2019-01"), month("2020-01"), boundaries=(month("2016-07"),))
    ((here, finding),) = boundary_crossed.check_all([one, two])
    assert here is one
    file = "records/vehicles/kelbrook/two.yaml"
    assert finding.message == f"span [2014-01, 2019-01) crosses the boundary 2016-07 declared in '{file}'"
    assert (
        finding.hint == "split into [2014-01, 2016-07) and [2016-07, 2019-01), or add '2016-07' to 'confirmed_across'"
    )


@pytest.mark.parametrize(
    ("edge", "crossed"),
    [("2013-12", 0), ("2014-01", 0), ("2014-02", 1), ("2018-12", 1), ("2019-01", 0), ("2019-02", 0)],
)
def test_a_record_may_begin_or_end_at_a_boundary(edge: str, crossed: int) -> None:
    one = card("one", month("2014-01"), month("2019-01"), boundaries=(month(edge),))
    assert len(list(boundary_crossed.check_all([one]))) == crossed
    confirmed = card(
        "one", month("2014-01"), month("2019-01"), boundaries=(month(edge),), confirmed_across=(month(edge),)
    )
    assert len(list(confirmed_across_nothing.check_all([confirmed]))) == 1 - crossed


@pytest.mark.parametrize("make", ["Orlock", "Kelbrook Two"])
def test_boundaries_are_of_one_make(make: str) -> None:
    one = card("one", month("2014-01"), month("2019-01"))
    other = VehicleFacts(
        make, "Finch", Built(month("2014-01"), month("2016-07")), ("left",), "no", boundaries=(month("2016-07"),)
    )
    assert not list(boundary_crossed.check_all([one, Card(Path("x.yaml"), "x/x", other)]))


def test_gear_has_none() -> None:
    gear = Card(Path("records/gear/kits/a-b.yaml"), "kits/a-b", KitGear("Kelbrook", "Finch"))
    assert not list(boundary_crossed.check_all([gear]))
    assert not list(confirmed_across_nothing.check_all([gear]))


months = st.integers(0, 30).map(lambda index: Month(2000 + index // 12, index % 12 + 1))
some = st.lists(months, max_size=3, unique=True).map(tuple)


@given(months, months, some, some, some)
def test_crossed_or_confirmed_or_not_within(
    first: Month, end: Month, own: tuple[Month, ...], others: tuple[Month, ...], confirmed: tuple[Month, ...]
) -> None:
    here = card("here", first, end, boundaries=own, confirmed_across=confirmed)
    cards = [here, card("there", month("2040-01"), month("2041-01"), boundaries=others)]
    cars = set(range(first.index, end.index))
    within = {
        edge
        for edge in {*own, *others}
        if any(built < edge.index for built in cars) and any(built >= edge.index for built in cars)
    }
    crossed = [finding for _, finding in boundary_crossed.check_all(cards)]
    assert len(crossed) == len(within - set(confirmed))
    assert all(
        any(f"the boundary {edge} " in finding.message for finding in crossed) for edge in within - set(confirmed)
    )
    wrong = [confirmed[finding.pointer[2]] for _, finding in confirmed_across_nothing.check_all(cards)]  # type: ignore[index]
    assert set(wrong) == set(confirmed) - within
