"""Puts the steps of a visit together from its ordered nodes: opening up, fitting, testing, closing."""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from undertrim.derive.procedure import cautions, closing, fates, refit_zones, running, states, steps, waits, way_back
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.refit_zones import Zones
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.walks import reach
from undertrim.record.model import Assignment, Opening, Part, Prep, VehicleRecord
from undertrim.words import message

Key = tuple[str, ...]


@dataclass
class Shelf:
    """Steps kept while a record is planned, those that are the same in all its cars for all of them."""

    record: VehicleRecord
    returning: Collection[str] = ()
    """Nodes of replaced parts that some visits put back."""
    made: dict[Key, tuple[Step, ...]] = field(default_factory=dict)
    stated: dict[tuple[int, str, str], Step] = field(default_factory=dict)
    plain: dict[str, bool] = field(default_factory=dict)

    def is_plain(self, node: Node) -> bool:
        """Whether nothing about the node differs from car to car."""
        if node.id not in self.plain:
            self.plain[node.id] = not any(steps.conditions(node.thing))
        return self.plain[node.id]


class Bench:
    """The steps of one car's nodes with their cautions, made once each and shared by its visits."""

    def __init__(self, shelf: Shelf, car: Assignment, preparing: Collection[str]) -> None:
        self.record = shelf.record
        self.car = car
        self._shelf = shelf
        self._preparing = preparing
        self._made: dict[Key, tuple[Step, ...]] = {}

    def open_up(self, node: Node) -> tuple[Step, ...]:
        """Do a preparation or take a part off."""
        section = "prepare" if node.id in self._preparing else "remove"
        if isinstance(node.thing, Prep):
            after = () if takes_battery_off(node) else waits.after(node.thing, self.record)
            return self._once(("open", section), node, lambda: steps.prepare(node, self.car, section, after))
        return self._once(
            ("open", section),
            node,
            lambda: steps.remove(node, self.car, section, returns=node.id in self._shelf.returning),
        )

    def wait(self, battery: Node, *, last: bool) -> tuple[Step, ...]:
        """Wait once a battery is off: in full after the last one, else only what the preparation itself asks for."""
        prep = battery.thing
        assert isinstance(prep, Prep)
        after = waits.after(prep, self.record) if last else waits.own(prep)
        section, short = "prepare" if battery.id in self._preparing else "remove", "" if last else ":own"
        return self._once(("wait", str(last)), battery, lambda: steps.wait_for(battery, section, after, short))

    def again(self, made: Iterable[Step]) -> tuple[Step, ...]:
        """The same steps once more, in the refit."""
        return tuple(self._repeated(step) for step in made)

    def _repeated(self, step: Step) -> Step:
        key = (step.id, "again")
        if key not in self._made:
            title = step.title if step.kind == "wait" else message("steps/again", title=step.title)
            self._made[key] = (
                replace(
                    step,
                    id=f"{step.id}:again",
                    section="refit",
                    title=title,
                    text=(message(f"steps/again-{step.kind}"), *(() if step.kind == "wait" else step.text)),
                    again=True,
                ),
            )
        return self._made[key][0]

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
        return self._once(("undo",), node, lambda: steps.restore(node, self.car, section))

    def put_back(self, node: Node) -> tuple[Step, ...]:
        """Refit a part and test its cables and rods."""
        return self._once(("back",), node, lambda: steps.refit(node, self.car))

    def move_over(self, node: Node, opening: Node) -> tuple[Step, ...]:
        """Move a part over to the new parts of an opening."""
        return self._once(("move", opening.id), node, lambda: steps.move_over(node, opening, self.car))

    def install(self, opening: Node, replaced: Sequence[Node] = ()) -> tuple[Step, ...]:
        """Fit new gear in the place of some parts, and say what becomes of what was joined to them."""
        here = [part for part in replaced if fates.only_there(self.record, part, opening)]
        apart = [part for part in replaced if part not in here]
        key = ("install", *(part.id for part in replaced))
        return self._once(key, opening, lambda: steps.install(opening, self.car, here, apart), also=replaced)

    def tests(self, opening: Node) -> tuple[Step, ...]:
        """Test new gear."""
        return self._once(("test",), opening, lambda: steps.opening_tests(opening))

    def todos(self, which: str) -> tuple[Step, ...]:
        """What to do before the battery goes off, or after it is back."""
        return self._once(("todo", which), None, lambda: steps.todos(self.record, self.car, which))

    def power(self, way: str, section: str, *, restraint: bool) -> tuple[Step, ...]:
        """Switch the ignition on or off; `restraint` says that the visit touches restraint wiring."""
        key = ("power", way, section, str(restraint))
        return self._once(key, None, lambda: steps.power(way, section), restraint=restraint)

    def touches_restraint(self, node: Node) -> bool:
        """Whether the part carries restraint wiring."""
        return isinstance(node.thing, Part) and steps.on_restraint(node.thing, self.car)

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
        key = (id(step), now["battery"], now["ignition"])  # every step here stays on the shelf or the bench
        kept = self._shelf.stated
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
        made = self._shelf.made if node and all(map(self._shelf.is_plain, (node, *also))) else self._made
        if key not in made:
            made[key] = tuple(cautions.add(step, self.record, self.car, restraint=restraint) for step in make())
        return made[key]


