"""What hides what: the parts of a record with what must be off before them, the two sides of a car as one, for a map of the order."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.procedure.node import OPENING, Node
from undertrim.derive.procedure.nodes import Layout, lay_out
from undertrim.publish.facts import words
from undertrim.record.model import Part, Prep, VehicleRecord


@dataclass(frozen=True, slots=True)
class MappedStep:
    """The step that takes a part off, at a side or where it exists once; of an opening and of what is reached for the target."""

    side: str
    step: str


@dataclass(frozen=True, slots=True)
class Mapped:
    """A part, or what parts are taken off for: what must be off before it by its places in the list, and by which of these any one of several ways leads."""

    name: str
    goal: bool
    steps: Sequence[MappedStep]
    after: Sequence[int]
    either: Sequence[int]
    clauses: words.Clauses


def removal_order(record: VehicleRecord, steps: Iterable[str] | None = None) -> list[Mapped]:
    """Every part that hides or is hidden, with what it is taken off for; `steps` are those of a visit with its targets, by id, where not all count."""
    layout = lay_out(record, {})
    wanted = None if steps is None else set(steps)
    shown = {key: nodes for key, nodes in _merged(layout).items() if wanted is None or _in(nodes, wanted)}
    place = {key: at for at, key in enumerate(shown)}
    made = [_mapped(layout, nodes, place) for nodes in shown.values()]
    linked = {at for one in made for at in (*one.after, *one.either)}
    kept = [at for at, one in enumerate(made) if one.after or one.either or at in linked]
    return [_renumbered(made[at], {old: new for new, old in enumerate(kept)}) for at in kept]


def _merged(layout: Layout) -> dict[str, list[Node]]:
    """What is on the map by its ids without the side."""
    found: dict[str, list[Node]] = {}
    for name, node in layout.nodes.items():
        if isinstance(node.thing, Part) or _is_shown(layout, node):
            found.setdefault(name.partition("@")[0], []).append(node)
    return found


def _is_shown(layout: Layout, node: Node) -> bool:
    """Openings, what is reached for, and preparations for which parts come off, whether they end there or go on."""
    if not isinstance(node.thing, Prep):
        return node.id.startswith(OPENING)
    return any(isinstance(layout.nodes[other].thing, Part) for other in layout.graph.needs[node.id])


def _cuts_power(node: Node) -> bool:
    """Whether it switches a battery off: much waits for that, and none of it is hidden by it."""
    return isinstance(node.thing, Prep) and "battery" in node.thing.sets


def _in(nodes: Sequence[Node], steps: set[str]) -> bool:
    """Whether a visit takes it off, or takes something off for it."""
    return any(_step(node).step in steps for node in nodes)


def _step(node: Node) -> MappedStep:
    kinds: Mapping[type, str] = {Part: "remove:", Prep: "prepare:"}
    return MappedStep(node.side or "", f"{kinds.get(type(node.thing), '')}{node.id.removeprefix(OPENING)}")


def _mapped(layout: Layout, nodes: Sequence[Node], place: Mapping[str, int]) -> Mapped:
    thing, graph = nodes[0].thing, layout.graph
    always = {other for node in nodes for other in graph.before[node.id] if not _cuts_power(layout.nodes[other])}
    ways = {other for node in nodes for other in graph.needs[node.id] if not _cuts_power(layout.nodes[other])} - always
    return Mapped(
        name=thing.name,
        goal=_cuts_power(nodes[0]) or not isinstance(thing, Part | Prep),
        steps=[_step(node) for node in nodes],
        after=_places(always, place),
        either=_places(ways, place),
        clauses=words.clauses(thing.when),
    )


def _places(names: Iterable[str], place: Mapping[str, int]) -> Sequence[int]:
    return sorted({place[key] for name in names if (key := name.partition("@")[0]) in place})


def _renumbered(one: Mapped, place: Mapping[int, int]) -> Mapped:
    after, either = ([place[at] for at in places if at in place] for places in (one.after, one.either))
    return Mapped(one.name, one.goal, one.steps, after, either, one.clauses)
