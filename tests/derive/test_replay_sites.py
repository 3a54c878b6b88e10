"""Every place at which the replay finds a fault is reached by a spoiled procedure, so that none can be switched off unseen.

`PLACES` is written by hand: a place that is taken out of the replay is missed there, and one that is added wants a procedure here.
"""

# Long because it is one table: each place of the replay stands with the procedure that reaches it.

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
from undertrim.derive.simulation import Fault, fault, replay
from undertrim.record.model import VehicleRecord
from undertrim.words import Message, sentence, way_out
from undertrim.words.catalogue import english

PACKAGE = Path(fault.__file__).parent

PLACES = Counter({
    ("needs", "state"): 1,
    ("_battery_going_off", "battery-under-load"): 1,
    ("_battery_going_off", "locked-in"): 1,
    ("remove", "twice"): 1,
    ("parts_off", "order"): 1,
    ("routes_open", "order"): 1,
    ("touched", "restraint-live"): 1,
    ("_waited", "wait-short"): 1,
    ("_waited", "wait-missing"): 1,
    ("take_out", "look-alike"): 1,
    ("take_out", "fastener-missed"): 1,
    ("put_in", "single-use"): 1,
    ("_balance", "fastener-extra"): 1,
    ("_balance", "fastener-left-over"): 1,
    ("power", "state"): 1,
    ("power", "restraint-open"): 1,
    ("test", "order"): 1,
    ("_must_be_off", "order"): 1,
    ("_nothing_shut_in", "order"): 1,
    ("restore", "locked-in"): 1,
    ("restore", "restraint-open"): 1,
    ("end", "unsealed"): 1,
    ("end", "left-off"): 1,
    ("end", "unrestored"): 1,
    ("end", "state"): 1,
    ("left_over", "fastener-left-over"): 1,
    ("never_tested", "untested"): 1,
    ("install", "tether-fate"): 1,
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
    ("before_it_is_heard", "driver-late"): 1,
    ("driven", "driver-late"): 1,
    ("what_it_uses", "test-unjoined"): 1,
    ("what_it_uses", "test-without-window"): 1,
    ("joined_already", "tether-open"): 1,
    ("fed", "state"): 1,
    ("tried", "try-before-refit"): 1,
    ("asleep", "state"): 1,
    ("never_tried", "untried"): 1,
    ("never_tried", "lamp-unwatched"): 1,
})  # fmt: skip


SAID_ELSEWHERE = {"replay/tangled"}
"""What a rule says of a procedure that cannot be planned, and so cannot be replayed."""


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
    return isinstance(call.func, ast.Name) and call.func.id == "fault"


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
    return [*steps[:place], test, replace(test, id="test:shelf:window", detail="window"), *steps[place + 1 :]]


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
    ("restore", "restraint-open"): ("rejoin", "whole-travel", earlier("restore:battery", "refit:trim")),
    ("restore", "locked-in"): ("rejoin", "whole-travel", earlier("restore:open", "restore:battery")),
    ("remove", "twice"): ("rejoin", "whole-travel", twice("remove:cup")),
    ("routes_open", "order"): ("rejoin", "whole-travel", dropped("remove:cup", "refit:cup")),
    ("nothing_loose", "seat-loose"): ("rejoin", "whole-travel", lambda steps: moved(steps, one(steps, "refit:seat"), one(steps, "power:on:try"))),
    ("nothing_loose", "restraint-loose"): ("leave", "whole-travel", lambda steps: moved(moved(steps, one(steps, "refit:trim"), one(steps, "power:on:try")), one(steps, "refit:cup"), one(steps, "power:on:try"))),
    ("_must_be_off", "order"): ("rejoin", "whole-travel", twice("refit:seat")),
    ("_balance", "fastener-extra"): ("rejoin", "whole-travel", twice("refit:seat")),
    ("end", "state"): ("rejoin", "whole-travel", dropped("power:off:try", "measure:rest")),
    ("ignition_off", "state"): ("rejoin", "whole-travel", dropped("power:off")),
    ("power", "restraint-open"): ("rejoin", "whole-travel", lambda steps: moved(dropped("restore:battery")(steps), one(steps, "refit:trim"), one(steps, "power:off"))),
    ("_battery_going_off", "battery-under-load"): ("rejoin", "whole-travel", earlier("power:on:try", "prepare:battery")),
    ("left_over", "fastener-left-over"): ("rejoin", "whole-travel", _forgotten_clamp),
    ("_wrong", "tether-extra"): ("rejoin", "whole-travel", _joined_again),
    ("_wrong", "restraint-open"): ("rejoin", "whole-travel", _acts("refit:trim", "park")),
    ("_wrong", "tether-fate"): ("rejoin", "whole-travel", _acts("install:dash:seat", "park")),
    ("install", "tether-fate"): ("rejoin", "whole-travel", _of_another),
    ("_others_back", "order"): ("rejoin", "whole-travel", earlier("refit:mat", "refit:sill")),
    ("_renewed", "single-use"): ("rejoin", "whole-travel", changed("refit:seat", new=True)),
    ("joined_already", "tether-open"): ("rejoin", "no-glass", dropped("join:switch", "test:shelf:sound", "test:dash:sound")),
    ("what_it_uses", "test-without-window"): ("rejoin", "no-glass", _window_by_hand),
    ("what_it_uses", "test-unjoined"): ("rejoin", "whole-travel", lambda steps: moved(steps, one(steps, "join:switch"), one(steps, "power:off"))),
    ("_battery_going_off", "locked-in"): ("rejoin", "whole-travel", dropped("prepare:open", "restore:open")),
    ("test", "order"): ("rejoin", "whole-travel", lambda steps: [s for s in steps if not s.id.startswith("install:shelf")]),
    ("take_out", "fastener-missed"): ("rejoin", "whole-travel", changed("remove:seat", fasteners=())),
    ("tried", "try-before-refit"): ("rejoin", "whole-travel", lambda steps: moved(steps, one(steps, "try:switch"), one(steps, "power:off"))),
}  # fmt: skip