@dataclass(frozen=True, slots=True)
class Refit:
    """The way back where it is not the plain reverse: what waits for what as written, the place of each node, and the battery meanwhile."""

    after: Mapping[str, Collection[str]] = field(default_factory=dict)
    place: Mapping[str, int] = field(default_factory=dict)
    zones: Zones = field(default_factory=Zones)


PLAIN = Refit()


class Assembly:
    """One visit: its nodes in their order, for each what comes before it, and with which openings some do not come back.

    `every` says that the steps of all visits are wanted, of which each visit has some: `also_refit` names parts that come back in some
    visits and stay off in others, and a replaced part ends with each opening with which it may.
    """

    def __init__(
        self,
        bench: Bench,
        ordered: Sequence[Node],
        before: Mapping[str, Collection[str]],
        homes: Mapping[str, Collection[str]],
        refit: Refit = PLAIN,
        also_refit: Collection[str] = (),
        *,
        every: bool = False,
    ) -> None:
        self.bench = bench
        self.done = [node for node in ordered if not isinstance(node.thing, Opening)]
        self.openings = [node for node in ordered if isinstance(node.thing, Opening)]
        self.battery = [node for node in self.done if takes_battery_off(node)]
        self.every = every
        self.before = before
        self.homes = homes
        self.also_refit = also_refit
        self.refit = refit
        self.waits = way_back.waits({node.id: before[node.id] for node in self.done}, refit.after)
        self.home = {node.id: opening for node in self.done if (opening := self._home(node))}

    def steps(self) -> tuple[Step, ...]:
        """All steps from before the first screw to after the last."""
        return tuple(self._with_states(self._bare()))

    def ids(self) -> tuple[str, ...]:
        """The ids of all steps."""
        return tuple(step.id for step in self._bare())

    def _bare(self) -> Iterator[Step]:
        if self.battery:
            yield from self.bench.todos("before")
        for node in self.done:
            yield from self.bench.open_up(node)
            if node in self.battery:
                yield from self._wait(node)
        yield from self._fitting()
        yield from self._closing()
        yield from self._trying()
        if self.battery:
            yield from self.bench.todos("after")
        if self.openings:
            yield from self.bench.general("rest", lambda: closing.at_rest(self.bench.record.rest))

    def _wait(self, battery: Node) -> Iterator[Step]:
        last = battery is self.battery[-1]
        if self.every or not last:
            yield from self.bench.wait(battery, last=False)
        if self.every or last:
            yield from self.bench.wait(battery, last=True)

    def _home(self, node: Node) -> Node | None:
        """The first opening of this visit with which a part is replaced or moves over."""
        return next((opening for opening in self.openings if opening.id in self.homes.get(node.id, ())), None)

    def _comes_back(self, node: Node) -> bool:
        return node.id not in self.home or node.id in self.also_refit

    def _fitting(self) -> Iterator[Step]:
        for opening in self.openings:
            for node in self.done:
                if self.home.get(node.id) is opening and isinstance(node.thing, Part) and node.thing.replaced == "no":
                    yield from self.bench.move_over(node, opening)
            yield from self.bench.install(opening, [node for node in self.done if self._replaced_at(node, opening)])

    def _replaced_at(self, node: Node, opening: Node) -> bool:
        here = self.home.get(node.id) is opening or (self.every and opening.id in self.homes.get(node.id, ()))
        return here and isinstance(node.thing, Part) and node.thing.replaced == "yes"

    def _closing(self) -> Iterator[Step]:
        """The way back; before battery and tests only what must be back before power."""
        back = [node for node in self._back() if node not in self.battery]
        early = self.early()
        if self.openings:
            for node in back:
                yield from self._join(node)
        for node in back:
            if node.id in early:
                yield from self._put_back(node)
        yield from self._power_and_test()
        live, dead, last = refit_zones.in_zones([node for node in back if node.id not in early], self.refit.zones)
        for node in live:
            yield from self._put_back(node)
        yield from self._with_battery_off_again(dead)
        for node in last:
            yield from self._put_back(node)

    def _with_battery_off_again(self, dead: Sequence[Node]) -> Iterator[Step]:
        again = self.every and bool(self.refit.zones.dead)
        if again or any(self._comes_back(node) and self.bench.wants_battery_off(node) for node in dead):
            for battery in self.battery:
                yield from self.bench.again((*self.bench.open_up(battery), *self._wait(battery)))
            for node in dead:
                yield from self._put_back(node)
            for battery in reversed(self.battery):
                yield from self.bench.again(self.bench.undo(battery, "test"))
        else:
            for node in dead:
                yield from self._put_back(node)

    def _back(self) -> list[Node]:
        if not self.refit.place:
            return self.done[::-1]
        nodes = {node.id: node for node in self.done}
        return [nodes[name] for name in way_back.in_order(sorted(nodes, key=self.refit.place.__getitem__), self.waits)]

    def early(self) -> set[str]:
        """Parts that must be back before power, with all that must be back before them."""
        battery = {node.id for node in self.battery}
        wanted = {node.id for node in self.done if self.bench.back_before_power(node) and self._comes_back(node)}
        return reach(self.waits, wanted - battery, avoid=battery)

    def _join(self, node: Node) -> Iterable[Step]:
        return self.bench.join(node) if isinstance(node.thing, Part) and self._comes_back(node) else ()

    def _trying(self) -> Iterator[Step]:
        """Power once more, and everything tried that was joined again."""
        restraint = self._touches_restraint()
        back = [node for node in self.done if isinstance(node.thing, Part) and self._stays(node)]
        tries = [*(self.bench.general("restraint", closing.restraint_lamp) if restraint else ())]
        tries += [step for node in back for step in self.bench.try_out(node)]
        if tries and self.openings:
            yield from self.bench.power("on", "try", restraint=restraint)
            yield from tries
            yield from self.bench.power("off", "try", restraint=restraint)

    def _stays(self, node: Node) -> bool:
        """Whether a part is in the car at the end: refitted or moved over."""
        return self._comes_back(node) or (isinstance(node.thing, Part) and node.thing.replaced == "no")

    def _touches_restraint(self) -> bool:
        return any(self.bench.touches_restraint(node) for node in self.done)

    def _put_back(self, node: Node) -> Iterable[Step]:
        if isinstance(node.thing, Prep):
            return () if self._set_back(node, node.thing) else self.bench.undo(node)
        return self.bench.put_back(node) if self._comes_back(node) else ()

    def _set_back(self, node: Node, prep: Prep) -> bool:
        """Whether a later preparation has already set everything back to how the car arrived."""
        later = [other.thing.sets for other in self.done[self.done.index(node) + 1 :] if isinstance(other.thing, Prep)]
        return all(any(sets.get(state) == states.initial()[state] for sets in later) for state in prep.sets)

    def _power_and_test(self) -> Iterator[Step]:
        restraint = self._touches_restraint()
        for battery in reversed(self.battery):
            yield from self.bench.undo(battery, "test")
        if self.openings:
            yield from self.bench.power("on", "test", restraint=restraint)
            for node in self.openings:
                yield from self.bench.tests(node)
            yield from self.bench.power("off", "test", restraint=restraint)

    def _with_states(self, made: Iterable[Step]) -> Iterator[Step]:
        """Each step with the state of battery and ignition while it is done."""
        kept = list(made)
        yield from (self.bench.stated(step, now) for step, now in zip(kept, running.states_of(kept), strict=True))


def takes_battery_off(node: Node) -> bool:
    """Whether a node is a battery going off."""
    return isinstance(node.thing, Prep) and node.thing.sets.get("battery") == "off"
