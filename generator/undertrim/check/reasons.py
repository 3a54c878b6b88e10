"""Why one step needs another first: the place in the record that says so, and the words for it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, groupby

from undertrim.check import needs
from undertrim.derive.procedure import states
from undertrim.derive.procedure.node import OPENING, Node
from undertrim.derive.procedure.nodes import Layout
from undertrim.derive.procedure.states import USUAL
from undertrim.record.model import Fastener, Opening, Part, Prep, Ref
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class Reason:
    """One place that makes a step wait, with the words for it."""

    pointer: Pointer
    words: str


def bare(node: str) -> str:
    """A node's id as the record has it: without side and without the mark of an opening."""
    return node.removeprefix(OPENING).split("@")[0]


def said(node: str) -> str:
    """A node's id as a message says it."""
    name = bare(node)
    return f"{name.removeprefix(USUAL)} (usual)" if name.startswith(USUAL) else name


def trail(path: Sequence[str]) -> str:
    """A path as `bezel -> radio`; sides are left out unless a thing would then meet itself on the way."""
    plain = [name for name, _ in groupby(map(said, path))]
    names = [plain[0], plain[0]] if len(plain) == 1 else plain
    inner = names[:-1] if path[0] == path[-1] else names
    clear = len(set(inner)) == len(inner)
    return " -> ".join(names if clear else (node.removeprefix(OPENING) for node in path))


def reason(layout: Layout, user: str, needed: str) -> Reason | None:
    """Why `user` waits for `needed`; None for a usual preparation, which no record speaks of."""
    one, other = layout.nodes[user], layout.nodes[needed]
    return next(chain(_written(layout, one, other), _by_state(one, other)), None)


def _written(layout: Layout, user: Node, needed: Node) -> Iterator[Reason]:
    thing = user.thing
    if isinstance(thing, Opening):
        yield from _of_opening(thing, needed)
        return
    home = needs.home(thing)
    for index, ref in enumerate(thing.after):
        if _means(layout, ref, needed):
            yield Reason((*home, "after", index), f"'{thing.id}' has '{ref.part}' in 'after'")
    for index, fastener in enumerate(thing.held_by):
        if fastener.under == needed.thing.id and _undone(layout, fastener):
            words = f"a {fastener.kind} of '{thing.id}' is under '{fastener.under}'"
            yield Reason((*home, "held_by", index, "under"), words)
    if isinstance(thing, Part):
        yield from _of_routes(layout, thing, needed)


def _of_opening(opening: Opening, needed: Node) -> Iterator[Reason]:
    name = needed.thing.id
    if name in opening.behind:
        place = ("openings", opening.id, "behind", opening.behind.index(name))
        yield Reason(place, f"'{opening.id}' is behind '{name}'")
    elif isinstance(needed.thing, Part) and needed.thing.goes_to == opening.id:
        yield Reason(("parts", name, "goes_to"), f"'{name}' goes to '{opening.id}'")


def _of_routes(layout: Layout, part: Part, needed: Node) -> Iterator[Reason]:
    for number, choice in enumerate(part.after_any):
        for route, refs in choice.items():
            for index, ref in enumerate(refs):
                if _means(layout, ref, needed):
                    place = ("parts", part.id, "after_any", number, route, index)
                    yield Reason(place, f"route '{route}' of '{part.id}' has '{ref.part}'")


def _by_state(user: Node, needed: Node) -> Iterator[Reason]:
    if not isinstance(needed.thing, Prep):
        return
    for state, value in states.needs(user.thing).items():
        if needed.thing.sets.get(state) == value:
            words = f"'{said(user.id)}' needs {state} {value}, which '{said(needed.id)}' sets"
            yield Reason(needs.place(user.thing, state), words)


def _means(layout: Layout, ref: Ref, needed: Node) -> bool:
    return ref.part == needed.thing.id and ref.side in (None, needed.side) and ref.when.holds(layout.car)


def _undone(layout: Layout, fastener: Fastener) -> bool:
    return fastener.leave == "no" and fastener.when.holds(layout.car)
