"""Steps: what the tech does, one at a time, with everything the step needs.

A step's id is `<kind>:<node>` or `<kind>:<node>:<detail>`, made of record ids only, so it stays the same as long as they do.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from undertrim.derive.procedure import fates, purposes, states, waits
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.naming import about, named, sided
from undertrim.derive.procedure.node import Node, minutes, node_id
from undertrim.derive.procedure.usual_caution import AnyCaution
from undertrim.record import drives
from undertrim.record.model import (
    Assignment,
    Caution,
    Count,
    Fastener,
    Opening,
    Part,
    Prep,
    Todo,
    VehicleRecord,
    Wait,
    When,
)
from undertrim.record.model.kinds.usual import usual_for, usual_word
from undertrim.resources import table
from undertrim.words import Value, Word, message, one_of, word

SECTIONS = ("before", "prepare", "remove", "install", "test", "refit", "restore", "try", "after")


@dataclass(frozen=True, slots=True)
class FastenerLine:
    """Fasteners of one sort in one step; `fate` is out, back, moved, bagged, new or leave.

    `later` says where those end that come out and do not simply go back: bagged, moved or binned.
    """

    fastener: Fastener
    fate: str
    later: str = ""

    @property
    def count(self) -> Count | None:
        """How many; None where the record says nothing."""
        return self.fastener.count

    @property
    def tool(self) -> Value:
        """The tool for them in this step; empty for bare hands."""
        return tool_for(self.fastener, back=self.fate not in ("out", "leave"))


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a procedure. `minutes` is None where no time is recorded; `unknown` marks a fact to look up.

    A test `needs` states of the car and whatever works through it of what it `uses` joined. `again` marks what was done before in the
    same visit, so that nothing is counted twice. `seal` is what the step seals its part with again.
    """

    id: str
    kind: str
    section: str
    title: Value
    text: tuple[Value, ...] = ()
    node: Node | None = None
    fasteners: tuple[FastenerLine, ...] = ()
    tethers: tuple[TetherLine, ...] = ()
    cautions: tuple[AnyCaution, ...] = ()
    minutes: float | None = None
    wait: Wait | None = None
    tools: tuple[Value, ...] = ()
    unknown: bool = False
    new: bool = False
    """Whether a new part goes in here in the place of one that was spoilt as it came off."""
    seal: str = ""
    state: Mapping[str, str] = field(default_factory=dict)
    needs: Mapping[str, str] = field(default_factory=dict)
    uses: tuple[str, ...] = ()
    again: bool = False
    detail: str = ""
    """What it is within its kind: how the ignition is turned, the entry of what is to do, the usual step of a kind of opening."""

    @property
    def part(self) -> str:
        """The record id of the part, preparation or opening it is about; empty for a general step."""
        return self.node.thing.id if self.node else ""

    @property
    def side(self) -> str:
        """The side it is done at; empty where there is only one."""
        return (self.node.side or "") if self.node else ""


def tool_for(fastener: Fastener, *, back: bool = False) -> Value:
    """The tool that undoes a fastener, or puts it `back`; both where either of two will do, empty for bare hands."""
    found = tools_for(fastener, back=back)
    return one_of(*found) if len(found) > 1 else next(iter(found), "")


def tools_for(fastener: Fastener, *, back: bool = False) -> tuple[Value, ...]:
    """The tools of which any one undoes a fastener, or puts it `back`."""
    if fastener.turned:
        return tuple(tool for what in (fastener.what, fastener.or_drive) if what and (tool := _turning(what)))
    row = table("fasteners")[fastener.kind]
    name = (row.get("tool_back") if back else None) or row.get("tool")
    return (tool_called(name),) if name else ()


def tool_called(name: str) -> Word:
    """A tool of data/tools.toml."""
    return word("tools", name, "label")


@lru_cache(maxsize=4096)
def _turning(what: str) -> Value:
    return drives.tool(drives.parse(what))


def _coming_out(thing: Part | Prep, car: Assignment) -> tuple[FastenerLine, ...]:
    live = (fastener for fastener in thing.held_by if fastener.when.holds(car))
    return tuple(
        FastenerLine(f, "leave") if f.leave == "yes" else FastenerLine(f, "out", _left(thing, f)) for f in live
    )


def _left(thing: Part | Prep, fastener: Fastener) -> str:
    """Where fasteners end that do not simply go back with what they hold."""
    if fastener.single_use:
        return "binned"
    if isinstance(thing, Prep) or thing.replaced == "no":
        return ""
    return "moved" if fastener.moves == "yes" else "bagged"


def _tools(lines: tuple[FastenerLine, ...]) -> tuple[Value, ...]:
    return tuple(dict.fromkeys(line.tool for line in lines if line.tool and line.fate != "leave"))


def _text(*parts: Value) -> tuple[Value, ...]:
    return tuple(part for part in parts if part)


def on_restraint(part: Part, car: Assignment) -> bool:
    """Whether the part carries restraint wiring."""
    return any(tether.circuit == "restraint" and tether.when.holds(car) for tether in part.tethers.values())


