"""Which fields say what waits for what: the schema marks them, and no other changes the graph of any shipped record."""

from collections.abc import Collection
from pathlib import Path
from typing import Any

import pytest
from rule_pages import BASE

from undertrim.check.findings import Subject
from undertrim.check.links import read_in_full, says_order
from undertrim.check.rules import order_cycle
from undertrim.derive import cars
from undertrim.derive.procedure.planning import Planner
from undertrim.record import build
from undertrim.record.copying import copied
from undertrim.record.fields import walk
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Pointer, read_text
from undertrim.record.store import Workspace, entry

RECORDS = sorted((Path(__file__).parents[2] / "records/vehicles").rglob("*.yaml"))
GRAPH = ("variants", "preps", "parts", "openings")


def shape(data: Any) -> Any:
    """What waits for what, in every car."""
    record = build.vehicle(data)
    planner = Planner(record)
    layouts = [(car, planner.layout(car)) for car in cars.assignments(record)]
    return [(car, list(it.graph.costs), it.graph.after, it.graph.any_of, it.refit_after) for car, it in layouts]


def without(data: Any, pointers: Collection[Pointer]) -> Any:
    changed = copied(data)
    for *steps, last in pointers:
        inner = changed
        for step in steps:
            inner = inner[step]
        del inner[last]
    return changed


def silent(data: Any) -> dict[str, list[Pointer]]:
    """The fields that may be left out and are said to say nothing of order, by their name in the schema."""
    found: dict[str, list[Pointer]] = {}
    nodes = {field.pointer: field.node for field in walk(data, "vehicle")}
    for pointer in nodes:
        if len(pointer) < 3 or pointer[0] not in GRAPH or says_order(pointer):
            continue
        above = nodes[pointer[:-1]]
        named = pointer[-1] in above.schema.get("properties", ())
        if named and pointer[-1] not in above.schema.get("required", ()):
            found.setdefault(f"{above.home[1][-1]}.{pointer[-1]}", []).append(pointer)
    return found


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_a_field_without_the_mark_says_nothing_of_order(path: Path) -> None:
    data = Workspace.holding(path).load(path).source.data
    whole, fields = shape(data), silent(data)
    assert len(fields) > 5
    assert [name for name, places in fields.items() if shape(without(data, places)) != whole] == []


@pytest.mark.parametrize(
    ("place", "says"),
    [
        (("parts", "seal"), True),  # whatever it is called
        (("parts", "vent", "seal"), False),
        (("parts", "vent", "after", 0, "part"), True),
        (("parts", "vent", "afetr"), True),
        (("parts", "vent", "held_by", 0), True),
        (("parts", "vent", "held_by", 0, "length"), False),
        (("parts", "vent", "held_by", 0, "under"), True),
        (("parts", "vent", "cautions", 0, "when"), False),
        (("parts", "vent", "cautions", 0, "signl"), False),
        (("variants", "radio", "choices", "map"), True),
        (("variants", "radio", "choices", "map", "tell"), False),
        (("connectors", "main", "when"), False),
        (("prats",), True),
        (("connectors", "main", "name"), False),
        ((), True),
    ],
)
def test_a_place_says_something_of_order_or_not(place: Pointer, says: bool) -> None:
    assert says_order(place) is says


def test_a_part_called_like_a_silent_field_is_no_silent_field() -> None:
    """Its record is not read in full when it is refused, and no rule about order goes by the rest."""
    text = BASE.replace(
        "  radio:\n", "  seal: {name: A seal, release: pull, afetr: [radio]}\n  radio:\n    after: [seal]\n"
    )
    path = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
    read_entry = entry(path, "vehicle", read_text(text, path))
    assert isinstance(read_entry.record, VehicleRecord)
    about = Subject(read_entry, read_entry.record)
    assert {place[:2] for place in read_entry.dropped} == {("parts", "seal")}
    assert not read_in_full(about)
    assert list(order_cycle.check(about)) == []