KNOB = """
    parts:
      knob: {reuse: no, tethers: {flap: {name: Flap cable, kind: cable, then: goes-with, test: Turn it.}}}
      radio: {replaced: yes, after: [knob], tethers: {main: {name: Main plug, kind: plug, serves: [sound]}}}
    openings:
      dash: {behind: [radio]}
"""


def _announced(steps: Steps) -> Steps:
    """The removal says that the plug is left off, and it goes to the new gear."""
    (line,) = one(steps, "remove:radio").tethers
    return changed("remove:radio", tethers=(replace(line, later=("park",)),))(steps)


OF_THE_SAME_PLACE: dict[str, Callable[[Steps], Steps]] = {
    "replay/never-laid-back": changed("refit:knob", tethers=()),
    "replay/part-single-use": changed("refit:knob", new=False),
    "replay/untested": dropped("test:knob:flap"),
    "replay/ends-as-not-announced": _announced,
    "acts/lay-in": twice("refit:knob"),
    "acts/bridge": _acts("install:dash:seat", "bridge"),
}
"""Sentences that share their kind and place with another one."""

BAY = """
    parts:
      cover: {}
      speaker: {replaced: yes, tethers: {main: {name: Speaker plug, kind: plug, serves: [sound]}}}
    openings:
      shelf: {kind: speaker, area: cab-rear, behind: [speaker], depth: {clear: 60 mm, over: no-glass}}
      bay: {kind: amplifier, behind: [cover]}
"""


def _tried_before_fitted(steps: Steps) -> Steps:
    """The amplifier goes in once its speakers were tried, battery off and on again in between left aside."""
    fitted = [step for step in steps if step.id.startswith("install:bay")]
    for step in fitted:
        steps = moved(steps, step, one(steps, "power:off"))
    return dropped("test:bay:on", "test:bay:sound")(steps)


DRIVEN: dict[tuple[str, str], Callable[[Steps], Steps]] = {
    ("driven", "driver-late"): earlier("test:shelf:sound", "test:bay:on"),
    ("before_it_is_heard", "driver-late"): _tried_before_fitted,
}


@pytest.mark.parametrize("place", DRIVEN, ids=":".join)
def test_speakers_are_tried_with_their_amplifier_joined_and_on(
    place: tuple[str, str], reached: set[tuple[str, str]]
) -> None:
    about = record(BAY)
    good = stateless(plan(about, "shelf", "bay").steps)
    assert replay(about, {}, good) == []
    assert place[1] in {item.kind for item in replay(about, {}, DRIVEN[place](good))}
    assert place in reached


@pytest.mark.parametrize("code", OF_THE_SAME_PLACE)
def test_a_sentence_is_said_by_hand(code: str) -> None:
    about = record(KNOB)
    good = stateless(plan(about, "dash").steps)
    assert replay(about, {}, good) == []
    found = replay(about, {}, OF_THE_SAME_PLACE[code](good))
    assert code in {said for item in found for said in (item.said.code, *_inside(item))}


@pytest.fixture
def reached(monkeypatch: pytest.MonkeyPatch) -> set[tuple[str, str]]:
    """Where faults are made while a test runs."""
    found: set[tuple[str, str]] = set()
    made = fault.fault

    def noted(kind: str, /, *rest: Any, **more: Any) -> fault.Fault:
        found.add((sys._getframe(1).f_code.co_name, kind))
        return made(kind, *rest, **more)

    for name, module in list(sys.modules.items()):
        if name.startswith("undertrim.derive.simulation.") and getattr(module, "fault", None) is made:
            monkeypatch.setattr(module, "fault", noted)
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
    said = {code for item in _all_found() for code in (item.said.code, *_inside(item))}
    assert set(PLACES) <= reached, set(PLACES) - reached
    assert {*codes("replay"), *codes("acts")} - said - set(OF_THE_SAME_PLACE) == SAID_ELSEWHERE


def codes(room: str) -> set[str]:
    return {f"{room}/{name}" for name in english(room)}


def _inside(item: Fault) -> list[str]:
    """The codes of messages inside of a message, all of which can be said."""
    assert sentence(item.said)
    assert way_out(item.said) is not None
    return [value.code for value in item.said.values.values() if isinstance(value, Message)]


def _all_found() -> Iterator[Fault]:
    """Every fault of every spoiled procedure; each makes a sentence."""
    for then, over, spoil in BY_HAND.values():
        text = ROUTES.replace("THEN", then).replace("OVER", over)
        about = record(text if over == "no-glass" else text.replace("area: cab-rear, ", "area: front-door, "))
        yield from replay(about, {}, spoil(stateless(plan(about, "dash", "shelf").steps)))
    for unlit in DRIVEN.values():
        yield from replay(record(BAY), {}, unlit(stateless(plan(record(BAY), "shelf", "bay").steps)))
    for about, car, good in _good():
        for spoiler, _kinds in SPOILERS.values():
            for bad in spoiler(about, good):
                yield from replay(about, car, bad)


def _good() -> Iterator[tuple[VehicleRecord, dict[str, str], Steps]]:
    for path in RECORDS:
        about = record_of(path)
        car = dict(next(iter(cars.assignments(about))))
        yield about, car, stateless(Planner(about).plan(targets(about), car).steps)
