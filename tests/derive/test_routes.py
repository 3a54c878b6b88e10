"""Which of several routes a visit takes: the one that costs least with everything else it needs."""

from pathlib import Path

import pytest

from making import ids, plan, record
from undertrim.derive.procedure.nodes import USUAL_COST
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

WORKSPACE = Workspace.holding(Path(__file__))


def shipped(name: str) -> VehicleRecord:
    found = WORKSPACE.load(next(WORKSPACE.records.rglob(f"{name}.yaml"))).record
    assert isinstance(found, VehicleRecord)
    return found


def removed(names: list[str]) -> list[str]:
    return [name.removeprefix("remove:") for name in names if name.startswith("remove:")]


def test_the_cheapest_route_is_taken_by_its_minutes() -> None:
    text = """
        parts:
          tray: {takes: TIME}
          cup: {takes: 4 min}
          rail: {takes: 2 min, after: [cup]}
          surround: {after_any: [{from-above: [tray], from-below: [rail]}]}
        openings:
          dash: {behind: [surround]}
    """
    assert removed(ids(record(text.replace("TIME", "7 min")), "dash")) == ["cup", "rail", "surround"]
    assert removed(ids(record(text.replace("TIME", "5 min")), "dash")) == ["tray", "surround"]


def test_what_another_job_needs_anyway_makes_a_route_cheaper_and_shared_work_counts_once() -> None:
    about = record("""
        parts:
          shared: {takes: 5 min}
          tray: {takes: 2 min, after: [shared]}
          grille: {takes: 3 min, after: [shared]}
          below: {takes: 6 min}
          surround: {takes: 1 min, after_any: [{from-above: [tray, grille], from-below: [below]}]}
          speaker: {takes: 1 min, replaced: yes, after: [grille]}
        openings:
          dash: {behind: [surround]}
          top: {behind: [speaker]}
    """)
    assert removed(ids(about, "dash")) == ["below", "surround"]  # 6 against 5 + 2 + 3
    assert removed(ids(about, "dash", "top")) == ["shared", "tray", "grille", "surround", "speaker"]  # 2 more
    assert plan(about, "dash").selection.cost == pytest.approx(7 + USUAL_COST)
    assert plan(about, "dash", "top").selection.cost == pytest.approx(5 + 2 + 3 + 1 + 1 + USUAL_COST)


def test_the_van_of_2011_takes_the_way_that_costs_least_in_each_car() -> None:
    sedge = shipped("sedge-2011-2016")
    left = {"drive_side": "left", "windows": "winder"}
    right = {"drive_side": "right", "windows": "winder"}
    # From below in left-hand drive: cup holder 1 and lower cover 2 min, with the lever's 15 s, against mat 15 s and tray 4 min.
    alone = ids(sedge, "dash", **left)
    assert {"remove:cup-holder", "remove:lower-cover"} <= set(alone)
    assert "remove:upper-tray" not in alone
    # The dash-top speakers need the tray anyway, so from above costs nothing more.
    with_top = ids(sedge, "dash", "dash-top", **left)
    assert "remove:upper-tray" in with_top
    assert "remove:cup-holder" not in with_top
    # In right-hand drive the lower cover waits for the knee panel, 4 min more.
    assert "remove:upper-tray" in ids(sedge, "dash", **right)
    assert "remove:lower-cover" not in ids(sedge, "dash", **right)