def conditions(thing: Part | Prep | Opening) -> Iterator[When]:
    """The conditions under which something about it differs from car to car; that it is there at all is not one."""
    fasteners = () if isinstance(thing, Opening) else thing.held_by
    tethers = thing.tethers.values() if isinstance(thing, Part) else ()
    for item in (*fasteners, *tethers, *thing.cautions):
        if item.when.clauses:
            yield item.when


def prepare(node: Node, car: Assignment, section: str, after: tuple[Wait, ...]) -> Iterator[Step]:
    """Set a state of the car, and wait where there is something to wait for."""
    prep = node.thing
    assert isinstance(prep, Prep)
    lines = _coming_out(prep, car)
    yield Step(
        f"prepare:{node.id}", "prepare", section, named(node), _text(states.way(prep)), node, lines,
        cautions=_live(prep.cautions, car), minutes=minutes(prep.takes), tools=_tools(lines),
    )  # fmt: skip
    yield from wait_for(node, section, after)


def wait_for(node: Node, section: str, after: tuple[Wait, ...], short: str = "") -> Iterator[Step]:
    """Wait after a preparation; `short` marks the wait of a battery that is not the last to go off."""
    for number, wait in enumerate(after):
        name = f"wait:{node.id}{short}" if number == 0 else f"wait:{node.id}{short}:unknown"
        yield Step(name, "wait", section, message("steps/wait"), _text(waits.why(wait)), node, wait=wait)


def remove(node: Node, car: Assignment, section: str, *, returns: bool = False) -> Iterator[Step]:
    """Take a part off; `returns` says that some visits put it back though new gear replaces it."""
    part = node.thing
    assert isinstance(part, Part)
    lines = _coming_out(part, car)
    tethers = fates.coming_off(part, car, returns=returns)
    yield Step(
        f"remove:{node.id}", "remove", section, named(node), _text(part.how, _laid(part), _spoilt(part)), node, lines, tethers,
        _live(part.cautions, car), minutes(part.takes), tools=_tools(lines),
    )  # fmt: skip


def refit(node: Node, car: Assignment) -> Iterator[Step]:
    """Put a part back."""
    part = node.thing
    assert isinstance(part, Part)
    lines = _returning(part.held_by, car)
    tethers = fates.refitted(part, car)
    takes = minutes(part.refit_takes if part.refit_takes is not None else part.takes)
    yield Step(
        f"refit:{node.id}", "refit", "refit", named(node), _text(_renewed(part), part.refit_how, _sealed(part)), node, lines, tethers,
        _live(part.cautions, car), takes, tools=_tools(lines), new=part.reuse == "no", seal=part.seal,
    )  # fmt: skip
    yield from _tether_tests(node, tethers, "refit")


def _sealed(part: Part) -> Value:
    return message("steps/seal-again", seal=part.seal) if part.seal else ""


def _laid(part: Part) -> Value:
    return message("steps/laid", laid=part.laid) if part.laid else ""


def _spoilt(part: Part) -> Value:
    return message("steps/spoilt") if part.reuse == "no" else ""


def _renewed(part: Part) -> Value:
    return message("steps/renewed") if part.reuse == "no" else ""


def _returning(held_by: tuple[Fastener, ...], car: Assignment) -> tuple[FastenerLine, ...]:
    live = (f for f in held_by if f.when.holds(car) and f.leave == "no")
    return tuple(FastenerLine(f, "new" if f.single_use else "back") for f in live)


def move_over(node: Node, opening: Node, car: Assignment) -> Iterator[Step]:
    """Move a part over to the new parts of an opening."""
    part = node.thing
    assert isinstance(part, Part)
    lines = tuple(
        FastenerLine(line.fastener, "moved" if line.fate == "back" else line.fate)
        for line in _returning(part.held_by, car)
    )
    tethers = fates.going_back(part, car)
    yield Step(
        f"move:{node.id}", "move", "install", message("steps/move-over", part=named(node)),
        _text(message("steps/goes-to", opening=opening.thing.name), _renewed(part), _sealed(part)),
        node, lines, tethers, minutes=minutes(part.takes), tools=_tools(lines), new=part.reuse == "no", seal=part.seal,
    )  # fmt: skip
    yield from _tether_tests(node, tethers, "install")


def _tether_tests(node: Node, lines: tuple[TetherLine, ...], section: str) -> Iterator[Step]:
    """The tests that follow once cables or rods are joined again, or were moved with their part; `moved` marks those on a part that moved over."""
    moved = "moved:" if section == "install" else ""
    for line in lines:
        tether, usual = line.tether, states.tether_kind(line.tether.kind)
        if line.act in ("rejoin", "lay-in") and not usual.electric and (tether.test or usual.mechanical):
            yield Step(
                f"test:{node.id}:{moved}{tether.id}", "test", section,
                message("steps/test", tether=sided(tether.name, node.side)), _text(tether.test or usual.usual_test or ""), node,
            )  # fmt: skip


