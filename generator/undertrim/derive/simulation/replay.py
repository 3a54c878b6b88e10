"""The replay itself: what each kind of step does to the car, one function each, that yields the faults of its instant."""

from collections.abc import Callable, Sequence

from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import coming_off, ending, fitting, going_back, powered, preparing, trying
from undertrim.derive.simulation.fault import Fault, Faults
from undertrim.derive.simulation.ways import Ways
from undertrim.derive.simulation.world import World
from undertrim.record.model import Assignment, VehicleRecord


def replay(record: VehicleRecord, car: Assignment, steps: Sequence[Step]) -> list[Fault]:
    """The faults of the first wrong instant, or of the end; an empty list for a safe procedure."""
    return replay_in(Ways(record, car), steps)


def replay_in(ways: Ways, steps: Sequence[Step]) -> list[Fault]:
    """What `replay` says, for who replays many procedures of one car and keeps its ways."""
    world = World(ways.record, ways.car, ways)
    for step in steps:
        faults = list(_ACTS[step.kind](world, step)) or list(powered.as_shown(world, step))
        if faults:
            return faults
    return list(ending.end(world))


def _todo(_: World, __: Step) -> Faults:
    yield from ()


_ACTS: dict[str, Callable[[World, Step], Faults]] = {
    "todo": _todo,
    "prepare": preparing.prepare,
    "wait": preparing.wait,
    "restore": preparing.restore,
    "remove": coming_off.remove,
    "install": fitting.install,
    "move": going_back.move,
    "join": going_back.join,
    "refit": going_back.refit,
    "power": trying.power,
    "test": trying.test,
    "try": trying.try_it,
    "measure": trying.measure,
}
