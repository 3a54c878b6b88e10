"""Which openings of a car can make a visit more than the sum of its jobs, so that only those need comparing."""

from collections import Counter
from collections.abc import Collection, Mapping, Sequence

from undertrim.derive.procedure import states
from undertrim.derive.procedure.graph import ancestors
from undertrim.derive.procedure.node import OPENING
from undertrim.derive.procedure.nodes import Layout
from undertrim.derive.procedure.planning import Planner
from undertrim.derive.procedure.refit_zones import back_before_power
from undertrim.derive.procedure.walks import reach, shortest_cycles
from undertrim.derive.procedure.way_back import waits
from undertrim.record.model import Assignment, Opening, Part, Prep


def mixing(layout: Layout) -> frozenset[str]:
    """The opening nodes that share routes, a part that moves over or makes room, or what their steps are about, with others.

    The nodes of any other opening are the same in every visit, and none of them makes a route of these cheaper.
    """
    openings = [name for name in layout.nodes if name.startswith(OPENING)]
    hot = {*layout.graph.any_of, *_extras(layout, openings)}
    shared = layout.elsewhere
    roaming = [part for part, homes in layout.homes.items() if len(homes) > 1]
    together = _together(layout, openings)
    if not (hot or shared or roaming or together):
        return frozenset()
    homes = frozenset[str]().union(*(layout.homes[part] for part in (*(part for part, _ in shared), *roaming)))
    return frozenset(
        name
        for name in openings
        if not hot.isdisjoint(ancestors(layout.graph, [name]))
        or name in {opening for _, opening in shared}
        or name in homes
        or name in together
    )


def _together(layout: Layout, openings: Sequence[str]) -> frozenset[str]:
    """The openings that have something together with another, such as the cable that feeds both."""
    shares = {name: thing.shares for name in openings if isinstance(thing := layout.nodes[name].thing, Opening)}
    several = {one for one, count in Counter(filter(None, shares.values())).items() if count > 1}
    return frozenset(name for name, one in shares.items() if one in several)


def _extras(layout: Layout, openings: Sequence[str]) -> set[str]:
    """What the routes of some node ask for beyond what every visit with that node has anyway."""
    graph = layout.graph
    found: set[str] = set()
    for node, choices in graph.any_of.items():
        routes = {name for choice in choices for route in choice for name in route}
        users = [ancestors(graph, [opening]) for opening in openings if node in layout.reached(opening)]
        anyway = users[0].intersection(*users) if users else frozenset()
        found |= ancestors(graph, routes) - ancestors(graph, [node]) - anyway
    return found


def apart(planner: Planner, car: Assignment) -> frozenset[str]:
    """The opening nodes of a car of which any two together are what each of them is by itself, with every state set in one way alone.

    None where something sets a state that something else sets too, or what is reached without gear differs from that.
    """
    layout = planner.layout(car)
    if _competing(layout) or not regular(planner, car):
        return frozenset()
    openings = {name for name, node in layout.nodes.items() if isinstance(node.thing, Opening)}
    return frozenset(openings - mixing(layout))


def _competing(layout: Layout) -> bool:
    """Whether a state is set by several preparations that do not only go together, or by one and by what is tried under power."""
    preps = [node.thing for node in layout.nodes.values() if isinstance(node.thing, Prep)]
    ways: dict[str, list[str]] = {}
    for state, value in (pair for prep in preps for pair in prep.sets.items()):
        ways.setdefault(state, []).append(value)
    several = (
        len(values) > 1 and not (states.together(state) and len(set(values)) == 1) for state, values in ways.items()
    )
    return any(several) or any(value != states.initial()["ignition"] for value in ways.get("ignition", ()))


def regular(planner: Planner, car: Assignment) -> bool:
    """Whether every visit to this car has its steps in the order of the catalogue."""
    layout, whole, rank = planner.layout(car), planner.layout({}), planner.rank(car)
    if not planner.ordered or rank is not whole.rank or _roams(whole) or _refits_apart(whole):
        return False
    routes_first = all(
        rank[other] < rank[node]
        for node, choices in layout.graph.any_of.items()
        for choice in choices
        for route in choice
        for other in route
    )
    return routes_first and _refits_regular(layout, whole)


def _refits_apart(layout: Layout) -> bool:
    """Whether parts go back in an order of their own that a visit may have to depart from: for restraint plugs, or where it goes round."""
    if not layout.refit_after:
        return False
    waiting = waits(layout.ordering.needs, layout.refit_after)
    return bool(_opening_plugs(layout)) or bool(shortest_cycles({name: sorted(rest) for name, rest in waiting.items()}))


def _roams(layout: Layout) -> bool:
    """Whether a part moves over to one of several openings, so that its place depends on which are in the visit."""
    return any(len(homes) > 1 and _thing(layout, part).replaced == "no" for part, homes in layout.homes.items())


def _thing(layout: Layout, name: str) -> Part:
    part = layout.nodes[name].thing
    assert isinstance(part, Part)
    return part


def _refits_regular(layout: Layout, whole: Layout) -> bool:
    """Whether a part goes back before the tests in every visit that has it, or in none."""
    if not _opening_plugs(whole):
        return True
    if any(part in _opening_plugs(layout) for part, _ in layout.elsewhere):
        return False
    always = _early(layout, layout.graph.before)
    return always == _early(layout, layout.ordering.needs) == _early(whole, whole.ordering.needs) & layout.nodes.keys()


def _early(layout: Layout, before: Mapping[str, Collection[str]]) -> set[str]:
    """What goes back before the tests, as far as these prerequisites tell."""
    batteries = {
        name for name, node in layout.nodes.items() if isinstance(node.thing, Prep) and "battery" in node.thing.sets
    }
    waiting: dict[str, list[str]] = {name: [] for name in layout.nodes}
    for name, needed in before.items():
        for other in needed:
            waiting[other].append(name)
    return reach(waiting, _opening_plugs(layout), avoid=batteries)


def _opening_plugs(layout: Layout) -> set[str]:
    """Parts that must be back before power."""
    shared = {part for part, _ in layout.elsewhere}
    return {
        name
        for name, node in layout.nodes.items()
        if isinstance(node.thing, Part)
        and back_before_power(node.thing, layout.car)
        and (name not in layout.homes or name in shared)
    }