def install(node: Node, car: Assignment, here: Sequence[Node] = (), apart: Sequence[Node] = ()) -> Iterator[Step]:
    """Fit new gear into an opening: the usual steps of its kind, the record's own words with the first.

    The tethers of the replaced parts `here` end in the step that joins; each part `apart` has a step of its own before that.
    """
    opening = node.thing
    assert isinstance(opening, Opening)
    kind = usual_for(opening.kind)
    entries = [name for name, entry in kind["install"].items() if _applies(entry, opening)]
    joining = next((name for name in entries if kind["install"][name].get("joins")), entries[-1])
    for entry in entries:
        special = opening.install_how if entry == entries[0] else ""
        if entry == joining:
            yield from (step for part in apart for step in _taking_over(node, part, car))
        yield Step(
            f"install:{place(node)}:{entry}", "install", "install", about(usual_word(opening.kind, "install", entry, "name"), node),
            _text(special, usual_word(opening.kind, "install", entry, "text")), node,
            tethers=tuple(line for part in here for line in fates.taken_over(part, car)) if entry == joining else (),
            cautions=_live(opening.cautions, car) if entry == entries[0] else (),
            tools=tuple(map(tool_called, kind["tools"])) if entry == entries[0] else (),
        )  # fmt: skip


def _taking_over(opening: Node, part: Node, car: Assignment) -> Iterator[Step]:
    """What becomes of the tethers of one replaced part, as a step of its own; nothing where it has none."""
    lines = fates.taken_over(part, car)
    if lines:
        yield Step(
            f"install:{place(opening)}:plugs:{place(part)}", "install", "install",
            about(message("steps/plugs-of", part=named(part)), opening), _text(message("steps/plugs-end")), opening, tethers=lines,
        )  # fmt: skip


def opening_tests(node: Node) -> Iterator[Step]:
    """Test new gear while it can still be reached."""
    opening = node.thing
    assert isinstance(opening, Opening)
    entries = {name: entry for name, entry in usual_for(opening.kind)["test"].items() if _applies(entry, opening)}
    for name, entry in entries.items():
        special = opening.test_how if name == next(iter(entries)) else ""
        yield Step(
            f"test:{place(node)}:{name}", "test", "test", about(usual_word(opening.kind, "test", name, "name"), node),
            _text(special, usual_word(opening.kind, "test", name, "text")), node, needs=entry["states"], uses=tuple(entry["uses"]), detail=name,
        )  # fmt: skip


def _applies(entry: Mapping[str, str], opening: Opening) -> bool:
    """Whether a usual step is for this opening."""
    only = entry.get("only", "")
    return not only or only in (*opening.asks, _WINDOW[purposes.window(opening)])


_WINDOW = {"yes": "window", "unknown": "window-unknown", "no": ""}


def place(node: Node) -> str:
    """The record id of what a node is about, with its side: `dash`, `front-door@left`."""
    return node_id(node.thing.id, node.side)


def restore(node: Node, car: Assignment, section: str) -> Iterator[Step]:
    """Undo a preparation; nothing where nothing needs undoing."""
    prep = node.thing
    assert isinstance(prep, Prep)
    lines = _returning(prep.held_by, car)
    how = states.undoing(prep)
    if not (how or lines):
        return
    yield Step(
        f"restore:{node.id}", "restore", section, sided(states.way_back(prep), node.side), _text(how), node, lines,
        minutes=minutes(prep.takes), tools=_tools(lines),
    )  # fmt: skip


def power(way: str, section: str = "test") -> Iterator[Step]:
    """Switch the ignition `on` for the tests, or `off` after them; in the section `try` for the last time."""
    name = f"power:{way}" if section == "test" else f"power:{way}:{section}"
    yield Step(
        name,
        "power",
        section,
        message(f"steps/{section}-power-{way}"),
        (message(f"steps/{section}-power-{way}-how"),),
        detail=way,
    )


def todos(record: VehicleRecord, car: Assignment, which: str) -> Iterator[Step]:
    """What to do before the battery goes off (`before`) or once it is back (`after`); unknown is said, not left out."""
    known = record.after_battery
    entries: Mapping[str, Todo] = getattr(known, which) if known else {}
    for entry in entries.values():
        if entry.when.holds(car):
            short = len(entry.do) <= LONGEST_TITLE
            title, text = (entry.do, ()) if short else (message(f"steps/todo-{which}"), (entry.do,))
            yield Step(f"{which}:{entry.id}", "todo", which, title, text, detail=entry.id)
    if not entries and not (known and which in known.checked_none):
        how = (message(f"steps/unknown-{which}"),)
        yield Step(f"{which}:unknown", "todo", which, message("steps/unknown"), how, unknown=True, detail="unknown")


LONGEST_TITLE = 90
"""A thing to do that is no longer than this is its own title."""


def _live(cautions: tuple[Caution, ...], car: Assignment) -> tuple[Caution, ...]:
    return tuple(caution for caution in cautions if caution.when.holds(car))
