"""Puts the steps of a visit together from its ordered nodes: opening up, fitting, testing, closing."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from undertrim.derive.procedure import closing, refit_zones, running, states, way_back
from undertrim.derive.procedure.car_steps import CarSteps, takes_battery_off
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.refit_zones import Zones
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.walks import reach
from undertrim.record.model import Opening, Part, Prep


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
        of_car: CarSteps,
        ordered: Sequence[Node],
        before: Mapping[str, Collection[str]],
        homes: Mapping[str, Collection[str]],
        refit: Refit = PLAIN,
        also_refit: Collection[str] = (),
        *,
        every: bool = False,
    ) -> None:
        self.of_car = of_car
        self.done = [node for node in ordered if isinstance(node.thing, Part | Prep)]
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
            yield from self.of_car.todos("before")
        for node in self.done:
            yield from self.of_car.open_up(node)
            if node in self.battery:
                yield from self._wait(node)
        yield from self._fitting()
        yield from self._closing()
        yield from self._trying()
        if self.battery:
            yield from self.of_car.todos("after")
        if self.openings:
            yield from self.of_car.general("rest", lambda: closing.at_rest(self.of_car.record.rest))

    def _wait(self, battery: Node) -> Iterator[Step]:
        last = battery is self.battery[-1]
        if self.every or not last:
            yield from self.of_car.wait(battery, last=False)
        if self.every or last:
            yield from self.of_car.wait(battery, last=True)

    def _home(self, node: Node) -> Node | None:
        """The first opening of this visit with which a part is replaced or moves over."""
        return next((opening for opening in self.openings if opening.id in self.homes.get(node.id, ())), None)

    def _comes_back(self, node: Node) -> bool:
        return node.id not in self.home or node.id in self.also_refit

    def _fitting(self) -> Iterator[Step]:
        fitted = list(self._fitted() if self.every else _once_each(self._fitted()))
        yield from (step for step in fitted if not step.last)
        yield from (step for step in fitted if step.last)

    def _fitted(self) -> Iterator[Step]:
        for opening in self.openings:
            for node in self.done:
                if self.home.get(node.id) is opening and isinstance(node.thing, Part) and node.thing.replaced == "no":
                    yield from self.of_car.move_over(node, opening)
            yield from self.of_car.install(opening, [node for node in self.done if self._replaced_at(node, opening)])

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
        if again or any(self._comes_back(node) and self.of_car.wants_battery_off(node) for node in dead):
            for battery in self.battery:
                yield from self.of_car.again((*self.of_car.open_up(battery), *self._wait(battery)))
            for node in dead:
                yield from self._put_back(node)
            for battery in reversed(self.battery):
                yield from self.of_car.again(self.of_car.undo(battery, "test"))
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
        wanted = {node.id for node in self.done if self.of_car.back_before_power(node) and self._comes_back(node)}
        return reach(self.waits, wanted - battery, avoid=battery)

    def _join(self, node: Node) -> Iterable[Step]:
        return self.of_car.join(node) if isinstance(node.thing, Part) and self._comes_back(node) else ()

    def _trying(self) -> Iterator[Step]:
        """Power once more, and everything tried that was joined again."""
        restraint = self._touches_restraint()
        back = [node for node in self.done if isinstance(node.thing, Part) and self._stays(node)]
        tries = [*(self.of_car.general("restraint", closing.restraint_lamp) if restraint else ())]
        tries += [step for node in back for step in self.of_car.try_out(node)]
        if tries and self.openings:
            yield from self.of_car.power("on", "try", restraint=restraint)
            yield from tries
            yield from self.of_car.power("off", "try", restraint=restraint)

    def _stays(self, node: Node) -> bool:
        """Whether a part is in the car at the end: refitted or moved over."""
        return self._comes_back(node) or (isinstance(node.thing, Part) and node.thing.replaced == "no")

    def _touches_restraint(self) -> bool:
        return any(self.of_car.touches_restraint(node) for node in self.done)

    def _put_back(self, node: Node) -> Iterable[Step]:
        if isinstance(node.thing, Prep):
            return () if self._set_back(node, node.thing) else self.of_car.undo(node)
        return self.of_car.put_back(node) if self._comes_back(node) else ()

    def _set_back(self, node: Node, prep: Prep) -> bool:
        """Whether a later preparation has already set everything back to how the car arrived."""
        later = [other.thing.sets for other in self.done[self.done.index(node) + 1 :] if isinstance(other.thing, Prep)]
        return all(any(sets.get(state) == states.initial()[state] for sets in later) for state in prep.sets)

    def _power_and_test(self) -> Iterator[Step]:
        restraint = self._touches_restraint()
        for battery in reversed(self.battery):
            yield from self.of_car.undo(battery, "test")
        if self.openings:
            yield from self.of_car.power("on", "test", restraint=restraint)
            for node in sorted(self.openings, key=_driven):
                yield from self.of_car.tests(node)
            yield from self.of_car.power("off", "test", restraint=restraint)

    def _with_states(self, made: Iterable[Step]) -> Iterator[Step]:
        """Each step with the state of battery and ignition while it is done."""
        kept = list(made)
        yield from (self.of_car.stated(step, now) for step, now in zip(kept, running.states_of(kept), strict=True))


def _once_each(made: Iterable[Step]) -> Iterator[Step]:
    """The steps without those about something that an earlier one has already dealt with for all openings."""
    seen: set[str] = set()
    for step in made:
        if not step.shared or step.shared not in seen:
            yield step
        seen.add(step.shared)


def _driven(node: Node) -> bool:
    """Whether gear here is driven by other gear: what drives is seen on before what it drives is tried."""
    return not (isinstance(node.thing, Opening) and node.thing.drives)
