"""The steps of one car, made once each: what its visits share, and what all cars of the record share."""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from undertrim.derive.procedure import (
    cautions,
    closing,
    fates,
    gear_steps,
    general_steps,
    part_steps,
    prep_steps,
    refit_zones,
    waits,
)
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, Opening, Part, Prep, VehicleRecord, When
from undertrim.words import message

Key = tuple[str, ...]
Holding = tuple[bool, ...]


@dataclass
class RecordSteps:
    """Steps kept while a record is planned, each for all cars in which all that it is made of is the same."""

    record: VehicleRecord
    returning: Collection[str] = ()
    """Nodes of replaced parts that some visits put back."""
    made: dict[tuple[Key, Holding], tuple[Step, ...]] = field(default_factory=dict)
    stated: dict[tuple[int, str, str], Step] = field(default_factory=dict)
    _again: dict[int, Step] = field(default_factory=dict)
    _conditions: dict[str, tuple[When, ...]] = field(default_factory=dict)

    def repeated(self, step: Step) -> Step:
        """A step that is done once more; every step here stays with the record."""
        if id(step) not in self._again:
            title = step.title if step.kind == "wait" else message("steps/again", title=step.title)
            self._again[id(step)] = replace(
                step,
                id=f"{step.id}:again",
                section="refit",
                title=title,
                text=(message(f"steps/again-{step.kind}"), *(() if step.kind == "wait" else step.text)),
                again=True,
            )
        return self._again[id(step)]

    def holding(self, nodes: Sequence[Node], car: Assignment) -> Holding:
        """Which of the conditions hold in a car, under which something about these nodes, or what is to do about the battery, differs from car to car."""
        return tuple(when.holds(car) for node in nodes or (None,) for when in self._of(node))

    def _of(self, node: Node | None) -> tuple[When, ...]:
        name = node.id if node else ""
        if name not in self._conditions:
            self._conditions[name] = tuple(_conditions(node.worked) if node else _of_todos(self.record))
        return self._conditions[name]


