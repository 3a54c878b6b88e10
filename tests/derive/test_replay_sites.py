"""Every place at which the replay finds a fault is reached by a spoiled procedure, so that none can be switched off unseen.

`PLACES` is written by hand: a place that is taken out of the replay is missed there, and one that is added wants a procedure here.
"""

import ast
import sys
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from making import plan, record
from spoiling import RECORDS, SPOILERS, Steps, moved, record_of, stateless, swapped
from undertrim.derive import cars
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import fault, powered, replay, tethers
from undertrim.record.model import VehicleRecord

PACKAGE = Path(fault.__file__).parent

PLACES = Counter({
    ("_needs", "state"): 1,
    ("_battery_going_off", "battery-under-load"): 1,
    ("_battery_going_off", "locked-in"): 1,
    ("_remove", "twice"): 1,
    ("_parts_off", "order"): 1,
    ("_routes_open", "order"): 1,
    ("_restraint_touched", "restraint-live"): 1,
    ("_restraint_touched", "wait-short"): 1,
    ("_restraint_touched", "wait-missing"): 1,
    ("_take_out", "look-alike"): 1,
    ("_take_out", "fastener-missed"): 1,
    ("_put_in", "single-use"): 1,
    ("_balance", "fastener-extra"): 1,
    ("_balance", "fastener-left-over"): 1,
    ("_power", "state"): 1,
    ("_power", "restraint-open"): 1,
    ("_test", "order"): 1,
    ("_must_be_off", "order"): 1,
    ("_nothing_shut_in", "order"): 1,
    ("_restore", "locked-in"): 1,
    ("_restore", "restraint-open"): 1,
    ("_end", "unsealed"): 1,
    ("_end", "left-off"): 1,
    ("_end", "unrestored"): 1,
    ("_end", "state"): 1,
    ("_left_over", "fastener-left-over"): 1,
    ("_never_tested", "untested"): 1,
    ("_install", "tether-fate"): 1,
    ("_others_back", "order"): 1,
    ("_renewed", "single-use"): 1,
    ("come_off", "tether-missed"): 1,
    ("_wrong", "tether-extra"): 1,
    ("_wrong", "restraint-open"): 1,
    ("_wrong", "tether-fate"): 2,
    ("left_open", "tether-open"): 2,
    ("as_shown", "state-shown"): 1,
    ("as_shown", "caution-state"): 1,
    ("ignition_off", "state"): 1,
    ("nothing_loose", "seat-loose"): 1,
    ("nothing_loose", "restraint-loose"): 1,
    ("what_it_uses", "test-unjoined"): 1,
    ("what_it_uses", "test-without-window"): 1,
    ("joined_already", "tether-open"): 1,
    ("fed", "state"): 1,
    ("tried", "try-before-refit"): 1,
    ("asleep", "state"): 1,
    ("never_tried", "untried"): 1,
    ("never_tried", "lamp-unwatched"): 1,
})  # fmt: skip


def written() -> Counter[tuple[str, str]]:
    """The places in the source: the function, and the kind of fault."""
    found: Counter[tuple[str, str]] = Counter()
    for path in PACKAGE.glob("*.py"):
        for function in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(function, ast.FunctionDef):
                calls = (node for node in ast.walk(function) if isinstance(node, ast.Call))
                found.update((function.name, call.args[0].value) for call in calls if _is_fault(call))  # type: ignore[attr-defined]
    return found


def _is_fault(call: ast.Call) -> bool:
    return isinstance(call.func, ast.Name) and call.func.id == "Fault"


def test_the_places_are_those_of_the_replay() -> None:
    assert written() == PLACES


