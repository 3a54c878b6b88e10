"""Checked data becomes the typed model: ids from their keys, quantities parsed, words as they stand."""

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.record import build
from undertrim.record.model import ALWAYS, Blank, Month, Ref, VehicleRecord, When
from undertrim.record.source import read_text
from undertrim.record.store import Workspace
from undertrim.record.units import Quantity

ROOT = Path(__file__).parents[2]
RECORDS = sorted((ROOT / "records").rglob("*.yaml"))


def vehicle(old: str = "", new: str = "") -> VehicleRecord:
    text = BASE.replace(old, new, 1) if old else BASE
    return build.vehicle(read_text(text, Path("x.yaml")).data)


def test_ids_are_the_keys_they_stood_under() -> None:
    record = vehicle()
    assert record.parts["radio"].id == "radio"
    assert record.parts["radio"].tethers["main"].id == "main"
    assert record.openings["dash"].id == "dash"
    assert record.preps["battery"].id == "battery"
    assert record.evidence["e1"].id == "e1"


def test_words_that_python_keeps_for_itself_are_renamed() -> None:
    record = vehicle()
    assert record.vehicle.built.from_ == Month(2014, 1)
    assert record.evidence["e1"].with_ == "Calliper 0.05 mm"


def test_quantities_are_parsed_and_blanks_kept() -> None:
    record = vehicle("time: 2 min", "time: unknown")
    wait, depth = record.preps["battery"].wait, record.openings["dash"].depth
    assert wait is not None
    assert wait.time is Blank.UNKNOWN
    assert depth is not None
    assert isinstance(depth.clear, Quantity)
    assert (depth.clear.value, depth.clear.unit, depth.clear.text) == (170.0, "mm", "170 mm")


@pytest.mark.parametrize(("typed", "count"), [("4", 4), ('"4"', 4), ("0", 0), ("unknown", Blank.UNKNOWN)])
def test_counts(typed: str, count: object) -> None:
    assert vehicle("count: 4", f"count: {typed}").parts["radio"].held_by[0].count == count


def test_a_fastener_without_a_count_has_none() -> None:
    assert vehicle(", count: 4", "").parts["radio"].held_by[0].count is None


def test_references_carry_condition_and_side() -> None:
    new = "release: slide\n    after: [a, {part: b}, {part: c, side: left, when: {radio: [x, y], body: z}}]"
    when = When((("radio", ("x", "y")), ("body", ("z",))))
    assert vehicle("release: slide", new).parts["radio"].after == (
        Ref("a"),
        Ref("b", ALWAYS, None),
        Ref("c", when, "left"),
    )


def test_one_source_or_several() -> None:
    assert vehicle().openings["dash"].source == ("e1",)
    assert vehicle("source: e1\nafter", "source: [e1, e2]\nafter").openings["dash"].source == ("e1", "e2")


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_every_record_is_built_with_nothing_lost(path: Path) -> None:
    data = Workspace.holding(path).load(path).source.data
    if "gear" in data:
        assert build.gear(data).gear.kind == data["gear"]["kind"]
        return
    record = build.vehicle(data)
    for section in ("parts", "openings", "preps", "evidence", "connectors", "variants", "areas"):
        assert list(getattr(record, section)) == list(data.get(section, {}))
    for name, part in data["parts"].items():
        assert len(record.parts[name].held_by) == len(part.get("held_by", []))
        assert [fastener.what for fastener in record.parts[name].held_by] == [
            next(iter(fastener.values())) for fastener in part.get("held_by", [])
        ]