class CarSteps:
    """The steps of one car's nodes with their cautions, made once each and shared by its visits."""

    def __init__(self, of_record: RecordSteps, car: Assignment, preparing: Collection[str]) -> None:
        self.record = of_record.record
        self.car = car
        self._of_record = of_record
        self._preparing = preparing
        self._made: dict[Key, tuple[Step, ...]] = {}

    def open_up(self, node: Node) -> tuple[Step, ...]:
        """Do a preparation or take a part off."""
        section = "prepare" if node.id in self._preparing else "remove"
        if isinstance(node.thing, Prep):
            after = () if takes_battery_off(node) else waits.after(node.thing, self.record)
            return self._once(("open", section), node, lambda: prep_steps.prepare(node, self.car, section, after))
        return self._once(
            ("open", section),
            node,
            lambda: part_steps.remove(node, self.car, section, returns=node.id in self._of_record.returning),
        )

    def wait(self, battery: Node, *, last: bool) -> tuple[Step, ...]:
        """Wait once a battery is off: in full after the last one, else only what the preparation itself asks for."""
        prep = battery.thing
        assert isinstance(prep, Prep)
        after = waits.after(prep, self.record) if last else waits.own(prep)
        section, short = "prepare" if battery.id in self._preparing else "remove", "" if last else ":own"
        return self._once(
            ("wait", section, short), battery, lambda: prep_steps.wait_for(battery, section, after, short)
        )

    def again(self, made: Iterable[Step]) -> tuple[Step, ...]:
        """The same steps once more, in the refit."""
        return tuple(self._of_record.repeated(step) for step in made)

    def join(self, node: Node) -> tuple[Step, ...]:
        """Join the plugs of a part that a test may use."""
        return self._once(("join",), node, lambda: closing.join(node, self.car))

    def try_out(self, node: Node) -> tuple[Step, ...]:
        """Try what was joined again to a part."""
        return self._once(("try",), node, lambda: closing.try_out(node, self.car))

    def general(self, what: str, make: Callable[[], Iterable[Step]]) -> tuple[Step, ...]:
        """Steps about no part."""
        return self._once((what,), None, make)

    def undo(self, node: Node, section: str = "restore") -> tuple[Step, ...]:
        """Undo a preparation; nothing where nothing needs undoing."""
        return self._once(("undo",), node, lambda: prep_steps.restore(node, self.car, section))

    def put_back(self, node: Node) -> tuple[Step, ...]:
        """Refit a part and test its cables and rods."""
        return self._once(("back",), node, lambda: part_steps.refit(node, self.car))

    def move_over(self, node: Node, opening: Node) -> tuple[Step, ...]:
        """Move a part over to the new parts of an opening."""
        return self._once(("move", opening.id), node, lambda: part_steps.move_over(node, opening, self.car))

    def install(self, opening: Node, replaced: Sequence[Node] = ()) -> tuple[Step, ...]:
        """Fit new gear in the place of some parts, and say what becomes of what was joined to them."""
        here = [part for part in replaced if fates.only_there(self.record, part, opening)]
        apart = [part for part in replaced if part not in here]
        key = ("install", *(part.id for part in replaced))
        return self._once(
            key, opening, lambda: gear_steps.install(self.record, opening, self.car, here, apart), also=replaced
        )

    def tests(self, opening: Node) -> tuple[Step, ...]:
        """Test new gear."""
        return self._once(("test",), opening, lambda: gear_steps.opening_tests(opening))

    def todos(self, which: str) -> tuple[Step, ...]:
        """What to do before the battery goes off, or after it is back."""
        return self._once(("todo", which), None, lambda: general_steps.todos(self.record, self.car, which))

    def power(self, way: str, section: str, *, restraint: bool) -> tuple[Step, ...]:
        """Switch the ignition on or off; `restraint` says that the visit touches restraint wiring."""
        key = ("power", way, section, str(restraint))
        return self._once(key, None, lambda: general_steps.power(way, section), restraint=restraint)

    def touches_restraint(self, node: Node) -> bool:
        """Whether the part carries restraint wiring."""
        return isinstance(node.thing, Part) and _on_restraint(node.thing, self.car)

    def back_before_power(self, node: Node) -> bool:
        """Whether the ignition must stay off until the part is back."""
        return isinstance(node.thing, Part) and refit_zones.back_before_power(node.thing, self.car)

    def wants_battery_off(self, node: Node) -> bool:
        """Whether a caution of the way back takes for granted that the battery is off."""
        if not isinstance(node.thing, Part):
            return False
        return any(("battery", "off") in item.state for step in self.put_back(node) for item in step.cautions)

    def stated(self, step: Step, now: Mapping[str, str]) -> Step:
        """The step with the state the car is in meanwhile."""
        key = (id(step), now["battery"], now["ignition"])  # every step here stays with the record
        kept = self._of_record.stated
        if key not in kept:
            kept[key] = replace(step, state=now)
        return kept[key]

    def _once(
        self,
        what: Key,
        node: Node | None,
        make: Callable[[], Iterable[Step]],
        *,
        restraint: bool = False,
        also: Sequence[Node] = (),
    ) -> tuple[Step, ...]:
        key = (*what, node.id) if node else what
        if key not in self._made:
            made, shared = self._of_record.made, (key, self._of_record.holding((node, *also) if node else (), self.car))
            if shared not in made:
                made[shared] = tuple(cautions.add(step, self.record, self.car, restraint=restraint) for step in make())
            self._made[key] = made[shared]
        return self._made[key]


def _on_restraint(part: Part, car: Assignment) -> bool:
    """Whether the part carries restraint wiring."""
    return any(tether.circuit == "restraint" and tether.when.holds(car) for tether in part.tethers.values())


def _conditions(thing: Part | Prep | Opening) -> Iterator[When]:
    """The conditions under which something about it differs from car to car; that it is there at all is not one."""
    fasteners = () if isinstance(thing, Opening) else thing.held_by
    tethers = thing.tethers.values() if isinstance(thing, Part) else ()
    for item in (*fasteners, *tethers, *thing.cautions):
        if item.when.clauses:
            yield item.when


def _of_todos(record: VehicleRecord) -> Iterator[When]:
    """The conditions of what is to do about the battery: of the steps about no part no others differ from car to car."""
    known = record.after_battery
    return (todo.when for which in (known.before, known.after) for todo in which.values()) if known else iter(())


def takes_battery_off(node: Node) -> bool:
    """Whether a node is a battery going off."""
    return isinstance(node.thing, Prep) and node.thing.sets.get("battery") == "off"