ROUTES = """
    restraint: {wait: 3 min}
    closures: {boot: {latch: electric, key: no}}
    preps:
      open: {sets: {boot: open}, needs: {battery: on}, restore: Shut it.}
      battery: {area: boot, sets: {battery: off}, needs: {ignition: off, boot: open}, restore: Join it., held_by: [{nut: hex 10 mm, count: 1}]}
    parts:
      cup: {takes: 1 min}
      tray: {takes: 9 min}
      mat: {refit_after: [sill]}
      sill: {}
      seat: {area: seat, held_by: [{bolt: T50, count: 4, role: seat}]}
      trim: {after_any: [{above: [cup], below: [tray]}], tethers: {bag: {name: Bag plug, kind: plug, circuit: restraint, then: THEN}}}
      switch: {tethers: {windows: {name: Switch plug, kind: plug, serves: [windows]}}}
      radio: {replaced: yes, after: [trim, seat, switch, mat, sill], tethers: {main: {name: Main plug, kind: plug, serves: [sound]}}}
    openings:
      dash: {behind: [radio]}
      shelf: {kind: speaker, area: cab-rear, behind: [switch], depth: {clear: 60 mm, over: OVER}}
"""


def one(steps: Steps, name: str) -> Step:
    return next(step for step in steps if step.id == name)


def earlier(what: str, than: str) -> Callable[[Steps], Steps]:
    return lambda steps: moved(steps, one(steps, what), one(steps, than))


def dropped(*names: str) -> Callable[[Steps], Steps]:
    return lambda steps: [step for step in steps if step.id not in names]


def twice(name: str) -> Callable[[Steps], Steps]:
    return lambda steps: [again for step in steps for again in ([step, step] if step.id == name else [step])]


def changed(name: str, **what: Any) -> Callable[[Steps], Steps]:
    return lambda steps: swapped(steps, one(steps, name), replace(one(steps, name), **what))


def _forgotten_clamp(steps: Steps) -> Steps:
    return changed("restore:battery", fasteners=())(steps)


def _joined_again(steps: Steps) -> Steps:
    step = one(steps, "refit:switch")
    return changed("refit:switch", tethers=(TetherLine(step.tethers[0].tether, "rejoin"),))(steps)


def _window_by_hand(steps: Steps) -> Steps:
    test = one(steps, "test:shelf:sound")
    place = steps.index(test)
    return [*steps[:place], test, replace(test, id="test:shelf:window"), *steps[place + 1 :]]


def _acts(name: str, what: str) -> Callable[[Steps], Steps]:
    """Every tether of a step is ended another way."""

    def spoil(steps: Steps) -> Steps:
        lines = one(steps, name).tethers
        return changed(name, tethers=tuple(replace(line, act=what) for line in lines))(steps)

    return spoil


def _of_another(steps: Steps) -> Steps:
    """New gear takes the plug of a part that makes no room for it."""
    switch, fitting = one(steps, "remove:switch"), one(steps, "install:dash:seat")
    line = TetherLine(switch.tethers[0].tether, "to-gear", node=switch.node)
    return changed("install:dash:seat", tethers=(*fitting.tethers, line))(steps)


