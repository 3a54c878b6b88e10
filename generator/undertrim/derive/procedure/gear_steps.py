"""The steps of new gear in an opening: fit it, join what was joined to the parts it replaces, test it."""

from collections.abc import Iterator, Sequence

from undertrim.derive.kinds import details
from undertrim.derive.procedure import fates, purposes
from undertrim.derive.procedure.naming import about, named
from undertrim.derive.procedure.node import Node, node_id
from undertrim.derive.procedure.steps import Step, live, text
from undertrim.derive.procedure.tools import tool_called, tool_turning
from undertrim.record.model import Assignment, Opening, VehicleRecord
from undertrim.record.model.kinds.usual import UsualStep, usual_for, usual_word
from undertrim.words import message

_WINDOW = {"yes": "window", "unknown": "window-unknown", "no": ""}


def install(
    record: VehicleRecord, node: Node, car: Assignment, here: Sequence[Node] = (), apart: Sequence[Node] = ()
) -> Iterator[Step]:
    """Fit new gear into an opening: the usual steps of its kind, the record's own words with the first.

    The tethers of the replaced parts `here` end in the step that joins; each part `apart` has a step of its own before that.
    """
    opening = node.thing
    assert isinstance(opening, Opening)
    kind = usual_for(opening.kind)
    entries = [name for name, entry in kind.install.items() if _applies(entry, opening)]
    joining = next((name for name in entries if kind.install[name].joins), entries[-1])
    for entry in entries:
        special = opening.install_how if entry == entries[0] else ""
        if entry == joining:
            yield from (step for part in apart for step in _taking_over(node, part, car))
        more = details(record, opening, entry)
        yield Step(
            f"install:{_place(node)}:{entry}", "install", "install", about(usual_word(opening.kind, "install", entry, "name"), node),
            text(special, usual_word(opening.kind, "install", entry, "text"), *more.said), node,
            tethers=tuple(line for part in here for line in fates.taken_over(part, car)) if entry == joining else (),
            cautions=live(opening.cautions, car) if entry == entries[0] else (),
            tools=(*(tuple(map(tool_called, kind.tools)) if entry == entries[0] else ()), *map(tool_turning, more.turned)),
            builds=kind.install[entry].builds,
            last=kind.install[entry].last,
            along=opening.along if kind.install[entry].along else "",
            shared=f"{entry}:{opening.shares}" if kind.install[entry].shared and opening.shares else "",
        )  # fmt: skip


def _taking_over(opening: Node, part: Node, car: Assignment) -> Iterator[Step]:
    """What becomes of the tethers of one replaced part, as a step of its own; nothing where it has none."""
    lines = fates.taken_over(part, car)
    if lines:
        yield Step(
            f"install:{_place(opening)}:plugs:{_place(part)}", "install", "install",
            about(message("steps/plugs-of", part=named(part)), opening), text(message("steps/plugs-end")), opening, tethers=lines,
        )  # fmt: skip


def opening_tests(node: Node) -> Iterator[Step]:
    """Test new gear while it can still be reached."""
    opening = node.thing
    assert isinstance(opening, Opening)
    entries = {name: entry for name, entry in usual_for(opening.kind).test.items() if _applies(entry, opening)}
    for name, entry in entries.items():
        special = opening.test_how if name == next(iter(entries)) else ""
        yield Step(
            f"test:{_place(node)}:{name}", "test", "test", about(usual_word(opening.kind, "test", name, "name"), node),
            text(special, usual_word(opening.kind, "test", name, "text")), node, needs=entry.states, uses=entry.uses, detail=name,
        )  # fmt: skip


def _applies(entry: UsualStep, opening: Opening) -> bool:
    """Whether a usual step is for this opening."""
    return not entry.only or entry.only in (*opening.asks, _WINDOW[purposes.window(opening)])


def _place(node: Node) -> str:
    """The record id of what a node is about, with its side: `dash`, `front-door@left`."""
    return node_id(node.thing.id, node.side)
