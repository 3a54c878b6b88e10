"""Why one step needs another first: the place in the record that says so, and what it says."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, groupby

from undertrim.check import needs
from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import OPENING, Node, home
from undertrim.derive.procedure.nodes import Layout
from undertrim.derive.procedure.states import USUAL
from undertrim.record.model import Fastener, Opening, Part, Prep, Reached, Ref
from undertrim.record.source import Pointer
from undertrim.words import Items, Message, Value, message, word


@dataclass(frozen=True, slots=True)
class Reason:
    """One place that makes a step wait, with what it says."""

    pointer: Pointer
    said: Message


def bare(node: str) -> str:
    """A node's id as the record has it: without side and without the mark of an opening."""
    return node.removeprefix(OPENING).split("@")[0]


def named(name: str) -> Value:
    """An id or a node's bare name as a message says it."""
    usual = name.startswith(USUAL)
    return message("reasons/usual", name=name.removeprefix(USUAL)) if usual else name


def trail(path: Sequence[str]) -> tuple[str, ...]:
    """The names on a path; sides are left out unless a thing would then meet itself on the way."""
    plain = tuple(name for name, _ in groupby(map(bare, path)))
    names = (plain[0], plain[0]) if len(plain) == 1 else plain
    inner = names[:-1] if path[0] == path[-1] else names
    clear = len(set(inner)) == len(inner)
    return names if clear else tuple(node.removeprefix(OPENING) for node in path)


def way(names: Iterable[str]) -> Items:
    """The names on a path as a message says them: `bezel -> radio`."""
    return Items(tuple(map(named, names)), "arrow")


def reason(layout: Layout, user: str, needed: str) -> Reason | None:
    """Why `user` waits for `needed`; None for a usual preparation, which no record speaks of."""
    one, other = layout.nodes[user], layout.nodes[needed]
    return next(chain(_written(layout, one, other), _by_state(one, other)), None)


def _written(layout: Layout, user: Node, needed: Node) -> Iterator[Reason]:
    thing = user.thing
    if isinstance(thing, Opening):
        yield from _of_opening(thing, needed)
        return
    if isinstance(thing, Reached):  # nothing waits for it, so that it is in no cycle
        return
    place = home(thing)
    for index, ref in enumerate(thing.after):
        if _means(layout, ref, needed):
            yield Reason((*place, "after", index), message("reasons/after", user=thing.id, needed=ref.part))
    for index, fastener in enumerate(thing.held_by):
        if fastener.under == needed.thing.id and _undone(layout, fastener):
            kind = word("fasteners", fastener.kind, "label")
            under = message("reasons/under", kind=kind, user=thing.id, needed=fastener.under)
            yield Reason((*place, "held_by", user.slot(index), "under"), under)
    if isinstance(thing, Part):
        yield from _of_routes(layout, thing, needed)


def _of_opening(opening: Opening, needed: Node) -> Iterator[Reason]:
    name = needed.thing.id
    if name in opening.behind:
        place = ("openings", opening.id, "behind", opening.behind.index(name))
        yield Reason(place, message("reasons/behind", user=opening.id, needed=name))
    elif isinstance(needed.thing, Part) and needed.thing.goes_to == opening.id:
        yield Reason(("parts", name, "goes_to"), message("reasons/goes-to", needed=name, user=opening.id))


def _of_routes(layout: Layout, part: Part, needed: Node) -> Iterator[Reason]:
    for number, choice in enumerate(part.after_any):
        for route, refs in choice.items():
            for index, ref in enumerate(refs):
                if _means(layout, ref, needed):
                    place = ("parts", part.id, "after_any", number, route, index)
                    yield Reason(place, message("reasons/route", route=route, user=part.id, needed=ref.part))


def _by_state(user: Node, needed: Node) -> Iterator[Reason]:
    if not isinstance(needed.thing, Prep):
        return
    for state, value in states.needs(user.thing).items():
        if needed.thing.sets.get(state) == value:
            who, setter = named(bare(user.id)), named(bare(needed.id))
            said = message("reasons/state", user=who, state=state, value=value, needed=setter)
            yield Reason(needs.said_at(user.worked, state), said)


def _means(layout: Layout, ref: Ref, needed: Node) -> bool:
    return ref.part == needed.thing.id and ref.side in (None, needed.side) and ref.when.holds(layout.car)


def _undone(layout: Layout, fastener: Fastener) -> bool:
    return fastener.leave == "no" and fastener.when.holds(layout.car)