BY_HAND: dict[tuple[str, str], tuple[str, str, Callable[[Steps], Steps]]] = {
    ("_restore", "restraint-open"): ("rejoin", "whole-travel", earlier("restore:battery", "refit:trim")),
    ("_restore", "locked-in"): ("rejoin", "whole-travel", earlier("restore:open", "restore:battery")),
    ("_remove", "twice"): ("rejoin", "whole-travel", twice("remove:cup")),
    ("_routes_open", "order"): ("rejoin", "whole-travel", dropped("remove:cup", "refit:cup")),
    ("nothing_loose", "seat-loose"): ("rejoin", "whole-travel", lambda steps: moved(steps, one(steps, "refit:seat"), one(steps, "power:on:try"))),
    ("nothing_loose", "restraint-loose"): ("leave", "whole-travel", lambda steps: moved(moved(steps, one(steps, "refit:trim"), one(steps, "power:on:try")), one(steps, "refit:cup"), one(steps, "power:on:try"))),
    ("_must_be_off", "order"): ("rejoin", "whole-travel", twice("refit:seat")),
    ("_balance", "fastener-extra"): ("rejoin", "whole-travel", twice("refit:seat")),
    ("_end", "state"): ("rejoin", "whole-travel", dropped("power:off:try", "measure:rest")),
    ("ignition_off", "state"): ("rejoin", "whole-travel", dropped("power:off")),
    ("_power", "restraint-open"): ("rejoin", "whole-travel", lambda steps: moved(dropped("restore:battery")(steps), one(steps, "refit:trim"), one(steps, "power:off"))),
    ("_battery_going_off", "battery-under-load"): ("rejoin", "whole-travel", earlier("power:on:try", "prepare:battery")),
    ("_left_over", "fastener-left-over"): ("rejoin", "whole-travel", _forgotten_clamp),
    ("_wrong", "tether-extra"): ("rejoin", "whole-travel", _joined_again),
    ("_wrong", "restraint-open"): ("rejoin", "whole-travel", _acts("refit:trim", "park")),
    ("_wrong", "tether-fate"): ("rejoin", "whole-travel", _acts("install:dash:seat", "park")),
    ("_install", "tether-fate"): ("rejoin", "whole-travel", _of_another),
    ("_others_back", "order"): ("rejoin", "whole-travel", earlier("refit:mat", "refit:sill")),
    ("_renewed", "single-use"): ("rejoin", "whole-travel", changed("refit:seat", new=True)),
    ("joined_already", "tether-open"): ("rejoin", "no-glass", dropped("join:switch", "test:shelf:sound", "test:dash:sound")),
    ("what_it_uses", "test-without-window"): ("rejoin", "no-glass", _window_by_hand),
    ("what_it_uses", "test-unjoined"): ("rejoin", "whole-travel", lambda steps: moved(steps, one(steps, "join:switch"), one(steps, "power:off"))),
    ("_battery_going_off", "locked-in"): ("rejoin", "whole-travel", dropped("prepare:open", "restore:open")),
    ("_test", "order"): ("rejoin", "whole-travel", lambda steps: [s for s in steps if not s.id.startswith("install:shelf")]),
    ("_take_out", "fastener-missed"): ("rejoin", "whole-travel", changed("remove:seat", fasteners=())),
    ("tried", "try-before-refit"): ("rejoin", "whole-travel", lambda steps: moved(steps, one(steps, "try:switch"), one(steps, "power:off"))),
}  # fmt: skip


@pytest.fixture
def reached(monkeypatch: pytest.MonkeyPatch) -> set[tuple[str, str]]:
    """Where faults are made while a test runs."""
    found: set[tuple[str, str]] = set()
    made = fault.Fault

    def noted(kind: str, *rest: Any, **more: Any) -> fault.Fault:
        found.add((sys._getframe(1).f_code.co_name, kind))
        return made(kind, *rest, **more)

    for module in (sys.modules["undertrim.derive.simulation.replay"], powered, tethers):
        monkeypatch.setattr(module, "Fault", noted)
    return found


@pytest.mark.parametrize("place", BY_HAND, ids=":".join)
def test_a_fault_is_found_by_hand(place: tuple[str, str], reached: set[tuple[str, str]]) -> None:
    then, over, spoil = BY_HAND[place]
    text = ROUTES.replace("THEN", then).replace("OVER", over)
    about = record(text if over == "no-glass" else text.replace("area: cab-rear, ", "area: front-door, "))
    good = stateless(plan(about, "dash", "shelf").steps)
    assert replay(about, {}, good) == []
    assert place[1] in {item.kind for item in replay(about, {}, spoil(good))}
    assert place in reached


def test_every_place_is_reached(reached: set[tuple[str, str]]) -> None:
    for then, over, spoil in BY_HAND.values():
        text = ROUTES.replace("THEN", then).replace("OVER", over)
        about = record(text if over == "no-glass" else text.replace("area: cab-rear, ", "area: front-door, "))
        replay(about, {}, spoil(stateless(plan(about, "dash", "shelf").steps)))
    for about, car, good in _good():
        for spoiler, _kinds in SPOILERS.values():
            for bad in spoiler(about, good):
                replay(about, car, bad)
    assert set(PLACES) <= reached, set(PLACES) - reached


def _good() -> Iterator[tuple[VehicleRecord, dict[str, str], Steps]]:
    for path in RECORDS:
        about = record_of(path)
        car = dict(next(iter(cars.assignments(about))))
        yield about, car, stateless(Planner(about).plan(targets(about), car).steps)
