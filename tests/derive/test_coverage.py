"""The matrix of cars and openings: its check values, its three states, its share."""

from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from making import from_data
from undertrim.derive.coverage import MISSING, NONE, STATES, VALUE, Share, kinds_of_car, matrix
from undertrim.record.model import VehicleRecord
from undertrim.words import say

TRIMS = ("base", "mid", "top")


def made(openings: dict[str, Any], **sections: Any) -> VehicleRecord:
    trims = {trim: {"label": f"{trim.capitalize()} trim"} for trim in TRIMS}
    variants = {"trim": {"ask": "Which trim?", "choices": trims}, "paint": {"ask": "Which paint?", "choices": PAINTS}}
    behind = {name: {"behind": ["radio"], **item} for name, item in openings.items()}
    return from_data({"variants": variants, "parts": {"radio": {}}, "openings": behind, **sections})


PAINTS = {"red": {"label": "Red"}, "blue": {"label": "Blue"}}
FOUR = {
    "dash": {},
    "front-door": {},
    "rear-door": {"when": {"trim": ["mid", "top"]}},
    "bass": {"when": {"trim": "top"}, "not_in": [{"trim": "base"}]},
}


def test_ten_of_twelve_cells() -> None:
    # three kinds of car by four places: 9 values, 1 found none, 2 missing
    found = matrix(made(FOUR))
    states = [state for row in found.rows for state in row.cells.values()]
    assert [states.count(state) for state in STATES] == [9, 1, 2]
    assert say(found.share.said) == "10/12 = 83 %"
    missing = {name: [say(row.label) for row in rows] for name, rows in found.missing.items()}
    assert missing == {"rear-door": ["Base trim"], "bass": ["Mid trim"]}


def test_only_what_openings_depend_on_makes_a_row() -> None:
    parts = {"radio": {"when": {"paint": "red"}}}
    assert kinds_of_car(made({"dash": {}}, parts=parts)) == [{}]
    assert [say(row.label) for row in matrix(made({"dash": {}})).rows] == ["every car"]
    caution = {"signal": "NOTICE", "when": {"paint": "red"}, "hazard": "X.", "consequence": "Y.", "avoid": "Z."}
    inside = made({"dash": {"cautions": [caution]}})
    assert [dict(car) for car in kinds_of_car(inside)] == [{"paint": "red"}, {"paint": "blue"}]


def test_a_drive_side_is_a_kind_of_car_too() -> None:
    about = made({"dash": {"when": {"drive-side": "left"}}}, vehicle={"drive_side": ["left", "right"]})
    assert [say(row.label) for row in matrix(about).rows] == ["Left-hand drive", "Right-hand drive"]
    assert say(matrix(about).share.said) == "1/2 = 50 %"


@pytest.mark.parametrize(
    ("answered", "cells", "percent"),
    [(10, 12, 83), (1, 8, 13), (5, 8, 63), (1, 3, 33), (2, 3, 67), (1, 200, 1), (1, 201, 0), (0, 4, 0), (4, 4, 100)],
)
def test_halves_are_rounded_up(answered: int, cells: int, percent: int) -> None:
    assert Share(answered, cells).percent == percent


def test_nothing_at_all_is_no_share() -> None:
    assert say(Share(0, 0).said) == "0/0 = 0 %"
    assert Share(1, 2) + Share(3, 5) == Share(4, 7)


clause = st.fixed_dictionaries(
    {},
    optional={
        "trim": st.lists(st.sampled_from(TRIMS), min_size=1, unique=True),
        "paint": st.sampled_from(["red", "blue"]),
    },
).filter(bool)
opening = st.fixed_dictionaries({}, optional={"when": clause, "not_in": st.lists(clause, min_size=1, max_size=2)})


def _holds(clauses: dict[str, Any], car: dict[str, str]) -> bool:
    return all(car[name] in ([some] if isinstance(some, str) else some) for name, some in clauses.items())


def _state(item: dict[str, Any], car: dict[str, str]) -> str:
    if "when" not in item or _holds(item["when"], car):
        return VALUE
    return NONE if any(_holds(absent, car) for absent in item.get("not_in", [])) else MISSING


@given(st.dictionaries(st.sampled_from(["dash", "front-door", "shelf"]), opening, min_size=1))
def test_every_car_and_opening_is_in_exactly_one_state(openings: dict[str, Any]) -> None:
    found = matrix(made(openings))
    assert 0 <= found.share.fraction <= 1
    assert found.share.cells == len(found.rows) * len(openings) > 0
    for trim, paint in product(TRIMS, PAINTS):
        car = {"trim": trim, "paint": paint}
        (row,) = [row for row in found.rows if row.car.items() <= car.items()]
        assert dict(row.cells) == {name: _state(item, car) for name, item in openings.items()}
    lost = sum(len(rows) for rows in found.missing.values())
    assert found.share.answered + lost == found.share.cells
