"""Where parts end that do not simply go back: replaced by new gear, or moved over to it, but only by a visit that fits that gear."""

from collections.abc import Callable, Mapping

from undertrim.derive.procedure.node import Node
from undertrim.record.model import Opening, Part, VehicleRecord


def homes(
    record: VehicleRecord, nodes: Mapping[str, Node], reached: Callable[[str], frozenset[str]]
) -> dict[str, frozenset[str]]:
    """For each part that is replaced or moves over: the openings whose gear it makes room for, or goes to.

    A replaced part that no opening of the record is `behind` ends with any opening that needs it off. Where one is, but not in this
    car, the part has no home and goes back.
    """
    openings = {name: node for name, node in nodes.items() if isinstance(node.thing, Opening)}
    found = {}
    for name, node in nodes.items():
        if isinstance(node.thing, Part) and (node.thing.replaced == "yes" or node.thing.goes_to):
            own = {
                opening for opening, place in openings.items() if _meant(node.thing, place) and _side_fits(node, place)
            }
            named = node.thing.replaced == "no" or _is_behind(node.thing, record)
            found[name] = frozenset(own if named else (o for o in openings if name in reached(o)))
    return found


def _meant(part: Part, opening: Node) -> bool:
    assert isinstance(opening.thing, Opening)
    return part.id in opening.thing.behind if part.replaced == "yes" else part.goes_to == opening.thing.id


def _is_behind(part: Part, record: VehicleRecord) -> bool:
    return any(part.id in opening.behind for opening in record.openings.values())


def _side_fits(part: Node, opening: Node) -> bool:
    return not part.side or opening.side in (None, part.side)
