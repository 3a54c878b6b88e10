"""Random records that can be planned: parts in random order with routes, sides, variants, states and restraint plugs."""

from copy import deepcopy
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from hypothesis import strategies as st

from making import from_data
from undertrim.record.model import VehicleRecord

Data = dict[str, Any]
FASTENERS = ("screw", "clip", "bolt", "hook")
WHAT = {"screw": "T20", "clip": "push", "bolt": "hex 7/32 in", "hook": "tab"}
TETHERS: list[Data] = [
    {"kind": "plug"},
    {"kind": "cable"},
    {"kind": "plug", "circuit": "restraint", "then": "leave"},
    {"kind": "plug", "circuit": "restraint", "then": "rejoin"},
]


SIDES = [["left", "right"], ["left", "right"], ["right"]]
EXTRAS: list[Data] = [{}, {}, {"when": {"v": "a"}}, {"side": "left"}]
NEEDS = [{"gear": "lowest"}, {"seat": "forward"}, {"boot": "open"}, {"glass": "up"}, {"glass": "down"}]


@dataclass
class Case:
    """A record as data, which is what a failing test should print."""

    data: Data

    @cached_property
    def record(self) -> VehicleRecord:
        """The record itself."""
        return from_data(self.data)


@st.composite
def records(draw: st.DrawFn, *, routes: bool = True, restraint: bool = True, moves: bool = True) -> Case:
    """A record of 2 to 4 openings. `routes` allows `after_any`, `restraint` open plugs, `moves` parts that go to an opening."""
    count = draw(st.integers(2, 8))
    names = [f"p{number}" for number in range(count)]
    parts = {name: draw(_part(names[:number], names if routes else [], restraint)) for number, name in enumerate(names)}
    if draw(st.integers(0, 7)) == 0:
        parts |= deepcopy(TURNED)
        names += TURNED
    openings = {f"o{number}": draw(_opening(names)) for number in range(draw(st.integers(2, 4)))}
    for name in names if moves else ():
        if draw(st.integers(0, 5)) == 0 and "replaced" not in parts[name]:
            parts[name]["goes_to"] = draw(st.sampled_from(list(openings)))
    preps = {name: PREPS[name] for name in draw(st.lists(st.sampled_from(list(PREPS)), unique=True))}
    order = draw(st.permutations(names))
    return Case(
        {
            "variants": {"v": {"ask": "Which?", "choices": {"a": {"label": "A"}, "b": {"label": "B"}}}},
            "preps": preps,
            "parts": {name: parts[name] for name in order},
            "openings": openings,
            "after_battery": {"before": {"code": {"do": "Ask for the code."}}},
        }
    )


TURNED: dict[str, Data] = {
    "q0": {"after": [{"part": "q1", "when": {"v": "a"}}]},
    "q1": {"after": [{"part": "q0", "when": {"v": "b"}}], "tethers": {"t0": {"name": "Plug", "kind": "plug"}}},
}
"""Two parts of which each comes before the other in some cars, so that there is no order of the whole record."""

PREPS: dict[str, Data] = {
    "battery": {
        "sets": {"battery": "off"},
        "restore": "Join it.",
        "held_by": [{"nut": "hex 10 mm", "count": "1"}],
        "wait": {"time": "3 min", "why": "Reserve power"},
    },
    "lever": {"sets": {"gear": "lowest"}, "needs": {"battery": "on"}, "restore": "Push it forward."},
}


@st.composite
def _part(draw: st.DrawFn, earlier: list[str], routes: list[str], restraint: bool) -> Data:
    """A part that comes after some of the earlier ones, so that no circle arises but by routes, which may be any parts."""
    item: Data = {"takes": draw(st.sampled_from(["1 min", "2 min", "30 s", "5 min"]))}
    if draw(st.booleans()):
        sides: list[str] = draw(st.sampled_from(SIDES))
        item["each"] = sides
    if draw(st.integers(0, 4)) == 0:
        item["when"] = {"v": draw(st.sampled_from("ab"))}
    if draw(st.integers(0, 4)) == 0:
        item["needs"] = draw(st.sampled_from(NEEDS))
    if draw(st.booleans()) and earlier:
        item["after"] = draw(st.lists(_ref(earlier), min_size=1, max_size=2, unique_by=str))
    if len(routes) > 1 and draw(st.integers(0, 2)) == 0:
        item["after_any"] = [draw(_routes(routes if draw(st.integers(0, 3)) == 0 or len(earlier) < 2 else earlier))]
    if fasteners := draw(st.lists(_fastener(earlier), max_size=3)):
        item["held_by"] = fasteners
    kinds = TETHERS if restraint else TETHERS[:3]
    tethers = draw(st.lists(st.sampled_from(kinds), max_size=2))
    if tethers:
        item["tethers"] = {f"t{n}": {"name": f"Tether {n}", **kind} for n, kind in enumerate(tethers)}
    if draw(st.integers(0, 5)) == 0:
        item["replaced"] = "yes"
        item["tethers"] = {name: tether for name, tether in item.get("tethers", {}).items() if "then" not in tether}
    elif draw(st.integers(0, 5)) == 0:
        item["seal"] = "butyl cord"
    return {key: value for key, value in item.items() if value}


@st.composite
def _ref(draw: st.DrawFn, earlier: list[str]) -> Any:
    name = draw(st.sampled_from(earlier))
    extra = draw(st.sampled_from(EXTRAS))
    return {"part": name, **extra} if extra else name


@st.composite
def _routes(draw: st.DrawFn, earlier: list[str]) -> Data:
    one, other = draw(st.permutations(earlier))[:2]
    return {"above": [draw(_ref([one]))], "below": [other]}


@st.composite
def _fastener(draw: st.DrawFn, earlier: list[str]) -> Data:
    kind = draw(st.sampled_from(FASTENERS))
    item: Data = {kind: WHAT[kind]}
    if draw(st.integers(0, 3)):
        item["count"] = draw(st.sampled_from(["1", "2", "4", "unknown"]))
    for key, value in (("reuse", "no"), ("moves", "yes"), ("leave", "yes")):
        if draw(st.integers(0, 5)) == 0:
            item[key] = value
    if draw(st.integers(0, 4)) == 0:
        item["when"] = {"v": draw(st.sampled_from("ab"))}
    if earlier and draw(st.integers(0, 4)) == 0:
        item["under"] = draw(st.sampled_from(earlier))
    return item


@st.composite
def _opening(draw: st.DrawFn, names: list[str]) -> Data:
    item: Data = {"behind": draw(st.lists(st.sampled_from(names), min_size=1, max_size=2, unique=True))}
    if draw(st.booleans()):
        item["each"] = ["left", "right"]
    if draw(st.integers(0, 5)) == 0:
        item["when"] = {"v": "a"}
    return item
